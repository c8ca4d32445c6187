"""What the parts of an opening are to a circuit: how much they draw, from which voltage to which, and what is taken."""

from dataclasses import replace
from math import inf

import pytest

from hwsched.rules.network.devices import amps, device_of, devices_of, on_leaf, releases_kept, switched, unsuited
from hwsched.values import Fit, LockPoint
from hwsched.values.power import Problem
from tests.rules.scenario import catalogue, fp, given, item, opening

SUPPLY = {"draws": "current", "supply_rest_a": 0.1, "supply_inrush_a": 0.5, "supply_conductors": 2}
LABEL = {"rated_v": 12.0, "rated_a": 0.35, "current_form": "dc", "fail": "fail-secure"}


def unit(**facts):
    return device_of(catalogue(UNIT={**SUPPLY, **facts}).get("UNIT"), "unit", "o", "1")


def strike(number="STRIKE", **facts):
    return device_of(catalogue(**{number: facts}).get(number), "strike", "o", "1")


def only(*parts):
    return Fit("fits", parts=parts, power="supply")


def test_a_unit_of_which_everything_is_stated():
    found = unit()
    assert (found.role, found.kind, found.part, found.mark) == ("unit", "current", "UNIT", "1")
    assert (found.holding, found.peak, found.inrush, found.least) == (0.1, 0.4, 0.5, 0.1)
    assert (found.minimum_v, found.maximum_v, found.assumed, found.untold) == (10.0, 14.0, (), ())


@pytest.mark.parametrize(
    ("draws", "kind", "holding", "peak", "first"),
    [
        # Its current holds in the middle of its window, 12 V: 0.1, 0.4 and 0.5 A are 1.2, 4.8 and 6 W, or 120, 30 and
        # 24 ohm.
        ("current", "current", 0.1, 0.4, 0.5),
        ("power", "power", 1.2, 4.8, 6.0),
        ("resistance", "resistance", 120.0, 30.0, 24.0),
    ],
)
def test_how_a_unit_draws(draws, kind, holding, peak, first):
    found = unit(draws=draws)
    assert (found.kind, found.holding, found.peak, found.inrush) == (kind, *map(pytest.approx, (holding, peak, first)))
    for value, current in ((holding, 0.1), (peak, 0.4), (first, 0.5)):
        assert amps(found, value, 12.0) == pytest.approx(current)
    # Nothing drawn is no resistance at all.
    at_rest = unit(draws="resistance", supply_rest_a=0.0)
    assert (at_rest.holding, amps(at_rest, at_rest.holding, 12.0)) == (inf, 0.0)


@pytest.mark.parametrize(
    ("name", "taken"),
    [
        ("supply_rest_a", "current at rest taken as the supply current"),
        ("draws", "taken as a constant current"),
        ("supply_inrush_a", "no more in the first moment than it draws in operation"),
        ("supply_conductors", "fed by two conductors, plus and minus"),
    ],
)
def test_what_of_a_unit_is_taken_is_told(name, taken):
    found = unit(**{name: None})
    assert found.assumed == (taken,)
    assert found.untold == (("part UNIT.draws",) if name == "draws" else ())
    # As a constant power it would draw most at 10 V, 12 / 10; as a resistance at 14 V, 14 / 12.
    assert found.most_share == pytest.approx(1.2 if name == "draws" else 1.0)
    assert (found.holding, found.least) == ((0.4, None) if name == "supply_rest_a" else (0.1, 0.1))
    assert found.inrush == (None if name == "supply_inrush_a" else 0.5)


@pytest.mark.parametrize("name", ["supply_low_v", "supply_high_v", "supply_a"])
def test_what_of_a_unit_cannot_be_taken_is_asked(name):
    found = unit(**{name: None})
    assert isinstance(found, Problem)
    assert (found.kind, found.needs, found.about) == ("unknown", (f"part UNIT.{name}",), "UNIT")


def test_a_strike_by_the_way_it_fails():
    """85 to 110 % of 12 V (NFPA 72, secondary copy); fail-secure it rests without current, else it may be held."""
    secure = strike()
    assert (secure.minimum_v, secure.maximum_v) == (pytest.approx(10.2), pytest.approx(13.2))
    assert (secure.holding, secure.peak, secure.least, secure.fail) == (0.0, 0.35, 0.0, "fail-secure")
    assert "no current at rest, as fail-secure means" in secure.assumed
    untold = strike(fail=None)
    assert (untold.holding, untold.least, untold.fail) == (0.35, None, "")
    assert any(each.startswith("held all the time") for each in untold.assumed)
    safe = strike(fail="fail-safe")
    assert (safe.holding, safe.least) == (0.35, None)
    assert not any(each.startswith("held all the time") for each in safe.assumed)
    # A magnet holds by current alone; a coil that says what it takes at rest is taken by its word.
    assert strike("MAG").fail == "fail-safe"
    told = strike(rest_a=0.05, fail=None)
    assert (told.holding, told.least) == (0.05, 0.05)
    # Its own window goes before the usual one, at either end.
    assert (strike(supply_low_v=11.0).minimum_v, strike(supply_low_v=11.0).maximum_v) == (11.0, pytest.approx(13.2))
    assert (strike(supply_high_v=12.5).minimum_v, strike(supply_high_v=12.5).maximum_v) == (pytest.approx(10.2), 12.5)


@pytest.mark.parametrize("name", ["supply_v", "holding_a"])
def test_what_of_a_strike_cannot_be_taken_is_asked(name):
    assert strike(**{name: None}).needs == (f"part STRIKE.{name}",)


def test_what_draws_nothing_is_no_device():
    assert device_of(catalogue().get("CYL"), "cylinder") is None


@pytest.mark.parametrize(
    ("made", "why"), [(None, "it has no fit that counts"), (Fit("to-measure"), "its fit waits for facts")]
)
def test_without_a_fit_nobody_knows_what_is_drawn(made, why):
    devices, problems = devices_of(given(), made)
    assert devices == ()
    assert problems == (Problem("unknown", f"what 1 draws is unknown: {why}", ("opening.fit",), "o"),)


def test_the_devices_of_a_lock_point():
    kept = item("electric-strike", face="frame", **LABEL)
    made = only(fp("unit", "UNIT"), fp("strike", "STRIKE", 2), fp("consumable", "MAG"), fp("unit", "GONE"))
    devices, problems = devices_of(given(items=[kept]), made)
    # Two strikes of a pair are two; what is no unit, strike or lock by its role hangs on nothing.
    assert [each.part for each in devices] == ["UNIT", "STRIKE", "STRIKE", "the existing electric strike"]
    assert problems == ()
    # Units that are alike are worked out once, and are the same.
    known = {}
    first, _ = devices_of(given(), made, known)
    assert set(known) == {"UNIT"}
    assert devices_of(given(), made, known)[0] == first
    twice, _ = devices_of(given(), only(fp("unit", "UNIT", 2)), known)
    assert [each.part for each in twice] == ["UNIT", "UNIT"]
    # What stays there once, however many of its locks are converted.
    there = replace(given(items=[kept]), point=LockPoint(number=2))
    assert [each.part for each in devices_of(there, made)[0]] == ["UNIT", "STRIKE", "STRIKE"]
    assert (switched(given(items=[kept]), made), switched(there, made)) == (3, 2)
    assert switched(given(), only(fp("unit", "UNIT"))) == 0


@pytest.mark.parametrize("name", ["rated_v", "rated_a", "current_form"])
def test_the_label_of_what_stays_is_read(name):
    devices, (problem,) = devices_of(given(items=[item("electric-strike", **{**LABEL, name: None})]), only())
    assert (devices, problem.needs) == ((), (f"existing_item.{name}",))


def test_what_stays_by_the_way_it_fails():
    def kept(kind="electric-strike", **facts):
        ((found,), _) = devices_of(given(items=[item(kind, **{**LABEL, **facts})]), only())
        return found

    secure = kept()
    assert (secure.role, secure.holding, secure.peak, secure.least, secure.current) == ("strike", 0.0, 0.35, 0.0, "dc")
    assert (secure.minimum_v, secure.maximum_v) == (pytest.approx(10.2), pytest.approx(13.2))
    assert "no current at rest, as fail-secure means" in secure.assumed
    untold = kept(fail=None)
    assert (untold.fail, untold.holding, untold.least) == ("", 0.35, None)
    assert any(each.startswith("held all the time") for each in untold.assumed)
    magnet = kept("electromagnetic-lock", fail=None)
    assert (magnet.fail, magnet.holding, magnet.least) == ("fail-safe", 0.35, 0.35)


def test_what_is_kept_and_what_sits_on_the_leaf():
    items = [item("electric-strike"), item("electromagnetic-lock", disposition="remove"), item("closer")]
    assert [each.kind for each in releases_kept(given(opening(), items=items))] == ["electric-strike"]
    lock = catalogue(MAG={"kind": "electrified-lock"}).get("MAG")
    assert on_leaf(unit(), None)
    assert not on_leaf(strike(), catalogue().get("STRIKE"))
    assert on_leaf(strike(), lock)


def test_why_a_device_does_not_suit_a_supply():
    part = catalogue(UNIT={"current": "ac"}).get("UNIT")
    assert unsuited(unit(), None, 12.0, "dc") is None
    assert unsuited(unit(), None, 24.0, "dc") == "24 V is over the highest 14 V of the load"
    assert unsuited(unit(), part, 12.0, "dc") == "the supply gives DC, the load takes AC"
