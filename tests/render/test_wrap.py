from hypothesis import given
from hypothesis import strategies as st

from hwsched.render.fonts import width_per_size
from hwsched.render.wrap import printable, wrap


@given(st.text(max_size=300), st.floats(20, 300))
def test_no_letter_is_lost_and_no_line_is_too_wide(text, width):
    lines = wrap(text, width, 9.0)
    assert "".join("".join(lines).split()) == "".join(printable(text).split())
    for line in lines:
        assert width_per_size(line) * 9.0 <= width + 1e-3 or len(line.strip()) <= 1


def test_numbers_are_not_broken_at_their_point():
    assert wrap("1.25 1.25", 25, 9.0) == ("1.25", "1.25")


def test_long_words_break_behind_dashes_first():
    assert wrap("TC-SUPER-LONG", 45, 9.0)[0] == "TC-"


def test_line_feeds_stay():
    assert wrap("a\r\nb\n\nc", 100, 9.0) == ("a", "b", "", "c")


def test_what_cannot_be_shown_is_replaced():
    assert printable("a\x00b\u202ec\ud800") == "a bc\ufffd"
