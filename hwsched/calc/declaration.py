"""What a calculation asks and answers, declared once: in the annotations of its records and of its function.

Here belongs what is said of a field. A field is declared as ``leaf_mm: Annotated[Positive, Said("Leaf thickness.")]``:
its type says its shape, its limits and whether it may be left out, `Said` the rest. A field without `Said` is none of
the JSON object. Reading, checking, writing and describing follow from it, in `records`; what depends on several fields
stays a check in the calculation.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from itertools import count
from typing import Any, Final

_WRITTEN = count()
NO_DEFAULT: Final = object()
Values = Mapping[str, Any]
"""Fields of a function or record as read, by their names in Python."""


@dataclass(frozen=True)
class Said:
    """What is said of a field besides its type."""

    text: str = ""
    """In the trade's words. A property that is part of the answer says it in its docstring."""
    yes: str = ""
    """Of what is so or not: the sentence that is true where it is so; its text where that is one."""
    no: str = ""
    """The sentence that is true where it is not so."""
    at: str | None = None
    """Key in the JSON object where it is not the name, ``leaf.width_mm`` within an object that only holds fields."""
    choices: tuple[str, ...] = ()
    shown: str = ""
    """Default as shown to people where that is not the value itself."""
    default: object = NO_DEFAULT
    """In place of the one in Python."""
    needed: bool = False
    """Must be given though Python has a default."""
    unless: str = ""
    """Field of the same object beside which this one may be left out."""
    like: str = ""
    """Field of the same record whose value it has where it is left out."""
    numbered: str = ""
    """In a list: what it is where it is left out, with ``{}`` for the number."""
    keys: tuple[str, ...] = ()
    """Of a point that is an object, such as x and y."""
    kind: str = ""
    """As shown to people where it does not follow from the type."""
    form: str = ""
    """Of an object of texts by name, as people are told it."""
    as_it_stands: bool = False
    """A list whose entries the calculation checks itself."""
    earlier: str = ""
    """Name that it had before; it is still read."""
    earlier_words: Mapping[str, str] = field(default_factory=dict, hash=False)
    """Words that a choice had before, to those of today."""
    written: int = field(default_factory=_WRITTEN.__next__, compare=False)
    """Order in the source, for answers that are partly properties."""


INLINE: Final = Said(at="")
"""A record whose fields stand among those of the outer object."""


@dataclass(frozen=True)
class FieldsOf:
    """Marks `Values`: the declared fields of a record or function, among those of the outer object."""

    declared: Callable[..., Any]
