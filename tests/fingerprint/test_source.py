"""The hash of a source changes with what it does and with nothing else, and is the same for every interpreter."""

import pytest

from hwsched.fingerprint.source import digest

SOURCE = '''"""Module."""

from hwsched.calc import stack
from . import near as other

LEAST_MM: float = 3.5
"""Least wall."""


@decorated
def judge(case, *, wall=LEAST_MM):
    """Say it."""
    if case.wall_mm < wall and not case.off:
        yield f"{case.wall_mm:.1f} of {wall!r}" "mm"
    return {"a": 1, **{}}, [x for x in (1, 2, None, True, ..., -1.0e-9, b"x") if x]


class Kind:
    """A kind."""

    def nothing(self): ...
'''
SAME = {
    "a comment": SOURCE.replace("    if case", "    # by hand\n    if case"),
    "a docstring": SOURCE.replace("Say it.", "Say it otherwise."),
    "no docstring": SOURCE.replace('    """A kind."""\n', ""),
    "text under a constant": SOURCE.replace('"""Least wall."""', '"""Least wall [mm]."""'),
    "blank lines": "\n\n" + SOURCE.replace("\n", "\n\n"),
    "line ends": SOURCE.replace("\n", "\r\n"),
    "a broken line": SOURCE.replace("case.wall_mm < wall and", "case.wall_mm < wall\\\n        and"),
    "parentheses": SOURCE.replace("case.wall_mm < wall and not case.off", "(case.wall_mm < wall) and (not case.off)"),
    "the other quotes": SOURCE.replace('{"a"', "{'a'"),
    "an empty statement": SOURCE.replace("(self): ...", "(self): pass"),
    "the program's version": SOURCE + '\n__version__ = "7"\n',
}
OTHER = {
    "a constant": SOURCE.replace("3.5", "3.25"),
    "whole for broken": SOURCE.replace("3.5", "3"),
    "an operator": SOURCE.replace("<", "<="),
    "a turned condition": SOURCE.replace("not case.off", "case.off"),
    "a name": SOURCE.replace("case.off", "case.on"),
    "a default": SOURCE.replace("wall=LEAST_MM", "wall=0"),
    "a format": SOURCE.replace(":.1f", ":.2f"),
    "a message": SOURCE.replace("} of {", "} to {"),
    "a decorator": SOURCE.replace("@decorated\n", ""),
    "the order of statements": SOURCE.replace("from hwsched.calc import stack\n", "")
    + "from hwsched.calc import stack\n",
    "one statement more": SOURCE + "LEAST_MM = 4\n",
    "a type": SOURCE.replace(": float", ": int"),
    "what is imported": SOURCE.replace("import stack", "import cable as stack"),
}


@pytest.mark.parametrize("what", SAME)
def test_what_changes_nothing(what):
    assert SAME[what] != SOURCE
    assert digest(SAME[what].encode(), "a.py") == digest(SOURCE.encode(), "a.py")


@pytest.mark.parametrize("what", OTHER)
def test_what_changes_something(what):
    assert digest(OTHER[what].encode(), "a.py")[0] != digest(SOURCE.encode(), "a.py")[0]


def test_every_interpreter_says_the_same():
    """CI runs this on every version of Python that is served: an office may have several."""
    assert digest(SOURCE.encode(), "a.py")[0] == "711fe0a1d0fb2dc51b52779653efada1b42068eeae5bcfffe0bdecfdc572d55d"


def test_what_is_imported_is_named():
    assert digest(SOURCE.encode(), "a.py")[1] == ("hwsched.calc", "hwsched.calc.stack", ".", ".near")


def test_a_table_is_its_lines():
    assert digest(b"a,b\n1,2\n", "t.csv") == digest(b"a,b\r\n1,2\r\n", "t.csv")
    assert digest(b"a,b\n1,2\n", "t.csv") != digest(b"a,b\n1,3\n", "t.csv")


def test_what_is_no_python_is_taken_as_it_lies():
    assert digest(b"def (", "a.py") == digest(b"def (\r\n", "a.py")
    assert digest(b"def (", "a.py")[1] == ()
