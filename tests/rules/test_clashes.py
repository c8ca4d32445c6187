"""The table of pairs, and the one routine that judges them."""

from collections import Counter
from dataclasses import replace
from itertools import combinations
from typing import get_args

import pytest

from hwsched.rules import in_rulebook, judge, rule_named
from hwsched.rules.solid.bodies import EXISTING, NEW, Kind, existing_bodies, new_bodies
from hwsched.rules.solid.clashes import KINDS, TABLE, bodies_of, clashes, pair_for, pairs_of
from hwsched.values import Settings
from tests.rules.scenario import catalogue, fit, given, item, leaf, lock, place

PAIRS = [*((new, there) for new in NEW for there in EXISTING), *combinations(NEW, 2)]


def lines_for(a, b):
    return [pair for pair in TABLE if (a in pair.new and b in pair.off) or (b in pair.new and a in pair.off)]


@pytest.mark.parametrize(("a", "b"), PAIRS, ids="-".join)
def test_every_pair_of_kinds_stands_in_the_table_once(a, b):
    (line,) = lines_for(a, b)
    assert pair_for(a, b) is pair_for(b, a) is line


@pytest.mark.parametrize("pair", TABLE, ids=lambda pair: "-".join((*pair.new, "off", *pair.off)))
def test_every_line_names_a_rule_or_says_why_they_may_meet(pair):
    assert bool(pair.rule) != bool(pair.why)
    assert pair.new
    assert pair.off
    if pair.rule:
        rule = in_rulebook(pair.rule)
        assert rule is not None
        # By how much is a limit of the rule.
        assert rule.limits
        assert pair in pairs_of(pair.rule)


def test_the_table_speaks_of_all_kinds_and_of_no_others():
    assert set(get_args(Kind)) == {*EXISTING, *NEW} == set(KINDS)
    assert not set(EXISTING) & set(NEW)
    assert max(Counter(KINDS).values()) == 1
    assert {kind for pair in TABLE for kind in (*pair.new, *pair.off)} == set(KINDS)
    assert {kind for pair in TABLE for kind in pair.new} <= set(NEW)


def test_a_rule_without_a_line_has_no_pairs():
    assert pairs_of("battery-life") == ()
    assert list(clashes(given(), fit(), "battery-life", 100.0)) == []


CROWDED = given(
    lk=lock(trim_inside_mm=3.0),
    lf=leaf(construction="stile-and-rail", stile_mm=140.0),
    items=[
        item("lever", 104.0, 1160.0, 40.0, 20.0),
        item("thumb-turn", 36.0, 1016.0, 30.0, 30.0),
        item("lite", 300.0, 1500.0),
        item("closer", 700.0, 2050.0),
        item("flush-bolt", 10.0, 1900.0, 20.0, 100.0, face="edge"),
    ],
    cat=catalogue(COL={"outer_diameter_mm": 40.0}),
)


def test_each_body_is_asked_for_by_its_kind():
    found = bodies_of(CROWDED, fit(), KINDS)
    assert sorted(map(repr, found)) == sorted(
        map(repr, (*existing_bodies(CROWDED, fit()), *new_bodies(CROWDED, fit())))
    )
    assert [body.kind for body in found] == [kind for kind in KINDS for body in found if body.kind == kind]


def test_one_opening_s_bodies_are_not_taken_for_another_s():
    """The last answer is kept while rules ask one after the other: it must not outlive its question."""
    rule = rule_named("screw-clear")

    def said(held, made):
        return [verdict.values.get("short_mm") for verdict in judge(rule, held, made, settings=held.settings)]

    other = given(lf=leaf(thickness_mm=40.0))
    # In 40 the case begins at (40 - 25.4) / 2 = 7.3, and the screws go in 9.525.
    expected = {0: [], 1: [pytest.approx(2.225)]}
    for turn in (0, 1, 0, 0, 1, 1, 0):
        held = (given(), other)[turn]
        assert said(held, fit()) == expected[turn]
    # The same opening with its plate elsewhere, with other holes, with another lock.
    # A viewer's hole of 14 round a screw: it would have to move 7 + 1.7525 aside.
    base = given(items=[item("viewer", 200.0, 1400.0, 14.0, 14.0)])
    at_viewer = place(200.0 - 6.0, 1400.0 - 6.0)
    assert [said(base, made) for made in (fit(), fit(placement=at_viewer), fit())] == [[], [pytest.approx(8.7525)], []]
    bored = replace(base, items=(lock("bored", cross_bore_mm=38.1), *base.items[1:]))
    through = place(69.85 - 6.0 + 22.0, 994.0)
    # The new lock's 53.975 reaches 26.9875, the old one's 38.1 only 19.05: a screw 22 beside the centre.
    with_new = fit(lock_number="BORED", role="lock", placement=through)
    with_old = fit(placement=through)
    assert len(said(bored, with_new)) == 1
    assert said(bored, with_old) == []
    assert len(said(bored, with_new)) == 1


def test_screws_that_are_alike_speak_once_for_each_body():
    # Two of the four stand in the case, one of them nearer to its end: the worst speaks for both.
    long = given(cat=catalogue(SCREW={"length_mm": 25.4}))
    (said,) = clashes(long, fit(), "screw-clear", 0.0)
    assert said.values["short_mm"] == pytest.approx(15.875)
    assert said.message == "A screw of the unit runs 15.9 mm into the lock's case."
    # Another body is another sentence.
    turned = replace(long, items=(*long.items, item("thumb-turn", 36.0, 1164.0, 30.0, 30.0)))
    assert [verdict.message for verdict in clashes(turned, fit(), "screw-clear", 0.0)] == [
        "A screw of the unit runs 15.9 mm into the lock's case.",
        "A screw of the unit runs 11.3 mm into the thumb turn's spindle.",
    ]


def test_a_screw_that_ends_at_a_case_by_the_rounding_of_the_leaf_s_thickness():
    """44 mm may be 44.5: then 9.55 lie before a case of 1 in, and a screw of 3/8 in, 9.525, does not reach it."""
    inches = {"UNIT": {"plate_width_mm": 76.2, "plate_height_mm": 152.4}, "SCREW": {"length_mm": 9.525}}
    (said,) = clashes(given(lf=leaf(thickness_mm=44.0), cat=catalogue(**inches)), fit(), "screw-clear", 0.0)
    assert (said.severity, said.values["off_mm"]) == ("note", pytest.approx(0.225))
    (said,) = clashes(given(lf=leaf(thickness_mm=43.8), cat=catalogue(**inches)), fit(), "screw-clear", 0.0)
    assert (said.severity, said.values["short_mm"]) == (None, pytest.approx(0.325))


def test_what_surely_meets_goes_before_what_perhaps_does():
    # Without its height the case surely reaches to the cylinder's lower edge, y 984.125, and up to 1044.45.
    held = given(lk=lock(case_height_mm=None), cat=catalogue(SCREW={"length_mm": 25.4}))
    (said,) = clashes(held, fit(), "screw-clear", 0.0)
    assert not said.needs
    (said,) = clashes(held, fit(placement=place(y=820.0)), "screw-clear", 0.0)
    # Screws at 826 and 974: only the part of the case that nobody measured could meet them.
    assert said.needs == ("existing_item.case_height_mm",)
    assert said.message == "Unknown: needs existing item: Lock case height."
    # Far below it nothing can, however high it is.
    assert list(clashes(held, fit(placement=place(y=600.0)), "screw-clear", 0.0)) == []


def test_what_just_touches_leaves_nothing_and_runs_into_nothing():
    # A bore of 38 measured 25.25 above the middle of a hole of 12.5: half of both.
    held = given(items=[item("deadbolt", 69.85, 1055.25, 60.0, 60.0, cross_bore_mm=38.0, edge_bore_mm=22.0)])
    (said,) = clashes(held, fit(holes=(replace(fit().holes[0], diameter_mm=12.5),)), "hole-clear", 3.175)
    assert said.values["gap_mm"] == 0.0
    assert said.message == "The lead leaves 0 mm to the deadbolt's cross bore; 3.2 mm is needed, short by 3.2 mm."


def test_how_much_apart_is_said_by_whom_it_is_asked():
    # The turn's hole ends 9.525 below its middle, the hole's rim 6.35 above its own: 4.125 between them.
    held = given(items=[item("thumb-turn", 69.85, 1050.0, 30.0, 30.0)])
    assert list(clashes(held, fit(), "hole-clear", 3.175)) == []
    assert list(clashes(held, fit(), "hole-clear", 4.17)) == []  # within the measuring tolerance of 0.05
    (said,) = clashes(held, fit(), "hole-clear", 5.0)
    assert said.message == "The lead leaves 4.1 mm to the thumb turn's spindle; 5 mm is needed, short by 0.9 mm."
    # Turn and cylinder stand at whole millimetres, the hole's bit is one of inches: half of one may be had.
    (said,) = clashes(held, fit(), "hole-clear", 4.6)
    assert (said.severity, said.values) == ("note", {"off_mm": pytest.approx(0.475), "rounding_mm": 0.5})
    assert "measure this to 0.1 mm" in said.cure
    metric = fit(holes=(replace(fit().holes[0], diameter_mm=12.5),))
    (said,) = clashes(held, metric, "hole-clear", 4.7)
    assert said.values["short_mm"] == pytest.approx(0.475)
    # A project says its own.
    wide = replace(held, settings=Settings(length_style="mm", limits={"hole-clear.wall_mm": 5.0}))
    assert len(judge(rule_named("hole-clear"), wide, fit(), settings=wide.settings)) == 1
