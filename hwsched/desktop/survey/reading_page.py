"""How a survey file is read, column by column, and a person's word on it: sheet, header, fact, unit, dash, words."""

from collections.abc import Sequence
from dataclasses import replace
from functools import partial
from typing import Any, Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import (
    QComboBox,
    QFormLayout,
    QHeaderView,
    QLabel,
    QSpinBox,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from hwsched.desktop.looks.text_size import in_pixels
from hwsched.desktop.looks.tokens import ROW
from hwsched.desktop.survey.column_words import AS_HEADED, DECLARED, choice_box, dash_meanings, facts, meanings
from hwsched.desktop.widgets.spin import spin
from hwsched.exchange.problems import Cause, CellProblem, column_letter
from hwsched.exchange.survey.facts import Proposal, SurveyOptions
from hwsched.exchange.survey.outline import ColumnOutline, SheetOutline
from hwsched.language import phrase, to_phrase
from hwsched.quantities import BARE_UNITS

_LIST: Final = to_phrase("Proposals: left out until decided")


class ReadingPage(QWidget):
    """Sheet, header row, unit; a row for each column, and one for each word that is not understood."""

    said = Signal(object)
    """SurveyOptions as the person says now."""

    def __init__(
        self,
        sheets: Sequence[SheetOutline],
        options: SurveyOptions,
        unknown: Sequence[Cause],
        proposals: Sequence[Proposal] = (),
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.options = options
        self.shown = shown_sheet(sheets, options)
        self.sheet = choice_box(
            [(phrase("found by its header"), None), *((each.name, each.name) for each in sheets)], options.sheet
        )
        self.header = spin(QSpinBox())
        self.header.setRange(0, 10_000)
        self.header.setSpecialValueText(
            phrase("found: row {header_row}", header_row=self.shown.header_row) if self.shown else phrase("found")
        )
        self.header.setValue(options.header_row or 0)
        self.unit = choice_box([(phrase("as usual"), None), *((unit, unit) for unit in BARE_UNITS)], options.bare_unit)
        self.openings_in = choice_box(
            [(phrase("found"), ""), (phrase("a row"), "rows"), (phrase("a column"), "columns")], options.openings_in
        )
        self.proposals = choice_box(
            [
                (phrase(_LIST), "ask"),
                (phrase("all are the known openings"), "take"),
                (phrase("all are new openings"), "apart"),
            ],
            options.decisions.proposals,
        )
        self.columns = QTableWidget(0, 5)
        self.columns.horizontalHeader().setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        self.columns.setAccessibleName(phrase("Columns and what they were taken for"))
        self.columns.setHorizontalHeaderLabels(
            [phrase("Column"), phrase("Cells"), phrase("Carries"), phrase("Unit"), phrase("A dash means")]
        )
        self.words = QTableWidget(0, 4)
        for table in (self.columns, self.words):
            in_pixels(table.verticalHeader(), defaultSectionSize=ROW.grid)
        self.words.horizontalHeader().setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        self.words.setAccessibleName(phrase("Words and what they were taken for"))
        self.words.setHorizontalHeaderLabels([phrase("Column"), phrase("Word"), phrase("Cells"), phrase("Means")])
        for table in (self.columns, self.words):
            table.horizontalHeader().setHighlightSections(False)
            table.setTabKeyNavigation(False)
        self._filled = False
        self._fill_words(unknown)
        form = QFormLayout()
        form.addRow(phrase("&Sheet"), self.sheet)
        form.addRow(phrase("&Header row"), self.header)
        form.addRow(phrase("&Numbers without a unit"), self.unit)
        form.addRow(phrase("An &opening stands in"), self.openings_in)
        layout = QVBoxLayout(self)
        layout.addLayout(form)
        layout.addWidget(self.columns, 3)
        if self.words.rowCount():
            layout.addWidget(QLabel(phrase("Words that are not understood")))
            layout.addWidget(self.words, 1)
        if proposals or options.decisions.proposals != "ask":
            form.addRow(phrase("&Marks that may be known"), self.proposals)
        self.sheet.activated.connect(self._say_file)
        self.header.editingFinished.connect(self._say_file)
        self.unit.activated.connect(self._say_file)
        self.openings_in.activated.connect(self._say_file)
        self.proposals.activated.connect(self._say_file)

    def showEvent(self, event: QShowEvent) -> None:  # noqa: N802
        """Fill in the columns once somebody looks: each has a list of all facts."""
        if not self._filled:
            self._filled = True
            self._fill_columns()
        super().showEvent(event)

    def _fill_columns(self) -> None:
        columns, offered = self.shown.columns if self.shown else (), facts()
        self.columns.setRowCount(len(columns))
        for row, column in enumerate(columns):
            key = _key(column)
            self.columns.setItem(row, 0, _text(f"{column_letter(column.index)}  {column.header}".rstrip()))
            self.columns.setItem(row, 1, _text("; ".join(column.samples)))
            label = next((label for label, target in offered if target == column.target), phrase("not read"))
            fact = choice_box([(f"{phrase(AS_HEADED)}: {label}", None), *offered], _said(self.options.columns, column))
            fact.activated.connect(lambda _index, box=fact, key=key: self._say("columns", key, box.currentData()))
            unit = choice_box(
                [(column.unit or "-", None), *((u, u) for u in BARE_UNITS)], _said(self.options.units, column)
            )
            unit.activated.connect(lambda _index, box=unit, key=key: self._say("units", key, box.currentData()))
            dash = choice_box([("-", None), *dash_meanings(column.target)], _said(self.options.dashes, column))
            dash.activated.connect(lambda _index, box=dash, key=key: self._say("dashes", key, box.currentData()))
            for place, box in ((2, fact), (3, unit), (4, dash)):
                box.fill_cell()
                self.columns.setCellWidget(row, place, box)
        header = self.columns.horizontalHeader()
        header.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        # What a column carries is the longest text, and the one that is looked for.
        for place in (1, 2, 4):
            header.setSectionResizeMode(place, QHeaderView.ResizeMode.Stretch)

    def _fill_words(self, unknown: Sequence[Cause]) -> None:
        by_letter = {column_letter(column.index): column for column in (self.shown.columns if self.shown else ())}
        for cause in unknown:
            problem = cause.problem
            column = by_letter.get(problem.column) if isinstance(problem, CellProblem) else None
            if not isinstance(problem, CellProblem) or column is None or not problem.read:
                continue
            attribute = DECLARED.get(column.target)
            if attribute is None or attribute.kind not in ("choice", "flag"):
                continue
            row = self.words.rowCount()
            self.words.insertRow(row)
            for place, text in enumerate((problem.header, problem.read, str(len(cause.rows)))):
                self.words.setItem(row, place, _text(text))
            box = choice_box([(phrase("not said"), None), (phrase("unknown"), "unknown"), *meanings(attribute)], None)
            box.activated.connect(partial(self._say_word, _key(column), problem.read, box))
            box.fill_cell()
            self.words.setCellWidget(row, 3, box)
        self.words.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)

    def _say_file(self, *_told: object) -> None:
        self._tell(
            replace(
                self.options,
                sheet=self.sheet.currentData(),
                header_row=self.header.value() or None,
                bare_unit=self.unit.currentData(),
                openings_in=self.openings_in.currentData(),
                decisions=replace(self.options.decisions, proposals=self.proposals.currentData()),
            )
        )

    def _say(self, name: str, key: str, told: str | None) -> None:
        held = {k: v for k, v in getattr(self.options, name).items() if k != key}
        if told is not None:
            held[key] = told
        change: dict[str, Any] = {name: held}
        self._tell(replace(self.options, **change))

    def _say_word(self, key: str, word: str, box: QComboBox, _index: int) -> None:
        meaning: str | None = box.currentData()
        words = {k: dict(v) for k, v in self.options.words.items()}
        if meaning is None:
            words.get(key, {}).pop(word, None)
        else:
            words.setdefault(key, {})[word] = meaning
        self._tell(replace(self.options, words={k: v for k, v in words.items() if v}))

    def _tell(self, options: SurveyOptions) -> None:
        if options != self.options:
            self.options = options
            self.said.emit(options)


def shown_sheet(sheets: Sequence[SheetOutline], options: SurveyOptions) -> SheetOutline | None:
    """Return the sheet whose columns are shown: the one that was said, else the one that carries most facts.

    Where nothing tells them apart, such as a list in words that are not known behind a cover, most filled cells do.
    """
    said = next((each for each in sheets if each.name == options.sheet), None)
    if said is not None:
        return said
    carried = [sum(bool(column.target) for column in each.columns) for each in sheets]
    likely = [each for each, count in zip(sheets, carried, strict=True) if count == max(carried)]
    return likely[0] if len(likely) == 1 else max(likely, key=_filled, default=None)


def _filled(sheet: SheetOutline) -> int:
    return sum(cell is not None and cell != "" for row in sheet.rows for cell in row)


def _key(column: ColumnOutline) -> str:
    return f"column {column_letter(column.index)}"


def _said(told: Any, column: ColumnOutline) -> Any:
    return told.get(_key(column), told.get(column.header))


def _text(text: str) -> QTableWidgetItem:
    item = QTableWidgetItem(text)
    item.setToolTip(text)
    return item
