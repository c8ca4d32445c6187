from dataclasses import replace

import pytest

from hwsched.drawings.power.wiring_sheet import LEAF_NOTE, caution_note, wiring_sheet
from hwsched.values.power import Circuit, CircuitResult, Supply, SupplyResult
from tests.drawings.measuring import named, one, span, words
from tests.drawings.paper import LETTER_MM, overlaps, struck, wide_and_tall
from tests.drawings.power_samples import OPENING_LEVELS, WORK, collapsed, solved, strike, unit, unsound


def sheet_of(opening, **more):
    return wiring_sheet(*WORK.circuit_of(opening), opening, **more)


def said(drawing):
    return words(drawing).replace(" | ", " ")


@pytest.mark.parametrize("opening", OPENING_LEVELS)
def test_every_opening_of_the_building_is_readable_on_a_page(opening):
    drawing = sheet_of(opening)
    assert overlaps(drawing) == []
    assert struck(drawing) == []
    wide, tall = wide_and_tall(drawing)
    assert wide <= LETTER_MM[0] + 1e-6
    assert tall <= LETTER_MM[1] - 20.0
    assert drawing.notes[1] == caution_note()


def test_each_wire_is_named_at_both_ends():
    drawing = sheet_of("id-104")
    texts = [shape.text for shape in drawing.shapes if hasattr(shape, "text")]
    for number in (1, 2, 3, 4):
        for pole in "+−":
            assert texts.count(f"C1-{number}{pole}") == 2
            assert one(drawing, f"wire C1-{number}{pole}")
    assert texts.count("18 AWG str") == 4


def test_a_run_has_the_same_wire_number_on_every_sheet():
    # The run from 103 to 104 is the fourth of its circuit.
    assert "C1-4+" in words(sheet_of("id-104"))
    assert "C1-4+" in words(sheet_of("id-105"))


def test_what_stands_on_the_leaf_is_within_the_dashed_line_and_the_strike_is_not():
    drawing = sheet_of("id-104")
    leaf = one(drawing, "leaf")
    assert leaf.pen == "hidden"
    x0, y0, x1, y1 = span(leaf)
    a, b, c, d = span(one(drawing, "device SU-40"))
    assert x0 < a < c < x1
    assert y0 < b < d < y1
    _, _, _, top = span(one(drawing, "device ES-7"))
    assert top < y0
    assert LEAF_NOTE in said(drawing)
    assert span(one(drawing, "power transfer"))[2] < x0


def test_parts_in_the_frame_may_be_named():
    drawing = sheet_of("id-104", frame_parts=frozenset({"SU-40"}))
    _, y0, _, _ = span(one(drawing, "leaf"))
    assert span(one(drawing, "device SU-40"))[3] < y0
    assert span(one(drawing, "device ES-7"))[1] > y0


def test_terminals_are_named_or_the_reader_is_sent_to_the_products_sheet():
    assert "+ V+" in said(sheet_of("id-101"))
    assert "− GND" in said(sheet_of("id-101"))
    assert said(sheet_of("id-250A")).count("terminal: see the product's own sheet") == 2


def test_coils_have_their_suppression():
    drawing = sheet_of("id-440")
    assert named(drawing, "suppression")
    assert "S: Diode reverse across the coil" in said(drawing)
    assert "fail-secure" in said(drawing)
    assert not named(sheet_of("id-101"), "suppression")


def test_volts_at_worst_stand_at_each_place_and_a_low_one_is_marked():
    drawing = sheet_of("id-255A")
    _, circuit = WORK.circuit_of("id-255A")
    node = circuit.node_of("id-255A")
    assert f"gets {node.lowest_v:.2f} V at worst: TOO LOW" in said(drawing)
    assert one(drawing, "opening 255A, at the opening").pen == "warning"
    assert said(drawing).count("at worst") >= 6


def test_many_places_on_the_way_are_left_out_by_name():
    drawing = sheet_of("id-109")
    assert "Left out on the way, see the riser: 104, 105." in said(drawing)
    assert not named(drawing, "opening 104")


def test_the_way_runs_through_a_frame_whose_transfer_ends_at_the_opening():
    supply = Supply("s", "PS", "North")
    ways = [("supply", "frame", None, 5.0, "18 AWG"), ("frame", "x/leaf", "x", 0.5, "22 AWG")]
    devices = [unit("x", "x"), replace(unit("x", "x"), part="LK-2", role="lock"), strike("x", "x"), strike("x", "x")]
    drawing = wiring_sheet(SupplyResult(supply), solved(Circuit("c", "s", "C"), supply, ways, devices), "x", "mm")
    assert overlaps(drawing) == []
    assert struck(drawing) == []
    assert len(named(drawing, "device ES-7")) == 2
    _, y0, _, _ = span(one(drawing, "leaf"))
    assert span(one(drawing, "device LK-2"))[1] > y0
    assert "0.5 m" in said(drawing)


def test_what_cannot_be_drawn_is_said():
    supply, circuit = unsound()
    assert "form a loop" in said(wiring_sheet(supply, circuit, "id-9"))
    supply, some, every = collapsed()
    assert "no solution in state peak" in said(wiring_sheet(supply, some, "id-801"))
    whole = wiring_sheet(supply, every, "id-802")
    assert "volts unknown" in said(whole)
    assert "2 × 18 AWG sol" in said(whole)
    assert "No run of this circuit" in said(wiring_sheet(supply, some, "id-802"))
    bare = CircuitResult(Circuit("c", "s", "C"), Supply("s", "PS"))
    assert "C has no runs." in said(wiring_sheet(SupplyResult(Supply("s", "PS")), bare, "id-1"))
    loop = replace(some, runs=(replace(some.runs[0], from_node="id-801"),))
    assert "do not start at the supply" in said(wiring_sheet(supply, loop, "id-801"))
    idle = replace(some, devices=())
    assert "No device is known here." in said(wiring_sheet(supply, idle, "id-801"))
