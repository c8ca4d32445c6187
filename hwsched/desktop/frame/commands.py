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

AtPresent = Callable[[], tuple[bool, str]]
"""Returns whether a command would do anything at present, and words for its tip: what it would do, or why nothing."""
Need = Literal["nothing", "no job", "project", "openings"]
"""What must be at hand: nothing at all, no running job, an open project besides, openings in it besides."""
ActsOn = Literal["", "chosen", "selected", "in view"]
"""On what a command acts: nothing that is chosen, the opening that is shown, those selected, those in view."""
_NEEDED: Final = {
    "no job": to_phrase("not while a job is running"),
    "project": to_phrase("open a project first"),
    "openings": to_phrase("take in openings first"),
}
"""Why a command cannot be given at present: what has to come first of what it needs."""


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
    at_present: AtPresent

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
        self._why: dict[str, str] = {}

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
        at_present: AtPresent = lambda: (True, ""),
    ) -> Command:
        """Add a command; at_present: whether it would do anything; without it, it would as long as its needs are met.

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
        made = Command(identifier, title, tip, menu, needs, acts_on, icon, act, at_present)
        self._held[identifier] = made
        self.added.emit(made)
        return made

    def enable(self, why_not: Callable[[Command], str]) -> None:
        """Let be done what would do anything; what would not says why where its words are read.

        Parameters
        ----------
        why_not : callable
            Returns what a command lacks of what it needs and acts on; empty where it lacks nothing.
        """
        for each in self:
            why = why_not(each)
            possible, words = each.at_present() if not why else (False, why)
            each.act.setEnabled(possible)
            self._why[each.identifier] = "" if possible else words
            tip = phrase("{tip}: {words}", tip=each.tip, words=words) if words else each.tip
            each.act.setToolTip(tip)
            each.act.setStatusTip(tip)

    def why_not(self, identifier: str) -> str:
        """Return why a command cannot be given at present; empty where it can."""
        return self._why.get(identifier, "")


def lacking(need: Need, *, idle: bool, opened: bool, filled: bool) -> str:
    """Say what is not at hand of what a command needs, such as an open project; empty for nothing.

    Examples
    --------
    >>> lacking("openings", idle=True, opened=True, filled=False)
    'take in openings first'
    >>> lacking("nothing", idle=False, opened=False, filled=False)
    ''
    """
    at_hand = {"project": opened, "openings": filled, "no job": idle}
    wanted = {"nothing": (), "no job": ("no job",), "project": ("project", "no job")}
    first = next((each for each in wanted.get(need, ("project", "openings", "no job")) if not at_hand[each]), None)
    return phrase(_NEEDED[first]) if first is not None else ""


def identifier_of(title: str) -> str:
    """Return an identifier made of a command's words.

    Examples
    --------
    >>> identifier_of("Save what can be read of a damaged project…")
    'save-what-can-be-read-of-a-damaged-project'
    """
    return "-".join("".join(each if each.isalnum() else " " for each in title.casefold()).split())
