"""What is kept of grids for the person at this machine: their layout by place, named views by project. No widgets."""

import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from PySide6.QtCore import QSettings

from hwsched.desktop.grid.arrangement import Arrangement


def kept_by_person() -> QSettings:
    """Return where a person's choices on this machine are kept."""
    return QSettings(QSettings.Format.IniFormat, QSettings.Scope.UserScope, "hwsched", "desktop")


def arrangement_of(place: str) -> Arrangement:
    """Return how the grid of a place was laid out last."""
    return Arrangement.of_text(str(kept_by_person().value(f"grid/{place}", "")))


def keep_arrangement(place: str, arrangement: Arrangement) -> None:
    """Remember how the grid of a place is laid out."""
    kept_by_person().setValue(f"grid/{place}", arrangement.as_text())


@dataclass(frozen=True, slots=True)
class KeptView:
    """What a grid shows, under a name."""

    asked: str = ""
    """Text of the query line."""
    arrangement: Arrangement = field(default_factory=Arrangement)
    filters: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """Of some columns the shown values, as they are called."""


def views_of(project: str) -> dict[str, KeptView]:
    """Return the named views of a project.

    They are the person's own and not the project's: who may only read it keeps views too, no undo takes them away, and
    what one person looks at does not crowd another's window.
    """
    try:
        held = json.loads(str(kept_by_person().value(f"views/{project}", "{}")))
        return {str(name): _view(each) for name, each in held.items()}
    except (ValueError, AttributeError, KeyError, TypeError):
        return {}


def _view(held: Mapping[str, Any]) -> KeptView:
    filters = {str(name): tuple(map(str, values)) for name, values in held["filters"].items()}
    return KeptView(str(held["asked"]), Arrangement.of_text(held["arrangement"]), filters)


def keep_views(project: str, views: Mapping[str, KeptView]) -> None:
    """Remember the named views of a project."""
    held = {
        name: {"asked": each.asked, "arrangement": each.arrangement.as_text(), "filters": each.filters}
        for name, each in views.items()
    }
    kept_by_person().setValue(f"views/{project}", json.dumps(held))
