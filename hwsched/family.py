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
