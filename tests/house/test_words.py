"""The page of words lists what was renamed, and no identifier is called by an old word any more."""

import io
import re
import tokenize
from functools import cache
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PAGE = ROOT / "resources" / "handbook" / "words.md"
# Verbs of the command line, rules and what a library calls so; the page says why.
STILL = {"fewest_kinds": {"hwsched/cli"}, "given": {"*"}, "place_supplies": {"*"}}
# Old words that mean something else elsewhere: where they may stand.
ELSEWHERE = {
    "Place": ("hwsched/desktop/", "tests/desktop/"),
    "site": ("tests/house/test_packs.py",),
    "lay": ("hwsched/calc/power/conductor.py", "tests/calc/oracles/spice.py"),
    "doubts": ("hwsched/exchange/workbook.py", "tests/exchange/test_workbook.py"),
}


def rows(heading):
    """Rows of the table under a heading of the page, as cells."""
    _, _, rest = PAGE.read_text(encoding="utf-8").partition(heading)
    table = re.split(r"\n(?=#)", rest, maxsplit=1)[0]
    lines = [line for line in table.splitlines() if line.startswith("| `")]
    return [[cell.strip() for cell in line.strip("|").split("|")] for line in lines]


def names(cell):
    return re.findall(r"`([^`]+)`", cell)


OLD = sorted({old for row in rows("# Words of the house") for old in names(row[1])} - STILL.keys())
NEW = sorted({new for row in rows("# Words of the house") for new in names(row[0])})


@cache
def identifiers():
    """Identifier to the files in which it stands as a name of Python; keywords of ``match`` left out.

    Only files are taken apart in which an old word stands, or a new one that was not found as a name before.
    """
    found = {}
    for path in (*(ROOT / "hwsched").rglob("*.py"), *(ROOT / "tests").rglob("*.py")):
        file, text = path.relative_to(ROOT).as_posix(), path.read_text(encoding="utf-8")
        words = set(re.findall(r"\w+", text))
        if words.isdisjoint(OLD) and words.intersection(NEW) <= found.keys():
            continue
        for token in tokenize.generate_tokens(io.StringIO(text).readline):
            if token.type != tokenize.NAME:
                continue
            # Modules are walked by the table of rooms; those of the command line are called like its verbs.
            of_module = re.match(r"\s*from [\w.]+ import", token.line) and token.start[1] < token.line.index(" import")
            of_match = token.string == "case" and re.match(r"\s*case .*:\s*(#.*)?$", token.line)
            if not of_module and not of_match:
                found.setdefault(token.string, set()).add(file)
    return found


def test_the_page_names_old_and_new():
    listed = rows("# Words of the house")
    assert len(listed) > 30
    for new, old, meaning, _ in listed:
        assert names(new)
        assert names(old)
        assert meaning


@pytest.mark.parametrize("old", OLD)
def test_nothing_is_called_by_an_old_word(old):
    found = {file for file in identifiers().get(old, ()) if not file.startswith(ELSEWHERE.get(old, ("\0",)))}
    assert not found


@pytest.mark.parametrize("new", NEW)
def test_what_the_page_names_is_there(new):
    assert new in identifiers()


def test_every_module_that_moved_stands_where_the_page_says():
    moved = rows("## Rooms")
    assert len(moved) > 40
    for new, old in moved:
        (now,), (was,) = names(new), names(old)
        at = ROOT / "hwsched" / Path(*now.split("."))
        assert at.with_suffix(".py").exists() or at.is_dir(), now
        before = ROOT / "hwsched" / Path(*was.split("."))
        assert not before.with_suffix(".py").exists(), was
        assert not (before / "__init__.py").exists(), was


def test_every_file_that_went_into_a_room_stands_there_and_nowhere_else():
    went = rows("## Files that went into a room")
    assert len(went) >= 9
    for cell, files in went:
        (room,) = names(cell)
        at = ROOT / "hwsched" / Path(*room.split("."))
        assert len(names(files)) > 1
        for name in names(files):
            assert (at / f"{name}.py").exists(), f"{room}.{name}"
            assert not (at.parent / f"{name}.py").exists(), name
