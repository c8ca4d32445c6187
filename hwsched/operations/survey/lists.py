"""Rows of the survey's lists that are worked out; see `hwsched.operations.lists`."""

from collections.abc import Collection, Iterator
from typing import Any

from hwsched.model.project import Project
from hwsched.model.queries import read_own_fields
from hwsched.operations.survey.own_fields import attribute_of
from hwsched.survey import ENTITIES


def facts(project: Project, _: Collection[str] | None) -> Iterator[dict[str, Any]]:
    """Yield the facts that a survey can hold, those of the project's own last."""
    with project.reading() as connection:
        own = read_own_fields(connection)
    declared = [(entity.name, each) for entity in ENTITIES for each in entity.attributes]
    for entity_name, each in (*declared, *((made.entity, attribute_of(made)) for made in own)):
        yield {
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
