"""Rules of egress and accessibility; values of shared/facts 4.2 and 4.3 as read there."""

import pytest

from hwsched.values import Settings
from tests.rules.rows import boundary, passes, run, speaks, unknown
from tests.rules.scenario import INCH, catalogue, fit, fp, given, item, leaf, lock, opening, place

EGRESS = opening(egress="egress")
PANIC = opening(egress="panic")
ROUTE = opening(accessible=True)
STAIR = opening(stair=True)
AWAY = opening(egress="egress", egress_toward="inside")
GATE = fit(lock_number="GATE", role="lock")

DEAD = lock("euro-profile", function="deadlock", thumb_turn=False)
EURO = fit(lock_number="EURO")


def bolt(**facts):
    return item("deadbolt", 70.0, 1200.0, 50.0, 60.0, **facts)


EVEN = Settings(length_style="mm", limits={"egress-width.lost_mm": 51.0, "egress-width.new_mm": 813.0})
"""Limits that are met to the last digit: what is just wide enough passes."""

ROWS = [
    # One motion to release all latches and locks (IBC 1010.2.1).
    passes("one-motion", given(EGRESS), fit()),
    speaks("one-motion", given(EGRESS, items=[bolt()]), fit(), holds=2, severity="warning"),
    boundary("one-motion", given(EGRESS, items=[bolt(disposition="remove")]), fit()),
    boundary("one-motion", given(EGRESS, lk=lock("rim"), items=[item("exit-device")]), fit()),
    unknown("one-motion", given(opening(egress=None), items=[bolt()]), fit(), "opening.egress"),
    passes("free-inside", given(EGRESS), fit()),
    speaks("free-inside", given(EGRESS, lk=lock(function="deadlock")), fit(), severity="error"),
    boundary("free-inside", given(EGRESS, lk=lock(function="deadlock", thumb_turn=True)), fit()),
    boundary("free-inside", given(lk=lock(function="deadlock")), fit()),
    # The new cylinder's own turn opens a deadlock from the inside; it opens nothing from the key side.
    passes("free-inside", given(EGRESS, lk=DEAD), EURO),
    speaks("free-inside", given(EGRESS, lk=DEAD, cat=catalogue(EURO={"thumb_turn": False})), EURO, severity="error"),
    speaks("free-inside", given(AWAY, lk=DEAD), EURO, severity="error"),
    unknown(
        "free-inside", given(EGRESS, lk=lock(function="deadlock", thumb_turn=None)), fit(), "existing_item.thumb_turn"
    ),
    # A gate's new lock brings what opens it from the inside, or nothing does.
    passes("gate-release", given(EGRESS, lk=lock("gate"), cat=catalogue(GATE={"free_inside": True})), GATE),
    speaks(
        "gate-release",
        given(EGRESS, lk=lock("gate"), cat=catalogue(GATE={"free_inside": False})),
        GATE,
        about="GATE",
        severity="error",
    ),
    unknown("gate-release", given(EGRESS, lk=lock("gate")), GATE, "part GATE.free_inside"),
    boundary("gate-release", given(AWAY, lk=lock("gate"), cat=catalogue(GATE={"free_inside": False})), GATE),
    unknown(
        "gate-release",
        given(
            opening(egress="egress", egress_toward=None), lk=lock("gate"), cat=catalogue(GATE={"free_inside": False})
        ),
        GATE,
        "opening.egress_toward",
    ),
    boundary("gate-release", given(lk=lock("gate"), cat=catalogue(GATE={"free_inside": False})), GATE),
    passes("panic-hardware", given(PANIC, items=[item("exit-device")]), fit()),
    speaks("panic-hardware", given(PANIC), fit(), severity="error"),
    boundary("panic-hardware", given(PANIC, items=[item("exit-device", disposition="remove")]), fit(), says=1),
    boundary("panic-hardware", given(PANIC, lk=lock("rim", function="exit")), fit()),
    # 15 s after a push of 15 lbf held for at most 3 s (NFPA 101, 7.2.1.6.1).
    passes("delayed-egress", given(EGRESS), fit()),
    speaks(
        "delayed-egress",
        given(EGRESS, items=[item("delayed-egress")]),
        fit(),
        severity="warning",
        delay_s=15.0,
        force_n=66.7,
        push_s=3.0,
    ),
    boundary("delayed-egress", given(EGRESS, items=[item("delayed-egress", disposition="remove")]), fit()),
    boundary("delayed-egress", given(opening(egress="none"), items=[item("delayed-egress")]), fit()),
    unknown("delayed-egress", given(opening(egress=None), items=[item("delayed-egress")]), fit(), "opening.egress"),
    passes("electromagnetic-lock", given(EGRESS), fit()),
    speaks(
        "electromagnetic-lock",
        given(EGRESS, items=[item("electromagnetic-lock", face="frame")]),
        fit(),
        # Its conditions, and that the survey shows no release on the side from which people leave.
        says=2,
        severity="warning",
    ),
    speaks("electromagnetic-lock", given(EGRESS), fit(fp("strike", "MAG")), says=2),
    boundary("electromagnetic-lock", given(items=[item("electromagnetic-lock", face="frame")]), fit()),
    passes("stair-re-entry", given(), fit()),
    speaks("stair-re-entry", given(STAIR), fit(), severity="warning"),
    speaks(
        "stair-re-entry", given(STAIR, cat=catalogue(STRIKE={"fail": "fail-safe"})), fit(fp("strike", "STRIKE")), says=2
    ),
    boundary("stair-re-entry", given(opening(stair=True, form="cabinet")), fit()),
    unknown("stair-re-entry", given(opening(stair=None)), fit(), "opening.stair"),
    # 32 in clear for a new opening, 28 in for an existing leaf; about 2 in lost to leaf and hinge.
    passes("egress-width", given(EGRESS), fit()),
    speaks("egress-width", given(EGRESS, leaf(width_mm=33 * INCH)), fit(), clear_mm=31 * INCH, severity="note"),
    speaks("egress-width", given(EGRESS, leaf(width_mm=29 * INCH)), fit(), clear_mm=27 * INCH, severity="warning"),
    boundary("egress-width", given(EGRESS, leaf(width_mm=34 * INCH)), fit()),
    speaks("egress-width", given(EGRESS, leaf(width_mm=33.9 * INCH)), fit(), clear_mm=31.9 * INCH, severity="note"),
    boundary("egress-width", given(EGRESS, leaf(width_mm=30 * INCH)), fit(), says=1, severity="note"),
    boundary("egress-width", given(EGRESS, leaf(width_mm=29.9 * INCH)), fit(), says=1, severity="warning"),
    boundary("egress-width", given(EGRESS, leaf(width_mm=864.0), settings=EVEN), fit()),
    unknown("egress-width", given(EGRESS, leaf(width_mm=None)), fit(), "leaf.width_mm"),
    # 34 to 48 in above the floor (ADA 404.2.7).
    passes("reach-height", given(ROUTE), fit()),
    speaks(
        "reach-height", given(ROUTE, lk=lock(cylinder_height_mm=49 * INCH)), fit(), short_mm=INCH, severity="warning"
    ),
    speaks("reach-height", given(ROUTE, lk=lock(cylinder_height_mm=33 * INCH)), fit(), short_mm=INCH),
    boundary("reach-height", given(ROUTE, lk=lock(cylinder_height_mm=48 * INCH)), fit()),
    boundary("reach-height", given(ROUTE, lk=lock(cylinder_height_mm=34 * INCH)), fit()),
    unknown(
        "reach-height", given(opening(accessible=None), lk=lock(cylinder_height_mm=1300.0)), fit(), "opening.accessible"
    ),
    passes("clear-width", given(ROUTE), fit()),
    speaks("clear-width", given(ROUTE, leaf(width_mm=33 * INCH)), fit(), short_mm=INCH),
    boundary("clear-width", given(ROUTE, leaf(width_mm=34 * INCH)), fit()),
    unknown("clear-width", given(ROUTE, leaf(width_mm=None)), fit(), "leaf.width_mm"),
    # A controller 1.5 in proud at 42 in is inside the band of 4 in; the same at 30 in is not (worked example, 4.3).
    passes("projection", given(ROUTE, cat=catalogue(UNIT={"depth_mm": 1.5 * INCH})), fit(placement=place(y=42 * INCH))),
    speaks(
        "projection",
        given(ROUTE, cat=catalogue(UNIT={"depth_mm": 1.5 * INCH})),
        fit(placement=place(y=30 * INCH)),
        depth_mm=38.1,
        severity="warning",
    ),
    speaks(
        "projection",
        given(ROUTE, cat=catalogue(UNIT={"depth_mm": 4.5 * INCH})),
        fit(placement=place(y=42 * INCH)),
        allowed_mm=101.6,
    ),
    boundary("projection", given(ROUTE, cat=catalogue(UNIT={"depth_mm": 4 * INCH})), fit(placement=place(y=34 * INCH))),
    speaks("projection", given(ROUTE), fit(placement=place(y=863.5)), low_mm=863.6),
    speaks(
        "projection",
        given(ROUTE, cat=catalogue(UNIT={"depth_mm": 101.7})),
        fit(placement=place(y=34 * INCH)),
        depth_mm=101.7,
    ),
    unknown("projection", given(ROUTE, cat=catalogue(UNIT={"depth_mm": None})), fit(), "part UNIT.depth_mm"),
]


# Of what the rules leave out, and of what nobody told.
ROWS += [
    passes("clear-width", given(ROUTE, leaves=()), fit()),
    passes("clear-width", given(opening(accessible=False), leaf(width_mm=400.0)), fit()),
    passes("clear-width", given(opening(form="cabinet", accessible=True), leaf(width_mm=400.0)), fit()),
    # A lift's wall may be surveyed as a leaf, for its thickness; nobody passes through it.
    passes("clear-width", given(opening(form="lift", accessible=True), leaf(width_mm=400.0), lock("reader")), fit()),
    passes("projection", given(ROUTE), fit(placement=place(y=30 * INCH, face="edge"))),
    passes("projection", given(), fit(placement=place(y=30 * INCH))),
    unknown("reach-height", given(ROUTE, lk=lock(cylinder_height_mm=None)), fit(), "existing_item.cylinder_height_mm"),
    boundary("reach-height", given(opening(accessible=None), lk=lock(cylinder_height_mm=None)), fit()),
    *(
        boundary("egress-width", given(opening(form=form, egress=egress), leaf(width_mm=29 * INCH)), fit())
        for form, egress in (("cabinet", "egress"), ("single", "none"), ("single", None))
    ),
    boundary("egress-width", given(EGRESS, leaves=()), fit()),
]


@pytest.mark.parametrize("row", ROWS, ids=str)
def test_rule(row):
    run(row)
