"""How the office's documents look: kept with the project, seen on paper, undone; bad files leave all as it was."""

import errno
import io

import pytest
from PIL import Image
from pypdf import PdfReader

from hwsched.cli.command import run
from hwsched.documents.view import OpeningView
from hwsched.exchange.problems import InputRejected
from hwsched.exchange.release.office_file import EXAMPLE
from hwsched.model.errors import MissingRowError
from hwsched.model.project import open_project
from hwsched.operations.project.history import undo
from hwsched.operations.release.issued_documents import issue_by_name
from hwsched.operations.release.office import clear_office, office_text, read_held_office, set_office, write_office
from hwsched.operations.release.project_view import project_view
from hwsched.values.office import Office
from hwsched.writing import UnwritableError
from tests.operations.exact import small

WHO = "ann"
OFFICE = """\
format = 1
paper = "a4"
door_paper = "a5"
language = "pt-BR"
[letterhead]
lines = ["Quay Door Works"]
logo = "logo.png"
[files]
name = "{project} {document} {revision}"
openings = "{building}-{mark}"
[words]
"Sign-off" = "Assinaturas"
"Summary" = "Resumo"
[notes]
all = ["Nothing without a permit."]
[order]
schedule = ["Findings", "Headings"]
[[page]]
place = "before"
documents = ["schedule"]
title = "Terms of delivery"
text = ["Carriage is paid."]
picture = "plan.png"
[[page]]
place = "after"
documents = ["all"]
title = "Last page"
"""


def png(wide, tall):
    held = io.BytesIO()
    Image.new("RGB", (wide, tall), (20, 90, 60)).save(held, "PNG")
    return held.getvalue()


@pytest.fixture
def declared(tmp_path):
    folder = tmp_path / "office"
    folder.mkdir()
    (folder / "office.toml").write_text(OFFICE)
    (folder / "logo.png").write_bytes(png(300, 100))
    (folder / "plan.png").write_bytes(png(200, 260))
    return folder / "office.toml"


@pytest.fixture
def yard(tmp_path):
    made = small(tmp_path / "y.hwsched")
    yield made
    made.close()


def held(project):
    with project.reading() as connection:
        return read_held_office(connection)


def words_of(path):
    return [page.extract_text() for page in PdfReader(path).pages]


def test_it_is_seen_on_paper(yard, declared, tmp_path):
    set_office(yard, declared, who=WHO)
    view = project_view(yard)
    (path,) = issue_by_name(view, "schedule", tmp_path / "out", ["pdf"])
    assert path.name == f"{view.title} schedule {view.revision}.pdf"
    reader = PdfReader(path)
    pages = words_of(path)
    # ISO 216: A4 is 210 mm wide.
    assert float(reader.pages[0].mediabox.width) == pytest.approx(210 / 25.4 * 72, abs=0.1)
    assert reader.trailer["/Root"]["/Lang"] == "pt-BR"
    assert "Terms of delivery" in pages[0]
    assert "Quay Door Works" in pages[0]
    assert len(reader.pages[0].images) == 2
    assert "Last page" in pages[-1]
    text = "\n".join(pages)
    assert "Resumo" in text
    assert "Nothing without a permit." in text
    # Findings come before headings, and both before the summary.
    assert text.index("\nFindings") < text.index("\nHeadings") < text.index("\nResumo")
    packets = issue_by_name(view, "packets", tmp_path / "out", ["pdf"])
    first = PdfReader(packets[0])
    assert float(first.pages[0].mediabox.width) == pytest.approx(148 / 25.4 * 72, abs=0.1)
    opening: OpeningView = view.openings[0]
    assert packets[0].name == f"{opening.given.opening.building}-{opening.mark}.pdf"
    assert len(first.pages[0].images) == 1
    told = "\n".join(page.extract_text() for page in first.pages)
    assert "Assinaturas" in told
    assert "Sign-off" not in told
    # Whoever says which paper gets it.
    (letter,) = issue_by_name(view, "schedule", tmp_path / "letter", ["pdf"], paper="letter")
    assert float(PdfReader(letter).pages[0].mediabox.width) == 612.0


def test_the_same_state_prints_the_same_bytes(yard, declared, tmp_path):
    set_office(yard, declared, who=WHO)
    view = project_view(yard)
    first, second = (issue_by_name(view, "pick-list", tmp_path / name, ["pdf"])[0].read_bytes() for name in "ab")
    assert first == second


def test_it_is_written_out_taken_in_elsewhere_and_undone(yard, declared, tmp_path):
    set_office(yard, declared, who=WHO)
    kept = held(yard)
    files = write_office(yard, tmp_path / "out")
    assert sorted(path.name for path in files) == ["logo.png", "office.toml", "plan.png"]
    set_office(yard, tmp_path / "out" / "office.toml", who=WHO)
    assert held(yard) == kept
    clear_office(yard, who=WHO)
    assert held(yard) == Office()
    undo(yard, who=WHO)
    assert held(yard) == kept
    clear_office(yard, who=WHO)
    with pytest.raises(MissingRowError):
        clear_office(yard, who=WHO)


@pytest.mark.parametrize(
    ("name", "content", "said"),
    [
        ("office.toml", b"\xff\xfe\x00bad", "UTF-8"),
        ("office.toml", OFFICE.replace("a5", "a6").encode(), "a6"),
        ("logo.png", None, "cannot be read"),
        ("logo.png", b"\x89PNG\r\n\x1a\n broken", "logo.png"),
        ("plan.png", png(1, 900), "20 to 1"),
    ],
)
def test_what_is_refused_changes_nothing(yard, declared, name, content, said):
    path = declared.parent / name
    path.unlink() if content is None else path.write_bytes(content)
    with pytest.raises(InputRejected) as caught:
        set_office(yard, declared, who=WHO)
    assert said in "\n".join(each.describe() for each in caught.value.problems)
    assert office_text(yard) == ""


def test_a_full_disk_leaves_neither_half_a_file_nor_a_part(yard, declared, tmp_path, monkeypatch):
    set_office(yard, declared, who=WHO)
    view = project_view(yard)
    out = tmp_path / "out"
    (path,) = issue_by_name(view, "schedule", out, ["pdf"])
    before = path.read_bytes()

    def full(*_):
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr("reportlab.pdfgen.canvas.Canvas.save", full)
    with pytest.raises((UnwritableError, OSError)):
        issue_by_name(view, "schedule", out, ["pdf"])
    assert path.read_bytes() == before
    assert [each.name for each in out.iterdir()] == [path.name]


def test_at_the_command_line(yard, declared, tmp_path, capsys):
    yard.close()
    path = str(tmp_path / "y.hwsched")
    assert run(["release", "office", path]) == 0
    assert "as by default" in capsys.readouterr().out
    assert run(["release", "office", path, "--example"]) == 0
    assert capsys.readouterr().out.strip() == EXAMPLE.strip()
    assert run(["release", "office", path, str(declared)]) == 0
    assert run(["release", "office", path, "--export", "-o", str(tmp_path / "out")]) == 0
    assert (tmp_path / "out" / "office.toml").read_text() == OFFICE
    assert run(["release", "office", path, "--clear"]) == 0
    with open_project(path) as project:
        assert office_text(project) == ""
