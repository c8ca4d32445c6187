"""The solid model of an opening: each body where the survey, the catalogue and the practice put it, by hand.

The leaf is 914.4 x 2133.6 x 44.45, 10 above the floor; the lock's cylinder stands at x 69.85, y 1000; mm throughout.
"""

import doctest
from dataclasses import replace
from math import cos, radians, sin

import pytest

from hwsched.calc.opening.bore import Box, Rod
from hwsched.rules.solid import bodies as module
from hwsched.rules.solid.bodies import (
    EXISTING,
    NEW,
    drill_angle_deg,
    existing_bodies,
    lasting_bodies,
    lock_bodies,
    new_bodies,
    slot_of,
    solid_of,
)
from hwsched.rules.solid.exit_devices import rod_line_mm
from hwsched.rules.solid.screws import screw_places
from hwsched.survey import ENTITIES
from hwsched.values import Fit, LockPoint, Settings
from tests.rules.scenario import INCH, catalogue, fit, fp, given, hole, item, leaf, lock, opening, part, place

THICK = 44.45
MIDDLE = THICK / 2
NOTHING = Fit("to-measure")
# An item 60 wide and 40 high with its middle at x 300, y 1200.
AT = {"x": 300.0, "y": 1200.0, "w": 60.0, "h": 40.0}
THROUGH = Box((270.0, 1180.0, -50.0), (330.0, 1220.0, THICK + 50.0))
SLAB = Box((270.0, 1180.0, -50.0), (330.0, 1220.0, 0.0))
IN_LEAF = {
    "lite": [("glass", THROUGH)],
    "louvre": [("glass", THROUGH)],
    # Spindles from the face on which they stand to the middle: 3/4 in for a turn, 1 in for a lever (from memory).
    "thumb-turn": [("spindle", Rod((300.0, 1200.0, 0.0), (300.0, 1200.0, MIDDLE), 0.75 * INCH))],
    # Its handle, 1 in thick (from memory), as it comes down by 50 degrees: from the spindle to 30 less half of it.
    "lever": [
        ("spindle", Rod((300.0, 1200.0, 0.0), (300.0, 1200.0, MIDDLE), INCH)),
        *(
            (
                "sweep",
                Rod(
                    (300.0, 1200.0, -INCH / 2),
                    (300.0 + 17.3 * cos(radians(down)), 1200.0 - 17.3 * sin(radians(down)), -INCH / 2),
                    INCH,
                ),
            )
            for down in (10, 20, 30, 40, 50)
        ),
    ],
    # A viewer is as wide through the leaf as it is on the face where it is narrowest.
    "viewer": [("spindle", Rod((300.0, 1200.0, 0.0), (300.0, 1200.0, THICK), 40.0))],
    # 2 1/8 in across and 1 in from the edge, where nobody measured (encyclopedic page; from memory).
    "deadbolt": [
        ("bolt", Rod((300.0, 1200.0, 0.0), (300.0, 1200.0, THICK), 2.125 * INCH)),
        ("bolt", Rod((0.0, 1200.0, MIDDLE), (300.0, 1200.0, MIDDLE), INCH)),
    ],
    # Bolts of 5/16 in (from memory) where they were measured, 15 from its ends at 1180 and 1220.
    "pull": [
        ("bolt", Rod((300.0, 1195.0, 0.0), (300.0, 1195.0, THICK), 5 / 16 * INCH)),
        ("bolt", Rod((300.0, 1205.0, 0.0), (300.0, 1205.0, THICK), 5 / 16 * INCH)),
        # Their nuts on the key face, as broad as a socket of 3/4 in (from memory).
        ("nut", Rod((300.0, 1195.0, THICK), (300.0, 1195.0, THICK + 50.0), 0.75 * INCH)),
        ("nut", Rod((300.0, 1205.0, THICK), (300.0, 1205.0, THICK + 50.0), 0.75 * INCH)),
    ],
    # 3/4 in deep into the edge and 1 in wide (from memory; trade tip page), as high as it is.
    "flush-bolt": [("bolt", Box((0.0, 1180.0, MIDDLE - INCH / 2), (0.75 * INCH, 1220.0, MIDDLE + INCH / 2)))],
}
# By their nature on the edge or on the frame; and over the head or on the wall, of which the face is the side.
BESIDE = {"release-sensor", "release-button"}
NOT_ON_A_FACE = {"hinge", "strike", "electric-strike", "electromagnetic-lock"} | BESIDE
NO_SLAB = {"lite", "louvre", "lock"} | BESIDE
KINDS = [choice.value for e in ENTITIES for a in e.attributes if (e.name, a.name) == ("existing_item", "kind")
         for choice in a.choices]  # fmt: skip


def of_item(bodies, name):
    return [(body.kind, body.solid) for body in bodies if body.item == name and body.kind not in ("on-face", "proud")]


def numbers(solid):
    """All numbers of a box or rod."""
    return [at for each in solid for at in (each if isinstance(each, tuple) else (each,))]


def kinds(bodies, *wanted):
    return [body for body in bodies if body.kind in wanted]


def test_docs():
    assert doctest.testmod(module).failed == 0


def test_what_a_table_of_kinds_lists_is_known():
    assert set(IN_LEAF) | NOT_ON_A_FACE <= set(KINDS)


@pytest.mark.parametrize("kind", KINDS)
def test_an_item_of_each_kind(kind):
    found = lasting_bodies(given(items=[item(kind, **AT)]))
    bodies, wanted = of_item(found, kind), IN_LEAF.get(kind, [])
    assert [name for name, _ in bodies] == [name for name, _ in wanted]
    for (_, solid), (_, expected) in zip(bodies, wanted, strict=True):
        assert type(solid) is type(expected)
        assert numbers(solid) == pytest.approx(numbers(expected))
    # On its face it stands as it was measured; a lite's frame is part of the body that goes through, and a lock's own
    # trim is what its head stands on.
    on = [(body.face, body.solid) for body in found if body.kind == "on-face" and body.item == kind]
    assert on == ([] if kind in NO_SLAB else [("inside", SLAB)])


@pytest.mark.parametrize("kind", KINDS)
def test_an_item_whose_face_nobody_told_stands_on_both_or_where_its_kind_does(kind):
    found = lasting_bodies(given(items=[item(kind, **AT, face=None)]))
    faces = [body.face for body in found if body.kind == "on-face"]
    assert faces == ([] if kind in (NOT_ON_A_FACE | NO_SLAB) else ["inside", "key"])
    for body in kinds(found, "spindle"):
        assert (body.solid.start[2], body.solid.end[2]) == (0.0, THICK)


@pytest.mark.parametrize("kind", sorted(IN_LEAF))
def test_what_goes_or_has_no_place_gives_no_body(kind):
    for change in ({"disposition": "remove"}, {"disposition": "move"}):
        thing = replace(item(kind, **AT), **change)
        assert of_item(lasting_bodies(given(items=[thing])), kind) == []


@pytest.mark.parametrize("kind", sorted(set(IN_LEAF) - {"lite", "louvre"}))
@pytest.mark.parametrize("fact", ["x_mm", "y_mm", "width_mm", "height_mm"])
def test_what_has_no_place_may_be_wherever_the_rest_lets_it(kind, fact):
    """Never nothing: what comes in asks for the fact, and whatever it is the body that follows lies within."""
    (body,) = [
        body
        for body in lasting_bodies(given(items=[replace(item(kind, **AT), **{fact: None})]))
        if body.item == kind and body.kind in ("spindle", "bolt")
    ]
    assert body.needs == (f"existing_item.{fact}",)
    assert body.surely is None
    for told in lasting_bodies(given(items=[item(kind, **AT)])):
        if told.item == kind and told.kind in ("spindle", "bolt") and told.name != "the deadbolt's edge bore":
            for low, high, from_, to in zip(*told.reach, *body.reach, strict=True):
                # A viewer's hole is as wide as its footprint: unknown with it.
                assert kind == "viewer" or (from_ <= low + 1e-9 and high <= to + 1e-9)


def test_measured_bores_of_a_deadbolt_count_as_measured():
    thing = item("deadbolt", **AT, cross_bore_mm=38.1, edge_bore_mm=22.225)
    found = lasting_bodies(given(items=[thing]))
    assert [body.solid.diameter_mm for body in kinds(found, "bolt")] == [38.1, 22.225]


def test_a_lever_s_spindle_stands_on_the_lock_s_backset_where_its_handle_reaches_past_it():
    # 130 wide from x 50 to 180: the middle of the handle is at 115, the spindle at 69.85.
    (turned,) = kinds(lasting_bodies(given(items=[item("lever", 115.0, 914.0, 130.0, 60.0, face="both")])), "spindle")
    assert turned.solid == Rod((69.85, 914.0, 0.0), (69.85, 914.0, THICK), INCH)
    # On the key face it ends in the middle.
    (turned,) = kinds(lasting_bodies(given(items=[item("lever", 300.0, 914.0, 130.0, 60.0, face="key")])), "spindle")
    assert turned.solid == Rod((300.0, 914.0, MIDDLE), (300.0, 914.0, THICK), INCH)


# --- the lock -----------------------------------------------------------------------------------------------------

HOLE = 1.25 * INCH / 2  # half of the hole round a cylinder


def the_case(**facts):
    (found,) = kinds(existing_bodies(given(lk=lock(**facts)), NOTHING), "case")
    return found


def test_a_pull_is_bolted_at_both_ends():
    found = of_item(lasting_bodies(given(items=[item("pull", 80.0, 1200.0, 30.0, 200.0, face="key")])), "pull")
    assert [(kind, solid.start[1]) for kind, solid in found] == [
        ("bolt", 1115.0), ("bolt", 1285.0), ("nut", 1115.0), ("nut", 1285.0),
    ]  # fmt: skip


def rods(**facts):
    """What an exit device of 800 x 80 with its middle at 1000 has in the leaf, where its fixings do not enter it."""
    thing = item("exit-device", 430.0, 1000.0, 800.0, 80.0, **facts)
    return [body for body in lasting_bodies(given(items=[thing])) if body.item == "exit-device" and body.kind == "bolt"]


def test_rods_in_the_leaf_lead_from_the_device_to_their_latches():
    """In holes of 3/4 in, latches 1 1/4 in wide, 5 in high, 1 in deep in the leaf's middle (all from memory)."""
    up, top, down, low = rods(device_form="concealed-rods", rod_x_mm=60.0, rod_ends="both")
    assert up.solid == Rod((60.0, 1000.0, MIDDLE), (60.0, 2143.6, MIDDLE), 19.05)
    half = 15.875
    assert top.solid == Box((60.0 - half, 2143.6 - 127.0, MIDDLE - 12.7), (60.0 + half, 2143.6, MIDDLE + 12.7))
    assert down.solid == Rod((60.0, 10.0, MIDDLE), (60.0, 1000.0, MIDDLE), 19.05)
    assert low.solid == Box((60.0 - half, 10.0, MIDDLE - 12.7), (60.0 + half, 137.0, MIDDLE + 12.7))
    assert len(rods(device_form="concealed-rods", rod_x_mm=60.0, rod_ends="top")) == 2


def test_what_of_rods_nobody_told_is_asked_and_never_taken_for_none():
    for told in ("rim", "mortise", "surface-rods"):
        assert rods(device_form=told) == []
    (column,) = rods(device_form=None)
    assert column.needs == ("existing_item.device_form",)
    assert column.surely is None
    # Within 6 in of the lock edge, 1 in deep in the leaf's middle, from memory; as high as the leaf.
    assert column.solid == Box((0.0, 10.0, MIDDLE - 12.7), (152.4, 2143.6, MIDDLE + 12.7))
    (column,) = rods(device_form="concealed-rods")
    assert column.needs == ("existing_item.rod_x_mm",)
    told = rods(device_form="concealed-rods", rod_x_mm=60.0)
    assert [body.needs for body in told] == [(), (), ("existing_item.rod_ends",), ("existing_item.rod_ends",)]


def on_face(**facts):
    thing = item("exit-device", 430.0, 1000.0, 800.0, 80.0, **facts)
    return [body for body in lasting_bodies(given(items=[thing])) if body.kind == "on-face"]


@pytest.mark.parametrize(
    ("facts", "line"),
    [
        ({"device_form": "rim", "rod_x_mm": 70.0}, (None, ())),
        ({"device_form": "mortise"}, (None, ())),
        ({"device_form": None, "rod_x_mm": 70.0}, (None, ("existing_item.device_form",))),
        ({"device_form": "surface-rods"}, (None, ("existing_item.rod_x_mm",))),
        ({"device_form": "concealed-rods", "rod_x_mm": 70.0}, (70.0, ())),
    ],
)
def test_where_the_rods_of_a_device_run(facts, line):
    assert rod_line_mm(item("exit-device", **facts)) == line


def test_rods_on_the_face_stand_where_units_and_heads_may_not():
    """Guides of 1 in, latches of 2 x 5 in, from memory; the device itself first."""
    device, up, top, down, low = on_face(device_form="surface-rods", rod_x_mm=60.0, rod_ends="both")
    assert (device.solid.low[0], device.solid.high[0]) == (30.0, 830.0)
    assert (up.solid.low[:2], up.solid.high[:2]) == ((60.0 - 12.7, 1000.0), (60.0 + 12.7, 2143.6))
    assert (top.solid.low[:2], top.solid.high[:2]) == ((60.0 - 25.4, 2016.6), (60.0 + 25.4, 2143.6))
    assert (down.solid.low[1], down.solid.high[1], low.solid.high[1]) == (10.0, 1000.0, 137.0)
    assert {body.item for body in (up, top, down, low)} == {"exit-device"}
    perhaps = on_face(device_form="surface-rods", rod_x_mm=60.0)
    assert [body.needs for body in perhaps] == [(), (), (), ("existing_item.rod_ends",), ("existing_item.rod_ends",)]
    assert len(on_face(device_form="concealed-rods", rod_x_mm=60.0)) == 1


def test_a_device_without_rods_or_without_a_place_hides_none_behind_it():
    facts = {"device_form": "concealed-rods", "rod_x_mm": 60.0, "rod_ends": "top"}
    rodded = item("exit-device", 430.0, 1000.0, 800.0, 80.0, **facts)
    for before in (item("exit-device", 430.0, 500.0, 800.0, 80.0), item("exit-device", x=None)):
        names = [body.name for body in lasting_bodies(given(items=[before, rodded]))]
        assert (names.count("the exit device's rod"), names.count("the exit device's latch")) == (1, 1)


def test_what_stays_beside_another_lock_or_has_no_place_is_there_too():
    viewer = item("viewer", 200.0, 1400.0, 14.0, 30.0)
    kept = item(
        "lock", 800.0, 1300.0, lock_form="bored", backset_mm=69.85, cylinder_height_mm=1300.0, cross_bore_mm=54.0
    )
    for before in (kept, item("lever", x=None), item("pull", disposition="remove")):
        (hole,) = [body for body in lasting_bodies(given(items=[before, viewer])) if body.item == "viewer"
                   and body.kind == "spindle"]  # fmt: skip
        # As wide as its footprint is at the least.
        assert hole.solid == Rod((200.0, 1400.0, 0.0), (200.0, 1400.0, THICK), 14.0)


def test_a_device_that_is_the_lock_has_its_rods_too():
    lk = lock("rim", kind="exit-device", device_form="concealed-rods", rod_x_mm=60.0, rod_ends="top", bolt_inset_mm=0.0,
              x_mm=430.0, y_mm=1000.0, width_mm=800.0, height_mm=80.0, face="inside")  # fmt: skip
    assert [body.name for body in kinds(lasting_bodies(given(lk=lk)), "bolt")] == [
        "the exit device's rod", "the exit device's latch",
    ]  # fmt: skip


def bolts(kind, **facts):
    thing = item(kind, 430.0, 1000.0, 200.0, 80.0, face="key", **facts)
    return [body for body in lasting_bodies(given(items=[thing])) if body.item == kind and body.kind == "bolt"]


def test_fixings_stand_where_they_were_measured():
    """A lever's above and below its spindle, a closer's at its corners, an exit device's at those of case and cap."""
    spots = {kind: sorted(body.solid.start[:2] for body in bolts(kind, bolt_inset_mm=20.0)) for kind in MEASURED}
    assert spots == MEASURED
    # Without a lock of rim form its case is taken as 8 in long, from memory: here that is past its bar's end.
    (first, *_) = bolts("exit-device", bolt_inset_mm=20.0)
    assert first.solid == Rod((510.0, 980.0, 0.0), (510.0, 980.0, THICK), 5 / 16 * INCH)
    assert {body.needs for kind in MEASURED for body in bolts(kind, bolt_inset_mm=20.0)} == {()}


MEASURED = {
    "lever": [(430.0, 980.0), (430.0, 1020.0)],
    "pull": [(430.0, 980.0), (430.0, 1020.0)],
    "closer": [(350.0, 980.0), (350.0, 1020.0), (510.0, 980.0), (510.0, 1020.0)],
    "exit-device": [(350.0, 980.0), (350.0, 1020.0), (510.0, 980.0), (510.0, 1020.0)],
}


def test_an_exit_device_s_case_ends_where_the_rim_lock_s_case_was_measured():
    thing = item("exit-device", 430.0, 1000.0, 800.0, 80.0, bolt_inset_mm=20.0)
    found = lasting_bodies(given(lk=lock("rim", case_depth_mm=120.0), items=[thing]))
    spots = {body.solid.start[:2] for body in found if body.item == "exit-device" and body.kind == "bolt"}
    assert {x for x, _ in spots} == {50.0, 100.0, 810.0}


@pytest.mark.parametrize("kind", MEASURED)
def test_fixings_that_nobody_measured_may_stand_wherever_they_usually_do(kind):
    for body in bolts(kind, bolt_inset_mm=None):
        assert body.needs == ("existing_item.bolt_inset_mm",)
        assert body.surely is None
    held = [body.solid for body in bolts(kind, bolt_inset_mm=None)]
    # Wherever it was measured to stand it is within what it may take.
    for body in bolts(kind, bolt_inset_mm=20.0):
        at = body.solid.start
        assert any(all(box.low[i] <= at[i] <= box.high[i] for i in range(3)) for box in held)
    assert bolts(kind, bolt_inset_mm=0.0) == []


def test_a_measured_case():
    # 44.45 of 150 above the cylinder, 105 deep, 25.4 wide in the middle.
    found = the_case()
    assert found.solid == Box((0.0, 894.45, MIDDLE - 12.7), (105.0, 1044.45, MIDDLE + 12.7))
    assert found.needs == ()
    assert found.surely in (None, found.solid)
    # 2 nearer to the key face.
    assert the_case(case_offset_mm=2.0).solid.low[2] == pytest.approx(MIDDLE - 12.7 + 2.0)


@pytest.mark.parametrize(
    ("facts", "most", "least"),
    [
        # Without its width: as wide as the leaf, or half of the cylinder's hole.
        (
            {"case_width_mm": None},
            ((0, 894.45, 0), (105, 1044.45, THICK)),
            ((0, 894.45, MIDDLE - HOLE / 2), (105, 1044.45, MIDDLE + HOLE / 2)),
        ),
        (
            {"case_depth_mm": None},
            ((0, 894.45, 9.525), (69.85 + 200, 1044.45, 34.925)),
            ((0, 894.45, 9.525), (69.85 + HOLE, 1044.45, 34.925)),
        ),
        # Without its height it may go down far, without its upper end both ways.
        (
            {"case_height_mm": None},
            ((0, 1000 - 200, 9.525), (105, 1044.45, 34.925)),
            ((0, 1000 - HOLE, 9.525), (105, 1044.45, 34.925)),
        ),
        (
            {"case_above_mm": None},
            ((0, 1000 - 200, 9.525), (105, 1000 + 200, 34.925)),
            ((0, 1000 - HOLE, 9.525), (105, 1000 + HOLE, 34.925)),
        ),
    ],
)
def test_a_case_that_nobody_measured_is_as_large_as_it_can_be(facts, most, least):
    """It may reach 200 from its cylinder (from memory), and is there at least round the cylinder."""
    found = the_case(**facts)
    assert found.needs == tuple(f"existing_item.{name}" for name in facts)
    for box, (low, high) in ((found.solid, most), (found.surely, least)):
        assert box.low == pytest.approx(low)
        assert box.high == pytest.approx(high)


def in_leaf(form, number, **facts):
    found = existing_bodies(given(lk=lock(form, **facts)), fit(lock_number=number, role="lock"))
    return [(body.name, body.solid) for body in kinds(found, "case", "bore")]


def test_the_bores_of_other_forms_of_lock():
    through = (69.85, 1000.0, 0.0), (69.85, 1000.0, THICK)
    along = (0.0, 1000.0, MIDDLE), (69.85, 1000.0, MIDDLE)
    # The new lock's bores count where they are larger than those that are there.
    assert in_leaf("bored", "BORED", cross_bore_mm=38.1, edge_bore_mm=22.225) == [
        ("the lock's cross bore", Rod(*through, 53.975)),
        ("the lock's edge bore", Rod(*along, 25.4)),
    ]
    assert in_leaf("bored", "BORED", cross_bore_mm=60.0)[0][1] == Rod(*through, 60.0)
    assert in_leaf("rim", "RIM") == [("the cylinder's hole", Rod(*through, 1.25 * INCH))]
    assert in_leaf("cabinet", "CAB") == [("the cabinet lock's hole", Rod(*through, 19.05))]
    # The reader is 32 deep and 28 across, from the key face.
    assert in_leaf("reader", "READ") == [
        ("the reader's hole", Rod((69.85, 1000.0, THICK - 32.0), (69.85, 1000.0, THICK), 28.0))
    ]
    assert in_leaf("gate", "GATE") == []


def test_locks_at_other_points_of_the_leaf():
    second = replace(
        lock(kind="deadbolt", cylinder_height_mm=1200.0, case_height_mm=60.0, case_above_mm=30.0, case_depth_mm=90.0),
        id="d",
    )
    held = replace(given(items=[second]), point=LockPoint("p1", "k", others=("d",)))
    (other,) = kinds(existing_bodies(held, NOTHING), "other-lock")
    assert numbers(other.solid) == pytest.approx([0.0, 1170.0, 9.525, 90.0, 1230.0, 34.925])
    bores = replace(second, lock_form="bored", cross_bore_mm=38.1, edge_bore_mm=25.4)
    bored = replace(held, items=(held.items[0], bores))
    assert [body.solid.diameter_mm for body in kinds(existing_bodies(bored, NOTHING), "other-lock")] == [38.1, 25.4]


@pytest.mark.parametrize("kind", ["lock", "deadbolt"])
def test_a_lock_that_stays_is_in_the_way_too(kind):
    """No lock point, since nobody converts it; its case stands in the leaf as that of any other."""
    facts = {"cylinder_height_mm": 1200.0, "case_height_mm": 60.0, "case_above_mm": 30.0, "case_depth_mm": 90.0}
    stays = replace(lock(kind=kind, disposition="keep", **facts), id="d")
    (other,) = kinds(existing_bodies(given(items=[stays]), NOTHING), "other-lock")
    assert numbers(other.solid) == pytest.approx([0.0, 1170.0, 9.525, 90.0, 1230.0, 34.925])
    # Nobody measured its width: it may fill the leaf.
    (other,) = kinds(existing_bodies(given(items=[replace(stays, case_width_mm=None)]), NOTHING), "other-lock")
    assert (other.solid.low[2], other.solid.high[2], other.needs) == (0.0, THICK, ("existing_item.case_width_mm",))


# --- the leaf's own limits and the frame's stop -------------------------------------------------------------------


def test_beyond_the_leaf():
    found = {body.name: body.solid for body in kinds(lasting_bodies(given()), "beyond-leaf", "beyond-stile")}
    assert set(found) == {"the lock edge", "the hinge edge", "the leaf's lower edge", "the leaf's top"}
    assert found["the lock edge"].high[0] == 0.0
    assert found["the hinge edge"].low[0] == 914.4
    assert (found["the leaf's lower edge"].high[1], found["the leaf's top"].low[1]) == (10.0, 10.0 + 2133.6)
    narrow = given(lf=leaf(construction="narrow-stile", stile_mm=54.0))
    assert kinds(lasting_bodies(narrow), "beyond-stile")[0].solid.low[0] == 54.0
    # How far a flush leaf's stile reaches nobody has to know.
    assert not kinds(lasting_bodies(given(lf=leaf(stile_mm=54.0))), "beyond-stile")


def test_the_band_that_the_stop_hides():
    # LH: the key face closes against the stop (SDI 111 chart), 15.875 along both edges and the top.
    bands = kinds(lasting_bodies(given()), "stop")
    assert [body.face for body in bands] == ["key"] * 3
    assert {(body.solid.low[2], body.solid.high[2]) for body in bands} == {(THICK, THICK + 50.0)}
    assert min(body.solid.high[0] for body in bands) == 15.875
    assert [body.face for body in kinds(lasting_bodies(given(opening(hand="LHR"))), "stop")] == ["inside"] * 3


def test_without_a_leaf_or_its_thickness_there_are_no_bodies():
    for held in (given(leaves=()), given(lf=leaf(thickness_mm=None))):
        assert existing_bodies(held, fit()) == ()
        assert new_bodies(held, fit()) == ()


# --- what comes in ------------------------------------------------------------------------------------------------


def new(kind, held=None, **facts):
    return kinds(new_bodies(held or given(), fit(**facts)), kind)


def test_the_plate_and_its_screws():
    (plate,) = new("plate")
    assert plate.solid == Box((30.0, 1010.0, -50.0), (110.0, 1170.0, 0.0))
    # 6 mm inside the corners (common practice), 3/8 in deep, #6: 0.138 in.
    screws = new("screw")
    assert {body.solid.start for body in screws} == {
        (36.0, 1016.0, 0.0), (104.0, 1016.0, 0.0), (36.0, 1164.0, 0.0), (104.0, 1164.0, 0.0),
    }  # fmt: skip
    assert {(body.solid.end[2], body.solid.diameter_mm) for body in screws} == {(9.525, 3.505)}
    # On the key face they go the other way.
    key = new("screw", placement=place(face="key"))
    assert {(body.solid.start[2], body.solid.end[2]) for body in key} == {(THICK, THICK - 9.525)}


def test_screws_where_the_catalogue_puts_them():
    own = given(cat=catalogue(UNIT={"screw_places": "40, 150; 15, 20.5", "screws": 2, "screw_seat_mm": 2.0}))
    assert [body.solid.start[:2] for body in new("screw", own)] == [(70.0, 1160.0), (45.0, 1030.5)]
    # What stays in the plate is not in the leaf.
    assert {body.solid.end[2] for body in new("screw", own)} == {7.525}


@pytest.mark.parametrize(
    ("count", "places"),
    [
        # Of 80 by 160 mm: one in its middle, two in the middle of the short sides, of three the odd one below.
        (1, {(40.0, 80.0)}),
        (2, {(40.0, 6.0), (40.0, 154.0)}),
        (3, {(6.0, 154.0), (74.0, 154.0), (40.0, 6.0)}),
        (6, {(6.0, 6.0), (74.0, 6.0), (6.0, 154.0), (74.0, 154.0), (6.0, 80.0), (74.0, 80.0)}),
    ],
)
def test_screws_where_the_catalogue_is_silent(count, places):
    """6 mm inside the corners (common practice, unverified)."""
    unit = part("U", "surface-unit", screws=count)
    assert set(screw_places(unit, 80.0, 160.0)) == places


@pytest.mark.parametrize("form", ["through-bolt", "machine-screw"])
def test_bolts_pass_the_leaf(form):
    held = given(cat=catalogue(SCREW={"form": form, "length_mm": None}))
    assert {body.solid.end[2] for body in new("screw", held)} == {THICK}


def test_no_screws_where_they_are_not_known_or_none_are():
    assert new("screw", given(cat=catalogue(SCREW={"length_mm": None}))) == []
    assert new("screw", given(cat=catalogue(SCREW={"form": "adhesive"}))) == []
    assert new("screw", placement=place(face="edge")) == []
    assert new("screw", placement=None) == []


def test_holes_by_what_they_are_for():
    slanted = hole(9.525, "channel", y_mm=1063.5, up_deg=-80.0, from_depth_mm=9.525, depth_mm=20.0)
    pocket = hole(0.0, "pocket", face="lock-edge", x_mm=22.225, y_mm=1238.125, depth_mm=44.45, width_mm=17.4625,
                  height_mm=349.25)  # fmt: skip
    edge = hole(25.4, "function", face="lock-edge", x_mm=22.225, y_mm=965.2, depth_mm=69.85)
    template = hole(1.98, "fixing", by_template=True)
    found = new_bodies(
        given(), fit(holes=(hole(), slanted, hole(53.975, "function", depth_mm=None), pocket, edge, template))
    )
    square, channel = kinds(found, "lead-hole")
    assert square.solid == Rod((69.85, 1030.0, 0.0), (69.85, 1030.0, 9.5), 12.7)
    # 20 along an axis at 10 degrees to the face: down by 20 cos 10, in by 20 sin 10.
    assert channel.solid.start == (69.85, 1063.5, 9.525)
    assert channel.solid.end == pytest.approx((69.85, 1063.5 - 20 * cos(radians(10)), 9.525 + 20 * sin(radians(10))))
    across, along = kinds(found, "new-bore")
    assert across.solid == Rod((69.85, 1030.0, 0.0), (69.85, 1030.0, THICK), 53.975)
    assert along.solid == Rod((0.0, 965.2, 22.225), (69.85, 965.2, 22.225), 25.4)
    (cut,) = kinds(found, "pocket")
    # 349.25 high about 1238.125, 17.4625 wide in the middle of the leaf.
    assert cut.solid == Box((0.0, 1063.5, 22.225 - 8.73125), (44.45, 1412.75, 22.225 + 8.73125))
    tools = kinds(found, "tool", "usual-tool")
    assert (
        len(found) - len(tools) == 5 + 1 + 4
    )  # and plate and screws; what stands where its part does is not counted twice
    assert solid_of(template, THICK) is None


def test_the_slot_of_a_tilted_bit_is_a_body_too():
    # As wide as the hole of 12.7 and as deep, up to 81.445 above its centre.
    hole_, slot = new("lead-hole", holes=(hole(slot_mm=81.445),))
    assert hole_.solid == Rod((69.85, 1030.0, 0.0), (69.85, 1030.0, 9.5), 12.7)
    assert numbers(slot.solid) == pytest.approx([63.5, 1023.65, 0.0, 76.2, 1111.445, 9.5])
    # From the key face it goes the other way; what leans from the face on has none beside itself.
    _, slot = new("lead-hole", holes=(hole(slot_mm=-81.445, face="key"),))
    assert numbers(slot.solid) == pytest.approx([63.5, 948.555, THICK - 9.5, 76.2, 1036.35, THICK])
    assert len(new("lead-hole", holes=(hole(9.525, up_deg=-45.0, slot_mm=6.735),))) == 1


def test_holes_of_the_other_leaf_are_not_in_this_one():
    assert new("lead-hole", holes=(hole(leaf="inactive"),)) == []


def test_what_a_hole_takes_from_its_face():
    plain = slot_of(hole())
    assert (plain.x0, plain.y0, plain.x1, plain.y1) == pytest.approx((63.5, 1023.65, 76.2, 1036.35))
    up, down = slot_of(hole(slot_mm=81.4)), slot_of(hole(slot_mm=-81.4))
    assert (up.y0, up.y1) == pytest.approx((1023.65, 1111.4))
    assert (down.y0, down.y1) == pytest.approx((948.6, 1036.35))
    # Slanted from the face on: 3/8 in at 45 degrees is 4.7625 / sin 45 = 6.735 to each side.
    slanted = slot_of(hole(9.525, up_deg=-45.0, slot_mm=6.735))
    assert (slanted.x0, slanted.x1, slanted.y0, slanted.y1) == pytest.approx((63.115, 76.585, 1023.265, 1036.735))


def test_heads_on_the_faces():
    # Head 35 under a collar of 40: the wider one counts, on the key face alone.
    held = given(cat=catalogue(CYL={"head_diameter_mm": 35.0}, COL={"outer_diameter_mm": 40.0}))
    (head,) = new("head", held)
    assert (head.name, head.face) == ("the cylinder's collar", "key")
    assert head.solid == Rod((69.85, 1000.0, THICK), (69.85, 1000.0, THICK + 50.0), 40.0)
    (head,) = new("head", given(cat=catalogue(CYL={"head_diameter_mm": 42.0}, COL={"outer_diameter_mm": 40.0})))
    assert (head.name, head.solid.diameter_mm) == ("the cylinder's head", 42.0)
    roses = kinds(new_bodies(given(lk=lock("bored")), fit(lock_number="BORED", role="lock")), "head")
    assert [(body.face, body.solid.diameter_mm) for body in roses] == [("inside", 80.0), ("key", 80.0)]
    (face,) = kinds(new_bodies(given(lk=lock("reader")), fit(lock_number="READ", role="reader")), "head")
    assert numbers(face.solid) == pytest.approx([47.85, 978.0, THICK, 91.85, 1022.0, THICK + 50.0])
    # No size in the catalogue, no body of a made-up size; without a collar the head alone.
    assert new("head") == []
    (head,) = new("head", held, without=("collar",))
    assert (head.name, head.solid.diameter_mm) == ("the cylinder's head", 35.0)
    assert [body for body in new_bodies(held, fit(without=("cylinder",))) if body.kind == "head"] == []


@pytest.mark.parametrize(
    "there",
    [
        given(lk="none"), given(lk=lock(backset_mm=None)), given(lk=lock(cylinder_height_mm=None)),
        given(leaves=()), given(lf=leaf(thickness_mm=None)),
    ],
)  # fmt: skip
def test_without_a_lock_or_its_place_there_is_none_and_no_head(there):
    assert list(lock_bodies(there, fit())) == []
    assert [body for body in new_bodies(there, fit()) if body.kind == "head"] == []


def test_what_an_edge_takes_that_is_no_pocket_is_round():
    for facts in ({"width_mm": 17.0}, {"height_mm": 350.0}):
        bore = hole(25.4, "function", face="lock-edge", x_mm=22.225, y_mm=965.2, depth_mm=69.85, **facts)
        (body,) = kinds(new_bodies(given(), fit(holes=(bore,))), "new-bore")
        assert body.solid == Rod((0.0, 965.2, 22.225), (69.85, 965.2, 22.225), 25.4)


def test_the_angle_between_a_bore_and_its_face():
    assert drill_angle_deg(hole()) == 90.0
    assert drill_angle_deg(hole(up_deg=-80.0)) == 10.0
    # 45 up and 15 aside: tan is sqrt(1 + 0.26795 squared) = 1.03528, 45.9926 from square.
    assert drill_angle_deg(hole(up_deg=45.0, edge_deg=15.0)) == pytest.approx(90.0 - 45.9926, abs=1e-3)


def test_every_body_is_of_a_known_kind_and_lies_in_its_reach():
    held = given(
        items=[item(kind, 300.0, 300.0 + 60 * i, 50.0, 40.0) for i, kind in enumerate(KINDS) if kind != "lock"],
        cat=catalogue(COL={"outer_diameter_mm": 40.0}),
    )
    found = [*existing_bodies(held, fit()), *new_bodies(held, fit(fp("mounting", "PAD")))]
    assert {body.kind for body in found} <= {*EXISTING, *NEW}
    for body in found:
        assert body.name.startswith(("the ", "a ", "an "))
        for end in body.solid[:2]:
            assert all(low <= at <= high for low, at, high in zip(body.reach.low, end, body.reach.high, strict=True))


def test_what_stands_on_a_face_is_as_thick_for_a_tool_as_it_was_measured():
    """Not measured: a plate 1/4 in, anything else 4 in (common practice, unverified), and its name says so."""
    for kind, told, out in (("closer", 63.5, 63.5), ("closer", None, 101.6), ("label", None, 6.35), ("pull", 0.0, 0.0)):
        for face, ends in (("inside", (-out, 0.0)), ("key", (THICK, THICK + out))):
            things = [item(kind, **AT, face=face, projection_mm=told)]
            (found,) = kinds(lasting_bodies(given(items=things)), "proud")
            assert (found.face, found.item) == (face, kind)
            assert (found.solid.low[:2], found.solid.high[:2]) == ((270.0, 1180.0), (330.0, 1220.0))
            assert (found.solid.low[2], found.solid.high[2]) == pytest.approx(ends)
            assert ("unverified" in found.name) is (told is None)
    wide = Settings(limits={"tool-room.proud_mm": 40.0})
    (found,) = kinds(lasting_bodies(replace(given(items=[item("closer", **AT)]), settings=wide)), "proud")
    assert found.solid.low[2] == -40.0


def test_a_drill_stands_square_behind_its_bit():
    """A bit of 1/2 in is 6 in long, 1 in of it in the chuck (from memory): 152.4 - 25.4 - 9.5 stand out of the hole."""

    def at(kind, **facts):
        return new(kind, holes=(hole(**{"purpose": "bore", **facts}),), without=("fastener", "cylinder"))

    (usual,) = at("usual-tool", tool="twist-drill")
    assert numbers(usual.solid) == pytest.approx([69.85, 1030.0, -117.5, 69.85, 1030.0, -267.5, 56.0])
    body, bit = at("tool", tool="twist-drill")
    # On a bit of 12 in it stands 304.8 - 25.4 - 9.5 out, and the bit goes straight to its hole.
    assert numbers(body.solid) == pytest.approx([69.85, 1030.0, -269.9, 69.85, 1030.0, -419.9, 56.0])
    assert numbers(bit.solid) == pytest.approx([69.85, 1030.0, 0.0, 69.85, 1030.0, -269.9, 12.7])
    # A saw stands 2 in out by itself; from the key face all goes the other way; through the leaf 44.45 are in it.
    (saw,) = at("usual-tool", tool="hole-saw", face="key", depth_mm=None)
    assert numbers(saw.solid)[2:6:3] == pytest.approx([THICK, THICK + 150.0])
    # What leans, or has its plate as its template, is judged elsewhere.
    for other in ({"up_deg": -80.0}, {"edge_deg": 15.0}, {"by_template": True}, {"face": "lock-edge"}):
        assert at("tool", **other) == []


def test_a_hand_comes_to_the_lead_and_to_what_is_turned_from_the_edge():
    """A hand at the lead is 1 in across (from memory); a driver lies along x, its hand behind."""
    (pinch,) = [each for each in new("tool", without=("fastener", "cylinder")) if "plugs" in each.name]
    assert pinch.solid == Rod((69.85, 1030.0, 0.0), (69.85, 1030.0, -120.0), 25.4)
    blade, fist = new("usual-tool", holes=(), without=("fastener",))
    assert blade.solid == Rod((0.0, 1000.0, MIDDLE), (-101.6, 1000.0, MIDDLE), 11.0)
    assert numbers(fist.solid) == pytest.approx([-221.6, 941.5, MIDDLE - 53.5, -101.6, 1058.5, MIDDLE + 53.5])
    off = given(lk=lock(case_offset_mm=2.0))
    assert {each.solid.start[2] for each in new("tool", off, holes=(), without=("fastener",))[::2]} == {MIDDLE + 2.0}


def test_what_is_on_the_lock_edge_stands_before_it():
    guard = item("other", 0.0, 1050.0, 20.0, 100.0, face="edge", projection_mm=3.0)
    (found,) = kinds(lasting_bodies(given(items=[guard])), "on-edge")
    assert found.solid == Box((-3.0, 1000.0, 0.0), (0.0, 1100.0, THICK))
    for other in ({"kind": "hinge"}, {"face": "key"}, {"y_mm": None}, {"height_mm": None}, {"disposition": "remove"}):
        assert kinds(lasting_bodies(given(items=[replace(guard, **other)])), "on-edge") == []


def test_a_gate_lock_has_its_case_outside_and_nuts_inside():
    """90 x 150, bolted 1/2 in from both edges at each corner, a socket of 3/4 in on the nut (from memory)."""
    made = fit(lock_number="GATE", role="lock")
    lock_case, *nuts = kinds(new_bodies(given(lk=lock("gate")), made), "bolted-on")
    assert numbers(lock_case.solid) == pytest.approx([24.85, 925.0, THICK, 114.85, 1075.0, THICK + 50.0])
    spots = [(37.55, 937.7), (37.55, 1062.3), (102.15, 937.7), (102.15, 1062.3)]
    assert [each.solid.start[:2] for each in nuts] == [pytest.approx(spot) for spot in spots]
    assert {(each.face, each.solid.diameter_mm) for each in nuts} == {("inside", 19.05)}
    welded = given(lk=lock("gate"), cat=catalogue(GATE={"mounting": "weld-on"}))
    assert len(kinds(new_bodies(welded, made), "bolted-on")) == 1


def test_a_hand_turns_each_screw_behind_its_blade():
    """107 x 117 of room for the hand (from memory), behind a blade of 4 in or 12 in, 11 thick (common practice)."""
    hands = new("usual-tool", holes=(), without=("cylinder",))
    spots = [(36.0, 1016.0), (104.0, 1016.0), (36.0, 1164.0), (104.0, 1164.0)]
    assert [hand.solid.low for hand in hands] == [(x - 53.5, y - 58.5, -101.6 - 120.0) for x, y in spots]
    assert [hand.solid.high for hand in hands] == [(x + 53.5, y + 58.5, -101.6) for x, y in spots]
    both = new("tool", holes=(), without=("cylinder",))
    assert [each.solid for each in both[1::2]] == [Rod((x, y, 0.0), (x, y, -304.8), 11.0) for x, y in spots]
    assert {each.solid.high[2] for each in both[::2]} == {-304.8}
