"""The drop-down of the window: as wide as its words where there is room; where there is not, they can still be read.

Every drop-down is one of these. What it offers and what is done with what was taken belongs to whoever has it.
"""

import re
from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QElapsedTimer, QEvent, QObject, QSize, Qt
from PySide6.QtGui import QHelpEvent, QKeyEvent, QPaintEvent, QPalette
from PySide6.QtWidgets import QApplication, QComboBox, QStyle, QStyleOptionComboBox, QStylePainter, QToolTip, QWidget

from hwsched.desktop.looks.tokens import FIELD, SPACE, colour, wide
from hwsched.language import phrase

_LEAST: Final = 10
"""Letters that are always seen."""
_OF_SCREEN: Final = 0.9
"""Share of the screen that the list takes at most."""
_SEEN: Final = 16
"""Entries of a list that are seen at once; of more the others are reached by its bar, its keys and letters."""
_WITHIN: Final = 2
"""Rank of an entry that has the letters only in the midst of a word."""
_FEW: Final = 3
"""From so many letters on they are looked for there too."""
_WORD: Final = re.compile(r"\W+")
_HELD: Final = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier | Qt.KeyboardModifier.MetaModifier
"""What is held where a key is a command, not a letter."""


def found_by(typed: str, texts: Sequence[str], at: int) -> int:
    """Return which text is meant by the letters typed so far: one that begins so, has such a word, or has it.

    Parameters
    ----------
    typed : str
        One letter, or the same again and again, goes on to the next text.
    texts : sequence of str
        Among which one chooses.
    at : int
        The one chosen at present.

    Returns
    -------
    int
        Its place; -1 where none is meant.

    Examples
    --------
    >>> found_by("lev", ["not read", "Leaf: Width", "Opening: Level"], 0)
    2
    >>> found_by("l", ["Leaf: Width", "Leaf: Height"], 0)
    1
    """
    wanted = typed.casefold()
    stepping = len(set(wanted)) == 1
    wanted = wanted[0] if stepping else wanted

    def rank(text: str) -> int:
        if text.startswith(wanted):
            return 0
        return 1 if any(word.startswith(wanted) for word in _WORD.split(text)) else _WITHIN

    first = at + stepping
    found = [
        (rank(text), (place - first) % len(texts), place)
        for place, text in enumerate(map(str.casefold, texts))
        if wanted in text
    ]
    # Few letters stand within many a word, and each entry that is come by is taken.
    found = [each for each in found if each[0] < _WITHIN or len(wanted) >= _FEW]
    return min(found)[2] if found else -1


class DropDown(QComboBox):
    """A drop-down that asks for as much room as its longest entry needs and can do with less.

    Where it has less, its words end in dots, the tip has all of them, and its list is as wide as the longest.
    Letters that are typed find an entry by any of its words.
    Here belongs how a choice is shown in the room there is, and found; which entries there are belongs to whoever fills
    it.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToContents)
        self.setMinimumContentsLength(_LEAST)
        self.setMaxVisibleItems(_SEEN)
        self._typed = ""
        self._since = QElapsedTimer()

    def fill_cell(self) -> None:
        """Take the size of the cell in which it stands: by its entries it would take its own again after a moment.

        One below the other their edges would be louder than their words: seen is the arrow, an edge once it is used.
        """
        self.setProperty("cell", True)
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Find an entry by letters; other keys do what they do in every drop-down."""
        at = self._meant(event, self.currentIndex())
        if at is None:
            super().keyPressEvent(event)
        elif at not in (-1, self.currentIndex()):
            self.setCurrentIndex(at)
            self.activated.emit(at)
            self.textActivated.emit(self.itemText(at))

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802
        """Find an entry of the open list by letters."""
        if not isinstance(event, QKeyEvent) or event.type() != QEvent.Type.KeyPress or watched is not self.view():
            return super().eventFilter(watched, event)
        if self.look_in_list(event):
            return True
        return super().eventFilter(watched, event)

    def look_in_list(self, event: QKeyEvent) -> bool:
        """Go to the entry of the open list that a letter means; tells whether the key is a letter."""
        view = self.view()
        at = self._meant(event, view.currentIndex().row())
        if at is not None and at >= 0:
            view.setCurrentIndex(self.model().index(at, self.modelColumn(), self.rootModelIndex()))
        return at is not None

    def _meant(self, event: QKeyEvent, at: int) -> int | None:
        """Return which entry a key means, -1 for none; nothing where the key is no letter of one."""
        text = event.text()
        # A blank opens the list, unless it stands between letters.
        again = bool(self._typed) and self._since.isValid()
        again = again and not self._since.hasExpired(QApplication.keyboardInputInterval())
        if self.isEditable() or not text.isprintable() or not text or event.modifiers() & _HELD:
            return None
        if text.isspace() and not again:
            return None
        self._typed = (self._typed if again else "") + text
        self._since.start()
        enabled = [self._can_be_chosen(place) for place in range(self.count())]
        return found_by(self._typed, [self.itemText(n) if can else "" for n, can in enumerate(enabled)], at)

    def _can_be_chosen(self, place: int) -> bool:
        index = self.model().index(place, self.modelColumn(), self.rootModelIndex())
        return bool(self.model().flags(index) & Qt.ItemFlag.ItemIsEnabled)

    def sizeHint(self) -> QSize:  # noqa: N802
        """Return the size at which its longest entry is read whole, within the width of a field."""
        hint = super().sizeHint()
        return QSize(min(hint.width(), max(wide(FIELD), self.minimumSizeHint().width())), hint.height())

    def minimumSizeHint(self) -> QSize:  # noqa: N802
        """Return the size at which a few letters are read; no more than all of them need."""
        return super().minimumSizeHint().boundedTo(super().sizeHint())

    def cut(self) -> bool:
        """Tell whether what it shows is longer than its room."""
        return self.fontMetrics().horizontalAdvance(self.currentText()) > self._room()

    def showPopup(self) -> None:  # noqa: N802
        """Show the list, as wide as its longest entry needs and the screen allows."""
        view = self.view()
        around = 2 * (SPACE.hair + SPACE.small) + view.verticalScrollBar().sizeHint().width()
        most = round(self.screen().availableGeometry().width() * _OF_SCREEN)
        view.setMinimumWidth(min(view.sizeHintForColumn(self.modelColumn()) + around, most))
        # Once it is filtered it stays so: asked again the toolkit takes it as the same.
        view.installEventFilter(self)
        super().showPopup()

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802
        """Paint; words that have no room end in dots."""
        if self.isEditable():
            super().paintEvent(event)
            return
        option = self._option()
        words = self.currentText() if self.count() else phrase("nothing to choose from yet")
        option.currentText = self.fontMetrics().elidedText(words, Qt.TextElideMode.ElideRight, self._room())
        if not self.count():
            option.palette.setColor(QPalette.ColorRole.ButtonText, colour("soft"))
            option.palette.setColor(QPalette.ColorRole.Text, colour("soft"))
        painter = QStylePainter(self)
        painter.drawComplexControl(QStyle.ComplexControl.CC_ComboBox, option)
        painter.drawControl(QStyle.ControlElement.CE_ComboBoxLabel, option)
        painter.end()

    def event(self, event: QEvent) -> bool:
        """Tell the whole of what is cut, above what is told of it else."""
        if isinstance(event, QHelpEvent) and event.type() == QEvent.Type.ToolTip and self.cut():
            told = "\n".join(filter(None, (self.currentText(), self.toolTip())))
            QToolTip.showText(event.globalPos(), told, self)
            return True
        return super().event(event)

    def _option(self) -> QStyleOptionComboBox:
        option = QStyleOptionComboBox()
        self.initStyleOption(option)
        return option

    def _room(self) -> int:
        """Return how wide words may be [px]."""
        place = self.style().subControlRect(
            QStyle.ComplexControl.CC_ComboBox, self._option(), QStyle.SubControl.SC_ComboBoxEditField, self
        )
        icon = self.iconSize().width() + SPACE.hair if not self.itemIcon(self.currentIndex()).isNull() else 0
        return max(place.width() - icon, 0)
