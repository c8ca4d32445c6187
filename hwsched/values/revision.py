"""Revisions: their letters, what of a project they hold, and what is read back from one. Plain values.

How a state is frozen and read stands in `hwsched.operations`.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any, Final

from hwsched.language import phrase
from hwsched.values.finding import Finding
from hwsched.values.fit import Fit, together
from hwsched.values.office import OfficeThen
from hwsched.values.opening_input import Catalogue, OpeningInput, Part, PointFit, Settings
from hwsched.values.piece import PieceThen
from hwsched.values.power import PowerFacts, PowerResult
from hwsched.values.terms import CostTerms

LETTERS: Final = "ABCDEFGHJKLMNPQRSTUVWXYZ"
"""Of revisions, in order. I and O are left out: they read as 1 and 0 (common practice of drawing offices)."""


def is_letter(text: str) -> bool:
    """Tell whether a text can be a revision's letter.

    Examples
    --------
    >>> is_letter("A"), is_letter("AB"), is_letter("I"), is_letter("a"), is_letter("")
    (True, True, False, False, False)
    """
    return bool(text) and set(text) <= set(LETTERS)


def place_of(letter: str) -> int:
    """Return the place of a letter in the order of revisions: A is 1, Z 24, AA 25.

    Examples
    --------
    >>> place_of("A"), place_of("J"), place_of("Z"), place_of("AA"), place_of("AB")
    (1, 9, 24, 25, 26)
    """
    place = 0
    for character in letter:
        place = place * len(LETTERS) + LETTERS.index(character) + 1
    return place


def letter_at(place: int) -> str:
    """Return the letter at a place, from 1 on.

    Examples
    --------
    >>> [letter_at(place) for place in (1, 8, 9, 13, 14, 24, 25, 48, 49)]
    ['A', 'H', 'J', 'N', 'P', 'Z', 'AA', 'AZ', 'BA']
    """
    letter = ""
    while place > 0:
        # Less one, since there is no zero: after Z comes AA, as in a spreadsheet's columns.
        place, rest = divmod(place - 1, len(LETTERS))
        letter = LETTERS[rest] + letter
    return letter


def next_letter(letters: Iterable[str]) -> str:
    """Return the letter after the last of those that are taken.

    Examples
    --------
    >>> next_letter([]), next_letter(["A", "H"]), next_letter(["Z", "B"])
    ('A', 'J', 'AA')
    """
    return letter_at(max(map(place_of, letters), default=0) + 1)


@dataclass(frozen=True, slots=True)
class Scope:
    """What of a project a revision holds; nothing named: all of it."""

    building: str | None = None
    level: str | None = None
    """Of the building."""
    marks: tuple[str, ...] = ()

    @property
    def words(self) -> str:
        """As people read it."""
        if self.marks:
            return phrase("openings {marks}", marks=", ".join(self.marks))
        if self.building is None:
            return phrase("the whole project")
        if self.level is None:
            return self.building
        return phrase("{building}, level {level}", building=self.building, level=self.level)

    def plain(self) -> dict[str, Any]:
        """Return it as it is held."""
        told = {"building": self.building, "level": self.level, "marks": list(self.marks) or None}
        return {name: value for name, value in told.items() if value is not None}

    @classmethod
    def of(cls, held: Mapping[str, Any]) -> "Scope":
        """Return it from what is held."""
        return cls(held.get("building"), held.get("level"), tuple(held.get("marks", ())))


@dataclass(frozen=True, slots=True)
class RuleText:
    """A rule as it read."""

    id: str
    title: str
    discipline: str
    severity: str
    basis: str
    cure: str
    limits: tuple[tuple[str, float, str, str], ...] = ()
    """Name, the rule's own value, what it is, source; what the project had changed stands in its settings."""
    defers: bool = False


@dataclass(frozen=True, slots=True)
class OwnValueThen:
    """What a field of the project's own held on an opening or an existing item."""

    entity: str
    row_id: str
    name: str
    value: str | float | int | bool | None


@dataclass(frozen=True, slots=True)
class OwnFieldThen:
    """A field of the project's own as it was declared."""

    entity: str
    name: str
    label: str
    kind: str
    unit: str
    choices: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class LevelThen:
    """A level of a building."""

    building: str | None
    level: str | None
    sort: int
    height_m: float | None


@dataclass(frozen=True, slots=True)
class FileThen:
    """A file that hung at a thing; its content is held by its hash."""

    entity: str
    """Name of the thing's table."""
    row_id: str
    name: str
    """Of the file as it was taken in."""
    hash: str
    """SHA-256 of the content."""
    media_type: str
    size: int
    """Bytes."""
    title: str = ""
    note: str = ""
    about: str = ""
    """What people called the thing; empty where it is an opening's, which has its mark."""


@dataclass(frozen=True, slots=True)
class OpeningThen:
    """An opening as it was."""

    points: tuple[PointFit, ...]
    """One or more; facts of opening, leaves and items are the same in all."""
    findings: tuple[Finding, ...]
    """With the waivers laid over them that were in force."""
    set_name: str = ""
    own: tuple[OwnValueThen, ...] = ()
    files: tuple[FileThen, ...] = ()
    """At it, its leaves and all else that is its own, in the order in which they were attached."""
    pieces: tuple[PieceThen, ...] = ()
    """Of which bench work, serial number or lot were on record, with those that stand in the same place."""
    asked: tuple[tuple[int, str], ...] = ()
    """Questions that deliveries of the survey had left open about it: number of the delivery, kind."""

    @property
    def given(self) -> OpeningInput:
        """Of the first lock point."""
        return self.points[0].given

    @property
    def fit(self) -> Fit | None:
        """Of all its lock points together; None where of one nothing was stored, or what belonged to other facts."""
        return together([point.fit for point in self.points])

    @property
    def mark(self) -> str:
        """The opening's mark then."""
        return self.given.opening.mark


@dataclass(frozen=True, slots=True)
class RevisionThen:
    """A revision as it was frozen, whatever has changed since."""

    letter: str
    at: str
    person: str
    purpose: str
    scope: Scope
    change_set: int
    """Latest step of the journal that it holds."""
    day: str
    """On which it was judged, ISO 8601."""
    engine: Mapping[str, Any]
    """Which program made it."""
    title: str
    settings: Settings
    terms: CostTerms
    own_fields: tuple[OwnFieldThen, ...]
    levels: tuple[LevelThen, ...]
    catalogue: Catalogue
    """Whole, as it stood; `used` names what this revision needs of it."""
    of_parts: Mapping[str, Mapping[str, Any]]
    """Values of the project's own fields by part number."""
    rules: tuple[RuleText, ...]
    present: PowerFacts
    power: PowerResult
    openings: tuple[OpeningThen, ...] = field(default=())
    """In the order of building, level and mark."""
    files: tuple[FileThen, ...] | None = None
    """At what is no opening's: parts, supplies, sets. None: an earlier version froze it, which held neither files nor
    bench work of anything."""
    office: OfficeThen | None = None
    """None: an earlier version froze it, which did not hold it."""

    @property
    def used(self) -> tuple[Part, ...]:
        """Catalogue lines that its fits, choices, supplies and runs use, with what is in their boxes."""
        points = [point for each in self.openings for point in each.points]
        numbers = {part.part for point in points if point.fit is not None for part in point.fit.parts}
        numbers |= {choice.part for point in points for choice in point.given.chosen}
        for supply in self.present.supplies:
            numbers |= {number for number in (supply.part, supply.battery) if number}
        wires = (*(circuit.wire for circuit in self.present.circuits), *(run.wire for run in self.present.runs))
        numbers |= {wire for wire in wires if wire}
        boxes = [part for number in numbers if (part := self.catalogue.get(number)) is not None]
        numbers |= {number for part in boxes for number, _ in part.kit}
        return tuple(part for number in sorted(numbers) if (part := self.catalogue.get(number)) is not None)
