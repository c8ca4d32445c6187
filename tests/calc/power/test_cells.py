"""Default cells and their charge in the cold: as in the facts, with what is unverified marked so."""

import doctest

import pytest

from hwsched.calc.calculator import InputError
from hwsched.calc.power import cells
from hwsched.calc.power.cells import capacity_share, default_cells, default_self_discharge, end_voltage_per_cell_v


def test_docs():
    assert doctest.testmod(cells).failed == 0


def test_defaults():  # facts 2.6
    found = {c.name: c for c in default_cells()}
    assert (found["aa-alkaline"].capacity_mah, found["aa-alkaline"].end_v) == (2200, 0.9)
    assert found["9v-alkaline"].capacity_mah == 500
    assert found["cr2032"].capacity_mah == 220
    assert {n for n, c in found.items() if not c.verified} == {
        "aa-lithium-iron",
        "aa-lithium-thionyl",
        "cr123a",
        "cr2",
        "cr2032",
    }
    for cell in found.values():
        assert cell.low_mah <= cell.capacity_mah <= cell.high_mah
        default_self_discharge(cell.chemistry)


def test_self_discharge():  # facts 2.6: 0.5 % a month is about 6 % a year; 1 % Li-SOCl2
    assert default_self_discharge("alkaline") == (0.06, True)
    assert default_self_discharge("lithium-thionyl-chloride")[0] == 0.01
    with pytest.raises(KeyError):
        default_self_discharge("potato")


def test_cold():  # facts 2.6, from memory: 60 to 75 % at 0 °C, 15 to 30 % at -20 °C; the cautious end
    assert capacity_share("alkaline", 0) == (0.60, False)
    assert capacity_share("alkaline", -20) == (0.15, False)
    assert capacity_share("alkaline", -10)[0] == pytest.approx(0.375)
    assert capacity_share("alkaline", 25) == (1.0, True)
    assert capacity_share("lithium-iron-disulfide", 0)[0] == 0.9
    assert capacity_share("alkaline", -20.1) is None
    assert capacity_share("potato", 20) is None
    shares = [capacity_share("alkaline", t)[0] for t in range(-20, 40)]
    assert shares == sorted(shares)


def test_end_voltage():
    assert end_voltage_per_cell_v(8.5, 6) == pytest.approx(1.4167, abs=1e-4)
    with pytest.raises(InputError, match="cells_in_series"):
        end_voltage_per_cell_v(4, 0)
    with pytest.raises(InputError, match="unit_minimum_v"):
        end_voltage_per_cell_v(0, 4)
