"""What a fit is not told to have read has no part in it: over the sample, such facts are changed at will."""

from dataclasses import fields, replace

import pytest

from hwsched.attributes import Attribute
from hwsched.fitting import fit, fit_with_facts
from hwsched.model.project import open_project
from hwsched.operations.findings.checking import check_openings
from hwsched.rules import RULES
from hwsched.survey import ITEM, LEAF, OPENING
from hwsched.values import Catalogue, Item, Leaf, Opening
from hwsched.values.facts_read import FactsKeys
from hwsched.values.input_key import IGNORED, input_key
from tests.turns import SEED

_ENTITIES = {"opening": OPENING, "leaf": LEAF, "item": ITEM}


@pytest.fixture(scope="module")
def inputs(sample_folder):
    """The sample's openings, of those alike one."""
    with open_project(sample_folder / "quayside-works.hwsched") as project:
        return list({input_key(each.given): each.given for each in check_openings(project)}.values())


def other_value(attribute: Attribute, value):
    if attribute.choices:
        return next(each.value for each in attribute.choices if each.value != value)
    if attribute.kind == "flag":
        return not value
    if attribute.kind in ("length", "number", "integer"):
        low, high = attribute.low or 0.0, attribute.high or 100.0
        return next(each for each in (low, high, (low + high) / 2) if each != value)
    return "otherwise"


def test_a_watched_case_has_the_fit_of_the_case(inputs):
    for given in inputs[SEED % 3 :: 3]:
        assert fit_with_facts(given)[0] == fit(given)


def test_no_fit_reads_what_tells_openings_alike_apart(inputs):
    for given in inputs:
        _, read = fit_with_facts(given)
        assert IGNORED.isdisjoint((*read.opening, *read.leaf, *read.item))


def test_the_fit_stays_when_facts_that_were_not_read_change(inputs):
    for given in inputs[SEED % 27 :: 27]:
        found, read = fit_with_facts(given)
        for name in sorted({f.name for f in fields(Opening)} - {*read.opening, *IGNORED}):
            value = other_value(OPENING.attribute(name), getattr(given.opening, name))
            assert fit(replace(given, opening=replace(given.opening, **{name: value}))) == found, name
        for name in sorted({f.name for f in fields(Leaf)} - {*read.leaf, *IGNORED}):
            leaves = [replace(x, **{name: other_value(LEAF.attribute(name), getattr(x, name))}) for x in given.leaves]
            assert fit(replace(given, leaves=tuple(leaves))) == found, name
        for name in sorted({f.name for f in fields(Item)} - {*read.item, *IGNORED}):
            items = [replace(x, **{name: other_value(ITEM.attribute(name), getattr(x, name))}) for x in given.items]
            assert fit(replace(given, items=tuple(items))) == found, name


def test_the_fit_stays_when_settings_and_parts_that_were_not_read_change(inputs):
    limits = {f"{rule.id}.{limit.name}": limit.value for rule in RULES for limit in rule.limits}
    for given in inputs[SEED % 10 :: 10]:
        found, read = fit_with_facts(given)
        unread = {name: 2 * value + 1 for name, value in limits.items() if name not in read.limits}
        off = frozenset(rule.id for rule in RULES) - {*read.rules}
        parts = {
            number: part
            if part.kind in read.kinds or number in read.parts
            else replace(part, list_price=0.01, superseded_by="", attributes={})
            for number, part in given.catalogue.parts.items()
        }
        assert unread
        assert off
        other = replace(
            given,
            settings=replace(given.settings, limits={**given.settings.limits, **unread}, rules_off=off),
            catalogue=Catalogue(parts, "other"),
        )
        assert fit(other) == found
        assert FactsKeys().key(other, read) == FactsKeys().key(given, read)


def test_what_was_read_is_little_enough_to_be_of_use(inputs):
    """A door asks for no gate locks, and no fit asks for the notes of the survey."""
    doors = [given for given in inputs if given.opening.form == "single"]
    assert doors
    for given in doors:
        _, read = fit_with_facts(given)
        assert "gate-lock" not in read.kinds
        assert not {"stair", "egress", "accessible"} & {*read.opening}
