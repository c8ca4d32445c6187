"""Which hardware set each opening has, for register and sheet."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from hwsched.operations.parts.hardware_sets import HardwareSet


@dataclass(frozen=True, slots=True)
class OpeningSet:
    """The set of one opening."""

    name: str
    roles: frozenset[str]
    """Roles of its lines."""


def sets_by_opening(sets: Iterable[HardwareSet]) -> dict[str, OpeningSet]:
    """Return the set of each opening that has one."""
    found: dict[str, OpeningSet] = {}
    for each in sets:
        held = OpeningSet(each.name, frozenset(line.role for line in each.lines))
        found.update(dict.fromkeys(each.openings, held))
    return found
