"""Rules of the cable and of holes."""

import pytest

from hwsched.values import CablePath
from tests.rules.rows import boundary, passes, run, speaks, unknown
from tests.rules.scenario import cable, catalogue, fit, fp, given, hole, item, leaf, lock, opening, place

GLASS = leaf(material="glass", thickness_mm=12.7)
NO_LEAF = {"leaves": (), "lk": lock("reader")}
LIFT = opening(form="lift")
# The channel of an offset unit: square for 3/8 in, then down at about 10 degrees to the face (common practice).
CHANNEL = hole(9.525, "channel", y_mm=1063.5, up_deg=-80.0, from_depth_mm=9.525, depth_mm=20.0)
EDGE = fit(unit="EDGE", placement=place(13.5, 1063.5, face="edge", width_mm=17.4625, height_mm=349.25))


def along(*points):
    return CablePath(points, 200.0, 228.6, 60.0)


def stretch(top):
    """A leaf whose lock edge ends `top` mm above the lock's pocket, bridge and margin left, with nothing below."""
    return leaf(height_mm=1044.45 + 19.05 + top + 50.8 - 10.0)


LONG_SCREW = catalogue(SCREW={"length_mm": 25.4})
BELOW_TAKEN = item("flush-bolt", 0.0, 500.0, 20.0, 700.0, face="edge")

ROWS = [
    passes("lead-reaches", given(), fit(cable=cable(200.0))),
    speaks("lead-reaches", given(), fit(cable=cable(230.0)), short_mm=1.4, severity="error", about="CYL"),
    boundary("lead-reaches", given(), fit(cable=cable(228.6))),
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
    # A usual in-edge unit wants 13 3/4 in of clear edge, 1 3/4 in depth, 11/16 in width (common practice).
    passes("pocket-walls", given(), EDGE),
    speaks("pocket-walls", given(lf=leaf(thickness_mm=36.0)), EDGE, short_mm=0.256, severity="error"),
    speaks("pocket-walls", given(lf=leaf(construction="narrow-stile", stile_mm=50.0)), EDGE, short_mm=0.8),
    boundary("pocket-walls", given(lf=leaf(thickness_mm=17.4625 + 2 * 9.525)), EDGE),
    unknown("pocket-walls", given(lf=leaf(thickness_mm=None)), EDGE, "leaf.thickness_mm"),
    passes("pocket-length", given(), EDGE),
    speaks("pocket-length", given(lf=stretch(349.0), items=[BELOW_TAKEN]), EDGE, short_mm=0.25, severity="error"),
    boundary("pocket-length", given(lf=stretch(349.25), items=[BELOW_TAKEN]), EDGE),
    unknown("pocket-length", given(lk=lock(case_height_mm=None)), EDGE, "existing_item.case_height_mm"),
    # #6 x 1 in in a 3/4 in panel comes through.
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
    unknown("screw-length", given(cat=catalogue(SCREW={"length_mm": None})), fit(), "part SCREW.length_mm"),
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
