"""Rules of survey completeness and of facts that contradict each other."""

import pytest

from hwsched.rules import judge, rule_named
from hwsched.values import Settings, Stack
from tests.rules.rows import boundary, passes, run, speaks, unknown
from tests.rules.scenario import INCH, fit, given, item, leaf, lock, opening, place

PAIR = opening(form="pair")
ACTIVE, INACTIVE = leaf(position="active"), leaf(position="inactive")
NARROW = {"construction": "narrow-stile"}
STILE = leaf(**NARROW, stile_mm=110.0)


EVEN = Settings(
    length_style="mm",
    limits={
        "items-apart.overlap_mm": 6.25,
        "items-on-leaf.over_mm": 50.75,
        "lite-clear-of-lock.overlap_mm": 6.25,
        "one-place.off_mm": 6.25,
    },
)
"""Limits that are met to the last digit: what is just allowed passes."""


def bar(high, y=1000.0):
    return item("exit-device", 430.0, y, 800.0, high)


ROWS = [
    passes("fact-in-range", given(), fit()),
    speaks("fact-in-range", given(lf=leaf(thickness_mm=-1.0)), fit(), value=-1.0, about="leaf.thickness_mm"),
    speaks("fact-in-range", given(lf=leaf(thickness_mm=float("nan"))), fit(), severity="error"),
    boundary("fact-in-range", given(lf=leaf(thickness_mm=120.0)), fit()),
    passes("known-before-order", given(), fit()),
    boundary("known-before-order", given(opening(form="lift", rating=None), lk=lock("reader"), leaves=()), fit()),
    unknown("known-before-order", given(lk=lock(cam_form=None)), fit(), "existing_item.cam_form"),
    unknown(
        "known-before-order",
        given(opening(rating=None), leaf(thickness_mm=None)),
        fit(),
        "opening.rating",
        "leaf.thickness_mm",
    ),
    passes("known-before-drill", given(), fit()),
    boundary("known-before-drill", given(items=[item("closer", x=None, face="key")]), fit()),
    unknown("known-before-drill", given(items=[item("closer", x=None)]), fit(), "existing_item.x_mm"),
    unknown("known-before-drill", given(lf=leaf(construction="narrow-stile")), fit(), "leaf.stile_mm"),
    passes("known-before-issue", given(), fit()),
    boundary("known-before-issue", given(opening(form="gate", stair=None, hand=None)), fit()),
    unknown("known-before-issue", given(opening(egress=None)), fit(), "opening.egress"),
    passes("lock-within-leaf", given(), fit()),
    speaks("lock-within-leaf", given(lk=lock(cylinder_height_mm=2200.0)), fit(), cylinder_mm=2200.0, severity="error"),
    speaks("lock-within-leaf", given(lf=leaf(width_mm=60.0)), fit(), backset_mm=69.85),
    boundary("lock-within-leaf", given(lk=lock(cylinder_height_mm=2143.0)), fit()),
    boundary("lock-within-leaf", given(lk=lock(cylinder_height_mm=2143.6)), fit(), says=1),
    unknown("lock-within-leaf", given(opening(form="cabinet"), leaf(undercut_mm=None)), fit(), "leaf.undercut_mm"),
    # 1 1/4 in case opening leaves 1/4 in each side of 1 3/4 in (86 preparation).
    passes("case-within-leaf", given(lk=lock(case_width_mm=31.75)), fit()),
    speaks("case-within-leaf", given(lf=leaf(thickness_mm=25.0)), fit(), short_mm=2.0, severity="error"),
    speaks("case-within-leaf", given(lf=leaf(thickness_mm=30.0), lk=lock(case_offset_mm=-2.0)), fit(), short_mm=1.0),
    boundary("case-within-leaf", given(lf=leaf(thickness_mm=27.0)), fit()),
    # 25.5 + 1.6 = 27.1: a leaf of 27 mm is 0.1 short, and 0.5 + 0.05 is what the last digits leave open.
    speaks(
        "case-within-leaf",
        given(lf=leaf(thickness_mm=27.0), lk=lock(case_width_mm=25.5)),
        fit(),
        off_mm=0.1,
        rounding_mm=0.55,
        severity="note",
    ),
    speaks("case-within-leaf", given(lf=leaf(thickness_mm=26.9)), fit(), short_mm=0.1, severity="error"),
    boundary("case-within-leaf", given(lf=leaf(thickness_mm=12.7, material="glass")), fit()),
    # Its lower end is at 894.45 (1000 + 44.45 - 150); the leaf's at the undercut, also where it is of glass.
    speaks("case-within-leaf", given(lf=leaf(undercut_mm=900.0)), fit(), out_mm=5.55, severity="error"),
    speaks("case-within-leaf", given(lf=leaf(undercut_mm=900.0, material="glass")), fit(), out_mm=5.55),
    boundary("case-within-leaf", given(lf=leaf(undercut_mm=894.45)), fit()),
    speaks("case-within-leaf", given(lf=leaf(undercut_mm=10.0, height_mm=1030.0)), fit(), out_mm=4.45),
    passes("case-offset-taken", given(lk=lock(case_offset_mm=1.5)), fit()),
    boundary("case-offset-taken", given(lk=lock(case_offset_mm=0.0)), fit()),
    boundary("case-offset-taken", given(lk=lock("rim")), fit()),
    # On its middle plane no turn is to spare toward the inside; two and a pitch under the head the other way.
    speaks(
        "case-offset-taken",
        given(lk=lock(case_offset_mm=None)),
        fit(),
        severity="note",
        inward_mm=0.0,
        keyward_mm=3 * INCH / 32,
    ),
    speaks(
        "case-offset-taken",
        given(lk=lock(case_offset_mm=None)),
        fit(stack=Stack("threaded", 3.0, 0.2, 1)),
        inward_mm=INCH / 32 + 0.2,
        keyward_mm=2 * INCH / 32 - 0.2,
    ),
    speaks("case-offset-taken", given(lk=lock("euro-profile", case_offset_mm=None)), fit()),
    passes("items-apart", given(items=[item("closer"), item("lite", 500.0, 1300.0)]), fit()),
    speaks(
        "items-apart",
        given(items=[item("closer"), item("lite", 500.0, 1420.0)]),
        fit(),
        overlap_mm=20.0,
        severity="warning",
    ),
    boundary("items-apart", given(items=[item("closer"), item("lite", 500.0, 1500.0 - 100.0 + 6.35)]), fit()),
    speaks("items-apart", given(items=[item("closer"), item("lite", 500.0, 1406.4)]), fit(), overlap_mm=6.4),
    boundary("items-apart", given(items=[item("closer"), item("lite", 500.0, 1406.25)], settings=EVEN), fit()),
    boundary("items-apart", given(items=[item("closer"), item("lite", 500.0, 1420.0, face="key")]), fit()),
    passes("items-on-leaf", given(items=[item("closer")]), fit()),
    speaks("items-on-leaf", given(items=[item("closer", x=950.0)]), fit(), off_mm=85.6, severity="warning"),
    boundary("items-on-leaf", given(items=[item("closer", x=914.4 + 50.8 - 50.0)]), fit()),
    speaks("items-on-leaf", given(items=[item("closer", x=914.4 + 51.0 - 50.0)]), fit(), off_mm=51.0),
    # Past each of its four edges; at the lock edge the item of 100 begins so far before it.
    speaks("items-on-leaf", given(items=[item("closer", x=50.0 - 51.0)]), fit(), off_mm=51.0),
    speaks("items-on-leaf", given(items=[item("closer", y=2143.6 + 51.0 - 50.0)]), fit(), off_mm=51.0),
    boundary("items-on-leaf", given(items=[item("closer", x=50.0 - 50.75)], settings=EVEN), fit()),
    # Behind a stile lies glass; a case of 105 stands in a stile of 100, or in a leaf of 140 (geometry).
    passes("case-within-stile", given(lf=STILE), fit()),
    passes("case-within-stile", given(lf=leaf(stile_mm=100.0)), fit()),
    speaks("case-within-stile", given(lf=leaf(**NARROW, stile_mm=100.0)), fit(), case_mm=105.0, stile_mm=100.0),
    speaks("case-within-stile", given(lf=leaf(height_mm=140.0)), fit(), case_mm=150.0, leaf_mm=140.0, severity="error"),
    boundary("case-within-stile", given(lf=leaf(**NARROW, stile_mm=105.0)), fit()),
    # A case of 105 mm may be 104.5: a stile of 104.6 mm, or 104.55 to 104.65, may hold it. One of 104.4 mm cannot.
    speaks("case-within-stile", given(lf=leaf(**NARROW, stile_mm=104.6)), fit(), off_mm=0.4, severity="note"),
    speaks("case-within-stile", given(lf=leaf(**NARROW, stile_mm=104.4)), fit(), short_mm=0.6, severity="error"),
    speaks("case-within-stile", given(lf=leaf(height_mm=149.6)), fit(), off_mm=0.4, severity="note"),
    boundary("case-within-stile", given(lf=leaf(height_mm=150.0)), fit()),
    # Both in whole millimetres: 104.5 may be in 104.5, and 149.5 in 149.5. A tenth less and they are not.
    speaks("case-within-stile", given(lf=leaf(**NARROW, stile_mm=104.0)), fit(), off_mm=1.0, severity="note"),
    speaks("case-within-stile", given(lf=leaf(height_mm=149.0)), fit(), off_mm=1.0, severity="note"),
    speaks("case-within-stile", given(lf=leaf(height_mm=148.9)), fit(), short_mm=1.1, severity="error"),
    boundary("case-within-stile", given(lf=leaf(**NARROW, stile_mm=50.0), lk=lock("rim")), fit()),
    # Cylinder hole 1 1/4 in round (69.85, 1000); case 0 to 105 wide, 894.45 to 1044.45 high (geometry).
    passes("lite-clear-of-lock", given(items=[item("lite", 300.0, 1300.0)]), fit()),
    speaks("lite-clear-of-lock", given(items=[item("lite", 110.0, 1000.0)]), fit(), overlap_mm=25.725, about="lite"),
    speaks("lite-clear-of-lock", given(items=[item("lite", 110.0, 910.0)]), fit(), overlap_mm=45.0, severity="error"),
    boundary("lite-clear-of-lock", given(items=[item("lite", 155.0 - 6.35, 910.0)]), fit()),
    speaks("lite-clear-of-lock", given(items=[item("lite", 155.0 - 6.4, 910.0)]), fit(), overlap_mm=6.4),
    boundary("lite-clear-of-lock", given(items=[item("lite", 155.0 - 6.25, 910.0)], settings=EVEN), fit()),
    boundary("lite-clear-of-lock", given(items=[item("pull", 110.0, 1000.0)]), fit()),
    # One that stands clear keeps none behind it from being held against the lock.
    speaks(
        "lite-clear-of-lock",
        given(items=[item("pull", 300.0, 500.0), item("lite", 300.0, 1300.0), item("lite", 110.0, 910.0)]),
        fit(),
        overlap_mm=45.0,
    ),
    # Half of the smaller one is one place (our own); a lever stands on its rose.
    passes("one-place", given(items=[item("lever"), item("trim")]), fit()),
    speaks("one-place", given(items=[item("closer"), item("viewer", w=20.0, h=20.0)]), fit(), share=1.0),
    speaks("one-place", given(items=[item("closer"), item("lite", face="both", y=1550.0 - 1)]), fit(), share=0.51),
    boundary("one-place", given(items=[item("closer"), item("lite", y=1550.0)]), fit()),
    speaks("one-place", given(items=[item("closer"), item("lite", y=1549.8)]), fit(), share=0.502),
    boundary("one-place", given(items=[item("closer"), item("lite", face="key")]), fit()),
    # The case reaches from 894.45 to 1044.45; a footprint of 80 round 1000 shows the rail alone.
    speaks("one-place", given(lk=lock("rim"), items=[bar(80.0)]), fit(), off_mm=65.55, about="exit device"),
    passes("one-place", given(lk=lock("rim"), items=[bar(212.0)]), fit()),
    boundary("one-place", given(lk=lock("rim"), items=[bar(2 * (105.55 - 6.35))]), fit()),
    speaks("one-place", given(lk=lock("rim"), items=[bar(2 * (105.55 - 6.4))]), fit(), off_mm=6.4),
    # A case from 900 to 1050 and a footprint from 906.25: just what may stand out.
    boundary("one-place", given(lk=lock("rim", case_above_mm=50.0), items=[bar(187.5)], settings=EVEN), fit()),
    boundary("one-place", given(lk=lock("rim"), items=[bar(80.0, y=400.0)]), fit()),
    passes("stile-told", given(lf=leaf(construction=None)), fit()),
    unknown("stile-told", given(lf=leaf(construction=None, stile_mm=60.0)), fit(), "leaf.construction"),
    unknown(
        "stile-told",
        given(lf=leaf(material="aluminium", construction=None)),
        fit(),
        "leaf.construction",
        "leaf.stile_mm",
    ),
    unknown("stile-told", given(lf=leaf(material="aluminium", **NARROW)), fit(), "leaf.stile_mm"),
    boundary("stile-told", given(lf=leaf(material="aluminium")), fit()),
    boundary("stile-told", given(lf=leaf(material="steel-gate", construction=None, stile_mm=50.0)), fit()),
    passes("lock-converted", given(), fit()),
    speaks("lock-converted", given(lk=lock(disposition="remove")), fit(), severity="error", about="lock"),
    boundary("lock-converted", given(lk=lock(disposition="remove"), items=[lock("rim")]), fit()),
    boundary("lock-converted", given(lk="none"), fit()),
    # Whatever else comes off, and whatever else is there before it.
    boundary("lock-converted", given(lk="none", items=[item("closer", disposition="remove")]), fit()),
    speaks("lock-converted", given(lk="none", items=[item("closer"), lock(disposition="remove")]), fit(), about="lock"),
    boundary("known-before-order", given(lk=lock(disposition="remove")), fit()),
    passes("leaf-count", given(), fit()),
    speaks("leaf-count", given(PAIR), fit(), leaves=1, needed_leaves=2, severity="warning"),
    speaks("leaf-count", given(PAIR, leaves=(ACTIVE, ACTIVE)), fit()),
    boundary("leaf-count", given(PAIR, leaves=(INACTIVE, ACTIVE)), fit()),
    passes("moved-item", given(items=[item("pull")]), fit()),
    speaks("moved-item", given(items=[item("pull", disposition="move")]), fit(), items=1, severity="warning"),
    boundary("moved-item", given(items=[item("pull", face="key", disposition="move")]), fit()),
]


LIFT = opening(form="lift")
GLASS = leaf(material="glass", thickness_mm=12.7)
HANGS = leaf(undercut_mm=None)
"""Its undercut, up to 60 mm, nobody measured: the leaf surely reaches from 60 to 2133.6, perhaps from 0 to 2193.6."""


IN_EDGE = fit(unit="EDGE", placement=place(13.5, 1063.5, face="edge", width_mm=17.4625, height_mm=349.25))


def nearer(facts, by):
    """The middle of a thing beside the cylinder's hole, so much nearer to it."""
    if facts["y"] == 1000.0:
        return {"x": facts["x"] - by if facts["x"] > 69.85 else facts["x"] + by}
    return {"y": facts["y"] - by if facts["y"] > 1000.0 else facts["y"] + by}


# Of what the rules leave out, of several things each, and of what nobody told.
ROWS += [
    speaks(
        "case-offset-taken",
        given(lk=lock(case_offset_mm=None)),
        fit(stack=Stack("threaded", 3.0, 0.0005, 0)),
        inward_mm=0.0,
        keyward_mm=3 * INCH / 32,
    ),
    speaks(
        "case-offset-taken",
        given(lk=lock(case_offset_mm=None)),
        fit(stack=Stack("threaded", 3.0, 0.5, 3)),
        inward_mm=3 * INCH / 32 + 0.5,
        keyward_mm=0.0,
    ),
    speaks(
        "case-offset-taken",
        given(lk=lock(case_offset_mm=None)),
        fit(stack=Stack("rim", 3.0)),
        words=("nobody has measured whether it does.",),
    ),
    speaks(
        "case-offset-taken",
        given(lk=lock(case_offset_mm=None)),
        fit(stack=Stack("threaded", 0.0, impossible="it stands outside")),
        words=("nobody has measured whether it does.",),
    ),
    passes("front-taken", given(), IN_EDGE),
    speaks(
        "front-taken",
        given(lk=lock(front_height_mm=None, front_width_mm=None)),
        IN_EDGE,
        severity="note",
        high_mm=203.2,
        wide_mm=31.75,
    ),
    speaks("front-taken", given(lk=lock(front_width_mm=None)), IN_EDGE, high_mm=150.0, wide_mm=31.75),
    speaks("front-taken", given(lk=lock("euro-profile", front_height_mm=None)), IN_EDGE, high_mm=235.0, wide_mm=25.4),
    boundary("front-taken", given(lk=lock(front_height_mm=None)), fit()),
    boundary("front-taken", given(lk=lock("bored")), IN_EDGE),
    # Of glass it may be, and then its case stands in a patch: where that is untold nothing is refused for it.
    unknown("case-within-leaf", given(lf=leaf(thickness_mm=20.0, material=None)), fit(), "leaf.material"),
    boundary("case-within-leaf", given(lf=leaf(thickness_mm=27.0, material=None)), fit()),
    unknown("case-within-stile", given(lf=leaf(**NARROW, stile_mm=100.0, material=None)), fit(), "leaf.material"),
    unknown(
        "lite-clear-of-lock",
        given(lf=leaf(material=None), items=[item("lite", 69.85, 1000.0, 60.0, 60.0, face="both")]),
        fit(),
        "leaf.material",
    ),
    # Two things overlap for sure on the face of both; a face that nobody told may be the other one.
    unknown("one-place", given(items=[item("closer"), item("lite", face=None)]), fit(), "existing_item.face"),
    unknown(
        "one-place", given(items=[item("closer", face=None), item("lite", face=None)]), fit(), "existing_item.face"
    ),
    speaks("one-place", given(items=[item("closer", face=None), item("lite", face="both")]), fit(), share=1.0),
    boundary("one-place", given(items=[item("closer"), item("lite", y=1550.0, face=None)]), fit()),
    # 25.4 + 1.6 = 27 to within what is measured: 26.95 is, 26.9 is not; 0.55 of rounding is, 0.6 is not.
    boundary("case-within-leaf", given(lf=leaf(thickness_mm=26.96)), fit()),
    speaks(
        "case-within-leaf",
        given(lf=leaf(thickness_mm=27.0), lk=lock(case_width_mm=25.9)),
        fit(),
        off_mm=0.5,
        severity="note",
    ),
    speaks(
        "case-within-leaf",
        given(lf=leaf(thickness_mm=27.0), lk=lock(case_width_mm=26.0)),
        fit(),
        severity="note",
        rounding_mm=1.0,
    ),
    speaks(
        "case-within-leaf",
        given(lf=leaf(thickness_mm=27.0), lk=lock(case_width_mm=26.1)),
        fit(),
        short_mm=0.7,
        severity="error",
    ),
    boundary("case-within-leaf", given(lf=leaf(undercut_mm=894.49)), fit()),
    speaks(
        "case-within-leaf",
        given(lf=leaf(undercut_mm=894.51)),
        fit(),
        case_low_mm=894.45,
        case_top_mm=1044.45,
        out_mm=0.06,
    ),
    # Of a cylinder that is not in its leaf another rule speaks; of a leaf nobody knows where it ends none.
    *(
        boundary("case-within-leaf", given(lf=leaf(**facts)), fit())
        for facts in (
            {"undercut_mm": 1000.0},
            {"undercut_mm": 10.0, "height_mm": 990.0},
            {"undercut_mm": 1100.0},
            {"undercut_mm": None, "height_mm": 1020.0},
            {"undercut_mm": 960.0, "height_mm": None},
        )
    ),
    boundary("case-within-leaf", given(lf=leaf(undercut_mm=900.0), lk=lock(case_height_mm=None)), fit()),
    boundary("case-within-leaf", given(lf=leaf(undercut_mm=900.0), lk=lock("rim")), fit()),
    boundary("case-within-stile", given(lf=leaf(material="glass", **NARROW, stile_mm=50.0)), fit()),
    boundary("case-within-stile", given(lf=leaf(**NARROW, stile_mm=104.96)), fit()),
    boundary("case-within-stile", given(lf=leaf(height_mm=149.96)), fit()),
    # Kick plate, trim and labels lie on what stands there: two of them may, one over a closer may not.
    boundary("items-apart", given(items=[item("trim"), item("push-plate")]), fit()),
    speaks(
        "items-apart", given(items=[item("trim"), item("closer")]), fit(), overlap_mm=100.0, about="trim and closer"
    ),
    speaks("items-apart", given(items=[item("closer"), item("trim")]), fit(), about="closer and trim"),
    speaks("items-apart", given(items=[item("trim"), item("push-plate"), item("closer")]), fit(), says=2),
    speaks("items-apart", given(items=[item("closer"), item("pull", face="key"), item("lite", 500.0, 1420.0)]), fit()),
    boundary("items-apart", given(LIFT, leaf(), lock("reader"), items=[item("closer"), item("lite")]), fit()),
    boundary("items-apart", given(leaves=(), items=[item("closer"), item("lite")]), fit()),
    boundary("items-on-leaf", given(items=[item("closer", x=1500.0, face="frame")]), fit()),
    boundary("items-on-leaf", given(items=[item("closer", y=3000.0)], lf=leaf(height_mm=None)), fit()),
    # Perhaps the leaf reaches to 2193.6.
    boundary("items-on-leaf", given(lf=HANGS, items=[item("closer", y=2193.6 + 50.7 - 50.0)]), fit()),
    speaks(
        "items-on-leaf",
        given(lf=HANGS, items=[item("exit-device", y=2193.6 + 51.0 - 50.0)]),
        fit(),
        off_mm=51.0,
        about="exit device",
    ),
    speaks("items-on-leaf", given(items=[item(None, x=1500.0)]), fit(), about="item"),
    # What is asked before anything is drilled, ordered or issued.
    unknown(
        "known-before-drill",
        given(opening(rating=None), leaf(width_mm=None, height_mm=None, thickness_mm=None, material=None)),
        fit(),
        "leaf.width_mm",
        "leaf.height_mm",
        "leaf.thickness_mm",
        "leaf.material",
        "opening.rating",
    ),
    unknown(
        "known-before-drill",
        given(lk=lock(backset_mm=None, cylinder_height_mm=None)),
        fit(),
        "existing_item.backset_mm",
        "existing_item.cylinder_height_mm",
    ),
    boundary("known-before-drill", given(items=[item("closer", x=None, disposition="remove")]), fit()),
    boundary("known-before-drill", given(items=[item("closer", x=None, leaf="inactive")]), fit()),
    boundary("known-before-drill", given(LIFT, lk=lock("reader", backset_mm=None), leaves=()), fit()),
    unknown(
        "known-before-drill",
        given(items=[item("pull", face="key"), item("closer", x=None)]),
        fit(),
        "existing_item.x_mm",
    ),
    unknown("known-before-issue", given(opening(stair=None, hand=None)), fit(), "opening.stair", "opening.hand"),
    *(
        boundary("known-before-issue", given(opening(form=form, stair=None, hand=None)), fit())
        for form in ("cabinet", "lift", "turnstile")
    ),
    unknown("known-before-order", given(opening(form=None, exposure=None)), fit(), "opening.form", "opening.exposure"),
    unknown("known-before-order", given(leaves=()), fit(), "leaf.position"),
    unknown("known-before-order", given(lk="none"), fit(), "existing_item.lock_form"),
    unknown("known-before-order", given(lk=lock(lock_form=None)), fit(), "existing_item.lock_form"),
    unknown(
        "known-before-order",
        given(lk=lock(cam_form=None), items=[lock("rim", disposition="remove")]),
        fit(),
        "existing_item.cam_form",
    ),
    boundary("leaf-count", given(LIFT, lk=lock("reader"), leaves=()), fit()),
    boundary("leaf-count", given(opening(form=None), leaves=()), fit()),
    # Off the cylinder's hole, 53.975 to 85.725 and 984.125 to 1015.875: a lock that has no case in the leaf.
    *(
        row
        for facts in (
            {"x": 85.725 + 50.0, "y": 1000.0},
            {"x": 53.975 - 10.0, "y": 1000.0, "w": 20.0},
            {"x": 69.85, "y": 1015.875 + 50.0},
            {"x": 69.85, "y": 984.125 - 50.0},
        )
        for row in (
            boundary("lite-clear-of-lock", given(lk=lock("rim"), items=[item("lite", **facts)]), fit()),
            speaks(
                "lite-clear-of-lock",
                given(lk=lock("rim"), items=[item("lite", **{**facts, **nearer(facts, 7.0)})]),
                fit(),
                overlap_mm=7.0,
                words=("the lock's cylinder from",),
            ),
        )
    ),
    # Off the case alone, 0 to 105 and 894.45 to 1044.45.
    *(
        speaks(
            "lite-clear-of-lock",
            given(items=[item("lite", **facts)]),
            fit(),
            overlap_mm=7.0,
            words=("the lock's case from 0 mm to 105 mm and from 894.5 mm to 1044.5 mm",),
        )
        for facts in (
            {"x": 155.0 - 7.0, "y": 930.0},
            {"x": 20.0, "y": 894.45 - 50.0 + 7.0, "w": 40.0},
            {"x": 20.0, "y": 1044.45 + 50.0 - 7.0, "w": 40.0},
        )
    ),
    *(
        boundary("lite-clear-of-lock", given(facts, lf, lk, items=[item("lite", 110.0, 1000.0)], leaves=leaves), fit())
        for facts, lf, lk, leaves in (
            (LIFT, leaf(), lock("reader"), None),
            (None, GLASS, None, None),
            (None, None, "none", None),
            (None, None, None, ()),
            (None, None, lock(backset_mm=None, case_depth_mm=None), None),
            (None, None, lock(cylinder_height_mm=None), None),
            (None, None, lock("rim", backset_mm=None), None),
        )
    ),
    *(
        boundary("lite-clear-of-lock", given(lk=lock(**{name: None}), items=[item("lite", 155.0 - 7.0, 910.0)]), fit())
        for name in ("case_above_mm", "case_height_mm", "case_depth_mm")
    ),
    speaks(
        "lock-converted",
        given(lk=lock(disposition="remove")),
        fit(),
        locks=0,
        words=("The only lock of the leaf of the form mortise is said",),
    ),
    speaks(
        "lock-converted",
        given(lk=lock(lock_form=None, disposition="remove")),
        fit(),
        words=("The only lock of the leaf is said",),
    ),
    boundary("lock-converted", given(LIFT, lk=lock(disposition="remove")), fit()),
    # At the very edges of its leaf a lock stands outside; of a leaf that hangs nobody knows where, as far as it may.
    boundary("lock-within-leaf", given(lf=leaf(width_mm=69.85)), fit(), says=1, width_mm=69.85),
    boundary("lock-within-leaf", given(lk=lock(cylinder_height_mm=10.0)), fit(), says=1, low_mm=10.0, high_mm=2143.6),
    boundary("lock-within-leaf", given(lk=lock(cylinder_height_mm=10.5)), fit()),
    *(
        boundary("lock-within-leaf", given(lf=HANGS, lk=lock(cylinder_height_mm=y)), fit(), says=says)
        for y, says in ((0.0, 1), (0.5, 0), (2193.5, 0), (2193.6, 1))
    ),
    speaks("lock-within-leaf", given(lf=HANGS, lk=lock(cylinder_height_mm=2200.0)), fit(), low_mm=0.0, high_mm=2193.6),
    speaks(
        "moved-item",
        given(items=[item(None, disposition="move"), item("exit-device", disposition="move")]),
        fit(),
        items=2,
        words=("exit device, item",),
    ),
    # What touches stands beside it; what carries a thing is named in either order; and each pair is looked at.
    boundary("one-place", given(items=[item("closer"), item("viewer", x=560.0, w=20.0, h=20.0)]), fit()),
    boundary("one-place", given(items=[item("closer"), item("viewer", y=1560.0, w=20.0, h=20.0)]), fit()),
    boundary("one-place", given(items=[item("closer"), item("viewer", x=700.0, w=20.0, h=20.0)]), fit()),
    boundary("one-place", given(items=[item("closer"), item("viewer", y=1700.0, w=20.0, h=20.0)]), fit()),
    # A strip 0.8 wide that lies on a closer by three quarters of itself.
    boundary("one-place", given(items=[item("closer"), item("viewer", x=550.2, w=0.8, h=20.0)]), fit()),
    speaks("one-place", given(items=[item("closer"), item("viewer", x=549.8, w=0.8, h=20.0)]), fit(), share=0.75),
    speaks("one-place", given(items=[item("closer"), item("viewer", y=1549.8, w=20.0, h=0.8)]), fit(), share=0.75),
    boundary("one-place", given(items=[item("lever"), item("trim")]), fit()),
    boundary("one-place", given(items=[item("trim"), item("lever")]), fit()),
    speaks(
        "one-place",
        given(items=[item("lever"), item("trim"), item("closer")]),
        fit(),
        says=2,
        about="lever and closer",
        words=("450 mm to 550 mm off the lock edge and 1450 mm to 1550 mm above the floor",),
    ),
    boundary("one-place", given(LIFT, leaf(), lock("reader"), items=[item("closer"), item("lite")]), fit()),
    boundary("one-place", given(leaves=(), items=[item("closer"), item("lite")]), fit()),
    # A footprint that ends just where the case begins is held against it; one beyond is another device's.
    boundary("one-place", given(lk=lock("rim"), items=[bar(20.0, y=884.45)]), fit(), says=1, off_mm=150.0),
    boundary("one-place", given(lk=lock("rim"), items=[bar(20.0, y=1054.45)]), fit(), says=1, off_mm=150.0),
    boundary("one-place", given(lk=lock("rim"), items=[bar(20.0, y=884.0)]), fit()),
    boundary("one-place", given(lk=lock("rim"), items=[bar(20.0, y=1055.0)]), fit()),
    speaks("one-place", given(lk=lock("rim"), items=[bar(20.0, y=400.0), bar(80.0)]), fit(), off_mm=65.55),
    *(
        boundary("one-place", given(lk=lock("rim", **{name: None}), items=[bar(80.0)]), fit())
        for name in ("cylinder_height_mm", "case_above_mm", "case_height_mm")
    ),
    boundary("one-place", given(lk="none", items=[bar(80.0)]), fit()),
    boundary("one-place", given(lk=lock("rim"), items=[item("kick-plate", 430.0, 1000.0, 800.0, 80.0)]), fit()),
    # Each number that cannot be is named, with where it stands and what could be.
    speaks(
        "fact-in-range", given(lf=leaf(thickness_mm=-1.0)), fit(), words=("Leaf thickness (single) is -1; what can be",)
    ),
    speaks("fact-in-range", given(lf=leaf(thickness_mm=float("nan"), height_mm=-1.0)), fit(), says=2),
]


def _said(here, made):
    return judge(rule_named("fact-in-range"), here, made, settings=here.settings)


def test_a_number_that_cannot_be_true_is_named_with_its_leaf():
    pair = given(PAIR, leaves=(ACTIVE, leaf(position="inactive", thickness_mm=-1.0)))
    (negative,) = _said(pair, fit())
    assert "(inactive) is -1" in negative.message
    (alone,) = _said(given(lf=leaf(thickness_mm=-1.0, position=None)), fit())
    assert "(leaf) is -1" in alone.message


def test_what_is_no_number_is_called_so():
    (found,) = _said(given(lf=leaf(thickness_mm=float("nan"))), fit())
    assert "is no number" in found.message
    assert "lies" not in found.message


@pytest.mark.parametrize("row", ROWS, ids=str)
def test_rule(row):
    run(row)
