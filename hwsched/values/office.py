"""How an office's documents look: paper, letterhead, words, notes, pages, names of files; plain values."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Final, Literal

PAPERS: Final = ("letter", "a4", "a5")
AT_DOOR: Final = ("packets", "type-sheets", "fault-sheets")
"""Documents that are read at the door: they have a paper of their own."""
ALL: Final = "all"
"""Where a document is named: every one of them."""


@dataclass(frozen=True, slots=True)
class OwnPage:
    """A page of the office's own."""

    place: Literal["before", "after"]
    documents: tuple[str, ...]
    title: str
    text: tuple[str, ...] = ()
    picture: str = ""
    """Name of the picture on it; empty for none."""


@dataclass(frozen=True, slots=True)
class Office:
    """What an office declared; everything has a default."""

    paper: str = ""
    """Of documents for the desk; empty: whatever is asked for, else letter."""
    door_paper: str = ""
    """Of those that are read at the door."""
    language: str = "en"
    """That pages say they are written in (BCP 47)."""
    letterhead: tuple[str, ...] = ()
    logo: str = ""
    """Name of the picture; empty for none."""
    logo_mm: float = 12.0
    """Its height on the first page."""
    file_name: str = "{document}"
    opening_file_name: str = "{mark}"
    words: Mapping[str, str] = field(default_factory=dict)
    """Headings, labels and columns by what they are called instead."""
    contacts: Mapping[str, str] = field(default_factory=dict)
    """By what they are, such as the architect; they stand on the schedule."""
    notes: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """By document, or for all."""
    order: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """By document headings of its sections, in the order in which they stand; others follow."""
    pages: tuple[OwnPage, ...] = ()
    pictures: Mapping[str, bytes] = field(default_factory=dict)
    """Contents by the names that are used above."""

    @property
    def named_pictures(self) -> tuple[str, ...]:
        """Names of all pictures that it uses, each once."""
        return tuple(dict.fromkeys(name for name in (self.logo, *(page.picture for page in self.pages)) if name))

    def paper_of(self, document: str) -> str:
        """Return the paper of a document; empty where the office says nothing of it."""
        return self.door_paper or self.paper if document in AT_DOOR else self.paper

    def notes_of(self, document: str) -> tuple[str, ...]:
        """Return the notes of a document."""
        return (*self.notes.get(ALL, ()), *self.notes.get(document, ()))


@dataclass(frozen=True, slots=True)
class OfficeThen:
    """How the office's documents looked, as somebody declared it."""

    text: str = ""
    """Empty: as by default."""
    files: Mapping[str, str] = field(default_factory=dict)
    """Hashes of the pictures that it names."""
