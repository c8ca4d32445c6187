import unicodedata

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from hwsched.render.file_names import safe_file_name

RESERVED = {"con", "prn", "aux", "nul", *(f"{n}{d}" for n in ("com", "lpt") for d in "0123456789")}
HOSTILE = [
    "../../x", "..", ".", "", " ", "a/b", "a\\b", "a:b", "a*b", "CON", "con.txt", "NUL", "COM1", "lpt9.a.b", "-rf", "~",
    "x" * 500, "é" * 300, "a\x00b", "a\nb", "a.", "a ", "0012", "9E4", "3-4", "=1+1", '|<>?"', "\ud800", "a\u202eb",
    "#%&{}$!'`",
]  # fmt: skip


def check(name):
    assert name
    assert len(name.encode("utf-8")) <= 90
    assert not set(name) & set('/\\:*?"<>|\0')
    assert all(letter.isprintable() for letter in name)
    assert name == name.strip(" ")
    assert not name.endswith(".")
    assert name not in (".", "..")
    assert name[0] not in "-=+@~."
    assert name.split(".")[0].strip().casefold() not in RESERVED


@pytest.mark.parametrize("mark", HOSTILE)
def test_hostile_marks_make_safe_names(mark):
    check(safe_file_name(mark, set()))


@given(st.lists(st.text(max_size=120) | st.sampled_from(HOSTILE), max_size=30))
@example(HOSTILE * 3)
@example(["a", "A", "a (2)", "á", "a\u0301", "ﬁ", "fi", "B/1", "B:1", "B_1", "b_1 (2)"])
@example(["x" * 500 + str(n) for n in range(20)])
def test_no_two_names_are_the_same_on_any_file_system(marks):
    taken = set()
    names = [safe_file_name(mark, taken) for mark in marks]
    for name in names:
        check(name)
    folded = {unicodedata.normalize("NFKD", unicodedata.normalize("NFKD", name).casefold()) for name in names}
    assert len(folded) == len(names)
    again = set()
    assert [safe_file_name(mark, again) for mark in marks] == names


def test_ordinary_marks_stay_as_they_are():
    taken = set()
    marks = ["101-A", "0012", "9E4", "3-4", "GATE 1", "Tür 3", "N.02.118"]
    assert [safe_file_name(mark, taken) for mark in marks] == marks
