"""Differences between openings as they are and as they would be, as a tree: an opening a line, details below it."""

from collections.abc import Sequence
from decimal import Decimal
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QResizeEvent
from PySide6.QtWidgets import QHeaderView, QTreeWidget, QTreeWidgetItem, QWidget

from hwsched.calc.parts.cost import Cost
from hwsched.desktop.grid.widths import squeezed
from hwsched.desktop.looks.severities import severity_word
from hwsched.desktop.looks.tokens import scaled
from hwsched.desktop.survey.register import state_colour, status_word
from hwsched.desktop.widgets.empty import Empty
from hwsched.desktop.widgets.number_columns import RIGHT, to_the_right
from hwsched.language import phrase
from hwsched.operations.opening.what_if import Difference
from hwsched.quantities.money import rounded, summed
from hwsched.rules.saying import message_of
from hwsched.values import Finding

_ID: Final = int(Qt.ItemDataRole.UserRole)
_MOST: Final = 2000
"""Openings shown; the rest is counted."""
_NUMBERS: Final = (4, 5)
_USUAL: Final = (110, 130, 180, 180, 170, 70, 90)
"""Widths of columns [px at 100 % text]."""
_STATES: Final = {"held": "Held", "to-measure": "To measure"}
"""What an opening that would not be ready is called, unless nothing fits it."""


class Differences(QTreeWidget):
    """Parts gone and new, cost, holes and findings of each opening that would be different.

    Parameters
    ----------
    invites : str
        What is said before anything is worked out.
    """

    def __init__(self, invites: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._invites = invites
        self.setHeaderLabels(
            [
                phrase("Opening"),
                phrase("Fit"),
                phrase("Parts gone"),
                phrase("Parts new"),
                phrase("Cost"),
                phrase("Holes"),
                phrase("Findings"),
            ]
        )
        self.setAlternatingRowColors(True)
        self.empty = Empty(self, invites)
        """What is said where there is no line."""
        self.header().setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
        self.header().setStretchLastSection(True)
        to_the_right(self, _NUMBERS)
        self._share()

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802
        """Share the room anew."""
        super().resizeEvent(event)
        self._share()

    def _share(self) -> None:
        """Let columns be as wide as usual; where there is less room each gives of its width, and titles stay whole."""
        usual, room = [scaled(width) for width in _USUAL], self.viewport().width()
        titles = [self.header().sectionSizeHint(column) for column in range(len(usual))]
        wanted = [max(pair) for pair in zip(usual, titles, strict=True)]
        for column, width in enumerate(wanted if sum(wanted) <= room else squeezed(wanted, titles, room)):
            self.setColumnWidth(column, width)

    def forget(self) -> None:
        """Show none, as before anything was worked out."""
        self.clear()
        self.empty.say(self._invites)

    def show_differences(self, differences: Sequence[Difference]) -> None:
        """Show these; where there is none, that there is none."""
        self.clear()
        self.empty.say(phrase("No opening would be different."))
        for each in differences[:_MOST]:
            line = self._line(each)
            self.addTopLevelItem(line)
            # Qt spans what is in a tree already, nothing before.
            for at in range(line.childCount()):
                self.setFirstColumnSpanned(at, self.indexFromItem(line), True)
        if len(differences) > _MOST:
            self.addTopLevelItem(QTreeWidgetItem([phrase("and {count} more", count=len(differences) - _MOST)]))

    def opening_of(self, item: QTreeWidgetItem) -> str:
        """Return the opening of a line or of a detail below it."""
        parent = item.parent()
        return str((parent if parent is not None else item).data(0, _ID) or "")

    def _line(self, each: Difference) -> QTreeWidgetItem:
        # A fit of which an error says something new is held, as the register has it.
        held = each.after == "fits" and any(finding.severity == "error" for finding in each.findings_new)
        after = "held" if held else each.after
        fit_before, fit_after = (status_word(each_fit) for each_fit in (each.before, after))
        fit = fit_after if fit_before == fit_after else f"{fit_before} → {fit_after}"
        holes = f"{each.holes_after}" if each.holes_before == each.holes_after else _to(each)
        findings = "  ".join(
            text
            for text in (
                f"−{len(each.findings_gone)}" if each.findings_gone else "",
                f"+{len(each.findings_new)}" if each.findings_new else "",
            )
            if text
        )
        texts = [
            each.mark, fit, ", ".join(each.gone), ", ".join(each.new),
            cost_words(each.cost_before, each.cost_after), holes, findings,
        ]  # fmt: skip
        line = QTreeWidgetItem(texts)
        line.setData(0, _ID, each.opening_id)
        for column, text in enumerate(texts):
            line.setToolTip(column, text)
        for column in _NUMBERS:
            line.setTextAlignment(column, RIGHT)
        if after != "fits" or each.why:
            colour = state_colour(_STATES.get(after, "Does not fit"))
            line.setForeground(1, colour if colour is not None else QColor())
        if each.why:
            self._detail(line, phrase("Why not: {why}", why=each.why))
        for sign, parts in (("−", each.gone), ("+", each.new)):
            for part in parts:
                self._detail(line, f"{sign} {part}")
        for sign, findings_ in (("−", each.findings_gone), ("+", each.findings_new)):
            for finding in findings_:
                self._detail(line, f"{sign} {finding_words(finding)}")
        return line

    def _detail(self, line: QTreeWidgetItem, text: str) -> None:
        below = QTreeWidgetItem([text])
        below.setToolTip(0, text)
        line.addChild(below)


def _to(each: Difference) -> str:
    return f"{each.holes_before} → {each.holes_after}"


def finding_words(finding: Finding) -> str:
    """Say a finding in one line."""
    about = f" ({finding.about})" if finding.about else ""
    return f"{severity_word(finding.severity)}: {message_of(finding)}{about}"


def cost_words(before: Cost | None, after: Cost | None) -> str:
    """Say what is known of a cost before and after; where it is unchanged, once."""
    was, now = (f"{rounded(cost.total):,}" if cost is not None else phrase("none") for cost in (before, after))
    return now if was == now else f"{was} → {now}"


def summary(differences: Sequence[Difference], asked: int) -> str:
    """Say in a few words what would be different."""
    words = [phrase("{count} of {asked} openings would be different", count=len(differences), asked=asked)]
    priced = [each for each in differences if each.cost_before is not None and each.cost_after is not None]
    if priced:
        was: Decimal = summed(each.cost_before.total for each in priced if each.cost_before is not None)
        now: Decimal = summed(each.cost_after.total for each in priced if each.cost_after is not None)
        words.append(
            phrase(
                "their known cost {rounded:,} → {rounded_2:,} ({rounded_3:+,})",
                rounded=rounded(was),
                rounded_2=rounded(now),
                rounded_3=rounded(now) - rounded(was),
            )
        )
    was_holes, now_holes = (sum(each.holes_before for each in differences), sum(e.holes_after for e in differences))
    if was_holes != now_holes:
        words.append(phrase("holes {was_holes} → {now_holes}", was_holes=was_holes, now_holes=now_holes))
    lost = sum(each.before == "fits" and each.after != "fits" for each in differences)
    if lost:
        words.append(phrase("{lost} no longer fit", lost=lost))
    return " · ".join(words)
