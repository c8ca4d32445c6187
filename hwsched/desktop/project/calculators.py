"""The calculators as forms of the trade: filled from the chosen opening, answered in sentences, given back to it."""

from collections.abc import Mapping
from typing import Any, Final

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import (
    QLabel,
    QPushButton,
    QSplitter,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from hwsched.calc.calculator import Calculator, InputError
from hwsched.calc.calculators import CALCULATORS
from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.looks.text_size import in_figures
from hwsched.desktop.looks.tokens import SPACE, wide
from hwsched.desktop.project.answer_page import AnswerPage
from hwsched.desktop.project.calculator_answers import told
from hwsched.desktop.project.calculator_fields import Path, in_words, label_of
from hwsched.desktop.project.calculator_form import CalculatorForm
from hwsched.desktop.widgets.drawing_view import DrawingView
from hwsched.desktop.widgets.flow import Foot
from hwsched.desktop.widgets.wrapping import WrappingList
from hwsched.drawings.calculated import calculated
from hwsched.language import phrase
from hwsched.operations.findings.checked import Checked
from hwsched.operations.opening.calculator_filling import Filled, Home, fillable, filled, take_over
from hwsched.quantities import LengthStyle

_WAIT_MS: Final = 150


class CalculatorsPage(QWidget):
    """One calculator at a time, begun with the chosen opening where it is asked of one, else empty.

    Parameters
    ----------
    frame : Frame, optional
        With the open project, whose system lengths are shown and typed in, and the chosen opening.
    """

    def __init__(self, frame: Frame | None = None, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.frame = frame
        self.setWindowTitle(phrase("Calculators"))
        self.calculator: Calculator = CALCULATORS[0]
        self.place = QStackedWidget()
        self.form = CalculatorForm(self.calculator, {}, "mm", "mm")
        self.place.addWidget(self.form)
        self.filled: Filled | None = None
        self._of: Checked | None = None
        self.names = WrappingList()
        self.names.setAccessibleName(phrase("Calculators"))
        self.names.addItems([phrase(calculator.title) for calculator in CALCULATORS])
        in_figures(self.names, maximumWidth=37)
        self.names.setSpacing(SPACE.hair)
        self.names.currentRowChanged.connect(self.choose)
        self.about = QLabel(textFormat=Qt.TextFormat.PlainText, wordWrap=True)
        self.fill = self._button(phrase("Fill from the chosen opening"), self.fill_from_opening)
        self.give = self._button(phrase("Give back to the opening"), self.give_back)
        self.example = self._button(phrase("Example"), self.begin_with_example)
        self.answer, self.view = AnswerPage(), DrawingView()
        self._timer = QTimer(self, singleShot=True, interval=_WAIT_MS)
        self._timer.timeout.connect(self.calculate)
        self._build()
        if frame is not None:
            frame.state.selected.connect(self.enable)
            frame.state.leaving.connect(self.begin)
            frame.state.opened.connect(self.begin)
        self.names.setCurrentRow(0)

    @property
    def style_of_lengths(self) -> LengthStyle:
        """How lengths are shown: as the project has them, in mm without one."""
        frame = self.frame
        return frame.state.style_of_lengths if frame is not None and frame.state.workspace is not None else "mm"

    @property
    def bare_unit(self) -> str | None:
        """What a length without a unit means: as in the project, mm without one."""
        workspace = self.frame.state.workspace if self.frame is not None else None
        return workspace.project.bare_unit if workspace is not None else "mm"

    def heightForWidth(self, width: int) -> int:  # noqa: N802
        """Return how high it must be: as high as it likes to be it would be scrolled, its buttons out of sight."""
        layout = self.layout()
        return layout.minimumHeightForWidth(width) if layout is not None else super().heightForWidth(width)

    def choose(self, row: int) -> None:
        """Show the form of a calculator."""
        self.calculator = CALCULATORS[row]
        self.begin()

    def begin(self) -> None:
        """Fill the form from the chosen opening where it says something to this calculator; else leave it empty."""
        if self._chosen() is not None and fillable(self.calculator.name):
            self.fill_from_opening()
            return
        self.filled = self._of = None
        self.about.setText(phrase("Type what is known; Example shows how it is meant."))
        self._begin({})

    def come(self, _thing: object = None) -> None:
        """Follow the opening that was chosen meanwhile, unless something was typed."""
        if not self.form.touched():
            self.begin()

    def begin_with_example(self) -> None:
        """Fill the form with the calculator's example."""
        self.filled = self._of = None
        self.about.setText(phrase("Filled with an example; type over it."))
        self._begin(dict(self.calculator.example))

    def fill_from_opening(self) -> None:
        """Fill the form from the chosen opening as it stands; what is not known there stays empty."""
        checked = self._chosen()
        if checked is None or not fillable(self.calculator.name):
            return
        self._of, self.filled = checked, filled(self.calculator.name, checked.given, checked.fit)
        lacks = phrase(" Not known there: {needs}.", needs=", ".join(self.filled.needs)) if self.filled.needs else ""
        self.about.setText(
            phrase(
                "As {mark} stands.{lacks} Nothing is changed there before it is given back.",
                mark=checked.given.opening.mark,
                lacks=lacks,
            )
        )
        self._begin(self.filled.values)

    def give_back(self) -> None:
        """Set the facts of the opening that were typed over, as one step."""
        frame, of = self.frame, self._of
        if frame is None or of is None or frame.state.workspace is None:
            return
        project, who = frame.state.workspace.project, frame.state.workspace.who
        values = self._to_give()
        mark = of.given.opening.mark

        def then(_changes: Any) -> None:
            self.about.setText(phrase("Given back to {mark}; undo takes it back. It is fitted anew by Fit.", mark=mark))
            fresh = frame.state.workspace.checked.get(of.given.opening.id) if frame.state.workspace else None
            if fresh is not None:
                self._of, self.filled = fresh, filled(self.calculator.name, fresh.given, fresh.fit)
                self._begin(self.form.asked())

        frame.edit_seen(lambda base: take_over(project, values, who=who, base=base), of.base, then, asker=self)

    def calculate(self) -> None:
        """Calculate what the form asks, and show answer or error."""
        try:
            asked = self.form.asked()
            answered = self.calculator.run(asked)
        except InputError as error:
            if self._untouched_and_empty():
                self.answer.refuse(phrase("Nothing is typed yet."))
            else:
                self.form.complain(error.field, error.message)
                self.answer.refuse(self._said(error))
            self.view.setVisible(False)
            self.enable()
            return
        said = told(self.calculator, answered, self.style_of_lengths, asked)
        self.answer.show_answer(said, self.calculator.basis)
        self._draw(asked, answered)
        self.enable()

    def enable(self) -> None:
        """Let what is possible be done: an opening is chosen, and facts of it were typed over."""
        chosen = self._chosen()
        fills = fillable(self.calculator.name)
        self.fill.setEnabled(fills and chosen is not None)
        where = (
            phrase("the chosen opening {mark}", mark=chosen.given.opening.mark)
            if chosen is not None
            else phrase("the chosen opening")
        )
        self.fill.setToolTip(
            phrase("From {where}", where=where) if fills else phrase("This one is not asked of an opening")
        )
        values = self._to_give()
        self.give.setEnabled(bool(values))
        names = ", ".join(self.form.lines[path].attribute.label.lower() for path, _ in self._changed())
        self.give.setToolTip(
            phrase("Sets {names}", names=names) if values else phrase("Nothing of the opening was typed over")
        )

    def _begin(self, given: Mapping[str, Any]) -> None:
        self._timer.stop()
        self.form = CalculatorForm(self.calculator, dict(given), self.style_of_lengths, self.bare_unit)
        self.form.changed.connect(self._timer.start)
        while (held := self.place.currentWidget()) is not None:
            self.place.removeWidget(held)
            held.deleteLater()
        self.place.addWidget(self.form)
        self.calculate()

    def _untouched_and_empty(self) -> bool:
        return self.filled is None and not self.form.touched() and self.form.empty

    def _changed(self) -> list[tuple[Path, Home]]:
        if self.filled is None:
            return []
        return [((name,), home) for name, home in self.filled.homes.items() if self.form.edited((name,))]

    def _to_give(self) -> list[tuple[Home, float]]:
        """Return the facts of the opening that were typed over; none while something cannot be read."""
        try:
            asked = self.form.asked()
        except InputError:
            return []
        return [(home, asked[path[0]]) for path, home in self._changed() if asked.get(path[0]) is not None]

    def _chosen(self) -> Checked | None:
        return self.frame.state.checked if self.frame is not None else None

    def _said(self, error: InputError) -> str:
        """Name a refused field by its words, not by its name in JSON."""
        first, _, rest = error.field.partition(".")
        name, bracket, place = first.partition("[")
        fields = {each.name: each for each in in_words(self.calculator.inputs)}
        if name not in fields:
            return f"{error.field}: {error.message}."
        row = place.partition("]")[0] if bracket else ""
        where = phrase(", row {row}", row=int(row) + 1) if row.isdigit() else ""
        within = {each.name: each for each in fields[name].fields}.get(rest)
        inner = f", {label_of(within).lower()}" if within is not None else ""
        return f"{label_of(fields[name])}{where}{inner}: {error.message}."

    def _draw(self, asked: Mapping[str, Any], answered: Mapping[str, Any]) -> None:
        drawn = calculated(self.calculator.name, self.calculator.completed(asked), answered)
        self.view.setVisible(drawn is not None)
        if drawn is not None:
            self.view.show_drawings((drawn,))

    def _button(self, text: str, slot: Any) -> QPushButton:
        made = QPushButton(text)
        made.setAutoDefault(False)
        made.clicked.connect(lambda _checked=False: slot())
        return made

    def _build(self) -> None:
        right = QSplitter(Qt.Orientation.Vertical)
        right.addWidget(self.view)
        right.addWidget(self.answer)
        right.setSizes([wide(27), wide(47)])
        split = QSplitter()
        for each in (self.names, self.place, right):
            split.addWidget(each)
        split.setSizes([wide(30), wide(58), wide(58)])
        split.setChildrenCollapsible(False)
        buttons = Foot()
        buttons.addWidget(self.about)
        for button in (self.example, self.fill, self.give):
            buttons.addWidget(button)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(SPACE.small, SPACE.small, SPACE.small, SPACE.small)
        layout.addWidget(split, 1)
        layout.addLayout(buttons)
