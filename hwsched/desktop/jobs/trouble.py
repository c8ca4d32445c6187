"""What is said to a person when something could not be done: why, what stands all the same, and how to go on."""

import logging
from collections.abc import Callable
from pathlib import Path
from typing import Any, Final

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QLabel,
    QMessageBox,
    QPlainTextEdit,
    QVBoxLayout,
    QWidget,
)

from hwsched.desktop.jobs.jobs import Failure
from hwsched.desktop.project.conflict_question import ConflictQuestion
from hwsched.desktop.widgets.asked_files import file_to_write
from hwsched.desktop.widgets.room import give_room
from hwsched.exchange.problems import InputRejected
from hwsched.kept_sentences import kept_error
from hwsched.language import phrase
from hwsched.model.errors import BusyProjectError, ConflictError, UnreachableProjectError
from hwsched.operations.changes import Changes
from hwsched.operations.outcome import CLOSED, REFUSED, said_of
from hwsched.telling.crash import crash_report, save_report, without_data
from hwsched.telling.log import log_file
from hwsched.telling.masking import masked
from hwsched.writing import HeldFilesError

_MOST_LINES: Final = 12
_PASSING: Final = (BusyProjectError, UnreachableProjectError)
"""What may be otherwise in a moment."""
_LOG: Final = logging.getLogger(__name__)


class Telling(QObject):
    """Says what went wrong, near where it was asked for; where somebody else changed it meanwhile, asks whose is taken.

    Parameters
    ----------
    window : QWidget
        Where nobody else asked for it.
    """

    told_of = Signal(object, object)
    """A Failure, and the dialog in which it is told."""
    theirs_kept = Signal(object)
    """The person took what somebody else had written: its Changes."""

    def __init__(self, window: QWidget, parent: QObject) -> None:
        super().__init__(parent)
        self._window = window
        self.told: QDialog | None = None
        self.asked: ConflictQuestion | None = None
        self.times = 0
        """How often something was told or asked."""

    def guarded(self, act: Callable[[], Any]) -> None:
        """Read on the screen's thread; what cannot be read is told."""
        try:
            act()
        except REFUSED + CLOSED as error:
            self.tell(Failure(phrase("Reading"), error))

    def tell(self, failure: Failure) -> None:
        """Say what went wrong, what was written all the same, and how to go on."""
        self.times += 1
        if isinstance(failure.error, ConflictError):
            self._ask(failure, failure.error)
        else:
            self.told = tell_failure(failure, self._window)
            self.told_of.emit(failure, self.told)

    def _ask(self, failure: Failure, conflict: ConflictError) -> None:
        near = failure.asker if failure.asker is not None and failure.asker.isVisible() else self._window
        question = ConflictQuestion(conflict, near)
        question.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        theirs = Changes(conflict.openings, entities=conflict.entities)

        def answered() -> None:
            if question.clickedButton() is question.mine and failure.once_more is not None:
                failure.once_more()
            else:
                self.theirs_kept.emit(theirs)

        question.finished.connect(answered)
        self.asked = question
        question.open()


def why_of(error: BaseException) -> str:
    """Say why something could not be done, as it is said beside what was typed and in the dialog."""
    if not isinstance(error, REFUSED + CLOSED):
        return phrase("it failed inside the program")
    return masked(error.said()) if isinstance(error, InputRejected) else kept_error(masked(str(error)))


def tell_failure(failure: Failure, parent: QWidget) -> QDialog:
    """Show what could not be done, near where it was asked for.

    Parameters
    ----------
    failure : Failure
        What failed, and what it had written.
    parent : QWidget
        Where nobody else asked for it.

    Returns
    -------
    QDialog
        Open.
    """
    near = failure.asker if failure.asker is not None and failure.asker.isVisible() else parent
    shown: QDialog
    if isinstance(failure.error, REFUSED + CLOSED):
        shown = _refusal(failure, near)
    else:
        _LOG.error(f"{failure.doing or 'the desktop'} failed inside the program", exc_info=failure.error)
        shown = FailureDialog(failure, near)
    shown.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
    shown.open()
    return shown


def _refusal(failure: Failure, near: QWidget) -> QMessageBox:
    text = why_of(failure.error)
    lines = text.splitlines() or [type(failure.error).__name__]
    title = phrase("Done in part") if failure.written else phrase("Not done")
    box = QMessageBox(QMessageBox.Icon.Warning, title, "\n".join(lines[:_MOST_LINES]), parent=near)
    box.setTextFormat(Qt.TextFormat.PlainText)
    box.setInformativeText(_stands(failure))
    if isinstance(failure.error, HeldFilesError):
        # All of them: they have to be closed one by one.
        box.setDetailedText("\n".join(str(path) for path in failure.error.paths))
    elif len(lines) > _MOST_LINES:
        box.setDetailedText(text)
    box.addButton(QMessageBox.StandardButton.Ok)
    passing = isinstance(failure.error, _PASSING)
    words, act = (phrase("Try again"), failure.once_more) if passing else (phrase("Choose again…"), failure.ask_again)
    if act is not None:
        button = box.addButton(words, QMessageBox.ButtonRole.AcceptRole)
        button.clicked.connect(lambda _checked=False: act())
    return box


def _stands(failure: Failure) -> str:
    """Say what was written before it failed."""
    if failure.written is None:
        return phrase("What was written before that stands; History shows it, step by step.")
    return said_of(failure.written)


class FailureDialog(QDialog):
    """A failure that is the program's own: a report of it that can be read, copied, saved and sent."""

    def __init__(self, failure: Failure, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(phrase("Failed inside the program"))
        self.report = crash_report(failure.error, failure.doing)
        self.path = save_report(self.report)
        kept = (
            phrase("The report below is kept at {path}, the log at {log_file}.", path=self.path, log_file=log_file())
            if self.path
            else ""
        )
        self.said = QLabel(
            phrase(
                "hwsched failed inside the program ({without_data}). {stands} {kept}\n\nYou can go on. The "
                "report holds nothing of the project; sent to who looks after hwsched for you, it helps to "
                "mend this.",
                without_data=without_data(failure.error),
                stands=_stands(failure),
                kept=kept,
            )
        )
        self.said.setTextFormat(Qt.TextFormat.PlainText)
        self.said.setWordWrap(True)
        self.said.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.page = QPlainTextEdit(self.report)
        self.page.setReadOnly(True)
        buttons = QDialogButtonBox()
        self.save = buttons.addButton(phrase("Save report…"), QDialogButtonBox.ButtonRole.ActionRole)
        self.copy = buttons.addButton(phrase("Copy report"), QDialogButtonBox.ButtonRole.ActionRole)
        self.on = buttons.addButton(phrase("Go on"), QDialogButtonBox.ButtonRole.AcceptRole)
        self.save.clicked.connect(lambda _checked=False: self.ask_place())
        self.copy.clicked.connect(lambda _checked=False: QGuiApplication.clipboard().setText(self.report))
        buttons.accepted.connect(self.accept)
        layout = QVBoxLayout(self)
        layout.addWidget(self.said)
        layout.addWidget(self.page, 1)
        layout.addWidget(buttons)
        give_room(self, 87, 58)

    def text(self) -> str:
        """Return what is said above the report."""
        return self.said.text()

    def ask_place(self) -> None:
        """Ask where the report shall be saved."""
        path = file_to_write(self, phrase("Save report"), "hwsched-report.txt", phrase("Text (*.txt)"))
        if path:
            self.save_to(Path(path))

    def save_to(self, path: Path) -> None:
        """Save the report, or say why it cannot be."""
        try:
            path.write_text(self.report, encoding="utf-8")
        except OSError as error:
            self.said.setText(
                phrase(
                    "{path} cannot be written: {strerror}. Choose another place.",
                    path=path,
                    strerror=error.strerror or error,
                )
            )
        else:
            self.said.setText(phrase("Saved as {path}. You can go on.", path=path))
