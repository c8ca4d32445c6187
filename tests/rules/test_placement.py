"""Rules of placement: the usual plate covers x 30 to 110, y 1010 to 1170 on the inside face."""

from dataclasses import replace

import pytest

from hwsched.rules import judge, rule_named
from hwsched.values import Settings
from tests.rules.rows import boundary, passes, run, speaks, unknown
from tests.rules.scenario import catalogue, fit, given, item, leaf, lock, opening, place

GAP = 3 / 16 * 25.4  # at least 3/16 in clear to trim or a thumb turn (common practice)


def below(kind, gap, w=60.0):
    """Something under the plate, its top so far below the plate's lower edge."""
    return item(kind, 70.0, 1010.0 - gap - 20.0, w, 40.0)


def around(rule, kind, clearance, **speaking):
    """The three rows that each rule on clearances wants."""
    return [
        passes(rule, given(items=[below(kind, clearance + 30)]), fit()),
        passes(rule, given(items=[item(kind, 70.0, 1080.0, face="key")]), fit()),
        speaks(rule, given(items=[below(kind, clearance - 0.5)]), fit(), severity="error", short_mm=0.5, **speaking),
        speaks(rule, given(items=[item(kind, 70.0, 1080.0, 40.0, 40.0)]), fit()),
        boundary(rule, given(items=[below(kind, clearance)]), fit()),
        unknown(rule, given(items=[item(kind, x=None)]), fit(), "existing_item.x_mm"),
        passes(rule, given(items=[item(kind, 70.0, 1080.0, disposition="remove")]), fit()),
    ]


def turn_beside(off, wide, high):
    """A thumb turn beside the plate, its middle so far from it, 3/16 in besides."""
    return item("thumb-turn", 110.0 + GAP + off, 1080.0, wide, high)


def key_pull(x, height=50.0, **facts):
    return item("pull", x, 1060.0, 20.0, height, **{"face": "key", **facts})


def euro_beside(x, number="EURO"):
    """A unit beside the lock."""
    return fit(lock_number=number, placement=place(x, 920.0))


NARROW_PLATE = lock("euro-profile", x_mm=69.85, y_mm=1000.0, width_mm=30.0, height_mm=200.0)
FIXINGS = ("existing_item.bolt_inset_mm",)


def at_hole(x, y):
    return fit(placement=place(hole_x_mm=x, hole_y_mm=y))


IN_INCHES = catalogue(UNIT={"plate_width_mm": 76.2, "plate_height_mm": 152.4})
"""The unit is made in inches: what the survey has in millimetres carries half of its last digit."""
NEAR = item("trim", 70.0, 985.6, 60.0, 40.0)
"""Its top at 1005.6 is 4.4 under the plate, 0.3625 less than 3/16 in; heights 1000 and 40 were read to a millimetre."""


def beside(row, aside, *needs, left=-40.0, **expected):
    """A row of a reader at a lift, its unit's plate of 80 mm on the wall behind it."""
    at = given(opening(form="lift", reader_aside_mm=aside), lk=lock("reader"), leaves=())
    return row("reader-beside-entrance", at, fit(placement=place(left, face="wall")), *needs, **expected)


ROWS = [
    speaks("trim-clear", given(items=[NEAR], cat=IN_INCHES), fit(), severity="note", off_mm=0.3625, rounding_mm=0.5),
    speaks("trim-clear", given(items=[NEAR]), fit(), severity="error", short_mm=0.3625),
    # 0.6625 is more than half a millimetre; and a cylinder at 39 3/8 in, a trim 1 9/16 in high, are what they are.
    speaks(
        "trim-clear",
        given(items=[item("trim", 70.0, 985.9, 60.0, 40.0)], cat=IN_INCHES),
        fit(),
        severity="error",
        short_mm=0.6625,
    ),
    speaks(
        "trim-clear",
        given(lk=lock(cylinder_height_mm=1000.125), items=[item("trim", 70.0, 985.6, 60.0, 39.6875)], cat=IN_INCHES),
        fit(),
        severity="error",
        short_mm=0.20625,
    ),
    speaks(
        "plate-on-stile",
        given(lf=leaf(construction="narrow-stile", stile_mm=110.0), cat=IN_INCHES),
        fit(placement=place(30.3)),
        severity="note",
        off_mm=0.3,
    ),
    speaks(
        "plate-on-stile",
        given(lf=leaf(construction="narrow-stile", stile_mm=110.0), cat=IN_INCHES),
        fit(placement=place(30.6)),
        severity="error",
        short_mm=0.6,
    ),
    speaks(
        "frame-stop-clear",
        given(opening(hand="LHR", frame_stop_mm=27.0), cat=IN_INCHES),
        fit(),
        severity="note",
        off_mm=0.175,
    ),
    speaks(
        "frame-stop-clear",
        given(opening(hand="LHR", frame_stop_mm=27.8), cat=IN_INCHES),
        fit(),
        severity="error",
        short_mm=0.975,
    ),
    # By the lock edge the backset decides: 2 3/4 in is exact, 70 mm is not.
    speaks("plate-within-leaf", given(cat=IN_INCHES), fit(placement=place(2.9)), severity="error", short_mm=0.275),
    speaks(
        "plate-within-leaf",
        given(lk=lock(backset_mm=70.0), cat=IN_INCHES),
        fit(placement=place(2.9)),
        severity="note",
        off_mm=0.275,
    ),
    # The unit is 80 by 160, 1/8 in from each edge of a leaf from 10 to 10 + 2133.6 above the floor and 914.4 wide.
    boundary("plate-within-leaf", given(), fit(placement=place(914.4 - 80.0 - 3.175))),
    speaks("plate-within-leaf", given(), fit(placement=place(832.4)), gap_mm=2.0, short_mm=1.175, about="hinge edge"),
    boundary("plate-within-leaf", given(), fit(placement=place(y=13.175))),
    speaks("plate-within-leaf", given(), fit(placement=place(y=12.0)), short_mm=1.175, about="leaf's bottom"),
    boundary("plate-within-leaf", given(), fit(placement=place(y=2143.6 - 160.0 - 3.175))),
    speaks("plate-within-leaf", given(), fit(placement=place(y=1981.6)), short_mm=1.175, about="leaf's top"),
    *around("trim-clear", "trim", GAP),
    *around("thumb-turn-clear", "thumb-turn", GAP),
    # A turn alone, 20 x 50, sweeps 25 to each side; one of 12 x 30 has fingers in 1 1/2 in; a plate of 40 leaves both
    # room; of 20 x 200 the turn is 2 in at the most (all from memory). The plate's side stands at 110.
    boundary("thumb-turn-clear", given(items=[turn_beside(25.0, 20.0, 50.0)]), fit()),
    speaks("thumb-turn-clear", given(items=[turn_beside(24.5, 20.0, 50.0)]), fit(), short_mm=0.5),
    boundary("thumb-turn-clear", given(items=[turn_beside(19.05, 12.0, 30.0)]), fit()),
    speaks("thumb-turn-clear", given(items=[turn_beside(18.05, 12.0, 30.0)]), fit(), short_mm=1.0),
    boundary("thumb-turn-clear", given(items=[turn_beside(20.0, 40.0, 60.0)]), fit()),
    boundary("thumb-turn-clear", given(items=[turn_beside(25.4, 20.0, 200.0)]), fit()),
    speaks("thumb-turn-clear", given(items=[turn_beside(25.0, 20.0, 200.0)]), fit(), short_mm=0.4),
    # Over it the footprint counts as before: 3/16 in.
    boundary("thumb-turn-clear", given(items=[item("thumb-turn", 70.0, 985.0 - GAP, 20.0, 50.0)]), fit()),
    boundary("thumb-turn-clear", given(items=[item("thumb-turn", 70.0, 995.0 - GAP, 12.0, 30.0)]), fit()),
    # One that lies across stands up as it is turned.
    speaks("thumb-turn-clear", given(items=[item("thumb-turn", 70.0, 995.0 - GAP, 32.0, 12.0)]), fit(), short_mm=1.0),
    # A euro cylinder's own knob stands on its axis at 69.85, 1000 in a plate of 30 x 200: 19.05 to the side.
    boundary("thumb-turn-clear", given(lk=NARROW_PLATE), euro_beside(69.85 + 19.05 + GAP)),
    speaks("thumb-turn-clear", given(lk=NARROW_PLATE), euro_beside(69.85 + 18.05 + GAP), short_mm=1.0),
    boundary("thumb-turn-clear", given(lk=replace(NARROW_PLATE, thumb_turn=False)), euro_beside(88.0, "HALF")),
    speaks("thumb-turn-clear", given(lk=replace(NARROW_PLATE, thumb_turn=False)), euro_beside(88.0)),
    # A pull on the key face is bolted 15 from its ends, at 1050 and 1070 and x 70; a socket is 3/4 in, from memory.
    passes("nut-room", given(items=[key_pull(300.0)]), fit()),
    speaks("nut-room", given(items=[key_pull(70.0)]), fit(), severity="error", words=("nut of the pull's bolt",)),
    boundary("nut-room", given(items=[key_pull(110.0 + 9.525)]), fit()),
    speaks("nut-room", given(items=[key_pull(119.0)]), fit(), short_mm=0.525),
    boundary("nut-room", given(items=[key_pull(70.0, bolt_inset_mm=0.0)]), fit()),
    boundary("nut-room", given(items=[key_pull(70.0, face="inside")]), fit()),
    boundary("nut-room", given(items=[key_pull(70.0, face="both")]), fit()),
    boundary("nut-room", given(items=[key_pull(70.0, disposition="remove")]), fit()),
    unknown("nut-room", given(items=[key_pull(70.0, height=20.0, bolt_inset_mm=None)]), fit(), *FIXINGS),
    boundary("nut-room", given(items=[key_pull(300.0, bolt_inset_mm=None)]), fit()),
    # Bolted to a pull or under a push plate on this face, it has no nuts here.
    boundary("nut-room", given(items=[key_pull(119.0), item("push-plate", 140.0, 1060.0, 60.0, 200.0)]), fit()),
    speaks("nut-room", given(items=[key_pull(119.0), item("push-plate", 140.0, 1060.0, 60.0, 25.0)]), fit()),
    # A lever on the key face alone is bolted above and below its spindle.
    speaks(
        "nut-room",
        given(items=[item("lever", 115.0, 1100.0, 20.0, 70.0, face="key", bolt_inset_mm=10.0)]),
        fit(),
        words=("nut of the lever's bolt",),
    ),
    *around("exit-device-clear", "exit-device", 12.7),
    *around("closer-clear", "closer", 25.4),
    *around("glazing-clear", "lite", 12.7),
    *around("label-clear", "label", 3.175),
    *around("item-clear", "kick-plate", 3.175),
    *around("lever-clear", "lever", GAP),
    # A lever above the plate sweeps down by its width times sin 50 degrees: 60 x 0.766 = 45.96.
    speaks("lever-clear", given(items=[item("lever", 70.0, 1170 + GAP + 40.0, 60.0, 20.0)]), fit(), needed_mm=GAP),
    boundary("lever-clear", given(items=[item("lever", 70.0, 1170 + GAP + 45.963 + 10.0, 60.0, 20.0)]), fit()),
    speaks("lever-clear", given(items=[item("lever", 70.0, 1170 + GAP + 55.763, 60.0, 20.0)]), fit(), short_mm=0.2),
    # On which face a lever or a pull stands nobody told: near enough to matter it is asked, far off it is not.
    unknown("lever-clear", given(items=[item("lever", 70.0, 1090.0, face=None)]), fit(), "existing_item.face"),
    boundary("lever-clear", given(items=[item("lever", 600.0, 1090.0, face=None)]), fit()),
    # LHR swings toward the key side: the inside face closes against the stop (SDI 111 chart).
    passes("frame-stop-clear", given(opening(hand="LHR")), fit()),
    passes("frame-stop-clear", given(opening(hand="LH", frame_stop_mm=60.0)), fit()),
    speaks("frame-stop-clear", given(opening(hand="RHR", frame_stop_mm=30.0)), fit(), short_mm=3.175, severity="error"),
    boundary("frame-stop-clear", given(opening(hand="LHR", frame_stop_mm=30.0 - 3.175)), fit()),
    # A leaf of 600 with a unit 32 proud on 44.45, its pins 6.35 off (from memory): its front corner turns about them at
    # sqrt(570^2 + 82.8^2) and is past the stop 50.8 before them: 3.738 out of where it stood (geometry).
    speaks(
        "frame-stop-clear",
        given(opening(hand="LHR", frame_stop_mm=30.0 - 3.175), leaf(width_mm=600.0)),
        fit(),
        needed_mm=3.738,
        short_mm=0.563,
    ),
    boundary("frame-stop-clear", given(opening(hand="LHR", frame_stop_mm=30.0 - 3.738), leaf(width_mm=600.0)), fit()),
    # At its hinge edge and its top nothing comes nearer.
    boundary(
        "frame-stop-clear",
        given(opening(hand="LHR", frame_stop_mm=30.0 - 3.175, form="pair"), leaf(width_mm=600.0)),
        fit(),
    ),
    boundary("frame-stop-clear", given(opening(hand="LHR", frame_stop_mm=30.0, form="pair")), fit()),
    boundary("frame-stop-clear", given(opening(hand=None, frame_stop_mm=0.0)), fit()),
    unknown("frame-stop-clear", given(opening(hand=None)), fit(), "opening.hand"),
    unknown("frame-stop-clear", given(opening(hand="LHR", frame_stop_mm=None)), fit(), "opening.frame_stop_mm"),
    passes("plate-within-leaf", given(), fit()),
    speaks("plate-within-leaf", given(), fit(placement=place(2.0)), short_mm=1.175, severity="error"),
    speaks("plate-within-leaf", given(lf=leaf(height_mm=1150.0)), fit(), short_mm=13.175),
    boundary("plate-within-leaf", given(), fit(placement=place(3.175))),
    unknown("plate-within-leaf", given(lf=leaf(width_mm=None)), fit(), "leaf.width_mm"),
    # Of a leaf whose undercut nobody measured, up to 60: 1150 high it reaches to 1150 or to 1210, a plate to 1170.
    unknown("plate-within-leaf", given(lf=leaf(height_mm=1150.0, undercut_mm=None)), fit(), "leaf.undercut_mm"),
    speaks("plate-within-leaf", given(lf=leaf(height_mm=1110.0, undercut_mm=None)), fit(), short_mm=3.175),
    unknown("plate-within-leaf", given(lf=leaf(undercut_mm=None)), fit(placement=place(y=30.0)), "leaf.undercut_mm"),
    speaks("plate-within-leaf", given(lf=leaf(undercut_mm=None)), fit(placement=place(y=2.0)), short_mm=1.175),
    boundary("plate-within-leaf", given(lf=leaf(undercut_mm=None)), fit(placement=place(y=63.175))),
    # And the stop of 15 hides what is over 1160 - 15, or over 60 more.
    unknown(
        "frame-stop-clear",
        given(opening(hand="LHR", frame_stop_mm=15.0), leaf(height_mm=1160.0, undercut_mm=None)),
        fit(),
        "leaf.undercut_mm",
    ),
    speaks(
        "frame-stop-clear",
        given(opening(hand="LHR", frame_stop_mm=15.0), leaf(height_mm=1120.0, undercut_mm=None)),
        fit(),
        short_mm=8.175,
    ),
    passes("plate-on-stile", given(), fit()),
    passes("plate-on-stile", given(lf=leaf(construction="narrow-stile", stile_mm=120.0)), fit()),
    speaks("plate-on-stile", given(lf=leaf(construction="narrow-stile", stile_mm=100.0)), fit(), short_mm=10.0),
    boundary("plate-on-stile", given(lf=leaf(construction="narrow-stile", stile_mm=110.0)), fit()),
    unknown("plate-on-stile", given(lf=leaf(construction="stile-and-rail")), fit(), "leaf.stile_mm"),
    passes("plate-covers-hole", given(), fit()),
    speaks("plate-covers-hole", given(), fit(placement=place(hole_y_mm=1075.0)), off_mm=5.0, severity="error"),
    boundary("plate-covers-hole", given(), fit(placement=place(hole_y_mm=1070.0))),
    # The window reaches from 30 + 10 to 30 + 70 and from 1010 + 15 to 1010 + 60; a hundredth is none (common practice).
    *(
        row
        for x, y, across, up in ((40, 1050, -1, 0), (100, 1050, 1, 0), (70, 1025, 0, -1), (70, 1070, 0, 1))
        for row in (
            boundary("plate-covers-hole", given(), at_hole(x + 0.00995 * across, y + 0.00995 * up)),
            speaks("plate-covers-hole", given(), at_hole(x + 0.01005 * across, y + 0.01005 * up), severity="error"),
            speaks("plate-covers-hole", given(), at_hole(x + 2 * across, y + 2 * up), off_mm=2.0),
        )
    ),
    boundary(
        "plate-covers-hole",
        given(settings=Settings(length_style="mm", limits={"plate-covers-hole.tolerance_mm": 0.25})),
        at_hole(70, 1070.25),
    ),
    unknown("plate-covers-hole", given(cat=catalogue(UNIT={"window_y1_mm": None})), fit(), "part UNIT.window_x0_mm"),
    passes("unit-on-inside", given(), fit()),
    speaks("unit-on-inside", given(), fit(placement=place(face="key")), severity="error"),
    boundary("unit-on-inside", given(), fit(placement=place(face="edge"))),
    passes("unit-for-glass", given(), fit()),
    speaks("unit-for-glass", given(lf=leaf(material="glass")), fit(), severity="error"),
    boundary("unit-for-glass", given(lf=leaf(material="glass"), cat=catalogue(UNIT={"glass_mount": True})), fit()),
    unknown("unit-for-glass", given(lf=leaf(material=None)), fit(), "leaf.material"),
    passes("unit-for-no-glass", given(), fit()),
    speaks("unit-for-no-glass", given(cat=catalogue(UNIT={"glass_mount": True, "screws": 0})), fit(), severity="error"),
    boundary("unit-for-no-glass", given(cat=catalogue(UNIT={"glass_mount": True})), fit()),
    passes("unit-place-known", given(), fit()),
    speaks("unit-place-known", given(), fit(), says=0),
    unknown("unit-place-known", given(lk=lock(backset_mm=None)), fit(), "existing_item.backset_mm"),
    unknown("unit-place-known", given(lk=lock(case_above_mm=None)), fit(), "existing_item.case_above_mm"),
    unknown(
        "unit-place-known",
        given(opening(form="cabinet"), lf=leaf(undercut_mm=None), lk=lock("cabinet")),
        fit(),
        "leaf.undercut_mm",
    ),
    unknown(
        "unit-place-known",
        given(opening(form="lift"), lk=lock("reader", cylinder_height_mm=None), leaves=()),
        fit(),
        "existing_item.cylinder_height_mm",
    ),
    passes("edge-unit-leaf", given(), fit(unit="EDGE")),
    speaks("edge-unit-leaf", given(lf=leaf(material="hollow-metal")), fit(unit="EDGE"), severity="error"),
    speaks("edge-unit-leaf", given(lk=lock("rim")), fit(unit="EDGE")),
    boundary("edge-unit-leaf", given(lf=leaf(material="aluminium")), fit(unit="EDGE")),
    unknown("edge-unit-leaf", given(lf=leaf(material=None)), fit(unit="EDGE"), "leaf.material"),
    passes("unit-weather", given(opening(exposure="exterior")), fit()),
    speaks("unit-weather", given(opening(form="gate", exposure="exterior")), fit(), severity="error"),
    boundary(
        "unit-weather",
        given(opening(form="gate", exposure="exterior"), cat=catalogue(UNIT={"exposure": "exterior"})),
        fit(),
    ),
    unknown("unit-weather", given(opening(form="gate", exposure=None)), fit(), "opening.exposure"),
]

IN_EDGE = place(13.5, 1063.5, face="edge", width_mm=17.4625, height_mm=349.25)
GLASS = leaf(material="glass", thickness_mm=12.7)
WIDE = Settings(length_style="mm", limits={"plate-on-stile.stile_margin_mm": 2.0})
# Of what the rules leave out, of the two ends of what a rounding leaves open, and of what nobody told.
ROWS += [
    speaks("edge-unit-leaf", given(opening(form="lift"), leaf(), lock("reader")), fit(unit="EDGE"), about="EDGE"),
    speaks("edge-unit-leaf", given(leaves=()), fit(unit="EDGE"), about="EDGE"),
    *(
        speaks("edge-unit-leaf", given(opening(form=form)), fit(unit="EDGE"), about="EDGE")
        for form in ("cabinet", "gate")
    ),
    boundary("frame-stop-clear", given(opening(hand=None)), fit(placement=IN_EDGE)),
    unknown("frame-stop-clear", given(opening(hand=None)), fit(placement=None), "opening.hand"),
    passes("frame-stop-clear", given(opening(hand="LH", frame_stop_mm=None)), fit(placement=None)),
    speaks(
        "frame-stop-clear",
        given(opening(hand="LH", frame_stop_mm=30.0)),
        fit(placement=place(face="key")),
        short_mm=3.175,
    ),
    # A stop of 27.3 mm, or 27.25 to 27.35: 0.475 is lacking, and 0.05 is open; at the top 28 mm may be 27.5.
    speaks("frame-stop-clear", given(opening(hand="LHR", frame_stop_mm=27.3), cat=IN_INCHES), fit(), short_mm=0.475),
    *(
        boundary(
            "frame-stop-clear",
            given(opening(hand="LHR", frame_stop_mm=28.0, form="pair"), cat=IN_INCHES),
            fit(placement=place(x=400.0, y=2143.6 - 28.0 - 152.4 - 7.6 - 3.175 + over)),
            says=says,
            severity=severity,
        )
        for over, says, severity in ((0.04, 0, ""), (0.5, 1, "note"), (0.54, 1, "note"), (0.6, 1, "error"))
    ),
    boundary("plate-covers-hole", given(), fit(unit="EDGE", placement=place(hole_y_mm=1200.0))),
    boundary("plate-covers-hole", given(), fit(placement=place(hole_y_mm=1200.0, face="edge"))),
    boundary("plate-on-stile", given(lf=leaf(construction="narrow-stile", stile_mm=100.0)), fit(placement=IN_EDGE)),
    boundary("plate-on-stile", given(lf=leaf(construction="narrow-stile", stile_mm=100.0)), fit(placement=None)),
    # A stile of 110 mm may be 110.5; a plate to 110 needs so much, and 2 more where a project wants a margin.
    *(
        boundary(
            "plate-on-stile",
            given(lf=leaf(construction="narrow-stile", stile_mm=110.0), cat=IN_INCHES),
            fit(placement=place(30.0 + over)),
            says=1,
            severity=severity,
        )
        for over, severity in ((0.5, "note"), (0.54, "note"), (0.56, "error"))
    ),
    speaks(
        "plate-on-stile",
        given(lf=leaf(construction="narrow-stile", stile_mm=111.0), settings=WIDE),
        fit(),
        needed_mm=112.0,
        short_mm=1.0,
    ),
    # By the hinge edge a width of 915 mm is half of one open, by the top a height in millimetres.
    *(
        boundary(
            "plate-within-leaf",
            given(lf=leaf(width_mm=915.0), cat=IN_INCHES),
            fit(placement=place(915.0 - 80.0 - 3.175 + over)),
            says=says,
            severity=severity,
        )
        for over, says, severity in ((0.04, 0, ""), (0.5, 1, "note"), (0.54, 1, "note"), (0.56, 1, "error"))
    ),
    *(
        boundary(
            "plate-within-leaf",
            given(lf=leaf(height_mm=2134.0), cat=IN_INCHES),
            fit(placement=place(y=2144.0 - 160.0 - 3.175 + over)),
            says=1,
            severity=severity,
        )
        for over, severity in ((0.5, "note"), (0.56, "error"))
    ),
    *(
        boundary(
            "plate-within-leaf", given(cat=IN_INCHES), fit(placement=place(y=13.175 - over)), says=1, severity=severity
        )
        for over, severity in ((0.5, "note"), (0.56, "error"))
    ),
    boundary("plate-within-leaf", given(lf=leaf(width_mm=None)), fit(placement=IN_EDGE)),
    # Two edges at a corner are two findings.
    boundary("plate-within-leaf", given(), fit(placement=place(2.0, 12.0)), says=2),
    unknown(
        "unit-for-glass", given(lf=GLASS, cat=catalogue(UNIT={"glass_mount": None})), fit(), "part UNIT.glass_mount"
    ),
    unknown(
        "unit-weather",
        given(opening(form="gate", exposure="exterior"), cat=catalogue(UNIT={"exposure": None})),
        fit(),
        "part UNIT.exposure",
    ),
    # What a place follows from, for each form.
    *(
        unknown("unit-place-known", given(lf=leaf(**{name: None})), fit(), f"leaf.{name}")
        for name in ("width_mm", "height_mm", "thickness_mm", "material")
    ),
    unknown("unit-place-known", given(lk="none"), fit(), "existing_item.lock_form"),
    unknown(
        "unit-place-known",
        given(lk=lock(cylinder_height_mm=None, case_width_mm=None)),
        fit(),
        "existing_item.cylinder_height_mm",
        "existing_item.case_width_mm",
    ),
    boundary("unit-place-known", given(lk=lock("rim", case_above_mm=None, case_width_mm=None)), fit()),
    unknown(
        "unit-place-known",
        given(lf=GLASS, lk=lock(case_above_mm=None, x_mm=60.0, y_mm=990.0, width_mm=100.0)),
        fit(),
        "existing_item.height_mm",
    ),
    boundary("unit-place-known", given(lf=GLASS, lk=lock("rim")), fit()),
    boundary("unit-place-known", given(lk=lock(backset_mm=None)), fit(without=("unit",))),
    boundary("unit-place-known", given(opening(form="lift"), lk=lock("reader"), leaves=()), fit()),
    # Plate of 80 mm over the reader: 40 mm to each side of its centre; nothing of it in the entrance (common practice).
    passes("reader-beside-entrance", given(), fit()),
    beside(passes, 150.0),
    beside(passes, -150.0),
    beside(speaks, 39.9, severity="error", aside_mm=39.9, taken_mm=40.0),
    beside(speaks, -20.0, severity="error", aside_mm=-20.0, taken_mm=40.0),
    beside(boundary, 40.0),
    beside(boundary, -40.0),
    # The plate stands farther to one side than to the other.
    beside(speaks, 50.0, left=-60.0, taken_mm=60.0),
    beside(unknown, None, "opening.reader_aside_mm"),
]


# unit-place-known never says more than what is missing.
ROWS = [row for row in ROWS if not (row.kind == "speaks" and row.says == 0)]


@pytest.mark.parametrize("row", ROWS, ids=str)
def test_rule(row):
    run(row)


def test_a_changed_limit_moves_the_boundary():
    looser = Settings(length_style="mm", limits={"trim-clear.clearance_mm": 2.0})
    touching = [below("trim", 2.0)]
    run(passes("trim-clear", given(items=touching, settings=looser), fit()))
    run(speaks("trim-clear", given(items=touching), fit(), short_mm=GAP - 2.0))


def test_a_window_past_the_plate_belongs_to_the_housing():
    tail = catalogue(UNIT={"window_y0_mm": -30.0})
    under = [below("thumb-turn", 20.0)]
    run(passes("thumb-turn-clear", given(items=under), fit()))
    run(speaks("thumb-turn-clear", given(items=under, cat=tail), fit(), gap_mm=-10.0))


@pytest.mark.parametrize(("wide", "words"), [(914.4, ""), (600.0, " as the leaf swings on its hinges")])
def test_it_is_said_where_the_swing_asks_for_more_than_stands_there(wide, words):
    """As the rows have it: 3.175 for a usual leaf, 3.738 for one of 600."""
    held = given(opening(hand="LHR", frame_stop_mm=29.0), leaf(width_mm=wide))
    (said,) = judge(rule_named("frame-stop-clear"), held, fit(), settings=held.settings)
    assert f"is needed{words}, short by" in said.message
