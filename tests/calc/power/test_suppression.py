"""Suppression of coils: the rules of the table, published arithmetic."""

import doctest
from math import exp

import pytest

from hwsched.calc.power import suppression
from hwsched.calc.power.suppression import coil_energy_j, diode_release_s, suppressor_for


def test_docs():
    assert doctest.testmod(suppression).failed == 0


def test_no_plain_diode_across_an_electromagnetic_lock():  # access-controller installation manual (facts 2.4)
    found = suppressor_for("electromagnetic-lock")
    assert found.suppressor == "varistor"
    assert not found.plain_diode_allowed
    assert "delays release" in found.text
    assert suppressor_for("electric-strike").plain_diode_allowed
    assert suppressor_for("lamp") is None


def test_coil_arithmetic():  # general electronics references (facts 2.4)
    assert coil_energy_j(0.1, 0.5) == pytest.approx(0.0125)
    assert diode_release_s(0.1, 24, 1.0, exp(-1)) == pytest.approx(4.17e-3, abs=5e-6)
    assert diode_release_s(0.1, 24, 0.1, 0.2) == 0
