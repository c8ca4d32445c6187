"""Candidates for a role under the parts of the sheet: which fit, which not and why, what choosing one changes."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from hwsched.desktop.looks.tokens import SPACE, wide
from hwsched.desktop.widgets.giving_back import GivingBack
from hwsched.desktop.widgets.lines import Lines
from hwsched.language import phrase
from hwsched.quantities import LengthStyle, format_length
from hwsched.values.role_words import role_said

if TYPE_CHECKING:
    from hwsched.operations.opening.candidates import Candidate


class _Table(Lines):
    """Lines of which one is taken by Enter."""

    taken = Signal(int)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Enter takes the current line."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.taken.emit(self.chosen_row())
        else:
            super().keyPressEvent(event)


class CandidatesPane(QWidget):
    """A line for each part that could have the role; a double click or Enter chooses one, Escape closes the pane."""

    chosen = Signal(str, str)
    """Role and catalogue number; an empty number leaves the role to the fit."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.role = ""
        self._candidates: tuple[Candidate, ...] = ()
        self.title = QLabel()
        self.title.setTextFormat(Qt.TextFormat.PlainText)
        self.title.setWordWrap(True)
        self.table = _Table(
            ("", phrase("Part"), phrase("Why not, or changes"), phrase("Cost"), phrase("Stock")),
            2,
            {3: wide(11), 4: wide(7)},
        )
        self.table.setAccessibleName(phrase("Candidates"))
        self.table.setToolTip(phrase("Double click, or Enter: this part is chosen by hand"))
        self.table.taken.connect(self._take)
        self.table.cellDoubleClicked.connect(lambda row, _column: self._take(row))
        self.table.itemSelectionChanged.connect(self._enable)
        self.take = QPushButton(phrase("Choose"))
        self.take.setToolTip(phrase("This part is chosen by hand, as one step"))
        self.take.clicked.connect(lambda _checked=False: self._take(self.table.chosen_row()))
        self.release = QPushButton(phrase("Leave it to the fit"))
        self.release.clicked.connect(lambda _checked=False: self.chosen.emit(self.role, ""))
        self.leave = QPushButton(phrase("Close"))
        self.leave.clicked.connect(lambda _checked=False: self.close_up())
        buttons = QHBoxLayout()
        for each in (self.take, self.release, self.leave):
            each.setAutoDefault(False)
            buttons.addWidget(each)
        buttons.addStretch(1)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(SPACE.hair, SPACE.hair, SPACE.hair, SPACE.hair)
        layout.addWidget(self.title)
        layout.addWidget(self.table, 1)
        layout.addLayout(buttons)
        GivingBack(self)
        self.hide()

    def wait_for(self, role: str) -> None:
        """Say that parts are being tried."""
        self.role, self._candidates = role, ()
        self.title.setText(phrase("Trying parts as {replace}…", replace=role_said(role)))
        self.table.show_rows(())
        self._enable()
        self.show()

    def show_candidates(self, role: str, found: Sequence[Candidate], style: LengthStyle) -> None:
        """Show what was tried."""
        self.role, self._candidates = role, tuple(found)
        fits, unknown = sum(each.fits for each in found), sum(each.unknown for each in found)
        words = phrase("{fits} of {count} fit as {replace}", fits=fits, count=len(found), replace=role_said(role))
        self.title.setText(
            words + (phrase(", {unknown} cannot be judged yet", unknown=unknown) if unknown else "")
            if found
            else phrase("No part of the catalogue could be tried as {replace}.", replace=role_said(role))
        )
        rows = [
            (
                phrase("now")
                if each.present
                else phrase("fits")
                if each.fits
                else phrase("to measure")
                if each.unknown
                else phrase("does not fit"),
                each.part,
                _words(each, style),
                _cost(each),
                "" if each.stock is None else f"{each.stock:g}",
            )
            for each in found
        ]
        self.table.show_rows(rows, aside={at for at, each in enumerate(found) if not each.fits})
        for row, each in enumerate(found):
            cell = self.table.item(row, 1)
            if cell is not None:
                cell.setToolTip(each.description)
        if rows:
            self.table.selectRow(0)
            self.table.setCurrentCell(0, 1)
        self._enable()
        self.show()
        self.table.setFocus()

    def close_up(self) -> None:
        """Show no candidates."""
        self.role, self._candidates = "", ()
        self.hide()

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Escape closes the pane."""
        if event.key() == Qt.Key.Key_Escape:
            self.close_up()
        else:
            super().keyPressEvent(event)

    def _enable(self) -> None:
        row = self.table.chosen_row()
        self.take.setEnabled(0 <= row < len(self._candidates) and not self._candidates[row].present)

    def _take(self, row: int) -> None:
        if 0 <= row < len(self._candidates) and not self._candidates[row].present:
            self.chosen.emit(self.role, self._candidates[row].part)


def _words(each: Candidate, style: LengthStyle) -> str:
    if each.fits:
        return "\n".join(each.changes) or ("" if each.present else phrase("nothing else changes"))
    by = (
        phrase("{length} ({short_mm:.1f} mm) off. ", length=format_length(each.short_mm, style), short_mm=each.short_mm)
        if each.short_mm
        else ""
    )
    return by + "\n".join(each.reasons[:3])


def _cost(each: Candidate) -> str:
    if each.cost_change is None or each.present:
        return "" if each.cost is None else f"{each.cost:.2f} {each.currency}"
    return f"{each.cost_change:+.2f} {each.currency}" if each.cost_change else phrase("the same")
