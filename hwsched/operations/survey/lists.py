"""Rows of the survey's lists that are worked out; see `hwsched.operations.lists`."""

from collections.abc import Collection, Iterable, Iterator
from typing import Any

from hwsched.attributes import Attribute
from hwsched.model.project import Project
from hwsched.model.queries import read_own_fields
from hwsched.operations.survey.own_fields import attribute_of
from hwsched.survey import ENTITIES, POWER_ENTITIES, Entity


def facts(project: Project, _: Collection[str] | None) -> Iterator[dict[str, Any]]:
    """Yield the facts that a survey can hold, those of the project's own last."""
    with project.reading() as connection:
        own = read_own_fields(connection)
    yield from _told(ENTITIES)
    for made in own:
        yield _row(made.entity, attribute_of(made))


def power_facts(_project: Project, _openings: Collection[str] | None) -> Iterator[dict[str, Any]]:
    """Yield what can be said of supplies, circuits and runs."""
    yield from _told(POWER_ENTITIES)


def _told(entities: Iterable[Entity]) -> Iterator[dict[str, Any]]:
    return (_row(entity.name, each) for entity in entities for each in entity.attributes)


def _row(entity_name: str, each: Attribute) -> dict[str, Any]:
    return {
        "fact": f"{entity_name}.{each.name}",
        "entity": entity_name,
        "name": each.name,
        "label": each.label,
        "kind": each.kind,
        "unit": each.unit or None,
        "words": [choice.value for choice in each.choices],
        "low": each.low,
        "high": each.high,
        "note": each.note or None,
    }
