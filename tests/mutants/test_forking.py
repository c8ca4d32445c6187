"""A forked run gives what a new process gives: the exit status, what was written, and an end where time is up."""

import os

import pytest

from tests.mutants.forking import TIME_WAS_UP, run_forked
from tests.mutants.trying import is_of

pytestmark = [
    pytest.mark.slow,
    pytest.mark.skipif(not hasattr(os, "fork"), reason="a process is forked on POSIX alone"),
]


@pytest.fixture
def tree(tmp_path):
    """Write a program of one line with its test, as the copies of the tree have them."""

    def of(line):
        for path, text in (
            ("hwsched/__init__.py", line),
            ("tests/__init__.py", ""),
            ("tests/test_one.py", "import hwsched\n\n\ndef test_one():\n    assert hwsched.one() == 1\n"),
        ):
            (tmp_path / path).parent.mkdir(exist_ok=True)
            (tmp_path / path).write_text(text, encoding="utf-8")
        return tmp_path

    return of


def tried(tree, limit_s=60.0):
    words = ["-q", "--tb=no", "--assert=plain", "-p", "no:cacheprovider", "tests/test_one.py"]
    return run_forked(tree, words, {**os.environ, "PYTHONPATH": str(tree)}, limit_s)


def test_each_run_reads_the_program_of_its_own_tree(tree):
    code, text = tried(tree("one = lambda: 1\n"))
    assert (code, "1 passed" in text) == (0, True)
    code, text = tried(tree("one = lambda: 2\n"))
    assert (code, "FAILED tests/test_one.py::test_one" in text) == (1, True)


def test_a_run_that_never_ends_is_ended(tree):
    code, text = tried(tree("while True:\n    pass\n"), limit_s=1.0)
    assert (code, text.endswith(TIME_WAS_UP)) == (1, True)


def test_the_tests_of_a_module_are_known_by_their_file():
    assert is_of("tests/calc/opening/test_cable.py::test_bend[1]", "hwsched/calc/opening/cable.py")
    assert not is_of("tests/calc/opening/test_cable.py::test_bend[1]", "hwsched/calc/power/cable_distance.py")
    assert not is_of("tests/operations/power/test_supply_siting.py::test_docs", "hwsched/calc/power/siting.py")
