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
from hwsched.values.input_key import IGNORED, case_key

_ENTITIES = {"opening": OPENING, "leaf": LEAF, "item": ITEM}


@pytest.fixture(scope="module")
def cases(sample_folder):
    """The sample's openings, of those alike one."""
    with open_project(sample_folder / "quayside-works.hwsched") as project:
        return list({case_key(each.case): each.case for each in check_openings(project)}.values())


def other_value(attribute: Attribute, value):
    if attribute.choices:
        return next(each.value for each in attribute.choices if each.value != value)
    if attribute.kind == "yes-no":
        return not value
    if attribute.kind in ("length", "number", "integer"):
        low, high = attribute.low or 0.0, attribute.high or 100.0
        return next(each for each in (low, high, (low + high) / 2) if each != value)
    return "otherwise"


def test_a_watched_case_has_the_fit_of_the_case(cases):
    for case in cases:
        assert fit_with_facts(case)[0] == fit(case)


def test_no_fit_reads_what_tells_openings_alike_apart(cases):
    for case in cases:
        _, read = fit_with_facts(case)
        assert IGNORED.isdisjoint((*read.opening, *read.leaf, *read.item))


def test_the_fit_stays_when_facts_that_were_not_read_change(cases):
    for case in cases[::9]:
        found, read = fit_with_facts(case)
        for name in sorted({f.name for f in fields(Opening)} - {*read.opening, *IGNORED}):
            value = other_value(OPENING.attribute(name), getattr(case.opening, name))
            assert fit(replace(case, opening=replace(case.opening, **{name: value}))) == found, name
        for name in sorted({f.name for f in fields(Leaf)} - {*read.leaf, *IGNORED}):
            leaves = [replace(x, **{name: other_value(LEAF.attribute(name), getattr(x, name))}) for x in case.leaves]
            assert fit(replace(case, leaves=tuple(leaves))) == found, name
        for name in sorted({f.name for f in fields(Item)} - {*read.item, *IGNORED}):
            items = [replace(x, **{name: other_value(ITEM.attribute(name), getattr(x, name))}) for x in case.items]
            assert fit(replace(case, items=tuple(items))) == found, name


def test_the_fit_stays_when_settings_and_parts_that_were_not_read_change(cases):
    limits = {f"{rule.id}.{limit.name}": limit.value for rule in RULES for limit in rule.limits}
    for case in cases[::5]:
        found, read = fit_with_facts(case)
        unread = {name: 2 * value + 1 for name, value in limits.items() if name not in read.limits}
        off = frozenset(rule.id for rule in RULES) - {*read.rules}
        parts = {
            number: part
            if part.kind in read.kinds or number in read.parts
            else replace(part, list_price=0.01, superseded_by="", attributes={})
            for number, part in case.catalogue.parts.items()
        }
        assert unread
        assert off
        other = replace(
            case,
            settings=replace(case.settings, limits={**case.settings.limits, **unread}, rules_off=off),
            catalogue=Catalogue(parts, "other"),
        )
        assert fit(other) == found
        assert FactsKeys().key(other, read) == FactsKeys().key(case, read)


def test_what_was_read_is_little_enough_to_be_of_use(cases):
    """A door asks for no gate locks, and no fit asks for the notes of the survey."""
    doors = [case for case in cases if case.opening.form == "single"]
    assert doors
    for case in doors:
        _, read = fit_with_facts(case)
        assert "gate-lock" not in read.kinds
        assert not {"stair", "egress", "accessible"} & {*read.opening}
