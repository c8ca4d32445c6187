"""Sizes of drills, against the list of number drills as shop tables print it."""

import pytest

from hwsched.quantities.drill_sizes import NUMBER_DRILLS_IN, format_drill


@pytest.mark.parametrize(
    ("inches", "named"),
    [(0.1160, "No. 32"), (0.1360, "No. 29"), (0.1495, "No. 25"), (0.2010, "No. 7"), (7 / 64, '7/64"'), (0.5, '1/2"')],
)
def test_a_bit_is_named_as_it_is_stamped(inches, named):
    assert format_drill(inches * 25.4, "fraction") == named


def test_a_number_drill_that_is_a_sixty_fourth_is_named_so():
    """No. 28 is 0.1405 in, 9/64 in is 0.140625: one bit does for both."""
    assert format_drill(0.1405 * 25.4, "fraction") == '9/64"'


def test_no_two_bits_have_one_name():
    """A sixty-fourth beside a number drill is another bit, and has another name."""
    sizes = {*NUMBER_DRILLS_IN.values(), *(n / 64 for n in range(3, 65))}
    named = {}
    for size in sorted(sizes):
        named.setdefault(format_drill(size * 25.4, "fraction"), []).append(size)
    assert all(max(each) - min(each) < 0.0003 for each in named.values()), named


def test_other_units_tell_them_apart_by_digits():
    assert format_drill(0.1360 * 25.4, "decimal-inch") == '0.136"'
    assert format_drill(3.2, "mm") == "3.2 mm"
    # What is neither is rounded as any length.
    assert format_drill(20.0, "fraction") == '25/32"'
