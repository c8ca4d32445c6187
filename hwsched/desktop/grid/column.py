"""What a column of a grid says of itself. No widgets."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Final, Generic, TypeVar

from hwsched.attributes import Attribute
from hwsched.language import phrase
from hwsched.telling.natural import natural

Row = TypeVar("Row")
_SENTENCE: Final = 40
"""So many figures wide is what sentences stand in."""


@dataclass(frozen=True, slots=True)
class Target:
    """Where an edit of a cell goes: a fact of a thing."""

    entity: str
    row_id: str
    name: str


def plain_text(value: Any) -> str:
    """Return a value as it stands, nothing for none."""
    return "" if value is None else str(value)


@dataclass(frozen=True, slots=True)
class Column(Generic[Row]):
    """One column over rows of one kind.

    Values decide order, filters and groups; texts are made of values, and only for cells that are looked at.
    """

    name: str
    """Known by it in what a person keeps."""
    title: str
    value: Callable[[Row], Any]
    """Must be hashable; None: nobody knows."""
    text: Callable[[Any], str] = plain_text
    """Of a value."""
    key: Callable[[Any], Any] | None = None
    """By which known values are ordered; texts as people count when left out, all else by itself."""
    row_key: Callable[[Row], Any] | None = None
    """By which rows are ordered, where values alone do not say it."""
    attribute: Attribute | None = None
    """The declared fact: how it is edited and read."""
    target: Callable[[Row], Target | None] | None = None
    """Where an edit goes; None: this row has no such thing."""
    typed: bool = True
    """Whether typing over a cell begins an edit; else letters go to the row that begins with them."""
    colour: Callable[[Any], Any] | None = None
    """Of the text, by its value."""
    icon: Callable[[Any], Any] | None = None
    """Beside the text, by its value."""
    width: int = 14
    """So many figures are seen."""
    right: bool = False
    """Numbers stand one under the other."""
    note: str = ""
    besides: str = ""
    """Said behind the note."""
    standard: bool = True
    """Whether it is shown as long as nobody chose."""
    section: str = ""
    """Under which it stands where columns are chosen."""

    @property
    def sentence(self) -> bool:
        """Whether sentences stand in it, which are read whole below the table."""
        return self.width >= _SENTENCE

    def told(self) -> str:
        """Return what is told of the column where it is pointed at."""
        return " ".join(phrase(each) for each in (self.note, self.besides) if each) or phrase(self.title)

    def order(self, value: Any) -> Any:
        """Return by what a known value is ordered."""
        if self.key is not None:
            return self.key(value)
        return natural(value.casefold()) if isinstance(value, str) else value

    def said(self, value: Any) -> str:
        """Return how a value is called where values are chosen."""
        return self.text(value) or phrase("(empty)")
