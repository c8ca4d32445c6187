"""What stands on a face after the work: existing items, the trim of every form of lock, other points, the stop.

The leaf is 914.4 wide, from 10 to 2143.6 above the floor; its lock stands 69.85 from the edge and 1000 up. A case is
150 high, 44.45 of it above the cylinder, and 105 deep.
"""

from dataclasses import replace

import pytest

from hwsched.calc.opening.placement import Rect
from hwsched.rules.solid.edge import edge_items, edge_needs, lock_pocket_span
from hwsched.rules.solid.footprints import _holds, footprints, rim_case_carried, stop_bands, stop_carried
from hwsched.values import Fit
from tests.rules.scenario import catalogue, fit, given, item, leaf, lock, opening, place
from tests.rules.test_lock_points import deadbolt, first, then

NOTHING_YET = Fit("to-measure")
NUMBERS = tuple(f"existing_item.{name}" for name in ("x_mm", "y_mm", "width_mm", "height_mm"))
DEVICE = {"kind": "exit-device", "device_form": "rim", "bolt_inset_mm": 0.0}
TAKEN = {"x_mm": 80.0, "y_mm": 980.0, "width_mm": 60.0, "height_mm": 200.0}
"""A footprint from 50 to 110 and from 880 to 1080."""


def trims(there, made, face="inside"):
    """Kind, corners and needs of what stands round the lock."""
    return [
        (each.kind, each.rect and tuple(each.rect), each.needs)
        for each in footprints(there, made, face)
        if each.kind not in ("closer", "trim")
    ]


def lock_fit(number, role="lock"):
    return fit(lock_number=number, role=role)


@pytest.mark.parametrize(
    ("form", "facts", "made", "inside", "key"),
    [
        # A rose of 80 on both faces, 40 to each side; a nut of twice a thread of 19.05; a case of 90 x 150.
        ("bored", {}, lock_fit("BORED"), (29.85, 960.0, 109.85, 1040.0), (29.85, 960.0, 109.85, 1040.0)),
        ("cabinet", {}, lock_fit("CAB"), (50.8, 980.95, 88.9, 1019.05), (50.8, 980.95, 88.9, 1019.05)),
        ("gate", {}, lock_fit("GATE"), (24.85, 925.0, 114.85, 1075.0), (24.85, 925.0, 114.85, 1075.0)),
        # A rim lock's case stands on the inside, from the lock edge in; what was measured goes before that.
        ("rim", {}, lock_fit("RIM", "cylinder"), (0.0, 894.45, 105.0, 1044.45), None),
        ("rim", TAKEN, lock_fit("RIM", "cylinder"), (50.0, 880.0, 110.0, 1080.0), (50.0, 880.0, 110.0, 1080.0)),
        ("reader", {}, lock_fit("READ", "reader"), None, None),
        # No trim on either face; its footprint where it was measured, on the face that it is on.
        ("mortise", {}, fit(), None, None),
        ("mortise", TAKEN, fit(), (50.0, 880.0, 110.0, 1080.0), (50.0, 880.0, 110.0, 1080.0)),
        ("mortise", {**TAKEN, "face": "key"}, fit(), None, (50.0, 880.0, 110.0, 1080.0)),
        ("mortise", {**TAKEN, "face": "inside"}, fit(), (50.0, 880.0, 110.0, 1080.0), None),
    ],
)
def test_the_trim_of_each_form_of_lock(form, facts, made, inside, key):
    there = given(lk=lock(form, **facts))
    for face, expected in (("inside", inside), ("key", key)):
        found = trims(there, made, face)
        assert [(kind, needs) for kind, _, needs in found] == ([] if expected is None else [("lock", ())])
        assert [rect for _, rect, _ in found] == ([] if expected is None else [pytest.approx(expected)])


@pytest.mark.parametrize(
    ("form", "facts", "made", "cat", "needs"),
    [
        ("bored", {"backset_mm": None}, lock_fit("BORED"), {}, ("existing_item.backset_mm",)),
        ("bored", {"cylinder_height_mm": None}, lock_fit("BORED"), {}, ("existing_item.cylinder_height_mm",)),
        ("bored", {}, lock_fit("BORED"), {"BORED": {"trim_diameter_mm": None}}, ("part BORED.trim_diameter_mm",)),
        ("bored", {}, NOTHING_YET, {}, ()),
        ("gate", {"backset_mm": None}, lock_fit("GATE"), {}, ("existing_item.backset_mm",)),
        ("gate", {"cylinder_height_mm": None}, lock_fit("GATE"), {}, ("existing_item.cylinder_height_mm",)),
        ("gate", {}, lock_fit("GATE"), {"GATE": {"case_width_mm": None}}, ("part GATE.case_width_mm",)),
        ("gate", {}, lock_fit("GATE"), {"GATE": {"case_height_mm": None}}, ("part GATE.case_width_mm",)),
        ("gate", {}, NOTHING_YET, {}, ()),
        *(
            ("rim", {name: None}, lock_fit("RIM", "cylinder"), {}, (f"existing_item.{name}",))
            for name in ("cylinder_height_mm", "case_above_mm", "case_height_mm", "case_depth_mm")
        ),
        ("mortise", {"trim_inside_mm": None}, fit(), {}, ("existing_item.trim_inside_mm",)),
        ("mortise", {"trim_inside_mm": 3.0}, fit(), {}, NUMBERS),
        ("mortise", {"trim_inside_mm": 3.0, **TAKEN, "width_mm": None}, fit(), {}, ("existing_item.width_mm",)),
    ],
)
def test_what_of_a_lock_s_trim_nobody_told_stands_somewhere(form, facts, made, cat, needs):
    assert trims(given(lk=lock(form, **facts), cat=catalogue(**cat)), made) == [("lock", None, needs)]


@pytest.mark.parametrize(
    ("turn", "items", "found"),
    [
        (None, (), [("thumb-turn", None, ("existing_item.thumb_turn",))]),
        (True, (), [("thumb-turn", None, NUMBERS)]),
        (False, (), []),
        # What was surveyed as trim shows it, and is asked for no second time.
        (None, (item("trim", 70.0, 1000.0),), []),
        (True, (item("trim", 70.0, 1000.0),), []),
    ],
)
def test_a_thumb_turn_that_the_lock_is_said_to_have(turn, items, found):
    assert trims(given(lk=lock(thumb_turn=turn), items=items), fit()) == found
    # It stands on the inside alone, and a rim lock's own case has none.
    assert trims(given(lk=lock(thumb_turn=turn), items=items), fit(), "key") == []


def test_an_exit_device_that_is_the_lock_stands_on_its_own_face():
    there = given(lk=lock("rim", **DEVICE, **TAKEN, face="inside"))
    assert trims(there, lock_fit("RIM", "cylinder")) == [("exit-device", (50.0, 880.0, 110.0, 1080.0), ())]
    assert trims(there, lock_fit("RIM", "cylinder"), "key") == []
    untold = given(lk=lock("rim", **DEVICE, face="both"))
    for face in ("inside", "key"):
        assert trims(untold, lock_fit("RIM", "cylinder"), face) == [("exit-device", None, NUMBERS)]


def test_beside_an_exit_device_only_a_measured_rim_case_is_asked_for():
    device = item("exit-device", 430.0, 1000.0, 800.0, 80.0)
    made = lock_fit("RIM", "cylinder")
    told = trims(given(lk=lock("rim"), items=[device]), made)
    assert [kind for kind, *_ in told] == ["exit-device", "lock"]
    assert told[1][1] == pytest.approx((0.0, 894.45, 105.0, 1044.45))
    assert [kind for kind, *_ in trims(given(lk=lock("rim", case_depth_mm=None), items=[device]), made)] == [
        "exit-device"
    ]


def test_what_stands_at_another_point_of_the_leaf_is_named_as_another_s():
    """A bored lock at 1300 of which nothing is chosen yet takes what the widest of its form takes, 80."""
    second = replace(lock("bored", cylinder_height_mm=1300.0, disposition="replace"), id="d")
    there = first(given(lk=lock(disposition="replace")), second)
    (other,) = [each for each in footprints(there, fit(), "inside") if each.other]
    assert tuple(other.rect) == pytest.approx((29.85, 1260.0, 109.85, 1340.0))
    # The unit of the earlier point is as deep as the catalogue says, 32.
    later = then(fit(placement=place(y=1300.0)), second=deadbolt(1200.0))
    (unit,) = [each for each in footprints(later, fit(), "inside") if each.kind == "unit"]
    assert (tuple(unit.rect), unit.proud_mm) == ((30.0, 1300.0, 110.0, 1460.0), 32.0)
    assert [each for each in footprints(later, fit(), "key") if each.kind == "unit"] == []


def test_facts_by_which_a_rim_case_and_a_stop_stand():
    carried = rim_case_carried(lock("rim"))
    assert carried.across == (("existing_item.case_depth_mm", 105.0, 1.0),)
    assert [(fact.rpartition(".")[2], mm, share) for fact, mm, share in carried.up] == [
        ("cylinder_height_mm", 1000.0, 1.0), ("case_above_mm", 44.45, 1.0), ("case_height_mm", 150.0, 1.0),
    ]  # fmt: skip
    there = given(opening(hand="LHR"))
    bands, needs = stop_bands(there, leaf(), "inside")
    # At the hinge edge, the top and the lock edge, 15.875 each.
    assert [tuple(band) for band in bands] == [
        pytest.approx((914.4 - 15.875, 0.0, 914.4, 2143.6)),
        pytest.approx((0.0, 2143.6 - 15.875, 914.4, 2143.6)),
        pytest.approx((0.0, 0.0, 15.875, 2143.6)),
    ]
    assert needs == ()
    across = [[fact for fact, *_ in stop_carried(there, leaf(), band).across] for band in bands]
    # The upright at the lock edge is there however wide the leaf is.
    assert ["leaf.width_mm" in facts for facts in across] == [True, False, False]
    assert {fact for fact, *_ in stop_carried(there, leaf(), bands[1]).up} == {
        "opening.frame_stop_mm", "leaf.height_mm", "leaf.undercut_mm",
    }  # fmt: skip


@pytest.mark.parametrize(
    ("facts", "lf", "face", "count", "needs"),
    [
        ({"hand": "LHR"}, {}, "key", 0, ()),
        ({"hand": "LH"}, {}, "key", 3, ()),
        # The leaves of a pair meet each other at the lock edge.
        ({"hand": "LHR", "form": "pair"}, {}, "inside", 2, ()),
        ({"hand": "LHR", "form": "cabinet"}, {}, "inside", 0, ()),
        ({"hand": "LHR", "frame_stop_mm": 0.0}, {}, "inside", 0, ()),
        ({"hand": "LHR", "frame_stop_mm": None, "frame_material": "none"}, {}, "inside", 0, ()),
        ({"hand": "LHR", "frame_material": "none"}, {"material": "glass"}, "inside", 0, ()),
        ({"hand": "LHR"}, {"material": "glass"}, "inside", 3, ()),
        ({"hand": None}, {}, "inside", 0, ("opening.hand",)),
        ({"hand": "LHR", "frame_stop_mm": None}, {}, "inside", 0, ("opening.frame_stop_mm",)),
        ({"hand": "LHR"}, {"width_mm": None}, "inside", 0, ("leaf.width_mm",)),
        ({"hand": "LHR"}, {"height_mm": None}, "inside", 0, ("leaf.height_mm",)),
        ({"hand": "LH", "frame_stop_mm": None}, {}, "inside", 0, ()),
    ],
)
def test_where_a_stop_hides_a_face(facts, lf, face, count, needs):
    the_leaf = leaf(**lf)
    bands, lacking = stop_bands(given(opening(**facts), the_leaf), the_leaf, face)
    assert (len(bands), lacking) == (count, needs)


# --- the lock edge as a line ----------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("items", "spans", "needs"),
    [
        ((item("flush-bolt", y=500.0, h=700.0, face="edge"),), [(150.0, 850.0)], ()),
        # A deadbolt takes up the edge whatever face the survey names, a pull does not; a hinge is in the other edge.
        ((item("deadbolt", y=1200.0, h=60.0),), [(1170.0, 1230.0)], ()),
        ((item("pull", y=1200.0), item("hinge", y=300.0, face="edge")), [], ()),
        # One that nobody measured is asked for, and hides none behind it; one that goes takes up nothing.
        (
            (item("flush-bolt", y=None, face="edge"), item("deadbolt", y=1200.0, h=60.0)),
            [(1170.0, 1230.0)],
            ("existing_item.y_mm",),
        ),
        ((item("flush-bolt", h=None, face="edge"),), [], ("existing_item.height_mm",)),
        ((item("flush-bolt", y=None, face="edge", disposition="remove"), item("deadbolt", y=1200.0, h=60.0)),
         [(1170.0, 1230.0)], ()),
        ((item("flush-bolt", face="edge", leaf="inactive"),), [], ()),
    ],
)  # fmt: skip
def test_what_stays_in_the_lock_edge(items, spans, needs):
    found, lacking = edge_items(given(items=items))
    assert ([(each.y0, each.y1) for each in found], lacking) == (spans, needs)


def test_at_other_points_a_pocket_keeps_a_bridge_and_a_unit_its_place():
    there = first(second=deadbolt(1200.0))
    ((pocket,), needs) = edge_items(there, 19.05)
    assert (pocket.y0, pocket.y1, pocket.clearance_mm, needs) == (1170.0, 1230.0, 19.05, ())
    untold = edge_items(first(second=deadbolt(case_above_mm=None)))
    assert untold == ((), ("existing_item.case_above_mm",))
    edge = fit(unit="EDGE", placement=place(13.5, 1300.0, face="edge", width_mm=17.4625, height_mm=349.25))
    found, _ = edge_items(then(edge), 19.05)
    assert (1300.0, 1649.25, 19.05) in [(each.y0, each.y1, each.clearance_mm) for each in found]
    # Of a point of which nothing is worked out nothing stands there.
    assert len(edge_items(then(None), 19.05)[0]) == 1


@pytest.mark.parametrize(
    ("lk", "span", "needs"),
    [
        (lock(), (894.45, 1044.45), ()),
        (lock("bored"), (1000.0 - 26.9875, 1000.0 + 26.9875), ()),
        (lock("bored", cross_bore_mm=None), None, ("existing_item.cross_bore_mm",)),
        (lock(cylinder_height_mm=None), None, ("existing_item.cylinder_height_mm",)),
        (lock(case_above_mm=None, case_height_mm=None), None,
         ("existing_item.case_height_mm", "existing_item.case_above_mm")),
    ],
)  # fmt: skip
def test_the_lock_s_own_pocket_in_the_edge(lk, span, needs):
    there = given(lk=lk)
    assert lock_pocket_span(there) == (span and pytest.approx(span))
    assert edge_needs(there) == needs


def test_an_edge_of_which_nobody_knows_where_it_ends():
    assert edge_needs(given(lf=leaf(height_mm=None))) == ("leaf.height_mm",)
    assert edge_needs(given(opening(form="cabinet"), leaf(undercut_mm=None))) == ("leaf.undercut_mm",)
    assert edge_needs(given(lk="none")) == ("existing_item.lock_form",)


def test_a_plate_just_as_large_leaves_the_room_by_itself():
    outer = Rect(10.0, 20.0, 60.0, 80.0)
    assert _holds(outer, outer)
    for short in (Rect(10.1, 20.0, 60.0, 80.0), Rect(10.0, 20.1, 60.0, 80.0), Rect(10.0, 20.0, 59.9, 80.0)):
        assert not _holds(short, outer)
    assert not _holds(Rect(10.0, 20.0, 60.0, 79.9), outer)
