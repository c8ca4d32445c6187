"""What rules and fitting ask for can be told: each fact has its column in the survey, each attribute in its kind.

All rules of openings are run over openings of every form with a fit of parts of every kind, with one attribute after
another left out, with all of them, and with the facts of the survey left out; what they then say they need is held
against what is declared. What is written out in the source of rules and fitting is held against it too.
"""

import ast
import re
from dataclasses import fields, replace
from functools import cache
from pathlib import Path

import pytest

import hwsched
from hwsched.catalogue import KINDS, kind_of
from hwsched.fitting import fit as fit_of
from hwsched.rules import RULES, judge
from hwsched.survey import ENTITIES
from hwsched.values import Catalogue, Item, Leaf, Opening
from tests.fitting.door import MORE
from tests.rules.scenario import catalogue, fit, fp, given, hole, item, leaf, lock, opening, part, place

ROOT = Path(hwsched.__file__).parent
DECLARED = {entity.name: {attribute.name for attribute in entity.attributes} for entity in ENTITIES}
OF_ANY_KIND = {attribute.name for kind in KINDS for attribute in kind.attributes}
SURVEYED = tuple(DECLARED)
# Facts of nothing that has columns: a fit that is not there yet, a supply's own place, a wall without a leaf.
NOT_SURVEYED = {"opening.fit"}
"""What a supply waits for and no survey declares."""
FACT = re.compile(r"^(opening|leaf|existing_item)\.([a-z_]+)$")
OF_PART = re.compile(r"^part (\S+)\.(\w+)$")

RARE = (
    part("CHANNEL", "surface-raceway", inside_mm=10.0, width_mm=16.0, fire_listed=True),
    part(
        "ELOCK", "electrified-lock", form="mortise", supply_v=12.0, holding_a=0.3, fail="fail-secure", fire_listed=True
    ),
)
CAT = catalogue(add=[*MORE, *RARE])
FULL = opening(rating="45", exposure="exterior", temperature_low_c=-10.0, supply_distance_m=10.0, egress="panic")
ALL_POWER = (
    fp("supply", "PSU"), fp("power-transfer", "LOOP"), fp("wire", "WIRE", 20), fp("strike", "STRIKE"),
    fp("battery", "CELL", 6), fp("tool", "BIT"), fp("tool", "BOREJIG"), fp("consumable", "SLEEVE"),
    fp("credential", "KEY"), fp("lead-extension", "EXT"), fp("mounting", "GASKET"), fp("ring", "RING"),
    fp("cam", "CAM"), fp("collar", "COL"),
)  # fmt: skip
HOLES = (
    hole(), hole(9.525, up_deg=-45.0, edge_deg=-15.0, order=2), hole(7.9, "bolt", order=1), hole(53.975, "bore"),
    hole(0.0, "pocket", face="lock-edge", width_mm=17.5, height_mm=350.0),
)  # fmt: skip
LEAVES = {
    "wood": leaf(),
    "hollow-metal": leaf(material="hollow-metal"),
    "aluminium": leaf(material="aluminium", construction="narrow-stile", stile_mm=60.0),
    "glass": leaf(material="glass", construction="frameless", thickness_mm=12.7),
    "steel-gate": leaf(material="steel-gate", stile_mm=100.0),
}
LOCKS = (
    ("mortise", "CYL", "cylinder"), ("rim", "RIM", "cylinder"), ("euro-profile", "EURO", "cylinder"),
    ("euro-profile", "HALF", "cylinder"), ("bored", "BORED", "lock"), ("cabinet", "CAB", "lock"),
    ("gate", "GATE", "lock"), ("reader", "READ", "reader"),
)  # fmt: skip
STANDING = (
    item("closer"),
    item("exit-device", face="inside"),
    item("lite"),
    item("electromagnetic-lock", face="frame"),
)


@cache
def openings_and_fits():
    """Openings with fits in which parts of every kind stand."""
    found = []
    for form, number, role in LOCKS:
        for lf in LEAVES.values():
            lk = lock(form, case_offset_mm=0.0)
            for unit, where in (("UNIT", place()), ("EDGE", place(face="edge", pattern="in-edge"))):
                more = (*ALL_POWER, fp("tailpiece", "TAIL"), fp("fastener", "BOLT", 4))
                base = fit(
                    *more, lock_number=number, role=role, unit=unit, power="supply", placement=where, holes=HOLES
                )
                found.append((given(FULL, lf, lk, STANDING, cat=CAT), base))
        rare = (fp("raceway", "CHANNEL", 0.9, "surface-raceway"), fp("strike", "MAG"), fp("coin-cell", "COIN"))
        released = (*rare, fp("strike", "ELOCK", kind="electrified-lock"), fp("wire", "WIRE", 20))
        released_fit = fit(*released, lock_number=number, role=role, power="supply", holes=HOLES)
        found.append((given(FULL, leaf(), lock(form), cat=CAT), released_fit))
        battery = fit(*ALL_POWER, lock_number=number, role=role, holes=HOLES)
        found.append((given(FULL, leaf(), lock(form), cat=CAT), battery))
    for form in ("lift", "turnstile", "gate", "cabinet"):
        kind = {"gate": "GATE", "cabinet": "CAB"}.get(form, "READ")
        there = replace(FULL, form=form)
        leaves = () if kind == "READ" else (LEAVES["steel-gate" if kind == "GATE" else "wood"],)
        lk = lock({"GATE": "gate", "CAB": "cabinet"}.get(kind, "reader"))
        found.append(
            (given(there, lk=lk, cat=CAT, leaves=leaves), fit(*ALL_POWER, lock_number=kind, role="lock", holes=HOLES))
        )
    return tuple(found)


def with_parts(change):
    return Catalogue({number: change(part) for number, part in CAT.parts.items()}, "test")


def without(name):
    """The catalogue in which no part has an attribute."""
    return with_parts(lambda part: replace(part, attributes={n: v for n, v in part.attributes.items() if n != name}))


def asked(rule, inputs):
    """Needs that a rule names over inputs."""
    return {
        need
        for there, base in inputs
        for verdict in judge(rule, there, base, settings=there.settings)
        for need in verdict.needs
    }


def wrong(needs):
    """Those that nothing declares."""
    found = set()
    for need in needs:
        if fact := FACT.match(need):
            if fact[2] not in DECLARED[fact[1]]:
                found.add(need)
        elif of_part := OF_PART.match(need):
            part = CAT.get(of_part[1])
            kind = kind_of(part.kind) if part is not None else None
            assert kind is not None, need
            if of_part[2] not in {attribute.name for attribute in kind.attributes}:
                found.add(f"{kind.name}.{of_part[2]}")
    return found


BLANK = with_parts(lambda part: replace(part, attributes={}))


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)
def test_what_a_rule_asks_of_a_part_has_a_column(rule):
    """With each attribute that its parts have left out, and with all of them."""
    assert wrong(asked(rule, blanked())) == set()


@cache
def blanked():
    """Openings with their fits out of catalogues that lack attributes: put together once for all rules."""
    names = sorted({name for part in CAT.parts.values() for name in part.attributes})
    found = [(replace(there, catalogue=BLANK), base) for there, base in openings_and_fits()]
    for name in names:
        cat = without(name)
        found += ((replace(there, catalogue=cat), base) for there, base in openings_and_fits()[::3])
    return tuple(found)


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)
def test_what_a_rule_asks_of_the_survey_has_a_column(rule):
    """With the facts of opening, leaves and items left out, each alone and all together."""
    assert wrong(asked(rule, unsurveyed())) == set()


@cache
def unsurveyed():
    return tuple((changed, base) for there, base in openings_and_fits() for changed in blank_surveys(there))


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)
def test_a_fit_that_lacks_anything_is_no_error_of_a_rule(rule):
    """One is judged while it is made: parts, place, lead and stack come one after the other, by hand in any order."""
    for there, made in halfway():
        judge(rule, there, made, settings=there.settings)


@cache
def halfway():
    return tuple((there, made) for there, base in openings_and_fits()[1::10] for made in unfinished(base))


def unfinished(base):
    for name in ("placement", "cable", "stack", "battery"):
        yield replace(base, **{name: None})
    yield replace(base, holes=())
    for role in dict.fromkeys(("unit", *(each.role for each in base.parts))):
        yield replace(base, parts=tuple(each for each in base.parts if each.role != role))
        yield replace(base, parts=tuple(each for each in base.parts if each.role == role))
        # One that is out of the catalogue meanwhile.
        gone = (replace(each, part="GONE") if each.role == role else each for each in base.parts)
        yield replace(base, parts=tuple(gone))


def blank_surveys(there):
    bare_opening = Opening(there.opening.id, there.opening.mark, form=there.opening.form)
    bare_leaves = tuple(Leaf(each.id) for each in there.leaves)
    bare_items = tuple(Item(each.id, kind=each.kind, lock_form=each.lock_form) for each in there.items)
    yield replace(there, opening=bare_opening)
    yield replace(there, leaves=bare_leaves)
    yield replace(there, items=bare_items)
    yield replace(there, opening=bare_opening, leaves=bare_leaves, items=bare_items)


def test_what_the_fitting_asks_for_has_a_column():
    """Of every opening, with each fact of its lock, leaf and frame left out."""
    for there, _ in openings_and_fits()[::4]:
        for name in (each.name for each in fields(Item) if each.name not in ("id", "kind")):
            first, *rest = there.items
            found = fit_of(replace(there, items=(replace(first, **{name: None}), *rest)))
            assert wrong({need.fact for need in found.needs}) == set()
        found = fit_of(replace(there, catalogue=BLANK))
        assert wrong({need.fact for need in found.needs}) == set()


def written():
    """Facts that stand written out in rules and fitting, with the file."""
    for folder in ("rules", "fitting"):
        for path in sorted((ROOT / folder).rglob("*.py")):
            for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
                if isinstance(node, ast.Constant) and isinstance(node.value, str):
                    yield path.name, node.value
                elif isinstance(node, ast.JoinedStr):
                    text = "".join(each.value if isinstance(each, ast.Constant) else "{}" for each in node.values)
                    yield path.name, text


def test_what_is_written_in_the_source_has_a_column():
    seen = 0
    for file, text in written():
        if fact := FACT.match(text):
            seen += 1
            assert fact[2] in DECLARED[fact[1]] or text in NOT_SURVEYED, (file, text)
        elif of_part := re.match(r"^part \{\}\.([a-z_]+)$", text):
            seen += 1
            assert of_part[1] in OF_ANY_KIND, (file, text)
    assert seen > 100


def test_the_walk_meets_parts_of_every_kind_that_a_fit_holds():
    """What no case holds is asked for nothing: kinds that stand in no fit are named here."""
    held = {CAT.parts[each.part].kind for _, base in openings_and_fits() for each in base.parts}
    missing = {kind.name for kind in KINDS} - held
    # A supply's own, and what is put up with it: no opening holds them.
    assert missing == {"standby-battery", "enclosure", "limiter"}


def test_the_walk_finds_what_has_no_column():
    """A rule that asks for what nobody can tell is found."""
    assert wrong({"part CAB.fire_proof", "leaf.colour"}) == {"cabinet-lock.fire_proof", "leaf.colour"}
