"""Each fact that is asked decides: it has two allowed values that are judged differently.

Beside each fact stand the opening on which it decides, its fit, the two values, and the rule that speaks for one of
them only. The facts of ways out, pairs and rated openings stand in the table of `test_ways_out`.
"""

from collections import Counter
from dataclasses import replace
from functools import cache

import pytest

from hwsched.documents.survey.survey_sheets import OF_OFFICE
from hwsched.fitting import fit as fit_of
from hwsched.rules.judging import check
from hwsched.survey import ENTITIES
from hwsched.survey.asked import ASKED, IDLE, OF_LOCK_FORMS, READERS, asked_of, asked_of_lock, decides
from hwsched.values.lock_points import is_lock
from tests.fitting.door import USUAL, door
from tests.rules.scenario import INCH, fit, given, hole, item, leaf, lock, opening, place
from tests.rules.test_asked import openings_and_fits
from tests.rules.test_catalogue_documents_commissioning import walled
from tests.rules.test_power_and_battery import BORED_FIT, KEPT_FIT, MADE, NEAR, SUPPLY, kept_transfer, strike
from tests.rules.test_ways_out import BASE as BASE_OF_WAYS_OUT
from tests.rules.test_ways_out import BESIDE
from tests.rules.test_ways_out import TWO_VALUES as OF_WAYS_OUT
from tests.rules.test_ways_out import with_fact as changed_everywhere

WORKED_OUT = None
"""The fit that is worked out for each value."""
WHERE = {f"opening.{name}" for name in ("building", "level", "room_from", "room_to")}
"""Where the opening is: it is read of all openings of a room together."""
EGRESS = opening(egress="egress")
INWARDS = opening(egress="egress", egress_toward="inside")
NARROW = leaf(material="aluminium", construction="narrow-stile", stile_mm=60.0)
RATED = opening(rating="45")
NEAR_UNIT = (item("lever", 70.0, 1200.0, 60.0, 20.0),)
"""Its lower edge at 1190 mm is 20 mm above the plate's upper one at 1170 mm."""
BORED = fit(lock_number="BORED", role="lock")
POCKET = hole(
    0.0, "pocket", face="lock-edge", x_mm=22.225, y_mm=1238.125, depth_mm=44.45, width_mm=17.4625, height_mm=349.25,
)  # fmt: skip
IN_EDGE = fit(
    unit="EDGE",
    placement=place(13.5, 1063.5, face="edge", width_mm=17.4625, height_mm=349.25),
    holes=(POCKET,),
)
EURO, HALF = fit(lock_number="EURO"), fit(lock_number="HALF")
LIFT = given(opening(form="lift"), lk=lock("reader"), leaves=(), cat=USUAL)


def lock_last(*others):
    """An opening whose lock is the item that is named last."""
    base = given(items=others)
    return replace(base, items=(*base.items[1:], base.items[0]))


def device(y, **facts):
    """A door with an exit device at a height."""
    return given(items=[item("exit-device", 430.0, y, 800.0, 80.0, rod_ends="both", **facts)])


TWO_VALUES = {
    # One leaf where two are needed; a leaf that swings toward the key side closes against a stop on the inside.
    "opening.form": (given(EGRESS), fit(), "single", "pair", "leaf-count"),
    "opening.hand": (given(), fit(placement=place(x=5.0)), "LH", "LHR", "frame-stop-clear"),
    "opening.rating": (given(), fit(), "none", "90", "rated-hole-allowed"),
    "opening.stair": (given(opening(stair_release="none", egress="egress")), fit(), False, True, "stair-re-entry"),
    "opening.egress": (given(), fit(), "none", "panic", "panic-hardware"),
    # 32 in of clear width: a leaf of 30 in has none.
    "opening.accessible": (given(lf=leaf(width_mm=30 * INCH)), fit(), False, True, "clear-width"),
    "opening.exposure": (given(opening(form="gate")), fit(), "interior", "exterior", "unit-weather"),
    "opening.temperature_low_c": (given(), fit(), 20.0, -40.0, "battery-cold"),
    # 200 a day are what a battery is for.
    "opening.operations_per_day": (given(), fit(), 30.0, 900.0, "busy-on-supply"),
    "opening.operations_day_off": (door(), WORKED_OUT, 0.0, 20000.0, "battery-life"),
    "opening.power_wish": (given(), fit(), "battery", "supply", "power-as-wished"),
    "opening.supply_distance_m": (given(), SUPPLY, 10.0, 90.0, "supply-drop"),
    "opening.rise_m": (given(opening(supply_distance_m=75.0)), SUPPLY, 0.0, 10.0, "supply-drop"),
    # A glass door without a frame has no stop on its face.
    "opening.frame_material": (
        given(opening(hand="LHR", frame_stop_mm=None)), fit(placement=place(x=5.0)), "none", "wood", "frame-stop-clear",
    ),
    "opening.frame_stop_mm": (given(opening(hand="LHR")), fit(placement=place(x=30.0)), 10.0, 60.0, "frame-stop-clear"),
    "opening.wall_build": (LIFT, walled("PLUG"), "masonry", "hollow", "wall-fixings"),
    # The unit takes 40 mm to each side of the reader.
    "opening.reader_aside_mm": (
        LIFT, fit(placement=place(face="wall", x=-40.0)), 20.0, 300.0, "reader-beside-entrance",
    ),
    "leaf.position": (
        given(opening(form="pair"), lk=lock(leaf="active")), fit(), "active", "inactive", "unit-place-known",
    ),
    "leaf.width_mm": (given(EGRESS), fit(), 36 * INCH, 30 * INCH, "egress-width"),
    "leaf.height_mm": (given(), fit(), 2133.6, 1100.0, "plate-within-leaf"),
    "leaf.thickness_mm": (given(), fit(), 44.45, 25.4, "case-within-leaf"),
    "leaf.material": (given(), fit(), "wood", "glass", "no-hole-in-glass"),
    "leaf.construction": (given(lf=replace(NARROW, stile_mm=40.0)), fit(), "flush", "narrow-stile", "plate-on-stile"),
    "leaf.stile_mm": (given(lf=NARROW), fit(), 200.0, 60.0, "plate-on-stile"),
    # NFPA 80: 3/4 in at most under a rated leaf.
    "leaf.undercut_mm": (given(RATED), fit(), 10.0, 25.0, "rated-undercut"),
    "leaf.core": (given(lf=leaf(core=None)), BORED_FIT, "solid", "steel-stiffened", "wire-across-leaf"),
    "leaf.raceway": (given(), SUPPLY, True, False, "wire-across-leaf"),
    "existing_item.kind": (given(items=[item("lever", 70.0, 1100.0)]), fit(), "lite", "label", "glazing-clear"),
    "existing_item.leaf": (given(items=NEAR_UNIT), fit(), "single", "inactive", "lever-clear"),
    "existing_item.face": (given(items=NEAR_UNIT), fit(), "inside", "key", "lever-clear"),
    "existing_item.x_mm": (given(items=[item("lite", 500.0, 1100.0)]), fit(), 500.0, 100.0, "glazing-clear"),
    "existing_item.y_mm": (given(items=[item("lite", 70.0, 1600.0)]), fit(), 1600.0, 1100.0, "glazing-clear"),
    "existing_item.width_mm": (given(items=[item("lite", 300.0, 1100.0)]), fit(), 100.0, 500.0, "glazing-clear"),
    "existing_item.height_mm": (given(items=[item("lite", 70.0, 1500.0)]), fit(), 100.0, 900.0, "glazing-clear"),
    "existing_item.disposition": (given(items=[item("lite", 70.0, 1100.0)]), fit(), "keep", "remove", "glazing-clear"),
    "existing_item.lock_form": (given(), fit(), "mortise", "rim", "cylinder-form"),
    "existing_item.function": (
        given(INWARDS), fit(), "passage", "storeroom", "free-inside",
    ),
    "existing_item.backset_mm": (given(lk=lock("bored")), BORED, 69.85, 60.325, "bored-preparation"),
    "existing_item.cylinder_height_mm": (given(), fit(), 1000.0, 2400.0, "lock-within-leaf"),
    # The case ends 1000 + 44.45 - 150 = 894 mm above the floor, or at 744 mm, within the lite that ends at 800 mm.
    "existing_item.case_height_mm": (lock_last(item("lite", 70.0, 750.0)), fit(), 150.0, 300.0, "lite-clear-of-lock"),
    "existing_item.case_depth_mm": (given(lf=NARROW), fit(), 50.0, 105.0, "case-within-stile"),
    "existing_item.case_width_mm": (given(), fit(), 25.4, 44.0, "case-within-leaf"),
    # The lite begins at 1080 mm; the case ends at 1044 mm or at 1120 mm.
    "existing_item.case_above_mm": (lock_last(item("lite", 70.0, 1130.0)), fit(), 44.45, 120.0, "lite-clear-of-lock"),
    "existing_item.case_offset_mm": (given(), fit(), 0.0, 12.0, "case-within-leaf"),
    # Its middle is the case's, at 969.45: it ends at 1044.45 or at 1071.05, the pocket begins at 1063.5. Off centre by
    # 14 it stands from 32.2 or from 26.2 on across the leaf, the pocket to 31.0.
    "existing_item.front_height_mm": (given(), IN_EDGE, 150.0, 203.2, "front-clear"),
    "existing_item.front_width_mm": (
        given(lk=lock(case_offset_mm=14.0, front_height_mm=203.2)), IN_EDGE, 8.0, 20.0, "front-clear",
    ),
    "existing_item.trim_key_mm": (door(), WORKED_OUT, 0.0, 20.0, "cylinder-flush"),
    # Half a leaf of 44.45 mm and the trim; the half of the cylinder is 30 mm.
    "existing_item.trim_inside_mm": (given(lk=lock("euro-profile")), EURO, 6.0, 12.0, "euro-projection"),
    "existing_item.thumb_turn": (given(lk=lock("euro-profile")), HALF, True, False, "thumb-turn-kept"),
    "existing_item.cross_bore_mm": (given(lk=lock("bored")), BORED, 53.975, 60.0, "bored-preparation"),
    "existing_item.edge_bore_mm": (given(lk=lock("bored")), BORED, 25.4, 30.0, "bored-preparation"),
    "existing_item.cam_form": (given(), fit(), "straight", "clover", "cam-match"),
    "existing_item.device_form": (device(1500.0, rod_x_mm=60.0), fit(), "rim", "surface-rods", "exit-device-clear"),
    "existing_item.rod_x_mm": (device(1500.0, device_form="surface-rods"), fit(), 300.0, 60.0, "exit-device-clear"),
    # The unit stands below it: its lower rod comes where the unit is.
    "existing_item.rod_ends": (
        device(1500.0, device_form="surface-rods", rod_x_mm=60.0), fit(), "top", "both", "exit-device-clear",
    ),
    # The pull ends at 1030, where the lead's hole is: its bolt stands in it, or above it.
    "existing_item.bolt_inset_mm": (
        given(items=[item("pull", 69.85, 1130.0, 30.0, 200.0, face="key")]), fit(holes=(hole(depth_mm=22.0),)),
        50.0, 5.0, "hole-clear",
    ),
    "existing_item.fail": (
        given(INWARDS, lk=lock(function="storeroom"), items=[strike()]), SUPPLY, "fail-secure", "fail-safe",
        "fail-by-side",
    ),
    "existing_item.rated_v": (given(NEAR, items=[strike()]), SUPPLY, 12.0, 24.0, "supply-voltage"),
    "existing_item.rated_a": (given(NEAR, items=[strike()]), SUPPLY, 0.35, 5.0, "supply-share"),
    "existing_item.current_form": (given(NEAR, items=[strike()]), SUPPLY, "dc", "ac", "supply-voltage"),
    "existing_item.conductors": (given(items=[kept_transfer()]), KEPT_FIT, 4, 1, "power-crosses-hinge"),
    "existing_item.loop_ohm": (
        given(opening(supply_distance_m=55.2), MADE, items=[kept_transfer()]), KEPT_FIT, 0.05, 1.0, "supply-drop",
    ),
}  # fmt: skip


def judged(base, stated):
    """Statuses and rules with severities, each as often as it speaks."""
    found = fit_of(base) if stated is WORKED_OUT else stated
    said = Counter((each.rule, each.severity) for each in check(base, found))
    said.update({(refusal.rule, "refused"): 1 for refusal in found.refused} if stated is WORKED_OUT else {})
    said["status", found.status] += 1
    return said


def changed(base, fact, value):
    """The opening with a fact of itself, of its leaves, or of the item that was named last."""
    entity, _, name = fact.partition(".")
    if entity == "opening":
        return replace(base, opening=replace(base.opening, **{name: value}))
    if entity == "leaf":
        return replace(base, leaves=tuple(replace(each, **{name: value}) for each in base.leaves))
    *others, last = base.items
    return replace(base, items=(*others, replace(last, **{name: value})))


@pytest.mark.parametrize("fact", TWO_VALUES)
def test_two_values_of_each_fact_are_judged_differently(fact):
    base, stated, one, other, rule = TWO_VALUES[fact]
    first, second = (judged(changed(base, fact, value), stated) for value in (one, other))
    assert rule in {name for name, _ in (first - second) + (second - first)}, (first - second, second - first)


ATTRIBUTES = {f"{entity.name}.{a.name}": a for entity in ENTITIES for a in entity.attributes}


@pytest.mark.parametrize("fact", TWO_VALUES)
def test_both_values_are_allowed(fact):
    attribute = ATTRIBUTES[fact]
    for value in TWO_VALUES[fact][2:4]:
        if attribute.choices:
            assert attribute.choice(value) is not None
        elif attribute.kind != "flag":
            assert (attribute.low or 0) <= value <= attribute.high


def test_every_fact_that_is_asked_has_its_two_values():
    """But where it is, what the office tells, and what is asked nowhere since no rule reads it."""
    told = WHERE | {fact for fact in ATTRIBUTES if fact.partition(".")[2] in OF_OFFICE - {"position"}}
    assert TWO_VALUES.keys() | OF_WAYS_OUT.keys() | told == ATTRIBUTES.keys()
    assert not TWO_VALUES.keys() & OF_WAYS_OUT.keys()
    assert not told & (TWO_VALUES.keys() | OF_WAYS_OUT.keys())


FORMS = tuple(choice.value for choice in ATTRIBUTES["opening.form"].choices)


@pytest.mark.parametrize("fact", [fact for fact in TWO_VALUES if fact.partition(".")[2] in ASKED])
def test_where_a_fact_is_not_asked_none_of_its_values_decides(fact):
    """Where a reader stands on a wall there is no leaf, and no other lock."""
    base, stated, one, other, _ = TWO_VALUES[fact]
    for form in FORMS:
        if asked_of(fact.partition(".")[2], form):
            continue
        here = replace(base, opening=replace(base.opening, form=form))
        if form in READERS:
            locks = (replace(each, lock_form=each.lock_form and "reader") for each in here.items)
            here = replace(here, leaves=(), items=tuple(locks))
        there = walled("PLUG") if form in READERS else stated
        heard = [judged(changed(here, fact, value), there) for value in (one, other, None)]
        assert heard[0] == heard[1] == heard[2], form


@pytest.mark.parametrize("fact", IDLE)
def test_beside_what_makes_it_idle_none_of_its_values_decides(fact):
    entity = next(name for name in ATTRIBUTES if name.endswith(f".{fact}"))
    name, stated, one, other = OF_WAYS_OUT[entity]
    beside, value = IDLE[fact]
    base = BASE_OF_WAYS_OUT[name]
    told = BESIDE.get(entity, {})
    idle = replace(base, opening=replace(base.opening, **{**told, beside: value}))
    assert not decides(fact, idle.opening)
    assert decides(fact, base.opening)
    heard = [judged(changed_everywhere(idle, entity, each), stated) for each in (one, other, None)]
    assert heard[0] == heard[1] == heard[2]


def test_a_flush_leaf_has_no_stile_that_decides():
    for construction in ("flush", "frameless"):
        base = given(lf=leaf(construction=construction, stile_mm=None))
        assert not decides("stile_mm", base.opening, base.leaves[0])
        heard = [judged(changed(base, "leaf.stile_mm", value), fit()) for value in (20.0, 200.0, None)]
        assert heard[0] == heard[1] == heard[2]


LOCK_FACTS = sorted({*OF_LOCK_FORMS, "function", "backset_mm", "latch_form", "cylinder_height_mm"})


def worked_out():
    """One opening of each form of opening and lock, and material, as complete as the walk of all rules has it."""
    return [there for there, _ in openings_and_fits()[::2] if is_lock(there.items[0])]


@pytest.mark.parametrize("name", LOCK_FACTS)
def test_nothing_is_asked_of_a_lock_that_its_form_does_not_have(name):
    """With the fact left out of each form of lock: what fitting and rules then need is what sheets and forms ask."""
    for there in worked_out():
        first, *rest = there.items
        bare = replace(there, items=(replace(first, **{name: None}), *rest))
        found = fit_of(bare)
        needs = {need.fact for need in found.needs}
        needs |= {need for each in check(bare, found) for need in each.needs} if found.status == "fits" else set()
        for need in needs:
            entity, _, fact = need.partition(".")
            if entity == "existing_item" and fact == name:
                assert asked_of(fact, there.opening.form), (there.opening.form, fact)
                assert asked_of_lock(fact, first.lock_form), (first.lock_form, fact)


OTHER_VALUES = {
    "case_depth_mm": (30.0, 400.0), "case_offset_mm": (6.0,), "cam_form": ("straight", "cross-tail"),
}  # fmt: skip
"""Beside unknown: values at which a door is judged otherwise."""


def heard_of(there, made):
    """What rules say of an opening with a fit, and which fit it gets: its parts, and what is asked."""
    found = fit_of(there)
    needs, parts = tuple(need.fact for need in found.needs), tuple((each.role, each.part) for each in found.parts)
    return found.status, needs, parts, sorted((each.rule, each.message) for each in check(there, made))


@cache
def of_each_form():
    """Openings of each form of lock, with a fit."""
    found = {}
    every = openings_and_fits()
    # Beside each other one, those whose unit stands in the edge of a wooden leaf.
    in_edge = [(there, made) for there, made in every[1::2] if _in_wooden_edge(there, made)]
    for there, made in (*every[::2], *in_edge):
        found.setdefault(there.items[0].lock_form, []).append((there, made))
    return found


def _in_wooden_edge(there, made):
    return bool(there.leaves) and there.leaves[0].material == "wood" and made.part("unit").part == "EDGE"


@pytest.mark.parametrize("name", OF_LOCK_FORMS)
def test_a_lock_is_asked_for_what_decides_of_its_form_and_for_nothing_else(name):
    """The table of what is asked of which form of lock, worked out anew: by what changes when the fact does."""

    def decides_of(form):
        asked = form in OF_LOCK_FORMS[name]
        # What nobody is asked for nobody writes: there only leaving it out is tried, on a few.
        values = (None, *(OTHER_VALUES.get(name, ()) if asked else ()))
        return any(
            heard_of(replace(there, items=(replace(there.items[0], **{name: value}), *there.items[1:])), made)
            != heard_of(there, made)
            for there, made in of_each_form()[form][: None if asked else 3]
            for value in values
        )

    assert {form for form in of_each_form() if decides_of(form)} == set(OF_LOCK_FORMS[name])


@pytest.mark.parametrize("kind", ["release-sensor", "release-button"])
def test_where_a_release_hangs_beside_the_leaf_is_not_asked(kind):
    """Over the head or on the wall: no hole is drilled near it, and it cannot reach past the leaf."""
    bare = replace(item(kind), x_mm=None, y_mm=None, width_mm=None, height_mm=None)
    for each in (bare, item(kind, x=-150.0), item(kind, y=2300.0)):
        assert judged(given(items=[each]), fit()) == judged(given(), fit())
