"""Facts of a supply, circuit or run, edited in place; and the dialog that lays a new one."""

from collections.abc import Iterable, Mapping
from typing import Any

from PySide6.QtWidgets import QComboBox, QDialog, QDialogButtonBox, QFormLayout, QLabel, QLineEdit, QVBoxLayout, QWidget

from hwsched.attributes import Attribute
from hwsched.cases import Catalogue
from hwsched.desktop.facts_form import FactsForm
from hwsched.survey import Entity

_KINDS: Mapping[str, str] = {"part": "power-supply", "battery": "standby-battery", "wire": "wire"}
"""Facts that name a part, and its kind."""


class LaidForm(FactsForm):
    """Facts of what is laid, under one heading; a double click, F2 or typing edits one."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setHeaderLabels(["Fact", "As laid"])

    def show_laid(self, entries: Iterable[tuple[str, Entity, str, Any, Mapping[str, str]]]) -> None:
        """Show facts: heading, declaration, identifier, values, and names of nodes in place of identifiers."""
        self.clear()
        for title, entity, row, values, names in entries:
            shown = _Named(values, names)
            self._section(title, entity.name, row, entity.attributes, shown)
        self.expandAll()


class _Named:
    """Values of a row with the names of openings in place of their identifiers."""

    def __init__(self, values: Any, names: Mapping[str, str]) -> None:
        self._values, self._names = values, names

    def __getattr__(self, name: str) -> Any:
        value = getattr(self._values, name)
        return self._names.get(value, value) if isinstance(value, str) else value


class NewLaid(QDialog):
    """Asks for the facts of a new supply, circuit or run; what is left empty is unknown."""

    def __init__(self, entity: Entity, about: str, catalogue: Catalogue, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(f"New {entity.label.lower()}")
        self.fields: dict[str, QLineEdit | QComboBox] = {}
        form = QFormLayout()
        for attribute in entity.attributes:
            unit = f" [{attribute.unit}]" if attribute.unit else ""
            field = self._field(attribute, catalogue)
            field.setToolTip(attribute.note)
            form.addRow(attribute.label + unit + (" *" if attribute.required else ""), field)
            self.fields[attribute.name] = field
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Ok | QDialogButtonBox.StandardButton.Cancel)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        layout = QVBoxLayout(self)
        layout.addWidget(QLabel(about))
        layout.addLayout(form)
        layout.addWidget(buttons)
        self.resize(440, self.sizeHint().height())

    def texts(self) -> dict[str, str]:
        """Return what was filled in."""
        found = {}
        for name, field in self.fields.items():
            if isinstance(field, QComboBox):
                text = str(field.currentData() or "") if not field.isEditable() else field.currentText().split("  ")[0]
            else:
                text = field.text()
            if text.strip():
                found[name] = text.strip()
        return found

    def _field(self, attribute: Attribute, catalogue: Catalogue) -> QLineEdit | QComboBox:
        if attribute.kind == "choice":
            box = QComboBox()
            box.addItem("?", "")
            for choice in attribute.choices:
                box.addItem(choice.label, choice.value)
            return box
        if attribute.name in _KINDS:
            box = QComboBox()
            box.setEditable(True)
            box.addItem("")
            box.addItems([f"{part.number}  {part.description}" for part in catalogue.of_kind(_KINDS[attribute.name])])
            return box
        return QLineEdit()
