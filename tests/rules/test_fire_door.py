"""Rules of the fire door; the classifier table is that of shared/facts 4.1 (NFPA 80 as read in secondary copies)."""

from dataclasses import replace

import pytest

from hwsched.rules import DEFERS, RULES
from hwsched.rules.judging import check
from tests.rules.rows import boundary, passes, run, speaks, unknown
from tests.rules.scenario import INCH, catalogue, fit, fp, given, hole, item, leaf, opening

RATED = opening(rating="90")
UNSURE = opening(rating=None)
UNLISTED = {"fire_listed": False}


def made(*holes):
    return fit(holes=holes)


ROWS = [
    passes("rated-lock-listed", given(RATED), fit()),
    speaks("rated-lock-listed", given(RATED, cat=catalogue(CYL=UNLISTED)), fit(), severity="error", rating_min=90.0),
    boundary("rated-lock-listed", given(cat=catalogue(CYL=UNLISTED)), fit()),
    unknown("rated-lock-listed", given(UNSURE), fit(), "opening.rating"),
    unknown("rated-lock-listed", given(RATED, cat=catalogue(CYL={"fire_listed": None})), fit(), "part CYL.fire_listed"),
    passes("rated-unit-listed", given(RATED), fit()),
    speaks("rated-unit-listed", given(RATED, cat=catalogue(UNIT=UNLISTED)), fit(), severity="error", about="UNIT"),
    boundary("rated-unit-listed", given(cat=catalogue(UNIT=UNLISTED)), fit()),
    unknown("rated-unit-listed", given(UNSURE), fit(), "opening.rating"),
    passes("rated-power-listed", given(RATED), fit(power="supply")),
    speaks("rated-power-listed", given(RATED, cat=catalogue(LOOP=UNLISTED)), fit(power="supply"), about="LOOP"),
    boundary("rated-power-listed", given(cat=catalogue(LOOP=UNLISTED)), fit(power="supply")),
    passes("frame-label", given(opening(rating="90", frame_rating="90")), fit()),
    # The frame of a lesser label, of a greater one, and one without: the leaf's, the frame's and none.
    speaks(
        "frame-label",
        given(opening(rating="90", frame_rating="45")),
        fit(),
        severity="warning",
        leaf_min=90.0,
        frame_min=45.0,
    ),
    speaks("frame-label", given(opening(rating="45", frame_rating="180")), fit(), leaf_min=45.0, frame_min=180.0),
    speaks("frame-label", given(opening(rating="20", frame_rating="none")), fit(), severity="warning", leaf_min=20.0),
    # Whoever says that the opening is not rated has said what its frame's label counts.
    boundary("frame-label", given(opening(rating="none", frame_rating="60")), fit()),
    boundary("frame-label", given(opening(rating="90", frame_rating=None)), fit()),
    boundary("frame-label", given(opening(rating="none", frame_rating="none")), fit()),
    unknown("frame-label", given(opening(rating=None, frame_rating="60")), fit(), "opening.rating"),
    passes("rated-hole-size", given(RATED), made(hole(12.7))),
    speaks(
        "rated-hole-size", given(RATED), made(hole(1.375 * INCH)), diameter_mm=34.925, allowed_mm=25.4, severity="error"
    ),
    boundary("rated-hole-size", given(RATED), made(hole(25.4))),
    boundary("rated-hole-size", given(RATED), made(hole(1.25 * INCH, "function"))),
    unknown("rated-hole-size", given(UNSURE), made(hole(1.375 * INCH)), "opening.rating"),
    passes("rated-hole-allowed", given(), made(hole())),
    speaks("rated-hole-allowed", given(RATED), made(hole(), hole(2.0, "fixing", count=4)), holes=5, severity="note"),
    boundary("rated-hole-allowed", given(RATED), made(hole(30.0))),
    passes("rated-cut", given(RATED), made(hole())),
    speaks("rated-cut", given(RATED), made(hole(0.0, "pocket", width_mm=25.4, height_mm=50.8)), severity="error"),
    speaks("rated-cut", given(RATED), made(hole(53.975, "bore"))),
    boundary("rated-cut", given(), made(hole(53.975, "bore"))),
    unknown("rated-cut", given(UNSURE), made(hole(53.975, "bore")), "opening.rating"),
    passes("rated-raceway", given(RATED), made(hole())),
    speaks("rated-raceway", given(RATED), made(hole(9.525, "channel", depth_mm=800.0)), severity="error"),
    boundary("rated-raceway", given(), made(hole(9.525, "channel"))),
    passes("rated-undercut", given(RATED, leaf(undercut_mm=10.0)), fit()),
    speaks(
        "rated-undercut", given(RATED, leaf(undercut_mm=0.875 * INCH)), fit(), undercut_mm=22.225, severity="warning"
    ),
    boundary("rated-undercut", given(RATED, leaf(undercut_mm=0.75 * INCH)), fit()),
    # By more than what is measured, a twentieth of a millimetre.
    speaks("rated-undercut", given(RATED, leaf(undercut_mm=19.12)), fit(), undercut_mm=19.12),
    boundary("rated-undercut", given(RATED, leaf(undercut_mm=25.0, material="hollow-metal")), fit()),
    passes("rated-old-holes", given(RATED), fit()),
    speaks("rated-old-holes", given(RATED, items=[item("viewer", disposition="remove")]), fit(), items=1),
    boundary("rated-old-holes", given(RATED, items=[item("strike", face="frame", disposition="remove")]), fit()),
    passes("rated-strike", given(RATED), fit(fp("strike", "STRIKE"))),
    speaks(
        "rated-strike",
        given(RATED, cat=catalogue(STRIKE={"fail": "fail-safe"})),
        fit(fp("strike", "STRIKE")),
        severity="error",
        about="STRIKE",
    ),
    boundary("rated-strike", given(cat=catalogue(STRIKE={"fail": "fail-safe"})), fit(fp("strike", "STRIKE"))),
    # A magnet lets go of the leaf, not of the latch.
    boundary("rated-strike", given(RATED), fit(fp("strike", "MAG"))),
    unknown(
        "rated-strike",
        given(RATED, cat=catalogue(STRIKE={"fail": None})),
        fit(fp("strike", "STRIKE")),
        "part STRIKE.fail",
    ),
    # Once it is out of the catalogue nobody can say how it fails.
    unknown("rated-strike", given(RATED), fit(fp("strike", "GONE")), "part GONE.fail"),
]


POCKET = hole(0.0, "pocket", width_mm=25.4, height_mm=50.8)
KEPT_STRIKE = item("electric-strike", face="frame")
# What is said, of several holes and strikes each, and of what nobody told.
ROWS += [
    speaks("rated-cut", given(RATED), made(hole(), POCKET), words=("is a pocket, not a round hole: stop",)),
    speaks("rated-cut", given(RATED), made(hole(), hole(53.975, "bore")), words=("is a lock bore: stop",)),
    # One inch exactly counts as it; a function hole of any size is of the class, and counted once.
    speaks("rated-hole-allowed", given(RATED), made(hole(25.4)), holes=1),
    boundary("rated-hole-allowed", given(RATED), made(hole(25.5))),
    *(
        speaks("rated-hole-allowed", given(RATED), made(hole(mm, "function")), holes=1)
        for mm in (25.3, 25.4, 25.5, 31.75)
    ),
    boundary("rated-hole-size", given(), made(hole(1.375 * INCH))),
    speaks("rated-hole-size", given(RATED), made(hole(), hole(1.375 * INCH)), diameter_mm=34.925),
    boundary("rated-hole-size", given(UNSURE), made(hole(30.0), hole(31.0)), says=2),
    boundary("rated-old-holes", given(items=[item("viewer", disposition="remove")]), fit()),
    speaks(
        "rated-old-holes",
        given(RATED, items=[item("exit-device", disposition="remove"), item(None, disposition="move")]),
        fit(),
        items=2,
        about="exit device, item",
    ),
    speaks(
        "rated-raceway",
        given(RATED),
        made(hole(), hole(9.525, "channel", depth_mm=800.0)),
        words=("of 800 mm runs inside the rated leaf",),
    ),
    speaks(
        "rated-raceway",
        given(RATED),
        made(hole(9.525, "channel", depth_mm=None)),
        words=("The lead runs inside the rated leaf",),
    ),
    unknown("rated-raceway", given(UNSURE), made(hole(9.525, "channel")), "opening.rating"),
    unknown(
        "rated-strike",
        given(UNSURE, cat=catalogue(STRIKE={"fail": None})),
        fit(fp("strike", "STRIKE")),
        "opening.rating",
    ),
    boundary("rated-strike", given(RATED), fit(fp("strike", "MAG"), fp("strike", "STRIKE"))),
    speaks(
        "rated-strike",
        given(RATED, cat=catalogue(STRIKE={"fail": "fail-safe"})),
        fit(fp("strike", "MAG"), fp("strike", "STRIKE")),
        about="STRIKE",
    ),
    # Of strikes that stay: one that stays shut is right, one that lets go is not, one that nobody read is asked about.
    boundary("rated-strike", given(RATED, items=[replace(KEPT_STRIKE, fail="fail-secure")]), fit()),
    boundary("rated-strike", given(RATED, items=[replace(KEPT_STRIKE, fail="fail-safe", disposition="remove")]), fit()),
    boundary("rated-strike", given(items=[replace(KEPT_STRIKE, fail="fail-safe")]), fit()),
    boundary("rated-strike", given(UNSURE, items=[replace(KEPT_STRIKE, fail="fail-safe")]), fit()),
    speaks("rated-strike", given(RATED, items=[replace(KEPT_STRIKE, fail="fail-safe")]), fit(), severity="error"),
    boundary(
        "rated-strike",
        given(RATED, items=[replace(KEPT_STRIKE, fail="fail-safe"), KEPT_STRIKE]),
        fit(),
        says=2,
        severity="error",
    ),
    boundary("rated-undercut", given(lf=leaf(undercut_mm=25.0)), fit()),
    boundary("rated-undercut", given(RATED, leaf(undercut_mm=None)), fit()),
]


@pytest.mark.parametrize("row", ROWS, ids=str)
def test_rule(row):
    run(row)


ALLOWED, BOTH_LISTINGS, STOP = "allowed", "both listings", "stop"


@pytest.mark.parametrize(
    ("request_", "holes", "expected"),
    [
        (
            "mortise function holes: 3/4 in spindle and 1-1/4 in cylinder",
            (hole(0.75 * INCH, "function"), hole(1.25 * INCH, "function")),
            ALLOWED,
        ),
        ("three 1 in round holes for surface fire-exit hardware", (hole(INCH, "bolt", count=3),), ALLOWED),
        ("fastener holes for a protection plate", (hole(4.0, "fixing", count=8),), ALLOWED),
        ("1/2 in round cable hole, surface controller", (hole(0.5 * INCH),), ALLOWED),
        ("1-3/8 in round hole, surface electrified trim", (hole(1.375 * INCH),), BOTH_LISTINGS),
        ("1 in x 2 in rectangular hole", (hole(0.0, "pocket", width_mm=INCH, height_mm=2 * INCH),), STOP),
        ("new mortise pocket", (hole(0.0, "pocket", face="lock-edge", width_mm=31.75, height_mm=203.2),), STOP),
        ("2-1/8 in bored-lock bore", (hole(2.125 * INCH, "bore"),), STOP),
        ("edge-to-edge wire raceway", (hole(9.525, "channel", face="lock-edge", depth_mm=914.4),), STOP),
    ],
)
def test_classifier(request_, holes, expected):
    found = {f.rule: f for f in check(given(RATED), made(*holes)) if f.rule.startswith("rated-")}
    errors = {rule for rule, finding in found.items() if finding.severity == "error"}
    if expected == ALLOWED:
        assert not errors, request_
        assert "Verify the listings" in found["rated-hole-allowed"].message
    elif expected == BOTH_LISTINGS:
        assert errors == {"rated-hole-size"}
        assert "only if both" in found["rated-hole-size"].message
    else:
        assert errors
        assert all("stop" in found[rule].message for rule in errors)


def test_a_strike_that_stays_is_asked_about():
    found = check(given(RATED, items=[item("electric-strike", face="frame")]), fit())
    assert [f.severity for f in found if f.rule == "rated-strike"] == ["warning"]


def test_every_rule_on_safety_defers():
    for rule in RULES:
        if rule.discipline in ("fire-door", "egress", "accessibility"):
            assert rule.defers, rule.id
    (said,) = (f for f in check(given(RATED), made(hole(30.0))) if f.rule == "rated-hole-size")
    assert said.cure.endswith(DEFERS)
