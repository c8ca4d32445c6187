"""What a window beside the main one says of itself, so that menu and action follow."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from hwsched.desktop.subject import Need


@dataclass(frozen=True, slots=True)
class SidePlace:
    """One window of the family in `hwsched.desktop.beside`."""

    name: str
    title: str
    """In the menu."""
    tip: str
    window: type[Any]
    """A `ToolWindow` that is made of a desk and a parent."""
    needs: Need = "project"
    shown: Callable[[Any], None] | None = None
    """Called with the window each time that it is asked for."""
