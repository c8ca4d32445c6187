"""The trade's tables: every row has a source, and the values of common practice are those of the issue."""

import pytest

from hwsched.paths import RESOURCES
from hwsched.rules.practice import (
    angle_deg,
    consumables,
    credentials,
    distance_mm,
    lead_hole,
    lock_fasteners,
    rows,
    screw_pilot_mm,
)
from hwsched.survey.leaf import MATERIALS

INCH = 25.4
TABLES = sorted(path.stem for path in (RESOURCES / "practice").glob("*.csv"))


@pytest.mark.parametrize("table", TABLES)
def test_every_row_has_its_source(table):
    assert rows(table)
    for row in rows(table):
        assert row["source"], row
        assert None not in row
        assert None not in row.values()


@pytest.mark.parametrize(
    ("name", "inches"),
    [
        ("above-existing-hole", 1.375),
        ("plate-above-hole", 0.75),
        ("above-cylinder", 2.5),
        ("channel-square", 0.375),
        ("bored-diameter", 0.375),
        ("bored-bolt-hole", 5 / 16),
        ("cylinder-hole", 1.25),
    ],
)
def test_distances_of_common_practice(name, inches):
    assert distance_mm(name) == pytest.approx(inches * INCH)


def test_angles_of_common_practice():
    assert (angle_deg("channel-angle"), angle_deg("bored-up"), angle_deg("bored-edge")) == (10.0, 45.0, 15.0)
    with pytest.raises(KeyError):
        angle_deg("above-cylinder")
    with pytest.raises(KeyError):
        distance_mm("no such thing")


def test_holes_for_the_lead():
    wood, aluminium = lead_hole("wood"), lead_hole("aluminium")
    assert (wood.diameter_mm, wood.pilot_mm) == (INCH / 2, INCH / 4)
    assert (aluminium.diameter_mm, aluminium.pilot_mm) == pytest.approx((0.75 * INCH, INCH / 16))
    # A spade's point has nothing to stand in once a pilot of 1/4 in is drilled; the saw's own pilot is of that size.
    assert {lead_hole(solid).bit for solid in ("wood", "mineral-core", "composite")} == {"hole-saw"}
    assert lead_hole("glass") is None
    known = {material.value for material in MATERIALS}
    assert {row["leaf_material"] for row in rows("lead_holes")} == known - {"glass"}


def test_pilots():
    # 7/64 for sheet-metal screws in aluminium: common practice. The others: shop and fastener tables, shared facts 7.1.
    assert screw_pilot_mm("aluminium", "#6") == pytest.approx(7 / 64 * INCH)
    assert screw_pilot_mm("hollow-metal", "#6") == pytest.approx(0.1160 * INCH)
    assert screw_pilot_mm("hollow-metal", "#8") == pytest.approx(0.1360 * INCH)
    assert screw_pilot_mm("wood", "#6") == pytest.approx(5 / 64 * INCH)
    assert screw_pilot_mm("wood", "#8") == pytest.approx(3 / 32 * INCH)
    assert screw_pilot_mm("glass", "#6") is None


def test_what_goes_with_an_opening():
    assert {w.form for w in consumables("hollow-metal") if w.when == "lead hole"} == {"grommet"}
    assert {w.form for w in consumables("glass")} == {"adhesive-pad", "thread-lock", "sealant"}
    assert [w.quantity for w in lock_fasteners("gate-lock", "bolt-on")] == [4.0]
    assert lock_fasteners("gate-lock", "weld-on") == ()
    assert [w.form for w in credentials()] == ["electronic-key"]
