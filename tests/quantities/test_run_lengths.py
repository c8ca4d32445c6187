"""Lengths of runs in the unit in which a project shows them."""

import pytest

from hwsched.quantities import LENGTH_STYLES, METRES_PER_FOOT, in_run_unit, run_unit


@pytest.mark.parametrize("style", LENGTH_STYLES)
def test_a_run_is_in_metres_beside_millimetres_and_in_feet_else(style):
    # 1 ft = 0.3048 m (international foot, 1959).
    assert run_unit(style) == ("m" if style == "mm" else "ft")
    assert in_run_unit(30.48, style) == pytest.approx(30.48 if style == "mm" else 100.0)
    assert METRES_PER_FOOT == 0.3048
