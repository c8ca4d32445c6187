"""Where the chosen part is used, as a tree: openings, sets, boxes, supplies."""

from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHeaderView, QLabel, QTreeWidget, QTreeWidgetItem, QVBoxLayout, QWidget

from hwsched.desktop.widgets.empty import Empty
from hwsched.language import phrase, phrase_of_count
from hwsched.operations.parts.where_used import PartUse
from hwsched.quantities import LengthStyle
from hwsched.values import Part
from hwsched.values.amounts import amount_words, plain_amount, whole
from hwsched.values.role_words import role_said

_OPENING: Final = int(Qt.ItemDataRole.UserRole)


class UsePage(QWidget):
    """A sentence that sums it up, and the places below it."""

    wants_openings = Signal(list)
    """Identifiers of openings that a person wants to see."""

    def __init__(self) -> None:
        super().__init__()
        self.said = QLabel(textFormat=Qt.TextFormat.PlainText, wordWrap=True)
        self.tree = QTreeWidget()
        self.tree.setAccessibleName(phrase("Where the part is used"))
        self.tree.setHeaderLabels([phrase("Where"), phrase("As"), phrase("Quantity"), phrase("How")])
        self.tree.setAlternatingRowColors(True)
        self.tree.header().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        self.tree.itemActivated.connect(self._on_activated)
        self.empty = Empty(self.tree, phrase("Choose a part: the openings, sets and boxes that use it stand here."))
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self.said)
        layout.addWidget(self.tree, 1)

    def wait(self) -> None:
        """Say that it is being looked for."""
        self.tree.clear()
        self.said.setText(phrase("Looking where it is used…"))

    def show_use(self, use: PartUse, part: Part | None, style: LengthStyle) -> None:
        """Show where a part is used; part: as the catalogue has it."""
        self.tree.clear()
        stock, unit = (part.stock, part.unit) if part is not None else (None, "")
        words = phrase(
            "Needed {needed} · went out {issued} · in stock {on_hand}",
            needed=whole(use.needed, unit),
            issued=whole(use.issued, unit),
            on_hand=phrase("not counted") if stock is None else plain_amount(stock),
        )
        if stock is not None and use.needed - use.issued > stock:
            words += phrase(" · short by {needed}", needed=whole(use.needed - use.issued - stock, unit))
        self.said.setText(words if use.used else phrase("Nothing uses it."))
        openings = self._group(
            phrase_of_count("{count} opening", "{count} openings", len({each.mark for each in use.openings})),
            len(use.openings),
        )
        for each in use.openings:
            how = phrase("chosen by hand") if each.by_hand else phrase("worked out")
            item = QTreeWidgetItem(
                [
                    each.mark,
                    role_said(each.role),
                    amount_words(part, each.quantity, style),
                    how if each.in_fit else phrase("{how}, in no fit that counts", how=how),
                ]
            )
            item.setData(0, _OPENING, each.opening_id)
            openings.addChild(item)
        sets = self._group(phrase("Hardware sets"), len(use.sets))
        for name, role, quantity in use.sets:
            sets.addChild(QTreeWidgetItem([name, role_said(role), amount_words(part, quantity, style)]))
        boxes = self._group(phrase("In the box of"), len(use.boxes))
        for box, quantity in use.boxes:
            boxes.addChild(QTreeWidgetItem([box, "", amount_words(part, quantity, style)]))
        for title, names in ((phrase("Supersedes"), use.follows), (phrase("Supplies"), use.supplies)):
            group = self._group(title, len(names))
            for name in names:
                group.addChild(QTreeWidgetItem([name]))
        self.tree.expandAll()

    def _group(self, title: str, count: int) -> QTreeWidgetItem:
        group = QTreeWidgetItem([title])
        if count:
            self.tree.addTopLevelItem(group)
        return group

    def _on_activated(self, item: QTreeWidgetItem) -> None:
        below = [item.child(n) for n in range(item.childCount())] or [item]
        ids = [str(each.data(0, _OPENING)) for each in below if each is not None and each.data(0, _OPENING)]
        if ids:
            self.wants_openings.emit(list(dict.fromkeys(ids)))
