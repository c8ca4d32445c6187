"""Tailpieces: worked example, snapping and sawing, bad input, cutting piece by piece."""

import doctest
import json
import random

import pytest

from hwsched.calc.calculator import InputError
from hwsched.calc.opening import tailpiece as module
from hwsched.calc.opening.tailpiece import BREAK_OFF_MM, TAILPIECE, tailpiece
from tests.calc.oracles import case_count
from tests.calc.oracles import tailpiece as oracle

INCH = 25.4


def test_docs():
    assert doctest.testmod(module).failed == 0


def test_worked_example():
    """Facts 3.3, arithmetic: 1-3/4 door, 3/8 engagement, cylinder's back 1/4 into the door: 1.875 in."""
    got = tailpiece(1.75 * INCH, 0.25 * INCH, 1.875 * INCH, 0.375 * INCH)
    assert got.needed_mm == pytest.approx(1.875 * INCH)
    assert (got.fits, got.method, got.pieces_off) == (True, "none", 0)
    assert got.engagement_mm == pytest.approx(0.375 * INCH)


def test_notches_are_an_eighth_apart():  # from memory, unverified
    assert pytest.approx(INCH / 8) == BREAK_OFF_MM


def test_too_short_says_by_how_much():
    got = tailpiece(44.45, 6.35, 47, 9.525)
    assert not got.fits
    assert got.short_mm == pytest.approx(0.625)
    # Nothing is cut off what is too short.
    assert (got.method, got.pieces_off, got.cut_off_mm) == (None, 0, 0)
    assert got.engagement_mm == pytest.approx(47 - (44.45 - 6.35))
    assert (got.left_mm, got.cut_off_mm) == (47, 0)
    assert got.method is None
    assert tailpiece(44.45, 6.35, 30, 9.525).engagement_mm == pytest.approx(-8.1)  # it ends in the leaf


def test_snap_keeps_the_least_engagement():
    got = tailpiece(44.45, 6.35, 63.5, 9.0, break_off_mm=5)
    assert (got.method, got.pieces_off, got.left_mm) == ("snap", 3, 48.5)
    assert got.engagement_mm == pytest.approx(10.4)


def test_sawn_where_notches_are_too_coarse():
    got = tailpiece(40, 0, 60, 5, maximum_engagement_mm=7, break_off_mm=12)
    assert got.fits
    assert got.method == "saw"
    assert (got.left_mm, got.cut_off_mm) == (46, 14)
    assert "45.00 and 47.00" in got.note


def test_no_notches_and_no_depth_known_is_sawn_to_the_least():
    got = tailpiece(40, 0, 60, 5, break_off_mm=None)
    assert (got.method, got.left_mm, got.note) == ("saw", 45, "Saw off to 45.00 mm.")


def test_longer_tailpiece_never_reaches_less():
    reached = [tailpiece(44.45, 6.35, 30 + i / 2, 9.525, maximum_engagement_mm=15).fits for i in range(100)]
    assert reached == sorted(reached)


BAD = [
    ({"leaf_mm": -44}, "leaf_mm"),
    ({"cylinder_back_mm": 50}, "cylinder_back_mm"),
    ({"cylinder_back_mm": float("inf")}, "cylinder_back_mm"),
    ({"tailpiece_mm": 0}, "tailpiece_mm"),
    ({"minimum_engagement_mm": 0}, "minimum_engagement_mm"),
    ({"maximum_engagement_mm": 9}, "maximum_engagement_mm"),
    ({"case_gap_mm": -1}, "case_gap_mm"),
    ({"break_off_mm": 0}, "break_off_mm"),
]


@pytest.mark.parametrize(("change", "field"), BAD)
def test_bad_input_names_its_field(change, field):
    with pytest.raises(InputError) as caught:
        TAILPIECE.run({**TAILPIECE.example, **change})
    assert caught.value.field == field


def test_calculator_declares_what_it_gives():
    out = TAILPIECE.run(json.loads(json.dumps(TAILPIECE.example)))
    assert [f.name for f in TAILPIECE.outputs] == list(json.loads(json.dumps(out, allow_nan=False)))
    assert {f.name for f in TAILPIECE.inputs} >= set(TAILPIECE.example)


@pytest.mark.fuzz
def test_agrees_with_cutting_piece_by_piece():
    rng = random.Random(306)
    seen = dict.fromkeys((None, "none", "snap", "saw"), 0)
    for _ in range(case_count()):
        given = oracle.random_input(rng)
        out = TAILPIECE.run(oracle.to_input(given))
        seen[out["method"]] += 1
        steps = list(oracle.engagements(given))
        assert out["fits"] == (steps[0] >= given["least"]), given
        if not out["fits"]:
            assert out["short_mm"] == pytest.approx((given["least"] - steps[0]) * oracle.UNIT)
            continue
        within = [
            i for i, e in enumerate(steps) if e >= given["least"] and (given["most"] is None or e <= given["most"])
        ]
        # what is left always engages enough and never bottoms
        assert out["engagement_mm"] >= given["least"] * oracle.UNIT - 1e-9
        if given["most"] is not None:
            assert out["engagement_mm"] <= given["most"] * oracle.UNIT + 1e-9
        assert out["left_mm"] + out["cut_off_mm"] == pytest.approx(given["supplied"] * oracle.UNIT)
        if out["method"] in ("none", "snap"):
            assert out["pieces_off"] == max(within)
        else:
            assert given["step"] is None or not within
    assert min(seen.values()) > case_count() / 50
