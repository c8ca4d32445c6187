"""The declaration of one fact. Reading cells and showing values stand in their own files beside this one."""

from dataclasses import dataclass
from typing import Literal

AttributeKind = Literal["text", "length", "number", "integer", "choice", "flag", "date", "money"]
"""Kind of value held: text as str, length as float [mm], number as float in the attribute's unit, integer as int,
choice as the Choice.value str, flag as bool, date as ISO text, money as exact Decimal. None always means unknown."""

Unit = Literal[
    "", "mm", "m", "kg", "V", "A", "mA", "uA", "mAh", "Ah", "W", "ohm", "degC", "s", "h", "N", "deg", "share"
]


@dataclass(frozen=True, slots=True)
class Choice:
    """One of the words that a choice accepts."""

    value: str
    """Held and exchanged, kebab-case."""
    label: str
    """Shown to people."""
    synonyms: tuple[str, ...] = ()
    """Other spellings read from sheets, compared without case, blanks and punctuation."""


@dataclass(frozen=True, slots=True)
class Reading:
    """One of the things that an unclear word may mean."""

    label: str
    """As people say it; the answer to the question."""
    value: str | None = None
    """Of the choice; None where it says nothing of this fact."""
    also: tuple[tuple[str, str], ...] = ()
    """Other facts of the same thing that it says, by name."""


@dataclass(frozen=True, slots=True)
class Unclear:
    """A word of a choice that people write and that may mean more than one thing, or none of the choice's values."""

    word: str
    said: str
    """What it says, as the end of a sentence."""
    readings: tuple[Reading, ...] = ()
    """Empty where nothing that it may mean is a value of the choice: then the cell is refused."""


@dataclass(frozen=True, slots=True)
class Attribute:
    """One fact of an opening, a leaf, an existing item or a part."""

    name: str
    """Identifier with its unit as suffix, such as ``backset_mm``; the column name in the database."""
    label: str
    """The trade's words, shown in forms and as the column's header in sheets."""
    kind: AttributeKind = "text"
    unit: Unit = ""
    choices: tuple[Choice, ...] = ()
    synonyms: tuple[str, ...] = ()
    """Other headers under which sheets carry this fact, compared without case, blanks and punctuation."""
    low: float | None = None
    """Least value that can be true (in mm for lengths); a smaller one is refused as a slip."""
    high: float | None = None
    required: bool = False
    unclear: tuple[Unclear, ...] = ()
    """Words of a choice that people write and that may mean more than one thing: somebody is asked."""
    note: str = ""
    """What the surveyor or the catalogue's keeper should know: where to measure, what it decides."""

    def choice(self, value: str) -> Choice | None:
        """Return the declared choice that holds this value."""
        return next((c for c in self.choices if c.value == value), None)
