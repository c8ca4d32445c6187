"""What a machine reads of openings: each thing in its own place, worked out or not.

By hand, as in `test_lock_points`: the plate of 80 x 160 mm begins 29.85 mm from the lock edge and 60 mm below the
cylinder.
"""

from dataclasses import replace
from decimal import Decimal

import pytest

from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.opening.hand_choices import choose_part
from hwsched.operations.opening.showing import hole_record, show_openings
from hwsched.operations.power.connecting import connect_openings
from hwsched.operations.power.power_results import power_result
from hwsched.operations.project.history import history
from hwsched.operations.survey.editing import edit_facts
from hwsched.operations.survey.own_fields import define_field, set_own_value
from hwsched.values import Hole
from tests.operations.exact import id_of, small
from tests.operations.powered import WHO, circuit, closet, doors
from tests.rules.scenario import given, leaf


@pytest.fixture
def yard(tmp_path):
    with small(tmp_path / "y.hwsched", marks="12") as made:
        yield made


def of(project, mark):
    (opening,) = show_openings(project, [id_of(project, mark)]).openings
    return opening


def test_holes_are_told_apart_from_screws(yard):
    """The four screws of the plate stand 6 mm inside its corners, as said with the record."""
    (point,) = of(yard, "1").lock_points
    (lead,), (screws,) = point.holes, point.screws
    assert lead.hole.purpose not in ("fixing", "bolt")
    assert (lead.start_mm, lead.direction) == (pytest.approx((69.85, 1000.0, 0.0)), (0.0, 0.0, 1.0))
    assert lead.places_mm == (lead.start_mm,)
    assert (screws.hole.purpose, screws.hole.count) == ("fixing", 4)
    assert {(round(x, 3), round(y, 3)) for x, y, _ in screws.places_mm} == {
        (35.85, 946.0), (103.85, 946.0), (35.85, 1094.0), (103.85, 1094.0),
    }  # fmt: skip


def test_the_screws_of_a_unit_in_the_edge_stand_in_the_edge(yard):
    """Its plate of 17.4625 x 349.25 mm lies in the middle of the leaf of 44.45 mm: across it is through the leaf."""
    choose_part(yard, id_of(yard, "1"), "unit", "EDGE", who=WHO)
    fit_openings(yard, who=WHO)
    (point,) = of(yard, "1").lock_points
    (screws,) = point.screws
    low, aside = point.placement.y_mm + 6.0, 17.4625 / 2 - 6.0
    assert {tuple(round(each, 3) for each in place) for place in screws.places_mm} == {
        (0.0, round(y, 3), round(22.225 + z, 3)) for y in (low, low + 349.25 - 12.0) for z in (-aside, aside)
    }


def test_what_is_not_worked_out_says_so_and_what_was_chosen_stays(yard):
    choose_part(yard, id_of(yard, "1"), "unit", "EDGE", who=WHO)
    (point,) = of(yard, "1").lock_points
    assert (point.status, point.parts, point.holes, point.screws, point.cost) == ("not-worked-out", (), (), (), None)
    assert [(choice.role, choice.part) for choice in point.chosen] == [("unit", "EDGE")]
    edit_facts(yard, "leaf", of(yard, "2").leaves[0].id, {"thickness_mm": None}, who=WHO)
    fit_openings(yard, who=WHO)
    (fit_part,), (unknown,) = of(yard, "1").lock_points, of(yard, "2").lock_points
    assert (fit_part.status, fit_part.currency, fit_part.cost > 0) == ("fits", "USD", True)
    assert (unknown.status, unknown.cost) == ("to-measure", None)
    assert unknown.needs


def test_own_fields_are_of_the_opening_and_money_is_a_decimal(yard):
    define_field(yard, "opening", "key_group", "Key group", "text", who=WHO)
    define_field(yard, "opening", "price", "Price", "money", who=WHO)
    define_field(yard, "existing_item", "paint", "Paint", "text", who=WHO)
    opening = of(yard, "1")
    set_own_value(yard, "opening", opening.facts.id, "key_group", "AA", who=WHO)
    set_own_value(yard, "opening", opening.facts.id, "price", Decimal("12.75"), who=WHO)
    set_own_value(yard, "existing_item", opening.existing_items[0].id, "paint", "red", who=WHO)
    assert of(yard, "1").own_fields == {"key_group": "AA", "price": "12.75"}
    assert of(yard, "2").own_fields == {"key_group": None, "price": None}


def test_the_step_of_the_journal_and_the_openings_that_are_asked_about(yard):
    shown = show_openings(yard)
    assert (shown.project.title, shown.project.length_style, shown.project.bare_unit) == ("Yard", "mm", "mm")
    assert shown.project.change_set == history(yard)[-1].number
    assert [each.mark for each in shown.openings] == ["1", "2"]
    assert show_openings(yard, []).openings == ()


def test_a_circuit_is_told_of_what_hangs_on_it(tmp_path):
    """Of two openings on one circuit each shows its own device: 1 is 10 m along the wall, 2 is 20 m along."""
    with small(tmp_path / "y.hwsched", marks="") as project:
        ids = doors(project, "123")
        connect_openings(project, circuit(project, closet(project)), [ids["1"], ids["2"]], who=WHO)
        fit_openings(project, who=WHO)
        (supply,) = power_result(project, fresh=False).supplies
        worked_out = {mark: [n for n in supply.circuits[0].nodes if n.opening_id == ids[mark]] for mark in "12"}
        for mark, metres in (("1", 10.0), ("2", 20.0)):
            found = of(project, mark).circuit
            assert found.distance_m == pytest.approx(metres)
            assert (found.supply, found.circuit) == ("PS1", "C1")
            assert {device.opening_id for device in found.devices} == {ids[mark]}
            assert (found.minimum_v, found.maximum_v) == (10.0, 14.0)
            (at,) = [n for n in worked_out[mark] if n.minimum_v is not None]
            # Behind the door loop, not in the frame before it.
            assert at.node != ids[mark]
            assert found.volts == at.volts
            assert found.volts["normal"] < next(n for n in worked_out[mark] if n.node == ids[mark]).volts["normal"]
        assert of(project, "3").circuit is None


PAIR = given(leaves=(
    leaf(position="active", thickness_mm=44.45, width_mm=914.4),
    replace(leaf(position="inactive", thickness_mm=38.1, width_mm=609.6), id="second"),
))  # fmt: skip


@pytest.mark.parametrize(
    ("position", "face", "start"),
    [
        ("active", "inside", (70.0, 1000.0, 0.0)),
        # From the key face as far out as this leaf is thick, from the hinge edge as far over as it is wide.
        ("active", "key", (70.0, 1000.0, 44.45)),
        ("inactive", "key", (70.0, 1000.0, 38.1)),
        ("active", "hinge-edge", (914.4, 1000.0, 70.0)),
        ("inactive", "hinge-edge", (609.6, 1000.0, 70.0)),
        ("inactive", "lock-edge", (0.0, 1000.0, 70.0)),
        ("", "wall", (70.0, 1000.0, 0.0)),
    ],
)
def test_a_hole_starts_in_its_own_leaf(position, face, start):
    made = hole_record(PAIR, Hole("lead", position, face, 70.0, 1000.0, 12.7))
    assert made.start_mm == pytest.approx(start)
    assert made.through


def test_a_hole_in_a_leaf_that_nobody_measured_starts_at_no_known_depth():
    bare = given(lf=leaf(thickness_mm=None))
    assert hole_record(bare, Hole("lead", "single", "key", 70.0, 1000.0, 12.7)).start_mm == (70.0, 1000.0, None)
