"""What was typed or chosen in a cell and could not be written: it stays there with the reason, and is no fact yet."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any, Final

from PySide6.QtCore import Qt

from hwsched.attributes.unknown import unknown_word
from hwsched.desktop.looks.tokens import colour
from hwsched.language import phrase
from hwsched.operations.survey.fact_edit import FactEdit

Cell = tuple[str, str, str]
"""Entity, row and fact."""
_ROLE: Final = Qt.ItemDataRole
OF_DRAFT: Final = frozenset(
    {_ROLE.DisplayRole, _ROLE.EditRole, _ROLE.ToolTipRole, _ROLE.AccessibleTextRole, _ROLE.ForegroundRole}
)
"""What of a cell is the draft's where there is one."""


@dataclass(frozen=True, slots=True)
class Draft:
    """A text that could not be written."""

    text: str
    """As it would be written; empty: unknown."""
    why: str

    def shown(self, role: int) -> Any:
        """Return what its cell shows."""
        if role == _ROLE.ForegroundRole:
            return colour("refused")
        if role in (_ROLE.DisplayRole, _ROLE.EditRole):
            return phrase(self.text) if self.text else unknown_word()
        said = phrase(self.text) if self.text else unknown_word()
        return phrase("{said}, not taken: {why}", said=said, why=self.why)


def drafts_of(edits: Iterable[FactEdit], why: str) -> dict[Cell, Draft]:
    """Return edits that could not be written as drafts of their cells."""
    return {cell_of(each): Draft(each.text, why) for each in edits}


def cell_of(edit: FactEdit) -> Cell:
    """Return the cell of an edit."""
    return edit.entity, edit.row_id, edit.name
