"""Fewest kinds against every choice of a small project; what was promised is there once it is accepted and refitted."""

import itertools
from dataclasses import replace
from decimal import Decimal
from time import monotonic

import pytest

from hwsched.fitting import alternatives
from hwsched.model.errors import ValueRefusedError
from hwsched.model.project import open_project
from hwsched.model.queries import read_inputs
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.opening.hand_choices import choose_part
from hwsched.operations.opening.named_openings import openings_of_building
from hwsched.operations.parts.cost_terms import set_terms
from hwsched.operations.parts.fewest_part_numbers import accept_fewest, fewest_part_numbers
from hwsched.operations.project.history import undo
from hwsched.values.input_key import input_key
from tests.model.states import state
from tests.once import copied
from tests.operations.exact import id_of, small
from tests.operations.powered import fit_all, more_parts
from tests.rules.scenario import catalogue

WHO = "ann"


@pytest.fixture
def yard(tmp_path):
    """Four openings that would take three units: two the usual, one of 12 V on a supply, one listed in a fire door."""
    usual = catalogue().get("UNIT")
    supply = {"power_wish": "supply", "supply_distance_m": 20.0}

    def unit(number, price, *, listed, volts):
        of_its_own = {"fire_listed": listed, "supply_low_v": volts - 2.0, "supply_high_v": volts + 2.0}
        return replace(usual, number=number, list_price=price, attributes={**usual.attributes, **of_its_own})

    def make(path):
        with small(path, marks="1234", m2=supply, m3={"rating": "90"}) as made:
            more_parts(
                made,
                unit("UNIT", 200.0, listed=False, volts=24.0),
                unit("U-12", 260.0, listed=False, volts=12.0),
                unit("U-FIRE", 240.0, listed=True, volts=24.0),
                unit("U-ALL", 310.0, listed=True, volts=12.0),
                replace(catalogue().get("EDGE"), list_price=700.0),
            )
            fit_all(made)

    copied("fewest part numbers", tmp_path / "y.hwsched", make)
    with open_project(tmp_path / "y.hwsched") as made:
        yield made


def inputs_of(project, ids=None):
    with project.reading() as connection:
        return list(read_inputs(connection, ids))


def kinds(found):
    return frozenset(part.part for part in found.parts if part.role != "tool")


def every(project):
    """(number of different parts, cost) of every choice there is."""
    ways = {}
    count = {}
    for given in inputs_of(project):
        key = input_key(given)
        count[key] = count.get(key, 0) + 1
        if key not in ways:
            ways[key] = [(each.cost, kinds(each)) for each in alternatives(given)]
    found = []
    for chosen in itertools.product(*ways.values()):
        cost = sum(count[key] * each[0] for key, each in zip(ways, chosen, strict=True))
        found.append((len(frozenset().union(*(each[1] for each in chosen))), cost))
    return found


def really(project, ids=None):
    """Different parts of the stored fits, and their list price."""
    fits = [each.fit for each in check_openings(project, ids)]
    assert all(fit is not None and fit.status == "fits" for fit in fits)
    return tuple(sorted(frozenset().union(*(kinds(fit) for fit in fits)))), sum(fit.cost for fit in fits)


def test_the_first_alternative_is_the_fit(yard):
    for given, checked in zip(inputs_of(yard), check_openings(yard), strict=True):
        best = alternatives(given)[0]
        assert best == replace(checked.fit, refused=(), runners_up=())


def test_by_hand(yard):
    """Each takes its cheapest unit: 200, 260 on the 12 V supply, 240 in the fire door; one serves all for 310."""
    found = fewest_part_numbers(yard)
    assert {"UNIT", "U-12", "U-FIRE"} <= set(found.before_kinds)
    assert len(found.before_kinds) - len(found.after_kinds) == 2
    assert "U-ALL" in found.after_kinds
    # 1 and 4 pay 110 more each, 2 pays 50, 3 pays 70.
    assert found.after_cost - found.before_cost == 340
    assert found.gap == 0
    assert (found.openings, found.left_out) == (4, ())
    assert {found.marks[each] for each in found.choices} == {"1", "2", "3", "4"}


def test_against_every_choice(yard):
    ways = every(yard)
    assert len(ways) > 8
    found = fewest_part_numbers(yard)
    assert (len(found.after_kinds), found.after_cost) == min(ways)
    for price in ("0", "60", "100", "169.99", "170.01", "500"):
        found = fewest_part_numbers(yard, price_per_kind=price)
        value = found.after_cost + Decimal(price) * len(found.after_kinds)
        assert value == min(cost + Decimal(price) * n for n, cost in ways)
        assert found.gap == 0
    least = min(n for n, _ in ways)
    for most in (least, least + 1, least + 2):
        found = fewest_part_numbers(yard, most=most)
        assert len(found.after_kinds) <= most
        assert found.after_cost == min(cost for n, cost in ways if n <= most)
    with pytest.raises(ValueRefusedError, match=str(least)):
        fewest_part_numbers(yard, most=least - 1)


@pytest.mark.parametrize("how", [{}, {"price_per_kind": "60"}, {"price_per_kind": "0"}])
def test_accepted_and_refitted_it_is_as_promised(yard, how):
    before, was = state(yard), really(yard)
    found = fewest_part_numbers(yard, **how)
    assert state(yard) == before
    assert (found.before_kinds, found.before_cost) == was
    changes = accept_fewest(yard, found, who=WHO)
    assert changes.openings == set(found.choices)
    assert fit_openings(yard, who=WHO)[0].number is None
    assert really(yard) == (found.after_kinds, found.after_cost)
    for each in check_openings(yard):
        assert not [f for f in each.findings if f.severity == "error"]
    assert fewest_part_numbers(yard, **how).choices == {}
    if found.choices:
        undo(yard, who=WHO)
    assert state(yard) == before


@pytest.mark.parametrize("building", ["Boat Store", "Glass Annexe"])
def test_a_building_of_the_sample(sample_file, building):
    with open_project(sample_file) as project:
        ids = openings_of_building(project, building)
        found = fewest_part_numbers(project, ids)
        assert found.gap == 0
        assert len(found.after_kinds) < len(found.before_kinds)
        accept_fewest(project, found, who=WHO)
        fit_openings(project, who=WHO)
        mine = list(found.marks)
        assert really(project, mine) == (found.after_kinds, found.after_cost)
        others = {each.given.opening.mark for each in check_openings(project, ids) if each.given.opening.id not in mine}
        assert set(found.left_out) == others


def test_what_a_person_chose_is_kept(yard):
    choose_part(yard, id_of(yard, "1"), "unit", "UNIT", who=WHO)
    fit_openings(yard, who=WHO)
    found = fewest_part_numbers(yard)
    assert "UNIT" in found.after_kinds
    assert "1" not in {found.marks[each] for each in found.choices}


def test_openings_without_a_price_or_an_alternative_are_named(yard):
    more_parts(yard, replace(catalogue().get("SCREW"), list_price=None))
    with pytest.raises(ValueRefusedError, match="no opening has an alternative whose parts are all priced"):
        fewest_part_numbers(yard)
    more_parts(yard, catalogue().get("SCREW"))
    choose_part(yard, id_of(yard, "2"), "consumable", "PAD", who=WHO)
    more_parts(yard, replace(catalogue().get("PAD"), list_price=None))
    found = fewest_part_numbers(yard)
    assert (found.left_out, found.openings) == (("2",), 3)


def test_kinds_in_two_currencies_are_compared_by_the_projects_rates(yard):
    more_parts(yard, replace(yard_part(yard, "U-ALL"), currency="EUR"))
    with pytest.raises(ValueRefusedError, match="unknown: needs currency of the project"):
        fewest_part_numbers(yard)
    set_terms(yard, who=WHO, currency="USD")
    found = fewest_part_numbers(yard)
    assert "U-ALL" not in found.after_kinds
    set_terms(yard, who=WHO, rates={"EUR": "1.1"})
    found = fewest_part_numbers(yard)
    # 310 EUR are 341 USD: 1 and 4 pay 141 more each, 2 pays 81, 3 pays 101.
    assert "U-ALL" in found.after_kinds
    assert (found.after_cost - found.before_cost, found.currency) == (464, "USD")


def yard_part(project, number):
    with project.reading() as connection:
        return project.catalogue.read(connection).get(number)


def test_stopped_and_out_of_time(yard):
    with pytest.raises(ValueRefusedError, match="stopped"):
        fewest_part_numbers(yard, cancelled=lambda: True)
    told = []
    fewest_part_numbers(yard, progress=lambda step, gap: told.append(step))
    assert told[0] == "alternatives of opening 1 of 4"
    began = monotonic()
    found = fewest_part_numbers(yard, time_limit_s=0.0)
    assert monotonic() - began < 5
    # Nothing proven is no reason to give nothing: what is given can be accepted, and its gap is said.
    assert found.gap >= 0
    accept_fewest(yard, found, who=WHO)
    fit_openings(yard, who=WHO)
    assert really(yard) == (found.after_kinds, found.after_cost)


@pytest.mark.parametrize("wrong", [{"price_per_kind": "dear"}, {"price_per_kind": "-1"}, {"most": -1}])
def test_what_cannot_be_is_refused(yard, wrong):
    with pytest.raises(ValueRefusedError):
        fewest_part_numbers(yard, **wrong)
