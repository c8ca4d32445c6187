"""What may be changed in a line, what is left alone, and that a draw stays."""

from dataclasses import replace

import pytest

from tests.mutants import sites
from tests.mutants.__main__ import main
from tests.mutants.sites import ROOT, draw, mutants_of, read_equivalent, says_something_else

MODULE = '''"""Docstring 1."""

from typing import Final

__all__ = ["one"]
WIDE_MM: Final = 40.0


def is_wide(mm: float, at_least: int = 3, *, strictly: bool = False) -> bool | None:
    """Say 2 > 1."""
    if mm <= 0:
        raise ValueError(f"{mm + 1} of 5")
    found = max(mm, 2.5) * at_least
    found = found - 1
    return found > WIDE_MM and not strictly


def spread(first, second):
    return (
        first
        + second
    )
'''


@pytest.fixture
def changes(tmp_path, monkeypatch):
    """Every change of a module as (line, kind, before, after)."""

    def of(text):
        monkeypatch.setattr(sites, "ROOT", tmp_path)
        path = tmp_path / "module.py"
        path.write_text(text, encoding="utf-8")
        found = [each for each in mutants_of(path) if says_something_else(each)]
        return {(each.line, each.kind, each.before.strip(), each.after.strip()) for each in found}

    return of


def test_every_kind_of_change(changes):
    found = changes(MODULE)
    assert {
        (6, "constant", "WIDE_MM: Final = 40.0", "WIDE_MM: Final = 41.0"),
        (11, "comparison", "if mm <= 0:", "if mm < 0:"),
        (11, "condition", "if mm <= 0:", "if True:"),
        (11, "condition", "if mm <= 0:", "if False:"),
        (11, "constant", "if mm <= 0:", "if mm <= 1:"),
        (12, "deleted", 'raise ValueError(f"{mm + 1} of 5")', "pass"),
        (13, "min-max", "found = max(mm, 2.5) * at_least", "found = min(mm, 2.5) * at_least"),
        (13, "arithmetic", "found = max(mm, 2.5) * at_least", "found = max(mm, 2.5) / at_least"),
        (14, "deleted", "found = found - 1", "pass"),
        (14, "arithmetic", "found = found - 1", "found = found + 1"),
        (15, "and-or", "return found > WIDE_MM and not strictly", "return found > WIDE_MM or not strictly"),
        (15, "not", "return found > WIDE_MM and not strictly", "return found > WIDE_MM and strictly"),
        (15, "return", "return found > WIDE_MM and not strictly", "return not (found > WIDE_MM and not strictly)"),
        (19, "return", "return (", "return None and ("),
        (21, "arithmetic", "+ second", "- second"),
    } <= found


def test_what_no_reader_takes_for_a_fault_is_left_alone(changes):
    found = changes(MODULE)
    assert not {line for line, *_ in found} & {1, 3, 5, 10}
    assert {after for line, kind, _, after in found if line == 9 and kind != "constant"} == set()
    assert {kind for line, kind, *_ in found if line == 12} == {"deleted"}


def test_whether_equality_counts_within_a_tolerance_is_left_alone(changes):
    """A tolerance moved, or taken off instead of added, stays a change: what touches sees it."""
    found = changes("def f(a, b):\n    return a < b + _TOUCH_MM\n\n\ndef g(a):\n    return a > -1e-9 or a > 1e-3\n")
    assert {(line, after) for line, kind, _, after in found if kind in ("comparison", "arithmetic")} == {
        (2, "return a < b - _TOUCH_MM"), (6, "return a > -1e-9 or a >= 1e-3"),
    }  # fmt: skip
    named = changes("def f(a, b):\n    return EQUAL_MM < a <= b.mm + EQUAL_MM or a < b - _TOLERANCE_V or a <= b\n")
    assert {after for _, kind, _, after in named if kind == "comparison"} == {
        "return EQUAL_MM < a <= b.mm + EQUAL_MM or a < b - _TOLERANCE_V or a < b"
    }


def test_a_name_is_never_left_without_its_value(changes):
    assert changes("def f(a):\n    b = a\n    return b\n") == {(3, "return", "return b", "return None")}


def test_columns_are_counted_in_letters(changes):
    assert (1, "comparison", 'x = "µ" if 1 < 2 else "Ω"', 'x = "µ" if 1 <= 2 else "Ω"') in changes(
        'x = "µ" if 1 < 2 else "Ω"\n'
    )


def test_each_change_is_one_line():
    for path in sorted((ROOT / "hwsched" / "calc").rglob("*.py")):
        lines = path.read_text(encoding="utf-8").split("\n")
        for each in mutants_of(path):
            assert lines[each.line - 1] == each.before != each.after
            assert "\n" not in each.after


def test_a_change_that_does_not_parse_or_says_the_same_is_not_drawn(tmp_path, monkeypatch):
    monkeypatch.setattr(sites, "ROOT", tmp_path)
    path = tmp_path / "module.py"
    path.write_text("def f(a):\n    return a + 1\n", encoding="utf-8")
    good = mutants_of(path)[0]
    bad = [replace(good, after=after) for after in ("    return (a + 1)", "    return a + +", good.before + "  # one")]
    assert draw([*bad, good], 9, "1") == [good]


def test_a_draw_stays_where_other_lines_change(tmp_path, monkeypatch):
    monkeypatch.setattr(sites, "ROOT", tmp_path)
    path = tmp_path / "module.py"
    path.write_text("\n".join(f"def f{n}(a):\n    return a + {n}\n" for n in range(40)), encoding="utf-8")
    before = draw(mutants_of(path), 20, "1")
    assert len({each.line for each in before}) == 20
    assert draw(mutants_of(path), 20, "1") == before
    assert draw(mutants_of(path), 20, "2") != before
    path.write_text("# A line more.\n" + path.read_text(encoding="utf-8"), encoding="utf-8")
    assert [each.diff for each in draw(mutants_of(path), 20, "1")] == [each.diff for each in before]


def test_a_change_named_as_equivalent_is_not_drawn(tmp_path, monkeypatch):
    monkeypatch.setattr(sites, "ROOT", tmp_path)
    listed = tmp_path / "equivalent.csv"
    listed.write_text("file,before,after,reason\nmodule.py,return a + 1,return None,why\n", encoding="utf-8")
    monkeypatch.setattr(sites, "EQUIVALENT", listed)
    path = tmp_path / "module.py"
    path.write_text("def f(a):\n    return a + 1\n", encoding="utf-8")
    for seed in "123456":
        assert [each.after.strip() for each in draw(mutants_of(path), 9, seed)] != ["return None"]


def test_every_equivalent_stands_in_the_program_and_has_its_reason():
    for row in read_equivalent():
        found = {(each.before.strip(), each.after.strip()) for each in mutants_of(ROOT / row.file)}
        assert (row.before, row.after) in found, f"{row.file} has no such line any more: take the row out"
        assert len(row.reason) > 20


def test_a_draw_is_done_in_parts(capsys):
    """The third to the fifth of six, and what is left from the sixth on."""

    def listed(*words):
        assert main(["6", "--seed", "1", "--in", "calc/power/cells.py", "--list", *words]) == 0
        return capsys.readouterr().out.split("hwsched/")[1:]

    whole = listed()
    assert len(whole) == 6
    assert listed("--from", "3", "--to", "5") == whole[2:5]
    assert listed("--from", "6") == whole[5:]
