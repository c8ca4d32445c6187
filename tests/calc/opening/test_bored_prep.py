"""Bored preparation: published preparations, what can be cured and what cannot, bad input, outlines."""

import doctest
import json
import random
from dataclasses import replace

import pytest

from hwsched.calc.calculator import InputError
from hwsched.calc.opening import bored_prep as module
from hwsched.calc.opening.bored_prep import (
    BORED_PREP,
    TOLERANCE_MM,
    BoltHole,
    Latch,
    PrepFound,
    PrepWanted,
    PrepWork,
    bored_prep,
)
from tests.calc.oracles import bored_prep as oracle
from tests.calc.oracles import case_count

INCH = 25.4
# 160 and 161 preparations, locksmiths' dictionary (LIST/ALOA), facts 3.2
LOCK = PrepWanted(
    2.125 * INCH,
    INCH,
    1.375 * INCH,
    1.75 * INCH,
    (Latch("2-3/8", 2.375 * INCH, 2.375 * INCH), Latch("2-3/4", 2.75 * INCH, 2.75 * INCH)),
)
FOUND = PrepFound(1.75 * INCH, 2.125 * INCH, INCH, 2.75 * INCH, ())


def test_docs():
    assert doctest.testmod(module).failed == 0


@pytest.mark.parametrize(("backset", "latch", "left"), [(2.375, "2-3/8", 1.3125), (2.75, "2-3/4", 1.6875)])
def test_published_preparations(backset, latch, left):
    """Facts 3.2: material from edge to bore 1.3125 and 1.6875 in; edge bore wall 0.375 in."""
    got = bored_prep(LOCK, replace(FOUND, backset_mm=backset * INCH))
    assert (got.status, got.latch, got.work, got.cannot) == ("ready", latch, (), ())
    assert got.edge_to_bore_mm == pytest.approx(left * INCH)
    assert got.edge_wall_mm == pytest.approx(0.375 * INCH)


def test_tolerance_is_a_sixteenth():  # SDI 111-24, facts 3.5
    assert pytest.approx(INCH / 16) == TOLERANCE_MM


def test_small_bore_is_enlarged_and_none_is_drilled():
    got = bored_prep(LOCK, replace(FOUND, cross_bore_mm=1.5 * INCH, edge_bore_mm=0))
    assert got.work == (
        PrepWork("cross bore", "enlarge", 1.5 * INCH, 2.125 * INCH),
        PrepWork("edge bore", "drill", 0, INCH),
    )
    assert got.status == "work"


def test_large_bore_cannot_be_cured_unless_it_is_covered():
    big = replace(FOUND, cross_bore_mm=58)
    got = bored_prep(LOCK, big)
    assert got.status == "no"
    assert got.cannot[0].off_mm == pytest.approx(58 - 2.125 * INCH - TOLERANCE_MM)
    assert bored_prep(replace(LOCK, cross_bore_max_mm=58), big).status == "ready"


def test_narrow_stile_backsets_are_not_interchangeable():  # locksmith article, facts 3.2: 31/32, 1-1/8, 1-1/2
    lock = replace(LOCK, latches=(Latch("1-1/8", 1.125 * INCH, 1.125 * INCH),), cross_bore_mm=32)
    for backset in (31 / 32, 1.5):
        got = bored_prep(lock, replace(FOUND, cross_bore_mm=32, backset_mm=backset * INCH))
        assert got.cannot[0].item == "backset"
        assert got.cannot[0].off_mm == pytest.approx(abs(backset - 1.125) * INCH)


def test_adjustable_latch():
    lock = replace(LOCK, latches=(Latch("adjustable", 60.325, 69.85),))
    assert bored_prep(lock, replace(FOUND, backset_mm=65)).latch == "adjustable"


def test_leaf_thickness():
    thin = bored_prep(LOCK, replace(FOUND, leaf_mm=30))
    assert (thin.cannot[0].item, thin.cannot[0].off_mm) == ("leaf thickness", pytest.approx(4.925))
    thick = bored_prep(LOCK, replace(FOUND, leaf_mm=50))
    assert thick.cannot[0].off_mm == pytest.approx(5.55)


def test_unknown_is_said_and_refusal_comes_first():
    got = bored_prep(replace(LOCK, bolt_holes=(BoltHole(0, 35, 8),)), PrepFound(None, None, None, None))
    assert got.status == "unknown"
    assert got.needs == ("leaf_mm", "cross_bore_mm", "edge_bore_mm", "backset_mm", "bolt_holes")
    assert bored_prep(LOCK, replace(FOUND, leaf_mm=60, edge_bore_mm=None)).status == "no"


def test_leaf_not_bored_at_all_takes_the_first_latch():
    got = bored_prep(LOCK, PrepFound(44.45, 0, 0, None, ()))
    assert (got.latch, got.status) == ("2-3/8", "work")
    assert got.needs == ()


def test_leaf_not_bored_at_all_takes_the_backset_that_is_wanted_where_the_latch_has_it():
    lock = replace(LOCK, latches=(Latch("adjustable", 60.325, 69.85),))
    assert bored_prep(lock, PrepFound(44.45, 0, 0, 65, ())).backset_mm == 65
    assert bored_prep(lock, PrepFound(44.45, 0, 0, 80, ())).backset_mm == 60.325


def test_latch_length():
    latch = (Latch("short", 69.85, 69.85, 40),)
    assert bored_prep(replace(LOCK, latches=latch), FOUND).cannot[0].off_mm == pytest.approx(2.8625)
    latch = (Latch("long", 69.85, 69.85, 100),)
    assert bored_prep(replace(LOCK, latches=latch), FOUND).work[0].action == "deepen"


def test_bolt_holes_square_through():
    """Two 5/16 in bolt holes (common practice)."""
    size = 5 / 16 * INCH
    lock = replace(LOCK, bolt_holes=(BoltHole(0, 34.925, size), BoltHole(0, -34.925, size)))
    assert [w.action for w in bored_prep(lock, FOUND).work] == ["drill", "drill"]
    old = replace(FOUND, bolt_holes=(BoltHole(0, 34.925, 6.35), BoltHole(0, -34.925, size), BoltHole(0, 60, 5)))
    got = bored_prep(lock, old)
    assert [(w.item, w.action) for w in got.work] == [("bolt hole 1", "enlarge")]
    assert got.left_over == (2,)
    beside = replace(FOUND, bolt_holes=(BoltHole(0, 29.9, size),))
    assert bored_prep(lock, beside).cannot[0].item == "bolt hole 1"


@pytest.mark.parametrize(
    ("wanted", "there", "work", "cannot", "left_over"),
    [
        # A tenth of a millimetre is what two measures may differ by. The cross bore of 54 mm reaches 27 mm; so far, and
        # a tenth farther, a hole is bored away with it: an old one, and a new one that nobody need drill.
        (None, BoltHole(25, 0, 4.2), [], 0, ()),
        (None, BoltHole(25, 0, 4.22), [], 0, (0,)),
        (BoltHole(25, 0, 4.2), None, [], 0, ()),
        (BoltHole(25, 0, 4.22), None, ["drill"], 0, ()),
        # Less than it is to be by a fifth across, a tenth all round, and by more.
        (BoltHole(0, 40, 8), BoltHole(0, 40, 7.8), [], 0, ()),
        (BoltHole(0, 40, 8), BoltHole(0, 40, 7.78), ["enlarge"], 0, ()),
        # An old hole may stand 0.4 mm out of the new one, and a tenth more by its measure.
        (BoltHole(0, 40, 8), BoltHole(0, 40.5, 8), ["enlarge"], 0, ()),
        (BoltHole(0, 40, 8), BoltHole(0, 40.52, 8), [], 1, ()),
        # Where both touch, neither guides the other.
        (BoltHole(0, 40, 8), BoltHole(0, 46, 4), ["drill"], 0, (0,)),
        (BoltHole(0, 40, 8), BoltHole(0, 45.9, 4), [], 1, ()),
    ],
)
def test_bolt_holes_to_a_tenth_of_a_millimetre(wanted, there, work, cannot, left_over):
    lock = replace(LOCK, cross_bore_mm=54, bolt_holes=(wanted,) if wanted else ())
    found = replace(FOUND, cross_bore_mm=54, bolt_holes=(there,) if there else ())
    got = bored_prep(lock, found, tolerance_mm=0.4)
    assert ([each.action for each in got.work], len(got.cannot), got.left_over) == (work, cannot, left_over)


def test_bolt_hole_within_the_cross_bore_needs_nothing():
    assert bored_prep(replace(LOCK, bolt_holes=(BoltHole(0, 20, 8),)), FOUND).work == ()


def test_edge_wall():
    got = bored_prep(LOCK, replace(FOUND, leaf_mm=1.375 * INCH), min_edge_wall_mm=6)
    assert got.cannot[0].off_mm == pytest.approx(6 - 0.1875 * INCH)


def test_enlarged_bore_must_not_break_out_of_the_edge():
    lock = replace(LOCK, latches=(Latch("25", 25, 25),))
    got = bored_prep(lock, replace(FOUND, cross_bore_mm=30, backset_mm=25))
    assert got.cannot[0].reason == "breaks out of the edge by 1.99 mm"


WANTED, THERE = BORED_PREP.example["wanted"], BORED_PREP.example["found"]
BAD = [
    ({"wanted": {**WANTED, "cross_bore_mm": 0}}, "wanted.cross_bore_mm"),
    ({"wanted": {**WANTED, "leaf_high_mm": 3}}, "wanted.leaf_high_mm"),
    ({"wanted": {**WANTED, "latches": []}}, "wanted.latches"),
    ({"wanted": {**WANTED, "latches": [{"part": "a", "backset_low_mm": -1}]}}, "wanted.latches[0].backset_low_mm"),
    ({"wanted": {**WANTED, "cross_bore_max_mm": 50}}, "wanted.cross_bore_max_mm"),
    ({"wanted": {**WANTED, "bolt_holes": [{"x_mm": 0, "y_mm": 0, "diameter_mm": 0}]}},
     "wanted.bolt_holes[0].diameter_mm"),
    ({"found": {**THERE, "leaf_mm": 0}}, "found.leaf_mm"),
    ({"found": {**THERE, "leaf_mm": float("nan")}}, "found.leaf_mm"),
    ({"found": {**THERE, "edge_bore_mm": 45}}, "found.edge_bore_mm"),
    ({"found": {**THERE, "backset_mm": 26}}, "found.backset_mm"),
    ({"found": {**THERE, "cross_bore_mm": -1}}, "found.cross_bore_mm"),
    ({"found": None}, "found"),
    ({"tolerance_mm": -1}, "tolerance_mm"),
]  # fmt: skip


@pytest.mark.parametrize(
    ("found", "field"),
    [
        # A cross bore of 54 mm reaches 27 mm toward the edge: there it opens the edge.
        ({"cross_bore_mm": 54.0, "backset_mm": 27.0}, "found.backset_mm"),
        ({"cross_bore_mm": 54.0, "backset_mm": 27.1}, None),
        # Where nothing is bored across, any backset will do.
        ({"cross_bore_mm": 0.0, "edge_bore_mm": 0.0, "backset_mm": 0.1}, None),
        ({"leaf_mm": 44.0, "edge_bore_mm": 44.0}, "found.edge_bore_mm"),
        ({"leaf_mm": 44.0, "edge_bore_mm": 43.9}, None),
        # Of a leaf that nobody measured none is too wide.
        ({"leaf_mm": None, "edge_bore_mm": 60.0}, None),
    ],
)
def test_bores_found_stay_within_the_leaf(found, field):
    told = {**BORED_PREP.example, "found": {**THERE, **found}}
    if field is None:
        BORED_PREP.run(told)
        return
    with pytest.raises(InputError) as refused:
        BORED_PREP.run(told)
    assert refused.value.field == field


def test_every_size_above_nothing_is_taken():
    tiny = PrepWanted(0.5, 0.5, 0.5, 0.5, (Latch("a", 0.5, 0.5, 0.5),), (BoltHole(0, 0, 0.5),), 0.5, 0.5)
    got = bored_prep(tiny, PrepFound(0.9, 0.5, 0.5, 0.5, (BoltHole(0, 0, 0.5),)), tolerance_mm=0, min_edge_wall_mm=0)
    assert [(trouble.item, trouble.off_mm) for trouble in got.cannot] == [("leaf thickness", pytest.approx(0.4))]


@pytest.mark.parametrize(("change", "field"), BAD)
def test_bad_input_names_its_field(change, field):
    with pytest.raises(InputError) as caught:
        BORED_PREP.run({**BORED_PREP.example, **change})
    assert caught.value.field == field


def test_calculator_declares_what_it_gives():
    out = BORED_PREP.run(json.loads(json.dumps(BORED_PREP.example)))
    assert [f.name for f in BORED_PREP.outputs] == list(json.loads(json.dumps(out, allow_nan=False)))
    assert {f.name for f in BORED_PREP.inputs} >= set(BORED_PREP.example)


@pytest.mark.fuzz
def test_agrees_with_outlines():
    rng = random.Random(307)
    seen = dict.fromkeys(("ready", "work", "no", "unknown"), 0)
    compared = 0
    for _ in range(case_count()):
        data = oracle.random_input(rng)
        try:
            cannot, work, needs, left_over = oracle.judge(data)
        except oracle.TooNearError:
            continue
        compared += 1
        out = BORED_PREP.run(data)
        assert {c["item"] for c in out["cannot"]} == cannot, data
        assert {(w["item"], w["action"]) for w in out["work"]} == work, data
        assert set(out["needs"]) == needs
        assert set(out["left_over"]) == left_over, data
        assert out["status"] == ("no" if cannot else "unknown" if needs else "work" if work else "ready")
        seen[out["status"]] += 1
    assert compared > case_count() * 0.9
    assert seen["ready"] > case_count() / 500
    assert min(seen["work"], seen["no"], seen["unknown"]) > case_count() / 50
