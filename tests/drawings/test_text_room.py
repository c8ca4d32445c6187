import string

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hwsched.drawings.text_room import broken, lines_tall_mm, text_room_mm
from hwsched.render.fonts import DESCENT_SHARE, size_of_letters_mm, text_width_mm
from hwsched.render.screen import LIGHT

ALPHABET = string.ascii_letters + string.digits + " .,:;-+/()[]#&%·×−–→°²äöüéßñçøÆœ"


@given(st.text(ALPHABET, max_size=40), st.sampled_from(["small", "label", "title", "warning"]))
def test_an_estimate_is_never_narrower_than_the_letters(text, role):
    height = {"small": 1.8, "label": 2.5, "title": 3.5, "warning": 3.5}[role]
    assert text_room_mm(text, role) >= text_width_mm(text, height, role in LIGHT.bold) - 1e-9


@pytest.mark.parametrize("text", ["2 × 18 AWG str", "product's own sheet", "Stair 2 north closet"])
def test_an_estimate_wastes_little(text):
    assert text_room_mm(text) <= 1.16 * text_width_mm(text, 1.8)


@given(st.text(ALPHABET, max_size=60), st.floats(6.0, 60.0))
def test_broken_lines_hold_all_words_and_fit(text, width):
    lines = broken(text, width)
    assert "".join("".join(lines).split()) == "".join(text.split())
    assert all(text_room_mm(line) <= width + 1e-9 for line in lines)


def test_lines_are_as_tall_as_they_print():
    # Two lines: a letter height, a step of 1.7 letter heights (conventions), the last line's descent.
    assert lines_tall_mm(2) == pytest.approx(1.8 * 2.7 + size_of_letters_mm(1.8) * DESCENT_SHARE, abs=0.02)
    assert lines_tall_mm(0) == 0.0
