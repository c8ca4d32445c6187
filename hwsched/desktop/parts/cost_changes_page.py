"""What changed in the cost: since the last reckoning in this window, or since a revision."""

from collections.abc import Mapping, Sequence
from typing import Final

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from hwsched.calc.parts.cost import Cost
from hwsched.desktop.widgets.drop_down import DropDown
from hwsched.desktop.widgets.lines import Lines
from hwsched.language import phrase
from hwsched.operations.parts.cost_since import changed_costs, whole_change
from hwsched.quantities.money import rounded

LAST: Final = ""
"""The reckoning before, in place of a revision's letter."""
_MOST: Final = 500


class CostChangesPage(QWidget):
    """Since when, a sentence, and a line an opening that costs something else."""

    since_changed = Signal()
    wants_opening = Signal(str)
    """Mark of an opening that a person wants to see."""

    def __init__(self) -> None:
        super().__init__()
        self.since = DropDown()
        self.since.setAccessibleName(phrase("Changes since"))
        self.since.currentIndexChanged.connect(lambda _at: self.since_changed.emit())
        self.said = QLabel(textFormat=Qt.TextFormat.PlainText, wordWrap=True)
        self.table = Lines(
            (phrase("Opening"), phrase("Before"), phrase("Now"), phrase("Change"), phrase("Not sure of")),
            4,
            numbers=(1, 2, 3),
        )
        self.table.setAccessibleName(phrase("Openings that cost something else"))
        self.table.empty.say(phrase("Openings that cost something else than then stand here."))
        self.table.cellDoubleClicked.connect(lambda row, _column: self._show(row))
        top = QHBoxLayout()
        label = QLabel(phrase("&Since"))
        label.setBuddy(self.since)
        top.addWidget(label)
        top.addWidget(self.since)
        top.addStretch(1)
        layout = QVBoxLayout(self)
        layout.addLayout(top)
        layout.addWidget(self.said)
        layout.addWidget(self.table, 1)
        self.offer(())

    def offer(self, letters: Sequence[str]) -> None:
        """Offer these revisions, the newest first, beside the last reckoning."""
        held = self.letter
        with QSignalBlocker(self.since):
            self.since.clear()
            self.since.addItem(phrase("the last reckoning here"), LAST)
            for letter in reversed(letters):
                self.since.addItem(phrase("revision {letter}", letter=letter), letter)
            self.since.setCurrentIndex(max(self.since.findData(held), 0))

    @property
    def letter(self) -> str:
        """Revision that is compared with; empty for the last reckoning."""
        return str(self.since.currentData() or LAST)

    def refuse(self, words: str) -> None:
        """Say why nothing is compared."""
        self.table.show_rows(())
        self.said.setText(words)

    def show_changes(self, before: Mapping[str, Cost], now: Mapping[str, Cost], currency: str) -> None:
        """Show what costs something else."""
        found = changed_costs(before, now)
        whole = whole_change(before, now)
        self.table.show_rows(
            [
                (each.key, _amount(each.before), _amount(each.now), f"{rounded(each.change):+,}", _doubt(each.now))
                for each in found[:_MOST]
            ]
        )
        more = phrase(" The first {most} are shown.", most=_MOST) if len(found) > _MOST else ""
        if not found:
            self.said.setText(phrase("Nothing costs something else."))
            return
        amounts = f"{_amount(whole.before)} → {_amount(whole.now)} {currency}"
        self.said.setText(
            phrase(
                "{count} of {count_2} cost something else: {amounts} ({rounded:+,}).{more}",
                count=len(found),
                count_2=len(now),
                amounts=amounts,
                rounded=rounded(whole.change),
                more=more,
            )
        )

    def _show(self, row: int) -> None:
        item = self.table.item(row, 0)
        if item is not None:
            self.wants_opening.emit(item.text())


def _amount(cost: Cost | None) -> str:
    return phrase("not priced") if cost is None else f"{rounded(cost.total):,}"


def _doubt(cost: Cost | None) -> str:
    return "" if cost is None or cost.complete else phrase("{count} unknown", count=len(cost.unknown))
