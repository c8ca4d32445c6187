"""Text for cells: nothing that XML cannot hold, nothing longer than a cell."""

import doctest

import pytest

from hwsched.render import cell_text
from hwsched.render.cell_text import needs_quoting, safe_text


def test_examples():
    assert doctest.testmod(cell_text).failed == 0


@pytest.mark.parametrize(
    ("text", "expected"),
    [("a\x00b\x1fc", "abc"), ("a\tb\nc", "a\tb\nc"), ("\ud800x\uffff", "x"), ("=1", "=1"), ("😀", "😀"), ("", "")],
)
def test_safe(text, expected):
    assert safe_text(text) == expected


def test_the_limit_of_a_cell():
    # 32,767 characters: specification of the .xlsx format's most used program, common practice.
    assert len(safe_text("x" * 40000)) == 32767


@pytest.mark.parametrize("text", ["=1", "+1", "-1", "@a", "\t=1", "\r=1"])
def test_what_a_spreadsheet_takes_for_a_formula(text):
    assert needs_quoting(text)


@pytest.mark.parametrize("text", ["", "a=1", "1-1", " =1", "0012"])
def test_what_it_does_not(text):
    assert not needs_quoting(text)
