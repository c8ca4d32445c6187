"""How a cell of a grid is painted and edited: by the declared kind of its fact, and kept open while it is refused."""

from collections.abc import Callable
from typing import Final, Protocol

from PySide6.QtCore import QAbstractItemModel, QEvent, QObject, QRect, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPen
from PySide6.QtWidgets import (
    QAbstractItemView,
    QComboBox,
    QLineEdit,
    QStyleOptionViewItem,
    QToolTip,
    QWidget,
)

from hwsched.attributes.unknown import says_nothing, unknown_word
from hwsched.desktop.grid.column import Column
from hwsched.desktop.grid.model import COLUMN, GROUP, Index
from hwsched.desktop.grid.proposals import Reading
from hwsched.desktop.looks.tokens import FOCUS, SPACE, colour
from hwsched.desktop.widgets.choice_box import ChoiceBox, words_of
from hwsched.desktop.widgets.kept_colours import KeptColours
from hwsched.desktop.widgets.typed import Understood, understood
from hwsched.language import phrase

_TAKES: Final = (Qt.Key.Key_Return, Qt.Key.Key_Enter)
_LEAVES: Final = (*_TAKES, Qt.Key.Key_Tab, Qt.Key.Key_Backtab)


class Block(Protocol):
    """What a view says of the marked columns."""

    def __call__(self) -> tuple[int, int]:
        """Return the first and the last of them."""


class CellDelegate(KeptColours):
    """Offers a drop-down for a choice, a line for the rest; a text that cannot be read stays in its cell.

    Parameters
    ----------
    reading : callable
        Returns how texts are read at present.
    block : callable
        Returns which columns are marked.
    """

    echoed = Signal(str, bool)
    """How what is being typed would be taken, and whether it would not; empty when nobody types."""
    begun = Signal(object)
    """An editor was opened in a cell; its index."""
    taken = Signal(object, str, bool)
    """Index, text, and whether all selected rows get it."""

    def __init__(self, reading: Callable[[], Reading], block: Block, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._reading, self._block = reading, block
        self._column: Column[object] | None = None
        self._to_all = False

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint a cell; a ring around that of the keyboard, an edge beside marked columns, a group's line over all."""
        if index.data(GROUP) is not None:
            self._paint_group(painter, option, index)
            return
        super().paint(painter, option, index)
        first, last = self._block()
        view = self._view_of(option)
        if (
            view is not None
            and view.selectionModel().currentIndex() == index
            and (view.focusProxy() or view).hasFocus()
        ):
            painter.save()
            painter.setPen(QPen(colour("focus"), FOCUS))
            painter.drawRect(QRect(option.rect).adjusted(1, 1, -FOCUS, -FOCUS))
            painter.restore()
        if view is None or first == last or not first <= index.column() <= last:
            return
        if view.selectionModel().isRowSelected(index.row(), index.parent()):
            # Within the cell: what is painted past it stays when the mark goes, as only the cell is painted anew.
            rect = QRect(option.rect)
            if index.column() == first:
                painter.fillRect(rect.adjusted(0, 0, FOCUS - rect.width(), 0), colour("focus"))
            if index.column() == last:
                painter.fillRect(rect.adjusted(rect.width() - FOCUS, 0, 0, 0), colour("focus"))

    def _paint_group(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        rect, view = QRect(option.rect), self._view_of(option)
        whole = QRect(rect)
        if view is not None:
            # The words run on under the next cells, and stay in view however far the columns are scrolled.
            whole.setLeft(SPACE.small)
            whole.setRight(view.viewport().width())
        painter.save()
        painter.setClipRect(rect)
        painter.fillRect(rect, colour("head-ground"))
        painter.setPen(colour("text"))
        font = painter.font()
        font.setBold(True)
        painter.setFont(font)
        text = str(index.model().index(index.row(), 0).data() or "")
        painter.drawText(whole, int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter), text)
        painter.restore()

    def _view_of(self, option: QStyleOptionViewItem) -> QAbstractItemView | None:
        widget = getattr(option, "widget", None)
        return widget if isinstance(widget, QAbstractItemView) else None

    def createEditor(  # type: ignore[override]  # noqa: N802 (None says: not for editing)
        self, parent: QWidget, option: QStyleOptionViewItem, index: Index
    ) -> QWidget | None:
        """Return a box for a choice, a line for the rest."""
        column = index.data(COLUMN)
        if not isinstance(column, Column) or column.attribute is None:
            return None
        self._column, self._to_all = column, False
        editor = editor_for(column, parent)
        if isinstance(editor, ChoiceBox):
            editor.picked.connect(self._pick)
        elif isinstance(editor, QLineEdit):
            editor.textEdited.connect(self._echo)
        self.begun.emit(index)
        return editor

    def setEditorData(self, editor: QWidget, index: Index) -> None:  # noqa: N802
        """Put in what stands there, unless the person has typed over it already; nothing for what is unknown."""
        text = str(index.data(Qt.ItemDataRole.EditRole) or "")
        if isinstance(editor, QComboBox):
            editor.setCurrentText(unknown_word() if says_nothing(text) else text)
        elif isinstance(editor, QLineEdit) and not editor.isModified():
            editor.setText("" if says_nothing(text) else text)
            editor.selectAll()

    def setModelData(self, editor: QWidget, model: QAbstractItemModel, index: Index) -> None:  # noqa: N802
        """Hand over what was typed or picked."""
        self.taken.emit(index, typed_in(editor), self._to_all)

    def eventFilter(self, editor: QObject, event: QEvent) -> bool:  # noqa: N802
        """Keep a text that cannot be read where it was typed; with Ctrl, Enter gives it to all selected rows."""
        if isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress and isinstance(editor, QWidget):
            if event.key() in _LEAVES and self._refuses(editor):
                return True
            if event.key() in _TAKES and event.modifiers() & Qt.KeyboardModifier.ControlModifier:
                self._to_all = True
                self.commitData.emit(editor)
                self.closeEditor.emit(editor)
                return True
        if event.type() == QEvent.Type.FocusOut and isinstance(editor, QWidget) and self._refuses(editor):
            return False
        return super().eventFilter(editor, event)

    def _refuses(self, editor: QWidget) -> bool:
        """Tell, and say beside the cell, whether what stands in an editor cannot be read."""
        if not isinstance(editor, QLineEdit) or self._column is None:
            return False
        said = self._understood(editor.text())
        if said.refused:
            QToolTip.showText(editor.mapToGlobal(editor.rect().bottomLeft()), said.words, editor)
            self.echoed.emit(f"{phrase(self._column.title)}: {said.words}", True)
        return said.refused

    def _understood(self, text: str) -> Understood:
        column, reading = self._column, self._reading()
        if column is None or column.attribute is None:
            return Understood(None, "")
        said = understood(column.attribute, text, reading.bare_unit, reading.style)
        if said.value is None and not said.refused and column.attribute.required:
            return Understood(None, phrase("cannot be unknown"), refused=True)
        return said

    def _echo(self, text: str) -> None:
        if self._column is not None:
            said = self._understood(text)
            self.echoed.emit(f"{phrase(self._column.title)}: {said.words}", said.refused)

    def _pick(self) -> None:
        editor = self.sender()
        if isinstance(editor, QWidget):
            self.commitData.emit(editor)
            self.closeEditor.emit(editor)


def editor_for(column: Column[object], parent: QWidget) -> QComboBox | QLineEdit:
    """Return what a fact of a kind is edited with, named after it."""
    words = words_of(column.attribute) if column.attribute is not None else None
    made: QComboBox | QLineEdit
    if words is not None:
        made = ChoiceBox(parent)
        made.addItems(words)
    else:
        made = QLineEdit(parent)
    made.setAccessibleName(phrase(column.title))
    return made


def typed_in(editor: QWidget) -> str:
    """Return what stands in an editor; empty for unknown."""
    text = editor.currentText() if isinstance(editor, QComboBox) else ""
    if isinstance(editor, QLineEdit):
        text = editor.text().strip()
    return "" if says_nothing(text) else text
