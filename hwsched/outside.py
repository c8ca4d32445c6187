"""Members of families that come from other packages, by Python entry points.

Here belongs finding and loading them. What a member is, each family says itself.
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cache
from importlib.metadata import EntryPoint, entry_points
from typing import Final, TypeVar

Member = TypeVar("Member")
RULES: Final = "hwsched.rules"
PART_KINDS: Final = "hwsched.part_kinds"
GROUPS: Final = (RULES, PART_KINDS)
"""Every group of entry points that a family takes members from."""


class OutsideError(Exception):
    """A package from outside that cannot be taken in; it is named, with what is wrong."""


@dataclass(frozen=True, slots=True)
class Point:
    """An entry point as its package declares it."""

    package: str
    version: str
    group: str
    name: str
    value: str
    module: str


@cache
def _found() -> tuple[EntryPoint, ...]:
    # One search serves all groups: it opens every installed package.
    every = entry_points()
    return tuple(
        point
        for group in GROUPS
        for point in sorted(
            every.select(group=group), key=lambda point: (point.dist.name if point.dist else "", point.name)
        )
    )


def points() -> tuple[Point, ...]:
    """Return what is declared for any family, loaded or not."""
    return tuple(
        Point(
            point.dist.name if point.dist else "a package",
            point.dist.version if point.dist else "",
            point.group,
            point.name,
            point.value,
            point.module,
        )
        for point in _found()
    )


def members(
    group: str, kind: type[Member], name_of: Callable[[Member], str], own: Iterable[Member]
) -> tuple[Member, ...]:
    """Load what other packages add to a family.

    Parameters
    ----------
    group : str
        One of GROUPS.
    kind : type
        What each member must be; an entry point gives one, or a tuple of them.
    name_of : callable
        Its identifier, that no two share.
    own : iterable
        Members of this package.

    Returns
    -------
    tuple
        In the order of the packages' names; empty where nothing is installed.

    Raises
    ------
    OutsideError
        Names the package and the entry point that cannot be loaded, is of another kind, or takes a name twice.
    """
    if group not in GROUPS:
        raise ValueError(f"{group} is no group of entry points; add it to GROUPS")
    found_here = [point for point in _found() if point.group == group]
    if not found_here:
        return ()
    taken = {name_of(member): "hwsched" for member in own}
    found: list[Member] = []
    for point in found_here:
        package = point.dist.name if point.dist else "a package"
        where = f"{package}, entry point {point.name} of {group}"
        try:
            stated = point.load()
        except Exception as error:
            raise OutsideError(f"{where} cannot be loaded: {error!r}; mend or remove the package") from error
        for member in stated if isinstance(stated, tuple) else (stated,):
            if not isinstance(member, kind):
                raise OutsideError(f"{where} gives {member!r}; accepted: a {kind.__name__} or a tuple of them")
            name = name_of(member)
            if name in taken:
                raise OutsideError(f"{where}: '{name}' is taken already by {taken[name]}; give it another name")
            taken[name] = package
            found.append(member)
    return tuple(found)
