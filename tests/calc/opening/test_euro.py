"""Euro-profile halves: published sizes, limits, bad input, layout in whole units."""

import doctest
import json
import random

import pytest

from hwsched.calc.calculator import InputError
from hwsched.calc.opening import euro
from hwsched.calc.opening.euro import BLIND_MM, EURO_HALVES, KEY_LIMIT_MM, EuroSize, EuroSteps, euro_halves
from tests.calc.oracles import case_count
from tests.calc.oracles import euro as oracle

STEPS = EuroSteps(30, 5, 90)


def test_docs():
    assert doctest.testmod(euro).failed == 0


def test_worked_example():
    """Trade page, facts 3.3: side 20 + fittings 8 = 28 -> 30; other 20 + 20 = 40; order 30/40."""
    got = euro_halves(40, 8, 20, STEPS)
    assert (got.key_needed_mm, got.inside_needed_mm) == (28, 40)
    assert (got.fits[0].part, got.fits[0].a_mm + got.fits[0].b_mm) == ("30/40", 70)  # DIN 18252: total = A + B


def test_half_cylinder_has_a_blind_side_of_ten():  # DIN 18252 / EN 1303, facts 3.3: half 30/10
    assert BLIND_MM == 10
    got = euro_halves(40, 8, 0, STEPS, half=True)
    assert (got.fits[0].part, got.fits[0].a_mm + got.fits[0].b_mm) == ("30/10", 40)


def test_blind_side_has_to_stay_within_the_leaf():
    got = euro_halves(16, 22, 0, [EuroSize("H", 30, 10)], half=True)
    assert got.fits == ()
    assert (got.refused[0].side, got.refused[0].off_mm) == ("inside", 2)


def test_projection_of_three_is_allowed_and_more_is_not():  # insurance practice, facts 3.3
    assert KEY_LIMIT_MM == 3
    assert euro_halves(40, 7, 20, [EuroSize("E", 30, 40)]).fits[0].key_projection_mm == 3
    over = euro_halves(40, 6.9, 20, [EuroSize("E", 30, 40)])
    assert over.refused[0].off_mm == pytest.approx(0.1)
    assert "0.10 mm too long on the key side" in over.refused[0].reason


def test_recessed_is_refused_flush_is_not():
    assert euro_halves(40, 10, 20, [EuroSize("E", 30, 40)]).fits[0].key_projection_mm == 0
    assert euro_halves(40, 10.01, 20, [EuroSize("E", 30, 40)]).refused[0].off_mm == pytest.approx(-0.01)


def test_lock_off_the_middle():
    got = euro_halves(44, 8, 20, STEPS, screw_offset_mm=2)
    assert (got.key_needed_mm, got.inside_needed_mm) == (28, 44)
    assert got.fits[0].part == "30/45"


def test_steps_that_end_too_soon():
    got = euro_halves(80, 10, 20, EuroSteps(30, 5, 45))
    assert got.fits == ()
    assert got.refused[0].part == "45/45"
    assert got.refused[0].off_mm == -15


def test_best_projects_least():
    sizes = [EuroSize("a", 30, 45), EuroSize("b", 30, 40), EuroSize("c", 29, 50)]
    assert [f.part for f in euro_halves(40, 8, 20, sizes).fits] == ["c", "b", "a"]


BAD = [
    ({"leaf_mm": 0}, "leaf_mm"),
    ({"key_trim_mm": -1}, "key_trim_mm"),
    ({"inside_trim_mm": None}, "inside_trim_mm"),
    ({"screw_offset_mm": 25}, "screw_offset_mm"),
    ({"key_limit_mm": float("nan")}, "key_limit_mm"),
    ({"inside_limit_mm": -1}, "inside_limit_mm"),
    ({"half": 1}, "half"),
    ({"blind_mm": 0}, "blind_mm"),
    ({"sizes": None}, "sizes"),
    ({"sizes": [{"part": "a", "a_mm": 0, "b_mm": 3}]}, "sizes[0].a_mm"),
    ({"steps": {"shortest_mm": 30, "step_mm": 5, "longest_mm": 90}}, "steps"),
    ({"sizes": None, "steps": {"shortest_mm": 30, "step_mm": 0, "longest_mm": 90}}, "steps.step_mm"),
    ({"sizes": None, "steps": {"shortest_mm": 30, "step_mm": 5, "longest_mm": 20}}, "steps.longest_mm"),
]


@pytest.mark.parametrize(("change", "field"), BAD)
def test_bad_input_names_its_field(change, field):
    with pytest.raises(InputError) as caught:
        EURO_HALVES.run({**EURO_HALVES.example, **change})
    assert caught.value.field == field


def test_calculator_declares_what_it_gives():
    out = EURO_HALVES.run(json.loads(json.dumps(EURO_HALVES.example)))
    assert [f.name for f in EURO_HALVES.outputs] == list(json.loads(json.dumps(out, allow_nan=False)))
    assert {f.name for f in EURO_HALVES.inputs} >= set(EURO_HALVES.example)


def test_calculator_takes_steps():
    data = {**EURO_HALVES.example, "steps": {"shortest_mm": 30, "step_mm": 5, "longest_mm": 90}}
    del data["sizes"]
    assert EURO_HALVES.run(data)["best"]["part"] == "30/40"


@pytest.mark.fuzz
def test_agrees_with_layout():
    rng = random.Random(305)
    suited = 0
    for _ in range(case_count()):
        given = oracle.random_input(rng)
        out = EURO_HALVES.run(oracle.to_input(given))
        wanted = oracle.suits(given)
        got = {f["part"]: (f["key_projection_mm"], f["inside_projection_mm"]) for f in out["fits"]}
        assert got == {p: (a * oracle.UNIT, b * oracle.UNIT) for p, (a, b) in wanted.items()}, given
        assert list(got.values()) == sorted(got.values())
        assert {r["part"] for r in out["refused"]} == {f"E{i}" for i in range(len(given["sizes"]))} - set(got)
        assert all(r["off_mm"] != 0 for r in out["refused"])
        assert out["best"] == (out["fits"][0] if out["fits"] else None)
        suited += bool(got)
    assert suited > case_count() / 10
