"""What a place of the window says of itself, so that rail, tabs, menu, find, back and forward follow."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from PySide6.QtWidgets import QWidget

from hwsched.desktop.frame.commands import Need


@dataclass(frozen=True, slots=True)
class Place:
    """One member of the family in `hwsched.desktop.frame.places`."""

    name: str
    title: str
    icon: str = ""
    tip: str = ""
    rail: bool = False
    """Whether it stands on the rail at the left; every other place is a page of one that does, or of none."""
    needs: Need = "project"
    make: Callable[[Any], QWidget] | None = None
    """Makes it of the Frame when it is first gone to; none: it is the room of its pages, and the first is shown."""
    within: str = ""
    """Name of the place on the rail whose page it is."""
    show: Callable[[Any, Any], None] | None = None
    """Gets the widget and the thing, None where none was named, each time that the place is gone to."""
    inspector: bool = False
    """Whether what is chosen is shown beside it."""
    listed: bool = True
    """Whether its tab and its command stand there always; a page that tells of a thing is only there while it does."""
    keys: str = ""
