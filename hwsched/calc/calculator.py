"""What a calculator is: a calculation that people and machines call by name, with a JSON object in and one out.

Here belongs its description (for the command line, the desktop form and the reference page), which follows from what
the calculation declares. Calculations themselves have a file each.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from inspect import unwrap
from typing import Any, get_type_hints

from hwsched.calc.declaration import INLINE, FieldsOf, Said, Values
from hwsched.calc.limits import InputError, Within, check_number, check_point
from hwsched.calc.records import check, check_arguments, record_of
from hwsched.calc.shapes import Field

__all__ = [
    "INLINE",
    "Calculator",
    "Field",
    "FieldsOf",
    "InputError",
    "Said",
    "Values",
    "Within",
    "check",
    "check_arguments",
    "check_number",
    "check_point",
]


@dataclass(frozen=True)
class Calculator:
    """One calculation as people and machines call it: a JSON object in, a JSON object out."""

    name: str
    title: str
    basis: str
    """Published source with edition and section, or "common practice", or "from memory, unverified"."""
    work: Callable[..., Any]
    """Its parameters declare what is asked, its answer declares what comes out."""
    example: Mapping[str, Any]
    """An input that works; forms start from it and help prints it."""
    groups: Mapping[str, str] = field(default_factory=dict)
    """Texts of the objects that only hold fields, such as ``leaf``."""

    @cached_property
    def inputs(self) -> tuple[Field, ...]:
        """Fields of the object that goes in."""
        return record_of(self.work).fields(self.groups)

    @cached_property
    def outputs(self) -> tuple[Field, ...]:
        """Fields of the object that comes out."""
        return tuple(each.answered for each in record_of(self._answer).fields(self.groups))

    def run(self, data: Mapping[str, Any]) -> dict[str, Any]:
        """Answer; raises InputError for a value that cannot be taken."""
        return record_of(self._answer).tell(self.work(**record_of(self.work).values(data, "")))

    def completed(self, data: Mapping[str, Any]) -> dict[str, Any]:
        """Return the same input with its defaults, and with the names and words of today."""
        asked = record_of(self.work)
        return asked.tell(asked.values(data, ""))

    @cached_property
    def _answer(self) -> Any:
        return get_type_hints(unwrap(self.work))["return"]
