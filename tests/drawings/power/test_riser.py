import random
import time
from dataclasses import replace

import pytest

from hwsched.drawings.drawing import Text
from hwsched.drawings.power.riser import risers
from hwsched.values.power import Circuit, PowerResult, Supply, SupplyResult
from tests.drawings.measuring import named, one, span, words
from tests.drawings.paper import LETTER_MM, overlaps, struck, wide_and_tall
from tests.drawings.power_samples import LEVELS, OPENING_LEVELS, WORK, collapsed, solved, unit, unsound

SHEETS = risers(WORK, "North building", OPENING_LEVELS, "mm")
NORTH = "North building"


def shown(sheets, kind):
    return [shape.name for sheet in sheets for shape in sheet.shapes if getattr(shape, "name", "").startswith(kind)]


def everything(sheets):
    return " | ".join(words(sheet) for sheet in sheets)


def readable(sheet):
    assert overlaps(sheet) == []
    assert struck(sheet) == []
    wide, tall = wide_and_tall(sheet)
    assert wide <= LETTER_MM[0] + 1e-6
    # Title, scale line and a few notes stand on the page too.
    assert tall <= LETTER_MM[1] - 24.0


def random_result(seed, count, one_level=False):
    chance = random.Random(seed)
    names = list(LEVELS)
    supply = Supply("s", "PS-random", NORTH, chance.choice(names), part="LV-120", place="Closet")
    levels, circuits = {}, []
    for index in range(chance.randint(1, 6)):
        ways, places = [], ["supply"]
        for number in range(count):
            start = places[-1] if chance.random() < 0.5 else chance.choice(places)
            if chance.random() < 0.2:
                to, opening = f"J{index}.{number}" + chance.choice(("", " above the ceiling")), None
            else:
                to = opening = f"id-{index}{number:03}" + chance.choice(("", "", "-long mark of a door"))
                level = names[0] if one_level else chance.choice(names)
                levels[opening] = (level, LEVELS[level])
            ways.append((start, to, opening, chance.uniform(1, 60), chance.choice(("18 AWG", "16 AWG"))))
            places.append(to)
        devices = [unit(name, name) for _, _, name, *_ in ways if name]
        facts = Circuit(f"c{index}", "s", f"C{index}")
        circuits.append(solved(facts, supply, ways, devices, current=chance.choice((0.0001, 0.01))))
    return PowerResult((SupplyResult(supply, tuple(circuits), 12.0, 4.0),)), levels


@pytest.mark.parametrize("sheet", SHEETS, ids=lambda sheet: sheet.title)
def test_no_text_covers_another_or_is_struck_through_at_print_scale(sheet):
    readable(sheet)


def test_every_opening_stands_once():
    assert sorted(shown(SHEETS, "opening ")) == sorted(f"opening {mark.removeprefix('id-')}" for mark in OPENING_LEVELS)


def test_every_run_carries_conductor_and_length():
    runs = [run for supply in WORK.supplies for circuit in supply.circuits for run in circuit.runs if not run.transfer]
    assert len(shown(SHEETS, "run ")) >= len(runs)
    texts = [shape.text for sheet in SHEETS for shape in sheet.shapes if isinstance(shape, Text)]
    assert sum(text.endswith(" AWG str") for text in texts) == len(runs)
    for run in runs:
        assert f"{run.length_m:.1f}".removesuffix(".0") + " m" in texts


def test_lengths_are_feet_where_the_project_shows_inches():
    # 1 ft is 0.3048 m exactly (international foot): 12.5 m are 41.0 ft.
    assert "41 ft" in everything(risers(WORK, NORTH, OPENING_LEVELS, "fraction"))


def test_levels_stand_from_lowest_to_highest():
    heights = {}
    for level in LEVELS:
        bands = [sheet for sheet in SHEETS if named(sheet, f"level {level}")]
        heights[level] = [(sheet.title, span(one(sheet, f"level {level}"))) for sheet in bands]
    for low, high in zip(list(LEVELS), list(LEVELS)[1:], strict=False):
        for title, (_, _, _, top) in heights[low]:
            for other, (_, bottom, _, _) in heights[high]:
                assert title != other or bottom >= top - 1e-6


def test_an_opening_stands_in_the_band_of_its_level():
    for opening, (level, _) in OPENING_LEVELS.items():
        name = f"opening {opening.removeprefix('id-')}"
        sheet = next(sheet for sheet in SHEETS if named(sheet, name))
        _, low, _, high = span(one(sheet, name))
        _, bottom, _, top = span(one(sheet, f"level {level}"))
        assert bottom < low < high < top


def test_supplies_say_name_part_volts_and_share():
    said = everything(SHEETS)
    for text in ("PS-1", "LV-120", "12 V, 6 A", "12% of rating", "C6 strikes", "3 A proposed"):
        assert text in said
    assert len(shown(SHEETS, "supply ")) == 3


def test_a_low_opening_and_the_run_to_it_are_marked():
    low = [shape for sheet in SHEETS for shape in sheet.shapes if getattr(shape, "pen", "") == "warning"]
    assert {shape.name for shape in low} >= {"opening 255A", "run 254A to 255A"}
    assert not {shape.name for shape in low if shape.name.startswith("opening")} - {"opening 255A"}
    assert "needs 10.00 V" in everything(SHEETS)


def test_an_opening_behind_a_transfer_is_one_box_with_a_mark():
    assert len(shown(SHEETS, "power transfer")) == 1
    # The same, where the run ends at the frame and the transfer ends at the opening.
    supply = Supply("s", "PS", NORTH, "Level 1")
    ways = [
        ("supply", "frame", None, 5.0, "18 AWG"),
        ("frame", "x/leaf", "x", 0.5, "22 AWG"),
        ("frame", "y", "y", 5.0, "18 AWG"),
    ]
    work = PowerResult((SupplyResult(supply, (solved(Circuit("c", "s", "C"), supply, ways),)),))
    sheets = risers(work, NORTH, {"x": ("Level 1", 0.0), "y": ("Level 1", 0.0)}, "mm")
    assert sorted(shown(sheets, "opening ")) == ["opening x", "opening y"]
    assert len(shown(sheets, "power transfer")) == 1


def test_openings_without_a_level_stand_in_a_band_that_says_so():
    sheets = risers(WORK, NORTH, {}, "mm")
    assert "Level not recorded" in everything(sheets).replace(" | ", " ")
    assert len(shown(sheets, "opening ")) == 60


@pytest.mark.parametrize("seed", range(12))
@pytest.mark.parametrize("one_level", [False, True])
def test_any_tree_is_readable_and_complete(seed, one_level):
    work, levels = random_result(seed, 5 + 9 * (seed % 4), one_level)
    sheets = risers(work, NORTH, levels, "fraction")
    for sheet in sheets:
        readable(sheet)
    assert len(shown(sheets, "opening ")) == len(levels)


def test_what_goes_on_on_another_sheet_says_so_at_both_ends():
    work, levels = random_result(3, 90)
    sheets = risers(work, NORTH, levels, "mm")
    said = everything(sheets)
    assert len(sheets) > 2
    assert "on: sheet" in said
    assert ", sheet 1" in said
    assert "continued" in said


def test_a_long_chain_takes_no_long_time():
    supply = Supply("s", "PS", NORTH, "Level 1")
    marks = [f"id-{number}" for number in range(1500)]
    ways = [(a, b, b, 3.0, "18 AWG") for a, b in zip(["supply", *marks], marks, strict=False)]
    circuit = solved(Circuit("c", "s", "C"), supply, ways[:1])
    whole = replace(
        circuit, runs=tuple(replace(circuit.runs[0], from_node=a, to_node=b, to_name=b) for a, b, *_ in ways), nodes=()
    )
    begin = time.perf_counter()
    sheets = risers(PowerResult((SupplyResult(supply, (whole,)),)), NORTH, dict.fromkeys(marks, ("L", 0.0)), "mm")
    assert time.perf_counter() - begin < 10.0
    assert len(shown(sheets, "opening ")) == 1500


def test_a_loop_and_loose_runs_are_not_followed():
    supply = Supply("s", "PS", NORTH, "Level 1")
    circuit = solved(Circuit("c", "s", "C"), supply, [("supply", "id-1", "id-1", 3.0, "18 AWG")])
    run = circuit.runs[0]
    more = (
        replace(run, from_node="id-1", to_node="id-2", to_name="2"),
        replace(run, from_node="id-2", to_node="id-1", to_name="1"),
        replace(run, from_node="id-7", to_node="id-8", to_name="8"),
    )
    work = PowerResult((SupplyResult(supply, (replace(circuit, runs=(run, *more)),)),))
    said = everything(risers(work, NORTH, {"id-1": ("L", 0.0), "id-2": ("L", 0.0)}, "mm"))
    assert "C: 8 is joined to nothing." in said


def test_nothing_to_draw_is_said():
    assert "No supply is laid" in words(risers(PowerResult(), NORTH, {}, "mm")[0])
    bare = PowerResult((SupplyResult(Supply("s", "PS-5", NORTH)),))
    (sheet,) = risers(bare, NORTH, {}, "mm")
    readable(sheet)
    assert "no circuits" in words(sheet)
    assert "share of rating unknown" in words(sheet).replace(" | ", " ")


def test_a_circuit_with_problems_and_one_without_solution_say_so():
    supply, circuit = unsound()
    other, _, _ = collapsed()
    (sheet,) = risers(PowerResult((supply, other)), "Annex", {"id-801": ("Level 1", 0.0)}, "mm")
    readable(sheet)
    said = words(sheet).replace(" | ", " ")
    assert "not worked out: see the notes" in said
    assert circuit.problems[0].message in said
    assert "C8: no solution in state peak: constant-power loads" in said
    assert "no solution: see the notes" in said


def test_a_place_where_a_supply_may_stand_is_none_of_the_building_s_supplies():
    """Nothing hangs on it and none is chosen: on the riser it would be looked for on site."""
    spare = SupplyResult(Supply("s", "PS-9", NORTH, use="candidate"))
    laid = SupplyResult(Supply("t", "PS-5", NORTH, use="laid"))
    assert "No supply is laid" in words(risers(PowerResult((spare,)), NORTH, {}, "mm")[0])
    (sheet,) = risers(PowerResult((spare, laid)), NORTH, {}, "mm")
    assert "PS-5" in words(sheet)
    assert "PS-9" not in words(sheet)
