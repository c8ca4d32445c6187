"""The sheet of a survey file as it is, what is doubtful marked in its cells, and a person's word on it beside.

A question is answered by one click; a column, a row and a cell are clicked to say what they mean. Here belongs the
page; what is asked of a file and what an answer means stands in `hwsched.exchange.survey`.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from functools import partial
from typing import Any, Final

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, Qt, Signal
from PySide6.QtWidgets import (
    QAbstractItemView,
    QComboBox,
    QFormLayout,
    QFrame,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QScrollArea,
    QSplitter,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from hwsched.attributes import as_text
from hwsched.desktop.looks.text_size import in_pixels
from hwsched.desktop.looks.tokens import ROW
from hwsched.desktop.survey.column_words import DECLARED, choice_box, dash_meanings, fact_choices
from hwsched.desktop.survey.sheet_columns import fit_columns, marked_cells, said_of_unread
from hwsched.desktop.survey.sheet_model import SheetModel
from hwsched.desktop.survey.units_of_cells import asked_unit, doubted_unit, is_doubtful, lacks_unit, understood_cell
from hwsched.exchange.problems import Cause, CellProblem, begun, column_letter
from hwsched.exchange.survey.answers import answered, column_name, with_word
from hwsched.exchange.survey.corrections import cell_name
from hwsched.exchange.survey.facts import Oddity, Question, SurveyOptions, answer_said
from hwsched.exchange.survey.near_words import near_words
from hwsched.exchange.survey.outline import ColumnOutline, SheetOutline
from hwsched.kept_sentences import kept_error
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.quantities import BARE_UNITS, BareUnit, LengthStyle

_CARDS: Final = 40
"""Questions that are shown; the rest comes as they are answered."""
_WIDE: Final = 260
"""Pixels that a column takes at most before a person widens it."""
_UNKNOWN: Final = to_phrase("unknown")
_EITHER: Final = ((to_phrase("yes"), "yes"), (to_phrase("no"), "no"))


class SheetPage(QWidget):
    """The sheet, the questions that it raises, and what is said of the column, row and cell in hand.

    Parameters
    ----------
    sheet : SheetOutline or None
        The sheet that is read, or would be.
    options : SurveyOptions
        What was said so far.
    questions : sequence of Question
        What only a person can say.
    refused : sequence of Cause
        What is refused.
    oddities : sequence of Oddity
        What can hardly be.
    column : int
        The column that was in hand before.
    style : {"fraction", "decimal-inch", "mm"}
        How lengths are shown.
    """

    said = Signal(object)
    """SurveyOptions as the person says now."""

    def __init__(
        self,
        sheet: SheetOutline | None,
        options: SurveyOptions,
        questions: Sequence[Question] = (),
        refused: Sequence[Cause] = (),
        oddities: Sequence[Oddity] = (),
        column: int = 0,
        style: LengthStyle = "mm",
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.options = options
        self._style = style
        self._bare_unit = sheet.bare_unit if sheet is not None else None
        self.sheet = sheet
        self._columns = {each.index: each for each in sheet.columns} if sheet else {}
        self._by_letter = {column_letter(index): each for index, each in self._columns.items()}
        self.model = SheetModel(sheet, marked_cells(questions, refused, sheet.name if sheet else ""))
        self.table = QTableView()
        self.table.horizontalHeader().setHighlightSections(False)
        in_pixels(self.table.verticalHeader(), defaultSectionSize=ROW.grid)
        self.table.setAccessibleName(phrase("The sheet"))
        self.table.setModel(self.model)
        self.table.setTabKeyNavigation(False)
        self.table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectItems)
        self.table.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.table.setWordWrap(False)
        self.table.horizontalHeader().setMaximumSectionSize(16_000)
        fit_columns(self.table, self.model, sheet, _WIDE)
        self.table.horizontalHeader().setSectionsClickable(True)
        self.table.horizontalHeader().sectionClicked.connect(self._click_column)
        self.answers: dict[tuple[str, str], QPushButton] = {}
        """Button by the question's words and the answer."""
        self.meanings: dict[str, QComboBox] = {}
        """List of all meanings by the word that is not understood."""
        self._cards = QVBoxLayout()
        for question in questions[:_CARDS]:
            self._add_question(question)
        without_unit = [cause for cause in refused if lacks_unit(cause.problem)]
        self._ask_unit(without_unit)
        self._doubt_unit(
            [each for each in refused if is_doubtful(each.problem, self._by_letter.get(_letter(each.problem)))]
        )
        for cause in [cause for cause in refused if cause not in without_unit][:_CARDS]:
            self._add_refused(cause)
        for oddity in oddities:
            self._add_oddity(oddity)
        if sheet is not None and not sheet.columns:
            self._card(phrase("Nothing stands in this sheet."))
        elif sheet is not None and not sheet.has_mark:
            words = phrase(
                "No column is that of the marks. Click the column in which they stand, and say below: it is."
            )
            self._card(words)
        if not self._cards.count():
            self._card(said_of_unread(sheet, options))
        self._cards.addStretch(1)
        self._build_hand()
        cards = QWidget()
        cards.setLayout(self._cards)
        self.area = QScrollArea()
        self.area.setWidget(cards)
        self.area.setWidgetResizable(True)
        self.area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        side = QWidget()
        beside = QVBoxLayout(side)
        beside.setContentsMargins(0, 0, 0, 0)
        beside.addWidget(self.area, 1)
        beside.addWidget(self.hand)
        split = QSplitter(Qt.Orientation.Horizontal)
        split.addWidget(self.table)
        split.addWidget(side)
        split.setStretchFactor(0, 3)
        split.setStretchFactor(1, 2)
        split.setSizes([640, 400])
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(split)
        first = (sheet.header_row if sheet else 1) - 1
        self.table.selectionModel().currentChanged.connect(self._take_in_hand)
        self.table.setCurrentIndex(self.model.index(max(first, 0), column if column in self._columns else 0))
        self.table.scrollTo(self.model.index(0, column), QAbstractItemView.ScrollHint.PositionAtTop)

    @property
    def column(self) -> int:
        """Return the column in hand, from 0."""
        return max(self.table.currentIndex().column(), 0)

    def _build_hand(self) -> None:
        """Make what stands below the questions: the column, row and cell in hand."""
        self.hand = QFrame()
        self.hand.setFrameShape(QFrame.Shape.StyledPanel)
        form = QFormLayout(self.hand)
        self.heading = QLabel()
        self.fact = choice_box(fact_choices(""), None)
        self.unit = choice_box([(phrase("as the heading says"), None), *((unit, unit) for unit in BARE_UNITS)], None)
        self.dash = choice_box([(phrase("not said"), None)], None)
        self.is_mark = QPushButton(phrase("It is the &mark"))
        self.joins_mark = QPushButton(phrase("It is &part of the mark"))
        self.header_here = QPushButton(phrase("&Header ends in this row"))
        self.ends_here = QPushButton(phrase("Table &ends in this row"))
        self.cell = QLineEdit()
        self.cell.setAccessibleName(phrase("What stands in the cell"))
        self.cell.setPlaceholderText(phrase("what the cell says; the file is not written"))
        self.mend = QPushButton(phrase("Mend &cell"))
        self.echo = QLabel()
        self.echo.setAccessibleName(phrase("The cell, as understood"))
        self.echo.setWordWrap(True)
        form.addRow(phrase("Column"), self.heading)
        form.addRow(phrase("C&arries"), self.fact)
        form.addRow(phrase("Its &unit"), self.unit)
        form.addRow(phrase("A &dash means"), self.dash)
        form.addRow("", _beside(self.is_mark, self.joins_mark))
        form.addRow(phrase("Row"), _beside(self.header_here, self.ends_here))
        form.addRow(phrase("Cell"), _beside(self.cell, self.mend))
        form.addRow("", self.echo)
        self.fact.activated.connect(lambda: self._say_of_column("columns", self.fact.currentData()))
        self.unit.activated.connect(lambda: self._say_of_column("units", self.unit.currentData()))
        self.dash.activated.connect(lambda: self._say_of_column("dashes", self.dash.currentData()))
        self.is_mark.clicked.connect(lambda: self._say_of_column("columns", "opening.mark"))
        self.joins_mark.clicked.connect(self._join_mark)
        self.header_here.clicked.connect(lambda: self._tell(replace(self.options, header_row=self._row())))
        self.ends_here.clicked.connect(lambda: self._tell(replace(self.options, last_row=self._row())))
        self.mend.clicked.connect(self._mend)
        self.cell.returnPressed.connect(self._mend)
        self.cell.textChanged.connect(self._echo)

    def _click_column(self, index: int) -> None:
        row = max(self.table.currentIndex().row(), 0)
        self.table.setCurrentIndex(self.model.index(row, index))
        self.fact.setFocus()

    def _take_in_hand(
        self, now: QModelIndex | QPersistentModelIndex, _before: QModelIndex | QPersistentModelIndex | None = None
    ) -> None:
        column = self._columns.get(now.column())
        self.heading.setText(f"{column_letter(now.column())}  {column.header if column else ''}".rstrip())
        for box in (self.fact, self.unit, self.dash, self.is_mark, self.joins_mark):
            box.setEnabled(column is not None)
        if column is not None:
            _refill(self.fact, fact_choices(column.target), _said(self.options.columns, column))
            unit = column.unit or phrase("as the heading says")
            _refill(self.unit, [(unit, None), *((u, u) for u in BARE_UNITS)], _said(self.options.units, column))
            _refill(
                self.dash,
                [(phrase("not said"), None), *dash_meanings(column.target)],
                _said(self.options.dashes, column),
            )
        self.cell.setText(as_text(self.model.cell(now.row(), now.column())))

    def _echo(self, text: str) -> None:
        """Say how the cell in hand is understood: a slip of the unit is seen before anything is taken in."""
        row = self._row()
        below = self.sheet is not None and row > self.sheet.header_row and row not in self.sheet.passed
        column = self._columns.get(self.column) if below else None
        self.echo.setText(understood_cell(column, text, self._bare_unit, self._style))

    def _row(self) -> int:
        return max(self.table.currentIndex().row(), 0) + 1

    def _say_of_column(self, name: str, told: str | None) -> None:
        key = f"column {column_letter(self.column)}"
        held = {k: v for k, v in getattr(self.options, name).items() if k != key}
        if told is not None:
            held[key] = told
        change: dict[str, Any] = {name: held}
        if told == "opening.mark":
            change["columns"] = {k: v for k, v in held.items() if v != "opening.mark" or k == key}
            change["mark"] = ""
        self._tell(replace(self._below_this_header(), **change))

    def _below_this_header(self) -> SurveyOptions:
        """Return the options for what is said of a column: by its letter alone any row could be the header."""
        open_ = self.sheet is not None and not self.sheet.has_mark and self.options.header_row is None
        return replace(self.options, header_row=self.sheet.header_row) if self.sheet and open_ else self.options

    def _join_mark(self) -> None:
        """Make the mark of the column that carries it, or of those that made it so far, and this one."""
        place = f"{{column {column_letter(self.column)}}}"
        held = self.options.mark
        if not held:
            mark = next((each for each in self._columns.values() if each.target == "opening.mark"), None)
            held = f"{{column {column_letter(mark.index)}}}" if mark is not None and mark.index != self.column else ""
        # Building, level, number: from the left to the right, as the columns stand.
        parts = sorted({*(part for part in held.split("-") if part), place}, key=lambda part: (len(part), part))
        self._tell(replace(self._below_this_header(), mark="-".join(parts)))

    def _mend(self) -> None:
        if self.sheet is None:
            return
        name = f"{self.sheet.name}!{cell_name(self._row() - 1, self.column)}"
        if as_text(self.model.cell(self._row() - 1, self.column)) != self.cell.text():
            self._tell(replace(self.options, corrections={**self.options.corrections, name: self.cell.text()}))

    def _add_question(self, question: Question) -> None:
        line = self._card(begun(question.asked(with_column=True)), question.column)
        for answer in question.answers:
            say = self._answering(question, answer)
            self._button(line, question.describe(), answer, say, answer_said(answer))

    def _ask_unit(self, refused: Sequence[Cause]) -> None:
        problems = [cause.problem for cause in refused if isinstance(cause.problem, CellProblem)]
        if problems:
            line = self._card(asked_unit(problems), _letter(problems[0]))
            for unit in BARE_UNITS:
                self._button(line, refused[0].describe(), unit, partial(self._say_unit, unit))

    def _doubt_unit(self, refused: Sequence[Cause]) -> None:
        unit = self._bare_unit
        if refused and unit is not None:
            asked = doubted_unit(refused, unit)
            line = self._card(asked)
            for other in (each for each in BARE_UNITS if each != unit):
                self._button(line, asked, other, partial(self._say_unit, other))

    def _say_unit(self, unit: BareUnit) -> None:
        self._tell(replace(self.options, bare_unit=unit))

    def _answering(self, question: Question, answer: str) -> Callable[[], None]:
        return lambda: self._tell(answered(self.options, question, answer))

    def _add_refused(self, cause: Cause) -> None:
        problem = cause.problem
        column = self._by_letter.get(problem.column) if isinstance(problem, CellProblem) else None
        attribute = DECLARED.get(column.target) if column is not None else None
        asked = cause.said_in_sheet()
        if isinstance(problem, CellProblem) and attribute is not None and attribute.kind in ("choice", "flag"):
            rows = (
                phrase_of_count("{count} row", "{count} rows", len(cause.rows))
                if len(cause.rows) > 1
                else phrase("row {row}", row=problem.row)
            )
            asked = phrase(
                'Column {column} ({header}), {rows}: "{read}" {message}.',
                column=problem.column,
                header=problem.header,
                rows=rows,
                read=problem.read,
                message=kept_error(problem.message),
            )
        line = self._card(asked, _letter(problem))
        if not isinstance(problem, CellProblem) or column is None or attribute is None or not problem.read:
            return
        if attribute.kind not in ("choice", "flag"):
            return
        key = column_name(problem.header, problem.column, (each.header for each in self._columns.values()))

        def say(meaning: str) -> None:
            self._tell(replace(self.options, words=with_word(self.options.words, key, problem.read, meaning)))

        near = _EITHER if attribute.kind == "flag" else near_words(attribute, problem.read)
        for label, value in (*near, (_UNKNOWN, _UNKNOWN)):
            self._button(line, problem.read, label, partial(say, value), phrase(label))
        box = choice_box([(phrase("means…"), None), *dash_meanings(column.target)], None)
        box.activated.connect(lambda: say(box.currentData()) if box.currentData() else None)
        self.meanings[problem.read] = box
        line.addWidget(box)

    def _add_oddity(self, oddity: Oddity) -> None:
        # By its words alone; its identifier is the command line's.
        line = self._card(begun(oddity.asked()))
        if oddity.cure:
            cures = self.options.cures | {oddity.id}
            self._button(
                line,
                oddity.id,
                f"Mend them: {oddity.cure}",
                lambda: self._tell(replace(self.options, cures=cures)),
                phrase("Mend them: {cure}", cure=phrase(oddity.cure)),
            )

    def _card(self, text: str, letter: str = "") -> QHBoxLayout:
        """Add a question; returns where its answers stand."""
        card = QFrame()
        card.setFrameShape(QFrame.Shape.StyledPanel)
        inside = QVBoxLayout(card)
        words = QLabel(text)
        words.setWordWrap(True)
        inside.addWidget(words)
        line = QHBoxLayout()
        inside.addLayout(line)
        self._cards.addWidget(card)
        column = self._by_letter.get(letter)
        if column is not None:
            words.setToolTip(phrase("Column {letter}: {samples}", letter=letter, samples="; ".join(column.samples)))
        return line

    def _button(self, line: QHBoxLayout, about: str, answer: str, say: Callable[[], None], words: str = "") -> None:
        button = QPushButton(words or answer)
        button.clicked.connect(say)
        self.answers[about, answer] = button
        line.addWidget(button)

    def _tell(self, options: SurveyOptions) -> None:
        if options != self.options:
            self.options = options
            self.said.emit(options)


def _letter(problem: object) -> str:
    return problem.column if isinstance(problem, CellProblem) else ""


def _beside(*widgets: QWidget) -> QWidget:
    place = QWidget()
    line = QHBoxLayout(place)
    line.setContentsMargins(0, 0, 0, 0)
    for each in widgets:
        line.addWidget(each)
    return place


def _refill(box: QComboBox, entries: Sequence[tuple[str, Any]], held: Any) -> None:
    box.clear()
    for label, value in entries:
        box.addItem(label, value)
    box.setCurrentIndex(next((n for n, (_, value) in enumerate(entries) if value == held), 0))


def _said(told: Mapping[str, Any], column: ColumnOutline) -> Any:
    return told.get(f"column {column_letter(column.index)}", told.get(column.header))
