"""What every subject of the main window is made of: actions, and when they are possible."""

from collections.abc import Callable
from typing import Any, Literal

from PySide6.QtCore import QObject
from PySide6.QtGui import QAction, QKeySequence

from hwsched.desktop.frame import Frame

Need = Literal["nothing", "no job", "project", "openings"]
"""What must be at hand: nothing at all, no running job, an open project besides, openings in it besides."""


class Subject(QObject):
    """One subject's work in the main window: its actions and what they do.

    Here belongs only what all subjects do alike. A subject gets the frame and what else it needs from whoever makes it,
    and knows of no other subject: where two meet, the window connects them.

    Parameters
    ----------
    frame : Frame
        Open project, jobs, edits, telling.
    """

    def __init__(self, frame: Frame) -> None:
        super().__init__(frame.window)
        self.frame, self.state, self.jobs = frame, frame.state, frame.jobs
        self._actions: list[tuple[QAction, Need]] = []
        frame.possible.connect(self.enable)

    def action(self, text: str, tip: str, slot: Callable[[], Any], needs: Need, keys: Any = None) -> QAction:
        """Make an action, possible while what it needs is at hand."""
        made = QAction(text, self)
        made.setToolTip(tip)
        made.setStatusTip(tip)
        if keys is not None:
            made.setShortcut(QKeySequence(keys))
        made.triggered.connect(lambda _checked=False: slot())
        self._actions.append((made, needs))
        return made

    def enable(self) -> None:
        """Let what is possible at present be done."""
        idle, state = not self.jobs.busy, self.state
        at_hand = {
            "nothing": True,
            "no job": idle,
            "project": idle and state.workspace is not None,
            "openings": idle and state.filled,
        }
        for made, needs in self._actions:
            made.setEnabled(at_hand[needs])
