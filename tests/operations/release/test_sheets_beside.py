"""Sheets that are shared out to other processes are those that are written here, whatever happens to the others."""

import errno
import logging
import pickle
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from hwsched.fingerprint import engine
from hwsched.language import spoken
from hwsched.operations.release import opening_sheets, sheets_beside
from hwsched.operations.release.issued_documents import issue_by_name
from hwsched.operations.release.opening_sheets import OpeningSheet, Printing
from hwsched.operations.release.sheets_beside import SheetsBeside, write_sheets
from hwsched.writing import UnwritableError
from tests.documents.quay import viewed


@pytest.fixture(scope="module")
def quay(tmp_path_factory):
    return viewed(tmp_path_factory.mktemp("quay"))


@pytest.fixture
def printed(quay, tmp_path):
    """What is printed, and the bytes of each sheet as this process alone writes it."""
    view = replace(quay, openings=quay.openings[:8])
    alone = [path.read_bytes() for path in issue_by_name(view, "packets", tmp_path / "alone")]
    (tmp_path / "beside").mkdir()
    sheets = [OpeningSheet(each, tmp_path / "beside" / each.mark) for each in view.openings]
    return Printing(replace(view, openings=()), "packets", ("pdf",), "letter"), sheets, alone


def wait_for_others(turns, count):
    """Let the others do so many before this process takes its first."""
    with turns._turn:
        assert turns._turn.wait_for(lambda: turns.done >= count, timeout=60)


def end(turns):
    while turns.one_more():
        pass


def contents(found):
    return [path.read_bytes() for path in found]


def test_another_process_writes_its_share_and_the_same(printed, caplog):
    printing, sheets, alone = printed
    with SheetsBeside(printing, sheets, 1) as turns:
        wait_for_others(turns, 4)
        end(turns)
    assert contents(turns.files[place].written[0] for place in range(len(sheets))) == alone
    assert not caplog.records
    assert all(each.poll() is not None for each in turns.processes)


def test_files_come_in_the_order_of_the_openings(printed):
    printing, sheets, alone = printed
    told = []
    found = write_sheets(printing, sheets, progress=lambda *each: told.append(each), workers=2)
    assert contents(found.all_written()) == alone
    assert [path.stem for path in found.written] == [sheet.opening.mark for sheet in sheets]
    assert told[-1] == (8, 8)


def test_a_process_that_dies_at_it_leaves_its_share_to_this_one(printed, monkeypatch, caplog):
    printing, sheets, alone = printed
    said = pickle.dumps(engine().key)
    code = f"import sys; m={said!r}; sys.stdout.buffer.write(len(m).to_bytes(8, 'big') + m)"
    monkeypatch.setattr(sheets_beside, "COMMAND", [sys.executable, "-c", code])
    with caplog.at_level(logging.WARNING):
        assert contents(write_sheets(printing, sheets, workers=1).all_written()) == alone
    assert "beside this one failed" in caplog.text


def test_what_cannot_be_written_beside_is_told_here(printed, monkeypatch):
    """A folder that is gone: the other cannot write there, nor can this one, which says so."""
    printing, sheets, _ = printed
    gone = [*sheets[:-1], replace(sheets[-1], stem=Path(sheets[-1].stem.parent / "gone" / "sheet"))]
    with SheetsBeside(printing, gone, 1) as turns:
        with turns._turn:
            assert turns._turn.wait_for(lambda: turns._failed, timeout=60)
        with pytest.raises(UnwritableError, match="gone"):
            end(turns)
    assert all(each.poll() is not None for each in turns.processes)


def test_a_full_disk_ends_all_of_them(printed, monkeypatch):
    printing, sheets, _ = printed

    def full(*_):
        raise UnwritableError(f"sheet: {errno.ENOSPC}")

    monkeypatch.setattr(opening_sheets, "render_pdf", full)
    with pytest.raises(UnwritableError, match=str(errno.ENOSPC)):
        write_sheets(printing, sheets, workers=1)


def test_who_stops_waits_for_nothing_that_is_not_begun(printed):
    printing, sheets, _ = printed
    turns = SheetsBeside(printing, sheets, 1)
    with turns:
        turns.one_more()
    assert all(each.poll() is not None for each in turns.processes)
    assert not [path for path in sheets[0].stem.parent.iterdir() if path.name.startswith(".")]


def test_another_one_is_started_for_many_sheets_only(printed, monkeypatch):
    printing, sheets, _ = printed
    asked = []

    class Counted(SheetsBeside):
        def __init__(self, printing, sheets, workers):
            asked.append(workers)
            super().__init__(printing, [], 0)

    monkeypatch.setattr(sheets_beside, "SheetsBeside", Counted)
    monkeypatch.setattr(sheets_beside, "cores", lambda: 4)
    for count in (8, 59, 60, 130, 1000):
        write_sheets(printing, sheets[:1] * count)
    # One for each sixty sheets; this process is one of the four.
    assert asked == [0, 0, 1, 2, 3]


def test_it_speaks_the_language_of_this_one(printed, monkeypatch):
    assert spoken() == "en"
    monkeypatch.setenv("HWSCHED_LANGUAGE", "stretched")
    from hwsched.language import speak

    try:
        speak()
        assert spoken() == "stretched"
        printing, sheets, plain = printed
        with SheetsBeside(printing, sheets, 1) as turns:
            wait_for_others(turns, 4)
            end(turns)
        assert contents(turns.files[place].written[0] for place in (0, 7)) != [plain[0], plain[7]]
        here = [path.read_bytes() for path in write_sheets(printing, sheets, workers=0).written]
        assert contents(turns.files[place].written[0] for place in range(8)) == here
    finally:
        monkeypatch.delenv("HWSCHED_LANGUAGE")
        speak()
