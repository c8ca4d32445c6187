"""What every subject of the main window is made of: the frame, and commands that it adds to it."""

from collections.abc import Callable
from typing import Any, Final

from PySide6.QtCore import QObject
from PySide6.QtGui import QAction

from hwsched.desktop.frame.commands import ActsOn, AtPresent, Need, identifier_of
from hwsched.desktop.frame.frame import Frame
from hwsched.language import to_phrase

_MENUS: Final = {
    "project": to_phrase("Project"),
    "survey": to_phrase("Survey"),
    "opening": to_phrase("Openings"),
    "findings": to_phrase("Findings"),
    "parts": to_phrase("Parts"),
    "power": to_phrase("Power"),
    "release": to_phrase("Release"),
}
"""Room of a subject, and the menu in which its commands stand unless it says otherwise."""


class Subject(QObject):
    """One subject's work in the main window: its commands and what they do.

    Here belongs only what all subjects do alike. A subject gets the frame and what else it needs from whoever makes it,
    and knows of no other subject: where two meet, the window connects them.

    Parameters
    ----------
    frame : Frame
        Open project, jobs, edits, telling.
    """

    menu = ""
    """Title of the menu; that of the room when left out."""

    def __init__(self, frame: Frame) -> None:
        super().__init__(frame.window)
        self.frame, self.state, self.jobs = frame, frame.state, frame.jobs
        frame.possible.connect(self.enable)

    def action(
        self,
        text: str,
        tip: str,
        slot: Callable[[], Any],
        needs: Need,
        keys: Any = None,
        *,
        acts_on: ActsOn = "",
        icon: str = "",
        identifier: str = "",
        at_present: AtPresent = lambda: (True, ""),
    ) -> QAction:
        """Add a command, possible while what it needs is at hand; left out, its identifier is made of its words."""
        room = type(self).__module__.split(".")[-2]
        made = self.frame.commands.add(
            identifier or identifier_of(text),
            text,
            tip,
            slot,
            menu=self.menu or _MENUS.get(room, "Project"),
            needs=needs,
            keys=keys,
            acts_on=acts_on,
            icon=icon,
            at_present=at_present,
        )
        return made.act

    def way_to(self, place: str) -> QAction:
        """Return the command that goes to a place."""
        return self.frame.commands[f"go-{place}"].act

    def enable(self) -> None:
        """Let what is possible at present be done, besides commands, which follow by themselves."""
