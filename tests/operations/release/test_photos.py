"""Photos of doors: which of the attached is taken, and that none of them keeps a packet from being printed."""

import io

import pytest
from PIL import Image
from pypdf import PdfReader

from hwsched.cli.command import run
from hwsched.model.project import open_project
from hwsched.operations.release.attachments import attach_content
from hwsched.operations.release.photos import with_photos
from hwsched.operations.release.project_view import project_view
from hwsched.render.pictures import size_of
from tests.documents.quay import ROWS, make
from tests.once import copied

WHO = "ann"
MARKS = ("WOOD", "UNSEEN", "CHANNEL")


def photo(wide=60, tall=90, kind="JPEG"):
    held = io.BytesIO()
    Image.new("RGB", (wide, tall), (90, 120, 150)).save(held, kind)
    return held.getvalue()


@pytest.fixture
def quay(tmp_path):
    def made(path):
        rows = [row for row in ROWS if row["Mark"] in MARKS]
        make(path.parent, rows).close()
        (path.parent / "quay.hwsched").rename(path)

    copied("a quay to be photographed", tmp_path / "q.hwsched", made)
    with open_project(tmp_path / "q.hwsched") as project:
        yield project


def seen(project, mark="WOOD"):
    view = with_photos(project, project_view(project))
    return next(each for each in view.openings if each.mark == mark)


def put_at(project, name, content, mark="WOOD", entity="opening", title=""):
    opening = next(each for each in project_view(project).openings if each.mark == mark)
    row = opening.given.opening.id if entity == "opening" else opening.given.leaves[0].id
    attach_content(project, entity, row, name, content, who=WHO, title=title)


def test_without_a_photo_there_is_none(quay):
    assert seen(quay).photo is None
    put_at(quay, "sheet.pdf", b"%PDF-1.4 a data sheet")
    assert seen(quay).photo is None


def test_the_first_of_the_opening_goes_before_that_of_its_leaf(quay):
    put_at(quay, "leaf.jpg", photo(30, 30), entity="leaf")
    assert size_of(seen(quay).photo.content) == (30, 30)
    put_at(quay, "front.png", photo(60, 90, "PNG"), title="From the corridor")
    put_at(quay, "back.jpg", photo(50, 50))
    assert size_of(seen(quay).photo.content) == (60, 90)
    assert seen(quay).photo.name == "From the corridor"
    assert seen(quay, "CHANNEL").photo is None


def test_a_broken_one_is_passed_over_for_one_that_can_be_printed(quay):
    put_at(quay, "broken.jpg", photo()[:200])
    found = seen(quay).photo
    assert (found.content, found.name) == (b"", "broken.jpg")
    assert found.refused.startswith("is broken")
    put_at(quay, "whole.jpg", photo())
    assert (seen(quay).photo.name, seen(quay).photo.refused) == ("whole.jpg", "")


def packet_of(project, mark, folder):
    assert run(["release", "print", str(project.path), "packets", "--mark", mark, "--to", str(folder)]) == 0
    pages = PdfReader(folder / "packets" / f"{mark}.pdf").pages
    images = [image for page in pages for image in page.images]
    return [page.extract_text() for page in pages], images


@pytest.mark.parametrize("mark", MARKS)
def test_a_photo_stands_on_the_packet_and_costs_no_sheet(quay, tmp_path, mark):
    bare, none = packet_of(quay, mark, tmp_path / "bare")
    put_at(quay, "tall.jpg", photo(300, 600), mark)
    pages, images = packet_of(quay, mark, tmp_path / "with")
    assert len(pages) == len(bare)
    assert not none
    assert len(images) == 1
    assert "".join(pages).count("Photo: tall.jpg") == 1


@pytest.mark.parametrize(
    ("name", "content", "said"),
    [
        ("broken.jpg", photo()[:200], "broken.jpg is broken"),
        ("heap.gif", b"GIF89a" + bytes(40), "heap.gif is no picture that can be printed; accepted: PNG, JPEG"),
        ("line.png", photo(2100, 100, "PNG"), "line.png is 2100 x 100 pixels; accepted: at most 20 to 1"),
    ],
)
def test_one_that_cannot_be_printed_is_named_and_the_packet_is_printed(quay, tmp_path, name, content, said):
    put_at(quay, name, content)
    pages, images = packet_of(quay, "WOOD", tmp_path)
    assert not images
    assert len(pages) == 2
    assert f"NO PHOTO. {said}" in " ".join(pages[0].split())
