"""The short form of a place whose page is a `ToolWindow`: made of the desk alone, closed with its project."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from typing import Any

from PySide6.QtWidgets import QWidget

from hwsched.desktop.frame.commands import Need
from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.frame.place import Place


@dataclass(frozen=True, slots=True)
class SidePlace:
    """One page of the family in `hwsched.desktop.frame.beside`."""

    name: str
    title: str
    """On its tab and in the menu."""
    tip: str
    window: Callable[..., Any]
    """Makes a `ToolWindow` of a desk and a parent."""
    needs: Need = "project"
    shown: Callable[[Any], None] | None = None
    """Called with the page each time that it is asked for."""
    within: str = ""
    """The place on the rail whose page it is; none: it is reached from everywhere."""
    told: Callable[[Any, Any], None] | None = None
    """Gets the page and the thing that it is to tell of, where one is named."""
    listed: bool = True
    keys: str = ""

    def place(self) -> Place:
        """Return the place."""
        return Place(
            self.name, self.title, "", self.tip, False, self.needs, partial(_made, self.window), self.within,
            partial(_show, self), listed=self.listed, keys=self.keys,
        )  # fmt: skip


def _made(window: Callable[..., Any], frame: Frame) -> QWidget:
    made = window(frame.pages.desk, None)
    assert isinstance(made, QWidget)
    return made


def _show(side: SidePlace, page: Any, thing: Any) -> None:
    if side.shown is not None:
        side.shown(page)
    if side.told is not None and thing is not None:
        side.told(page, thing)
