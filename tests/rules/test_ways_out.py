"""Rules of egress by side, of pairs and of rated openings; values of shared/facts as read there."""

from dataclasses import fields, replace

import pytest

from hwsched.rules import DEFERS, judge, rule_named
from hwsched.rules.judging import check
from hwsched.survey import INHERITED, ITEM, LEAF, OPENING
from hwsched.survey.asked import ASKED, asked_of
from hwsched.values import Fit, Item, Leaf, Opening, Settings
from tests.rules.rows import boundary, passes, run, speaks, unknown
from tests.rules.scenario import INCH, catalogue, fit, fp, given, hole, item, leaf, lock, opening, part, place

EGRESS = opening(egress="egress")
INWARDS = opening(egress="egress", egress_toward="inside")
BOTH_WAYS = opening(egress="egress", egress_toward="both")
UNSURE = opening(egress="egress", egress_toward=None)
PANIC = opening(egress="panic")
RATED = opening(rating="90")
STAIR = opening(stair=True, egress="egress")
LEAVES = (leaf(position="active"), replace(leaf(position="inactive"), id="l2"))


def stair(**facts):
    return given(opening(**{"stair": True, "egress": "egress", **facts}))


def pair(items=(), lk=None, **facts):
    active = lk or lock(leaf="active")
    return given(opening(**{"form": "pair", **facts}), lk=active, items=items, leaves=LEAVES)


def bolt(form, **facts):
    return item("flush-bolt", **{"leaf": "inactive", "face": "edge", "bolt_form": form, **facts})


def astragal(on, face):
    return item("astragal", leaf=on, face=face)


def magnet(**facts):
    return item("electromagnetic-lock", face="frame", **facts)


def sensor(face):
    return item("release-sensor", face=face)


def button(face):
    return item("release-button", face=face)


def delayed(*more, **facts):
    return given(opening(**{"egress": "egress", **facts}), items=[item("delayed-egress"), *more])


def lite(stops):
    return item("lite", stops=stops)


HINGE = item("hinge", face="edge", w=4.5 * INCH, h=4.5 * INCH)
TRANSFER = part(
    "THINGE", "power-transfer", form="transfer-hinge", conductors=4, gauge="24 AWG", fire_listed=True,
    hinge_height_mm=4.5 * INCH, hinge_width_mm=4.5 * INCH,
)  # fmt: skip
BIG = part(
    "THINGE", "power-transfer", form="transfer-hinge", conductors=4, gauge="24 AWG", fire_listed=True,
    hinge_height_mm=5 * INCH, hinge_width_mm=4.5 * INCH,
)  # fmt: skip


def hinged(**facts):
    """The catalogue with a transfer hinge of other sizes."""
    return catalogue(add=[TRANSFER], THINGE=facts)


PLATE = {"plate_height_mm": 4.875 * INCH, "plate_width_mm": 1.25 * INCH, "guard_latch": False}
"""ANSI/BHMA A115 lip strike: 4 7/8 by 1 1/4 in, common practice."""
IN_FRAME = item("strike", face="frame", cutout_height_mm=3.375 * INCH)
FACE = opening(frame_face_mm=2 * INCH)
STRIKE = fit(fp("strike", "STRIKE"))
MAG = fit(fp("strike", "MAG"))
GATE = fit(lock_number="GATE", role="lock")
THINGE = fit(fp("power-transfer", "THINGE", kind="power-transfer"), power="supply")

ROWS = [
    # A door on an egress path of which nobody knows the side is asked; what contradicts itself is an error.
    passes("egress-direction", given(EGRESS), fit()),
    passes("egress-direction", given(BOTH_WAYS), fit()),
    unknown("egress-direction", given(UNSURE), fit(), "opening.egress_toward"),
    unknown("egress-direction", given(opening(egress="panic", egress_toward=None)), fit(), "opening.egress_toward"),
    speaks("egress-direction", given(opening(egress="egress", egress_toward="none")), fit(), severity="error"),
    speaks("egress-direction", given(opening(egress_toward="key")), fit(), severity="error"),
    boundary("egress-direction", given(opening(egress_toward="none")), fit()),
    boundary("egress-direction", given(opening(form="cabinet", egress="egress", egress_toward=None)), fit()),
    # A room whose doors all are said to be no way out.
    passes("room-way-out", given(), fit()),
    passes("room-way-out", replace(given(opening(no_exit_confirmed=True)), closed_rooms=("room_to",)), fit()),
    unknown("room-way-out", replace(given(), closed_rooms=("room_to",)), fit(), "opening.no_exit_confirmed"),
    speaks(
        "room-way-out",
        replace(given(opening(no_exit_confirmed=False)), closed_rooms=("room_to", "room_from")),
        fit(),
        severity="error",
    ),
    boundary("room-way-out", replace(given(opening(form="cabinet")), closed_rooms=("room_to",)), fit()),
    boundary("room-way-out", replace(given(EGRESS), closed_rooms=()), fit()),
    # The side from which people leave opens without a key: by BHMA functions the inside does, the key side only of a
    # passage lock.
    passes("free-inside", given(INWARDS, lk=lock(function="passage")), fit()),
    speaks("free-inside", given(INWARDS, lk=lock(function="storeroom")), fit(), severity="error"),
    speaks("free-inside", given(BOTH_WAYS, lk=lock(function="office")), fit(), severity="error"),
    speaks("free-inside", given(BOTH_WAYS, lk=lock(function="deadlock")), fit(), says=2),
    speaks("free-inside", given(replace(INWARDS, stair=True, stair_release="both")), fit(), severity="error"),
    speaks("free-inside", given(EGRESS, items=[item("deadbolt", thumb_turn=False)]), fit(), severity="error"),
    boundary("free-inside", given(EGRESS, items=[item("deadbolt", thumb_turn=False, disposition="remove")]), fit()),
    boundary("free-inside", given(EGRESS, items=[item("deadbolt", thumb_turn=True)]), fit()),
    unknown("free-inside", given(UNSURE), fit(), "opening.egress_toward"),
    unknown("free-inside", given(INWARDS, lk=lock(function=None)), fit(), "existing_item.function"),
    boundary(
        "free-inside", given(replace(INWARDS, form="turnstile"), lk=lock(lock_form="reader", function=None)), fit()
    ),
    # Without power.
    passes("fail-by-side", given(EGRESS), STRIKE),
    passes("fail-by-side", given(INWARDS, lk=lock(function="passage")), STRIKE),
    speaks("fail-by-side", given(INWARDS), STRIKE, severity="error"),
    speaks("fail-by-side", given(INWARDS, cat=catalogue(STRIKE={"fail": "fail-safe"})), STRIKE, severity="warning"),
    speaks(
        "fail-by-side", given(INWARDS, items=[item("electric-strike", fail="fail-secure")]), fit(), severity="error"
    ),
    speaks("fail-by-side", given(items=[magnet(fail="fail-secure")]), fit(), severity="error"),
    boundary("fail-by-side", given(items=[magnet(fail="fail-safe")]), fit()),
    boundary("fail-by-side", given(), STRIKE),
    unknown("fail-by-side", given(UNSURE), STRIKE, "opening.egress_toward"),
    unknown("fail-by-side", given(INWARDS, items=[item("electric-strike")]), fit(), "existing_item.fail"),
    # Panic hardware on the side from which people leave, and by group and load (IBC 1010.2.9: A and E from 50, H).
    passes("panic-hardware", given(EGRESS), fit()),
    speaks(
        "panic-hardware",
        given(replace(PANIC, egress_toward="inside"), items=[item("exit-device")]),
        fit(),
        severity="error",
    ),
    speaks("panic-hardware", given(replace(PANIC, egress_toward="both"), items=[item("exit-device")]), fit()),
    boundary(
        "panic-hardware", given(replace(PANIC, egress_toward="both"), items=[item("exit-device", face="both")]), fit()
    ),
    unknown("panic-hardware", given(PANIC, items=[item("exit-device", face=None)]), fit(), "existing_item.face"),
    unknown(
        "panic-hardware",
        given(replace(PANIC, egress_toward=None), items=[item("exit-device")]),
        fit(),
        "opening.egress_toward",
    ),
    unknown("panic-hardware", given(replace(EGRESS, occupancy_group=None)), fit(), "opening.occupancy_group"),
    unknown(
        "panic-hardware",
        given(replace(EGRESS, occupancy_group="A", occupant_load=None)),
        fit(),
        "opening.occupant_load",
    ),
    speaks("panic-hardware", given(replace(EGRESS, occupancy_group="H")), fit(), severity="error"),
    speaks(
        "panic-hardware",
        given(replace(EGRESS, occupancy_group="A", occupant_load=50)),
        fit(),
        severity="error",
        load_people=50,
        ibc_people=50,
    ),
    boundary("panic-hardware", given(replace(EGRESS, occupancy_group="A", occupant_load=49)), fit()),
    boundary("panic-hardware", given(replace(EGRESS, occupancy_group="E", occupant_load=99, code="nfpa-101")), fit()),
    speaks("panic-hardware", given(replace(EGRESS, occupancy_group="E", occupant_load=100, code="nfpa-101")), fit()),
    unknown(
        "panic-hardware",
        given(replace(EGRESS, occupancy_group="E", occupant_load=99, code=None)),
        fit(),
        "opening.code",
    ),
    boundary(
        "panic-hardware",
        given(replace(EGRESS, occupancy_group="A", occupant_load=500), items=[item("exit-device")]),
        fit(),
    ),
    # Delayed egress: IBC 1010.2.13 (2021) has it in B, F, I, M, R, S, U; classrooms of E below 50 since 2018.
    passes("delayed-egress", given(EGRESS), fit()),
    speaks("delayed-egress", delayed(occupancy_group="A"), fit(), says=2),
    speaks("delayed-egress", delayed(occupancy_group="E", occupant_load=50), fit(), says=2),
    speaks("delayed-egress", delayed(occupancy_group="E", occupant_load=49, code_edition=2015), fit(), says=2),
    boundary("delayed-egress", delayed(occupancy_group="E", occupant_load=49, code_edition=2018), fit(), says=1),
    speaks("delayed-egress", delayed(occupancy_group="E", occupant_load=49, code_edition=2017), fit(), says=2),
    boundary("delayed-egress", delayed(occupancy_group="A", code="nfpa-101"), fit(), says=1),
    speaks("delayed-egress", delayed(sprinkler=False, fire_alarm=False), fit(), says=2),
    boundary("delayed-egress", delayed(sprinkler=False, fire_alarm=True), fit(), says=1),
    boundary("delayed-egress", delayed(egress_toward="inside"), fit(), says=2),
    # Electromagnetic locks: sensor and button, or a switch in the hardware, on each side from which people leave.
    passes("electromagnetic-lock", given(EGRESS), fit()),
    speaks("electromagnetic-lock", given(EGRESS, items=[magnet()]), fit(), says=2),
    speaks("electromagnetic-lock", given(EGRESS, items=[magnet(), sensor("inside")]), fit(), says=2),
    speaks("electromagnetic-lock", given(EGRESS, items=[magnet(), sensor("inside"), button("inside")]), fit(), says=1),
    speaks("electromagnetic-lock", given(INWARDS, items=[magnet(), sensor("inside"), button("inside")]), fit(), says=2),
    boundary(
        "electromagnetic-lock", given(EGRESS, items=[magnet(), item("release-switch", face="both")]), fit(), says=1
    ),
    boundary(
        "electromagnetic-lock",
        given(replace(EGRESS, occupancy_group="S"), items=[magnet(), sensor("inside"), button("inside")]),
        fit(),
        says=2,
    ),
    boundary(
        "electromagnetic-lock",
        given(replace(PANIC, code_edition=2024), items=[magnet(), sensor("inside"), button("inside")]),
        fit(),
        says=2,
    ),
    boundary(
        "electromagnetic-lock",
        given(replace(PANIC, code_edition=2021), items=[magnet(), sensor("inside"), button("inside")]),
        fit(),
        says=1,
    ),
    # The side towards which people leave is the stair: it is there that somebody wants to come back.
    passes("stair-re-entry", given(), fit()),
    passes("stair-re-entry", given(STAIR, lk=lock(function="passage")), fit()),
    passes("stair-re-entry", given(replace(STAIR, egress_toward="inside")), fit()),
    speaks("stair-re-entry", given(STAIR), fit(), severity="note"),
    speaks("stair-re-entry", stair(stair_release="one-place"), fit(), severity="note"),
    speaks("stair-re-entry", stair(stair_release="fire-alarm"), fit(), severity="warning"),
    speaks("stair-re-entry", stair(stair_release="fire-alarm", code="nfpa-101"), fit(), severity="note"),
    speaks("stair-re-entry", stair(stair_release="one-place", code="nfpa-101"), fit(), severity="warning"),
    speaks("stair-re-entry", stair(stair_release="one-place", code="both"), fit(), severity="warning"),
    speaks("stair-re-entry", stair(stair_release="none", storeys_served=4, code="nfpa-101"), fit(), severity="note"),
    speaks("stair-re-entry", stair(stair_release="none", storeys_served=5, code="nfpa-101"), fit(), severity="error"),
    speaks("stair-re-entry", stair(stair_release="none", storeys_served=3), fit(), severity="error"),
    speaks("stair-re-entry", given(STAIR, lk=lock(fail="fail-secure")), fit(), says=2),
    boundary("stair-re-entry", given(STAIR, lk=lock(fail="fail-safe")), fit(), says=1),
    unknown("stair-re-entry", stair(stair_release=None), fit(), "opening.stair_release"),
    unknown("stair-re-entry", stair(stair_release="none", storeys_served=None), fit(), "opening.storeys_served"),
    unknown("stair-re-entry", stair(code=None), fit(), "opening.code"),
    unknown("stair-re-entry", stair(egress_toward=None), fit(), "opening.egress_toward"),
    unknown("stair-re-entry", given(STAIR, lk=lock(function=None)), fit(), "existing_item.function"),
    # Pairs. IBC 1010.2.5 (2021): manual bolts with fewer than 50 people in B, F, M and S, or with sprinklers.
    passes("pair-bolts", pair([bolt("automatic")], egress="egress"), fit()),
    passes("pair-bolts", pair([bolt("manual")]), fit()),
    speaks("pair-bolts", pair([bolt("manual")], egress="egress", occupant_load=49), fit(), severity="warning"),
    speaks(
        "pair-bolts",
        pair([bolt("manual")], egress="egress", occupant_load=50, sprinkler=False),
        fit(),
        severity="error",
        load_people=50,
        allowed_people=50,
    ),
    boundary(
        "pair-bolts", pair([bolt("manual")], egress="egress", occupant_load=50), fit(), says=1, severity="warning"
    ),
    speaks("pair-bolts", pair([bolt("manual")], egress="egress", occupancy_group="A"), fit(), severity="error"),
    speaks("pair-bolts", pair([bolt("manual")], rating="90"), fit(), severity="warning"),
    unknown("pair-bolts", pair([bolt(None)], rating="90"), fit(), "existing_item.bolt_form"),
    unknown("pair-bolts", pair([bolt("manual")], egress="egress", occupant_load=None), fit(), "opening.occupant_load"),
    unknown(
        "pair-bolts",
        pair([bolt("manual")], egress="egress", occupant_load=90, sprinkler=None),
        fit(),
        "opening.sprinkler",
    ),
    passes("pair-inactive-latches", pair([bolt("automatic")], rating="90"), fit()),
    speaks(
        "pair-inactive-latches",
        pair([lock(leaf="inactive", latch_form="deadbolt")], rating="90"),
        fit(),
        severity="error",
    ),
    boundary("pair-inactive-latches", pair([lock(leaf="inactive")], rating="90"), fit()),
    boundary("pair-inactive-latches", pair(), fit()),
    unknown("pair-inactive-latches", pair(rating="90"), fit(), "existing_item.bolt_form"),
    unknown(
        "pair-inactive-latches",
        pair([lock(leaf="inactive", latch_form=None)], rating="90"),
        fit(),
        "existing_item.latch_form",
    ),
    # LH swings away from the key side, so its stop is on the key side: a lip on the active leaf's inside lies over the
    # inactive leaf, which has to stand there first.
    passes("pair-closing-order", pair([astragal("active", "inside")], closes_first="inactive"), fit()),
    passes("pair-closing-order", pair([astragal("active", "key")], closes_first="active"), fit()),
    speaks("pair-closing-order", pair([astragal("active", "inside")], closes_first="active"), fit(), severity="error"),
    speaks(
        "pair-closing-order", pair([astragal("inactive", "inside")], closes_first="inactive"), fit(), severity="error"
    ),
    speaks("pair-closing-order", pair([astragal("active", "inside")], closes_first="any"), fit(), severity="error"),
    speaks("pair-closing-order", pair([bolt("automatic")], closes_first="active"), fit(), severity="error"),
    speaks("pair-closing-order", pair([astragal("active", "key"), bolt("automatic")]), fit(), severity="error"),
    speaks(
        "pair-closing-order",
        pair([astragal("active", "inside")], closes_first="inactive", rating="90"),
        fit(),
        severity="warning",
        about="coordinator",
    ),
    boundary(
        "pair-closing-order",
        pair([astragal("active", "inside"), item("coordinator", face="frame")], closes_first="inactive", rating="90"),
        fit(),
    ),
    boundary("pair-closing-order", pair([astragal("active", "edge")]), fit()),
    # One leaf alone closes in no order, whatever stands on it.
    boundary("pair-closing-order", given(items=[bolt("automatic"), astragal("active", "inside")]), fit()),
    unknown("pair-closing-order", pair([astragal("active", "inside")]), fit(), "opening.closes_first"),
    unknown("pair-closing-order", pair([astragal(None, "inside")]), fit(), "existing_item.leaf"),
    # A rated leaf latches; a dead bolt is no latch (NFPA 80 commentary).
    passes("rated-latch", given(RATED), fit()),
    speaks("rated-latch", given(RATED, lk=lock(latch_form="deadbolt")), fit(), severity="error"),
    speaks("rated-latch", given(RATED, lk=lock(latch_form="roller")), fit()),
    boundary("rated-latch", given(RATED, lk=lock(latch_form="deadbolt"), items=[item("exit-device")]), fit()),
    boundary("rated-latch", given(RATED, lk=lock("bored", latch_form=None)), fit(lock_number="BORED", role="lock")),
    boundary("rated-latch", given(lk=lock(latch_form="deadbolt")), fit()),
    unknown("rated-latch", given(RATED, lk=lock(latch_form=None)), fit(), "existing_item.latch_form"),
    passes("rated-closes", given(lf=leaf(self_closes=None)), fit()),
    speaks("rated-closes", given(RATED), fit(), severity="note"),
    speaks("rated-closes", given(RATED, leaf(self_closes=False)), fit(), severity="error"),
    boundary(
        "rated-closes", given(RATED, items=[item("closer", disposition="remove")]), fit(), says=1, severity="error"
    ),
    unknown("rated-closes", given(RATED, leaf(self_closes=None)), fit(), "leaf.self_closes"),
    passes("rated-seal", given(replace(RATED, smoke_seal="edge")), fit()),
    speaks(
        "rated-seal",
        given(replace(RATED, smoke_seal="edge")),
        fit(holes=(hole(0.0, "pocket", face="lock-edge"),)),
        severity="error",
    ),
    # A stop of 5/8 in and a seal of 3/8 in hide 1 in of the face on the key side (LH).
    speaks(
        "rated-seal",
        given(replace(RATED, smoke_seal="stop")),
        fit(placement=place(x=20.0, face="key")),
        x_mm=20.0,
        needed_mm=25.375,
    ),
    boundary("rated-seal", given(replace(RATED, smoke_seal="stop")), fit(placement=place(x=25.4, face="key"))),
    boundary(
        "rated-seal", given(replace(RATED, smoke_seal="none")), fit(holes=(hole(0.0, "pocket", face="lock-edge"),))
    ),
    unknown("rated-seal", given(RATED), fit(placement=place(x=20.0, face="key")), "opening.smoke_seal"),
    passes("rated-lite-stops", given(RATED, items=[lite("listed")]), fit()),
    speaks("rated-lite-stops", given(RATED, items=[lite("unlisted")]), fit(), severity="error"),
    boundary("rated-lite-stops", given(items=[lite("unlisted")]), fit()),
    unknown("rated-lite-stops", given(RATED, items=[lite(None)]), fit(), "existing_item.stops"),
    *(
        passes("rated-unused-holes", given(RATED, leaf(unused_holes=each)), fit())
        for each in ("none", "steel", "same-material", "listed")
    ),
    *(
        speaks("rated-unused-holes", given(RATED, leaf(unused_holes=each)), fit(), severity="error")
        for each in ("filler", "covered", "open")
    ),
    boundary("rated-unused-holes", given(lf=leaf(unused_holes="open")), fit()),
    unknown("rated-unused-holes", given(RATED, leaf(unused_holes=None)), fit(), "leaf.unused_holes"),
    # 4 1/2 by 4 1/2 in is the usual hinge of a 1 3/4 in leaf (common practice).
    passes("transfer-hinge", given(items=[HINGE], cat=catalogue(add=[TRANSFER])), THINGE),
    speaks("transfer-hinge", given(items=[HINGE], cat=catalogue(add=[BIG])), THINGE, hinge_mm=114.3, part_mm=127.0),
    # 1/16 in to either side of 4 1/2 in, 114.3, in height and in width (common practice).
    *(
        row
        for way in (1, -1)
        for size in ("hinge_height_mm", "hinge_width_mm")
        for row in (
            boundary("transfer-hinge", given(items=[HINGE], cat=hinged(**{size: 114.3 + way * 1.59})), THINGE),
            speaks("transfer-hinge", given(items=[HINGE], cat=hinged(**{size: 114.3 + way * 1.61})), THINGE),
        )
    ),
    boundary(
        "transfer-hinge",
        given(
            items=[item("hinge", face="edge", w=114.0, h=114.0)],
            cat=hinged(hinge_height_mm=115.5, hinge_width_mm=112.5),
            settings=Settings(length_style="mm", limits={"transfer-hinge.off_mm": 1.5}),
        ),
        THINGE,
    ),
    boundary("transfer-hinge", given(cat=catalogue()), fit(power="supply")),
    unknown(
        "transfer-hinge",
        given(cat=catalogue(add=[TRANSFER])),
        THINGE,
        "existing_item.height_mm",
        "existing_item.width_mm",
    ),
    # Strikes and magnets.
    passes("strike-fit", given(FACE, items=[IN_FRAME], cat=catalogue(STRIKE=PLATE)), STRIKE),
    speaks(
        "strike-fit", given(FACE, lk=lock(latch_form="deadbolt"), items=[IN_FRAME], cat=catalogue(STRIKE=PLATE)), STRIKE
    ),
    speaks(
        "strike-fit",
        given(FACE, lk=lock(latch_form="deadlatch"), items=[IN_FRAME], cat=catalogue(STRIKE=PLATE)),
        STRIKE,
    ),
    boundary(
        "strike-fit",
        given(
            FACE,
            lk=lock(latch_form="deadlatch"),
            items=[IN_FRAME],
            cat=catalogue(STRIKE={**PLATE, "guard_latch": True}),
        ),
        STRIKE,
    ),
    speaks(
        "strike-fit",
        given(FACE, items=[item("strike", face="frame", cutout_height_mm=5 * INCH)], cat=catalogue(STRIKE=PLATE)),
        STRIKE,
        short_mm=3.175,
    ),
    speaks(
        "strike-fit",
        given(opening(frame_face_mm=INCH), items=[IN_FRAME], cat=catalogue(STRIKE=PLATE)),
        STRIKE,
        face_mm=25.4,
    ),
    unknown(
        "strike-fit",
        given(FACE, lk=lock(latch_form=None), items=[IN_FRAME], cat=catalogue(STRIKE=PLATE)),
        STRIKE,
        "existing_item.latch_form",
    ),
    unknown(
        "strike-fit",
        given(cat=catalogue(STRIKE=PLATE)),
        STRIKE,
        "existing_item.cutout_height_mm",
        "opening.frame_face_mm",
    ),
    passes("magnet-mount", given(opening(header_depth_mm=50.0), cat=catalogue(MAG={"header_mm": 48.0})), MAG),
    speaks(
        "magnet-mount", given(opening(header_depth_mm=40.0), cat=catalogue(MAG={"header_mm": 48.0})), MAG, short_mm=8.0
    ),
    boundary("magnet-mount", given(opening(header_depth_mm=48.0), cat=catalogue(MAG={"header_mm": 48.0})), MAG),
    unknown("magnet-mount", given(cat=catalogue(MAG={"header_mm": 48.0})), MAG, "opening.header_depth_mm"),
    speaks("magnet-mount", pair([magnet(leaf="inactive")]), fit()),
    boundary("magnet-mount", pair([magnet(leaf="active")]), fit()),
    unknown("magnet-mount", pair([magnet()]), fit(), "existing_item.leaf"),
    # Lifts and turnstiles (ASME A17.1, 2.27).
    passes("controller-output", given(), fit()),
    passes("controller-output", given(opening(form="turnstile")), fit()),
    speaks("controller-output", given(opening(form="lift")), fit(), severity="note"),
    speaks("controller-output", given(opening(form="lift", connected_by="shop")), fit(), says=2),
    boundary("controller-output", given(opening(form="turnstile", connected_by="shop")), fit()),
    speaks("controller-output", given(opening(form="turnstile", controller_output="powered")), fit(), severity="error"),
    speaks("controller-output", given(opening(form="lift", fire_recall=False)), fit(), severity="error"),
    unknown("controller-output", given(opening(form="turnstile", fire_recall=None)), fit(), "opening.fire_recall"),
    # Fixings where the public passes.
    passes("fixings-outside", given(), fit()),
    speaks(
        "fixings-outside",
        given(opening(exposure="exterior"), cat=catalogue(SCREW={"security_drive": False})),
        fit(placement=place(face="key")),
        severity="warning",
    ),
    boundary(
        "fixings-outside",
        given(opening(exposure="exterior"), cat=catalogue(SCREW={"security_drive": True})),
        fit(placement=place(face="key")),
    ),
    boundary("fixings-outside", given(opening(exposure="exterior")), fit()),
    # A bonded pad has no head to turn, of a part that is in no catalogue another rule tells: the screw is left.
    boundary(
        "fixings-outside",
        given(opening(exposure="exterior")),
        fit(fp("fastener", "PAD", 4), fp("fastener", "GONE", 4), placement=place(face="key")),
        says=1,
    ),
    unknown(
        "fixings-outside",
        given(opening(exposure="exterior")),
        fit(placement=place(face="key")),
        "part SCREW.security_drive",
    ),
    passes("access-policy", given(), fit()),
    speaks("access-policy", given(opening(access_policy=None)), fit(), severity="warning"),
    boundary("access-policy", given(opening(access_policy=" ")), fit(), says=1),
]


FAIL_SAFE = catalogue(STRIKE={"fail": "fail-safe"})
STAYS_SAFE = item("electric-strike", face="frame", fail="fail-safe")


def rated_pair(*items, lk=None, **facts):
    return pair(items, lk, **{"rating": "90", **facts})


# What is said, of several things each, and of what nobody told.
ROWS += [
    # A deadlock is called one, with a thumb turn only where one could be; any other lock by its function.
    speaks(
        "free-inside",
        given(EGRESS, lk=lock(function="deadlock")),
        fit(),
        words=("A deadlock without a thumb turn stands", "from the inside"),
    ),
    speaks(
        "free-inside",
        given(INWARDS, lk=lock(function="deadlock")),
        fit(),
        words=("A deadlock stands", "from the key side"),
    ),
    speaks(
        "free-inside",
        given(INWARDS, lk=lock(function="storeroom")),
        fit(),
        words=("from the key side, and a lock of the function storeroom",),
    ),
    unknown("free-inside", given(opening(egress=None), lk=lock(function="deadlock")), fit(), "opening.egress"),
    unknown("free-inside", given(opening(egress=None), items=[item("deadbolt")]), fit(), "opening.egress"),
    boundary("free-inside", given(opening(egress=None)), fit()),
    *(
        boundary("free-inside", given(opening(form=form, egress=None), lk=lock(function="deadlock")), fit())
        for form in ("gate", "cabinet")
    ),
    # One of two locks of the leaf keeps the side locked.
    speaks(
        "fail-by-side",
        given(INWARDS, lk=lock(function="passage"), items=[item("deadbolt", thumb_turn=True)]),
        STRIKE,
        severity="error",
        words=("keeps the key side locked",),
    ),
    speaks("fail-by-side", given(INWARDS, cat=FAIL_SAFE), STRIKE, words=("the key side, from which people leave",)),
    boundary("fail-by-side", given(UNSURE, items=[STAYS_SAFE]), STRIKE, says=2),
    # A gate of which nobody told the one or the other, or both.
    unknown("gate-release", given(EGRESS, lk=lock("gate")), GATE, "part GATE.free_inside"),
    unknown("gate-release", given(UNSURE, lk=lock("gate")), GATE, "opening.egress_toward", "part GATE.free_inside"),
    # Exactly as many people as the one code or the other counts from (50, 100).
    unknown(
        "panic-hardware",
        given(replace(EGRESS, occupancy_group="A", occupant_load=50, code=None)),
        fit(),
        "opening.code",
    ),
    speaks("panic-hardware", given(replace(EGRESS, occupancy_group="A", occupant_load=100, code=None)), fit()),
    boundary("panic-hardware", given(replace(EGRESS, occupancy_group="A", occupant_load=49, code=None)), fit()),
    boundary("panic-hardware", given(replace(EGRESS, occupancy_group="B", occupant_load=500)), fit()),
    boundary("panic-hardware", given(replace(EGRESS, occupancy_group="B", occupant_load=None)), fit()),
    speaks(
        "panic-hardware",
        given(PANIC, items=[item("exit-device", disposition="remove")]),
        fit(),
        words=("the survey shows no exit device that stays",),
    ),
    # Delayed egress: what of code and group, or of sprinklers and alarm, nobody told.
    *(
        boundary("delayed-egress", delayed(**dict.fromkeys(names), **more), fit(), says=2)
        for names, more in (
            (("code",), {}),
            (("occupancy_group",), {}),
            (("code", "occupancy_group"), {}),
            (("egress_toward",), {}),
            (("sprinkler",), {"fire_alarm": False}),
            (("fire_alarm",), {"sprinkler": False}),
            (("sprinkler", "fire_alarm"), {}),
            (("code_edition",), {"occupancy_group": "E"}),
            (("occupant_load",), {"occupancy_group": "E"}),
        )
    ),
    # One way out with a sensor is enough to ask whether the group allows it.
    speaks(
        "electromagnetic-lock",
        given(replace(BOTH_WAYS, occupancy_group="S"), items=[magnet(), sensor("inside"), button("inside")]),
        fit(),
        says=3,
    ),
    speaks(
        "electromagnetic-lock",
        given(replace(BOTH_WAYS), items=[magnet(), item("release-switch", face="inside")]),
        fit(),
        says=2,
    ),
    *(
        boundary("electromagnetic-lock", given(facts, items=[magnet(), *released]), fit(), says=says)
        for facts, released, says in (
            (replace(EGRESS, occupancy_group=None), [item("release-switch", face="both")], 2),
            (replace(PANIC, code_edition=None), [sensor("inside"), button("inside")], 2),
            # Without a sensor, off a panic path, or under NFPA 101 the edition decides nothing.
            (replace(PANIC, code_edition=2024), [item("release-switch", face="both")], 1),
            (replace(PANIC, code_edition=2024, code="nfpa-101"), [sensor("inside"), button("inside")], 1),
            (replace(EGRESS, code_edition=2024), [sensor("inside"), button("inside")], 1),
        )
    ),
    # A rim lock under its exit device is one thing; beside another lock the device is a second.
    boundary(
        "one-motion",
        given(EGRESS, lk=lock("rim"), items=[item("exit-device"), item("deadbolt")]),
        fit(),
        says=1,
        holds=2,
        words=("(lock, exit device, deadbolt)",),
    ),
    boundary("one-motion", given(EGRESS, items=[item("exit-device")]), fit(), says=1, holds=2),
    boundary("one-motion", given(EGRESS, lk=lock("rim"), items=[item("deadbolt")]), fit(), says=1, holds=2),
    boundary("one-motion", given(items=[item("deadbolt"), item("exit-device")]), fit()),
    boundary("one-motion", given(opening(egress=None), leaves=(), items=[item("deadbolt")]), fit()),
    # Bolts of a pair: each is looked at, and only those of the inactive leaf, or of one that nobody told.
    unknown("pair-bolts", pair([bolt("automatic"), bolt(None)], rating="90"), fit(), "existing_item.bolt_form"),
    speaks("pair-bolts", pair([bolt("automatic"), bolt("manual")], rating="90"), fit()),
    speaks("pair-bolts", pair([bolt("manual", leaf=None)], rating="90"), fit()),
    boundary("pair-bolts", pair([bolt("manual", leaf="active")], rating="90"), fit()),
    boundary("pair-bolts", given(RATED, items=[bolt("manual")]), fit()),
    boundary("pair-bolts", pair([bolt(None)]), fit()),
    speaks("pair-bolts", pair([bolt("manual")], egress="egress", occupant_load=49), fit(), load_people=49),
    speaks("pair-bolts", pair([bolt("manual")], egress="egress", occupant_load=0), fit(), load_people=0),
    speaks(
        "pair-bolts",
        pair([bolt("manual")], egress="egress", occupancy_group="A", occupant_load=0),
        fit(),
        load_people=0,
    ),
    boundary(
        "pair-bolts",
        pair([bolt("manual")], egress="egress", occupant_load=49, sprinkler=None),
        fit(),
        says=1,
        severity="warning",
    ),
    # What is latched on the inactive leaf: any lock said to be there, and bolts wherever they are said to be.
    boundary("pair-inactive-latches", rated_pair(bolt("manual")), fit()),
    boundary("pair-inactive-latches", rated_pair(bolt("manual", leaf=None)), fit()),
    unknown(
        "pair-inactive-latches",
        rated_pair(bolt(None), lock(leaf="inactive", latch_form="deadbolt")),
        fit(),
        "existing_item.bolt_form",
    ),
    unknown("pair-inactive-latches", rated_pair(lk=lock(leaf=None)), fit(), "existing_item.bolt_form"),
    # In which order a pair closes: what comes off wants none, and what nobody told is asked.
    boundary("pair-closing-order", pair([replace(astragal("active", "inside"), disposition="remove")]), fit()),
    boundary("pair-closing-order", pair([replace(bolt("automatic"), disposition="remove")]), fit()),
    boundary("pair-closing-order", pair([bolt("manual")]), fit()),
    unknown(
        "pair-closing-order",
        pair([astragal("active", "inside")], hand=None, closes_first="inactive"),
        fit(),
        "opening.hand",
    ),
    boundary("pair-closing-order", pair([astragal("active", "both")], closes_first="active"), fit()),
    speaks(
        "pair-closing-order",
        pair([astragal("active", "inside")], closes_first="any"),
        fit(),
        words=("By the astragal the inactive leaf must close first; in any order it may come last",),
    ),
    speaks(
        "pair-closing-order",
        pair([bolt("automatic")], closes_first="active"),
        fit(),
        words=("By the automatic bolts the inactive leaf must close first; the active leaf does",),
    ),
    # A fail-safe strike that stays unlatches a stair door as a new one does; one that goes, or stays shut, does not.
    speaks("stair-re-entry", given(STAIR, items=[STAYS_SAFE]), fit(), says=2),
    boundary("stair-re-entry", given(STAIR, items=[replace(STAYS_SAFE, fail="fail-secure")]), fit(), says=1),
    boundary("stair-re-entry", given(STAIR, items=[replace(STAYS_SAFE, disposition="remove")]), fit(), says=1),
    boundary("stair-re-entry", given(opening(stair=True, egress_toward="key")), fit(), says=1, severity="warning"),
    boundary(
        "stair-re-entry",
        given(STAIR, lk=lock(function="passage"), items=[item("deadbolt", thumb_turn=True)]),
        fit(),
        says=1,
        severity="note",
    ),
    # Lifts and turnstiles: each is told of what is its own.
    speaks(
        "controller-output",
        given(opening(form="lift", controller_output="none")),
        fit(),
        says=2,
        words=("The reader has no output;",),
    ),
    speaks(
        "controller-output",
        given(opening(form="turnstile", controller_output="powered")),
        fit(),
        words=("The reader has a powered output;",),
    ),
    speaks(
        "controller-output",
        given(opening(form="lift", fire_recall=False)),
        fit(),
        words=("recall to the designated level",),
    ),
    speaks(
        "controller-output",
        given(opening(form="turnstile", fire_recall=False)),
        fit(),
        words=("the turnstile must open on the alarm",),
    ),
    # Of rated leaves.
    boundary("rated-latch", given(opening(form="gate", rating="90"), lk=lock(latch_form="deadbolt")), fit()),
    boundary("rated-latch", given(RATED, leaves=()), fit()),
    speaks("rated-latch", pair([lock(leaf="inactive")], lock(leaf="active", latch_form="roller"), rating="90"), fit()),
    speaks("rated-latch", given(RATED, lk=lock(latch_form="deadbolt"), items=[lock(disposition="remove")]), fit()),
    boundary("rated-closes", given(RATED), Fit("to-measure")),
    speaks("rated-closes", given(RATED), Fit("to-measure", placement=place()), severity="note"),
    boundary("rated-seal", given(opening(smoke_seal="edge")), fit(holes=(hole(0.0, "pocket", face="lock-edge"),))),
    boundary(
        "rated-seal",
        given(opening(form="gate", rating="90", smoke_seal="edge")),
        fit(holes=(hole(0.0, "pocket", face="lock-edge"),)),
    ),
    boundary("rated-seal", given(RATED), fit()),
    boundary(
        "rated-seal", given(replace(RATED, smoke_seal="stop")), fit(holes=(hole(0.0, "pocket", face="lock-edge"),))
    ),
    # Of a stop that nobody measured only the seal is known: 9.5.
    speaks(
        "rated-seal",
        given(replace(RATED, smoke_seal="stop", frame_stop_mm=None)),
        fit(placement=place(x=9.0, face="key")),
        needed_mm=9.5,
    ),
    # A hinge of another leaf is not the one that is replaced; and what the part lacks is asked of the part.
    unknown(
        "transfer-hinge",
        given(items=[HINGE], cat=hinged(hinge_width_mm=None)),
        THINGE,
        "part THINGE.hinge_width_mm",
    ),
    unknown(
        "transfer-hinge",
        replace(pair([replace(HINGE, leaf="inactive")]), catalogue=catalogue(add=[TRANSFER])),
        THINGE,
        "existing_item.height_mm",
        "existing_item.width_mm",
    ),
    speaks("frame-label", given(opening(rating="90", frame_rating="45")), fit(), words=("the lesser, 45 min;",)),
    speaks("frame-label", given(opening(rating="45", frame_rating="180")), fit(), words=("the lesser, 45 min;",)),
    # Strikes and magnets: for a lift or a cabinet nothing is held, and what an exit lock holds is no latch of its own.
    boundary("strike-fit", given(opening(form="cabinet"), cat=catalogue(STRIKE=PLATE)), STRIKE),
    boundary("strike-fit", given(opening(form="lift"), leaves=(), cat=catalogue(STRIKE=PLATE)), STRIKE),
    boundary(
        "strike-fit",
        given(
            FACE, lk=lock("rim", function="exit", latch_form="deadbolt"), items=[IN_FRAME], cat=catalogue(STRIKE=PLATE)
        ),
        STRIKE,
    ),
    # 4 7/8 in against a cutout 0.04 higher, and 1 1/4 in on a face 0.04 narrower: what is measured is no closer.
    boundary(
        "strike-fit",
        given(
            opening(frame_face_mm=1.25 * INCH - 0.04),
            items=[item("strike", face="frame", cutout_height_mm=4.875 * INCH + 0.04)],
            cat=catalogue(STRIKE=PLATE),
        ),
        STRIKE,
    ),
    boundary(
        "magnet-mount", given(opening(form="cabinet", header_depth_mm=1.0), cat=catalogue(MAG={"header_mm": 48.0})), MAG
    ),
    boundary(
        "magnet-mount",
        given(opening(form="lift", header_depth_mm=1.0), leaves=(), cat=catalogue(MAG={"header_mm": 48.0})),
        MAG,
    ),
    unknown("magnet-mount", given(opening(header_depth_mm=50.0)), MAG, "part MAG.header_mm"),
    unknown("magnet-mount", pair([magnet(leaf="inactive"), magnet()]), fit(), "existing_item.leaf"),
    boundary("magnet-mount", pair([magnet(leaf="inactive"), magnet(leaf="active")]), fit()),
    boundary("magnet-mount", given(items=[magnet(leaf="inactive")]), fit()),
    speaks(
        "fixings-outside",
        given(opening(form="gate"), cat=catalogue(SCREW={"security_drive": False})),
        fit(placement=place(face="key")),
    ),
    boundary(
        "fixings-outside", given(cat=catalogue(SCREW={"security_drive": False})), fit(placement=place(face="key"))
    ),
]


@pytest.mark.parametrize("row", ROWS, ids=str)
def test_rule(row):
    run(row)


BASE = {
    "door": given(STAIR),
    "rated": given(replace(RATED, smoke_seal="none"), items=[lite("listed")]),
    "pair": pair([bolt("manual"), astragal("active", "inside")], egress="egress", closes_first="inactive", rating="90"),
    "lift": given(opening(form="lift")),
    "delayed": delayed(),
    "magnet": given(PANIC, items=[magnet(), sensor("inside"), button("inside"), item("exit-device")]),
    "assembly": given(replace(EGRESS, occupancy_group="A", occupant_load=60)),
    "room": replace(given(opening(no_exit_confirmed=True)), closed_rooms=("room_to",)),
    "strike": given(FACE, items=[IN_FRAME], cat=catalogue(STRIKE=PLATE)),
    "hung": given(opening(header_depth_mm=60.0), cat=catalogue(MAG={"header_mm": 48.0})),
}
EDGE = fit(holes=(hole(0.0, "pocket", face="lock-edge"),))
TWO_VALUES = {
    # Fact: what it stands on, the fit, and two values that are judged differently.
    "opening.egress_toward": ("door", fit(), "key", "inside"),
    "opening.no_exit_confirmed": ("room", fit(), True, False),
    "opening.stair_release": ("door", fit(), "both", "none"),
    "opening.frame_face_mm": ("strike", STRIKE, 50.0, 25.0),
    "opening.header_depth_mm": ("hung", MAG, 48.0, 30.0),
    "opening.closes_first": ("pair", fit(), "inactive", "active"),
    "opening.smoke_seal": ("rated", EDGE, "stop", "edge"),
    "opening.frame_rating": ("rated", fit(), "45", "none"),
    "opening.controller_output": ("lift", fit(), "dry-contact", "powered"),
    "opening.connected_by": ("lift", fit(), "lift-contractor", "shop"),
    "opening.fire_recall": ("lift", fit(), True, False),
    "opening.code": ("door", fit(), "ibc", "nfpa-101"),
    "opening.code_edition": ("magnet", fit(), 2021, 2024),
    "opening.occupancy_group": ("delayed", fit(), "B", "A"),
    "opening.occupant_load": ("assembly", fit(), 49, 50),
    "opening.storeys_served": ("door", fit(), 4, 5),
    "opening.sprinkler": ("pair", fit(), True, False),
    "opening.fire_alarm": ("delayed", fit(), True, False),
    "opening.access_policy": ("door", fit(), "staff keys", ""),
    "leaf.self_closes": ("rated", fit(), True, False),
    "leaf.unused_holes": ("rated", fit(), "steel", "open"),
    "existing_item.latch_form": ("rated", fit(), "latch", "deadbolt"),
    "existing_item.bolt_form": ("pair", fit(), "automatic", "manual"),
    "existing_item.stops": ("rated", fit(), "listed", "unlisted"),
    "existing_item.cutout_height_mm": ("strike", STRIKE, 80.0, 150.0),
}
BESIDE = {
    # What else has to hold for the fact to decide.
    "opening.storeys_served": {"stair_release": "none", "code": "nfpa-101"},
    "opening.code": {"stair_release": "fire-alarm"},
    "opening.sprinkler": {"occupant_load": 60},
    "opening.fire_alarm": {"sprinkler": False},
}
NEW = (
    *("egress_toward", "no_exit_confirmed", "stair_release", "frame_face_mm", "header_depth_mm", "closes_first"),
    *("smoke_seal", "frame_rating", "controller_output", "connected_by", "fire_recall", *INHERITED),
)


def with_fact(base, fact, value):
    entity, _, name = fact.partition(".")
    if entity == "opening":
        return replace(base, opening=replace(base.opening, **{name: value}))
    if entity == "leaf":
        return replace(base, leaves=tuple(replace(each, **{name: value}) for each in base.leaves))
    return replace(base, items=tuple(replace(each, **{name: value}) for each in base.items))


def said(base, stated):
    return [(found.rule, found.severity, found.message) for found in check(base, stated)]


@pytest.mark.parametrize("fact", TWO_VALUES)
def test_two_values_of_each_fact_are_judged_differently_and_its_absence_too(fact):
    name, stated, one, other = TWO_VALUES[fact]
    base = replace(BASE[name], opening=replace(BASE[name].opening, **BESIDE.get(fact, {})))
    first, second, nothing = (said(with_fact(base, fact, value), stated) for value in (one, other, None))
    assert first != second
    assert nothing not in (first, second) or fact == "opening.access_policy"


def test_the_table_of_two_values_holds_every_new_fact():
    assert {fact.partition(".")[2] for fact in TWO_VALUES if fact.startswith("opening.")} == set(NEW)
    assert {*INHERITED} <= {each.name for each in OPENING.attributes}


FORMS = ("single", "pair", "gate", "cabinet", "lift", "turnstile")


@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize("fact", [fact for fact in TWO_VALUES if fact.partition(".")[2] in ASKED])
def test_what_is_not_asked_of_a_form_no_rule_reads_there(fact, form):
    if asked_of(fact.partition(".")[2], form):
        return
    _, _, one, other = TWO_VALUES[fact]
    for name, base in BASE.items():
        stated = TWO_VALUES[fact][1]
        here = replace(base, opening=replace(base.opening, form=form))
        heard = {str(said(with_fact(here, fact, value), stated)) for value in (one, other, None)}
        assert len(heard) == 1, name


def test_each_fact_that_is_asked_of_some_forms_is_declared():
    declared = {a.name for entity in (OPENING, LEAF, ITEM) for a in entity.attributes}
    assert ASKED.keys() <= declared
    assert declared == {f.name for kind in (Opening, Leaf, Item) for f in fields(kind)} - {"id"}
    for forms in ASKED.values():
        assert set(forms) <= {choice.value for choice in OPENING.attribute("form").choices}


def test_what_is_unknown_of_a_building_is_asked_of_it_and_nothing_is_approved():
    """Of egress doors alike a hundred times the building is asked, not each of them."""
    (asked,) = (f for f in check(given(replace(EGRESS, occupancy_group=None)), fit()) if f.rule == "panic-hardware")
    assert "building or level: Occupancy group" in asked.message
    assert asked.cure.endswith(DEFERS)


@pytest.mark.parametrize(
    ("facts", "needs"),
    [
        ({"sprinkler": False, "fire_alarm": None}, ("opening.fire_alarm",)),
        ({"sprinkler": None, "fire_alarm": False}, ("opening.sprinkler",)),
        ({"sprinkler": None, "fire_alarm": None}, ("opening.sprinkler", "opening.fire_alarm")),
        ({"code": None}, ("opening.code",)),
        ({"occupancy_group": None}, ("opening.occupancy_group",)),
    ],
)
def test_delayed_egress_asks_for_what_is_missing_and_for_nothing_that_is_known(facts, needs):
    """Sprinklers or detection, one of the two, by NFPA 101; the IBC names groups of occupancy."""
    asked = delayed(**facts)
    said = judge(rule_named("delayed-egress"), asked, fit(), settings=asked.settings)
    assert [verdict.needs for verdict in said if verdict.needs] == [needs]
