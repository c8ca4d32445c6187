"""The journal in the main window: undo, redo, and the history in which steps are chosen."""

from collections.abc import Callable
from typing import Final

from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QDialog, QMessageBox

from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.frame.subject import Subject
from hwsched.desktop.jobs.jobs import Failure
from hwsched.language import phrase, to_phrase
from hwsched.model.errors import NotUndoableError
from hwsched.operations.changes import Changes
from hwsched.operations.project.history import NextSteps, next_steps, redo, undo
from hwsched.operations.step_titles import step_said

_NOTHING_TAKEN_BACK: Final = to_phrase("nothing was taken back since your last step")


class HistoryActions(Subject):
    """Steps taken back and done again."""

    menu = to_phrase("Edit")

    def __init__(self, frame: Frame) -> None:
        super().__init__(frame)
        standard = QKeySequence.StandardKey
        self._next = NextSteps()
        self.act_undo = self.action(
            to_phrase("Undo"), to_phrase("Take back your last step"), self.undo, "project", standard.Undo,
            icon="undo", at_present=lambda: _told(self._next.undo, phrase("none of your steps is in force")),
        )  # fmt: skip
        self.act_redo = self.action(
            to_phrase("Redo"), to_phrase("Do again what you took back"), self.redo, "project", standard.Redo,
            icon="redo", at_present=lambda: _told(self._next.redo, phrase(_NOTHING_TAKEN_BACK)),
        )  # fmt: skip
        self.act_history = self.action(
            to_phrase("History"), to_phrase("Who changed what, and when"), self.show_history, "project", "Ctrl+H",
            icon="history",
        )  # fmt: skip
        frame.telling.told_of.connect(self._offer_history)
        self.state.opened.connect(self._on_opened)
        self.state.leaving.connect(lambda: self._take(NextSteps()))

    def _on_opened(self) -> None:
        workspace = self.state.workspace
        if workspace is not None:
            workspace.changed.connect(lambda _changes: self._read())
            workspace.reloaded.connect(self._read)
        self._read()

    def _read(self) -> None:
        """Read what undo and redo would do now."""
        workspace = self.state.workspace
        if workspace is not None and workspace.remains is None:
            self.frame.telling.guarded(lambda: self._take(next_steps(workspace.project, who=workspace.who)))

    def _take(self, found: NextSteps) -> None:
        if found != self._next:
            self._next = found
            self.frame.possible.emit()

    def show_history(self) -> None:
        """Show the steps of the journal."""
        self.frame.go("history")

    def undo(self) -> None:
        """Take back the person's last step."""
        self._step(undo)

    def redo(self) -> None:
        """Do again what the person took back last."""
        self._step(redo)

    def _step(self, verb: Callable[..., Changes]) -> None:
        workspace = self.state.workspace
        if workspace is not None:
            self.frame.edit(lambda: verb(workspace.project, who=workspace.who))

    def _offer_history(self, failure: Failure, told: QDialog) -> None:
        """Where steps of others stand in the way, offer the history in which they are chosen."""
        if isinstance(failure.error, NotUndoableError) and isinstance(told, QMessageBox) and failure.asker is None:
            show = told.addButton(phrase("Show history"), QMessageBox.ButtonRole.ActionRole)
            show.clicked.connect(lambda _checked=False: self.show_history())


def _told(step: str, none: str) -> tuple[bool, str]:
    """Tell whether there is a step, and which it is or why there is none."""
    return (True, step_said(step)) if step else (False, none)
