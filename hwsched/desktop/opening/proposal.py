"""An edit of many before it is made: what each opening holds now and would hold, in one step."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QLineEdit, QPushButton, QVBoxLayout, QWidget

from hwsched.attributes import CellError, Value, read_value, said_value
from hwsched.attributes.unknown import unknown_word
from hwsched.desktop.looks.tokens import SPACE
from hwsched.desktop.widgets.giving_back import GivingBack
from hwsched.desktop.widgets.lines import Lines
from hwsched.desktop.widgets.typed import plain_word, with_unit
from hwsched.kept_sentences import GATE, kept_error, kept_phrase
from hwsched.language import phrase, phrase_of_count
from hwsched.operations.opening.side_by_side import SharedFact, edits_of
from hwsched.quantities import LengthStyle


class Proposal(QFrame):
    """The text, how it is understood, each opening before and after; Enter makes it, Escape lets it be.

    What cannot be read stays in its field, with the reason beside it.
    """

    taken = Signal(object, object)
    """The edits, and the newest step when the values now were read."""
    given_up = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.fact: SharedFact | None = None
        self.seen: int | None = None
        """The newest step when the values now were read."""
        self._style: LengthStyle = "fraction"
        self._bare_unit: str | None = None
        self.title = QLabel()
        self.title.setTextFormat(Qt.TextFormat.PlainText)
        self.title.setWordWrap(True)
        self.field = QLineEdit()
        self.field.setAccessibleName(phrase("New value of all; empty means unknown"))
        self.field.setPlaceholderText(unknown_word())
        self.field.textChanged.connect(self._follow)
        self.field.returnPressed.connect(self._take)
        self.told = QLabel()
        self.told.setTextFormat(Qt.TextFormat.PlainText)
        self.told.setWordWrap(True)
        self.table = Lines((phrase("Mark"), phrase("Now"), phrase("Then")), 1)
        self.table.setAccessibleName(phrase("Before and after"))
        self.take = QPushButton()
        self.take.setAutoDefault(True)
        self.take.clicked.connect(lambda _checked=False: self._take())
        self.leave = QPushButton(phrase("Leave all as it is"))
        self.leave.setAutoDefault(False)
        self.leave.clicked.connect(lambda _checked=False: self.close_up())
        buttons = QHBoxLayout()
        buttons.addWidget(self.take)
        buttons.addWidget(self.leave)
        buttons.addStretch(1)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(SPACE.small, SPACE.small, SPACE.small, SPACE.small)
        for each in (self.title, self.field, self.told):
            layout.addWidget(each)
        layout.addWidget(self.table, 1)
        layout.addLayout(buttons)
        GivingBack(self)
        self.hide()

    def propose(self, fact: SharedFact, text: str, style: LengthStyle, bare_unit: str | None, seen: int | None) -> None:
        """Show what a text would change."""
        self.seen, self.fact, self._style, self._bare_unit = seen, fact, style, bare_unit
        self.field.blockSignals(True)
        self.field.setText(text)
        self.field.blockSignals(False)
        self.show()
        self._follow()
        # Whoever has just typed the value goes on with Enter; one that cannot be read is mended first.
        (self.take if self.take.isEnabled() else self.field).setFocus()

    def close_up(self) -> None:
        """Let it be."""
        self.fact = None
        self.hide()
        self.given_up.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Enter makes it, Escape lets it be, wherever in it the keyboard is."""
        if event.key() == Qt.Key.Key_Escape:
            self.close_up()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._take()
        else:
            super().keyPressEvent(event)

    def _text(self) -> str:
        """Return what was typed, as it is written."""
        text = self.field.text().strip()
        if self.fact is None:
            return text
        return with_unit(self.fact.attribute, plain_word(self.fact.attribute, text), self._style)

    def _read(self) -> tuple[Value, str]:
        """Return the value of what was typed, and what is wrong with it."""
        text = self._text()
        if self.fact is None or not text:
            return None, ""
        attribute = self.fact.attribute
        unit = self._bare_unit if attribute.kind == "length" else None
        try:
            return read_value(attribute, text, bare_unit=unit).value, ""
        except CellError as error:
            return None, f"'{text}' {kept_error(error.message)}" + (
                phrase("; accepted: {accepted}", accepted=kept_error(error.accepted)) if error.accepted else ""
            )

    def _follow(self) -> None:
        if self.fact is None:
            return
        fact = self.fact
        value, wrong = self._read()
        changed = edits_of(fact, value, "")[0] if not wrong else ()
        shown = said_value(fact.attribute, value, self._style, unknown=unknown_word())
        self.title.setText(f"{kept_phrase(fact.section, GATE)}: {phrase(fact.attribute.label)}")
        alike = len(fact.held) - len(changed)
        words = phrase("Understood as {part}.", part=shown)
        self.told.setText(
            wrong or (phrase("{words} {alike} hold it already.", words=words, alike=alike) if alike else words)
        )
        self.table.show_rows(
            [(e.mark, said_value(fact.attribute, e.value, self._style, unknown=unknown_word()), shown) for e in changed]
        )
        n = len(changed)
        self.take.setText(
            phrase_of_count("Change {count} opening in one step", "Change {count} openings in one step", n)
            if n
            else phrase("Nothing to change")
        )
        self.take.setEnabled(n > 0)

    def _take(self) -> None:
        value, wrong = self._read()
        if self.fact is None or wrong:
            return
        changed, edits = edits_of(self.fact, value, self._text())
        if changed:
            self.fact = None
            self.hide()
            self.taken.emit(edits, self.seen)
