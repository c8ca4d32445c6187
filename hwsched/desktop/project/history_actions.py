"""The journal in the main window: undo, redo, and the history in which steps are chosen."""

from collections.abc import Callable

from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QDialog, QMessageBox

from hwsched.desktop.frame import Frame
from hwsched.desktop.jobs import Failure
from hwsched.desktop.project.history_dialog import HistoryDialog
from hwsched.desktop.subject import Subject
from hwsched.model.errors import NotUndoableError
from hwsched.operations.changes import Changes
from hwsched.operations.project.history import history, redo, redo_one, undo, undo_one


class HistoryActions(Subject):
    """Steps taken back and done again."""

    menu = "Edit"

    def __init__(self, frame: Frame) -> None:
        super().__init__(frame)
        self.dialog: HistoryDialog | None = None
        standard = QKeySequence.StandardKey
        self.act_undo, self.act_redo, self.act_history = (
            self.action(title, tip, slot, "project", keys, icon=icon)
            for title, tip, slot, keys, icon in (
                ("Undo", "Take back your last step", self.undo, standard.Undo, "undo"),
                ("Redo", "Do again what you took back", self.redo, standard.Redo, "redo"),
                ("History", "Who changed what, and when", self.show_history, "Ctrl+H", "history"),
            )
        )
        frame.telling.told_of.connect(self._offer_history)
        self.state.leaving.connect(self._close)

    def show_history(self) -> None:
        """Show the steps of the journal."""
        if self.state.workspace is None:
            return
        self.dialog = HistoryDialog(history(self.state.workspace.project), self.frame.window)
        self.dialog.wants_back.connect(self.take_back)
        self.dialog.wants_again.connect(self.do_again)
        self.dialog.show()

    def _close(self) -> None:
        """Close the history with its project: a step of it is none of another project."""
        if self.dialog is not None:
            self.dialog.close()
            self.dialog = None

    def take_back(self, number: int) -> None:
        """Take back one step, be it another person's; one on which later ones depend is refused, with their numbers."""
        self._step_of_history(undo_one, number)

    def do_again(self, number: int) -> None:
        """Do one step again that was taken back."""
        self._step_of_history(redo_one, number)

    def _step_of_history(self, verb: Callable[..., Changes], number: int) -> None:
        workspace, dialog = self.state.workspace, self.dialog
        if workspace is None or dialog is None or self.jobs.busy:
            return

        def then(_changes: Changes) -> None:
            self.frame.telling.guarded(lambda: dialog.show_steps(history(workspace.project)))

        self.frame.edit(lambda: verb(workspace.project, number, who=workspace.who), then, asker=dialog)

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
            show = told.addButton("Show history", QMessageBox.ButtonRole.ActionRole)
            show.clicked.connect(lambda _checked=False: self.show_history())
