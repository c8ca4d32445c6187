"""What an edit of many cells would change, shown under the grid until a person takes it or leaves it.

One value for a fact of many rows is typed here; pasted and filled cells come with their values.
"""

from collections import Counter
from collections.abc import Callable, Sequence
from typing import Any, Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QComboBox, QFrame, QHBoxLayout, QLabel, QLineEdit, QPushButton, QVBoxLayout, QWidget

from hwsched.attributes.unknown import unknown_word
from hwsched.desktop.grid.cells import editor_for, typed_in
from hwsched.desktop.grid.column import Column
from hwsched.desktop.grid.proposals import Proposal
from hwsched.desktop.looks.text_size import in_figures
from hwsched.desktop.looks.tokens import SPACE, wide
from hwsched.desktop.widgets.drop_down import DropDown
from hwsched.desktop.widgets.giving_back import GivingBack
from hwsched.desktop.widgets.lines import Lines
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.operations.survey.fact_edit import FactEdit

MOST: Final = 500
"""So many lines are listed; all are counted."""
_TITLES: Final = (to_phrase("Opening"), to_phrase("Fact"), to_phrase("Now"), to_phrase("Then"))
_SAID: Final = 4
Propose = Callable[[str, str], Sequence[Proposal]]
"""Returns what a text in a column of all selected rows would change."""


class ChangesPane(QFrame):
    """Before and after, cell by cell; what cannot be taken is named first."""

    taken = Signal(object)
    """The edits, each a FactEdit."""
    left = Signal()
    """A person leaves all as it is."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(phrase("What would change"))
        self._proposals: Sequence[Proposal] = ()
        self._columns: Sequence[Column[Any]] = ()
        self._propose: Propose | None = None
        self.said = QLabel()
        self.said.setWordWrap(True)
        self.fact = DropDown()
        self.fact.setAccessibleName(phrase("Fact that is set"))
        self.fact.activated.connect(self._on_fact)
        self.field: QComboBox | QLineEdit = QLineEdit()
        self._row = QHBoxLayout()
        self._row.addWidget(self.fact)
        self._row.addWidget(self.field)
        self.mixed = QLabel()
        self.mixed.setWordWrap(True)
        self._row.addWidget(self.mixed, 1)
        self.lines = Lines([phrase(each) for each in _TITLES], 2)
        self.lines.setAccessibleName(phrase("Facts before and after"))
        in_figures(self.lines, minimumHeight=18)
        self.take = QPushButton()
        self.take.clicked.connect(lambda _checked=False: self._take())
        self.leave = QPushButton(phrase("Leave all as it is"))
        self.leave.clicked.connect(lambda _checked=False: self.leave_all())
        buttons = QHBoxLayout()
        buttons.addStretch(1)
        buttons.addWidget(self.leave)
        buttons.addWidget(self.take)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, SPACE.hair, 0, 0)
        layout.setSpacing(SPACE.hair)
        layout.addLayout(self._row)
        layout.addWidget(self.lines, 1)
        layout.addWidget(self.said)
        layout.addLayout(buttons)
        GivingBack(self)
        self.hide()

    def show_proposals(self, proposals: Sequence[Proposal], note: str = "") -> None:
        """Show what pasted or filled cells would change."""
        self._propose = self._then = None
        for each in (self.fact, self.field, self.mixed):
            each.hide()
        self._show(proposals, note)
        self.show()
        (self.take if self.take.isEnabled() else self.leave).setFocus(Qt.FocusReason.OtherFocusReason)

    def ask_plain(self, rows: Sequence[tuple[str, str, str, str]], words: str, then: Callable[[], None]) -> None:
        """Show what would come of something that is no edit of cells; `then` does it where a person agrees."""
        self.show_proposals(())
        self._then = then
        self.lines.show_rows(rows[:MOST])
        self.take.setText(words)
        self.take.setEnabled(bool(rows))
        self.said.setText("")
        self.take.setFocus(Qt.FocusReason.OtherFocusReason)

    _then: Callable[[], None] | None = None

    def ask(self, columns: Sequence[Column[Any]], name: str, rows: Sequence[Any], propose: Propose) -> None:
        """Let one value be typed for a fact of many rows.

        Parameters
        ----------
        columns : sequence of Column
            Whose facts can be set.
        name : str
            That which is set first.
        rows : sequence
            The selected rows.
        propose : callable
            Returns what a text would change.
        """
        self._columns, self._rows, self._propose, self._then = columns, rows, propose, None
        self.fact.clear()
        for column in columns:
            self.fact.addItem(phrase(column.title), column.name)
        self.fact.setCurrentIndex(max(0, self.fact.findData(name)))
        self.fact.show()
        self.mixed.show()
        self.show()
        self._on_fact()

    _rows: Sequence[Any] = ()

    def leave_all(self) -> None:
        """Close it; nothing is changed."""
        self.hide()
        self.left.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Leave with Escape, go on with Return."""
        if event.key() == Qt.Key.Key_Escape:
            self.leave_all()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            focused = self.focusWidget()
            if focused is self.leave:
                self.leave_all()
            elif self.take.isEnabled():
                self._take()
        else:
            super().keyPressEvent(event)

    def _on_fact(self, _place: int = 0) -> None:
        column = self._columns[self.fact.currentIndex()]
        made: QComboBox | QLineEdit = editor_for(column, self)
        self._row.replaceWidget(self.field, made)
        # What is made later comes behind all of the window, where Tab is concerned.
        self.setTabOrder(self.fact, made)
        self.field.hide()
        self.field.deleteLater()
        self.field = made
        counts = Counter(column.text(column.value(row)) or unknown_word() for row in self._rows)
        told = [f"{text} ({count})" for text, count in counts.most_common(_SAID)]
        more = (
            phrase_of_count(" and {count} other value", " and {count} other values", len(counts) - _SAID)
            if len(counts) > _SAID
            else ""
        )
        self.mixed.setText(f"{phrase('mixed: ') if len(counts) > 1 else phrase('now: ')}{', '.join(told)}{more}")
        if isinstance(made, QLineEdit):
            made.setPlaceholderText(phrase("as it is") if len(counts) == 1 else phrase("mixed"))
            made.textEdited.connect(lambda _text: self._typed())
        else:
            # Nothing is chosen yet: what is mixed stays so until somebody says otherwise.
            made.setCurrentIndex(-1)
            made.setPlaceholderText(phrase("mixed") if len(counts) > 1 else phrase("as it is"))
            made.currentIndexChanged.connect(lambda _place: self._typed())
        made.setMinimumWidth(wide(20))
        made.show()
        made.setFocus(Qt.FocusReason.OtherFocusReason)
        self._show(
            (),
            phrase_of_count(
                "One value for {count} row; what is not typed stays as it is.",
                "One value for {count} rows; what is not typed stays as it is.",
                len(self._rows),
            ),
        )

    def _typed(self) -> None:
        if self._propose is not None:
            self._show(self._propose(str(self.fact.currentData()), typed_in(self.field)), "")

    def _show(self, proposals: Sequence[Proposal], note: str) -> None:
        self._proposals = proposals
        refused = [each for each in proposals if each.refused]
        changing = [each for each in proposals if each.changes]
        same = len(proposals) - len(refused) - len(changing)
        rows = [
            (
                each.thing,
                each.fact,
                each.before,
                phrase("“{after}” left out: {refused}", after=each.after, refused=each.refused),
            )
            for each in refused
        ]
        rows += [(each.thing, each.fact, each.before, each.after) for each in changing]
        self.lines.show_rows(rows[:MOST])
        things = len({each.thing for each in changing})
        count = phrase_of_count("{count} fact", "{count} facts", len(changing))
        self.take.setText(
            phrase(
                "Change {count} of {things} {part}",
                count=count,
                things=things,
                part=phrase("opening") if things == 1 else phrase("openings"),
            )
        )
        self.take.setEnabled(bool(changing))
        words = [note] if note else []
        if refused:
            words.append(
                phrase_of_count(
                    "{count} cannot be taken and is left out.",
                    "{count} cannot be taken and are left out.",
                    len(refused),
                )
            )
        if same:
            words.append(phrase_of_count("{count} is that already.", "{count} are that already.", same))
        words += (
            [phrase("The first {most} of {count} lines are listed.", most=MOST, count=len(rows))]
            if len(rows) > MOST
            else []
        )
        self.said.setText(" ".join(words))

    def _take(self) -> None:
        if self._then is not None:
            self.hide()
            self._then()
            return
        edits = [
            FactEdit(each.target.entity, each.target.row_id, each.target.name, each.text)
            for each in self._proposals
            if each.changes and each.target is not None
        ]
        self.hide()
        self.taken.emit(edits)
