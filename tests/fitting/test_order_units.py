"""What an order unit holds: a price of a box is none of a screw, one of a reel none of a metre."""

import doctest
from decimal import Decimal

import pytest

from hwsched.calc.parts.cost import Job
from hwsched.fitting import order_units
from hwsched.fitting.costing import cost_in, line_of, order_of, terms_of
from hwsched.values import Catalogue, Part
from hwsched.values.terms import CostTerms


def made(unit, kind="fastener", price="12.00", **attributes):
    part = Part("P", kind, unit=unit, list_price=Decimal(price), currency="USD", attributes=attributes)
    return Catalogue({"P": part}, "k")


def cost(catalogue, quantity, order=False):
    line = (order_of if order else line_of)("P", quantity, catalogue)
    return cost_in(Job([line]), terms_of(CostTerms(), catalogue))


def test_docs():
    assert doctest.testmod(order_units).failed == 0


@pytest.mark.parametrize("unit", ["EA", "ea", "PC", ""])
def test_what_is_ordered_by_the_piece_costs_its_price(unit):
    assert cost(made(unit), 8).parts == 96


def test_a_screw_costs_its_share_of_the_box():
    # 12.00 for 100: 8 of them 0.96; of a box of 144 a piece is 0.083333, to a millionth.
    assert cost(made("BOX", pieces=100), 8).parts == Decimal("0.96")
    assert cost(made("BOX", pieces=144), 1).parts == Decimal("0.083333")


def test_what_a_box_holds_is_asked_where_nobody_has_said():
    found = cost(made("BOX"), 8)
    assert (found.parts, [each.needs for each in found.unknown]) == (0, [("part P.pieces",)])
    # A reader is not packed by the dozen: its unit is asked for.
    assert [each.needs for each in cost(made("BOX", "surface-unit"), 1).unknown] == [("part P.unit",)]


def test_wire_by_the_reel_the_metre_and_the_foot():
    assert cost(made("M", "wire", "0.62"), 10).parts == Decimal("6.2")
    assert cost(made("FT", "wire", "0.3048"), 10).parts == 10
    assert cost(made("REEL", "wire", "152.00", reel_m=152.0), 10).parts == 10
    assert [each.needs for each in cost(made("REEL", "wire"), 10).unknown] == [("part P.reel_m",)]


@pytest.mark.parametrize(("metres", "reels"), [(0.5, 1), (152, 1), (152.01, 2), (310, 3)])
def test_reels_are_ordered_whole(metres, reels):
    assert cost(made("REEL", "wire", "152.00", reel_m=152.0), metres, order=True).parts == 152 * reels
