"""The cost estimate as it is read: amounts by hand from the prices and hours of one opening and of two alike."""

from dataclasses import replace

import pytest

from hwsched.documents.parts.cost_estimate import COST_ESTIMATE
from hwsched.render.blocks import Table
from hwsched.values import PointFit
from hwsched.values.terms import CostTerms
from tests.documents.reading import blocks, facts, lines, texts

# What the catalogue asks for what WOOD takes: cylinder 100, cam 10, collar 10, unit 200, four screws at 0.10, six cells
# at 1, coin cell 1, sleeve 0.50, a twentieth of a bottle at 6, key 10; jig, bit and drill come back.
PARTS = 100 + 10 + 10 + 200 + 0.4 + 6 + 1 + 0.5 + 0.3 + 10
# Of the labour table, from memory: cylinder 0.20, old one off 0.10, access hole in wood 0.15, unit on a face 0.40,
# programme and test 0.30, clean up 0.15; METRIC is the same door.
HOURS = 0.2 + 0.1 + 0.15 + 0.4 + 0.3 + 0.15
COLUMNS = ("Hours", "Parts", "Labour", "Total", "")


def estimate(quay, *marks, **terms):
    openings = tuple(each for each in quay.openings if each.mark in marks)
    return COST_ESTIMATE.build(replace(quay, openings=openings, terms=CostTerms(**terms)), None)


def rows(document, title, label):
    return {line[label]: tuple(line[name] for name in COLUMNS if name) for line in lines(document, title)}


def test_what_is_paid_for_one_opening_and_for_two(quay):
    """At 80 an hour; nothing is learnt, so that two take twice as long as one."""
    document = estimate(quay, "WOOD", "METRIC", labour_per_hour="80")
    said = facts(document)
    assert (said["Currency"], said["Labour an hour"], document.subtitle) == ("USD", "80", "USD")
    assert said["Parts"] == f"{2 * PARTS:.2f}" == "676.40"
    assert said["Labour"] == f"{2 * HOURS * 80:.2f} for {2 * HOURS:.1f} h" == "208.00 for 2.6 h"
    assert said["Total of what is known"] == "884.40"
    one = pytest.approx((HOURS, PARTS, HOURS * 80, PARTS + HOURS * 80))
    two = pytest.approx((2 * HOURS, 2 * PARTS, 2 * HOURS * 80, 2 * (PARTS + HOURS * 80)))
    assert rows(document, "By opening", "Opening") == {"METRIC": one, "WOOD": one, "Total": two}
    assert rows(document, "By building", "Building") == {"Quay": two, "Total": two}
    assert rows(document, "By hardware set", "Hardware set") == {"no hardware set": two, "Total": two}
    totals = [block for block in blocks(document) if isinstance(block, Table) and block.title.startswith("By ")]
    assert [block.strong_rows for block in totals] == [{1}, {1}, {2}]
    assert not any("Not counted" in text or "not counted" in text for text in texts(document))


def test_what_nobody_has_priced_is_said_to_be_unknown_and_not_nothing(quay):
    document = estimate(quay, "WOOD")
    said = facts(document)
    assert (said["Labour"], said["Labour an hour"]) == ("unknown for 1.3 h", "unknown")
    assert said["Total of what is known"] == said["Parts"] == f"{PARTS:.2f}"
    unknown = pytest.approx(HOURS), pytest.approx(PARTS), "unknown", pytest.approx(PARTS)
    assert rows(document, "By opening", "Opening") == {"WOOD": unknown, "Total": unknown}
    (line,) = lines(document, "Unknown")
    assert line == {"What": "labour", "Qty": 1.3, "Needs": "labour price per hour"}
    (table,) = (block for block in blocks(document) if isinstance(block, Table) and block.title == "By opening")
    assert [row[-1] for row in table.rows] == ["1 unknown", ""]
    # Ten numbers of the catalogue, and no supplier's discount is set.
    assert any(text.startswith("10 parts stand at list price") for text in texts(document))


def test_an_opening_without_a_fit_is_told_and_has_no_row(quay):
    document = estimate(quay, "WOOD", "UNSEEN", labour_per_hour="80")
    assert "Without a fit, so not counted: 1 opening." in texts(document)
    assert set(rows(document, "By opening", "Opening")) == {"WOOD", "Total"}


def test_openings_stand_under_their_own_building_and_set(quay):
    wood, other = (each for each in quay.openings if each.mark in ("WOOD", "METRIC"))
    nowhere = replace(other.given, opening=replace(other.given.opening, building=None))
    other = replace(other, given=nowhere, points=(PointFit(nowhere, other.fit),), set_name="S1")
    document = COST_ESTIMATE.build(replace(quay, openings=(wood, other), terms=CostTerms(labour_per_hour="80")), None)
    assert list(rows(document, "By building", "Building")) == ["Quay", "no building", "Total"]
    assert list(rows(document, "By hardware set", "Hardware set")) == ["no hardware set", "S1", "Total"]
