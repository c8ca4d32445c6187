"""Documents seen before they are printed, by clicks and keys: pages leafed, searched, enlarged, printed, written."""

import pytest
from pypdf import PdfReader
from PySide6.QtCore import Qt
from PySide6.QtPrintSupport import QPrintDialog, QPrinter
from PySide6.QtWidgets import QDialog, QFileDialog

from hwsched.cli.command import run
from hwsched.desktop.looks.tokens import colour
from hwsched.desktop.release.documents_window import DocumentsWindow
from hwsched.operations.release.freezing import freeze
from hwsched.operations.release.project_view import project_view
from hwsched.operations.survey.editing import edit_facts
from tests.desktop.conftest import checked_of, choose, idle

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def documents(at_work):
    choose(at_work, "M116", "M004")
    at_work.beside.acts["documents"].trigger()
    # The main window, closed before the fixtures, takes it along.
    return at_work.frame.side.windows[DocumentsWindow]


def pick(qtbot, window, name):
    (row,) = [n for n in range(window.names.count()) if window.names.item(n).data(Qt.ItemDataRole.UserRole) == name]
    item = window.names.item(row)
    window.names.scrollToItem(item)
    qtbot.mouseClick(window.names.viewport(), LEFT, pos=window.names.visualItemRect(item).center())


def show(qtbot, window, at_work, name):
    pick(qtbot, window, name)
    qtbot.mouseClick(window.show_it, LEFT)
    idle(qtbot, at_work)


def text_of(window):
    return "\n".join(window.view.pages.text(n) for n in range(window.view.pages.count))


def test_packets_of_the_selected_are_leafed_searched_and_printed(documents, at_work, qtbot, tmp_path, monkeypatch):
    show(qtbot, documents, at_work, "packets")
    view, count = documents.view, documents.view.pages.count
    assert documents.told.text() == f"{count} pages of 2 openings"
    said = text_of(documents)
    assert "M116" in said
    assert "M004" in said
    assert "M005" not in said
    # What the gate holds says STOP here as on paper, and what goes out does not.
    project = at_work.frame.state.workspace.project
    for mark in ("M004", "M116"):
        (opening,) = project_view(project, [checked_of(at_work, mark).given.opening.id]).openings
        pages = [view.pages.text(n) for n in range(count) if mark in view.pages.text(n)]
        assert any("STOP" in page for page in pages) != opening.ready, mark
    qtbot.waitUntil(lambda: view.sheet.image is not None, timeout=10000)
    first = view.sheet.image
    # Leafed by the keys of pages, enlarged by plus, each page said.
    qtbot.mouseClick(view.viewport(), LEFT)
    qtbot.keyClick(view, Qt.Key.Key_PageDown)
    assert documents.at.text() == f"Page 2 of {count}"
    assert view.sheet.image is not first, "the page before never stands under the number of this one"
    qtbot.waitUntil(lambda: view.sheet.image is not None, timeout=10000)
    assert view.sheet.image.width() == pytest.approx(view.sheet.page_size.width() * view.devicePixelRatioF(), abs=2)
    qtbot.keyClick(view, Qt.Key.Key_End)
    assert view.page == count - 1
    qtbot.keyClick(view, Qt.Key.Key_Home)
    wide = view.sheet.width()
    for _ in range(4):
        qtbot.keyClick(view, Qt.Key.Key_Plus)
    assert view.sheet.width() > wide
    # The words are searched for, marked, and gone to.
    qtbot.keyClicks(documents.search, "m116")
    pages = [n for n in range(count) if "M116" in view.pages.text(n)]
    assert documents.hits.text().endswith(f"on {len(pages)} pages")
    assert view.page == pages[0]
    assert view.sheet.marked
    qtbot.keyClick(documents.search, Qt.Key.Key_Return)
    assert view.page == (pages[1] if len(pages) > 1 else pages[0])
    target = tmp_path / "printed.pdf"

    def chosen(dialog):
        dialog.printer().setOutputFormat(QPrinter.OutputFormat.PdfFormat)
        dialog.printer().setOutputFileName(str(target))
        dialog.printer().setResolution(72)
        return QDialog.DialogCode.Accepted

    monkeypatch.setattr(QPrintDialog, "exec", chosen)
    qtbot.mouseClick(documents.print_it, LEFT)
    idle(qtbot, at_work)
    assert documents.told.text() == f"{count} of {count} pages given to the printer"
    printed = PdfReader(target)
    assert len(printed.pages) == count
    # True size: letter, 8 1/2 by 11 in.
    assert [float(each) for each in printed.pages[0].mediabox[2:]] == pytest.approx([612, 792], abs=2)


def test_a_query_says_of_which_openings_and_files_are_written(documents, at_work, qtbot, tmp_path, monkeypatch):
    qtbot.keyClicks(documents.where, "mark = M005")
    show(qtbot, documents, at_work, "schedule")
    assert documents.told.text().endswith(" of 1 opening")
    assert "M005" in text_of(documents)
    assert "M116" not in text_of(documents)
    folder = tmp_path / "out"
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(folder))
    qtbot.mouseClick(documents.write_it, LEFT)
    idle(qtbot, at_work)
    assert sorted(each.name for each in folder.iterdir()) == ["schedule.pdf", "schedule.xlsx"]
    assert documents.told.text() == f"2 files written into {folder}"
    # What it wrote stays among the jobs, to be opened from there.
    made = at_work.frame.jobs.log.entries[0]
    assert (made.title, made.report.words) == ("Writing files", f"2 files written into {folder}")
    assert sorted(made.report.files) == sorted(folder.iterdir())


def test_a_revision_is_seen_and_written_as_it_was_frozen(documents, at_work, qtbot, tmp_path, monkeypatch):
    project, workspace = at_work.frame.state.workspace.project, at_work.frame.state.workspace
    assert [documents.state.itemText(n) for n in range(documents.state.count())] == ["The project as it stands"]
    opening = checked_of(at_work, "M116").given.opening.id
    at_work.frame.edit(lambda: edit_facts(project, "opening", opening, {"notes": "seen from the yard"}, who="tester"))
    idle(qtbot, at_work)
    freeze(project, who="tester", checker=workspace.checker)
    at_work.frame.edit(lambda: edit_facts(project, "opening", opening, {"notes": "seen again"}, who="tester"))
    idle(qtbot, at_work)
    choose(at_work, "M116")
    documents.follow()
    assert [documents.state.itemText(n) for n in range(1, documents.state.count())] == ["Revision A"]
    for state, words, other in (("Home", "seen again", "from the yard"), ("End", "from the yard", "seen again")):
        documents.state.setFocus()
        qtbot.keyClick(documents.state, getattr(Qt.Key, f"Key_{state}"))
        # A query asks the project as it stands.
        assert documents.where.isEnabled() == (state == "Home")
        show(qtbot, documents, at_work, "packets")
        said = " ".join(text_of(documents).split())
        assert words in said
        assert other not in said
    assert "Revision A" in said
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(tmp_path / "out"))
    qtbot.mouseClick(documents.write_it, LEFT)
    idle(qtbot, at_work)
    first = (tmp_path / "out" / "packets" / "M116.pdf").read_bytes()
    words = ["release", "print", str(project.path), "packets", "--revision", "A", "--mark", "M116"]
    assert run([*words, "-o", str(tmp_path / "typed")]) == 0
    assert (tmp_path / "typed" / "packets" / "M116.pdf").read_bytes() == first


def test_pages_of_before_are_said_to_be_so(documents, at_work, qtbot):
    show(qtbot, documents, at_work, "pick-list")
    at_work.opening.add_opening("NEW-1")
    assert "has changed since these pages were made" in documents.told.text()
    assert documents.view.pages.count


def test_bound_packets_are_seen_in_the_order_of_the_walk(documents, at_work, qtbot):
    """The cabinets of the quay were surveyed after the doors of its halls; by mark they come before."""
    qtbot.keyClicks(documents.where, "mark = X1 or mark = CAB-1")
    pick(qtbot, documents, "packets")
    assert not documents.walk.isEnabled()
    for name, first, then in (("mark", "CAB-1", "X1"), ("surveyed", "X1", "CAB-1")):
        pick(qtbot, documents, "bound-packets")
        assert documents.walk.isEnabled()
        documents.walk.setFocus()
        qtbot.keyClick(documents.walk, Qt.Key.Key_Home if name == "mark" else Qt.Key.Key_End)
        assert documents.walk.currentData() == name
        qtbot.mouseClick(documents.show_it, LEFT)
        idle(qtbot, at_work)
        said = text_of(documents)
        assert -1 < said.index(f"Opening {first}") < said.index(f"Opening {then}")


def test_words_that_are_found_are_seen_on_the_white_page_and_counted(documents, at_work, qtbot):
    choose(at_work, "M004")
    show(qtbot, documents, at_work, "packets")
    view = documents.view
    qtbot.waitUntil(lambda: view.sheet.image is not None, timeout=10000)
    qtbot.keyClicks(documents.search, "m004")
    pages = [n for n in range(view.pages.count) if "M004" in view.pages.text(n)]
    assert documents.hits.text().endswith("on 1 page" if len(pages) == 1 else f"on {len(pages)} pages")
    drawn = view.sheet.grab().toImage()
    ring, ratio = colour("focus", dark=False), drawn.devicePixelRatio()
    assert any(
        drawn.pixelColor(int(x * ratio), y) == ring
        for x in range(view.sheet.width())
        for y in range(drawn.height())
    )  # fmt: skip
