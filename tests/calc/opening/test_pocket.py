"""In-edge pocket: common-practice unit, walls, conflicts, lead, rated leaf, bad input, every position in turn."""

import doctest
import json
import random
from dataclasses import replace

import pytest

from hwsched.calc.calculator import InputError
from hwsched.calc.opening import pocket as module
from hwsched.calc.opening.pocket import POCKET, EdgeItem, PocketInput, pocket
from tests.calc.oracles import case_count
from tests.calc.oracles import pocket as oracle

INCH = 25.4
# Common practice: 13 3/4 in of clear edge, 1 3/4 in depth, 11/16 in width, a 9 in lead
UNIT = PocketInput(
    leaf_mm=1.75 * INCH,
    leaf_height_mm=84 * INCH,
    stile_mm=120,
    lock_y0=900,
    lock_y1=1100,
    length_mm=13.75 * INCH,
    depth_mm=1.75 * INCH,
    width_mm=11 / 16 * INCH,
    bridge_mm=20,
    hand_mm=75,
    lead_from_y=1080,
    lead_mm=9 * INCH,
    side_wall_mm=10,
    back_wall_mm=10,
    rated=False,
)


def test_docs():
    assert doctest.testmod(module).failed == 0


def test_common_practice_unit():
    got = pocket(UNIT)
    assert got.status == "fits"
    assert got.best is not None
    assert (got.best.side, got.best.y0, got.best.bridge_mm) == ("above", 1120, 20)
    # 40 mm to the pocket, its whole depth, a hand
    assert got.best.lead_needed_mm == pytest.approx(40 + 44.45 + 75)
    assert got.key_wall_mm == pytest.approx((1.75 - 11 / 16) / 2 * INCH)
    assert got.finding is None


def test_lead_limits_the_distance():
    got = pocket(replace(UNIT, bridge_mm=20 + 69.2))
    assert got.status == "no"
    assert got.refusals[0].name == "lead"
    assert got.refusals[0].short_mm == pytest.approx(40 + 69.2 + 44.45 + 75 - 9 * INCH)
    just = pocket(replace(UNIT, bridge_mm=20 + 9 * INCH - 159.45))
    assert just.status == "fits"


@pytest.mark.parametrize("connector", [0.0, 12.0, 13.75 * INCH])
@pytest.mark.parametrize(("side", "lead_from", "way"), [("above", 1080, 1120 - 1080), ("below", 920, 920 - 880)])
def test_the_lead_reaches_to_the_connector_wherever_on_the_unit_that_is(side, lead_from, way, connector):
    """20 mm off the lock, the connector's place further, the pocket's whole depth, a hand; on both sides alike."""
    got = pocket(replace(UNIT, lead_from_y=lead_from, connector_mm=connector, lead_mm=None))
    (spot,) = (each for each in got.spots if each.side == side)
    assert spot.lead_needed_mm == pytest.approx(way + connector + 44.45 + 75)


def test_bolt_above_sends_it_below():
    got = pocket(replace(UNIT, items=(EdgeItem("bolt", 1300, 1340, 5),), lead_from_y=910, lead_mm=300))
    assert got.best is not None
    assert got.best.side == "below"
    assert got.best.y1 == pytest.approx(880)
    assert got.spots[1].side == "above"
    assert got.spots[1].y0 == 1345


def test_no_clear_edge_says_how_much_is_short():
    got = pocket(replace(UNIT, leaf_height_mm=1400, items=(EdgeItem("closer", 700, 760),)))
    assert got.status == "no"
    short = {r.name: r.short_mm for r in got.refusals}
    assert short["clear edge above"] == pytest.approx(13.75 * INCH - 280)
    assert "clear edge below" not in short  # the stretch under the closer takes it, though its lead is short
    assert short["lead"] > 0


def test_touching_an_item_is_allowed():
    exact = EdgeItem("bolt", 1120 + 13.75 * INCH, 1600)
    best = pocket(replace(UNIT, items=(exact,))).best
    assert best is not None
    assert best.y0 == 1120


def test_walls_are_refused_with_numbers():
    got = pocket(replace(UNIT, leaf_mm=1.375 * INCH, stile_mm=50))
    assert got.status == "no"
    assert got.best is None
    short = {r.name: r.short_mm for r in got.refusals}
    assert short["key side wall"] == pytest.approx(10 - (1.375 - 11 / 16) / 2 * INCH)
    assert short["back wall"] == pytest.approx(10 - (50 - 44.45))


def test_unknown_lead_and_rating_are_asked_for():
    got = pocket(replace(UNIT, lead_mm=None, rated=None))
    assert (got.status, got.needs) == ("unknown", ("lead_mm", "rated"))
    assert got.best is not None


def test_rated_leaf_has_its_finding():
    """NFPA 80 5.1.5: a new pocket is label-service work or a field modification (facts 4.1)."""
    finding = pocket(replace(UNIT, rated=True)).finding
    assert finding is not None
    assert "field modification" in finding
    assert "authority having jurisdiction" in finding


def test_longer_lead_never_makes_it_worse():
    fits = [pocket(replace(UNIT, lead_mm=100.0 + i)).status == "fits" for i in range(200)]
    assert fits == sorted(fits)
    assert any(fits)
    assert not all(fits)


BAD = [
    ({"leaf_mm": 0}, "leaf_mm"),
    ({"stile_mm": float("nan")}, "stile_mm"),
    ({"lock": {"y0": 900, "y1": 900}}, "lock.y1"),
    ({"lock": {"y0": 900, "y1": 2101}, "lead_from_y": 1000}, "lock.y1"),
    ({"lock": {"y0": -1, "y1": 900}}, "lock.y0"),
    ({"pocket": {"length_mm": 0, "depth_mm": 1, "width_mm": 1}}, "pocket.length_mm"),
    ({"pocket": {"length_mm": 3, "depth_mm": 1}}, "pocket.width_mm"),
    ({"bridge_mm": -1}, "bridge_mm"),
    ({"hand_mm": None}, "hand_mm"),
    ({"lead_from_y": 1200}, "lead_from_y"),
    ({"lead_mm": 0}, "lead_mm"),
    ({"connector_mm": 400}, "connector_mm"),
    ({"items": [{"y0": 3, "y1": 2}]}, "items[0].y1"),
    ({"items": [{"y0": 3, "y1": 4, "clearance_mm": -2}]}, "items[0].clearance_mm"),
    ({"rated": "20 min"}, "rated"),
]


@pytest.mark.parametrize(("change", "field"), BAD)
def test_bad_input_names_its_field(change, field):
    with pytest.raises(InputError) as caught:
        POCKET.run({**POCKET.example, **change})
    assert caught.value.field == field


def test_calculator_declares_what_it_gives():
    out = POCKET.run(json.loads(json.dumps(POCKET.example)))
    assert [f.name for f in POCKET.outputs] == list(json.loads(json.dumps(out, allow_nan=False)))
    assert {f.name for f in POCKET.inputs} >= set(POCKET.example)


@pytest.mark.fuzz
def test_agrees_with_every_position_in_turn():
    rng = random.Random(308)
    seen = dict.fromkeys(("fits", "no", "unknown"), 0)
    for _ in range(case_count()):
        given = oracle.random_input(rng)
        out = POCKET.run(oracle.to_input(given))
        leads = {side: lead for side, lead in oracle.leads_by_side(given).items() if lead is not None}
        got = {s["side"]: s["lead_needed_mm"] for s in out["spots"]}
        assert got == pytest.approx({side: lead * oracle.UNIT for side, lead in leads.items()}), given
        for spot in out["spots"]:
            assert spot["bridge_mm"] >= given["bridge"] * oracle.UNIT - 1e-9
        key, inside, back = oracle.walls(given)
        assert (out["key_wall_mm"], out["inside_wall_mm"]) == (key * oracle.UNIT, inside * oracle.UNIT)
        assert out["back_wall_mm"] == back * oracle.UNIT
        stands = min(key, inside) >= given["side_wall"] and back >= given["back_wall"] and bool(leads)
        if given["lead"] is None:
            assert out["status"] == ("unknown" if stands else "no")
        else:
            stands = stands and min(leads.values()) <= given["lead"]
            assert out["status"] == ("fits" if stands else "no"), given
        assert bool(out["best"]) == (out["status"] != "no")
        assert bool(out["refusals"]) >= (out["status"] == "no")
        seen[out["status"]] += 1
    assert min(seen.values()) > case_count() / 50
