"""One declared fact in a form: its field by its kind, its unit, and how what is typed would be taken."""

from typing import Final

from PySide6.QtCore import QStringListModel, Qt, Signal
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QComboBox, QCompleter, QHBoxLayout, QLabel, QLineEdit, QVBoxLayout, QWidget

from hwsched.attributes import Attribute, CellError, read_value, said_value, shown_unit
from hwsched.desktop.looks.tokens import SPACE, scaled
from hwsched.desktop.widgets.drop_down import DropDown
from hwsched.desktop.widgets.typed import with_unit
from hwsched.kept_sentences import kept_error
from hwsched.language import phrase
from hwsched.quantities import LengthStyle, format_length

_UNITS: Final = ('"', "'", "mm", "in", "cm", "m", "ft")
"""With which a length ends that says its unit."""
_FLAG: Final = ("", "yes", "no")
_BETWEEN: Final = ";"
"""Between several values in one field."""


def understood(attribute: Attribute, text: str, bare_unit: str | None, style: LengthStyle) -> str:
    """Say how a text would be taken; raises CellError for one that says nothing certain.

    Examples
    --------
    >>> understood(Attribute("length_mm", "Shell length", "length", "mm"), "1 1/4", "in", "fraction")
    '1 1/4" = 31.75 mm'
    """
    value = read_value(attribute, text, bare_unit=bare_unit if attribute.kind == "length" else None).value
    if value is None:
        return phrase("unknown")
    if attribute.kind == "length" and isinstance(value, float):
        shown = format_length(value, style)
        # In both systems: a slip of the unit is seen before it is stored.
        return shown if style == "mm" else phrase("{shown} = {value:.5g} mm", shown=shown, value=value)
    said = said_value(attribute, value, style)
    if attribute.unit == "m" and style != "mm" and isinstance(value, float):
        return phrase("{shown} = {value:.5g} m", shown=said, value=value)
    return said


class Choices(DropDown):
    """A drop-down that the wheel does not change while a form is scrolled over it."""

    def __init__(self) -> None:
        super().__init__()
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def wheelEvent(self, event: QWheelEvent) -> None:  # noqa: N802
        """Leave the wheel to the form unless a person is in the field."""
        if self.hasFocus():
            super().wheelEvent(event)
        else:
            event.ignore()


class FactLine(QWidget):
    """The field of one fact with its unit, and below it what is understood or refused.

    Parameters
    ----------
    attribute : Attribute
        What is asked.
    text : str
        What it holds, as shown.
    style : LengthStyle
        How the project shows lengths.
    bare_unit : str or None
        What a length without a unit means.
    names : QStringListModel, optional
        Texts that are offered while a person types.
    several : bool
        Values one behind the other, with a semicolon between them.
    """

    changed = Signal()

    def __init__(
        self,
        attribute: Attribute,
        text: str,
        style: LengthStyle,
        bare_unit: str | None,
        names: QStringListModel | None = None,
        *,
        several: bool = False,
    ) -> None:
        super().__init__()
        self.attribute, self.held, self._several = attribute, text, several
        self._style, self._bare_unit = style, bare_unit
        self.field: QComboBox | QLineEdit = self._box(text) if self._words() else self._line(text, names)
        self.field.setAccessibleName(phrase(attribute.label))
        self.field.setAccessibleDescription(phrase(attribute.note))
        self.field.setToolTip(phrase(attribute.note))
        self.echo = QLabel(textFormat=Qt.TextFormat.PlainText, wordWrap=True)
        self.echo.setAccessibleName(phrase("{label}, as understood", label=phrase(attribute.label)))
        self.echo.hide()
        row = QHBoxLayout()
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(scaled(SPACE.hair))
        row.addWidget(self.field, 1)
        unit = shown_unit(attribute, style)
        self.unit = QLabel(unit, self)
        """What a number means; a text that says its unit itself needs none beside it."""
        self.unit.setHidden(not unit)
        if unit:
            row.addWidget(self.unit)
            if isinstance(self.field, QLineEdit):
                self.field.textChanged.connect(self._show_unit)
                self._show_unit(self.field.text())
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        layout.addLayout(row)
        layout.addWidget(self.echo)
        self.setFocusProxy(self.field)

    def _show_unit(self, text: str) -> None:
        self.unit.setVisible(not text.strip().endswith((*_UNITS, self.unit.text())))

    def text(self) -> str:
        """Return what stands in the field, as the reader of cells takes it."""
        if isinstance(self.field, QComboBox):
            return str(self.field.currentData() or "")
        text = self.field.text().strip()
        if not self._several or self.attribute.unit != "m":
            return with_unit(self.attribute, text, self._style)
        return f"{_BETWEEN} ".join(with_unit(self.attribute, each, self._style) for each in text.split(_BETWEEN))

    @property
    def edited(self) -> bool:
        """Whether something else stands in the field than the project holds."""
        return self.text() != self._was()

    def put(self, text: str) -> None:
        """Put a text into the field, as if it were typed."""
        if isinstance(self.field, QComboBox):
            at = max(self.field.findText(text, Qt.MatchFlag.MatchFixedString), self.field.findData(text), 0)
            self.field.setCurrentIndex(at)
        else:
            self.field.setText(text)

    def hint(self, words: str) -> None:
        """Say in the empty field what holds where nothing is typed."""
        if isinstance(self.field, QComboBox):
            self.field.setItemText(0, words)
        else:
            self.field.setPlaceholderText(words)

    def complain(self, message: str) -> None:
        """Say what is wrong with the field beside it."""
        self._say(message, bad=True)

    def _was(self) -> str:
        if isinstance(self.field, QComboBox):
            return str(self.field.property("was") or "")
        return self.held.strip()

    def _words(self) -> bool:
        return bool(self.attribute.choices) or self.attribute.kind == "flag"

    def _box(self, text: str) -> QComboBox:
        box = Choices()
        if self.attribute.kind == "flag":
            for word in _FLAG:
                box.addItem(phrase(word or "unknown"), word)
        else:
            box.addItem(phrase("unknown"), "")
            for choice in self.attribute.choices:
                box.addItem(phrase(choice.label), choice.value)
        held = next((each.value for each in self.attribute.choices if each.label == text), text)
        # A word that is no choice any more is not lost by being looked at.
        if text and box.findData(held) < 0:
            box.addItem(text, text)
        box.setCurrentIndex(max(box.findData(held), 0) if text else 0)
        box.setProperty("was", str(box.currentData() or ""))
        box.currentIndexChanged.connect(self._on_edited)
        return box

    def _line(self, text: str, names: QStringListModel | None) -> QLineEdit:
        line = QLineEdit(text)
        line.setPlaceholderText(phrase("unknown"))
        line.setCursorPosition(0)
        if names is not None:
            completer = QCompleter(names, line)
            completer.setFilterMode(Qt.MatchFlag.MatchContains)
            completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
            line.setCompleter(completer)
        line.textChanged.connect(self._on_edited)
        return line

    def _on_edited(self, _what: object = None) -> None:
        if not self.edited:
            self.echo.hide()
        else:
            was = phrase(" (was {held})", held=self.held) if self.held else ""
            try:
                said = self._understood()
                if said == phrase("unknown") and self.attribute.required:
                    self._say(phrase("must be filled in") + was, bad=True)
                else:
                    self._say(f"{said}{was}", bad=False)
            except CellError as error:
                wanted = phrase("; accepted: {accepted}", accepted=kept_error(error.accepted)) if error.accepted else ""
                self._say(f"{kept_error(error.message)}{wanted}{was}", bad=True)
        self.changed.emit()

    def _understood(self) -> str:
        texts = self.text().split(_BETWEEN) if self._several else [self.text()]
        return "; ".join(understood(self.attribute, each, self._bare_unit, self._style) for each in texts)

    def _say(self, words: str, *, bad: bool) -> None:
        self.echo.setText(f"✗ {words}" if bad else f"→ {words}")
        self.echo.setProperty("bad", bad)
        self.echo.show()
