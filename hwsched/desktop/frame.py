"""The frame: what every subject of the main window is given, and nothing that is of one subject.

It holds the open project, the jobs, the watching and the telling of trouble, each an object of its own, and makes
edits.
"""

from collections.abc import Callable
from pathlib import Path
from typing import Any

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QWidget

from hwsched.desktop.following import Following
from hwsched.desktop.jobs import Jobs
from hwsched.desktop.preferences import Preferences
from hwsched.desktop.project_state import ProjectState
from hwsched.desktop.side_windows import SideWindows
from hwsched.desktop.trouble import Telling
from hwsched.model.errors import ConflictError


class Frame(QObject):
    """One project at a time, and the ways to work on it.

    Parameters
    ----------
    who : str
        Person at work, for the journal.
    window : QWidget
        Over which dialogs open.
    preferences : Preferences, optional
        What the person has chosen; the kept ones unless others are given.
    """

    said = Signal(str, int)
    """A line for the status bar and how long it stands [ms]; 0: until the next one."""
    possible = Signal()
    """What can be done at present may be otherwise."""

    def __init__(self, who: str, window: QWidget, preferences: Preferences | None = None) -> None:
        super().__init__(window)
        self.window = window
        self.preferences = preferences or Preferences(self)
        self.state = ProjectState(who, self)
        self.jobs = Jobs(self)
        self.telling = Telling(window, self)
        self.following = Following(self.state, self.jobs, self.telling, self)
        self.side = SideWindows(self)
        self.following.said.connect(self.said)
        self.jobs.failed.connect(self.telling.tell)
        # What was typed and refused is gone from the screen.
        self.telling.told_of.connect(lambda _failure, _told: self.state.show_again())
        self.state.leaving.connect(self._on_leaving)
        self.state.reloaded.connect(self.possible)
        self.jobs.started.connect(lambda _title: self.possible.emit())
        self.jobs.ended.connect(self.possible)

    def say(self, words: str, how_long_ms: int = 8000) -> None:
        """Say a line in the status bar."""
        self.said.emit(words, how_long_ms)

    def edit(
        self,
        act: Callable[[], Any],
        then: Callable[[Any], None] | None = None,
        *,
        asker: QWidget | None = None,
    ) -> None:
        """Make an edit; tell what went wrong; let all views follow.

        Parameters
        ----------
        act : callable
            Calls an operation; runs off the screen's thread, so it may not touch a widget.
        then : callable, optional
            Gets its result once the views have followed, unless the asker is gone.
        asker : QWidget, optional
            The window in which it was asked for.
        """
        if self.state.workspace is not None:
            self.jobs.edit("Writing", act, then, asker=asker)

    def edit_seen(
        self,
        act: Callable[[int | None], Any],
        base: int | None,
        then: Callable[[Any], None] | None = None,
        *,
        asker: QWidget | None = None,
    ) -> None:
        """Make an edit of what was shown; where somebody else changed it meanwhile, ask whose value is taken.

        Parameters
        ----------
        act : callable
            Calls an operation, given the newest step that was seen; runs off the screen's thread.
        base : int or None
            The newest step when what is edited was shown; None: it does not matter.
        then, asker
            As in `edit`; what follows an edit that was asked about follows the answer.
        """
        seen = base

        def attempt() -> Any:
            nonlocal seen
            try:
                return act(seen)
            except ConflictError as conflict:
                # The question tells what is there: made once more, it overwrites that knowingly.
                seen = conflict.base
                raise

        self.edit(attempt, then, asker=asker)

    def write(self, path: str, act: Callable[[], Any], again: Callable[[], None]) -> None:
        """Write a file; where that cannot be, another place is asked for on wish."""
        self.jobs.edit(f"Writing {Path(path).name}", act, lambda _count: self.say(f"Wrote {path}"), ask_again=again)

    def close(self) -> bool:
        """Close the windows beside the main one and the project, unless there is something to tell first."""
        self.side.close()
        return self.following.close()

    def _on_leaving(self) -> None:
        self.side.close()
        self.side.desk = None
