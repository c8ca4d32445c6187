"""Rules where an opening has several lock points: one lock meets the other, and both share leaf, supply and transfer.

A mortise lock at 1000 mm stands below a deadbolt whose case is 60 mm high, 30 mm of it above its cylinder.
"""

from dataclasses import replace

import pytest

from hwsched.rules import judge, rule_named
from hwsched.rules.judging import of_opening
from hwsched.rules.network.connected_opening import ConnectedOpening
from hwsched.rules.reading import leaf_hand, lock_item, lock_leaf
from hwsched.values import CablePath, Finding, LockPoint, PointFit
from hwsched.values.lock_points import lock_points, with_beside
from tests.rules.rows import boundary, passes, run, speaks, unknown
from tests.rules.scenario import INCH, catalogue, fit, fp, given, hole, item, leaf, lock, opening, place

FRAME = opening(egress="egress")
LEAVES = (leaf(position="active"), replace(leaf(position="inactive"), id="i"))
BELOW_TAKEN = item("flush-bolt", 0.0, 500.0, 20.0, 700.0, face="edge")
UNEQUAL = (leaf(position="active", width_mm=34 * INCH), replace(LEAVES[1], width_mm=400.0))
LOW = given(lf=leaf(height_mm=1700.0), items=[BELOW_TAKEN])
DEEP = hole(depth_mm=None)
IN_EDGE = place(13.5, 1063.5, face="edge", width_mm=17.4625, height_mm=349.25)
ABOVE = place(y=1300.0)


def deadbolt(y=1200.0, **facts):
    """Its case stands 30 mm above and below the cylinder, 90 mm deep and 20 mm wide in the middle of the leaf."""
    usual = {
        "kind": "deadbolt",
        "disposition": "replace",
        "function": "deadlock",
        "thumb_turn": False,
        "cylinder_height_mm": y,
        "case_height_mm": 60.0,
        "case_above_mm": 30.0,
        "case_depth_mm": 90.0,
        "case_width_mm": 20.0,
        "front_height_mm": 60.0,
        "front_width_mm": 20.0,
    }
    return replace(lock(**{**usual, **facts}), id="d")


def other_lock(**facts):
    """The lock of the inactive leaf."""
    return replace(lock(**{"leaf": "inactive", **facts}), id="d")


def trimmed_at(y):
    """A lock of which nobody said whether it has trim inside, and trim so high that stands clear of the unit."""
    return given(lk=lock(trim_inside_mm=None), items=[item("trim", 500.0, y, 60.0, 40.0)])


def points(base, second=None):
    """The cases of a lock and of a second one, in order."""
    held = (*base.items, second or deadbolt())
    base = replace(base, items=held)
    known = lock_points(base.leaves, held, [("p1", "k"), ("p2", "d")])
    assert len(known) == 2
    return tuple(replace(base, point=each) for each in known)


def first(base=None, second=None):
    return points(base or given(), second)[0]


def then(done, base=None, second=None):
    """The second point, after the first has been worked out."""
    earlier, later = points(base or given(), second)
    return with_beside(later, [PointFit(earlier, done)])


def in_pair(leaves=LEAVES, **facts):
    """A pair with a lock in each leaf."""
    return given(opening(form="pair", **facts), leaves=leaves, lk=lock(leaf="active"))


def above(gap):
    """A place with its lower edge so far above the usual plate, which ends at 1170 mm."""
    return fit(placement=place(y=1170.0 + gap))


def drilled(y, **facts):
    """A hole right through, and no way for the lead."""
    return fit(holes=(replace(DEEP, y_mm=y, **facts),), cable=None)


def along(*path):
    return CablePath(path, 200.0, 228.6, 60.0)


ACROSS = hole(
    9.525, "raceway", name="way for the wire across the leaf", face="hinge-edge", x_mm=22.2, y_mm=1000.0, depth_mm=809.4
)
SUPPLY = fit(power="supply")
HIGHER = deadbolt(1400.0)
ROSE = item("trim", 70.0, 1400.0, 50.0, 50.0)
FOOTPRINT = tuple(f"existing_item.{name}" for name in ("x_mm", "y_mm", "width_mm", "height_mm"))

ROWS = [
    # The deadbolt's case begins at 1170 mm; a hole of 12.7 mm right through leaves 6.35 mm where its centre is 12.7 mm
    # below. Its face stands 12.225 mm below the leaf's: a hole of 9.225 mm ends 3 mm before it.
    passes("hole-clear-of-lock", first(), fit(holes=(DEEP,))),
    passes("hole-clear-of-lock", given(items=[deadbolt(disposition="keep")]), fit(holes=(hole(y_mm=1190.0),))),
    boundary("hole-clear-of-lock", first(), drilled(1170.0 - 12.7)),
    boundary("hole-clear-of-lock", first(second=deadbolt(case_above_mm=None)), drilled(1165.0)),
    speaks(
        "hole-clear-of-lock",
        first(),
        drilled(1160.0),
        wall_mm=10.0 - 6.35,
        short_mm=2.7,
        severity="error",
        about="lead",
    ),
    speaks("hole-clear-of-lock", first(), fit(holes=(hole(y_mm=1200.0, depth_mm=9.225),)), wall_mm=3.0 - 6.35),
    # Holes of a template, and one in the edge, come before it: they have no place of their own, or no face.
    speaks(
        "hole-clear-of-lock",
        first(),
        fit(holes=(hole(3.0, "fixing", by_template=True), hole(face="edge"), replace(DEEP, y_mm=1160.0))),
        short_mm=2.7,
    ),
    # A bored deadbolt of 54 mm: 1200 - 26.9875 - 6.35 - 6.35 is as near as a hole comes.
    boundary(
        "hole-clear-of-lock",
        first(second=replace(lock("bored"), id="d", kind="deadbolt", disposition="replace", cylinder_height_mm=1200.0)),
        drilled(1200.0 - 53.975 / 2 - 12.7),
    ),
    speaks(
        "hole-clear-of-lock",
        first(second=replace(lock("bored"), id="d", kind="deadbolt", disposition="replace", cylinder_height_mm=1200.0)),
        drilled(1200.0 - 53.975 / 2 - 11.7),
        short_mm=1.0,
    ),
    # From the deadbolt the first lock's case ends at 1044.45 mm, and its hole stands at 1100 mm.
    boundary(
        "hole-clear-of-lock",
        then(drilled(1100.0)),
        drilled(1119.05),
    ),
    speaks(
        "hole-clear-of-lock",
        then(drilled(1100.0)),
        drilled(1118.0),
        short_mm=1.05,
        wall_mm=5.3,
    ),
    passes("hole-clear-of-lock", then(drilled(1100.0, face="edge")), drilled(1118.0)),
    # The lead goes through the deadbolt's case.
    speaks(
        "hole-clear-of-lock",
        first(),
        fit(cable=along((69.85, 1000.0, 22.0), (69.85, 1250.0, 22.0))),
        about="lead",
        severity="error",
    ),
    passes("hole-clear-of-lock", first(), fit(cable=along((69.85, 1000.0, 22.0), (69.85, 1150.0, 22.0)))),
    # What stands in the other leaf is out of the way.
    passes(
        "hole-clear-of-lock",
        then(fit(holes=(replace(DEEP, leaf="active"),)), in_pair(), other_lock()),
        drilled(1030.0, leaf="inactive"),
    ),
    # Trim that was surveyed by itself is that of the nearer lock; halfway between 1000 and 1200 mm it is both's.
    passes("trim-clear", first(trimmed_at(1050.0)), fit()),
    boundary("trim-clear", first(trimmed_at(1100.0)), fit()),
    unknown("trim-clear", first(trimmed_at(1101.0)), fit(), "existing_item.trim_inside_mm"),
    # The plate of the first point ends at 1170 mm: 1/8 in to what stands there already.
    passes("item-clear", then(fit(), second=HIGHER), above(50.0)),
    boundary("item-clear", then(fit(), second=HIGHER), above(3.175)),
    speaks("item-clear", then(fit(), second=HIGHER), above(2.675), short_mm=0.5, about="unit of the lock"),
    passes("item-clear", first(second=HIGHER), above(2.675)),
    passes("item-clear", then(fit(placement=place(face="key")), second=HIGHER), above(2.675)),
    passes("item-clear", then(fit(placement=IN_EDGE), second=HIGHER), above(2.675)),
    passes(
        "item-clear",
        then(fit(placement=place(leaf="active")), in_pair(), other_lock()),
        fit(placement=place(leaf="inactive")),
    ),
    # A rose of 60 mm round the deadbolt begins at 1200 - 30 = 1170 mm; 3/16 in are left to a trim.
    boundary("trim-clear", first(second=deadbolt(x_mm=70.0, y_mm=1204.7625, width_mm=50.0, height_mm=60.0)), fit()),
    speaks(
        "trim-clear",
        first(second=deadbolt(1200.0, x_mm=70.0, y_mm=1200.0, width_mm=50.0, height_mm=60.0)),
        fit(),
        short_mm=3 / 16 * INCH,
        about="deadbolt: lock's trim",
    ),
    passes("trim-clear", first(in_pair(), other_lock(x_mm=70.0, y_mm=1100.0, width_mm=50.0, height_mm=60.0)), fit()),
    # Its thumb turn stays, and nobody measured it.
    unknown("thumb-turn-clear", first(second=deadbolt(thumb_turn=True)), fit(), *FOOTPRINT),
    # What describes a trim belongs to the lock to which it stands nearer: where the first lock's is, nobody knows.
    passes("trim-clear", given(lk=lock(trim_inside_mm=3.0), items=[ROSE]), fit()),
    unknown("trim-clear", first(given(lk=lock(trim_inside_mm=3.0), items=[ROSE]), HIGHER), fit(), *FOOTPRINT),
    passes("trim-clear", first(given(items=[ROSE]), replace(HIGHER, trim_inside_mm=3.0)), fit()),
    # Between the lock's pocket (up to 1044.45 mm) and the deadbolt's a bridge of 19.05 mm is left to either.
    boundary("pocket-length", first(LOW, deadbolt(1461.8)), fit(unit="EDGE")),
    speaks(
        "pocket-length",
        first(LOW, deadbolt(1461.3)),
        fit(unit="EDGE"),
        short_mm=0.5,
    ),
    boundary("pocket-length", then(fit(), LOW, deadbolt(1461.8)), fit(unit="EDGE")),
    # With the first unit in that stretch none is left for the second: 1431.8 is where the deadbolt's pocket begins.
    speaks(
        "pocket-length",
        then(fit(unit="EDGE", placement=IN_EDGE), LOW, deadbolt(1461.8)),
        fit(unit="EDGE"),
        clear_mm=1710.0 - 50.8 - 1491.8 - 19.05,
    ),
    # Above the other lock's pocket, which ends at 1230, and a bridge: up to 2143.6 less the margin at the leaf's top.
    speaks(
        "pocket-length",
        first(given(cat=catalogue(EDGE={"pocket_length_mm": 850.0}))),
        fit(unit="EDGE"),
        clear_mm=2143.6 - 50.8 - 1230.0 - 19.05,
    ),
    unknown(
        "pocket-length",
        first(second=deadbolt(case_height_mm=None)),
        fit(unit="EDGE"),
        "existing_item.case_height_mm",
    ),
    # The way across the leaf that an earlier lock point has carries the wire of a later one too.
    passes("wire-across-leaf", then(fit(power="supply", holes=(hole(), ACROSS))), SUPPLY),
    speaks("wire-across-leaf", then(fit(power="supply")), SUPPLY, severity="error"),
    speaks("wire-across-leaf", then(None), SUPPLY),
    boundary("wire-across-leaf", then(fit(holes=(hole(), ACROSS)), in_pair(), other_lock()), SUPPLY, says=1),
    # A deadlock above a latch on an escape route: two things hold the leaf, and without a turn it takes a key.
    speaks("one-motion", first(given(FRAME)), fit(), holds=2, severity="warning"),
    speaks("one-motion", then(fit(), given(FRAME)), fit(), holds=2, severity="warning"),
    passes("one-motion", first(in_pair(), other_lock()), fit()),
    passes("one-motion", first(in_pair(egress="egress"), other_lock()), fit()),
    passes("free-inside", first(given(FRAME)), fit()),
    speaks("free-inside", then(fit(), given(FRAME)), fit(), severity="error", about="lock"),
    speaks("free-inside", then(fit(), given(FRAME), deadbolt(function=None)), fit(), severity="error"),
    boundary("free-inside", then(fit(), given(FRAME), deadbolt(thumb_turn=True)), fit()),
    boundary("free-inside", then(fit(), given(FRAME), deadbolt(function="latch")), fit()),
    unknown("free-inside", then(fit(), given(FRAME), deadbolt(thumb_turn=None)), fit(), "existing_item.thumb_turn"),
    # The leaf that people use decides the width: 34 in less 2 in are 32 in, whatever the inactive leaf.
    boundary("egress-width", then(fit(), in_pair(UNEQUAL, egress="egress"), other_lock()), fit()),
    boundary("clear-width", then(fit(), in_pair(UNEQUAL, accessible=True), other_lock()), fit()),
    # Where there are two leaves nobody drills for a lock of which nobody knows the leaf.
    unknown("known-before-drill", then(fit(), in_pair(), replace(deadbolt(), leaf=None)), fit(), "existing_item.leaf"),
    # A supply of 2.5 A gives 2 A: two units of 1 A each, and no more.
    passes("supply-share", then(fit(power="supply")), fit(power="supply", without=("supply", "wire"))),
    boundary(
        "supply-share",
        then(fit(power="supply"), given(cat=catalogue(UNIT={"supply_a": 1.0}))),
        fit(power="supply", without=("supply", "wire")),
    ),
    speaks(
        "supply-share",
        then(fit(power="supply"), given(cat=catalogue(UNIT={"supply_a": 1.1}))),
        fit(power="supply", without=("supply", "wire")),
        load_a=2.2,
        usable_a=2.0,
    ),
    passes(
        "supply-share",
        then(fit(power="supply"), given(cat=catalogue(UNIT={"supply_a": 1.1}))),
        fit(power="supply"),
    ),
    # One transfer a leaf carries the power for all that stands on it.
    passes("power-crosses-hinge", then(fit(power="supply")), fit(power="supply", without=("power-transfer",))),
    speaks(
        "power-crosses-hinge",
        then(fit(power="supply"), in_pair(), other_lock()),
        fit(power="supply", without=("power-transfer",)),
        severity="error",
    ),
    boundary("power-crosses-hinge", then(fit(power="supply"), in_pair(), other_lock()), fit(power="supply")),
]  # fmt: skip


@pytest.mark.parametrize("row", ROWS, ids=str)
def test_rule(row):
    run(row)


def test_each_point_reads_its_own_lock_and_leaf():
    active, inactive = points(in_pair(), other_lock(cylinder_height_mm=1010.0))
    assert [lock_item(each).cylinder_height_mm for each in (active, inactive)] == [1000.0, 1010.0]
    assert [lock_leaf(each).position for each in (active, inactive)] == ["active", "inactive"]
    assert [leaf_hand(each) for each in (active, inactive)] == ["LH", "RH"]
    reverse = [replace(each, opening=replace(each.opening, hand="RHR")) for each in (active, inactive)]
    assert [leaf_hand(each) for each in reverse] == ["RHR", "LHR"]
    unsaid = [replace(each, opening=replace(each.opening, hand=None)) for each in (active, inactive)]
    assert [leaf_hand(each) for each in unsaid] == [None, None]


def test_a_leaf_is_named_only_where_the_points_are_on_several():
    def named(known):
        made = ConnectedOpening.of([PointFit(each, fit()) for each in known])
        return [made.leaf_of(at) for at in made.points]

    assert named(points(given())) == ["", ""]
    assert named(points(in_pair(), other_lock())) == ["active", "inactive"]
    assert named([in_pair()]) == [""]
    # Nor of an opening that names no points.
    alone = ConnectedOpening(in_pair(), fit())
    assert [alone.leaf_of(at) for at in alone.points] == [""]


def test_two_units_on_one_supply_drop_the_voltage_as_one_that_draws_as_much():
    far = opening(supply_distance_m=60.0)
    rule = rule_named("supply-drop")
    own = given(far, cat=catalogue(UNIT={"supply_a": 0.8}))
    alone = judge(rule, own, fit(power="supply"), settings=own.settings)
    second = then(fit(power="supply"), given(far))
    both = judge(rule, second, fit(power="supply", without=("supply", "wire")), settings=second.settings)
    assert [each.values["arrives_v"] for each in both] == pytest.approx([each.values["arrives_v"] for each in alone])
    assert len(both) == 1
    # With a supply and wire of its own the second one draws for itself: 0.4 A arrive where 0.8 A did not.
    assert judge(rule, second, fit(power="supply"), settings=second.settings) == ()


def test_the_unit_that_needs_most_decides_what_has_to_arrive():
    far = opening(supply_distance_m=40.0)
    rule = rule_named("supply-drop")
    second = then(
        replace(fit(power="supply"), parts=(fp("unit", "OTHER", kind="surface-unit"), *fit(power="supply").parts[-4:])),
        given(
            far, cat=catalogue(add=[replace(catalogue().parts["UNIT"], number="OTHER")], OTHER={"supply_low_v": 11.3})
        ),
    )
    said = judge(rule, second, fit(power="supply", without=("supply", "wire")), settings=second.settings)
    assert [each.values["needed_v"] for each in said] == [11.3]


def finding(message, severity="note", **facts):
    return Finding("rule", "survey", severity, message, "basis", "cure", **facts)


ONE, TWO = LockPoint("p1", "k", 1, "lock", ("d",)), LockPoint("p2", "d", 2, "deadbolt", ("k",))


def test_what_is_said_of_each_point_stands_once_and_what_is_said_of_one_names_it():
    shared, own = finding("Nobody knows the stair."), finding("It is short.", "error")
    merged = of_opening([(ONE, (shared,)), (TWO, (own, shared))])
    assert [(each.severity, each.message, each.point) for each in merged] == [
        ("error", "Deadbolt: It is short.", "deadbolt"),
        ("note", "Nobody knows the stair.", ""),
    ]
    assert of_opening([(LockPoint("p"), (own, shared))]) == (own, shared)


def test_a_statement_made_twice_of_one_point_stays_twice():
    twice = finding("The hole is near.")
    merged = of_opening([(ONE, (twice, twice)), (TWO, (twice,))])
    assert [(each.message, each.point) for each in merged] == [
        ("The hole is near.", ""),
        ("Lock: The hole is near.", "lock"),
    ]


def test_three_points_of_which_two_are_meant_are_named_both():
    three = LockPoint("p3", "x", 3, "exit device", ("k", "d"))
    said = finding("It is short.")
    merged = of_opening([(ONE, (said,)), (TWO, ()), (three, (said,))])
    assert [each.message for each in merged] == ["Lock, exit device: It is short."]
