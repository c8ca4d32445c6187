"""Forms that are no size, and sides that are exchanged. Values stand in test_lengths."""

import pytest

from hwsched.quantities.readings import Refusal, Size
from hwsched.quantities.sizes import read_size


def test_letters_say_which_side_is_which() -> None:
    assert read_size('36"w x 80"h', None) == Size(914.4, 2032.0)
    assert read_size('80" high x 36" wide', None) == Size(914.4, 2032.0)


@pytest.mark.parametrize("text", ["36", "x", "36 x", "x 80", "a x b x c", "36 x high", '36"w x 80"'])
def test_no_size(text: str) -> None:
    assert read_size(text, "in") is None


def test_a_thickness_is_asked_to_stand_apart() -> None:
    with pytest.raises(Refusal, match="3 measures") as refused:
        read_size("900 x 2100 x 45 mm", None)
    assert "thickness apart" in refused.value.suggestion
