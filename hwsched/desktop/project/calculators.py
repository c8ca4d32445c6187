"""The calculators as forms: a field a line, answer and drawing follow what is typed."""

import json
from collections.abc import Iterator, Mapping
from typing import Any

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QFormLayout,
    QLineEdit,
    QListWidget,
    QPlainTextEdit,
    QScrollArea,
    QSplitter,
    QVBoxLayout,
    QWidget,
)

from hwsched.calc.calculator import Calculator, Field, InputError
from hwsched.calc.calculators import CALCULATORS
from hwsched.desktop.drawing_view import DrawingView
from hwsched.drawings.calculated import calculated


class CalculatorsDialog(QDialog):
    """One calculator at a time, begun with its example."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("Calculators")
        self.resize(1080, 620)
        self.names = QListWidget()
        self.names.addItems([calculator.title for calculator in CALCULATORS])
        self.names.setMaximumWidth(300)
        self.names.setWordWrap(True)
        self.names.currentRowChanged.connect(self.choose)
        self.form_area = QScrollArea()
        self.form_area.setWidgetResizable(True)
        self.answer = QPlainTextEdit()
        self.answer.setReadOnly(True)
        self.view = DrawingView()
        right = QSplitter(Qt.Orientation.Vertical)
        right.addWidget(self.view)
        right.addWidget(self.answer)
        split = QSplitter()
        split.addWidget(self.names)
        split.addWidget(self.form_area)
        split.addWidget(right)
        split.setSizes([240, 400, 440])
        layout = QVBoxLayout(self)
        layout.addWidget(split)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(150)
        self._timer.timeout.connect(self.calculate)
        self.calculator: Calculator | None = None
        self.fields: dict[str, QWidget] = {}
        self.names.setCurrentRow(0)

    def choose(self, row: int) -> None:
        """Show the form of a calculator, filled with its example."""
        self.calculator = calculator = CALCULATORS[row]
        form = QWidget()
        lines = QFormLayout(form)
        lines.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.AllNonFixedFieldsGrow)
        lines.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapLongRows)
        self.fields = {}
        for field in calculator.inputs:
            name, value = field.name, calculator.example.get(field.name)
            widget: QWidget
            if field.choices:
                box = QComboBox()
                box.addItems(["", *field.choices])
                box.setCurrentText("" if value is None else str(value))
                box.currentIndexChanged.connect(self._soon)
                widget = box
            elif isinstance(value, list | dict):
                text = QPlainTextEdit(json.dumps(value, indent=1))
                text.setFixedHeight(110)
                text.textChanged.connect(self._soon)
                widget = text
            else:
                line = QLineEdit("" if value is None else value if isinstance(value, str) else json.dumps(value))
                line.textChanged.connect(self._soon)
                if field.default:
                    line.setPlaceholderText(f"default {field.default}")
                widget = line
            widget.setToolTip("\n".join(_told(field)))
            self.fields[name] = widget
            lines.addRow(name, widget)
        self.form_area.setWidget(form)
        self.calculate()

    def asked(self) -> dict[str, Any]:
        """Return the input as the form has it; raises InputError for what is no JSON."""
        found: dict[str, Any] = {}
        for name, widget in self.fields.items():
            if isinstance(widget, QComboBox):
                text = widget.currentText()
                if text:
                    found[name] = text
                continue
            text = widget.toPlainText() if isinstance(widget, QPlainTextEdit) else ""
            if isinstance(widget, QLineEdit):
                text = widget.text()
            if text.strip():
                found[name] = self._value(name, text.strip())
        return found

    def _value(self, name: str, text: str) -> Any:
        kind = (
            next((field.kind for field in self.calculator.inputs if field.name == name), "") if self.calculator else ""
        )
        if kind == "text":
            return text
        try:
            return json.loads(text)
        except json.JSONDecodeError:
            if text[:1] in "[{":
                raise InputError(name, "is not complete yet") from None
            return text

    def calculate(self) -> None:
        """Calculate what the form asks, and show answer or error."""
        if self.calculator is None:
            return
        try:
            asked = self.asked()
            answered = self.calculator.run(asked)
        except InputError as error:
            self.answer.setPlainText(f"{error.field}: {error.message}")
            self.view.show_drawings((), "No drawing: the input is not complete.")
            return
        self.answer.setPlainText(f"{json.dumps(answered, indent=1)}\n\nBasis: {self.calculator.basis}")
        self._draw(asked, answered)

    def _draw(self, asked: Mapping[str, Any], answered: Mapping[str, Any]) -> None:
        calculator = self.calculator
        drawn = calculated(calculator.name, calculator.completed(asked), answered) if calculator else None
        self.view.setVisible(drawn is not None)
        if drawn is not None:
            self.view.show_drawings((drawn,))

    def _soon(self) -> None:
        self._timer.start()


def _told(field: Field, indent: str = "") -> Iterator[str]:
    """Lines of help on a field and those within it."""
    yield f"{indent}{field.name} ({field.terms}): {field.about}" if indent else f"{field.about} ({field.terms})"
    for each in field.told:
        yield from _told(each, f"{indent}    ")
