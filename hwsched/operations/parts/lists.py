"""Rows of the lists of parts that are worked out; see `hwsched.operations.lists`."""

from collections.abc import Collection, Iterator
from typing import Any

from hwsched.catalogue import KINDS
from hwsched.model.project import Project


def kinds(_project: Project, _openings: Collection[str] | None) -> Iterator[dict[str, Any]]:
    """Yield what can be said of each kind of parts."""
    for kind in KINDS:
        for each in kind.attributes:
            yield {
                "kind": kind.name,
                "sheet": kind.label,
                "name": each.name,
                "label": each.label,
                "unit": each.unit or None,
                "words": [choice.value for choice in each.choices],
                "required": each.required,
                "note": each.note or None,
            }
