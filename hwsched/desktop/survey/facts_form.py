"""The chosen opening's surveyed facts, edited in place; rows follow from the survey's declarations."""

from collections.abc import Callable, Mapping
from typing import Any, Final

from PySide6.QtCore import QAbstractItemModel, QModelIndex, QPersistentModelIndex, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QApplication,
    QComboBox,
    QHeaderView,
    QLineEdit,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTreeWidget,
    QTreeWidgetItem,
    QWidget,
)

from hwsched.attributes import Attribute, said_value
from hwsched.attributes.unknown import says_nothing, unknown_word
from hwsched.desktop.looks.tokens import colour
from hwsched.desktop.survey.refused_facts import STANDS, RefusedFacts
from hwsched.desktop.widgets.choice_box import ChoiceBox, words_of
from hwsched.desktop.widgets.empty import Empty
from hwsched.desktop.widgets.kept_colours import KeptColours
from hwsched.desktop.widgets.typed import plain_word, understood, with_unit
from hwsched.language import phrase
from hwsched.operations.findings.checked import Checked
from hwsched.operations.opening.facts_shown import asked_facts, item_facts
from hwsched.quantities import LengthStyle
from hwsched.survey import ITEM, LEAF, OPENING, PLACE_ENTITIES

ATTRIBUTE: Final = int(Qt.ItemDataRole.UserRole)
_ROW: Final = ATTRIBUTE + 1
_ENTITY: Final = ATTRIBUTE + 2

_PLACES: Final = {entity.name: entity for entity in PLACE_ENTITIES}

Index = QModelIndex | QPersistentModelIndex


class FactDelegate(KeptColours):
    """Offers a drop-down for a choice, a line for the rest; commits text only.

    Here belongs how a cell of any form of facts is edited; what a form offers besides belongs to its own delegate.
    """

    def createEditor(  # type: ignore[override]  # noqa: N802 (None says: not for editing)
        self, parent: QWidget, option: QStyleOptionViewItem, index: Index
    ) -> QWidget | None:
        """Return a box for a choice, a line for the rest."""
        attribute = index.data(ATTRIBUTE)
        if index.column() != 1 or not isinstance(attribute, Attribute):
            return None
        self.begin()
        if words_of(attribute) is not None:
            box = ChoiceBox(parent)
            box.addItems(words_of(attribute) or [])
            box.picked.connect(self._pick)
            return box
        line = QLineEdit(parent)
        form = self.parent()
        if isinstance(form, FactsForm) and attribute.kind in ("length", "number", "integer"):
            # A slot of its own: a function that holds the line would keep it alive.
            form.typing = attribute
            line.textEdited.connect(form.echo)
        return line

    def begin(self) -> None:
        """Note that an edit is begun of what is shown at this moment."""
        form = self.parent()
        if isinstance(form, FactsForm):
            form.seen = form.base

    def setEditorData(self, editor: QWidget, index: Index) -> None:  # noqa: N802
        """Put in what stands there; nothing for what is unknown."""
        text = str(index.data(Qt.ItemDataRole.DisplayRole) or "")
        if isinstance(editor, QComboBox):
            editor.setCurrentText(text)
        elif isinstance(editor, QLineEdit):
            editor.setText("" if says_nothing(text) else text)
            editor.selectAll()

    def setModelData(self, editor: QWidget, model: QAbstractItemModel, index: Index) -> None:  # noqa: N802
        """Hand over what was typed or picked."""
        text = editor.currentText() if isinstance(editor, QComboBox) else ""
        if isinstance(editor, QLineEdit):
            text = editor.text().strip()
        form = self.parent()
        if isinstance(form, FactsForm):
            form.commit(index, text)

    def _pick(self) -> None:
        editor = self.sender()
        if isinstance(editor, QWidget):
            self.commitData.emit(editor)
            self.closeEditor.emit(editor)


class FactsForm(QTreeWidget):
    """Facts by section; a double click, F2 or typing edits one.

    Here belongs how facts are laid out and an edit is handed over, and the facts of an opening; facts of another
    thing are filled in by a form that stands on this one.
    """

    echoed = Signal(str)
    """How a number that is being typed would be taken; empty when nobody types."""
    given_up = Signal()
    """A text that was refused is given up; the facts are to be shown as they stand."""
    edited = Signal(str, str, str, str)
    """Entity, row identifier, attribute and the text that was typed; empty text means unknown."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(phrase("Facts"))
        self.refused = RefusedFacts()
        """What was typed and not taken."""
        self.base: int | None = None
        """The newest step when what is shown was read."""
        self.seen: int | None = None
        """The newest step when what is being edited, or was edited last, was shown."""
        self._shown: str | None = None
        self._waiting: Callable[[], None] | None = None
        self.setColumnCount(2)
        self.setHeaderLabels([phrase("Fact"), phrase("As surveyed")])
        self.setItemDelegate(FactDelegate(self))
        Empty(self, phrase("Facts of what is chosen stand here."))
        self.setAlternatingRowColors(True)
        self.setEditTriggers(
            QTreeWidget.EditTrigger.DoubleClicked
            | QTreeWidget.EditTrigger.EditKeyPressed
            | QTreeWidget.EditTrigger.AnyKeyPressed
        )
        self.header().setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        self._style: LengthStyle = "fraction"
        self.bare_unit: str | None = None
        """What a length without a unit means."""
        self.typing: Attribute | None = None
        """The number that is being typed, or was typed last."""

    def echo(self, text: str) -> None:
        """Tell how a number that is being typed would be taken, before it is."""
        if self.typing is not None:
            said = understood(self.typing, text, self.bare_unit, self._style).words
            self.echoed.emit(f"{phrase(self.typing.label)}: {said}")

    def show_opening(self, checked: Checked | None, style: LengthStyle) -> None:
        """Show the facts of an opening; what is being typed into one of them is left to its end."""
        shown = checked.given.opening.id if checked is not None else None
        if shown == self._shown and self.put_off(lambda: self.show_opening(checked, style)):
            return
        self._shown, self._style = shown, style
        self.base = self.seen = checked.base if checked is not None else None
        at, current, focused = self.verticalScrollBar().value(), self._at(), self._holds_focus()
        self.clear()
        if checked is None:
            return
        given = checked.given
        self._section(
            phrase("Opening"),
            OPENING.name,
            given.opening.id,
            asked_facts(OPENING, given.opening, given.opening),
            given.opening,
        )
        self._own_lines(checked, given.opening.id)
        for place in checked.places:
            declared = _PLACES[place.entity]
            title = phrase(
                "{label} {name}, for all its openings", label=phrase(declared.label), name=place.name or unknown_word()
            )
            self._section(title, place.entity, place.row_id, declared.attributes, place.facts)
        for leaf in given.leaves:
            word = LEAF.attribute("position").choice(leaf.position or "")
            title = (
                phrase("Leaf, {lower}", lower=phrase(word.label).lower())
                if word and leaf.position != "single"
                else phrase("Leaf")
            )
            self._section(title, LEAF.name, leaf.id, asked_facts(LEAF, leaf, given.opening), leaf)
        kinds = ITEM.attribute("kind")
        for item in given.items:
            word = kinds.choice(item.kind or "")
            facts = item_facts(item, given.opening)
            self._section(phrase(word.label if word else "Existing item"), ITEM.name, item.id, facts, item)
            self._own_lines(checked, item.id)
        self.expandAll()
        self._go_to(current)
        self.verticalScrollBar().setValue(at)
        if focused:
            # The editor, which had it, is gone: without this the next widget gets it, and arrow keys work elsewhere.
            self.setFocus()

    def _holds_focus(self) -> bool:
        at = QApplication.focusWidget()
        return at is not None and (at is self or self.isAncestorOf(at))

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Edit the fact of the line on F2 or Enter, whichever of its cells is current."""
        item = self.currentItem()
        editing = self.state() == QTreeWidget.State.EditingState
        if item is not None and not editing and event.key() in (Qt.Key.Key_F2, Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.editItem(item, 1)
            return
        super().keyPressEvent(event)

    def _at(self) -> tuple[str, str, str] | None:
        """Return entity, row and fact of the current line."""
        item = self.currentItem()
        attribute = item.data(1, ATTRIBUTE) if item is not None else None
        if item is None or not isinstance(attribute, Attribute):
            return None
        return str(item.data(1, _ENTITY)), str(item.data(1, _ROW)), attribute.name

    def _go_to(self, wanted: tuple[str, str, str] | None) -> None:
        """Make the line of a fact the current one again."""
        for place in range(self.topLevelItemCount()):
            section = self.topLevelItem(place)
            below_it = [section.child(n) for n in range(section.childCount())] if section is not None else []
            for item in filter(None, below_it):
                attribute = item.data(1, ATTRIBUTE)
                if isinstance(attribute, Attribute) and wanted == (
                    str(item.data(1, _ENTITY)), str(item.data(1, _ROW)), attribute.name
                ):  # fmt: skip
                    self.setCurrentItem(item, 1)
                    return

    def go_to_fact(self, entity: str, name: str) -> None:
        """Make the line of a fact the current one, of the first thing that lacks it; the keyboard goes there."""
        found = []
        for place in range(self.topLevelItemCount()):
            section = self.topLevelItem(place)
            for n in range(section.childCount() if section is not None else 0):
                item = section.child(n) if section is not None else None
                attribute = item.data(1, ATTRIBUTE) if item is not None else None
                if item is not None and isinstance(attribute, Attribute) and attribute.name == name:
                    found.append((item.data(1, _ENTITY) != entity, not says_nothing(item.text(1)), place, n, item))
        if found:
            self.setCurrentItem(min(found, key=lambda each: each[:4])[4], 1)
            self.setFocus(Qt.FocusReason.OtherFocusReason)

    def put_off(self, show: Callable[[], None]) -> bool:
        """Put off showing anew while a person types; returns whether it was."""
        self._waiting = show if self.state() == QTreeWidget.State.EditingState else None
        return self._waiting is not None

    def closeEditor(  # noqa: N802
        self, editor: QWidget, hint: QStyledItemDelegate.EndEditHint
    ) -> None:
        """Show what has changed while a person typed."""
        super().closeEditor(editor, hint)
        self.echoed.emit("")
        waiting, self._waiting = self._waiting, None
        if waiting is not None:
            waiting()

    def commit(self, index: Index, text: str) -> None:
        """Tell what was typed into a cell, if it differs from what stood there."""
        attribute = index.data(ATTRIBUTE)
        shown, stands = str(index.data(Qt.ItemDataRole.DisplayRole) or ""), index.data(STANDS)
        key = str(index.data(_ENTITY)), str(index.data(_ROW)), getattr(attribute, "name", "")
        if isinstance(attribute, Attribute) and stands is not None and text != shown:
            # Typed anew after it was refused: what stands there needs no edit, only that the refused text goes.
            self.refused.forget(key)
            shown = str(stands)
            if text in (shown, ""):
                self.given_up.emit()
                return
        elif stands is not None and self.refused.may_be_again(key):
            shown = str(stands)
        typed = "" if says_nothing(text) else text
        if isinstance(attribute, Attribute) and typed != ("" if says_nothing(shown) else shown):
            typed = with_unit(attribute, plain_word(attribute, typed), self._style)
            self.edited.emit(index.data(_ENTITY), index.data(_ROW), attribute.name, typed)

    def _section(self, title: str, entity: str, row: str, attributes: tuple[Attribute, ...], values: Any) -> None:
        section = QTreeWidgetItem([title])
        section.setFirstColumnSpanned(True)
        font = section.font(0)
        font.setBold(True)
        section.setFont(0, font)
        section.setFlags(Qt.ItemFlag.ItemIsEnabled)
        self.addTopLevelItem(section)
        for attribute in attributes:
            value = values[attribute.name] if isinstance(values, Mapping) else getattr(values, attribute.name)
            self._line(section, entity, row, attribute, value)

    def _own_lines(self, checked: Checked, row: str) -> None:
        """Add the project's own fields of a row to the section just made."""
        section = self.topLevelItem(self.topLevelItemCount() - 1)
        for own in checked.own:
            if own.row_id == row and section is not None:
                self._line(section, own.entity, row, own.attribute, own.value)

    def _line(self, section: QTreeWidgetItem, entity: str, row: str, attribute: Attribute, value: Any) -> None:
        said = said_value(attribute, value, self._style, unknown=unknown_word())
        line = QTreeWidgetItem([phrase(attribute.label), said])
        if value is None:
            line.setForeground(1, colour("soft"))
        line.setFlags(Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable | Qt.ItemFlag.ItemIsEditable)
        for role, data in ((ATTRIBUTE, attribute), (_ROW, row), (_ENTITY, entity)):
            line.setData(1, role, data)
        if attribute.note:
            line.setToolTip(0, phrase(attribute.note))
            line.setToolTip(1, phrase(attribute.note))
        section.addChild(line)
        self.refused.mark(line, (entity, row, attribute.name))
