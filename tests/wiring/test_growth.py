"""Later openings: what is borne holds when it is laid, and one more does not."""

import random

import pytest

from hwsched.values import Settings
from hwsched.values.power import PowerFacts
from hwsched.wiring.supply_results import growers_of, solve_supplies
from tests.wiring.power_rows import alone, circuit, connected, parts, run, said, supply

ASKED = {"supply-growth.openings": 2.0}
JUDGED = ("circuit-voltage", "circuit-collapse", "supply-loading", "circuit-limiter", "standby-capacity")


def grower(runs, cat, circuits=None):
    openings = {each.opening_id: connected(each.opening_id, cat) for each in runs if each.opening_id}
    facts = PowerFacts((supply(),), tuple(circuits or (circuit(limiter_a=2.5),)), tuple(runs))
    settings = Settings(length_style="mm")
    found = solve_supplies(facts, openings, cat, settings)
    return growers_of(found.supplies, facts, openings, cat, settings)["s"]


def test_the_share_of_the_supply_stops_growth():
    """80 % of 2.5 A are 2 A: five units of 0.4 A. Two are laid, three more are borne; the limiter has 1.25 x 2.0."""
    of = grower([run("supply", "a", 1.0), run("supply", "b", 1.0)], parts())
    (only,) = of.result.circuits
    count, stop = of.most(only, 16)
    assert (count, stop.count, stop.borne) == (3, 4, False)
    assert stop.rule in ("supply-loading", "circuit-limiter")
    # As many as were tried are borne.
    assert of.most(only, 2) == (2, None)


def test_volts_stop_growth_at_the_place_with_the_least_room():
    """At 60 m one unit of 0.4 A loses 1.066 V of the 1.4 V that 11.4 V leave; a second run of its own loses no more,
    and the resistance inside the supply is what the next one meets."""
    near = parts(PSU={"output_a": 50.0, "inside_ohm": 0.2})
    of = grower([run("supply", "a", 60.0), run("supply", "b", 1.0)], near, [circuit(limiter_a=40.0)])
    count, stop = of.most(of.result.circuits[0], 32)
    # 1.4 - 1.066 = 0.334 V; each unit takes 0.4 A x 0.2 ohm = 0.08 V of it: four in all, two of them laid.
    assert (count, stop.rule) == (2, "circuit-voltage")
    assert "later opening" not in stop.why or stop.borne is False


@pytest.mark.parametrize("seed", range(4))
def test_what_is_borne_holds_when_it_is_laid(seed):
    rng = random.Random(seed)
    cat = parts(PSU={"output_a": rng.choice([2.5, 5.0])}, UNIT={"supply_rest_a": 0.05, "supply_inrush_a": 0.6})
    runs, nodes = [], ["supply"]
    for i in range(rng.randint(1, 4)):
        runs.append(run(rng.choice(nodes), f"o{i}", rng.uniform(1, 25)))
        nodes.append(f"o{i}")
    of = grower(runs, cat)
    (only,) = of.result.circuits
    count, stop = of.most(only, 12)
    least = min((n for n in only.nodes if n.margin_v is not None), key=lambda n: n.margin_v)
    like = next(each for each in runs if each.opening_id == least.opening_id)

    def wrong(more):
        laid = [*runs, *(run(like.from_node, f"x{i}", like.length_m) for i in range(more))]
        found = alone(laid, cat, circuits=[circuit(limiter_a=2.5)])
        judged = [each for each in found.findings if each.finding.rule in JUDGED and each.finding.severity != "note"]
        # What concerns all of them concerns the later ones too, and is nothing new.
        return {
            (each.finding.rule, each.finding.severity, tuple(o for o in each.opening_ids if o[0] != "x") or "later")
            for each in judged
        }

    assert wrong(count) <= wrong(0)
    if stop is not None:
        assert wrong(stop.count) - wrong(0)


def test_room_that_is_asked_is_judged():
    def found(most_a):
        cat = parts(PSU={"output_a": most_a})
        return alone([run("supply", "a", 1.0)], cat, circuits=[circuit(limiter_a=2.0)], settings=Settings(limits=ASKED))

    # Three units of 0.4 A take 1.2 A: 80 % of 1.5 A.
    assert said(found(1.5), "supply-growth") == []
    (finding,) = said(found(1.4), "supply-growth")
    assert (finding.severity, finding.values) == ("warning", {"asked": 2.0})
    assert (
        "2 later openings on circuit C are not borne, as the rule 'Share of the supply that is used' says"
        in finding.message
    )
    assert said(alone([run("supply", "a", 1.0)]), "supply-growth") == []


def test_where_nothing_is_known_growth_is_unknown():
    cat = parts(UNIT={"supply_a": None})
    found = alone([run("supply", "a", 1.0)], cat, settings=Settings(limits=ASKED))
    (finding,) = said(found, "supply-growth")
    assert finding.message.startswith("Unknown: whether circuit C bears 2 later openings")
    assert finding.needs
