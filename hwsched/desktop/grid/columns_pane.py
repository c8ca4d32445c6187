"""Which columns of a grid are shown, and in which order: chosen by mouse or keys."""

from collections.abc import Callable, Mapping, Sequence
from typing import Any, Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QSpinBox,
    QTreeWidget,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)

from hwsched.desktop.grid.column import Column
from hwsched.desktop.looks.tokens import SPACE, wide
from hwsched.desktop.widgets.spin import spin
from hwsched.language import phrase, to_phrase

_NAME: Final = int(Qt.ItemDataRole.UserRole)
_CHECKED, _NOT = Qt.CheckState.Checked, Qt.CheckState.Unchecked
_SHOWN: Final = to_phrase("Shown, from the left")


class ColumnsPane(QFrame):
    """Shown columns in their order on top, all others by what they are of; each change is seen at once.

    Parameters
    ----------
    then : callable
        Gets the names of the shown columns in order, and how many stay in view.
    """

    left = Signal()
    """A person is done with it."""
    _ticked = Signal(str)

    def __init__(self, then: Callable[[tuple[str, ...], int], None], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._then = then
        self._known: Mapping[str, Column[Any]] = {}
        self._names: list[str] = []
        self._standard: tuple[str, ...] = ()
        self.setAccessibleName(phrase("Columns"))
        self.search = QLineEdit()
        self.search.setPlaceholderText(phrase("Find a column"))
        self.search.setAccessibleName(phrase("Find a column"))
        self.search.textChanged.connect(lambda _text: self._fill())
        self.tree = QTreeWidget()
        self.tree.setHeaderHidden(True)
        self.tree.setAccessibleName(phrase("Columns that can be shown"))
        self.tree.itemChanged.connect(self._on_checked)
        # Lines come and go with it: that must wait until Qt is done with the one that was ticked.
        self._ticked.connect(self._on_ticked, Qt.ConnectionType.QueuedConnection)
        self.earlier = _button(phrase("Move left"), lambda: self._move(-1))
        self.later = _button(phrase("Move right"), lambda: self._move(1))
        self.standard = _button(phrase("As at first"), self._as_at_first)
        self.close_ = _button(phrase("Done"), self._leave)
        self.frozen = spin(QSpinBox())
        self.frozen.setAccessibleName(phrase("Columns that stay in view"))
        self.frozen.valueChanged.connect(lambda _value: self._tell())
        fixed = QHBoxLayout()
        stay = QLabel(phrase("Stay in view from the left"))
        stay.setWordWrap(True)
        fixed.addWidget(stay, 1)
        fixed.addWidget(self.frozen)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(SPACE.hair, 0, 0, 0)
        layout.setSpacing(SPACE.hair)
        layout.addWidget(self.search)
        layout.addWidget(self.tree, 1)
        for pair in ((self.earlier, self.later), (self.standard, self.close_)):
            row = QHBoxLayout()
            for button in pair:
                row.addWidget(button)
            layout.addLayout(row)
        layout.addLayout(fixed)
        self.setFixedWidth(wide(28))
        self.hide()

    def show_columns(self, known: Mapping[str, Column[Any]], shown: Sequence[str], frozen: int) -> None:
        """Offer these columns, of which some are shown."""
        self._known, self._names = known, list(shown)
        self._standard = tuple(each.name for each in known.values() if each.standard)
        self.frozen.blockSignals(True)
        self.frozen.setRange(0, max(0, len(self._names) - 1))
        self.frozen.setValue(frozen)
        self.frozen.blockSignals(False)
        self._fill()
        if self.isHidden():
            self.show()
            self.search.setFocus(Qt.FocusReason.OtherFocusReason)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Leave with Escape."""
        if event.key() == Qt.Key.Key_Escape:
            self._leave()
        else:
            super().keyPressEvent(event)

    def _leave(self) -> None:
        self.hide()
        self.left.emit()

    def _fill(self, current: str = "") -> None:
        piece = self.search.text().strip().casefold()
        self.tree.blockSignals(True)
        self.tree.clear()
        sections: dict[str, QTreeWidgetItem] = {}
        rest = [name for name in self._known if name not in self._names]
        for name in (*self._names, *rest):
            column = self._known[name]
            if piece not in phrase(column.title).casefold():
                continue
            section = phrase(_SHOWN) if name in self._names else phrase(column.section or "Others")
            if section not in sections:
                sections[section] = QTreeWidgetItem([section])
                sections[section].setFlags(Qt.ItemFlag.ItemIsEnabled)
                self.tree.addTopLevelItem(sections[section])
            item = QTreeWidgetItem([phrase(column.title)])
            item.setFlags(item.flags() | Qt.ItemFlag.ItemIsUserCheckable)
            item.setCheckState(0, _CHECKED if name in self._names else _NOT)
            item.setData(0, _NAME, name)
            item.setToolTip(0, column.told())
            sections[section].addChild(item)
            if name == current:
                self.tree.setCurrentItem(item)
        self.tree.expandAll()
        self.tree.blockSignals(False)

    def _on_checked(self, item: QTreeWidgetItem, _column: int) -> None:
        name = str(item.data(0, _NAME))
        if item.checkState(0) == _CHECKED and name not in self._names:
            self._names.append(name)
        elif item.checkState(0) == _NOT and name in self._names and len(self._names) > 1:
            self._names.remove(name)
        self._ticked.emit(name)

    def _on_ticked(self, name: str) -> None:
        self._fill(name)
        self._tell()

    def _move(self, by: int) -> None:
        item = self.tree.currentItem()
        name = str(item.data(0, _NAME)) if item is not None else ""
        if name in self._names:
            at = self._names.index(name)
            to = max(0, min(len(self._names) - 1, at + by))
            self._names.insert(to, self._names.pop(at))
            self._fill(name)
            self._tell()

    def _as_at_first(self) -> None:
        self._names = list(self._standard)
        self._fill()
        self._tell()

    def _tell(self) -> None:
        self.frozen.blockSignals(True)
        self.frozen.setMaximum(max(0, len(self._names) - 1))
        self.frozen.blockSignals(False)
        self._then(tuple(self._names), self.frozen.value())


def _button(text: str, slot: Callable[[], object]) -> QPushButton:
    made = QPushButton(text)
    made.clicked.connect(lambda _checked=False: slot())
    return made
