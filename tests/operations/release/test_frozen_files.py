"""What hangs at things and what the bench did, held by revisions: printed as it was, told where it is otherwise."""

import ast
import io
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest
from PIL import Image
from pypdf import PdfReader
from sqlalchemy import func, select

import hwsched
from hwsched.cli.command import run
from hwsched.model.errors import MissingRowError, ValueRefusedError
from hwsched.model.file.rescuing import rescue
from hwsched.model.file.upgrading import upgrade_project
from hwsched.model.journal.verifying import verify
from hwsched.model.project import open_project
from hwsched.model.tables import BLOB, DELIVERY, OPEN_QUESTION, PART
from hwsched.operations.opening.pieces import pieces, record_piece
from hwsched.operations.opening.scope import Scope
from hwsched.operations.release.attachments import attach_content, attachments_of, detach, fetch_into
from hwsched.operations.release.document_differences import document_differences
from hwsched.operations.release.freezing import freeze
from hwsched.operations.release.frozen_files import attachments_then
from hwsched.operations.release.issued_documents import issue_by_name
from hwsched.operations.release.issued_packets import write_down_packets
from hwsched.operations.release.office import set_office
from hwsched.operations.release.printed_view import printed_view, revision_asked
from hwsched.operations.release.project_view import project_view
from hwsched.operations.release.revision_differences import differences
from hwsched.operations.release.revisions import read_revision
from hwsched.operations.survey.editing import remove
from tests.documents.quay import ROWS, make
from tests.model.saved_projects import SAVED, restore
from tests.once import copied

WHO = "keeper"
MARKS = ("WOOD", "RIM", "CHANNEL")


def photo(colour):
    held = io.BytesIO()
    Image.new("RGB", (60, 90), colour).save(held, "JPEG")
    return held.getvalue()


BLUE, RED, GREEN = photo((20, 30, 200)), photo((200, 30, 20)), photo((20, 200, 30))


@pytest.fixture
def quay(tmp_path):
    def made(path):
        make(path.parent, [row for row in ROWS if row["Mark"] in MARKS]).close()
        (path.parent / "quay.hwsched").rename(path)

    copied("a quay of three to be frozen", tmp_path / "q.hwsched", made)
    with open_project(tmp_path / "q.hwsched") as project:
        yield project


def opening(project, mark="WOOD"):
    return next(each.given.opening.id for each in project_view(project).openings if each.mark == mark)


def put_at(project, name, content, mark="WOOD", title=""):
    attach_content(project, "opening", opening(project, mark), name, content, who=WHO, title=title)


def off(project, name):
    detach(project, [each.id for each in attachments_of(project) if each.name == name], who=WHO)


def at_part(project):
    with project.reading() as connection:
        row, number = connection.execute(select(PART.c.id, PART.c.number).order_by(PART.c.number)).first()
    return row, number


def at_bench(project, *done, mark="WOOD", serial=None):
    row = opening(project, mark)
    unit = next(each for each in pieces(project, row) if each.role == "unit")
    record_piece(project, row, unit.id, who=WHO, done=done, serial=serial)


def printed(project, letter, folder, name="packets", mark="WOOD"):
    """Bytes of what is printed of a revision."""
    view, then, _ = revision_asked(project, letter, Scope(marks=(mark,)))
    (path,) = issue_by_name(printed_view(project, view, name, then=then), name, folder)
    return path.read_bytes()


def said(content):
    return " ".join(" ".join(page.extract_text() for page in PdfReader(io.BytesIO(content)).pages).split())


def test_a_packet_of_a_revision_is_the_same_bytes_whatever_was_done_since(quay, tmp_path):
    put_at(quay, "front.jpg", BLUE, title="From the quay")
    at_bench(quay, "built", "programmed")
    freeze(quay, who=WHO)
    first = {name: printed(quay, "A", tmp_path / "1", name) for name in ("packets", "bound-packets")}
    assert "Photo: From the quay" in said(first["packets"])
    assert "Done at the bench" in said(first["packets"])
    # Another photo before it, the old one gone, the bench's work undone, more of it elsewhere.
    put_at(quay, "new.jpg", RED)
    off(quay, "front.jpg")
    at_bench(quay)
    at_bench(quay, "tested", mark="RIM")
    (tmp_path / "office.toml").write_text('format = 1\ndoor_paper = "a4"\n')
    set_office(quay, tmp_path / "office.toml", who=WHO)
    view = printed_view(quay, project_view(quay), "packets")
    now = issue_by_name(view, "packets", tmp_path / "now")[0]
    assert round(PdfReader(now).pages[0].mediabox.height) == 842, "A4, as the office has it now"
    for name, content in first.items():
        assert printed(quay, "A", tmp_path / "2", name) == content
    # And where the opening itself is gone.
    remove(quay, "opening", opening(quay), who=WHO)
    for name, content in first.items():
        assert printed(quay, "A", tmp_path / "3", name) == content
    freeze(quay, who=WHO)
    with pytest.raises(MissingRowError, match="no opening has the mark WOOD"):
        printed(quay, "B", tmp_path / "4")


def test_what_nothing_was_done_to_is_held_once(quay):
    put_at(quay, "front.jpg", BLUE)
    row, _ = at_part(quay)
    attach_content(quay, "part", row, "sheet.pdf", b"%PDF-1.4 a data sheet", who=WHO)
    at_bench(quay, "built")
    freeze(quay, who=WHO)
    assert freeze(quay, who=WHO).contents == 1, "the root, which names the step of the journal"
    put_at(quay, "front.jpg", BLUE, "RIM")
    made = freeze(quay, who=WHO)
    assert made.contents == 3, "the opening, its chunk, the root"
    with quay.reading() as connection:
        assert connection.execute(select(func.count()).select_from(BLOB)).scalar() == 2
    # That packets go out writes a row of each piece, and is nothing that a revision holds.
    write_down_packets(quay, project_view(quay), who=WHO)
    assert freeze(quay, who=WHO).contents == 1


def otherwise(project, before, after=None):
    found = differences(project, before, after)
    lines = {each.mark: [(line.what, line.before, line.after) for line in each.lines] for each in found.openings}
    documents = {each.name: each.marks for each in document_differences(project, found)}
    return lines, [(each.what, each.before, each.after) for each in found.others], documents


def test_differences_tell_changed_photos_and_bench_work(quay):
    put_at(quay, "front.jpg", BLUE)
    put_at(quay, "side.jpg", GREEN, "RIM")
    at_bench(quay, "built", serial="S-1")
    freeze(quay, who=WHO)
    assert otherwise(quay, "A") == ({}, [], {})
    off(quay, "front.jpg")
    put_at(quay, "front.jpg", RED)
    at_bench(quay, "built", "tested", serial="S-2")
    row, number = at_part(quay)
    attach_content(quay, "part", row, "sheet.pdf", b"%PDF-1.4 a data sheet", who=WHO)
    lines, others, documents = otherwise(quay, "A")
    ((mark, (changed, bench)),) = lines.items()
    assert mark == "WOOD"
    assert changed[0] == "File front.jpg"
    assert changed[1] != changed[2]
    assert bench[0].startswith("Bench, unit ")
    assert bench[1:] == ("built, serial S-1", "built, tested, serial S-2")
    ((what, before, after),) = others
    assert (what, before) == (f"File sheet.pdf at part {number}", "")
    assert after.startswith("0.0 kB, ")
    assert documents["packets"] == ("WOOD",)
    freeze(quay, who=WHO)
    assert otherwise(quay, "A", "B") == (lines, others, documents)
    # As they came, so they go.
    off(quay, "side.jpg")
    freeze(quay, who=WHO)
    lines, _, documents = otherwise(quay, "B", "C")
    assert [what for what, _, _ in lines["RIM"]] == ["File side.jpg"]
    assert documents == {"packets": ("RIM",)}


def test_files_of_a_revision_are_listed_and_fetched_after_they_were_taken_off(quay, tmp_path, capsys):
    put_at(quay, "front.jpg", BLUE)
    row, number = at_part(quay)
    attach_content(quay, "part", row, "sheet.pdf", b"%PDF-1.4 a data sheet", who=WHO)
    freeze(quay, who=WHO)
    off(quay, "front.jpg")
    off(quay, "sheet.pdf")
    put_at(quay, "front.jpg", RED)
    found = attachments_then(quay, "A")
    assert [(each.about, each.name) for each in found] == [(f"part {number}", "sheet.pdf"), ("WOOD", "front.jpg")]
    written = {path.name: path.read_bytes() for path in fetch_into(quay, found, tmp_path / "then")}
    assert written == {"front.jpg": BLUE, "sheet.pdf": b"%PDF-1.4 a data sheet"}
    words = ["release", "attachments", str(quay.path), "WOOD", "--revision", "A", "--fetch", str(tmp_path / "asked")]
    assert run(words) == 0
    assert (tmp_path / "asked" / "front.jpg").read_bytes() == BLUE
    capsys.readouterr()


def test_an_open_question_stops_the_sheet_of_the_revision_too(quay):
    with quay.change("test", "A question", WHO) as change:
        told = {"number": 9, "file": "f", "key": "k", "at": "2026-01-01", "person": WHO, "told": {}}
        (delivery,) = change.insert(DELIVERY, [told])
        asked = {"delivery_id": delivery, "opening_id": opening(quay), "kind": "gone", "mark": "WOOD", "content": {}}
        (question,) = change.insert(OPEN_QUESTION, [asked])
    freeze(quay, who=WHO)
    with quay.change("test", "It is answered", WHO) as change:
        change.update(OPEN_QUESTION, [(question, {"answer": "held"})])
    freeze(quay, who=WHO)
    was, now = (revision_asked(quay, letter, Scope(marks=("WOOD",)))[0].openings[0] for letter in "AB")
    assert was.held == ("unfinished question of delivery 9: not in the file",)
    assert (was.ready, now.ready, now.held) == (False, True, ())
    lines, _, documents = otherwise(quay, "A", "B")
    assert lines == {"WOOD": [("Question of delivery 9", "Not in the file", "")]}
    assert documents["packets"] == ("WOOD",)


@pytest.fixture
def frozen_before(tmp_path):
    """A project whose revision A an earlier version froze, while a photo hung at an opening."""
    restore(SAVED / "0020.sql", tmp_path / "saved.hwsched")
    upgrade_project(tmp_path / "saved.hwsched")
    with open_project(tmp_path / "saved.hwsched") as project:
        yield project


def test_one_of_before_says_that_it_holds_none_and_shows_nothing_of_today(frozen_before, tmp_path, capsys):
    then = read_revision(frozen_before, "A")
    assert (then.files, then.office) == (None, None)
    (file,) = attachments_of(frozen_before)
    (mark,) = (each.mark for each in then.openings if each.given.opening.id == file.opening_id)
    put_at(frozen_before, "front.jpg", BLUE, mark)
    content = printed(frozen_before, "A", tmp_path / "1", mark=mark)
    assert "NO PHOTO. Revision A was frozen by an earlier version" in said(content)
    assert not [image for page in PdfReader(io.BytesIO(content)).pages for image in page.images]
    with pytest.raises(ValueRefusedError, match="A was frozen by an earlier version, which held no files"):
        attachments_then(frozen_before, "A")
    assert run(["release", "revision", str(frozen_before.path), "--show", "A", mark]) == 0
    assert "Files and bench work are unknown" in capsys.readouterr().out
    # What one of two does not hold is told once, and of no opening.
    found = differences(frozen_before, "A")
    assert not any(each.files or each.bench for each in found.openings)
    assert [(e.before, e.after) for e in found.others if e.what == "Photos, files and bench work"] == [
        ("not held", "held")
    ]
    # The next one takes nothing over from it, and holds them.
    freeze(frozen_before, who=WHO)
    assert {each.name for each in attachments_then(frozen_before, "B")} == {file.name, "front.jpg"}


def test_lost_contents_of_a_revision_are_found_and_named(quay, tmp_path):
    put_at(quay, "front.jpg", BLUE)
    freeze(quay, who=WHO)
    off(quay, "front.jpg")
    with quay.reading() as connection:
        assert not verify(connection)
        (key,) = connection.execute(select(BLOB.c.hash)).scalars()
    quay.close()
    with closing(sqlite3.connect(quay.path)) as outside, outside:
        outside.execute("DELETE FROM blob")
    with open_project(quay.path) as again:
        with again.reading() as connection:
            assert [each for each in verify(connection).contents if key in each] == [
                f"table blob, row {key}: it is gone, and a revision names it"
            ]
        assert "NO PHOTO. front.jpg" in said(printed(again, "A", tmp_path))
        with pytest.raises(MissingRowError, match=key):
            fetch_into(again, attachments_then(again, "A"), tmp_path)


def test_a_rescued_project_has_its_revisions_with_what_they_hold(quay, tmp_path):
    put_at(quay, "front.jpg", BLUE)
    at_bench(quay, "built")
    freeze(quay, who=WHO)
    off(quay, "front.jpg")
    first = printed(quay, "A", tmp_path / "1")
    assert "Photo: front.jpg" in said(first)
    quay.close()
    assert rescue(quay.path, tmp_path / "rescued.hwsched").whole
    with open_project(tmp_path / "rescued.hwsched") as again:
        assert printed(again, "A", tmp_path / "2") == first
        with again.reading() as connection:
            assert not verify(connection).contents


def test_the_command_line_prints_a_revision(quay, tmp_path, capsys):
    put_at(quay, "front.jpg", BLUE)
    freeze(quay, who=WHO)
    off(quay, "front.jpg")
    words = ["release", "print", str(quay.path), "packets", "--revision", "A", "-o", str(tmp_path / "out")]
    assert run([*words, "--mark", "wood", "--with-templates"]) == 0
    assert "'wood' is taken for WOOD" in capsys.readouterr().err
    assert [path.name for path in (tmp_path / "out" / "packets").iterdir()] == ["WOOD.pdf"]
    assert "Photo: front.jpg" in said((tmp_path / "out" / "packets" / "WOOD.pdf").read_bytes())
    for more, status, words_ in (
        (["--issue"], 2, "--issue goes with the project as it stands"),
        (["--where", "rating is known"], 3, "a query asks the project as it stands"),
        (["--mark", "WOOX"], 3, "no opening has the mark WOOX; nearest: WOOD"),
    ):
        assert run([*words, *more]) == status
        assert words_ in capsys.readouterr().err
    assert run(["release", "print", str(quay.path), "transmittals", "--revision", "A"]) == 3
    assert "no revision holds the transmittals" in capsys.readouterr().err
    assert run(["release", "print", str(quay.path), "packets", "--revision", "Z"]) == 3
    assert "there is no revision Z; there are: A" in capsys.readouterr().err


def test_nothing_in_the_program_throws_away_what_revisions_name():
    """Of what is held by its hash no row is deleted or rewritten: not by detaching, undo, upgrading or rescuing."""
    folder = Path(hwsched.__file__).parent
    found = []
    for path in folder.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text())):
            if isinstance(node, ast.Call):
                called = node.func.id if isinstance(node.func, ast.Name) else getattr(node.func, "attr", "")
                named = {each.id for part in node.args for each in ast.walk(part) if isinstance(each, ast.Name)}
                if called in ("delete", "take_out", "update", "drop") and named & {"BLOB", "FROZEN"}:
                    found.append(f"{path.relative_to(folder)}:{node.lineno}")
            elif isinstance(node, ast.Constant) and isinstance(node.value, str):
                words = node.value.casefold().split()
                if words[:2] == ["delete", "from"] and {"blob", "frozen"} & set(words[2:3]):
                    found.append(f"{path.relative_to(folder)}:{node.lineno}")
    assert found == []
