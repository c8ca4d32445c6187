"""The tree of buildings and levels; choosing one narrows the register to it."""

from collections.abc import Iterable, Mapping
from functools import partial
from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QTreeWidget, QTreeWidgetItem, QWidget

from hwsched.desktop.looks.tokens import wide
from hwsched.language import phrase, phrase_of_count
from hwsched.operations.findings.checked import Checked
from hwsched.telling.natural import natural

Upward = Mapping[tuple[str | None, str | None], tuple[bool, float, int]]
"""By building and level, by what levels are put in order."""
_PLACE = int(Qt.ItemDataRole.UserRole)


class BuildingTree(QTreeWidget):
    """Buildings, their levels, and how many openings stand in each."""

    chosen = Signal(object)
    """(building, level or None), or None for the whole project."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(phrase("Buildings and levels"))
        # Places and counts say themselves what they are; a title over the counts, in sight or not, would be wider.
        self.setHeaderLabels([phrase("Place"), ""])
        self.headerItem().setData(1, Qt.ItemDataRole.AccessibleTextRole, phrase("Openings"))
        self.setHeaderHidden(True)
        self.header().setStretchLastSection(False)
        self.header().setSectionResizeMode(0, self.header().ResizeMode.Stretch)
        self.header().setSectionResizeMode(1, self.header().ResizeMode.ResizeToContents)
        # Beside the count there is room for a name, whatever the size of the letters.
        self.setMinimumWidth(wide(24))
        self.setRootIsDecorated(True)
        self._shown: object = None
        self.currentItemChanged.connect(self._on_current)

    def show_places(self, title: str, checked: Iterable[Checked], upward: Upward) -> None:
        """Show where these openings stand, levels as one walks up; what was chosen stays so while there is any."""
        current_item = self.currentItem()
        before = current_item.data(0, _PLACE) if current_item is not None else None
        counts: dict[str, dict[str, int]] = {}
        for each in checked:
            levels = counts.setdefault(each.given.opening.building or "", {})
            level = each.given.opening.level or ""
            levels[level] = levels.get(level, 0) + 1
        asked = title, counts, dict(upward)
        if asked == self._shown and self.topLevelItemCount():
            # To make lines anew that are there costs a third of what a whole reading costs the screen.
            return
        self._shown = asked
        self.blockSignals(True)
        self.clear()
        root = self._line(None, title, sum(sum(levels.values()) for levels in counts.values()), None)
        current = root
        for building, levels in sorted(counts.items(), key=lambda each: natural(each[0])):
            branch = self._line(root, building or phrase("No building"), sum(levels.values()), (building, None))
            if before == (building, None):
                current = branch
            for level, count in sorted(levels.items(), key=partial(_order, upward, building)):
                leaf = self._line(branch, level or phrase("No level"), count, (building, level))
                if before == (building, level):
                    current = leaf
        self.expandAll()
        self.setCurrentItem(current)
        self.blockSignals(False)
        if before is not None and current is root:
            self.chosen.emit(None)

    def _line(self, parent: QTreeWidgetItem | None, text: str, count: int, place: object) -> QTreeWidgetItem:
        item = QTreeWidgetItem([text, str(count)])
        item.setData(0, _PLACE, place)
        item.setToolTip(0, text)
        item.setToolTip(1, phrase_of_count("{count} opening", "{count:,} openings", count))
        item.setTextAlignment(1, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        if parent is None:
            self.addTopLevelItem(item)
        else:
            parent.addChild(item)
        return item

    def _on_current(self, item: QTreeWidgetItem | None) -> None:
        if item is not None:
            place = item.data(0, _PLACE)
            self.chosen.emit(tuple(place) if place is not None else None)


def _order(upward: Upward, building: str, count: tuple[str, int]) -> Any:
    level = count[0]
    return upward.get((building or None, level or None), (True, 0.0, 0)), natural(level)
