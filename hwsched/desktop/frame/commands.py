"""The family of commands: whatever a person can have done, by its identifier, with its words, keys and needs.

Menus, find, the page of keys and tool tips are made from it. What a command does stands with its subject.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any, Final, Literal

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QAction, QKeySequence

from hwsched.desktop.looks.icons import icon as icon_of
from hwsched.language import phrase, to_phrase

Need = Literal["nothing", "no job", "project", "openings"]
"""What must be at hand: nothing at all, no running job, an open project besides, openings in it besides."""
ActsOn = Literal["", "chosen", "selected", "in view"]
"""On what a command acts: nothing that is chosen, the opening that is shown, those selected, those in view."""
NEEDED: Final[dict[Need, str]] = {
    "nothing": "",
    "no job": to_phrase("not while a job is running"),
    "project": to_phrase("open a project first, and let a running job end"),
    "openings": to_phrase("take in openings first, and let a running job end"),
}
"""Why a command cannot be given at present."""


@dataclass(frozen=True, slots=True)
class Command:
    """One thing that a person can have done."""

    identifier: str
    """Kebab-case; it stays when the words change."""
    title: str
    tip: str
    menu: str
    needs: Need
    acts_on: ActsOn
    icon: str
    act: QAction

    @property
    def keys(self) -> str:
        """The keys that give it, as people read them."""
        return self.act.shortcut().toString(QKeySequence.SequenceFormat.NativeText)


class Commands(QObject):
    """All commands of the window, in the order in which their subjects add them."""

    added = Signal(object)
    """A Command."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._held: dict[str, Command] = {}

    def __iter__(self) -> Iterator[Command]:
        return iter(list(self._held.values()))

    def __getitem__(self, identifier: str) -> Command:
        return self._held[identifier]

    def __contains__(self, identifier: str) -> bool:
        return identifier in self._held

    def add(
        self,
        identifier: str,
        title: str,
        tip: str,
        slot: Callable[[], Any],
        *,
        menu: str,
        needs: Need = "nothing",
        keys: Any = None,
        icon: str = "",
        acts_on: ActsOn = "",
    ) -> Command:
        """Add a command.

        Raises
        ------
        ValueError
            When the identifier or its keys are taken.
        """
        if identifier in self._held:
            raise ValueError(f"there is a command {identifier} already")
        title, tip = phrase(title), phrase(tip)
        act = QAction(title, self)
        act.setObjectName(identifier)
        act.setToolTip(tip)
        act.setStatusTip(tip)
        if keys is not None:
            act.setShortcut(QKeySequence(keys))
        if icon:
            act.setIcon(icon_of(icon))
        taken = next((each.identifier for each in self if each.keys and each.act.shortcut() == act.shortcut()), "")
        if taken:
            raise ValueError(f"{act.shortcut().toString()} gives the command {taken} already")
        act.triggered.connect(lambda _checked=False: slot())
        made = Command(identifier, title, tip, menu, needs, acts_on, icon, act)
        self._held[identifier] = made
        self.added.emit(made)
        return made

    def enable(self, *, idle: bool, opened: bool, filled: bool) -> None:
        """Let what is possible be done: no job is running, a project is open, there are openings in it."""
        at_hand: dict[Need, bool] = {
            "nothing": True, "no job": idle, "project": idle and opened, "openings": idle and opened and filled,
        }  # fmt: skip
        for each in self:
            each.act.setEnabled(at_hand[each.needs])


def identifier_of(title: str) -> str:
    """Return an identifier made of a command's words.

    Examples
    --------
    >>> identifier_of("Save what can be read of a damaged project…")
    'save-what-can-be-read-of-a-damaged-project'
    """
    return "-".join("".join(each if each.isalnum() else " " for each in title.casefold()).split())
