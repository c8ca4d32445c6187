"""What nobody states of a supply is asked for, bounded or said as assumed: every fact of power in turn.

A table has each fact that may be left empty. One that is not in it fails, so that no new one gets a default in silence.
"""

from dataclasses import replace
from functools import cache

import pytest

from hwsched.catalogue import kind_of
from hwsched.catalogue.traits.supplied_load import SUPPLIED_LOAD
from hwsched.catalogue.traits.unit_power import UNIT_POWER
from hwsched.rules import CIRCUIT_RULES, RULES, judge, rule_named
from hwsched.survey.power import CIRCUIT, RUN, SUPPLY
from hwsched.values import Catalogue, Settings
from hwsched.values.opening_input import SupplyLink
from hwsched.wiring import ConnectedOpening
from hwsched.wiring.goods import bill_of
from tests.rules.scenario import fit, fp, given, item, leaf, opening, part
from tests.wiring.power_rows import circuit, parts, run, supply, work

NO_NUMBER = None
"""Decides nothing that is worked out of a supply: a name, a place, or what other rules judge."""
DECLARED = "Empty:"
"""Its form says what an empty one is taken for, and with that no place finds more than with any other value."""
COILS = ("electric-strike", "electromagnetic-lock", "electrified-lock")
UNITS = ("surface-unit", "edge-unit")
WHOLE = ("power-supply", "standby-battery", "wire", "power-transfer", "limiter", "enclosure")

WORD = {
    ("power-supply", "tolerance_share"): "part PSU.tolerance_share",
    ("power-supply", "class_2"): "part PSU.class_2",
    ("power-supply", "regulated"): "part PSU.regulated",
    ("power-supply", "standby_v"): "PSU to take batteries of what is laid",
    ("power-supply", "input"): "part PSU.input",
    ("power-supply", "current"): "part PSU.current",
    ("power-supply", "limiting"): "PSU limited by its own design",
    ("power-supply", "inside_ohm"): "no resistance inside PSU",
    ("power-supply", "cabinet"): "part PSU.cabinet",
    ("power-supply", "own_limiters"): DECLARED,
    ("power-supply", "own_limiter_a"): "part PSU.own_limiter_a",
    ("power-supply", "terminal_plus"): NO_NUMBER,
    ("power-supply", "terminal_minus"): NO_NUMBER,
    ("standby-battery", "hours_rate"): "capacity rated over 20 h",
    ("standby-battery", "end_v"): "part BAT.end_v",
    ("standby-battery", "inside_ohm"): "no resistance inside BAT",
    ("wire", "jacket"): NO_NUMBER,
    ("wire", "outside_diameter_mm"): NO_NUMBER,
    ("wire", "reel_m"): "part WIRE.reel_m",
    ("power-transfer", "length_mm"): "part LOOP.length_mm",
    ("power-transfer", "conductor_names"): NO_NUMBER,
    ("power-transfer", "hinge_height_mm"): NO_NUMBER,
    ("power-transfer", "hinge_width_mm"): NO_NUMBER,
    ("power-transfer", "fire_listed"): NO_NUMBER,
    ("limiter", "form"): NO_NUMBER,
    ("enclosure", "batteries"): "part CAB.batteries",
    ("enclosure", "battery_ah"): "part CAB.battery_ah",
    ("enclosure", "conductors"): "part BOX.conductors",
    ("coil", "inrush_a"): "STRIKE: no more in the first moment",
    ("coil", "rest_a"): "STRIKE: no current at rest, as fail-secure means",
    ("coil", "current"): "MAG: taken as one for DC",
    ("coil", "supply_low_v"): "MAG: operating window taken as",
    ("coil", "supply_high_v"): "MAG: operating window taken as",
    ("coil", "draws"): "MAG: taken as a constant current",
    ("coil", "terminal_plus"): NO_NUMBER,
    ("coil", "terminal_minus"): NO_NUMBER,
    ("unit", "supply_low_v"): "part UNIT.supply_low_v",
    ("unit", "supply_high_v"): "part UNIT.supply_high_v",
    ("unit", "supply_a"): "part UNIT.supply_a",
    ("unit", "supply_rest_a"): "UNIT: current at rest taken as the supply current",
    ("unit", "supply_inrush_a"): "UNIT: no more in the first moment",
    ("unit", "supply_conductors"): "UNIT: fed by two conductors",
    ("unit", "draws"): "UNIT: taken as a constant current",
    ("unit", "terminal_plus"): NO_NUMBER,
    ("unit", "terminal_minus"): NO_NUMBER,
    **{("supply", name): NO_NUMBER for name in ("building", "level", "place", "x_m", "y_m", "rise_m", "use", "notes")},
    ("supply", "part"): "supply.part",
    ("supply", "battery"): "No standby battery is laid",
    ("supply", "batteries"): "one battery",
    ("supply", "cabinet"): DECLARED,
    ("supply", "standby_hours"): "no standby asked of PS-s",
    ("supply", "temperature_c"): "supply.temperature_c",
    ("circuit", "wire"): "the wire of the run from",
    ("circuit", "temperature_c"): "conductors of C at the temperature of the rule 'Lowest voltage at every load'",
    ("circuit", "at_once"): "operations at one time on C as the rule 'Lowest voltage at every load' has them",
    ("circuit", "limiter_a"): "No fuse or limiter is laid",
    ("circuit", "limiter"): DECLARED,
    ("circuit", "alarm"): "circuit.alarm",
    ("circuit", "notes"): NO_NUMBER,
    ("run", "length_m"): "run.length_m",
    # The circuit's own then, which is asked for where it has none.
    ("run", "wire"): NO_NUMBER,
    ("run", "gauge"): NO_NUMBER,
    ("run", "stranding"): "run.stranding",
    ("run", "parallel"): "one conductor each way, none in parallel, on 4 of 5 runs of C",
    ("run", "extra_ohm"): "no resistance at the terminations of 4 of 5 runs of C",
    ("existing_item", "rated_v"): "existing_item.rated_v",
    ("existing_item", "rated_a"): "existing_item.rated_a",
    ("existing_item", "current_form"): "existing_item.current_form",
    ("existing_item", "fail"): "held all the time",
    ("existing_item", "loop_ohm"): "Nobody has measured the power transfer",
    ("opening", "operations_per_day"): "opening.operations_per_day",
    ("opening", "supply_distance_m"): "opening.supply_distance_m",
    ("opening", "rise_m"): "no way up from the hinges",
}

STAND_INS = {
    "circuit-voltage.temperature_c": ("circuit", "temperature_c"),
    "circuit-voltage.at_once": ("circuit", "at_once"),
    "standby-capacity.rated_hours": ("standby-battery", "hours_rate"),
    "standby-capacity.end_share": ("standby-battery", "end_v"),
    "standby-capacity.release_s": "held 5 s an operation",
    "supply-drop.temperature_c": "conductors at the temperature of the rule 'Voltage at the end of the wires'",
}
"""Limits that stand in for a fact, with the fact, or the words by which it is said."""
DEMANDS = {
    "busy-on-supply.operations", "circuit-limiter.margin", "power-crosses-hinge.conductors",
    "standby-capacity.ageing", "standby-capacity.margin", "standby-capacity.peukert", "supply-class-2.power_va",
    "supply-growth.openings", "supply-loading.share", "supply-share.share", "way-clear.wall_mm",
}  # fmt: skip
"""Limits that are asked of what is laid."""


def catalogue(kind="", name=""):
    """Parts of which everything is stated, but for one attribute."""
    coil = {"inrush_a": 0.6, "rest_a": 0.1, "current": "dc", "supply_low_v": 9.0, "supply_high_v": 14.0,
            "draws": "resistance", "terminal_plus": "+", "terminal_minus": "-"}  # fmt: skip
    unit = {"draws": "power", "supply_rest_a": 0.1, "supply_inrush_a": 0.5, "supply_conductors": 2,
            "terminal_plus": "+", "terminal_minus": "-"}  # fmt: skip
    stated = parts(
        add=(
            part("BAT", "standby-battery", voltage_v=12.0, capacity_ah=40.0, end_v=11.0, hours_rate=20.0,
                 inside_ohm=0.01),
            part("ELOCK", "electrified-lock", supply_v=12.0, holding_a=0.2, fail="fail-secure", **coil),
            part("LIM", "limiter", rating_a=4.0, form="fuse"),
            part("CAB", "enclosure", form="cabinet", batteries=2, battery_ah=40.0),
            part("BOX", "enclosure", form="junction-box", conductors=20),
        ),
        PSU={"output_a": 8.0, "inside_ohm": 0.01, "limiting": "inherent", "standby_v": 12.0, "input": "mains",
             "cabinet": "bare", "own_limiters": 1, "own_limiter_a": 1.0, "terminal_plus": "+", "terminal_minus": "-"},
        UNIT=unit, EDGE=unit, STRIKE=coil, MAG=coil | {"fail": "fail-safe"},
        WIRE={"jacket": "PVC", "reel_m": 100.0},
        LOOP={"length_mm": 500.0, "conductor_names": "red, black"},
    )  # fmt: skip
    of = {"coil": COILS, "unit": UNITS}.get(kind, (kind,))
    made = {
        each.number: replace(
            each,
            unit="REEL" if each.kind == "wire" else each.unit,
            attributes=each.attributes | ({name: None} if each.kind in of else {}),
        )
        for each in stated.parts.values()
    }
    return Catalogue(made, f"{kind} {name}")


def doors(cat, kind, name):
    """A new strike and a new transfer; a strike and a transfer that stay; a magnet; an electrified lock."""
    blank = {name: None} if kind == "existing_item" else {}
    of_opening = {name: None} if kind == "opening" else {}
    label = {"rated_v": 12.0, "rated_a": 0.3, "current_form": "dc", "fail": "fail-safe"}
    kept = [
        item("electric-strike", face="frame", **{**label, **{n: v for n, v in blank.items() if n in label}}),
        item("power-transfer", face="edge", conductors=6, **({"loop_ohm": 0.1} | {n: v for n, v in blank.items()
                                                                                 if n == "loop_ohm"})),
    ]  # fmt: skip
    made = {
        "a": ((fp("strike", "STRIKE"),), (), ()),
        "k": ((), ("power-transfer",), kept),
        "m": ((fp("strike", "MAG"),), ("unit", "power-transfer"), ()),
        "e": ((fp("lock", "ELOCK", kind="electrified-lock"),), ("unit", "power-transfer", "cylinder"), ()),
    }
    facts = {"operations_per_day": 30.0, "supply_distance_m": 20.0, "rise_m": 2.0} | of_opening
    return {
        mark: ConnectedOpening(
            given(opening(id=mark, mark=mark.upper(), **facts), leaf(raceway=True), items=stays, cat=cat),
            fit(*more, power="supply", without=without),
        )
        for mark, (more, without, stays) in made.items()
    }


def told(kind="", name=""):
    """Return all that is said of a supply with everything stated but one fact, and what was worked out."""
    cat = catalogue(kind, name)
    here = doors(cat, kind, name)
    blank = {name: None}

    def of(entity, **facts):
        return {**facts, **blank} if kind == entity else facts

    joined = {"extra_ohm": 0.1, "parallel": 1}
    runs = [run("supply", "J1", 3.0, **joined)]
    typed = {"gauge": "18 AWG", "stranding": "stranded", "wire": None}
    for mark in here:
        as_typed = typed if mark == "m" else {}
        runs.append(run("J1", mark, **{"length_m": 2.0, **joined, **as_typed, **of("run")}))
    supplies = [supply(**of("supply", battery="BAT", batteries=1, cabinet="CAB", standby_hours=4.0, temperature_c=25.0,
                            part="PSU", use="laid"))]  # fmt: skip
    circuits = [circuit(**of("circuit", temperature_c=30.0, at_once=1, limiter_a=4.0, limiter="LIM", alarm="drops",
                             wire="WIRE"))]  # fmt: skip
    if (kind, name) in (("power-supply", "own_limiter_a"), ("circuit", "limiter_a")):
        circuits = [replace(circuits[0], limiter=None)]
    if (kind, name) == ("enclosure", "batteries") or (kind, name) == ("enclosure", "battery_ah"):
        supplies = [replace(supplies[0], cabinet=None)]
    settings = Settings(length_style="mm", limits={"standby-capacity.peukert": 1.2})
    found = work(runs, here, cat, supplies=supplies, circuits=circuits, settings=settings)
    bill = bill_of(found.supplies, [each.points for each in here.values()], cat)
    said = [words for each in found.findings for words in (each.finding.message, *each.finding.needs)]
    said += [each for s in found.supplies for c in s.circuits for proof in c.proofs for each in proof.missing]
    said += [need for each in (*bill.goods, *bill.licensed) for need in each.needs]
    for each in here.values():
        asked = replace(each.given, settings=settings)
        for rule in RULES:
            if rule.discipline == "power":
                for own in (asked, replace(asked, supply_link=SupplyLink("PSU"))):
                    for verdict in judge(rule, own, each.fit, settings=settings):
                        said += [verdict.message, *verdict.needs]
    return "\n".join(said), found.supplies[0]


def numbers(result):
    """What is worked out of a supply."""
    at = {(n.node, state): v for c in result.circuits for n in c.nodes for state, v in n.volts.items()}
    proofs = [(p.opening_id, p.standing) for c in result.circuits for p in c.proofs]
    return at, proofs, result.held_a, result.inrush_a, result.peak_a, result.standby


@cache
def full():
    return told()


def facts():
    for kind in WHOLE:
        yield from ((kind, each.name) for each in kind_of(kind).attributes if not each.required)
    yield from (("coil", each.name) for each in SUPPLIED_LOAD if not each.required)
    supplied = [each for each in UNIT_POWER if each.name.startswith(("supply_", "draws", "terminal_"))]
    yield from (("unit", each.name) for each in supplied if not each.required)
    for entity in (SUPPLY, CIRCUIT, RUN):
        yield from ((entity.name, each.name) for each in entity.attributes if not each.required)


def note_of(kind, name):
    if kind == "coil":
        return next(each.note for each in SUPPLIED_LOAD if each.name == name)
    entity = next((each for each in (SUPPLY, CIRCUIT, RUN) if each.name == kind), None)
    return next(each.note for each in (entity or kind_of(kind)).attributes if each.name == name)


def test_every_fact_of_power_that_may_be_left_empty_is_in_the_table():
    every = set(facts())
    asked = {"existing_item", "opening"}
    assert every == {key for key in WORD if key[0] not in asked}


def test_with_everything_stated_nothing_is_said_of_it():
    said, result = full()
    for key, word in WORD.items():
        assert word in (NO_NUMBER, DECLARED) or word not in said, key
    assert {p.standing for c in result.circuits for p in c.proofs} == {"proved"}


@pytest.mark.parametrize(("kind", "name"), WORD, ids=str)
def test_what_is_not_stated_is_asked_for_or_said(kind, name):
    word = WORD[kind, name]
    said, result = told(kind, name)
    if word == NO_NUMBER:
        assert numbers(result) == numbers(full()[1])
    elif word == DECLARED:
        assert DECLARED in note_of(kind, name)
        (blank, *_), (stated, *_) = numbers(result), numbers(full()[1])
        assert blank.keys() == stated.keys()
        assert all(blank[key] <= stated[key] + 1e-9 for key in blank)
    else:
        assert word in said


def test_a_limit_that_stands_in_for_a_fact_is_said_where_it_does():
    power = [rule for rule in RULES if rule.discipline == "power"]
    every = {f"{rule.id}.{limit.name}" for rule in (*power, *CIRCUIT_RULES) for limit in rule.limits}
    assert every == STAND_INS.keys() | DEMANDS
    for name, word in STAND_INS.items():
        assert word in WORD if isinstance(word, tuple) else word in full()[0], name
    # A project that states how warm its conductors get has stated it.
    at = next(iter(doors(catalogue(), "", "").values()))
    stated = Settings(length_style="mm", limits={"supply-drop.temperature_c": 40.0})
    (verdict,) = judge(rule_named("supply-assumed"), replace(at.given, settings=stated), at.fit, settings=stated)
    assert "temperature" not in verdict.message
