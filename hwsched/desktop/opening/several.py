"""The inspector of several openings: the facts that they share, and of two how they differ."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QCheckBox, QLabel, QPushButton, QSplitter, QVBoxLayout, QWidget

from hwsched.desktop.looks.text_size import put_letters
from hwsched.desktop.looks.tokens import SPACE
from hwsched.desktop.opening.many_form import ManyForm
from hwsched.desktop.opening.proposal import Proposal
from hwsched.desktop.widgets.lines import Lines
from hwsched.desktop.widgets.tabs import TabbedPages
from hwsched.language import phrase, phrase_of_count
from hwsched.operations.findings.checked import Checked
from hwsched.operations.opening.side_by_side import Compared, SharedFact, compared
from hwsched.quantities import LengthStyle

_NAMED = 8
"""Marks that the title says."""


class ComparePage(QWidget):
    """Two openings beside one another; what differs stands first."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.only = QCheckBox(phrase("Only what differs"))
        self.only.toggled.connect(lambda _on: self._fill())
        self.table = Lines(("", phrase("What"), "", ""), 1)
        self.table.setAccessibleName(phrase("Two openings beside one another"))
        self.said = QLabel()
        self._lines: tuple[Compared, ...] = ()
        self._marks = ("", "")
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, SPACE.small, 0, 0)
        layout.addWidget(self.said)
        layout.addWidget(self.only)
        layout.addWidget(self.table, 1)

    def show_two(self, left: Checked, right: Checked, style: LengthStyle) -> None:
        """Show two openings."""
        self._lines = compared(left, right, style)
        self._marks = left.given.opening.mark, right.given.opening.mark
        self._fill()

    def _fill(self) -> None:
        differ = sum(each.differs for each in self._lines)
        self.said.setText(phrase("{differ} of {count} differ", differ=differ, count=len(self._lines)))
        self.table.setHorizontalHeaderLabels(["", phrase("What"), *self._marks])
        lines = [each for each in self._lines if each.differs or not self.only.isChecked()]
        self.table.show_rows([("≠" if e.differs else "", f"{e.section}: {e.label}", e.left, e.right) for e in lines])


class Several(QWidget):
    """Facts of several openings with the proposal of an edit below; of two a page besides that compares them."""

    wants_facts = Signal()
    """So many are selected that reading their facts takes a while."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.title = QLabel()
        self.title.setWordWrap(True)
        put_letters(self.title, "large", bold=True)
        self.marks = QLabel()
        self.marks.setWordWrap(True)
        for each in (self.title, self.marks):
            each.setTextFormat(Qt.TextFormat.PlainText)
        self.form, self.proposal, self.compare = ManyForm(), Proposal(), ComparePage()
        self.form.proposed.connect(self._propose)
        self.proposal.given_up.connect(self.form.setFocus)
        self.ask = QPushButton(phrase("Show what they have in common"))
        self.ask.clicked.connect(lambda _checked=False: self.wants_facts.emit())
        self.split = QSplitter(Qt.Orientation.Vertical)
        self.split.addWidget(self.form)
        self.split.addWidget(self.proposal)
        self.split.setStretchFactor(0, 3)
        self.split.setStretchFactor(1, 2)
        facts = QWidget()
        column = QVBoxLayout(facts)
        column.setContentsMargins(0, SPACE.hair, 0, 0)
        column.addWidget(self.ask)
        column.addWidget(self.split, 1)
        self.pages = TabbedPages()
        self.pages.addTab(self.compare, phrase("Compare"))
        self.pages.addTab(facts, phrase("Facts"))
        layout = QVBoxLayout(self)
        layout.setContentsMargins(SPACE.small, SPACE.small, SPACE.small, SPACE.small)
        layout.addWidget(self.title)
        layout.addWidget(self.marks)
        layout.addWidget(self.pages, 1)
        self._style: LengthStyle = "fraction"
        self.bare_unit: str | None = None

    def show_openings(self, openings: Sequence[Checked], style: LengthStyle) -> None:
        """Name what is selected; facts come when they were read."""
        self._style, self.form.bare_unit = style, self.bare_unit
        marks = [each.given.opening.mark for each in openings]
        two = len(openings) == 2
        self.title.setText(
            phrase("{marks} and {marks_2}", marks=marks[0], marks_2=marks[1])
            if two
            else phrase_of_count("{count} opening", "{count} openings", len(openings))
        )
        more = phrase(" and {count} more", count=len(marks) - _NAMED) if len(marks) > _NAMED else ""
        self.marks.setText("" if two else ", ".join(marks[:_NAMED]) + more)
        self.marks.setVisible(not two)
        was = self.pages.isTabVisible(0)
        self.pages.setTabVisible(0, two)
        if two:
            self.compare.show_two(openings[0], openings[1], style)
        if two != was:
            self.pages.setCurrentIndex(0 if two else 1)

    def show_facts(self, facts: Sequence[SharedFact], openings: int, base: int | None) -> None:
        """Show the facts that they share."""
        self.ask.hide()
        self.split.show()
        self.form.show_shared(facts, openings, self._style, base)

    def offer_facts(self) -> None:
        """Offer to read the facts of very many."""
        self.ask.show()
        self.split.hide()

    def _propose(self, fact: SharedFact, text: str, seen: int | None) -> None:
        self.proposal.propose(fact, text, self._style, self.bare_unit, seen)
