"""Facts of a supply, circuit or run, edited in place; and the dialog that lays a new one."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import Any, Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import (
    QComboBox,
    QCompleter,
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QLabel,
    QLineEdit,
    QStyleOptionViewItem,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)
from shiboken6 import isValid

from hwsched.attributes import Attribute, shown_unit
from hwsched.attributes.unknown import says_nothing, unknown_word
from hwsched.desktop.survey.facts_form import ATTRIBUTE, FactDelegate, FactsForm, Index
from hwsched.desktop.widgets.drop_down import DropDown
from hwsched.desktop.widgets.room import give_room
from hwsched.desktop.widgets.typed import with_unit
from hwsched.language import phrase
from hwsched.quantities import LengthStyle
from hwsched.survey import Entity
from hwsched.values import Catalogue

_KINDS: Final[Mapping[str, str]] = {
    "part": "power-supply",
    "battery": "standby-battery",
    "wire": "wire",
    "cabinet": "enclosure",
    "limiter": "limiter",
}
"""Facts that name a part, and its kind."""
_GAP: Final = "  "


def parts_offered(catalogue: Catalogue) -> dict[str, list[str]]:
    """Return number and description of the parts that each fact may name."""
    return {
        name: [f"{part.number}{_GAP}{part.description}" for part in catalogue.of_kind(kind)]
        for name, kind in _KINDS.items()
    }


class _PowerFactsDelegate(FactDelegate):
    """Offers the catalogue's parts where a fact names one, and known nodes where it names the end of a run."""

    def createEditor(  # type: ignore[override]  # noqa: N802 (None says: not for editing)
        self, parent: QWidget, option: QStyleOptionViewItem, index: Index
    ) -> QWidget | None:
        form, attribute = self.parent(), index.data(ATTRIBUTE)
        if index.column() != 1 or not isinstance(form, PowerFactsForm) or not isinstance(attribute, Attribute):
            return None
        offered = form.offers.get(attribute.name)
        if offered is None:
            return super().createEditor(parent, option, index)
        self.begin()
        if attribute.name not in _KINDS:
            line = QLineEdit(parent)
            line.setCompleter(_completer(offered, line))
            return line
        box = DropDown(parent)
        held = str(index.data(Qt.ItemDataRole.DisplayRole) or "")
        box.addItem(unknown_word())
        for text in offered:
            box.addItem(text, text.split(_GAP)[0])
        if not says_nothing(held) and box.findData(held) < 0:
            box.addItem(held, held)
        box.activated.connect(self._pick)
        return box

    def setEditorData(self, editor: QWidget, index: Index) -> None:  # noqa: N802
        held = str(index.data(Qt.ItemDataRole.DisplayRole) or "")
        if isinstance(editor, QComboBox) and editor.findData(held) >= 0:
            editor.setCurrentIndex(editor.findData(held))
        else:
            super().setEditorData(editor, index)


class PowerFactsForm(FactsForm):
    """Facts of what is laid, under one heading each; a double click, F2 or typing edits one."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.offers: Mapping[str, Sequence[str]] = {}
        """What is offered for a fact, by its name."""
        self.setHeaderLabels([phrase("Fact"), phrase("As laid")])
        self.setItemDelegate(_PowerFactsDelegate(self))

    def show_facts(
        self,
        entries: Iterable[tuple[str, Entity, str, Any, Mapping[str, str]]],
        offers: Mapping[str, Sequence[str]],
        base: int | None = None,
        *,
        style: LengthStyle,
    ) -> None:
        """Show facts; the line that is being worked on stays the current one.

        Parameters
        ----------
        entries : iterable of tuple
            Heading, declaration, identifier, values, and names of nodes in place of identifiers.
        offers : mapping
            What is offered for a fact, by its name.
        base : int, optional
            The newest step when they were read.
        style : LengthStyle
            How the project shows lengths.
        """
        entries = list(entries)
        shown = " ".join(row for _, _, row, _, _ in entries)
        if shown == self._shown and self.put_off(lambda: self.show_facts(entries, offers, base, style=style)):
            return
        self._shown, self.base, self.seen, self._style = shown, base, base, style
        self.offers = offers
        before, sight = self.currentItem(), self.verticalScrollBar().value()
        place = _place(before) if before is not None else None
        self.clear()
        for title, entity, row, values, names in entries:
            self._section(title, entity.name, row, entity.attributes, _Named(values, names))
        self.expandAll()
        for number in range(self.topLevelItemCount()):
            section = self.topLevelItem(number)
            for at in range(section.childCount() if section is not None else 0):
                line = section.child(at) if section is not None else None
                if line is not None and place is not None and _place(line) == place:
                    self.setCurrentItem(line, 1)
        self.verticalScrollBar().setValue(sight)

    def commit(self, index: Index, text: str) -> None:
        """Tell what was typed; of a part that was picked, its number."""
        attribute = index.data(ATTRIBUTE)
        picked = isinstance(attribute, Attribute) and attribute.name in _KINDS
        super().commit(index, text.split(_GAP)[0].strip() if picked else text)


def _place(item: QTreeWidgetItem) -> tuple[str, str]:
    above = item.parent()
    return above.text(0) if above is not None else "", item.text(0)


class _Named:
    """Values of a row with the names of openings in place of their identifiers."""

    def __init__(self, values: Any, names: Mapping[str, str]) -> None:
        self._values, self._names = values, names

    def __getattr__(self, name: str) -> Any:
        value = getattr(self._values, name)
        return self._names.get(value, value) if isinstance(value, str) else value


class NewPowerDialog(QDialog):
    """Asks for the facts of a new supply, circuit or run; what is left empty is unknown.

    Parameters
    ----------
    entity : Entity
        What is laid.
    about : str
        Of which supply or circuit.
    offers : mapping
        What is offered for a fact, by its name.
    add : callable
        Gets what was typed and what to call once it is laid; until then what was typed stays.
    stated : mapping, optional
        What stands in the fields at first.
    style : LengthStyle
        How the project shows lengths.
    """

    def __init__(
        self,
        entity: Entity,
        about: str,
        offers: Mapping[str, Sequence[str]],
        add: Callable[[dict[str, str], Callable[[], None]], None],
        stated: Mapping[str, str] | None = None,
        *,
        style: LengthStyle,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(phrase("New {lower}", lower=phrase(entity.label).lower()))
        self._add = add
        self._entity, self._style = entity, style
        self._required = [each.name for each in entity.attributes if each.required]
        self.fields: dict[str, QLineEdit | QComboBox] = {}
        form = QFormLayout()
        form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.AllNonFixedFieldsGrow)
        for attribute in entity.attributes:
            unit = f" [{shown_unit(attribute, style)}]" if attribute.unit else ""
            field = self._field(attribute, offers.get(attribute.name))
            field.setToolTip(phrase(attribute.note))
            form.addRow(phrase(attribute.label) + unit + (" *" if attribute.required else ""), field)
            self.fields[attribute.name] = field
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Ok | QDialogButtonBox.StandardButton.Cancel)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        self.ok = buttons.button(QDialogButtonBox.StandardButton.Ok)
        heading = QLabel(about)
        heading.setTextFormat(Qt.TextFormat.PlainText)
        heading.setWordWrap(True)
        layout = QVBoxLayout(self)
        layout.addWidget(heading)
        layout.addLayout(form)
        layout.addWidget(buttons)
        for name, text in (stated or {}).items():
            line = self.fields[name]
            if isinstance(line, QLineEdit):
                line.setText(text)
        give_room(self, 58)
        self._enable()

    def texts(self) -> dict[str, str]:
        """Return what was filled in."""
        found = {}
        for name, field in self.fields.items():
            if isinstance(field, QComboBox):
                text = field.currentText().split(_GAP)[0] if field.isEditable() else str(field.currentData() or "")
            else:
                text = with_unit(self._entity.attribute(name), field.text(), self._style)
            if text.strip():
                found[name] = text.strip()
        return found

    def accept(self) -> None:
        """Lay it; the dialog stays open where that was refused."""
        self._add(self.texts(), self._added)

    def _added(self) -> None:
        # Closed by hand meanwhile, it has nothing left to close.
        if isValid(self):
            super().accept()

    def _field(self, attribute: Attribute, offered: Sequence[str] | None) -> QLineEdit | QComboBox:
        if attribute.kind == "choice":
            box = _Box()
            box.addItem(unknown_word(), "")
            for choice in attribute.choices:
                box.addItem(phrase(choice.label), choice.value)
            return box
        if attribute.name in _KINDS:
            box = _Box()
            box.setEditable(True)
            box.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
            box.setMinimumContentsLength(20)
            box.addItem("")
            box.addItems(list(offered or ()))
            box.setCompleter(_completer(offered or (), box))
            return box
        line = QLineEdit()
        line.setPlaceholderText(unknown_word())
        if offered is not None:
            line.setCompleter(_completer(offered, line))
        line.textChanged.connect(lambda _text: self._enable())
        return line

    def _enable(self) -> None:
        said = self.texts()
        self.ok.setEnabled(all(name in said for name in self._required))


class _Box(DropDown):
    """A box that the wheel passes by: who scrolls does not mean to choose."""

    def wheelEvent(self, event: QWheelEvent) -> None:  # noqa: N802
        """Leave the wheel to what is behind."""
        event.ignore()


def _completer(texts: Sequence[str], parent: QWidget) -> QCompleter:
    made = QCompleter(list(texts), parent)
    made.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
    made.setFilterMode(Qt.MatchFlag.MatchContains)
    return made
