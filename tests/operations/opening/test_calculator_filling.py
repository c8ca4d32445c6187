"""Calculators filled from an opening: the same numbers that its fit is worked out from, and what is not known said."""

from dataclasses import replace

import pytest

from hwsched.calc.calculators import CALCULATORS
from hwsched.fitting import fit as worked_out
from hwsched.model.errors import ValueRefusedError
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.opening.calculator_filling import Home, fillable, filled, take_over
from hwsched.operations.project.history import newest
from tests.operations.exact import small
from tests.rules.scenario import fit, given, leaf, lock, opening

BY_NAME = {each.name: each for each in CALCULATORS}


def answer(name, found):
    return BY_NAME[name].run(found.values)


def test_the_stack_of_the_calculator_is_that_of_the_fit():
    asked = given()
    made = worked_out(asked)
    found = filled("cylinder-stack", asked, made)
    assert found.needs == []
    best = answer("cylinder-stack", found)["fits"][0]
    assert best["cylinder"] == next(each.part for each in made.parts if each.role == "cylinder")
    assert best["projection_mm"] == pytest.approx(made.stack.projection_mm)


def test_the_pack_lasts_as_long_as_in_the_fit():
    asked = given(opening(operations_per_day=30, operations_day_off=10, power_wish="battery"))
    made = worked_out(asked)
    assert made.battery is not None
    found = filled("battery-life", asked, made)
    assert answer("battery-life", found)["days"] == pytest.approx(made.battery.days)


def test_halves_are_chosen_for_the_leaf_and_both_trims():
    found = filled("euro-halves", given(lf=leaf(thickness_mm=40.0), lk=lock("euro", trim_inside_mm=5.0)), None)
    assert (found.values["leaf_mm"], found.values["inside_trim_mm"]) == (40.0, 5.0)
    # Half the leaf and the trim on either side: DIN 18252 / EN 1303 as quoted in trade.
    told = answer("euro-halves", found)
    assert told["inside_needed_mm"] == 25.0


def test_a_tailpiece_is_asked_with_the_cylinder_and_the_rule_of_its_reach():
    found = filled("tailpiece", given(lk=lock("rim", trim_key_mm=2.0)), fit(lock_number="RIM"))
    # The scenario's rim cylinder has a body of 25.4 mm, which 2 mm of trim lift.
    assert found.values["cylinder_back_mm"] == pytest.approx(23.4)
    assert found.values["tailpiece_mm"] == 76.2


@pytest.mark.parametrize("wide", [25.4, 19.0, None])
def test_a_tailpiece_goes_no_farther_into_the_lock_than_its_case_is_wide(wide):
    found = filled("tailpiece", given(lk=lock("rim", case_width_mm=wide)), fit(lock_number="RIM"))
    assert found.values.get("maximum_engagement_mm") == wide
    # Asked without a lock nothing is known of a case.
    bare = given(lk=lock("rim"))
    assert "maximum_engagement_mm" not in filled("tailpiece", replace(bare, items=()), None).values


def test_what_nobody_measured_is_left_out_and_said():
    found = filled("cylinder-stack", given(lf=leaf(thickness_mm=None)), None)
    assert "leaf_mm" not in found.values
    assert found.needs == ["leaf thickness"]
    assert not fillable("siting")


def test_what_was_tried_is_taken_over_as_one_step(tmp_path):
    with small(tmp_path / "y.hwsched", marks="1234") as yard:
        (first, *_) = check_openings(yard)
        homes = filled("cylinder-stack", first.given, first.fit).homes
        steps = newest(yard)
        take_over(yard, [(homes["leaf_mm"], 38.1), (homes["trim_mm"], 6.35)], who="ann", base=steps)
        assert newest(yard) == steps + 1
        (after, *_) = check_openings(yard)
        again = filled("cylinder-stack", after.given, None).values
        assert (again["leaf_mm"], again["trim_mm"]) == (38.1, 6.35)
        with pytest.raises(ValueRefusedError):
            take_over(yard, [(Home("leaf", homes["leaf_mm"].row_id, "thickness_mm"), 9000.0)], who="ann")
        assert newest(yard) == steps + 1
