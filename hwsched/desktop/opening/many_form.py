"""Facts that several openings share, edited in place: mixed values are shown as mixed and left alone."""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QAbstractItemModel, Qt, Signal
from PySide6.QtWidgets import (
    QComboBox,
    QHeaderView,
    QLineEdit,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTreeWidgetItem,
    QWidget,
)

from hwsched.attributes import Attribute, said_value
from hwsched.attributes.unknown import says_nothing
from hwsched.desktop.looks.tokens import colour
from hwsched.desktop.survey.facts_form import ATTRIBUTE, FactDelegate, FactsForm, Index
from hwsched.kept_sentences import GATE, kept_phrase
from hwsched.language import phrase, to_phrase
from hwsched.operations.opening.side_by_side import SharedFact, value_words
from hwsched.quantities import LengthStyle

_PLACE: Final = ATTRIBUTE + 3
"""Of a fact among those that are shown."""
_MIXED: Final = to_phrase("(mixed, left alone)")


class _ManyDelegate(FactDelegate):
    """Edits a value of many; of mixed ones nothing is taken over."""

    def createEditor(  # type: ignore[override]  # noqa: N802 (None says: not for editing)
        self, parent: QWidget, option: QStyleOptionViewItem, index: Index
    ) -> QWidget | None:
        """Offer besides to leave mixed values alone."""
        editor = super().createEditor(parent, option, index)
        form = self.parent()
        if isinstance(form, ManyForm) and form.mixed(index):
            if isinstance(editor, QComboBox):
                editor.insertItem(0, phrase(_MIXED))
                editor.setCurrentIndex(0)
            elif isinstance(editor, QLineEdit):
                editor.setPlaceholderText(phrase(_MIXED))
        if editor is not None:
            attribute = index.data(ATTRIBUTE)
            editor.setAccessibleName(phrase(attribute.label) if isinstance(attribute, Attribute) else "")
        return editor

    def setEditorData(self, editor: QWidget, index: Index) -> None:  # noqa: N802
        """Put in the value that all hold."""
        form = self.parent()
        if not (isinstance(form, ManyForm) and form.mixed(index)):
            super().setEditorData(editor, index)

    def setModelData(self, editor: QWidget, model: QAbstractItemModel, index: Index) -> None:  # noqa: N802
        """Hand over what was typed or picked, unless mixed values are to be left alone."""
        text = editor.text().strip() if isinstance(editor, QLineEdit) else ""
        text = editor.currentText() if isinstance(editor, QComboBox) else text
        form = self.parent()
        if isinstance(form, ManyForm) and not (form.mixed(index) and text in ("", phrase(_MIXED))):
            form.commit(index, text)


class ManyForm(FactsForm):
    """Facts of several openings; an edit is only proposed here: what it would change is shown before it is made."""

    proposed = Signal(object, str, object)
    """A SharedFact, the text that was typed for all of it (empty: unknown), and the newest step when it was shown."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(phrase("Facts of the selected openings"))
        self.setHeaderLabels([phrase("Fact"), phrase("Value of all")])
        self.header().setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        self.setItemDelegate(_ManyDelegate(self))
        self.facts: tuple[SharedFact, ...] = ()
        self._typed: tuple[SharedFact, str, int | None] | None = None

    def show_shared(self, facts: Sequence[SharedFact], openings: int, style: LengthStyle, base: int | None) -> None:
        """Show facts that openings share; what is being typed into one is left to its end."""
        shown = f"many {openings}"
        if shown == self._shown and self.put_off(lambda: self.show_shared(facts, openings, style, base)):
            return
        at, sight = self._fact_at(self.currentItem()), self.verticalScrollBar().value()
        self._shown, self._style, self.facts = shown, style, tuple(facts)
        self.base = self.seen = base
        self.clear()
        sections: dict[str, QTreeWidgetItem] = {}
        most: dict[str, int] = {}
        for fact in facts:
            most[fact.section] = max(most.get(fact.section, 0), len(fact.held))
        for place, fact in enumerate(facts):
            section = sections.get(fact.section)
            if section is None:
                held = most[fact.section]
                said = kept_phrase(fact.section, GATE)
                title = (
                    said
                    if held == openings
                    else phrase("{section} ({held} of {openings})", section=said, held=held, openings=openings)
                )
                section = sections[fact.section] = self._heading(title)
            self._value(section, place, fact, style)
        self.expandAll()
        for section in sections.values():
            for n in range(section.childCount()):
                line = section.child(n)
                if line is not None and at is not None and self._fact_at(line) == at:
                    self.setCurrentItem(line, 1)
        self.verticalScrollBar().setValue(sight)

    def mixed(self, index: Index) -> bool:
        """Tell whether the openings hold different values of the fact of a line."""
        place = index.data(_PLACE)
        return isinstance(place, int) and self.facts[place].mixed

    def commit(self, index: Index, text: str) -> None:
        """Propose what was typed, if it is otherwise than what all hold."""
        place, shown = index.data(_PLACE), str(index.data(Qt.ItemDataRole.DisplayRole) or "")
        if isinstance(place, int) and text != shown and (text or not says_nothing(shown)):
            # With what was seen: what others did meanwhile is shown once the editor is gone, before this is proposed.
            self._typed = self.facts[place], "" if says_nothing(text) else text, self.seen

    def closeEditor(  # noqa: N802
        self, editor: QWidget, hint: QStyledItemDelegate.EndEditHint
    ) -> None:
        """Propose what was typed once the editor is gone: it would take the keyboard back."""
        super().closeEditor(editor, hint)
        typed, self._typed = self._typed, None
        if typed is not None:
            self.proposed.emit(*typed)

    def _fact_at(self, item: QTreeWidgetItem | None) -> tuple[str, str] | None:
        place = item.data(1, _PLACE) if item is not None else None
        if not isinstance(place, int) or place >= len(self.facts):
            return None
        return self.facts[place].section, self.facts[place].attribute.name

    def _heading(self, title: str) -> QTreeWidgetItem:
        made = QTreeWidgetItem([title])
        made.setFirstColumnSpanned(True)
        font = made.font(0)
        font.setBold(True)
        made.setFont(0, font)
        made.setFlags(Qt.ItemFlag.ItemIsEnabled)
        self.addTopLevelItem(made)
        return made

    def _value(self, section: QTreeWidgetItem, place: int, fact: SharedFact, style: LengthStyle) -> None:
        attribute: Attribute = fact.attribute
        line = QTreeWidgetItem([phrase(attribute.label), value_words(fact, style, say=said_value)])
        flags = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        # A mark is one opening's own.
        line.setFlags(flags if attribute.name == "mark" else flags | Qt.ItemFlag.ItemIsEditable)
        line.setData(1, ATTRIBUTE, attribute)
        line.setData(1, _PLACE, place)
        if fact.values == (None,):
            line.setForeground(1, colour("soft"))
        if fact.mixed:
            font = line.font(1)
            font.setItalic(True)
            line.setFont(1, font)
        if attribute.note:
            line.setToolTip(0, phrase(attribute.note))
        line.setToolTip(1, value_words(fact, style, most=12, say=said_value))
        section.addChild(line)
