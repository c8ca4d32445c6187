from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hwsched.drawings.drawing import Line, Text
from hwsched.drawings.power.voltage_plot import ticks, voltage_plot
from hwsched.render.screen import DARK, LIGHT
from hwsched.values.power import Circuit, CircuitResult, Supply, SupplyResult
from tests.drawings.measuring import named, words
from tests.drawings.paper import LETTER_MM, overlaps, wide_and_tall
from tests.drawings.power_samples import WORK, collapsed, solved, unit, unsound

PAIRS = [(supply, circuit) for supply in WORK.supplies for circuit in supply.circuits]
LOW = next(pair for pair in PAIRS if pair[1].circuit.name == "C5")
STATES = {"normal": "mains normal", "lowest-mains": "lowest mains", "standby-end": "end of standby", "peak": "peak"}


def axis(drawing, tick, upright):
    """Return paper mm and value of the first and the last tick of an axis, from the words beside them."""
    texts = [shape for shape in drawing.shapes if isinstance(shape, Text)]
    found = []
    for shape in named(drawing, tick):
        (x, y), _ = shape.points
        if upright:
            (text,) = [t for t in texts if t.anchor == "right" and t.y + 0.9 == pytest.approx(y)]
        else:
            (text,) = [t for t in texts if t.anchor == "centre" and t.role == "small" and t.x == pytest.approx(x)]
        found.append((y if upright else x, float(text.text)))
    return found[0], found[-1]


def to_value(mm, ends):
    (a, low), (b, high) = ends
    return low + (mm - a) / (b - a) * (high - low)


@pytest.mark.parametrize(
    ("supply", "circuit"), PAIRS, ids=lambda each: getattr(getattr(each, "circuit", None), "name", "")
)
def test_plots_are_readable_on_a_page(supply, circuit):
    drawing = voltage_plot(supply, circuit)
    assert overlaps(drawing) == []
    wide, tall = wide_and_tall(drawing)
    assert wide <= LETTER_MM[0] + 1e-6
    assert tall <= LETTER_MM[1] - 20.0


@pytest.mark.parametrize("state", STATES)
def test_lines_lie_where_the_axes_say(state):
    supply, circuit = LOW
    drawing = voltage_plot(supply, circuit, "mm")
    across, up = axis(drawing, "distance tick", False), axis(drawing, "volts tick", True)
    (line,) = named(drawing, f"voltage, {STATES[state]}")
    wanted = [(0.0, circuit.source_v[state])] + [(node.distance_m, node.volts[state]) for node in circuit.nodes]
    found = [(to_value(x, across), to_value(y, up)) for x, y in line.points]
    for (x, y), (metres, volts) in zip(found, wanted, strict=True):
        assert x == pytest.approx(metres, abs=1e-6)
        assert y == pytest.approx(volts, abs=1e-6)


def test_each_branch_has_its_line():
    supply, circuit = next(pair for pair in PAIRS if pair[1].circuit.name == "C2")
    # Twelve openings hang as ends on the three junctions.
    assert len(named(voltage_plot(supply, circuit), "voltage, peak")) == 12


@pytest.mark.parametrize("look", [LIGHT, DARK], ids=["light", "dark"])
def test_states_differ_without_colour(look):
    drawing = voltage_plot(*LOW)
    pens = {state: named(drawing, f"voltage, {word}")[0].pen for state, word in STATES.items()}
    assert len({(look.pens[pen].width_mm, look.pens[pen].dash_mm) for pen in pens.values()}) == 4
    signs = {state: named(drawing, f"sign, {word}")[0] for state, word in STATES.items()}
    assert len({len(sign.points) if isinstance(sign, Line) else 0 for sign in signs.values()}) >= 3
    for word in STATES.values():
        assert word in words(drawing)


def test_where_signs_have_no_room_those_of_loads_stand():
    """A unit half a metre behind its frame: the sign stands at the unit."""
    supply = Supply("s", "PS")
    ways = [("supply", "id-1", None, 60.0, "18 AWG"), ("id-1", "id-1/leaf", "id-1", 0.5, "18 AWG")]
    circuit = solved(Circuit("c", "s", "C"), supply, ways, devices=[unit("id-1", "1")])
    behind = next(node for node in circuit.nodes if node.node == "id-1/leaf")
    circuit = replace(circuit, nodes=tuple(replace(n, minimum_v=10.0 if n is behind else None) for n in circuit.nodes))
    drawing = voltage_plot(SupplyResult(supply), circuit, "mm")
    across = axis(drawing, "distance tick", False)
    (sign,) = named(drawing, "sign, mains normal")[:1]
    assert to_value(sign.x, across) == pytest.approx(60.5)


def test_each_opening_has_its_least_voltage_and_the_low_one_is_marked():
    supply, circuit = LOW
    drawing = voltage_plot(supply, circuit)
    for mark in circuit.marks:
        (bar, *_) = named(drawing, f"least of {mark}")
        assert bar.pen == ("warning" if mark == "255A" else "outline")
    assert named(drawing, "255A is low")
    low = f"255A: {circuit.node_of('id-255A').lowest_v:.2f} V, needs 10 V"
    assert low in words(drawing).replace(" | ", " ")
    assert "under its least voltage" in words(drawing).replace(" | ", " ")
    assert "under its least" not in words(voltage_plot(*PAIRS[0]))


def test_a_voltage_over_the_highest_is_marked():
    supply, circuit = PAIRS[0]
    nodes = (replace(circuit.nodes[0], maximum_v=11.5), *circuit.nodes[1:])
    drawing = voltage_plot(supply, replace(circuit, nodes=nodes))
    assert named(drawing, "101 is high")[0].pen == "warning"


def test_distance_is_in_feet_where_the_project_shows_inches():
    assert "Distance from the supply, ft" in words(voltage_plot(*LOW))
    assert "Distance from the supply, m" in words(voltage_plot(*LOW, "mm"))


def test_many_openings_are_not_all_named():
    supply = Supply("s", "PS")
    ways = [("supply" if n == 0 else f"id-{n - 1}", f"id-{n}", f"id-{n}", 2.0, "18 AWG") for n in range(120)]
    drawing = voltage_plot(SupplyResult(supply), solved(Circuit("c", "s", "C"), supply, ways, current=0.0051))
    assert overlaps(drawing) == []
    assert "120 openings: only" in words(drawing)


def test_long_marks_stay_on_the_page():
    supply, circuit = LOW
    nodes = tuple(
        replace(node, name=f"{node.name} pair at the loading dock behind the boiler room") for node in circuit.nodes
    )
    drawing = voltage_plot(supply, replace(circuit, nodes=nodes))
    assert overlaps(drawing) == []
    assert wide_and_tall(drawing)[0] <= LETTER_MM[0] + 1e-6
    assert wide_and_tall(drawing)[1] <= LETTER_MM[1] - 20.0


def test_what_cannot_be_drawn_is_said():
    supply, circuit = unsound()
    assert "form a loop" in words(voltage_plot(supply, circuit))
    supply, some, every = collapsed()
    drawing = voltage_plot(supply, some)
    assert "peak: no solution" in words(drawing).replace(" | ", " ")
    assert "constant-power loads" in words(drawing)
    assert not named(drawing, "voltage, peak")
    assert "no solution" in words(voltage_plot(supply, every)).replace(" | ", " ")
    bare = CircuitResult(Circuit("c", "s", "C"), Supply("s", "PS"))
    assert "no place whose voltage was" in words(voltage_plot(supply, bare)).replace(" | ", " ")


@given(st.floats(-50, 60), st.floats(0, 60), st.integers(2, 12))
def test_ticks_cover_the_range_in_even_steps(low, span, most):
    found = ticks(low, low + span, most)
    assert found[0] <= low + 1e-6
    assert found[-1] >= low + span - 1e-6
    assert 2 <= len(found) <= most + 3
    steps = {round(b - a, 6) for a, b in pairwise(found)}
    assert max(steps) - min(steps) <= 2e-6
