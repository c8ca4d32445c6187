"""Find anything: what a few words may mean, best first. No widgets.

A source gives all that it has for the words; who asks ranks them. Openings, parts and rules stand here, places and
commands are asked of the frame, and other subjects add their own.
"""

import sys
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from functools import partial
from importlib import import_module
from typing import Any, Final, Literal

from hwsched.desktop.frame.commands import Commands
from hwsched.desktop.project.project_state import ProjectState
from hwsched.language import phrase, to_phrase
from hwsched.operations.collector import collector_paused
from hwsched.operations.findings.checked import Checked

Kind = Literal["Opening", "Place", "Command", "Part", "Rule", "Help"]
_KINDS: Final[tuple[Kind, ...]] = (
    to_phrase("Opening"),
    to_phrase("Place"),
    to_phrase("Command"),
    to_phrase("Part"),
    to_phrase("Rule"),
    to_phrase("Help"),
)
"""In the order in which they stand where the words fit equally well."""
MOST: Final = 40


@dataclass(frozen=True, slots=True)
class Found:
    """One thing that was found."""

    kind: Kind
    title: str
    words: str
    """What it is, or on what a command will act."""
    go: Callable[[], Any]
    possible: bool = True
    also: str = ""
    """Other words by which it is found."""


Source = Callable[[], Iterable[Found]]


def _fit(found: Found, wanted: str, words: Sequence[str]) -> int | None:
    """Return how well a thing fits, 0 best; None: not at all."""
    title = found.title.casefold()
    if title == wanted:
        return 0
    if title.startswith(wanted):
        return 1
    parts = title.replace("-", " ").split()
    if all(any(part.startswith(word) for part in parts) for word in words):
        return 2
    if all(word in title for word in words):
        return 3
    whole = f"{title} {found.words} {found.also}".casefold()
    return 4 if all(word in whole for word in words) else None


def find(sources: Iterable[Source], text: str, most: int = MOST) -> list[Found]:
    """Return what fits a few words, best first; nothing for no words.

    Examples
    --------
    >>> doors = lambda: [Found("Opening", "M11", "north stair", print), Found("Opening", "M1", "hall", print)]
    >>> [each.title for each in find([doors], "m1")]
    ['M1', 'M11']
    >>> [each.title for each in find([doors], "stair")]
    ['M11']
    """
    wanted = " ".join(text.casefold().split())
    if not wanted:
        return []
    words = wanted.split()
    held: list[tuple[int, bool, int, int, Found]] = []
    for source in sources:
        for found in source():
            fit = _fit(found, wanted, words)
            if fit is not None:
                held.append((fit, not found.possible, _KINDS.index(found.kind), len(held), found))
    held.sort(key=lambda each: each[:4])
    return [each[4] for each in held[:most]]


class Finder:
    """The sources of the window.

    Parameters
    ----------
    state : ProjectState
        What is open.
    commands : Commands
        What can be done.
    go : callable
        Goes to a place, to show a thing.
    acted_on : callable
        Says on what a command will act.
    """

    def __init__(
        self, state: ProjectState, commands: Commands, go: Callable[..., None], acted_on: Callable[[Any], str]
    ) -> None:
        self._state, self._commands, self._go, self._acted_on = state, commands, go, acted_on
        self._openings: tuple[int, list[Found]] = (-1, [])
        self._held_for: object = None
        self.sources: list[Source] = [self.openings, self.ways, self.parts, self.rules]
        """Asked in turn; a subject adds its own."""

    def find(self, text: str) -> list[Found]:
        """Return what fits a few words, best first."""
        return find(self.sources, text)

    def openings(self) -> list[Found]:
        """Return openings by mark, room, building and level; made once for what was read."""
        workspace = self._state.workspace
        if workspace is None:
            return []
        if self._openings[0] != workspace.turn or self._held_for is not workspace:
            self._held_for = workspace
            self._openings = (
                workspace.turn,
                [
                    Found("Opening", checked.given.opening.mark, _where(checked), partial(self._go, "openings", id_))
                    for id_, checked in workspace.checked.items()
                ],
            )
        return self._openings[1]

    def parts(self) -> Iterable[Found]:
        """Return parts of the catalogue by number and description."""
        workspace = self._state.workspace
        one = next(iter(workspace.checked.values()), None) if workspace is not None else None
        for number, part in one.given.catalogue.parts.items() if one is not None else ():
            yield Found("Part", number, part.description, partial(self._go, "parts", number))

    @property
    def whole(self) -> bool:
        """Whether everything can be found; until rules are loaded they are missing, see `load_rules`."""
        return _rulebook() is not None

    def rules(self) -> Iterable[Found]:
        """Return rules by title and identifier; none before they are loaded, which takes longer than a key."""
        possible = self._state.workspace is not None
        for rule in _rulebook() or ():
            of, go = phrase(rule.discipline.replace("-", " ")), partial(self._go, "rulebook", rule.id)
            yield Found("Rule", phrase(rule.title), of, go, possible, rule.id)

    def ways(self) -> Iterable[Found]:
        """Return places and commands; of a command on what it will act, or why it cannot be given at present."""
        for each in self._commands:
            possible = each.act.isEnabled()
            if each.identifier.startswith("go-"):
                yield Found("Place", each.title, each.tip, each.act.trigger, possible)
                continue
            on = self._acted_on(each.acts_on) if possible else self._commands.why_not(each.identifier)
            words = " · ".join(word for word in (on, each.keys, each.tip) if word)
            yield Found("Command", each.title, words, each.act.trigger, possible)


def _rulebook() -> Sequence[Any] | None:
    # While another thread loads it the module is there, and its table of contents is not.
    return getattr(sys.modules.get("hwsched.rules"), "RULEBOOK", None)


def load_rules(*_: object) -> None:
    """Load the rules, off the screen's thread; what is there already costs nothing."""
    with collector_paused():
        import_module("hwsched.rules")


def _where(checked: Checked) -> str:
    opening = checked.given.opening
    places = (opening.room_to, opening.room_from, opening.building, opening.level)
    return " · ".join(each for each in places if each)
