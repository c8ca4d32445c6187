"""Printing packets and writing down that they went out: only what was printed to the end did."""

import os

import pytest
from pypdf import PdfReader

from hwsched.desktop.window import Window
from hwsched.model.project import open_project
from hwsched.model.record_queries import read_packets
from hwsched.operations.release import printed_set
from hwsched.operations.release.issued_documents import issue_by_name
from tests.desktop.conftest import idle
from tests.operations.exact import id_of, small

MARKS = ("1", "2")


@pytest.fixture
def file(tmp_path):
    """A project of two usual openings, fitted."""
    path = tmp_path / "yard.hwsched"
    small(path, MARKS).close()
    return path


@pytest.fixture
def shown(qtbot, file):
    window = Window("tester")
    qtbot.addWidget(window)
    window.show()
    window.project.open_project(str(file))
    idle(qtbot, window)
    assert window.openings.register.total() == len(MARKS)
    return window


def out(file):
    """Return the marks whose packets are on record as out."""
    project = open_project(file)
    try:
        with project.reading() as connection:
            held = read_packets(connection, [id_of(project, mark) for mark in MARKS])
        return {mark for mark in MARKS if id_of(project, mark) in held}
    finally:
        project.close()


def test_packets_that_were_printed_are_out(shown, qtbot, file, tmp_path):
    shown.release.print_documents(["packets"], "all", tmp_path, "letter", went_out=True)
    idle(qtbot, shown)
    assert out(file) == set(MARKS)


def test_packets_that_were_only_printed_are_not(shown, qtbot, file, tmp_path):
    shown.release.print_documents(["packets"], "all", tmp_path, "letter", went_out=False)
    idle(qtbot, shown)
    assert (tmp_path / "packets" / "2.pdf").is_file()
    assert out(file) == set()


@pytest.mark.parametrize("printed", [0, 1, 2])
def test_packets_of_a_print_that_was_stopped_are_not(shown, qtbot, file, tmp_path, monkeypatch, printed):
    """Stopped before the first packet, after one of two or after the last: nobody knows which are in whose hands."""

    def stopped(view, name, folder, formats, *, paper, progress, cancelled, since):
        def told(done, total):
            progress(done, total)
            if done >= printed:
                shown.frame.jobs.cancel()

        if not printed:
            shown.frame.jobs.cancel()
        return issue_by_name(view, name, folder, formats, paper=paper, progress=told, cancelled=cancelled)

    monkeypatch.setattr(printed_set, "issue_by_name", stopped)
    shown.release.print_documents(["packets"], "all", tmp_path, "letter", went_out=True)
    idle(qtbot, shown)
    assert len(list(tmp_path.glob("packets/*.pdf"))) == printed
    assert out(file) == set()


@pytest.fixture
def held(monkeypatch):
    """Names of files that cannot be replaced, as on Windows while a viewer has them open."""
    names = set()
    replace = os.replace

    def refuse(source, target):
        if os.path.basename(target) in names:
            raise PermissionError(13, "Permission denied")
        replace(source, target)

    monkeypatch.setattr(os, "replace", refuse)
    return names


def test_files_that_a_viewer_holds_keep_no_other_document_and_are_listed_at_the_end(shown, file, qtbot, tmp_path, held):
    out = tmp_path / "out"
    (out / "packets").mkdir(parents=True)
    for path in (out / "schedule.pdf", out / "packets" / "1.pdf"):
        path.write_bytes(b"old")
    held.update(("schedule.pdf", "1.pdf"))
    shown.release.print_documents(["schedule", "pick-list", "packets"], "all", out, "letter", went_out=True)
    idle(qtbot, shown)
    told = shown.frame.telling.told
    assert told.text().startswith("2 files could not be replaced")
    assert told.detailedText().splitlines() == [str(out / "schedule.pdf"), str(out / "packets" / "1.pdf")]
    told.close()
    there = {path.relative_to(out).as_posix() for path in out.rglob("*") if path.is_file()}
    assert {"schedule.xlsx", "pick-list.pdf", "pick-list.xlsx", "packets/2.pdf"} <= there
    assert (out / "schedule.pdf").read_bytes() == (out / "packets" / "1.pdf").read_bytes() == b"old"
    with open_project(file) as project, project.reading() as connection:
        assert not read_packets(connection)


def test_packets_that_were_printed_went_out_though_another_document_is_held(shown, file, qtbot, tmp_path, held):
    (tmp_path / "schedule.pdf").write_bytes(b"old")
    held.add("schedule.pdf")
    shown.release.print_documents(["schedule", "packets"], "all", tmp_path, "letter", went_out=True)
    idle(qtbot, shown)
    told = shown.frame.telling.told
    assert told.text().startswith("1 file could not be replaced, since another program has it open")
    assert "Written before that" in told.informativeText()
    told.close()
    with open_project(file) as project, project.reading() as connection:
        assert len(read_packets(connection)) == 2


def test_packets_name_the_pages_of_templates_that_are_printed_along(shown, qtbot, tmp_path, held):
    """Two openings alike share a template: behind the list of page 1 it begins on page 2."""

    def step():
        shown.release.print_documents(["packets", "templates"], "all", tmp_path, "letter")
        idle(qtbot, shown)
        return " ".join(PdfReader(tmp_path / "packets" / "1.pdf").pages[1].extract_text().split())

    assert ", page 2 of templates.pdf" in step()
    # One that was not written anew may have its templates on other pages.
    held.add("templates.pdf")
    assert "(page in its list)" in step()
    told = shown.frame.telling.told
    assert told.text().startswith("1 file could not be replaced")
    told.close()


def test_where_nothing_is_drilled_by_a_template_all_else_is_printed(shown, qtbot, tmp_path):
    shown.frame.state.ids = ()
    shown.release.print_documents(["templates", "pick-list"], "chosen", tmp_path, "letter")
    idle(qtbot, shown)
    told = shown.frame.telling.told
    assert "no opening fits with a hole to be drilled" in told.text() + told.informativeText()
    told.close()
    assert {path.name for path in tmp_path.iterdir()} >= {"pick-list.pdf", "pick-list.xlsx"}
