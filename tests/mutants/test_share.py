"""A small draw in every run: the same seed always, so that a change of the program changes few of its lines.

The full figures are those of ``tests/run --mutants``; here only the tests of the changed module itself are asked.
"""

from pathlib import Path

import pytest

from tests.mutants.sites import ROOT, Mutant, draw, mutants_of
from tests.mutants.trying import Copy, described

SEED = "share"
COUNT = 4

pytestmark = pytest.mark.slow


def its_tests(path: Path) -> Path:
    """Return where the tests of a module stand."""
    return (ROOT / "tests" / path.relative_to(ROOT / "hwsched")).with_name(f"test_{path.name}")


@pytest.fixture(scope="module")
def copy(tmp_path_factory, sample_folder):
    return Copy(tmp_path_factory.mktemp("tree"), sample_folder)


@pytest.mark.turns(2)
@pytest.mark.parametrize("floor", ["calc", "operations"])
def test_all_but_one_of_a_draw_die(floor, copy):
    paths = [path for path in sorted((ROOT / "hwsched" / floor).rglob("*.py")) if its_tests(path).exists()]
    drawn = draw((each for path in paths for each in mutants_of(path)), COUNT, SEED)
    assert len(drawn) == COUNT
    tried = [copy.try_with_files(each, [its_tests(ROOT / each.file).relative_to(ROOT).as_posix()]) for each in drawn]
    for trial in tried:
        print(described(trial))
    assert sum(not trial.killed for trial in tried) <= 1


def test_a_change_that_changes_nothing_lives_and_a_fault_dies(copy):
    """Else a draw that dies would say nothing: the tests pass in the copy as it is."""
    file = "hwsched/calc/survey/length.py"
    lines = (ROOT / file).read_text(encoding="utf-8").split("\n")
    at = next(n for n, line in enumerate(lines) if line.startswith("def "))
    held = Mutant(file, at + 1, "", lines[at], f"{lines[at]}  # as before", range(at + 1, at + 2), None, True)
    asked = ["tests/calc/survey/test_length.py"]
    assert not copy.try_with_files(held, asked).killed
    fault = Mutant(file, at + 1, "", lines[at], f"raise ValueError; {lines[at]}", range(at + 1, at + 2), None, True)
    assert copy.try_with_files(fault, asked).killed
    assert (copy.folder / file).read_bytes() == (ROOT / file).read_bytes()
