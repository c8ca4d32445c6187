"""What was typed for facts and refused: it stays beside its field with the reason until it is mended or given up."""

from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QTreeWidgetItem

from hwsched.attributes.unknown import says_nothing, unknown_word
from hwsched.desktop.looks.tokens import colour
from hwsched.language import phrase

STANDS: Final = int(Qt.ItemDataRole.UserRole) + 10
"""Of a line whose text was refused: what stands in the project."""
Key = tuple[str, str, str]
"""Entity, row and fact."""


@dataclass(frozen=True, slots=True)
class RefusedText:
    """A text that was not taken."""

    text: str
    why: str
    again: bool = False
    """Whether the same may be taken another time: it could not be written, by no fault of it."""


class RefusedFacts:
    """The refused texts of a form, by entity, row and fact; they outlive the showing of another opening."""

    def __init__(self) -> None:
        self._held: dict[Key, RefusedText] = {}

    def keep(self, key: Key, text: str, why: str, *, again: bool = False) -> None:
        """Keep what was typed or chosen, and why it was not taken; again: typed the same it is tried once more."""
        self._held[key] = RefusedText(text, why, again)

    def may_be_again(self, key: Key) -> bool:
        """Tell whether what was kept of a fact may be taken another time as it is."""
        return key in self._held and self._held[key].again

    def forget(self, key: Key) -> bool:
        """Forget what was refused of a fact; returns whether there was anything."""
        return self._held.pop(key, None) is not None

    def clear(self) -> None:
        """Forget all, of a project that is left."""
        self._held.clear()

    def mark(self, line: QTreeWidgetItem, key: Key) -> None:
        """Show on the line of a fact what was refused of it: the text as typed, and below it the reason."""
        refused = self._held.get(key)
        if refused is None:
            return
        stands = line.text(1)
        line.setData(1, STANDS, stands)
        line.setText(1, phrase(refused.text) if refused.text else unknown_word())
        line.setForeground(1, colour("refused"))
        line.setToolTip(1, refused.why)
        note = QTreeWidgetItem(
            [
                phrase(
                    "Not taken: {why}. {part} stands.",
                    why=refused.why,
                    part=phrase("Unknown") if says_nothing(stands) else stands,
                )
            ]
        )
        note.setFlags(Qt.ItemFlag.ItemIsEnabled)
        note.setForeground(0, colour("refused"))
        note.setToolTip(0, note.text(0))
        line.addChild(note)
        note.setFirstColumnSpanned(True)
