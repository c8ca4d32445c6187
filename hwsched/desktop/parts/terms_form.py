"""What the project pays, as a form: currency, labour, discounts by supplier, exchange rates, own hours."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QFormLayout,
    QGroupBox,
    QHBoxLayout,
    QHeaderView,
    QLineEdit,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from hwsched.attributes import said_value
from hwsched.calc.project.labour import LabourTable
from hwsched.desktop.looks.text_size import in_pixels
from hwsched.desktop.looks.tokens import ROW
from hwsched.desktop.widgets.empty import Empty
from hwsched.language import phrase
from hwsched.survey import LEAF
from hwsched.values.terms import CostTerms

_KEY = int(Qt.ItemDataRole.UserRole)
_MATERIAL: Final = LEAF.attribute("material")


@dataclass(frozen=True, slots=True)
class TermsChanged:
    """What was typed otherwise than it stood; None takes an entry away."""

    currency: str | None
    labour_per_hour: str | None
    learning_rate: str | None
    discounts: Mapping[str, str | None]
    rates: Mapping[str, str | None]
    hours: Mapping[str, str | None]

    def __bool__(self) -> bool:
        """Whether anything was."""
        whole = (self.currency, self.labour_per_hour, self.learning_rate)
        return any(each is not None for each in whole) or bool(self.discounts or self.rates or self.hours)


class TermsForm(QWidget):
    """One number a project, and three tables of which the last column is typed."""

    changed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._terms = CostTerms()
        self.currency = QLineEdit()
        self.currency.setPlaceholderText(phrase("that of the parts"))
        self.currency.setToolTip(
            phrase("Three letters such as USD (ISO 4217); empty: that of the parts, where it is one")
        )
        self.labour = QLineEdit()
        self.labour.setPlaceholderText(phrase("unknown"))
        self.learning = QLineEdit()
        self.learning.setToolTip(
            phrase("Time of every doubled opening alike over the one before; 1: nothing is learnt")
        )
        form = QFormLayout()
        form.addRow(phrase("Currency"), self.currency)
        form.addRow(phrase("Labour an hour"), self.labour)
        form.addRow(phrase("Learning rate"), self.learning)
        self.discounts = _table([phrase("Supplier"), phrase("Takes off, 0 to 1")])
        self.rates = _table([phrase("Currency"), phrase("One is worth")])
        self.hours = _table([phrase("Task"), phrase("Leaf"), phrase("Hours"), phrase("Own hours")])
        left, right = QVBoxLayout(), QVBoxLayout()
        left.addLayout(form)
        left.addWidget(_titled(phrase("Discounts by supplier"), self.discounts), 1)
        left.addWidget(_titled(phrase("Exchange rates"), self.rates), 1)
        right.addWidget(_titled(phrase("Hours for one; the project's own go before the table's"), self.hours), 1)
        layout = QHBoxLayout(self)
        layout.addLayout(left, 2)
        layout.addLayout(right, 3)
        for field in (self.currency, self.labour, self.learning):
            field.textChanged.connect(self.changed)
        for table in (self.discounts, self.rates, self.hours):
            table.itemChanged.connect(self.changed)

    def show_terms(
        self, terms: CostTerms, suppliers: Iterable[str], currencies: Iterable[str], hours: LabourTable
    ) -> None:
        """Show what the project pays now.

        Parameters
        ----------
        terms : CostTerms
            As they stand.
        suppliers, currencies : iterable of str
            Of the catalogue; those that the terms know besides are shown too.
        hours : LabourTable
            The table's own hours.
        """
        self._terms = terms
        self.blockSignals(True)
        self.currency.setText(terms.currency)
        self.labour.setText(terms.labour_per_hour or "")
        self.learning.setText(terms.learning_rate)
        _fill(
            self.discounts,
            [((name,), name, terms.discounts.get(name, "")) for name in _all(suppliers, terms.discounts)],
        )
        others = [name for name in _all(currencies, terms.rates) if name != terms.currency]
        _fill(self.rates, [((name,), name, terms.rates.get(name, "")) for name in others])
        rows: list[tuple[tuple[str, ...], str, str]] = []
        for (task, material), row in hours.items():
            key = task if material == "any" else f"{task}/{material}"
            held = terms.hours.get(key, "")
            leaf = "" if material == "any" else said_value(_MATERIAL, material)
            rows.append(((phrase(row.text), leaf, f"{row.hours:f}"), key, held))
        known = {key for _, key, _ in rows}
        rows += [((key, "", ""), key, value) for key, value in terms.hours.items() if key not in known]
        _fill(self.hours, rows)
        self.blockSignals(False)

    def answer(self) -> TermsChanged:
        """Return what was typed otherwise than it stands."""
        terms = self._terms
        currency, labour, learning = (field.text().strip() for field in (self.currency, self.labour, self.learning))
        return TermsChanged(
            currency if currency.upper() != terms.currency else None,
            _decimal(labour) if _decimal(labour) != (terms.labour_per_hour or "") else None,
            _decimal(learning) if _decimal(learning) != terms.learning_rate else None,
            _typed(self.discounts, terms.discounts),
            _typed(self.rates, terms.rates),
            _typed(self.hours, terms.hours),
        )


def _decimal(text: str) -> str:
    return text.strip().replace(",", ".")


def _all(names: Iterable[str], held: Mapping[str, str]) -> list[str]:
    return sorted({*(name for name in names if name), *held})


def _table(titles: list[str]) -> QTableWidget:
    made = QTableWidget(0, len(titles))
    made.horizontalHeader().setHighlightSections(False)
    made.horizontalHeader().setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
    made.setHorizontalHeaderLabels(titles)
    made.verticalHeader().hide()
    in_pixels(made.verticalHeader(), defaultSectionSize=ROW.grid)
    made.setTabKeyNavigation(False)
    made.setAlternatingRowColors(True)
    made.setShowGrid(False)
    Empty(made, phrase("Nothing yet. What parts of the catalogue name stands here."))
    made.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
    made.horizontalHeader().setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
    return made


def _titled(title: str, table: QTableWidget) -> QGroupBox:
    box = QGroupBox(title)
    layout = QVBoxLayout(box)
    layout.setContentsMargins(4, 4, 4, 4)
    layout.addWidget(table)
    return box


def _fill(table: QTableWidget, rows: Sequence[tuple[tuple[str, ...], str, str]]) -> None:
    table.blockSignals(True)
    table.setRowCount(len(rows))
    last = table.columnCount() - 1
    for r, (texts, key, held) in enumerate(rows):
        for column, text in enumerate((*texts, held)):
            cell = QTableWidgetItem(text)
            cell.setToolTip(text)
            if column != last:
                cell.setFlags(Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable)
            else:
                cell.setData(_KEY, key)
            table.setItem(r, column, cell)
    table.blockSignals(False)


def _typed(table: QTableWidget, held: Mapping[str, str]) -> dict[str, str | None]:
    found: dict[str, str | None] = {}
    for row in range(table.rowCount()):
        cell = table.item(row, table.columnCount() - 1)
        if cell is not None:
            key, text = str(cell.data(_KEY)), _decimal(cell.text())
            if text != held.get(key, ""):
                found[key] = text or None
    return found
