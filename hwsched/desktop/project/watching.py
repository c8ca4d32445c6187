"""Watches the open project for what other processes write, and tells the views, without ever holding the screen."""

from collections.abc import Callable, Sequence
from typing import Any, Final

from PySide6.QtCore import QObject, QTimer, Signal

from hwsched.desktop.jobs.jobs import Jobs
from hwsched.language import phrase_of_count
from hwsched.model.journal.touched import Touched
from hwsched.model.journal.watching import Watch
from hwsched.model.project import Project
from hwsched.operations.changes import Changes
from hwsched.operations.step_titles import step_said

_EACH_MS: Final = 500
"""Between two looks: with the reading of what was written, everybody has it within two seconds."""


class Watcher(QObject):
    """Tells what others did to a project, as soon as nothing else is at work on it.

    Parameters
    ----------
    project : Project
        Open; it must outlive the watcher.
    idle : callable
        Tells whether the views can follow now.
    parent : QObject
        That closes it.
    """

    changed = Signal(object)
    """What others wrote: its Changes."""
    said = Signal(str)
    """What they did, for people."""
    answers = Signal(bool)
    """Whether the project answers; told when that changes."""
    failed = Signal(object)
    """A Failure, which a project that does not answer is none of."""

    def __init__(self, project: Project, idle: Callable[[], bool], parent: QObject) -> None:
        super().__init__(parent)
        self._session = project.session.id
        self._idle = idle
        self._watch = Watch(project)
        self._answered = True
        self._waiting: list[Touched] = []
        self.jobs = Jobs(self)
        self.jobs.failed.connect(self.failed)
        self._timer = QTimer(self)
        self._timer.setInterval(_EACH_MS)
        self._timer.timeout.connect(self._look)
        self._timer.start()

    def close(self) -> None:
        """Stop watching."""
        self._timer.stop()
        self.jobs.wait()
        self._watch.close()

    def _look(self) -> None:
        self._tell()
        self.jobs.run("", lambda _progress, _cancelled: self._watch.look(), self._found)

    def _found(self, steps: Any) -> None:
        if self._watch.answers != self._answered:
            self._answered = self._watch.answers
            self.answers.emit(self._answered)
        # What was written here reaches the views by itself.
        self._waiting += [each for each in steps if each.session != self._session]
        self._tell()

    def _tell(self) -> None:
        if not self._waiting or not self._timer.isActive() or not self._idle():
            return
        steps, self._waiting = self._waiting, []
        self.changed.emit(Changes.by_others(steps))
        self.said.emit(said_of_others(steps))


def said_of_others(steps: Sequence[Touched]) -> str:
    """Say what others did.

    Examples
    --------
    >>> said_of_others([Touched(7, frozenset(), frozenset(), frozenset(), "Ann", "Fit 3 openings")])
    'Ann: Fit 3 openings'
    """
    if len(steps) == 1:
        return f"{steps[0].who}: {step_said(steps[0].summary)}"
    people = dict.fromkeys(each.who for each in steps)
    return phrase_of_count(
        "{people}: {count} step, last: {summary}",
        "{people}: {count} steps, last: {summary}",
        len(steps),
        people=", ".join(people),
        summary=step_said(steps[-1].summary),
    )
