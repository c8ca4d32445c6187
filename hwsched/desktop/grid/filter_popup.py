"""Values of a column among which a person chooses what is shown."""

from collections.abc import Callable, Collection, Sequence
from typing import Any, Final

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from hwsched.desktop.looks.tokens import SPACE, wide
from hwsched.language import phrase, phrase_of_count

MOST: Final = 400
"""So many values are listed; others are found by typing."""
_VALUE: Final = int(Qt.ItemDataRole.UserRole)
_CHECKED = Qt.CheckState.Checked


class FilterPopup(QFrame):
    """A list of values with how many rows have each; Return shows what is checked, Escape leaves all as it was.

    Parameters
    ----------
    title : str
        Of the column.
    counted : sequence of tuple
        Values in order, with how they are called and how many rows have them.
    allowed : collection or None
        Those that are shown at present; None: all.
    then : callable
        Gets the values that are to be shown; None for all.
    """

    def __init__(
        self,
        title: str,
        counted: Sequence[tuple[Any, str, int]],
        allowed: Collection[Any] | None,
        then: Callable[[frozenset[Any] | None], None],
        parent: QWidget,
    ) -> None:
        super().__init__(parent, Qt.WindowType.Popup)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setFrameShape(QFrame.Shape.StyledPanel)
        self.setAccessibleName(phrase("Values of {title} that are shown", title=title))
        self._counted, self._then = counted, then
        self._chosen = {value for value, _, _ in counted} if allowed is None else set(allowed)
        self.search = QLineEdit()
        self.search.setPlaceholderText(phrase("Find a value"))
        self.search.setAccessibleName(phrase("Find a value of {title}", title=title))
        self.search.setClearButtonEnabled(True)
        self.list = QListWidget()
        self.list.setAccessibleName(phrase("Values of {title}", title=title))
        self.list.setMinimumWidth(wide(32))
        self.more = QLabel()
        self.every = _button(phrase("All"), self._all)
        self.none = _button("None", self._none)
        self.show_these = _button(phrase("Show these"), self.take)
        self.show_these.setDefault(True)
        row = QHBoxLayout()
        for button in (self.every, self.none):
            row.addWidget(button)
        row.addStretch(1)
        row.addWidget(self.show_these)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(SPACE.small, SPACE.small, SPACE.small, SPACE.small)
        layout.setSpacing(SPACE.hair)
        layout.addWidget(self.search)
        layout.addWidget(self.list, 1)
        layout.addWidget(self.more)
        layout.addLayout(row)
        self.search.textChanged.connect(self._fill)
        self.list.itemChanged.connect(self._on_checked)
        self._fill()

    def show_at(self, place: QPoint) -> None:
        """Open it there, ready to be typed into."""
        self.move(place)
        self.show()
        self.search.setFocus(Qt.FocusReason.PopupFocusReason)

    def take(self) -> None:
        """Show the checked values, of a search those that it finds, and close."""
        found = {value for value, _, _ in self._found()}
        chosen = self._chosen & found if self.search.text().strip() else self._chosen
        every = chosen >= {value for value, _, _ in self._counted}
        self.close()
        self._then(None if every else frozenset(chosen))

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Take with Return, go from the search to the list with an arrow."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.take()
        elif event.key() == Qt.Key.Key_Down and self.search.hasFocus():
            self.list.setFocus(Qt.FocusReason.TabFocusReason)
            self.list.setCurrentRow(max(0, self.list.currentRow()))
        else:
            super().keyPressEvent(event)

    def _found(self) -> list[tuple[Any, str, int]]:
        piece = self.search.text().strip().casefold()
        return [each for each in self._counted if piece in each[1].casefold()]

    def _fill(self) -> None:
        found = self._found()
        self.list.blockSignals(True)
        self.list.clear()
        for value, text, count in found[:MOST]:
            item = QListWidgetItem(f"{text}  ({count})")
            item.setData(_VALUE, (value,))
            item.setFlags(item.flags() | Qt.ItemFlag.ItemIsUserCheckable)
            item.setCheckState(_CHECKED if value in self._chosen else Qt.CheckState.Unchecked)
            self.list.addItem(item)
        self.list.blockSignals(False)
        self.more.setText(
            phrase_of_count(
                "{count} more value: type to find it", "{count} more values: type to find them", len(found) - MOST
            )
            if len(found) > MOST
            else ""
        )
        self.more.setVisible(len(found) > MOST)

    def _on_checked(self, item: QListWidgetItem) -> None:
        value = item.data(_VALUE)[0]
        (self._chosen.add if item.checkState() == _CHECKED else self._chosen.discard)(value)

    def _all(self) -> None:
        self._chosen |= {value for value, _, _ in self._found()}
        self._fill()

    def _none(self) -> None:
        self._chosen -= {value for value, _, _ in self._found()}
        self._fill()


def _button(text: str, slot: Callable[[], None]) -> QPushButton:
    made = QPushButton(text)
    made.clicked.connect(lambda _checked=False: slot())
    return made
