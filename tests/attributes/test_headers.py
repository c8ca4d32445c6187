"""Headers and words are compared without case, blanks and punctuation, and never so that two numbers become one."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hwsched.attributes import normal, split_unit


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("  Leaf   Thickness ", "leafthickness"),
        ("leaf_thickness", "leafthickness"),
        ("Door #", "door"),
        ("No.", "no"),
        ("S&R", "sr"),
        ("Int./Ext.", "intext"),
        ("MINERAL-CORE", "mineralcore"),
        ("1 leaf", "1leaf"),
        ("Straße", "strasse"),
        ("Door\u00a0No", "doorno"),
        ("-", ""),
        ("", ""),
        ("4.5", "4.5"),
        ("1-1/2 hr", "1-1/2hr"),
        ("1½ h", "1 1/2h"),
        ("3/4", "3/4"),
        ("11/2", "11/2"),
    ],
)
def test_normal(text, expected):
    assert normal(text) == expected


@pytest.mark.parametrize(("one", "other"), [("4.5", "45"), ("1 1/2", "11/2"), ("1/8", "18"), ("6-8", "68")])
def test_what_stands_between_digits_is_kept(one, other):
    assert normal(one) != normal(other)


@given(st.text(max_size=40))
def test_normal_is_stable(text):
    once = normal(text)
    assert normal(once) == once
    assert once == once.strip()


@pytest.mark.parametrize(
    ("header", "expected"),
    [
        ("Length [mm]", ("Length", "mm")),
        ("Length (in.)", ("Length", "in")),
        ("Length (\u2033)", ("Length", "in")),
        ("Width (ft)", ("Width", "ft")),
        ("Standing current [\u00b5A]", ("Standing current", "uA")),
        ("Standing current [uA] *", ("Standing current", "uA")),
        ("Lowest temperature [°F]", ("Lowest temperature", "degF")),
        ("Usable share [%]", ("Usable share", "%")),
        ("Resistance [Ω]", ("Resistance", "ohm")),
        ("Rating (label)", ("Rating (label)", "")),
        ("Length", ("Length", "")),
        ("Length []", ("Length []", "")),
        ("", ("", "")),
    ],
)
def test_split_unit(header, expected):
    assert split_unit(header) == expected
