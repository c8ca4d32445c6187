"""Rows of the lists of what was worked out for openings; see `hwsched.operations.lists`."""

from collections import Counter
from collections.abc import Collection, Iterator
from typing import Any, Final

from hwsched.model.project import Project
from hwsched.operations.findings.checking import Checked, check_openings
from hwsched.operations.opening.showing import hole_record
from hwsched.values import SEVERITIES

_NAMED: Final = ("lock", "cylinder", "unit", "reader", "supply")
"""Roles that have a column of their own."""


def fits(project: Project, openings: Collection[str] | None) -> Iterator[dict[str, Any]]:
    """Yield a row an opening: how it stands, what fits, why not."""
    for each in check_openings(project, openings):
        opening = each.given.opening
        open_ = Counter(finding.severity for finding in each.findings if not finding.waived)
        parts = each.fit.parts if each.fit else ()
        yield {
            "mark": opening.mark,
            "building": opening.building,
            "level": opening.level,
            "status": each.fit.status if each.fit else None,
            "standing": each.standing,
            "lock_point_count": len(each.points),
            **{role: next((part.part for part in parts if part.role == role), None) for role in _NAMED},
            "cable_mm": each.fit.cable.length_mm if each.fit and each.fit.cable else None,
            **{f"{severity}_count": open_.get(severity, 0) for severity in SEVERITIES},
            "waived_count": sum(finding.waived for finding in each.findings),
            "reason": _reason(each),
        }


def _reason(checked: Checked) -> str | None:
    """Say why an opening does not fit, or what is missing."""
    if checked.fit is None:
        return None
    said = [f"needs {need.label}" for need in checked.fit.needs]
    said += [finding.message for finding in checked.findings if finding.severity == "error" and not finding.waived]
    return said[0] if said and checked.fit.status != "fits" else None


def parts(project: Project, openings: Collection[str] | None) -> Iterator[dict[str, Any]]:
    """Yield a row a part: what an opening gets, in which role, and why."""
    for each in check_openings(project, openings):
        for at in each.points:
            for part in at.fit.parts if at.fit else ():
                yield {
                    "mark": each.given.opening.mark,
                    "lock_point": at.given.point.name,
                    "role": part.role,
                    "part": part.part,
                    "kind": part.kind,
                    "description": part.description or None,
                    "quantity": part.quantity,
                    "source": part.source,
                    "reason": part.reason,
                }


def places(project: Project, openings: Collection[str] | None) -> Iterator[dict[str, Any]]:
    """Yield a row a control unit: where it stands."""
    for each in check_openings(project, openings):
        for at in each.points:
            if at.fit is None or at.fit.placement is None:
                continue
            place = at.fit.placement
            yield {
                "mark": each.given.opening.mark,
                "lock_point": at.given.point.name,
                "leaf": place.leaf or None,
                "face": place.face,
                "pattern": place.pattern,
                "x_mm": place.x_mm,
                "y_mm": place.y_mm,
                "width_mm": place.width_mm,
                "height_mm": place.height_mm,
                "hole_x_mm": place.hole_x_mm,
                "hole_y_mm": place.hole_y_mm,
                "source": place.source,
            }


def holes(project: Project, openings: Collection[str] | None) -> Iterator[dict[str, Any]]:
    """Yield a row a hole, in the order in which they are made."""
    for each in check_openings(project, openings):
        for at in each.points:
            for hole in at.fit.holes if at.fit else ():
                record = hole_record(at.given, hole, at.fit)
                yield {
                    "mark": each.given.opening.mark,
                    "lock_point": at.given.point.name,
                    "order": hole.order,
                    "name": hole.name,
                    "purpose": hole.purpose,
                    "leaf": hole.leaf or None,
                    "face": hole.face,
                    "x_mm": hole.x_mm,
                    "y_mm": hole.y_mm,
                    "diameter_mm": hole.diameter_mm,
                    "pilot_mm": hole.pilot_mm,
                    "depth_mm": hole.depth_mm,
                    "start_mm": list(record.start_mm),
                    "direction": list(record.direction),
                    "tool": hole.tool or None,
                }
