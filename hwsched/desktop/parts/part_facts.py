"""The form of one part, made from the declaration of its kind; what is typed is a draft until it is taken."""

from collections.abc import Mapping
from typing import Any

from PySide6.QtCore import QStringListModel, Qt, Signal
from PySide6.QtWidgets import QLabel, QScrollArea, QVBoxLayout, QWidget

from hwsched.catalogue.traits.entry import NUMBER, SUPERSEDED_BY
from hwsched.desktop.widgets.empty import empty_place
from hwsched.desktop.widgets.fact_grid import FactGrid
from hwsched.desktop.widgets.fact_line import FactLine
from hwsched.language import phrase
from hwsched.operations.parts.part_edits import PartForm
from hwsched.operations.parts.part_form import KIT, PartEdit, sections, shown_value
from hwsched.quantities import LengthStyle
from hwsched.values import Part


class PartFacts(QScrollArea):
    """A field for each declared fact, under headings."""

    changed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWidgetResizable(True)
        self.setFrameShape(QScrollArea.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.lines: dict[str, FactLine] = {}
        self._asked = PartEdit("")
        self._form: PartForm | None = None
        self.clear()

    def clear(self) -> None:
        """Show no part."""
        self._show(empty_place(phrase("Choose a part, or make a new one.")), {})

    def show_part(self, form: PartForm, asked: PartEdit, style: LengthStyle) -> None:
        """Show a part that is there, or a new one, with what was typed over it."""
        self._asked, self._form = asked, form
        model = form.catalogue.get(asked.like or asked.number)
        part = model if model is not None else Part(asked.number, asked.kind)
        extra: Mapping[str, Any] = form.extra.get(part.number, {})
        names = QStringListModel(list(form.catalogue.parts), self)
        place = QWidget()
        rows = QVBoxLayout(place)
        lines: dict[str, FactLine] = {}
        if asked.new:
            lines[NUMBER.name] = FactLine(NUMBER, "", style, form.bare_unit)
            lines[NUMBER.name].put(asked.number)
            first = FactGrid()
            first.add(_words(phrase(NUMBER.label), NUMBER.required), lines[NUMBER.name])
            rows.addLayout(first)
        for title, attributes in sections(part.kind, form.own):
            heading = QLabel(phrase(title), textFormat=Qt.TextFormat.PlainText)
            font = heading.font()
            font.setBold(True)
            heading.setFont(font)
            rows.addWidget(heading)
            below = FactGrid()
            for attribute in attributes:
                # What is of the other part is not copied, and so not shown as if it were.
                blank = asked.new and attribute.name in ("superseded_by", "stock")
                text = "" if blank else shown_value(part, attribute, extra, style)
                offered = names if attribute.name in (SUPERSEDED_BY.name, KIT.name) else None
                line = FactLine(attribute, text, style, form.bare_unit, offered)
                lines[attribute.name] = line
                below.add(_words(phrase(attribute.label), attribute.required), line)
                if attribute.name in asked.typed:
                    line.put(asked.typed[attribute.name])
            rows.addLayout(below)
        rows.addStretch(1)
        for line in lines.values():
            line.changed.connect(self._on_changed)
        self._show(place, lines)

    def asked(self) -> PartEdit:
        """Return what was typed: the part, and the texts that differ from what it holds."""
        typed = {name: line.text() for name, line in self.lines.items() if line.edited and name != NUMBER.name}
        number = self.lines[NUMBER.name].text() if NUMBER.name in self.lines else self._asked.number
        return PartEdit(number, typed, kind=self._asked.kind, like=self._asked.like)

    def complaints(self) -> int:
        """Say beside each field what is wrong with it as a part; returns how many things are."""
        if self._form is None or not self.lines:
            return 0
        asked = self.asked()
        problems = self._form.read(asked).problems if asked.typed or asked.new else ()
        for problem in problems:
            line = self.lines.get(problem.attribute)
            # A field that nobody has been at yet is not scolded: that it is needed stands at its label.
            if line is not None and line.edited:
                line.complain(str(problem))
        return len(problems)

    def _on_changed(self) -> None:
        self.complaints()
        self.changed.emit()

    def _show(self, place: QWidget, lines: dict[str, FactLine]) -> None:
        self.lines = lines
        self.setWidget(place)


def _words(text: str, required: bool) -> str:
    return phrase("{text} (needed)", text=text) if required else text
