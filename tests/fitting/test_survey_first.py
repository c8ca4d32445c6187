"""A survey that contradicts itself is named before anything is fitted to it."""

from dataclasses import replace

from hwsched.fitting import alternatives, fit
from hwsched.rules.judging import check
from hwsched.values import Chosen
from tests.fitting.door import door, item, leaf, lock, opening

DEEP = leaf(construction="narrow-stile", stile_mm=60.0, material="aluminium")


def test_a_contradiction_is_all_that_is_said():
    """A case of 105 in a stile of 60: no part is tried, and both numbers are named."""
    given = door(lf=DEEP)
    found = fit(given)
    assert found.status == "does-not-fit"
    assert [(r.part, r.rule) for r in found.refused] == [("survey", "case-within-stile")]
    assert found.nearest_miss.values == {"case_mm": 105.0, "stile_mm": 60.0, "short_mm": 45.0}
    assert alternatives(given) == ()
    assert "case-within-stile" in {each.rule for each in check(given, found) if each.severity == "error"}


def test_what_a_person_chose_is_fitted_all_the_same():
    given = replace(door(lf=DEEP), chosen=(Chosen("cylinder", "CYL"),))
    found = fit(given)
    assert found.part("cylinder").part == "CYL"
    assert "case-within-stile" in {each.rule for each in check(given, found)}


def test_a_stile_without_construction_is_asked_for():
    found = fit(door(lf=leaf(construction=None, stile_mm=110.0)))
    assert found.status == "to-measure"
    assert [need.fact for need in found.needs] == ["leaf.construction"]


def test_trim_whose_extent_nobody_told_is_asked_for_though_a_lever_is_listed():
    """A lever stands on the trim, and tells nothing of how far it reaches."""
    listed = item("lever", 69.85, 930.0, 127.0, 57.0)
    found = fit(door(lk=lock(trim_inside_mm=3.0), items=[listed]))
    assert found.status == "to-measure"
    assert "existing_item.width_mm" in {need.fact for need in found.needs}
    assert fit(door(lk=lock(trim_inside_mm=0.0), items=[listed])).status == "fits"


def test_a_pull_whose_height_nobody_told_is_asked_for_where_its_bolts_could_matter():
    """On the key side, so that no plate meets it: its bolts go through the leaf all the same."""
    far, near = (replace(item("pull", x, 1250.0, 60.0, 200.0, face="key"), y_mm=None) for x in (500.0, 69.85))
    assert fit(door(items=[far])).status == "fits"
    assert [need.fact for need in fit(door(items=[near])).needs] == ["existing_item.y_mm"]


def test_of_a_pocket_that_is_refused_anyway_nothing_is_asked():
    """Into sheet metal no pocket is cut: where a flush bolt stands in the edge then decides nothing."""
    bolt = replace(item("flush-bolt", 10.0, 1300.0, 25.0, 170.0, face="edge"), y_mm=None)
    found = fit(door(lf=leaf(material="hollow-metal"), items=[bolt]))
    assert (found.status, found.needs) == ("fits", ())


def test_a_lock_that_comes_off_is_not_asked_for_its_form():
    given = door(lk=lock(disposition="remove"))
    found = fit(given)
    assert found.status == "does-not-fit"
    assert [r.rule for r in found.refused] == ["lock-converted"]
    assert "existing_item.lock_form" not in {need for each in check(given, found) for need in each.needs}


def test_what_is_switched_off_says_nothing():
    given = door(opening(), items=[item("lite", 110.0, 1000.0)])
    assert [r.rule for r in fit(given).refused] == ["lite-clear-of-lock"]
    off = replace(given, settings=replace(given.settings, rules_off=frozenset({"lite-clear-of-lock"})))
    assert "lite-clear-of-lock" not in {r.rule for r in fit(off).refused}
