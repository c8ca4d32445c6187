"""What a fit is not told to have read has no part in it: over the sample, such facts are changed at will."""

from dataclasses import fields, replace
from functools import cache, partial

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


@pytest.fixture(scope="module")
def watched(inputs):
    """Fits one of them, watched; once, however many tests ask."""
    return cache(lambda number: fit_with_facts(inputs[number]))


def test_a_watched_case_has_the_fit_of_the_case(inputs, watched):
    for number in range(len(inputs))[SEED % 3 :: 3]:
        assert watched(number)[0] == fit(inputs[number])


def test_no_fit_reads_what_tells_openings_alike_apart(inputs, watched):
    for number in range(len(inputs)):
        _, read = watched(number)
        assert IGNORED.isdisjoint((*read.opening, *read.leaf, *read.item))


def unread(read):
    """Yield each fact that a fit has not read, and what gives it another value."""
    for name in sorted({f.name for f in fields(Opening)} - {*read.opening, *IGNORED}):
        yield name, partial(otherwise, OPENING, "opening", name)
    for name in sorted({f.name for f in fields(Leaf)} - {*read.leaf, *IGNORED}):
        yield name, partial(otherwise, LEAF, "leaves", name)
    for name in sorted({f.name for f in fields(Item)} - {*read.item, *IGNORED}):
        yield name, partial(otherwise, ITEM, "items", name)


def otherwise(entity, of, name, given):
    held = getattr(given, of)
    new = [
        replace(x, **{name: other_value(entity.attribute(name), getattr(x, name))})
        for x in (held if isinstance(held, tuple) else [held])
    ]
    return replace(given, **{of: tuple(new) if isinstance(held, tuple) else new[0]})


def test_the_fit_stays_when_a_fact_that_was_not_read_changes(inputs, watched):
    for number in range(len(inputs))[SEED % 80 :: 80]:
        found, read = watched(number)
        for name, changed in unread(read):
            assert fit(changed(inputs[number])) == found, name


def test_the_fit_stays_when_all_facts_that_were_not_read_change_at_once(inputs, watched):
    """Fifty times as cheap as one after the other, so of more openings."""
    for number in range(len(inputs))[SEED % 8 :: 8]:
        given, (found, read) = inputs[number], watched(number)
        changes = list(unread(read))
        assert len(changes) > 20
        for _, changed in changes:
            given = changed(given)
        assert fit(given) == found


def test_the_fit_stays_when_settings_and_parts_that_were_not_read_change(inputs, watched):
    limits = {f"{rule.id}.{limit.name}": limit.value for rule in RULES for limit in rule.limits}
    for number in range(len(inputs))[SEED % 10 :: 10]:
        given, (found, read) = inputs[number], watched(number)
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


def test_what_was_read_is_little_enough_to_be_of_use(inputs, watched):
    """A door asks for no gate locks, and no fit asks for the notes of the survey."""
    doors = [number for number, given in enumerate(inputs) if given.opening.form == "single"]
    assert doors
    for number in doors:
        _, read = watched(number)
        assert "gate-lock" not in read.kinds
        assert not {"stair", "egress", "accessible"} & {*read.opening}
