"""How much of a part there is, as a person says it."""

import pytest

from hwsched.language import STRETCHED, in_language, stretched
from hwsched.values import Part
from hwsched.values.amounts import amount_words, little_of, part_words, times_words, whole

BOTTLE = Part("TL", "consumable", unit="EA", attributes={"form": "thread-lock"})
SLEEVE = Part("SL", "consumable", unit="EA", attributes={"form": "sleeve"})
REEL = Part("W", "wire", unit="M")
FILL = Part("GEL", "consumable", unit="ML", attributes={"form": "sealant"})


@pytest.mark.parametrize(
    ("part", "quantity", "style", "said"),
    [
        (BOTTLE, 0.05, "mm", "some drops"),
        (BOTTLE, 1.0, "mm", "1"),
        (SLEEVE, 2.0, "fraction", "2"),
        (SLEEVE, 0.25, "fraction", "a little"),
        # 1.84 m are 6.0367 ft.
        (REEL, 1.84, "fraction", "6.04 FT"),
        (REEL, 1.84, "decimal-inch", "6.04 FT"),
        (REEL, 1.84, "mm", "1.84 M"),
        (FILL, 2.5, "mm", "2.5 ML"),
        (None, 3.0, "mm", "3"),
    ],
)
def test_an_amount_is_pieces_a_length_or_how_little(part, quantity, style, said):
    assert amount_words(part, quantity, style) == said


def test_one_piece_is_not_counted_and_a_little_is_no_number():
    assert part_words("CAM", Part("CAM", "cam", unit="EA"), 1.0, "mm") == "CAM"
    assert part_words("SL", SLEEVE, 3.0, "mm") == "SL × 3"
    assert part_words("TL", BOTTLE, 0.05, "mm") == "TL: some drops"
    assert part_words("W", REEL, 1.0, "mm") == "W × 1 M"
    assert (times_words(SLEEVE, 3.0, "mm"), times_words(BOTTLE, 0.05, "mm")) == ("x3", "some drops")


def test_a_little_is_said_in_the_language_in_force():
    with in_language(STRETCHED):
        assert little_of(BOTTLE, 0.05) == stretched("some drops")


def test_whole_bottles_are_picked():
    assert (whole(0.4, "EA"), whole(1.05, "EA"), whole(0.4, "ML")) == (1, 2, 0.4)
