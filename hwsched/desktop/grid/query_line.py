"""The query line over a grid: typed with offers under it, its parts as chips, what it means in words below."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial
from typing import Final

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QLabel, QLineEdit, QToolButton, QVBoxLayout, QWidget

from hwsched.desktop.grid.asking import Understanding, understand
from hwsched.desktop.grid.offers import Offers
from hwsched.desktop.looks.text_size import in_pixels
from hwsched.desktop.looks.tokens import SPACE, TARGET, colour
from hwsched.desktop.widgets.flow import Flow
from hwsched.language import phrase
from hwsched.query import Askable

_AND: Final = " and "
_CHIP: Final = 48
"""So many letters of a condition stand on its chip; the sentence under it has them all."""


@dataclass(frozen=True, slots=True)
class Besides:
    """What else narrows the grid: shown as a chip beside those of the query."""

    said: str
    take_away: Callable[[], None]


class QueryLine(QWidget):
    """A line in which words or a query are typed.

    Nothing of what was typed is lost: what cannot be read stays, with why under it, and rows stay as they were.

    Parameters
    ----------
    hint : str
        What stands there while nothing is typed.
    """

    asked = Signal(object)
    """What is asked for: an Understanding that can be read."""
    done = Signal()
    """Somebody goes on to what was found."""

    def __init__(self, hint: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.askable: Callable[[], Askable] = Askable
        """Returns what can be asked for at present."""
        self.understood = Understanding("")
        self._asked = self.understood
        """What was understood last."""
        self.line = _Line()
        self.line.setPlaceholderText(hint)
        self.line.setAccessibleName(phrase("Find words, or ask"))
        self.line.setClearButtonEnabled(True)
        self.offers = Offers(self.line)
        self.line.offers = self.offers
        self.add = QToolButton()
        self.add.setText(phrase("Ask for…"))
        self.add.setToolTip(phrase("Choose a fact, then what is asked of it"))
        in_pixels(self.add, minimumHeight=TARGET)
        self.words = QLabel()
        self.words.setWordWrap(True)
        self.words.setAccessibleName(phrase("What is asked for"))
        self._chips = Flow()
        self._buttons: list[QToolButton] = []
        self._besides: Sequence[Besides] = ()
        self._shown: object = None
        self.bar = Flow()
        self._chips.follows = self.bar
        self.bar.addWidget(self.line)
        self.bar.stretched = self.line
        self.bar.addWidget(self.add)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(SPACE.hair)
        layout.addLayout(self.bar)
        layout.addLayout(self._chips)
        layout.addWidget(self.words)
        self.words.hide()
        self.line.textChanged.connect(self._on_text)
        self.line.textEdited.connect(lambda _text: self.offers.offer(self.askable()))
        self.line.settled.connect(self._on_settled)
        self.line.left.connect(self._on_left)
        self.line.done.connect(self.done)
        self.offers.taken.connect(self._on_offer)
        self.add.clicked.connect(lambda _checked=False: self._begin())

    def ask(self, text: str) -> None:
        """Ask for something, as if it was typed."""
        self.line.setText(text)

    def read_again(self) -> None:
        """Read the text once more: what can be asked for, or how values are read, is otherwise."""
        self._on_text(self.line.text())

    def show_besides(self, besides: Sequence[Besides]) -> None:
        """Show what narrows the grid beside the query."""
        self._besides = besides
        self._show_chips()

    def _on_text(self, text: str) -> None:
        self.understood = found = understand(text, self.askable())
        self._say(hard=False)
        if found.fault is None:
            self._show_chips()
            self._asked = found
            self.asked.emit(found)
        elif self._asked.words and text.startswith(self._asked.text):
            # What was looked for as words so far turns out to be the beginning of a query: no row holds it.
            self._asked = Understanding("")
            self.asked.emit(self._asked)

    def _say(self, *, hard: bool) -> None:
        found = self.understood
        # While a person types, what is not at its end is no mistake yet.
        refused = found.fault is not None and (hard or not found.unfinished)
        palette = self.words.palette()
        palette.setColor(self.words.foregroundRole(), colour("refused" if refused else "soft"))
        self.words.setPalette(palette)
        self.words.setText(found.said)
        self.words.setVisible(bool(found.said))

    def _on_settled(self) -> None:
        """Return was pressed: what cannot be read is marked where it stands."""
        fault = self.understood.fault
        self._say(hard=True)
        if fault is not None:
            self.line.setSelection(fault.start, max(1, fault.end - fault.start))

    def _on_left(self) -> None:
        self.offers.hide()
        self._say(hard=True)

    def _on_offer(self, text: str, cursor: int) -> None:
        self.line.setText(text)
        self.line.setCursorPosition(cursor)
        self.offers.offer(self.askable(), asked=True)

    def _begin(self) -> None:
        """Offer all that can be asked for, behind what is asked already."""
        text = self.line.text().rstrip()
        if text and not text.endswith(_AND.strip()):
            self.line.setText(text + _AND)
        self.line.setFocus(Qt.FocusReason.OtherFocusReason)
        self.line.setCursorPosition(len(self.line.text()))
        self.offers.offer(self.askable(), asked=True)

    def _show_chips(self) -> None:
        present = (self.understood.chips, tuple(each.said for each in self._besides))
        if present == self._shown:
            return
        self._shown = present
        for button in self._buttons:
            self._chips.removeWidget(button)
            button.hide()
            button.deleteLater()
        chips = [Besides(chip.said, partial(self._leave, chip.without)) for chip in self.understood.chips]
        self._buttons = [self._chip(each.said, each.take_away) for each in (*chips, *self._besides)]
        for place, button in enumerate(self._buttons):
            self._chips.insert(place, button)

    def _leave(self, text: str) -> None:
        self.line.setText(text)
        self.line.setFocus(Qt.FocusReason.OtherFocusReason)

    def _chip(self, said: str, slot: Callable[[], object]) -> QToolButton:
        made = QToolButton()
        made.setText(f"{said if len(said) <= _CHIP else said[: _CHIP - 1] + '…'}  ×")
        made.setToolTip(phrase("No more ask for: {said}", said=said))
        made.setAccessibleName(phrase("Take away: {said}", said=said))
        in_pixels(made, minimumHeight=TARGET)
        made.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        made.clicked.connect(lambda _checked=False: slot())
        return made


class _Line(QLineEdit):
    """A line whose list of offers gets keys first."""

    settled = Signal()
    left = Signal()
    done = Signal()
    """Somebody goes on to the rows."""
    offers: Offers | None = None

    def event(self, event: QEvent) -> bool:
        """Let Tab take an offer that is chosen; else it leaves the line."""
        tab = isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress and event.key() == Qt.Key.Key_Tab
        if tab and self.offers is not None and self.offers.takes(event):  # type: ignore[arg-type]
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Let the list of offers take a key, or type it."""
        if self.offers is not None and self.offers.takes(event):
            return
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            if self.offers is not None:
                self.offers.hide()
            self.settled.emit()
        elif event.key() in (Qt.Key.Key_Down, Qt.Key.Key_Escape):
            # What was typed stays.
            self.done.emit()
            return
        super().keyPressEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:  # noqa: N802
        """Tell that somebody works elsewhere now."""
        super().focusOutEvent(event)
        self.left.emit()
