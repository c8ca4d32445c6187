"""Families: members that stand one a file, and are told by one line each.

In the `__init__` of a family the import lines are its table of contents, in the order in which people see the members:
a member costs one file and one line.
"""

from __future__ import annotations

# Loaded before `hwsched --help` is shown, which neither typing nor dataclasses may slow down.
TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Mapping
    from typing import TypeVar

    Member = TypeVar("Member")


def imported(namespace: Mapping[str, object], kind: type[Member]) -> tuple[Member, ...]:
    """Return what of a kind a module has imported, in the order of its lines; members in a tuple count each.

    Examples
    --------
    >>> imported({"A": 1, "word": "no", "MORE": (2, 3)}, int)
    (1, 2, 3)
    """
    found: list[Member] = []
    for value in namespace.values():
        several = value if isinstance(value, tuple) else (value,)
        found += [each for each in several if isinstance(each, kind)]
    return tuple(found)


class Line:
    """A line of a table of contents whose members are loaded when they are used.

    Parameters
    ----------
    name : str
        By which people and machines call the member.
    place : str
        ``module:CONSTANT``, the module below the family's package.
    """

    __slots__ = ("name", "place")

    def __init__(self, name: str, place: str) -> None:
        self.name, self.place = name, place


def loaded(package: str, lines: tuple[Line, ...], kind: type[Member]) -> tuple[Member, ...]:
    """Load the members of a table; raises TypeError for a line that says what is not one."""
    # Loaded when a table is: help shows its names without it.
    from importlib import import_module  # noqa: PLC0415

    found: list[Member] = []
    for line in lines:
        module, _, constant = line.place.partition(":")
        member = getattr(import_module(f"{package}.{module}"), constant)
        if not isinstance(member, kind):
            raise TypeError(f"{package}.{line.place} is no {kind.__name__}")
        found.append(member)
    return tuple(found)
