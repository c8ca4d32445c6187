"""Gate locks: the bolts that hold them, and those that carry their own unit. Lengths in mm.

A bolt passes gate and case and holds a nut: 50.8 + 30 + 8 = 88.8; the nut from ISO 7089 and ISO 4032, from memory.
"""

import pytest

from hwsched.fitting import fit
from hwsched.rules.judging import check
from tests.fitting.door import door, item, leaf, lock, opening, part, stock

GATE = leaf(material="steel-gate", construction=None, stile_mm=100.0, thickness_mm=50.8, width_mm=1000.0)
QUIET = {
    "o": opening(
        form="gate",
        exposure="exterior",
        frame_stop_mm=0.0,
        frame_material="none",
        temperature_low_c=-10.0,
        operations_per_day=10.0,
    )
}
YARD = opening(form="gate", exposure="exterior", frame_stop_mm=0.0, frame_material="none", temperature_low_c=-10.0)
BOLT = {"form": "through-bolt", "size": "M8", "leaf_material": "steel-gate"}


def gate(cat=None, lf=GATE, items=(), lk=None, o=None, **more):
    units = {"UNIT": {"exposure": "exterior"}}
    return door(o or YARD, lf, lk or lock("gate", case_width_mm=None), items, cat=cat or stock(**units), **more)


def with_bolts(*bolts, **changed):
    return stock(UNIT={"exposure": "exterior"}, drop=("BOLT",), add=bolts, **changed)


def refusals(found, rule="gate-bolts"):
    return [r for r in found.refused if r.rule == rule]


def test_the_bolts_of_a_gate_lock_are_in_its_box():
    found = fit(gate())
    assert found.status == "fits"
    assert [(p.part, p.quantity) for p in found.parts if p.part == "BOLT"] == [("BOLT", 4)]


def test_a_gate_without_bolts_in_the_catalogue_is_refused():
    found = fit(gate(with_bolts()))
    assert found.status == "does-not-fit"
    assert "no through bolt for a gate of steel gate" in refusals(found)[0].reason


@pytest.mark.parametrize(("long", "short"), [(88.8, None), (85.0, 3.8), (70.0, 18.8)])
def test_a_bolt_passes_gate_and_case_and_holds_its_nut(long, short):
    found = fit(gate(with_bolts(part("B1", "fastener", **BOLT, length_mm=long, head="hexagon"))))
    if short is None:
        assert found.status == "fits"
    else:
        assert refusals(found)[0].values["short_mm"] == pytest.approx(short)


def test_a_square_neck_does_not_hold_in_steel_tube():
    carriage = part("B1", "fastener", 0.1, **BOLT, length_mm=100.0, head="carriage")
    found = fit(gate(with_bolts(carriage)))
    assert "square neck" in refusals(found)[0].reason
    # A dearer one that holds is taken before a cheaper one that does not.
    hexagon = part("B2", "fastener", 9.0, **BOLT, length_mm=100.0, head="hexagon")
    assert "B2" in {p.part for p in fit(gate(with_bolts(carriage, hexagon))).parts}


def test_in_wood_a_square_neck_beds():
    wood = {**BOLT, "leaf_material": "wood"}
    screws = {"SCREW": {"size": "#6"}}
    lf = leaf(thickness_mm=50.8, stile_mm=100.0, construction="stile-and-rail")
    found = fit(gate(with_bolts(part("B1", "fastener", **wood, length_mm=100.0, head="carriage"), **screws), lf))
    assert not refusals(found)
    assert "B1" in {p.part for p in found.parts}


def test_what_of_a_bolt_is_unknown_is_asked():
    found = fit(gate(with_bolts(part("B1", "fastener", **BOLT, length_mm=100.0))))
    assert found.status == "to-measure"
    assert [need.fact for need in found.needs] == ["part B1.head"]
    deep = fit(gate(stock(UNIT={"exposure": "exterior"}, GATE={"case_depth_mm": None})))
    assert [need.fact for need in deep.needs] == ["part GATE.case_depth_mm"]


OWN = {
    "own_unit": True, "lead_mm": None, "connector": None, "standing_ua": 60.0, "operation_ma": 150.0,
    "operation_s": 4.0, "cell": "AA", "cells": 6, "temperature_low_c": -20.0,
}  # fmt: skip


def test_a_gate_lock_with_its_own_unit_asks_for_no_other():
    """No unit, no lead, no hole but those of its bolts; its cells are told and counted."""
    # Ten times a day: 150 mA for 4 s and 60 uA standing, of 2200 mAh by 80 %, last a year.
    given = gate(stock(GATE=OWN, CELL={"chemistry": "alkaline"}), **QUIET)
    found = fit(given)
    assert found.status == "fits"
    assert found.part("unit") is None
    assert found.placement is None
    assert found.cable is None
    assert {hole.purpose for hole in found.holes} == {"bolt"}
    assert [(p.part, p.quantity) for p in found.parts if p.role == "battery"] == [("CELL", 6)]
    assert found.battery is not None
    assert not [each for each in check(given, found) if each.severity == "error"]


def test_what_only_a_unit_on_the_face_hangs_on_is_not_asked():
    there = item("closer", x=None)
    cat = stock(GATE=OWN, CELL={"chemistry": "alkaline"}, BOLT={"security_drive": True})
    given = gate(cat, items=[there], **QUIET)
    found = fit(given)
    assert found.status == "fits"
    assert not [each for each in check(given, found) if each.needs]
    other = gate(items=[there])
    assert "existing_item.x_mm" in {need.fact for need in fit(other).needs}


def test_of_bolts_the_one_is_taken_that_can_be_turned():
    """Rails beside a nut leave an open spanner less than 60 degrees: a dearer bolt that a socket turns goes in."""
    rails = [
        item("other", 100.0, 1062.3 + way * 65.0, 500.0, 10.0, face="inside", projection_mm=20.0) for way in (1, -1)
    ]
    spanner = part("B1", "fastener", 0.1, **BOLT, length_mm=100.0, head="hexagon", turned_by="spanner")
    socket = part("B2", "fastener", 9.0, **BOLT, length_mm=100.0, head="hexagon", turned_by="socket")
    quiet = {"o": QUIET["o"]}
    assert "B1" in {p.part for p in fit(gate(with_bolts(spanner, socket), **quiet)).parts}
    below = gate(with_bolts(spanner, socket), items=rails, **quiet)
    assert "B2" in {p.part for p in fit(below).parts}
    found = fit(gate(with_bolts(spanner), items=rails, **quiet))
    assert (found.status, {r.rule for r in refusals(found, "spanner-room")}) == ("does-not-fit", {"spanner-room"})
