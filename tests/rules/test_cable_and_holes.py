"""Rules of the cable and of holes."""

from dataclasses import replace

import pytest

from hwsched.rules import rule_named
from hwsched.values import CablePath, Settings
from tests.rules.rows import boundary, passes, run, speaks, unknown
from tests.rules.scenario import cable, catalogue, fit, fp, given, hole, item, leaf, lock, opening, part, place

GLASS = leaf(material="glass", thickness_mm=12.7)
NO_LEAF = {"leaves": (), "lk": lock("reader")}
LIFT = opening(form="lift")
# The channel of an offset unit: square for 3/8 in, then down at about 10 degrees to the face (common practice).
CHANNEL = hole(9.525, "channel", y_mm=1063.5, up_deg=-80.0, from_depth_mm=9.525, depth_mm=20.0)
EDGE = fit(unit="EDGE", placement=place(13.5, 1063.5, face="edge", width_mm=17.4625, height_mm=349.25))
BARE = fit(holes=(hole(tool="twist-drill"),), without=("fastener",))
SAWN = fit(holes=(hole(tool="hole-saw"),), without=("fastener",))
NO_RADIUS = catalogue(CYL={"bend_radius_mm": None})
HOLLOW = leaf(core="honeycomb")
EIGHTEEN = catalogue(DRILL={"diameter_mm": 9.525, "reach_mm": 457.2})
METRIC_EDGE = catalogue(EDGE={"pocket_width_mm": 17.5})


def closer(low, proud, **facts):
    """One that stands so far out of its face, its lower edge so high; 40 of it stand over the usual hole and screws."""
    return item("closer", 70.0, low + 20.0, 200.0, 40.0, projection_mm=proud, **facts)


def guard(middle, kind="other", **facts):
    """Something 100 high on the lock edge, its middle so high."""
    return item(kind, 0.0, middle, 20.0, 100.0, face="edge", **facts)


def holed(**facts):
    return replace(BARE, holes=(hole(**facts),))


NO_PINCH = Settings(length_style="mm", limits={"tool-room.pinch_mm": 0.0})
FINGERS = ("A hand that draws the lead out and plugs it in",)


def aside(x0, proud):
    """A closer beside the screws of the plate's lower end, its side toward them so far from the lock edge."""
    return item("closer", x0 + 100.0, 1016.0, 200.0, 40.0, projection_mm=proud)


def drilled(tool, deep):
    """The usual hole made with that, so deep."""
    return replace(BARE, holes=(hole(tool=tool, depth_mm=deep),))


def along(*points):
    return CablePath(points, 200.0, 228.6, 60.0)


def bridged(off, lock_top=1044.45):
    """A unit in the edge so far above a lock, with the hole through the bridge between their pockets."""
    bridge = hole(9.525, "channel", face="lock-edge", name="bridge", depth_mm=off)
    return fit(
        unit="EDGE",
        placement=place(13.5, lock_top + off, face="edge", width_mm=17.4625, height_mm=349.25),
        holes=(bridge,),
    )


def stretch(top):
    """A leaf whose lock edge ends `top` mm above the lock's pocket, bridge and margin left, with nothing below."""
    return leaf(height_mm=1044.45 + 19.05 + top + 50.8 - 10.0)


LONG_SCREW = catalogue(SCREW={"length_mm": 25.4})


def passing(length_mm, size="#6", **unit):
    """A catalogue whose screw passes the leaf and is met by a nut."""
    return catalogue(SCREW={"form": "machine-screw", "length_mm": length_mm, "size": size}, UNIT=unit)


BELOW_TAKEN = item("flush-bolt", 0.0, 500.0, 20.0, 700.0, face="edge")

# From 1100 down at 10 degrees to the face.
DOWN = fit(
    holes=(hole(name="channel", y_mm=1100.0, purpose="channel", depth_mm=60.0, up_deg=-80.0, from_depth_mm=9.5),)
)


def leaning(deg):
    """A hole down into the leaf, 20 deep, its axis so far off the face."""
    return fit(holes=(hole(up_deg=deg - 90.0, depth_mm=20.0),))


POCKET = fit(
    holes=(
        hole(0.0, "pocket", face="lock-edge", x_mm=22.225, y_mm=1255.0, depth_mm=50.0, width_mm=17.0, height_mm=350.0),
    )
)

ROWS = [
    passes("lead-reaches", given(), fit(cable=cable(200.0))),
    speaks("lead-reaches", given(), fit(cable=cable(230.0)), short_mm=1.4, severity="error", about="CYL"),
    boundary("lead-reaches", given(), fit(cable=cable(228.6))),
    # 1 in of lead is left free to plug it in, slack of the unit or what is over.
    speaks("lead-reaches", given(), fit(cable=cable(228.6, slack_mm=20.0)), short_mm=5.4, words=("plug it in",)),
    boundary("lead-reaches", given(), fit(cable=cable(228.6, slack_mm=25.4))),
    boundary("lead-reaches", given(), fit(cable=cable(203.2, slack_mm=0.0))),
    speaks("lead-reaches", given(), fit(cable=cable(203.9, slack_mm=0.0)), short_mm=0.7),
    unknown("lead-reaches", given(cat=catalogue(CYL={"lead_mm": None})), fit(), "part CYL.lead_mm"),
    passes("connectors-mate", given(), fit()),
    passes("connectors-mate", given(), fit(fp("lead-extension", "EXT"))),
    speaks("connectors-mate", given(cat=catalogue(UNIT={"mates_with": "p6"})), fit(), severity="error", about="UNIT"),
    speaks("connectors-mate", given(cat=catalogue(EXT={"connector": "p6"})), fit(fp("lead-extension", "EXT"))),
    boundary(
        "connectors-mate",
        given(cat=catalogue(UNIT={"mates_with": "p6"}, EXT={"connector": "p6"})),
        fit(fp("lead-extension", "EXT")),
    ),
    unknown("connectors-mate", given(cat=catalogue(CYL={"connector": None})), fit(), "part CYL.connector"),
    # Two corners of a quarter turn take r each: a middle stretch of 2 r is the least (radius 10).
    passes("bend-radius", given(), fit(cable=along((0, 0, 0), (50, 0, 0), (50, 30, 0), (90, 30, 0)))),
    speaks(
        "bend-radius",
        given(),
        fit(cable=along((0, 0, 0), (50, 0, 0), (50, 19, 0), (90, 19, 0))),
        tight_bends=2,
        severity="note",
    ),
    boundary("bend-radius", given(), fit(cable=along((0, 0, 0), (50, 0, 0), (50, 20, 0), (90, 20, 0)))),
    speaks(
        "bend-radius",
        given(),
        fit(cable=along((0, 0, 0), (50, 0, 0), (50, 9, 0))),
        tight_bends=1,
        words=("One of the lead's bends has no room",),
    ),
    # The lead's own radius of 12 wants 24 between the corners; of 8 it wants 16.
    speaks(
        "bend-radius",
        given(cat=catalogue(CYL={"bend_radius_mm": 12.0})),
        fit(cable=along((0, 0, 0), (50, 0, 0), (50, 20, 0), (90, 20, 0))),
        radius_mm=12.0,
        severity="note",
    ),
    passes(
        "bend-radius",
        given(cat=catalogue(CYL={"bend_radius_mm": 8.0})),
        fit(cable=along((0, 0, 0), (50, 0, 0), (50, 17, 0), (90, 17, 0))),
    ),
    # Of a lead of which nobody told it, 10 mm (from memory): 20 between the corners.
    boundary(
        "bend-radius",
        given(cat=NO_RADIUS),
        fit(cable=along((0, 0, 0), (50, 0, 0), (50, 20, 0), (90, 20, 0))),
    ),
    speaks(
        "bend-radius",
        given(cat=NO_RADIUS),
        fit(cable=along((0, 0, 0), (50, 0, 0), (50, 19.9, 0), (90, 19.9, 0))),
        radius_mm=10.0,
    ),
    passes("wall-thickness-known", given(), fit()),
    boundary("wall-thickness-known", given(LIFT, lk=lock("reader"), leaves=(leaf(thickness_mm=120.0),)), fit()),
    passes("way-for-lead", given(), fit()),
    speaks("way-for-lead", given(lf=GLASS, lk=lock("bored")), fit(lock_number="BORED", role="lock"), severity="error"),
    boundary("way-for-lead", given(lf=GLASS), fit()),
    passes("no-hole-in-glass", given(), fit()),
    speaks("no-hole-in-glass", given(lf=GLASS), fit(), holes=1, severity="error"),
    boundary("no-hole-in-glass", given(lf=GLASS), fit(holes=(hole(face="frame"),))),
    # Backset 69.85 less half of 1/2 in leaves 63.5; the least wall is 6.35.
    passes("hole-edge-distance", given(), fit()),
    speaks("hole-edge-distance", given(), fit(holes=(hole(x_mm=12.0),)), short_mm=0.7, severity="error"),
    speaks("hole-edge-distance", given(lf=leaf(construction="narrow-stile", stile_mm=80.0)), fit(), short_mm=2.55),
    boundary("hole-edge-distance", given(), fit(holes=(hole(x_mm=12.7),))),
    passes("bore-wall", given(), fit(holes=(CHANNEL,))),
    speaks(
        "bore-wall",
        given(),
        fit(holes=(hole(9.525, "channel", up_deg=-80.0, from_depth_mm=6.0, depth_mm=20.0),)),
        wall_mm=6.0 - 9.525 / 2 * 0.98481,
        severity="error",
    ),
    boundary(
        "bore-wall",
        given(),
        fit(holes=(hole(9.525, "channel", up_deg=-80.0, depth_mm=20.0, from_depth_mm=3.175 + 9.525 / 2 * 0.984808),)),
    ),
    speaks(
        "bore-wall",
        given(),
        fit(holes=(hole(9.525, "channel", up_deg=-80.0, depth_mm=20.0, from_depth_mm=3.1 + 9.525 / 2 * 0.984808),)),
        short_mm=0.075,
    ),
    boundary("bore-wall", given(), fit(holes=(hole(),))),
    passes("bore-enters", given(), fit(holes=(CHANNEL,))),
    speaks(
        "bore-enters",
        given(),
        fit(holes=(hole(9.525, "channel", x_mm=300.0, y_mm=1063.5, up_deg=-80.0, from_depth_mm=9.525, depth_mm=20.0),)),
        severity="error",
    ),
    boundary("bore-enters", given(lk=lock(case_depth_mm=69.85)), fit(holes=(CHANNEL,))),
    passes("hole-clear-of-glass", given(items=[item("lite", 400.0, 1500.0)]), fit()),
    speaks("hole-clear-of-glass", given(items=[item("lite", 69.85, 1030.0 + 6.35 + 10.0 + 50.0)]), fit(), short_mm=2.7),
    boundary("hole-clear-of-glass", given(items=[item("lite", 69.85, 1030.0 + 6.35 + 12.7 + 50.0)]), fit()),
    # Clear of the glass where it begins, a channel of 60 runs 30 mm under it.
    speaks("hole-clear-of-glass", given(items=[item("lite", 69.85, 1020.0, 100.0, 100.0)]), DOWN, severity="error"),
    boundary("hole-clear-of-glass", given(items=[item("lite", 69.85, 970.0, 100.0, 100.0)]), DOWN),
    # The lower bolt of a pull, 50 off the edge at 1115 and 7.9375 thick (from memory), is 3.97 in a pocket of 50.
    speaks("hole-clear", given(items=[item("pull", 50.0, 1200.0, 30.0, 200.0, face="key")]), POCKET, says=2),
    boundary("hole-clear", given(items=[item("pull", 57.14375, 1200.0, 30.0, 200.0, face="key")]), POCKET),
    # A pocket between its bolts, which are at 1065 and 1445.
    boundary("hole-clear", given(items=[item("pull", 50.0, 1255.0, 30.0, 410.0, face="key")]), POCKET),
    # A pocket 50 deep in the edge, up to 1430.
    speaks("hole-clear-of-glass", given(items=[item("lite", 110.0, 1400.0, 100.0, 200.0)]), POCKET, short_mm=2.7),
    boundary("hole-clear-of-glass", given(items=[item("lite", 112.7, 1400.0, 100.0, 200.0)]), POCKET),
    # A usual in-edge unit wants 13 3/4 in of clear edge, 1 3/4 in depth, 11/16 in width (common practice).
    passes("pocket-walls", given(), EDGE),
    speaks("pocket-walls", given(lf=leaf(thickness_mm=35.0)), EDGE, short_mm=0.756, severity="error"),
    # 36 mm may be 36.5: half of the other half millimetre stands on each side.
    speaks("pocket-walls", given(lf=leaf(thickness_mm=36.0)), EDGE, off_mm=0.256, severity="note"),
    speaks("pocket-walls", given(lf=leaf(thickness_mm=36.0), cat=METRIC_EDGE), EDGE, short_mm=0.275),
    speaks("pocket-walls", given(lf=leaf(construction="narrow-stile", stile_mm=50.0)), EDGE, short_mm=0.8),
    boundary("pocket-walls", given(lf=leaf(thickness_mm=17.4625 + 2 * 9.525)), EDGE),
    unknown("pocket-walls", given(lf=leaf(thickness_mm=None)), EDGE, "leaf.thickness_mm"),
    passes("bridge-drilled", given(), bridged(19.05)),
    # 3/8 in begins half of itself below the edge and stays as much before the case's 30 mm: over 150 mm of bridge it
    # leans tan a = (30 - 9.525) / 150, 7.5 degrees in halves, and is 150 / cos 7.5 = 151.294 deep. Of 12 in 153.506
    # stand out, 20.037 square to the edge; the drill asks 4.7625 + 28 cos 7.5 = 32.523.
    speaks(
        "bridge-drilled",
        given(lk=lock(case_depth_mm=30.0)),
        bridged(150.0),
        bridge_mm=150.0,
        short_mm=12.486,
        severity="error",
        words=("The bridge is 150 mm long", "a bit of 304.8 mm", "12.5 mm into the edge"),
    ),
    # Of 18 in 305.906 stand out, 39.93 square to it.
    boundary("bridge-drilled", given(lk=lock(case_depth_mm=30.0), cat=EIGHTEEN), bridged(150.0)),
    # No deeper than the bit is thick, a case is met by none that leans.
    speaks(
        "bridge-drilled",
        given(lk=lock(case_depth_mm=9.0)),
        bridged(19.05),
        bridge_mm=19.05,
        words=("No straight bit comes from the unit's pocket into the lock's, 19.1 mm away",),
    ),
    # A round bore lies deeper than the pocket's end: near it the bit leans into it, 250 mm off no drill stands for it.
    passes("bridge-drilled", given(lk=lock("bored")), bridged(19.05, 1026.9875)),
    speaks("bridge-drilled", given(lk=lock("bored")), bridged(250.0, 1026.9875), bridge_mm=250.0),
    # A tube is hollow between its pockets.
    boundary("bridge-drilled", given(lf=leaf(material="aluminium")), bridged(250.0)),
    boundary("bridge-drilled", given(lk=lock(case_depth_mm=30.0)), replace(bridged(150.0), holes=())),
    # Below the lock it counts from the pocket's upper end: 894.45 is the case's lower.
    speaks(
        "bridge-drilled",
        given(lk=lock(case_depth_mm=30.0)),
        bridged(150.0, 894.45 - 349.25 - 300.0),
        bridge_mm=150.0,
        short_mm=12.486,
    ),
    unknown("bridge-drilled", given(lk=lock(case_depth_mm=None)), bridged(19.05), "existing_item.case_depth_mm"),
    unknown("bridge-drilled", given(lk=lock("bored", backset_mm=None)), bridged(19.05), "existing_item.backset_mm"),
    passes("pocket-length", given(), EDGE),
    speaks("pocket-length", given(lf=stretch(349.0), items=[BELOW_TAKEN]), EDGE, short_mm=0.25, severity="error"),
    boundary("pocket-length", given(lf=stretch(349.25), items=[BELOW_TAKEN]), EDGE),
    unknown("pocket-length", given(lk=lock(case_height_mm=None)), EDGE, "existing_item.case_height_mm"),
    # A bored lock takes no more of the edge than its bore: 1000 + 53.975 / 2 = 1026.9875, 17.4625 lower than the case.
    boundary("pocket-length", given(lf=stretch(349.25 - 17.4625), lk=lock("bored"), items=[BELOW_TAKEN]), EDGE),
    speaks(
        "pocket-length", given(lf=stretch(349.0 - 17.4625), lk=lock("bored"), items=[BELOW_TAKEN]), EDGE, short_mm=0.25
    ),
    unknown("pocket-length", given(lk=lock("bored", cross_bore_mm=None)), EDGE, "existing_item.cross_bore_mm"),
    # #6 x 1 in in a 3/4 in panel comes through.
    passes("hollow-core-holds", given(lf=leaf(core="solid")), fit()),
    # Screws 6 inside the plate's corners: 36 to 104 off the edge, 1016 to 1164 high. A block of 5 in by 18 in about a
    # cylinder at 1000 (specification practice, from memory) reaches to 127 and to 1228.6.
    speaks("hollow-core-holds", given(lf=HOLLOW), fit(), severity="note", words=("but for its lock block",)),
    speaks("hollow-core-holds", given(lf=HOLLOW), fit(placement=place(60.0)), out_mm=7.0, severity="warning"),
    speaks("hollow-core-holds", given(lf=HOLLOW), fit(placement=place(y=1080.0)), out_mm=5.4, severity="warning"),
    speaks("hollow-core-holds", given(lf=HOLLOW), fit(placement=place(y=760.0)), out_mm=5.4, severity="warning"),
    boundary("hollow-core-holds", given(lf=HOLLOW), fit(placement=place(53.0)), says=1, severity="note"),
    boundary("hollow-core-holds", given(lf=leaf(core="foam", material="composite")), fit(), says=1, severity="note"),
    boundary("hollow-core-holds", given(lf=leaf(core="honeycomb", material="hollow-metal")), fit()),
    # A pocket in the edge up to 1063.5 + 349.25, 184.15 past it.
    speaks("hollow-core-holds", given(lf=HOLLOW), EDGE, out_mm=184.15, words=("The unit's pocket reaches",)),
    # What is bolted through holds by both faces.
    boundary("hollow-core-holds", given(lf=HOLLOW, cat=passing(31.75)), fit(placement=place(60.0))),
    passes("screw-length", given(), fit()),
    speaks(
        "screw-length",
        given(lf=leaf(thickness_mm=19.05), cat=LONG_SCREW),
        fit(),
        short_mm=9.525,
        severity="error",
        about="SCREW",
    ),
    boundary("screw-length", given(lf=leaf(thickness_mm=25.4 + 3.175), cat=LONG_SCREW), fit()),
    # Through 44.45 of leaf, met by a sleeve nut of 12.7: 31.75 at least (geometry; the nut from memory).
    speaks("screw-length", given(cat=passing(31.0)), fit(), short_mm=0.75, severity="error"),
    boundary("screw-length", given(cat=passing(31.75)), fit()),
    # A plate of 3 under its head takes so much of it.
    speaks("screw-length", given(cat=passing(31.75, screw_seat_mm=3.0)), fit(), short_mm=3.0, severity="error"),
    # A bolt of another size is none of the unit's.
    boundary("screw-length", given(cat=passing(31.0, size="M8")), fit()),
    unknown("screw-length", given(cat=catalogue(SCREW={"length_mm": None})), fit(), "part SCREW.length_mm"),
]


# The unit's screws stand 6 mm inside the corners of its plate (common practice): at x 36 and 104, y 1016 and 1164; a #6
# is 0.138 in over its thread (ASME B18.6.4, from memory), 1.7526 to each side. The case reaches to x 105, y 1044.45 and
# z 9.525.
HALF = 0.138 * 25.4 / 2
# Half of a thumb turn's hole of 3/4 in, from the inside face to the leaf's middle (from memory).
TURN = 0.75 * 25.4 / 2
# As the catalogue says it: one screw in the middle of the plate's upper part, one lower down beside the access hole.
OWN_PLACES = catalogue(UNIT={"screw_places": "40, 150; 15, 20", "screws": 2})


def at_screw(gap):
    """A thumb turn straight above an upper screw, its hole so far from the screw."""
    return item("thumb-turn", 104.0, 1164.0 + HALF + TURN + gap, 30.0, 30.0)


def steep(angle, depth=104.8, **facts):
    """A bore up from the face at an angle to it."""
    return hole(9.525, "channel", up_deg=-(90.0 - angle), depth_mm=depth, **facts)


# The drill's axis leaves the leaf 9.525 / tan 10 above the channel's square hole; the long bit of 12 in stands out by
# 304.8 - 20 - 9.525 / sin 10 = 229.95. Along the face the drill, 28 to each side, then stands 226 to 374 farther up.
BESIDE_DRILL = 69.85 + 28.0


def device(gap):
    """An exit device beside where the drill stands, from 20 mm above the axis' way out of the leaf."""
    return item("exit-device", BESIDE_DRILL + gap + 200.0, 1400.0, 400.0, 80.0)


def over_drill(low):
    """An exit device across the way in which the drill stands, from a height on."""
    return item("exit-device", 69.85, low + 40.0, 100.0, 80.0)


ROWS += [
    passes("screw-clear", given(), fit()),
    # 1 in goes 25.4 - 9.525 into the case.
    speaks("screw-clear", given(cat=LONG_SCREW), fit(), short_mm=15.875, severity="error", about="SCREW"),
    # In a leaf of 40 the case begins at (40 - 25.4) / 2 = 7.3.
    speaks("screw-clear", given(lf=leaf(thickness_mm=40.0)), fit(), short_mm=2.225),
    # What stays in the plate does not go into the leaf: 12.7 - 3.175 = 9.525.
    passes("screw-clear", given(cat=catalogue(SCREW={"length_mm": 12.7}, UNIT={"screw_seat_mm": 3.175})), fit()),
    # A through bolt goes through the case whatever its length; up it would have to move 1044.45 - 1016 + 1.7526.
    speaks(
        "screw-clear", given(cat=catalogue(SCREW={"form": "through-bolt", "length_mm": 60.0})), fit(), gap_mm=-30.2026
    ),
    passes(
        "screw-clear",
        given(lk=lock(case_depth_mm=80.0, case_above_mm=10.0), cat=LONG_SCREW),
        fit(placement=place(y=1005.0 + HALF)),
    ),
    # Up to the measuring tolerance of 0.05 too long is let pass.
    boundary("screw-clear", given(cat=catalogue(SCREW={"length_mm": 9.57})), fit()),
    boundary("screw-clear", given(cat=catalogue(SCREW={"length_mm": 9.58})), fit(), says=1, short_mm=0.055),
    boundary("screw-clear", given(items=[at_screw(0.0)]), fit()),
    boundary("screw-clear", given(items=[at_screw(-0.5)]), fit(), says=1, short_mm=0.5),
    boundary("screw-clear", given(lk=lock("rim"), cat=LONG_SCREW), fit()),
    # Nobody measured how wide the case is: as wide as the leaf it meets the screws, as narrow as half its hole not.
    unknown("screw-clear", given(lk=lock(case_width_mm=None)), fit(), "existing_item.case_width_mm"),
    passes("screw-beside-hole", given(), fit()),
    # 1/2 in hole beside the screw at (36, 1016): 9 - 6.35 - 1.7526 = 0.8974 is left of 1/16 in.
    speaks("screw-beside-hole", given(), fit(holes=(hole(x_mm=45.0, y_mm=1016.0),)), short_mm=0.6901, severity="error"),
    boundary("screw-beside-hole", given(), fit(holes=(hole(x_mm=36.0 + HALF + 6.35 + 1.5875, y_mm=1016.0),))),
    # By the catalogue a screw stands at (30 + 15, 1010 + 20): 24.85 - 6.35 - 1.7526 from the usual hole.
    boundary("screw-beside-hole", given(cat=OWN_PLACES), fit()),
    boundary(
        "screw-beside-hole", given(cat=OWN_PLACES), fit(holes=(hole(x_mm=54.0),)), says=1, gap_mm=9.0 - 6.35 - HALF
    ),
    passes("screw-in-leaf", given(), fit()),
    # 3 from the lock edge: 3 - 1.7526 = 1.2474 of 1/16 in.
    speaks("screw-in-leaf", given(), fit(placement=place(-3.0)), short_mm=0.3401, severity="error", about="SCREW"),
    speaks("screw-in-leaf", given(lf=leaf(construction="narrow-stile", stile_mm=106.0)), fit(), short_mm=1.3401),
    # The leaf's top stands 10 + 1157 above the floor.
    speaks("screw-in-leaf", given(lf=leaf(height_mm=1157.0)), fit(), short_mm=0.3401),
    speaks("screw-in-leaf", given(items=[item("lite", 104.0, 1164.0 + HALF + 51.0)]), fit(), short_mm=0.5875),
    boundary("screw-in-leaf", given(), fit(placement=place(HALF + 1.5875 - 6.0))),
    boundary("screw-in-leaf", given(items=[item("lite", 104.0, 1164.0 + HALF + 51.5875)]), fit()),
    passes("hole-clear", given(), fit()),
    # 1/2 in hole below a thumb turn's hole of 3/4 in: 18.05 - 6.35 - 9.525 = 2.175 of 1/8 in.
    speaks(
        "hole-clear",
        given(items=[item("thumb-turn", 69.85, 1030.0 + 18.05, 30.0, 30.0)]),
        fit(),
        short_mm=1.0,
        severity="error",
        about="lead",
    ),
    # A deadbolt's edge bore of 1 in lies in the leaf's middle, at z 9.525 to 34.925: a hole of 9.5 ends before it.
    passes("hole-clear", given(items=[item("deadbolt", 120.0, 1030.0, 60.0, 60.0)]), fit(holes=(hole(depth_mm=6.0),))),
    speaks("hole-clear", given(items=[item("deadbolt", 120.0, 1030.0, 60.0, 60.0)]), fit(), says=1, gap_mm=0.025),
    boundary("hole-clear", given(items=[item("thumb-turn", 69.85, 1030.0 + 6.35 + TURN + 3.175, 30.0, 30.0)]), fit()),
    # On the key face a turn's hole ends in the middle of the leaf, 22.225, and the hole for the lead before it.
    boundary("hole-clear", given(items=[item("thumb-turn", 69.85, 1030.0, 30.0, 30.0, face="key")]), fit()),
    boundary(
        "hole-clear",
        given(items=[item("thumb-turn", 69.85, 1030.0, 30.0, 30.0, face="key")]),
        fit(holes=(hole(depth_mm=22.225 - 3.0),)),
        says=1,
        gap_mm=3.0,
    ),
    passes("hole-covered", given(), fit()),
    # The plate begins at 1010, the rim of the hole at 1012 - 6.35 = 1005.65.
    speaks("hole-covered", given(), fit(holes=(hole(y_mm=1012.0),)), short_mm=4.35, severity="error", about="lead"),
    # From 1030 up the plate reaches 140: a slot of 81.445 is covered, one down is not: 81.445 - 20.
    passes("hole-covered", given(), fit(holes=(hole(slot_mm=81.445),))),
    speaks("hole-covered", given(), fit(holes=(hole(slot_mm=-81.445),)), short_mm=61.445),
    boundary("hole-covered", given(), fit(holes=(hole(y_mm=1016.35),))),
    boundary("hole-covered", given(), fit(holes=(hole(slot_mm=140.0),))),
    boundary("hole-covered", given(), fit(holes=(hole(slot_mm=141.0),)), says=1, short_mm=1.0),
    # The lock's own trim covers too, and a channel leaves nothing on the face but its square hole.
    boundary(
        "hole-covered",
        given(lk=lock(trim_inside_mm=3.0, x_mm=69.85, y_mm=960.0, width_mm=60.0, height_mm=200.0)),
        fit(holes=(hole(y_mm=1000.0),)),
    ),
    boundary("hole-covered", given(), fit(holes=(CHANNEL,), placement=place(y=1200.0))),
    passes("drill-stands", given(), fit(holes=(CHANNEL,))),
    # At 7 degrees 200 of the bit stand out: 200 sin 7 = 24.374, and the drill's side comes down 28 cos 7 = 27.791.
    speaks("drill-stands", given(), fit(holes=(steep(7.0),)), free_mm=200.0, short_mm=3.4176, severity="error"),
    # 1.9 degrees off the face: of 304.8 the square hole alone takes 9.525 / sin 1.9 = 287.28, and 20 are drilled: it is
    # 2.485 too short, and the drill's side comes 2.485 sin 1.9 + 28 cos 1.9 = 28.067 into the face.
    speaks(
        "drill-stands",
        given(),
        fit(holes=(steep(1.9, 20.0, from_depth_mm=9.525),)),
        angle_deg=1.9,
        free_mm=-2.485,
        short_mm=28.067,
        severity="error",
    ),
    # tan a = 28 / 200 at a = 7.9696 degrees: the drill's side just touches the face.
    boundary("drill-stands", given(), fit(holes=(steep(7.9696104),))),
    boundary("drill-stands", given(), fit(holes=(hole(),))),
    # A longer bit in the catalogue: 457.2 - 104.8 = 352.4 stand out, 352.4 sin 7 = 42.9.
    boundary(
        "drill-stands", given(cat=catalogue(DRILL={"diameter_mm": 9.525, "reach_mm": 457.2})), fit(holes=(steep(7.0),))
    ),
    speaks("drill-stands", given(items=[device(-8.0)]), fit(holes=(CHANNEL,)), short_mm=8.0),
    boundary("drill-stands", given(items=[device(0.0)]), fit(holes=(CHANNEL,))),
    # Along the face its end, 150 behind the bit, comes to 1117.518 + 379.95 cos 10 = 1491.696, and off it to 65.978: a
    # round end of 28 is past 50 deep things sqrt(28^2 - 15.978^2) = 22.993 farther up (sizes from memory).
    boundary("drill-stands", given(items=[over_drill(1491.696 + 22.993)]), fit(holes=(CHANNEL,))),
    # At 21.993 it is sqrt(21.993^2 + 15.978^2) = 27.185 away.
    speaks("drill-stands", given(items=[over_drill(1491.696 + 21.993)]), fit(holes=(CHANNEL,)), short_mm=0.815),
    # At 15 degrees to the face with 20 of 304.8 drilled, the drill begins 284.8 sin 15 = 73.712 off it, at 1305.1; its
    # end, rounded by 28, comes to 45.712. What stands on a face is taken to be 50 deep: 284.8 sin 15.9 - 28 = 50.02.
    speaks("drill-stands", given(items=[closer(1292.0, None)]), leaning(15.0), short_mm=4.288),
    boundary("drill-stands", given(items=[closer(1292.0, None)]), leaning(15.9)),
    passes("long-tool", given(), BARE),
    # The drill of an ordinary bit stands from 117.5 out and is 28 about its axis: a closer 130 deep, 20 above it.
    speaks("long-tool", given(items=[closer(1050.0, 130.0)]), BARE, severity="note", short_mm=8.0),
    speaks("long-tool", given(items=[closer(1050.0, 117.5 + 3.0)]), BARE, short_mm=3.0),
    boundary("long-tool", given(items=[closer(1050.0, 117.5)]), BARE),
    boundary("long-tool", given(items=[closer(1058.0, 130.0)]), BARE),
    boundary("long-tool", given(items=[closer(1050.0, 130.0, face="key")]), BARE),
    boundary("long-tool", given(items=[closer(1050.0, 130.0, face=None)]), BARE),
    # Not measured it is taken to stand 4 in out: less than that bit, more than a saw of 50.8 - 25.4 - 9.5.
    boundary("long-tool", given(items=[closer(1050.0, None)]), BARE),
    speaks("long-tool", given(items=[closer(1050.0, None)]), SAWN, short_mm=8.0),
    # An ordinary bit of 50.8 + 8 x 12.7 stands 25.4 out of its chuck, 25.3 and 25.5 in the hole: 101.7 and 101.5.
    boundary("long-tool", given(items=[closer(1050.0, None)]), drilled("twist-drill", 25.3)),
    speaks("long-tool", given(items=[closer(1050.0, None)]), drilled("twist-drill", 25.5), short_mm=0.1),
    # What lies flat is taken for 6.35: a saw 19 or 19.15 in its hole stands 6.4 or 6.25 out.
    boundary("long-tool", given(items=[item("trim", 70.0, 1070.0, 200.0, 40.0)]), drilled("hole-saw", 19.0)),
    speaks(
        "long-tool", given(items=[item("trim", 70.0, 1070.0, 200.0, 40.0)]), drilled("hole-saw", 19.15), short_mm=0.1
    ),
    # The hand is 58.5 below each screw at 1016, behind a blade of 101.6, and 53.5 to the side of the one at 104.
    boundary("long-tool", given(items=[closer(920.0, 101.6)]), fit(holes=())),
    speaks("long-tool", given(items=[closer(920.0, 102.3)]), fit(holes=()), short_mm=0.7),
    boundary("long-tool", given(items=[aside(157.5, 110.0)]), fit(holes=())),
    speaks("long-tool", given(items=[aside(157.2, 110.0)]), fit(holes=()), short_mm=0.3),
    speaks("long-tool", given(items=[closer(920.0, 110.0)]), fit(holes=()), short_mm=2.5),
    boundary("long-tool", given(items=[closer(917.5, 110.0)]), fit(holes=())),
    passes("tool-room", given(), fit()),
    # The longest bit goes straight to its hole, 6.35 about its axis; a hole under a closer no bit bores.
    speaks("tool-room", given(items=[closer(1033.0, 60.0)], settings=NO_PINCH), BARE, severity="error", short_mm=3.35),
    boundary("tool-room", given(items=[closer(1036.35, 60.0)], settings=NO_PINCH), BARE),
    # Thumb and finger that draw the lead out and plug it in are 1 in across (from memory): 12.7 about the hole.
    speaks("tool-room", given(items=[closer(1042.0, 60.0)]), BARE, words=FINGERS, short_mm=0.7),
    boundary("tool-room", given(items=[closer(1042.7, 60.0)]), BARE),
    boundary("tool-room", given(items=[closer(1042.0, 60.0, face="key")]), BARE),
    # The other leaf's hole, a hole for something else, one in another face than the unit's: no lead is plugged there.
    boundary("tool-room", given(items=[closer(1042.0, 60.0)]), holed(purpose="function")),
    boundary("tool-room", given(items=[closer(1042.0, 60.0)]), holed(leaf="inactive")),
    # What is on the lock edge comes off for the work, a guard or an astragal: a note, as far as it lies over the set
    # screw at 1000, blade 11 across.
    boundary("tool-room", given(items=[guard(1050.0)]), fit(holes=())),
    passes("long-tool", given(items=[guard(1060.0)]), fit(holes=())),
    speaks("long-tool", given(items=[guard(1050.0)]), fit(holes=()), about="CYL", words=("set screw",), short_mm=5.5),
    boundary("long-tool", given(items=[guard(1055.5)]), fit(holes=())),
    speaks("long-tool", given(items=[guard(1054.5)]), fit(holes=()), short_mm=1.0),
    speaks("long-tool", given(items=[guard(1050.0, "astragal")]), fit(holes=()), words=("astragal on the lock edge",)),
    boundary("long-tool", given(items=[guard(1050.0, "label")]), fit(holes=())),
    boundary("long-tool", given(items=[guard(1050.0, disposition="remove")]), fit(holes=())),
    # Of a unit in the edge the screws at both ends of its pocket, at 1063.5 and 1412.75.
    speaks(
        "long-tool", given(items=[guard(1420.0)]), EDGE, about="EDGE", words=("screw of the unit in the lock edge",)
    ),
    boundary("long-tool", given(items=[guard(1240.0)]), EDGE),
    # A euro cylinder is held from the edge too; a bored lock has nothing there.
    speaks(
        "long-tool",
        given(lk=lock("euro-profile"), items=[guard(1050.0)]),
        fit(lock_number="EURO", holes=()),
        words=("fixing screw",),
    ),
    boundary(
        "long-tool", given(lk=lock("bored"), items=[guard(1050.0)]), fit(lock_number="BORED", role="lock", holes=())
    ),
    # What stands farther out than the bit, 269.9, stops the drill behind it too.
    speaks("tool-room", given(items=[closer(1050.0, 300.0)]), BARE, short_mm=8.0),
    boundary("tool-room", given(items=[closer(1050.0, 269.9)]), BARE),
    speaks("tool-room", given(items=[closer(1050.0, 271.0)]), BARE, short_mm=1.1),
    # The hand behind the longest blade of 304.8, 58.5 below its screw.
    boundary("tool-room", given(items=[closer(920.0, 304.8)]), fit(holes=())),
    speaks("tool-room", given(items=[closer(920.0, 305.5)]), fit(holes=()), short_mm=0.7),
    boundary("tool-room", given(items=[closer(917.5, 310.0)]), fit(holes=())),
    # A blade is 5.5 about its screw at 1164.
    speaks("tool-room", given(items=[closer(1168.0, 60.0)]), fit(holes=()), short_mm=1.5),
    boundary("tool-room", given(items=[closer(1169.5, 60.0)]), fit(holes=())),
    # A lever, a pull or a plate comes off for the work; where a closer stands must be told.
    boundary("tool-room", given(items=[item("lever", 70.0, 1030.0, 60.0, 40.0)]), BARE),
    unknown("tool-room", given(items=[closer(1033.0, 60.0, face=None)], settings=NO_PINCH), BARE, "existing_item.face"),
    passes("bore-in-stile", given(), fit()),
    # A cross bore of 2 1/8 in at 2 3/4 in reaches to 69.85 + 26.9875 = 96.8375.
    speaks(
        "bore-in-stile",
        given(lf=leaf(construction="narrow-stile", stile_mm=99.0)),
        fit(holes=(hole(53.975, "function"),)),
        short_mm=1.0125,
        severity="error",
        about="lead",
    ),
    boundary(
        "bore-in-stile",
        given(lf=leaf(construction="narrow-stile", stile_mm=96.8375 + 3.175)),
        fit(holes=(hole(53.975, "function"),)),
    ),
]


WIDE_EDGE = fit(holes=(hole(x_mm=12.0, y_mm=1030.0),))
NO_UNIT = fit(without=("unit",))
OTHER_BIT = part("OTHER", "tool", form="hole-saw", diameter_mm=9.525, reach_mm=900.0)
SHORT_BIT = part("ABIT", "tool", form="twist-drill", diameter_mm=9.525, reach_mm=150.0)
LONG_BIT = catalogue(DRILL={"diameter_mm": 9.525, "reach_mm": 457.2}, add=[SHORT_BIT, OTHER_BIT])


def bit(diameter):
    """A catalogue with a long bit that is no other size than this."""
    return catalogue(DRILL={"diameter_mm": diameter, "reach_mm": 457.2})


# What is said, of several holes each, and of what nobody told.
ROWS += [
    boundary("bend-radius", given(), fit(cable=along((0, 0, 0), (50, 0, 0)))),
    # One corner takes its radius of each of two stretches: of one of 9 that is more than there is.
    boundary("bend-radius", given(), fit(cable=along((0, 0, 0), (9, 0, 0), (9, 40, 0))), says=1, tight_bends=1),
    boundary("bend-radius", given(), fit(cable=along((0, 0, 0), (10, 0, 0), (10, 40, 0)))),
    unknown("connectors-mate", given(cat=catalogue(UNIT={"mates_with": None})), fit(), "part UNIT.mates_with"),
    boundary("wall-thickness-known", given(LIFT, lk=lock("reader"), leaves=()), fit(cable=None)),
    boundary("way-for-lead", given(lf=GLASS, lk=lock("bored")), fit(unit="EDGE", lock_number="BORED", role="lock")),
    boundary("way-for-lead", given(LIFT, GLASS, lock("bored")), fit(lock_number="BORED", role="lock")),
    # A hole over the lock's edge and one at the stile's; a lock's own bore answers to its preparation.
    boundary("hole-edge-distance", given(), fit(holes=(hole(53.975, "bore", x_mm=30.0),))),
    boundary("hole-edge-distance", given(), fit(holes=(hole(face="lock-edge", x_mm=5.0),))),
    boundary("hole-edge-distance", given(), fit(holes=(hole(x_mm=5.0, by_template=True),))),
    speaks("hole-edge-distance", given(), fit(holes=(hole(face="lock-edge"), hole(x_mm=12.0))), short_mm=0.7),
    speaks(
        "hole-edge-distance", given(lf=leaf(width_mm=80.0)), fit(), short_mm=2.55, words=("to the stile's inner edge",)
    ),
    # A backset or stile read to a millimetre leaves half of one open: at most 0.5 of what is lacking, and no more.
    *(
        boundary(
            "hole-edge-distance", given(lk=lock(backset_mm=12.0)), fit(holes=(hole(x_mm=x),)), says=1, severity=severity
        )
        for x, severity in ((12.7 - 0.5, "note"), (12.7 - 0.6, "error"))
    ),
    *(
        boundary(
            "hole-edge-distance",
            given(lf=leaf(construction="narrow-stile", stile_mm=82.0)),
            fit(holes=(hole(x_mm=x),)),
            says=1,
            severity=severity,
        )
        for x, severity in ((69.3 + 0.5, "note"), (69.3 + 0.6, "error"))
    ),
    # A hole of a bore that comes out on the other face has no wall at all; of two each is judged.
    speaks(
        "bore-wall",
        given(lf=leaf(thickness_mm=20.0)),
        fit(holes=(hole(9.525, up_deg=-45.0, depth_mm=60.0),)),
        wall_mm=0.0,
        short_mm=3.175,
    ),
    speaks(
        "bore-wall",
        given(),
        fit(
            holes=(
                hole(60.0, "channel", up_deg=-80.0, depth_mm=20.0, from_depth_mm=60.0),
                hole(9.525, "channel", up_deg=-80.0, from_depth_mm=6.0, depth_mm=20.0),
            )
        ),
        says=2,
    ),
    boundary("bore-wall", given(lf=leaf(width_mm=None)), fit(holes=(CHANNEL,))),
    boundary("bore-wall", given(lf=leaf(thickness_mm=None)), fit(holes=(CHANNEL,))),
    *(
        boundary("bore-enters", given(lf=leaf(**{name: None})), fit(holes=(CHANNEL,)))
        for name in ("width_mm", "height_mm", "thickness_mm")
    ),
    # A leaf that ends 60 above the lock's case, 10 above the floor: the channel begins in it.
    boundary("bore-enters", given(lf=leaf(height_mm=1060.0, undercut_mm=10.0)), fit(holes=(CHANNEL,))),
    # Its bit of 12 in stands 200 out at 7 degrees; one of another size, or a saw, does not lengthen it.
    boundary("drill-stands", given(cat=LONG_BIT), fit(holes=(steep(7.0),))),
    boundary("drill-stands", given(cat=bit(9.525 + 0.14)), fit(holes=(steep(7.0),))),
    speaks("drill-stands", given(cat=bit(9.525 + 0.16)), fit(holes=(steep(7.0),)), free_mm=200.0),
    speaks("drill-stands", given(cat=catalogue(add=[OTHER_BIT])), fit(holes=(steep(7.0),)), free_mm=200.0),
    speaks(
        "drill-stands",
        given(),
        fit(holes=(steep(7.0),)),
        words=("200 mm of it stand out, a drill 56 mm thick comes 3.4 mm into the face",),
    ),
    speaks(
        "drill-stands",
        given(),
        fit(holes=(steep(1.9, 20.0, from_depth_mm=9.525),)),
        words=("it is 2.5 mm shorter than the hole",),
    ),
    speaks("drill-stands", given(), fit(holes=(steep(7.0), steep(7.0, name="other"))), says=2),
    # A hole that is square needs no room beside it, whatever follows it.
    speaks("drill-stands", given(), fit(holes=(hole(), steep(7.0))), free_mm=200.0),
    # On the key face the drill stands on the other side of the leaf.
    boundary("drill-stands", given(items=[over_drill(1491.696)]), fit(holes=(replace(CHANNEL, face="key"),))),
    speaks(
        "drill-stands",
        given(items=[replace(over_drill(1491.696 + 21.993), face="key")]),
        fit(holes=(replace(CHANNEL, face="key"),)),
        short_mm=0.815,
    ),
    # Tilted toward the edge by 15 degrees too, it stands aside: see the test of where it stands.
    boundary("hole-covered", given(), fit(holes=(hole(53.975, "bore", y_mm=1012.0),))),
    boundary("hole-covered", given(), fit(holes=(hole(y_mm=1012.0, face="key"),))),
    boundary("hole-covered", given(), fit(holes=(hole(y_mm=1012.0, by_template=True),))),
    boundary("hole-covered", given(), fit(holes=(hole(y_mm=1012.0),), placement=place(face="edge"))),
    speaks(
        "hole-covered",
        given(),
        fit(holes=(hole(face="key"), hole(y_mm=1012.0))),
        short_mm=4.35,
        words=("its rim stands 4.4 mm too far out",),
    ),
    speaks("hole-covered", given(), fit(holes=(hole(slot_mm=-81.445),)), words=("the slot of the tilted bit stands",)),
    # So flat that no shift of the unit helps: 200 + 9.525 of slot, 140 of plate; it says how flat the bit would lie.
    speaks(
        "hole-covered",
        given(),
        fit(holes=(hole(slot_mm=209.525), steep(2.6))),
        angle_deg=2.6,
        words=("would lie at 2.6 degrees to the face",),
    ),
    # A project that wants 2 mm over the rim.
    *(
        boundary(
            "hole-covered",
            given(settings=Settings(length_style="mm", limits={"hole-covered.margin_mm": 2.0})),
            fit(holes=(hole(y_mm=1016.35 + over),)),
            says=says,
        )
        for over, says in ((2.0, 0), (1.9, 1))
    ),
    speaks(
        "hole-covered",
        given(settings=Settings(length_style="mm", limits={"hole-covered.margin_mm": 2.0})),
        fit(holes=(hole(y_mm=1016.35 + 1.5),)),
        short_mm=0.5,
    ),
    unknown("pocket-walls", given(lf=leaf(construction="narrow-stile")), EDGE, "leaf.stile_mm"),
    unknown("pocket-walls", given(lf=leaf(width_mm=None)), EDGE, "leaf.width_mm"),
    unknown("pocket-walls", given(cat=catalogue(EDGE={"pocket_width_mm": None})), EDGE, "part EDGE.pocket_width_mm"),
    unknown("pocket-walls", given(cat=catalogue(EDGE={"pocket_depth_mm": None})), EDGE, "part EDGE.pocket_depth_mm"),
    # A screw of another role, and one of no length, silence none behind them.
    boundary(
        "screw-length",
        given(lf=leaf(thickness_mm=19.05), cat=catalogue(CELL={"form": "wood-screw", "length_mm": 90})),
        fit(),
    ),
    speaks(
        "screw-length",
        given(
            lf=leaf(thickness_mm=19.05),
            cat=catalogue(add=[part("NOLONG", "fastener", form="wood-screw", size="#6")], SCREW={"length_mm": 25.4}),
        ),
        fit(fp("fastener", "SCREW", 4), fp("fastener", "NOLONG"), fp("fastener", "SCREW", 4), without=("cam",)),
        says=4,
    ),
    # 3 mm of plate under its head: 25.4 in 25.4 - 3 + 3.175.
    boundary(
        "screw-length",
        given(lf=leaf(thickness_mm=25.575), cat=catalogue(SCREW={"length_mm": 25.4}, UNIT={"screw_seat_mm": 3.0})),
        fit(),
    ),
]


# It always names a missing fact, so its row that speaks is the test above.
ROWS.append(unknown("wall-thickness-known", given(LIFT, **NO_LEAF), fit(), "leaf.thickness_mm"))


@pytest.mark.parametrize("row", ROWS, ids=str)
def test_rule(row):
    run(row)


def test_an_unknown_wall_says_what_is_left_for_it():
    row = speaks("wall-thickness-known", given(LIFT, **NO_LEAF), fit(cable=cable(128.6)), left_mm=100.0)
    from hwsched.rules import judge, rule_named

    said = judge(rule_named(row.rule), row.given, row.fit, settings=row.given.settings)
    assert [v.needs for v in said] == [("leaf.thickness_mm",)]
    assert said[0].values["left_mm"] == pytest.approx(100.0)


OF_TEMPLATE = hole(3.0, "fixing", name="screw", by_template=True)
"""It has the place of its plate, not its own: rules of holes leave it out."""
OF_HOLES = [row for row in ROWS if row.kind == "speaks" and rule_named(row.rule).discipline == "holes"]
OF_HOLES = [row for row in OF_HOLES if row.fit.holes and row.rule != "no-hole-in-glass"]  # which counts them


@pytest.mark.parametrize("row", OF_HOLES, ids=str)
def test_a_hole_that_is_left_out_silences_none_behind_it(row):
    run(replace(row, fit=replace(row.fit, holes=(OF_TEMPLATE, *row.fit.holes))))
