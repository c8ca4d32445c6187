"""What is kept of grids for the person at this machine: their layout by place, named views by project. No widgets."""

import json
from collections.abc import Mapping

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


def views_of(project: str) -> dict[str, str]:
    """Return the named views of a project, each a query.

    They are the person's own and not the project's: who may only read it keeps views too, no undo takes them away, and
    what one person looks at does not crowd another's window.
    """
    try:
        held = json.loads(str(kept_by_person().value(f"views/{project}", "{}")))
        return {str(name): str(query) for name, query in held.items()}
    except (ValueError, AttributeError):
        return {}


def keep_views(project: str, views: Mapping[str, str]) -> None:
    """Remember the named views of a project."""
    kept_by_person().setValue(f"views/{project}", json.dumps(dict(views)))
