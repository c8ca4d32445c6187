"""Rows of the lists of what leaves the office; see `hwsched.operations.lists`."""

from collections.abc import Collection, Iterator
from typing import Any

from hwsched.documents.release.schedule import headings
from hwsched.documents.stock.pick_list import quantities
from hwsched.model.project import Project
from hwsched.operations.release.project_view import project_view


def pick_lines(project: Project, openings: Collection[str] | None) -> Iterator[dict[str, Any]]:
    """Yield what the pick list has: by building and level, each part with its quantity and openings."""
    view = project_view(project, openings)
    for (building, level), lines in sorted(quantities(view).items()):
        for number, line in lines.items():
            part = view.catalogue.get(number)
            yield {
                "building": building or None,
                "level": level or None,
                "part": number,
                "role": line.role,
                "description": part.description if part else None,
                "quantity": line.quantity,
                "unit": part.unit if part else None,
                "marks": list(line.marks),
                "supplies": list(line.supplies),
            }


def schedule_rows(project: Project, openings: Collection[str] | None) -> Iterator[dict[str, Any]]:
    """Yield the item lines of the schedule's headings."""
    view = project_view(project, openings)
    for group in headings(view.openings, view.length_style):
        marks = [each.mark for each in group.openings]
        for point, parts in group.points:
            for part in parts:
                yield {
                    "heading": group.number,
                    "marks": marks,
                    "lock_point": point,
                    "role": part.role,
                    "part": part.part,
                    "description": part.description or None,
                    "quantity": part.quantity,
                    "total_quantity": part.quantity * len(marks),
                    "reason": part.reason,
                }
