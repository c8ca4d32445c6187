"""The form of one calculator: a line a field with its unit, lists as small tables, parts of it under headings."""

from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QLabel, QScrollArea, QVBoxLayout, QWidget

from hwsched.calc.calculator import Calculator
from hwsched.desktop.project.calculator_fields import Entry, Path, Section, Table, at, form_of, put
from hwsched.desktop.project.small_table import SmallTable
from hwsched.desktop.widgets.fact_grid import FactGrid
from hwsched.desktop.widgets.fact_line import FactLine
from hwsched.language import phrase
from hwsched.quantities import LengthStyle


class CalculatorForm(QScrollArea):
    """What a calculator asks.

    Parameters
    ----------
    calculator : Calculator
        Its declared fields make the form.
    given : mapping
        What the form begins with, as JSON has it.
    style : LengthStyle
        How lengths are shown.
    bare_unit : str or None
        What a length without a unit means.
    """

    changed = Signal()

    def __init__(
        self, calculator: Calculator, given: dict[str, Any], style: LengthStyle, bare_unit: str | None
    ) -> None:
        super().__init__()
        self.setWidgetResizable(True)
        self.setFrameShape(QScrollArea.Shape.NoFrame)
        # Tab comes to its fields, which scroll it.
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._given, self._style, self._bare_unit = given, style, bare_unit
        self.lines: dict[Path, FactLine] = {}
        self.tables: dict[Path, SmallTable] = {}
        self._entries: dict[Path, Entry] = {}
        self._exact: dict[Path, tuple[str, Any]] = {}
        place = QWidget()
        rows = QVBoxLayout(place)
        self._lay(form_of(calculator), rows)
        rows.addStretch(1)
        self.setWidget(place)

    def asked(self) -> dict[str, Any]:
        """Return what the form asks, as JSON has it; raises InputError naming a field that cannot be read."""
        found: dict[str, Any] = {}
        for path, line in self.lines.items():
            text, exact = self._exact[path]
            # What nobody typed over is taken as it is, not as it is rounded for show.
            put(found, path, exact if line.text() == text else self._entries[path].read(line.text(), self._bare_unit))
        for path, table in self.tables.items():
            put(found, path, table.value())
        return found

    def complain(self, field: str, message: str) -> None:
        """Say what is wrong beside its field."""
        names = tuple(field.partition("[")[0].split("."))
        line = self.lines.get(names)
        if line is not None:
            line.complain(message)

    @property
    def empty(self) -> bool:
        """Whether it began with nothing."""
        return not self._given

    def touched(self) -> bool:
        """Tell whether a person has typed something."""
        return any(map(self.edited, self.lines)) or any(table.touched for table in self.tables.values())

    def edited(self, path: Path) -> bool:
        """Tell whether something else stands in a field than it began with."""
        return path in self.lines and self.lines[path].text() != self._exact[path][0]

    def _lay(self, section: Section, rows: QVBoxLayout) -> None:
        form = self._begin(rows)
        for item in section.items:
            if isinstance(item, Section):
                rows.addWidget(_heading(phrase(item.title), phrase(item.about)))
                self._lay(item, rows)
                form = self._begin(rows)
            elif isinstance(item, Table):
                rows.addWidget(_heading(phrase(item.field.text.rstrip(".")), phrase(item.field.about)))
                table = SmallTable(item, at(self._given, item.path), self._style, self._bare_unit)
                table.changed.connect(self.changed)
                self.tables[item.path] = table
                rows.addWidget(table)
                form = self._begin(rows)
            else:
                self._add(item, form)

    def _begin(self, rows: QVBoxLayout) -> FactGrid:
        form = FactGrid()
        rows.addLayout(form)
        return form

    def _add(self, entry: Entry, form: FactGrid) -> None:
        exact = at(self._given, entry.path)
        line = FactLine(
            entry.attribute, entry.show(exact, self._style), self._style, self._bare_unit, several=entry.several
        )
        if default := entry.left_out(self._style):
            line.hint(phrase("{default} where it is left out", default=default))
        elif entry.field.unless:
            line.hint(phrase("may be left out"))
        self.lines[entry.path], self._entries[entry.path] = line, entry
        self._exact[entry.path] = line.text(), exact
        line.changed.connect(self.changed)
        form.add(phrase(entry.attribute.label), line)


def _heading(title: str, about: str) -> QLabel:
    made = QLabel(title, textFormat=Qt.TextFormat.PlainText, wordWrap=True)
    font = made.font()
    font.setBold(True)
    made.setFont(font)
    made.setToolTip(about)
    return made
