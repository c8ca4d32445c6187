"""The lines of a hardware set as a form: role, part, quantity."""

from collections.abc import Iterable

from PySide6.QtCore import QStringListModel, Qt, Signal
from PySide6.QtWidgets import (
    QDoubleSpinBox,
    QHBoxLayout,
    QHeaderView,
    QPushButton,
    QTableWidget,
    QVBoxLayout,
    QWidget,
)

from hwsched.desktop.looks.text_size import in_pixels
from hwsched.desktop.looks.tokens import ROW, scaled
from hwsched.desktop.opening.part_box import PartBox, RoleBox
from hwsched.desktop.widgets.empty import Empty
from hwsched.desktop.widgets.spin import AmountBox, spin
from hwsched.language import phrase
from hwsched.operations.opening.hand_choices import ROLES
from hwsched.operations.parts.hardware_sets import PROPOSED_ROLES, Line


class SetLines(QWidget):
    """Lines that can be changed, added and taken out."""

    changed = Signal()

    def __init__(self, names: QStringListModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._names = names
        self.table = QTableWidget(0, 3)
        self.table.horizontalHeader().setHighlightSections(False)
        self.table.horizontalHeader().setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        self.table.setAccessibleName(phrase("Lines of the set"))
        Empty(self.table, phrase("The parts of a set, each in its role, stand here."))
        self.table.setHorizontalHeaderLabels([phrase("Role"), phrase("Part"), phrase("Qty")])
        self.table.verticalHeader().hide()
        self.table.setTabKeyNavigation(False)
        in_pixels(self.table.verticalHeader(), defaultSectionSize=ROW.form)
        self.table.setSelectionBehavior(QTableWidget.SelectionBehavior.SelectRows)
        self.table.setShowGrid(False)
        header = self.table.horizontalHeader()
        header.setSectionResizeMode(1, QHeaderView.ResizeMode.Stretch)
        self.table.setColumnWidth(0, scaled(140))
        self.table.setColumnWidth(2, scaled(84))
        self.add = QPushButton(phrase("Add line"))
        self.add.setAutoDefault(False)
        self.add.clicked.connect(lambda: self._add(self._next_role(), "", 1.0, tell=True))
        self.out = QPushButton(phrase("Take line out"))
        self.out.setAutoDefault(False)
        self.out.clicked.connect(self._take_out)
        self.row = QHBoxLayout()
        self.row.addWidget(self.add)
        self.row.addWidget(self.out)
        self.row.addStretch(1)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self.table, 1)
        layout.addLayout(self.row)

    def show_lines(self, lines: Iterable[Line]) -> None:
        """Show these lines; nothing is told."""
        self.table.setRowCount(0)
        for line in lines:
            self._add(line.role, line.part, line.quantity)

    def lines(self) -> tuple[Line, ...]:
        """Return the lines as they stand; those without a part are left out."""
        found = []
        for row in range(self.table.rowCount()):
            role, part, quantity = (self.table.cellWidget(row, column) for column in range(3))
            if isinstance(role, RoleBox) and isinstance(part, PartBox) and isinstance(quantity, QDoubleSpinBox):
                found.append(Line(role.role(), part.number(), quantity.value()))
        return tuple(line for line in found if line.part)

    def _next_role(self) -> str:
        held = {line.role for line in self.lines()}
        return next((role for role in PROPOSED_ROLES if role not in held), ROLES[0])

    def _add(self, role: str, part: str, quantity: float, *, tell: bool = False) -> None:
        row = self.table.rowCount()
        self.table.insertRow(row)
        roles = RoleBox(ROLES, role)
        parts = PartBox(self._names, part)
        count = spin(AmountBox())
        count.setRange(0.01, 9999)
        # Most quantities are whole; wire comes by the metre.
        count.setDecimals(2)
        count.setValue(quantity)
        roles.fill_cell()
        parts.fill_cell()
        count.setProperty("cell", True)
        self.table.setCellWidget(row, 0, roles)
        self.table.setCellWidget(row, 1, parts)
        self.table.setCellWidget(row, 2, count)
        roles.currentIndexChanged.connect(self.changed)
        parts.currentTextChanged.connect(self.changed)
        count.valueChanged.connect(self.changed)
        if tell:
            self.table.selectRow(row)
            parts.setFocus()
            self.changed.emit()

    def _take_out(self) -> None:
        rows = {index.row() for index in self.table.selectionModel().selectedRows()}
        # A click into a cell's box selects no row: the box that has the keys counts.
        rows |= {
            row
            for row in range(self.table.rowCount())
            for column in range(3)
            if (cell := self.table.cellWidget(row, column)) is not None and cell.isAncestorOf(self._last())
        }
        for row in sorted(rows, reverse=True):
            self.table.removeRow(row)
        if rows:
            self.changed.emit()

    def _last(self) -> QWidget:
        found = self.table.focusWidget()
        return found if found is not None else self.table
