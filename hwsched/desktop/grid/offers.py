"""What may stand next in the query line, offered under it while a person types; the keyboard stays in the line."""

from typing import Final

from PySide6.QtCore import QPoint, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFrame, QLineEdit, QListWidget, QListWidgetItem, QWidget

from hwsched.desktop.looks.tokens import wide
from hwsched.language import phrase
from hwsched.query import Askable, completions

_SHOWN: Final = 9
_OFFER: Final = int(Qt.ItemDataRole.UserRole)
_OPENS: Final = frozenset('"(')


class Offers(QListWidget):
    """A list under a line; arrows choose in it, Return, Tab or a click takes, Escape closes it.

    Parameters
    ----------
    line : QLineEdit
        That is typed into.
    """

    taken = Signal(str, int)
    """The text with an offer put in, and where the cursor stands then."""

    def __init__(self, line: QLineEdit) -> None:
        super().__init__(line.window())
        self._line = line
        self._span = (0, 0)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setFrameShape(QFrame.Shape.StyledPanel)
        self.setAccessibleName(phrase("What may stand next"))
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.itemClicked.connect(self._take)
        self.hide()

    def offer(self, askable: Askable, *, asked: bool = False) -> None:
        """Offer what may stand at the cursor; asked: also where nothing is begun yet."""
        text, cursor = self._line.text(), self._line.cursorPosition()
        found = completions(text, cursor, askable)
        begun = text[found.start : found.end].strip()
        offers = [each for each in found.offers if each.text.casefold() != begun.casefold()]
        if not offers or not (begun or asked or text[:cursor].rstrip()[-1:] in tuple("=<>")):
            self.hide()
            return
        self._span = found.start, found.end
        self.clear()
        for each in offers:
            item = QListWidgetItem(f"{each.text}   {each.says}" if each.says else each.text)
            item.setData(_OFFER, each.text)
            self.addItem(item)
        self._place(min(len(offers), _SHOWN))

    def _place(self, count: int) -> None:
        window: QWidget = self._line.window()
        if self.parentWidget() is not window:
            self.setParent(window)
        at = self._line.mapTo(window, QPoint(0, self._line.height()))
        height = count * max(1, self.sizeHintForRow(0)) + 2 * self.frameWidth()
        # As wide as what it says, so that a narrow line hides nothing of it; it stays within the window.
        said = self.sizeHintForColumn(0) + self.verticalScrollBar().sizeHint().width() + 2 * self.frameWidth()
        width = max(min(self._line.width(), wide(70)), said)
        self.setGeometry(at.x(), at.y(), min(width, window.width() - at.x()), height)
        self.setUniformItemSizes(True)
        self.show()
        self.raise_()

    def takes(self, event: QKeyEvent) -> bool:
        """Do what a key in the line asks of the list; returns whether it was the list's."""
        if self.isHidden():
            return False
        key, row = event.key(), self.currentRow()
        if key in (Qt.Key.Key_Down, Qt.Key.Key_Up):
            self.setCurrentRow(max(0, min(self.count() - 1, row + (1 if key == Qt.Key.Key_Down else -1))))
            return True
        if key == Qt.Key.Key_Escape:
            self.hide()
            return True
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Tab) and row >= 0:
            self._take(self.item(row))
            return True
        return False

    def _take(self, item: QListWidgetItem) -> None:
        word = str(item.data(_OFFER))
        start, end = self._span
        text = self._line.text()
        before, after = text[:start], text[end:]
        if before and not before[-1].isspace() and before[-1] not in _OPENS:
            before += " "
        put = before + word + ("" if word == "(" else " ")
        self.hide()
        self.taken.emit(put + after.lstrip(), len(put))
