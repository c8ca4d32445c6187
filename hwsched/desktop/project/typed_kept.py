"""What is being typed and not taken yet, kept beside the project: it is told after the program was ended from outside.

Here belong fields that hold something of a project; what is looked for or asked for is typed again in a moment.
"""

from typing import Final

from PySide6.QtCore import QObject, QTimer
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import (
    QAbstractItemView,
    QApplication,
    QFrame,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPlainTextEdit,
    QPushButton,
    QWidget,
)
from shiboken6 import isValid

from hwsched.desktop.find.find_field import FindField
from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.grid.query_line import QueryLine
from hwsched.desktop.looks.tokens import SPACE
from hwsched.desktop.project.preferences import Typed
from hwsched.language import phrase

_AFTER_MS: Final = 400
"""So long after a letter the text is kept: not at each, and before much is lost."""

Field = QLineEdit | QPlainTextEdit


class TypedKept(QObject):
    """Follows the fields in which somebody types.

    Parameters
    ----------
    frame : Frame
        Whose project is open, and whose person's preferences keep the texts.
    """

    def __init__(self, frame: Frame) -> None:
        super().__init__(frame.window)
        self._frame = frame
        self._fields: dict[Field, str] = {}
        self._soon = QTimer(self, singleShot=True, interval=_AFTER_MS)
        self._soon.timeout.connect(self._keep)
        application = QApplication.instance()
        assert isinstance(application, QApplication)
        application.focusChanged.connect(self._on_focus)
        frame.state.leaving.connect(self._forget)

    def _on_focus(self, left: QWidget | None, entered: QWidget | None) -> None:
        if left is not None and self._fields:
            self._soon.start()
        if not isinstance(entered, Field) or entered in self._fields or not self._is_of_project(entered):
            return
        self._fields[entered] = _called(entered)
        entered.textChanged.connect(self._soon.start)

    def _is_of_project(self, field: Field) -> bool:
        if field.isReadOnly() or isinstance(field, FindField) or self._frame.state.workspace is None:
            return False
        if isinstance(field, QLineEdit) and field.echoMode() != QLineEdit.EchoMode.Normal:
            return False
        around = field.parentWidget()
        while around is not None:
            if isinstance(around, QueryLine):
                return False
            if around is self._frame.window:
                return True
            around = around.parentWidget()
        return False

    def _keep(self) -> None:
        workspace = self._frame.state.workspace
        if workspace is None:
            return
        for field in [each for each in self._fields if not isValid(each) or not each.isVisible()]:
            del self._fields[field]
        checked = self._frame.state.checked
        mark = checked.given.opening.mark if checked is not None else ""
        texts = [
            Typed(workspace.project.place, ", ".join(dict.fromkeys(filter(None, (mark, label)))), _text(field))
            for field, label in self._fields.items()
            if _typed(field)
        ]
        self._frame.preferences.keep_typed(texts)

    def _forget(self) -> None:
        """Keep nothing more: who closes the project saw what was typed, and it was taken or given up."""
        self._soon.stop()
        self._fields.clear()
        self._frame.preferences.keep_typed([])


def _typed(field: Field) -> bool:
    """Tell whether somebody typed what stands in a field: it was not put there by a page."""
    modified = field.isModified() if isinstance(field, QLineEdit) else field.document().isModified()
    return modified and bool(_text(field).strip())


def _text(field: Field) -> str:
    return field.text() if isinstance(field, QLineEdit) else field.toPlainText()


def _called(field: Field) -> str:
    """Return what a field is called: by its own name, else by the cell in which it stands."""
    view = field.parentWidget()
    while view is not None and not isinstance(view, QAbstractItemView):
        view = view.parentWidget()
    if view is None:
        return field.accessibleName()
    first = view.currentIndex().siblingAtColumn(0).data()
    return str(first or field.accessibleName())


class TypedLine(QFrame):
    """Shown only where something was being typed when the program was ended from outside."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFrameShape(QFrame.Shape.StyledPanel)
        self._texts: list[str] = []
        self.words = QLabel()
        self.words.setWordWrap(True)
        self.copy = QPushButton(phrase("Copy what was typed"))
        self.copy.clicked.connect(lambda _checked=False: QGuiApplication.clipboard().setText("\n".join(self._texts)))
        self.done = QPushButton(phrase("Done"))
        self.done.setToolTip(phrase("It is not shown again"))
        self.done.clicked.connect(lambda _checked=False: self.hide())
        layout = QHBoxLayout(self)
        layout.setContentsMargins(SPACE.small, SPACE.hair, SPACE.small, SPACE.hair)
        layout.addWidget(self.words, 1)
        layout.addWidget(self.copy)
        layout.addWidget(self.done)
        self.hide()

    def show_typed(self, left: list[Typed]) -> None:
        """Say what was being typed; nothing hides the line."""
        self._texts = [each.text for each in left]
        lines = [f"{each.field}: {each.text}" if each.field else each.text for each in left]
        self.words.setText(
            phrase(
                "The program was ended while this was being typed. Look whether it was taken; if not, copy it and put "
                "it in again.\n{lines}",
                lines="\n".join(lines),
            )
        )
        self.setVisible(bool(left))
