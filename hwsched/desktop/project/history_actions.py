"""The journal in the main window: undo, redo, and the history in which steps are chosen."""

from collections.abc import Callable

from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QDialog, QMessageBox

from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.frame.subject import Subject
from hwsched.desktop.jobs.jobs import Failure
from hwsched.language import phrase, to_phrase
from hwsched.model.errors import NotUndoableError
from hwsched.operations.changes import Changes
from hwsched.operations.project.history import redo, undo


class HistoryActions(Subject):
    """Steps taken back and done again."""

    menu = to_phrase("Edit")

    def __init__(self, frame: Frame) -> None:
        super().__init__(frame)
        standard = QKeySequence.StandardKey
        self.act_undo, self.act_redo, self.act_history = (
            self.action(title, tip, slot, "project", keys, icon=icon)
            for title, tip, slot, keys, icon in (
                (to_phrase("Undo"), to_phrase("Take back your last step"), self.undo, standard.Undo, "undo"),
                (to_phrase("Redo"), to_phrase("Do again what you took back"), self.redo, standard.Redo, "redo"),
                (to_phrase("History"), to_phrase("Who changed what, and when"), self.show_history, "Ctrl+H", "history"),
            )
        )
        frame.telling.told_of.connect(self._offer_history)

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
