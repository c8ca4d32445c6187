"""Whether the attributes of a part fit its kind: declared, of the right sort, possible, and in agreement.

Here belongs what a part says of itself. What it says of other parts (kits, successors) is checked where all parts are
known.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import isfinite
from typing import Final, cast

from hwsched.attributes import Attribute, Value, accepted_by, show_value, within_limits
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.screw_places import read_places

ORDERED: Final[tuple[tuple[str, str], ...]] = (
    ("grip_low_mm", "grip_mm"),
    ("leaf_low_mm", "leaf_high_mm"),
    ("supply_low_v", "supply_high_v"),
    ("pack_low_v", "pack_high_v"),
    ("window_x0_mm", "window_x1_mm"),
    ("window_y0_mm", "window_y1_mm"),
)
"""The first may not be more than the second, in whatever kind has both."""
TOGETHER: Final[tuple[tuple[str, str], ...]] = (
    ("cell", "cells"),
    ("supply_low_v", "supply_high_v"),
    ("cold_c", "cold_share"),
    ("window_x0_mm", "window_x1_mm"),
    ("window_y0_mm", "window_y1_mm"),
)
"""One says nothing without the other."""


@dataclass(frozen=True, slots=True)
class PartProblem:
    """One attribute that is wrong or missing."""

    attribute: str
    """Name; also of one that the kind does not declare."""
    message: str
    accepted: str = ""

    def __str__(self) -> str:
        return f"{self.message}; accepted: {self.accepted}" if self.accepted else self.message


def problems_of(attributes: Mapping[str, Value], kind: PartKind) -> list[PartProblem]:
    """Return what is wrong with the attributes of a part.

    Parameters
    ----------
    attributes : mapping of str to value
        As held, by attribute name; None is unknown.
    kind : PartKind
        The part's kind.

    Returns
    -------
    list of PartProblem
        In the order of the kind's attributes; empty where all is well.

    Examples
    --------
    >>> from hwsched.catalogue import COLLAR
    >>> [problem.message for problem in problems_of({}, COLLAR)]
    ['Height must be filled in']
    """
    declared = {attribute.name: attribute for attribute in kind.attributes}
    found = [
        PartProblem(name, f"{name} is no attribute of {kind.label}", ", ".join(a.label for a in kind.attributes))
        for name in attributes
        if name not in declared
    ]
    sound = {}
    for name, attribute in declared.items():
        value = attributes.get(name)
        problem = _single(attribute, value)
        if problem is not None:
            found.append(problem)
        elif value is not None:
            sound[name] = value
    found += _lone(attributes, declared)
    found += _misplaced(sound)
    found += _uncovered(sound)
    found += _disordered(sound, declared)
    return found


def _single(attribute: Attribute, value: Value) -> PartProblem | None:
    if value is None or value == "":
        missing = PartProblem(attribute.name, f"{attribute.label} must be filled in", accepted_by(attribute))
        return missing if attribute.required else None
    if not _is_of_kind(attribute, value):
        return PartProblem(attribute.name, f"{attribute.label} cannot be {value!r}", accepted_by(attribute))
    if isinstance(value, int | float) and not isinstance(value, bool) and not within_limits(attribute, value):
        shown = show_value(attribute, value, with_unit=True)
        return PartProblem(attribute.name, f"{attribute.label} of {shown} cannot be true", accepted_by(attribute))
    return None


def _is_of_kind(attribute: Attribute, value: Value) -> bool:
    if attribute.kind == "flag":
        return isinstance(value, bool)
    if attribute.kind in ("text", "date"):
        return isinstance(value, str)
    if attribute.kind == "choice":
        return isinstance(value, str) and attribute.choice(value) is not None
    if isinstance(value, bool) or not isinstance(value, int | float) or not isfinite(value):
        return False
    return attribute.kind != "integer" or float(value).is_integer()


def _lone(attributes: Mapping[str, Value], declared: Mapping[str, Attribute]) -> Iterator[PartProblem]:
    for pair in TOGETHER:
        if pair[0] in declared and pair[1] in declared:
            known = [name for name in pair if attributes.get(name) not in (None, "")]
            if len(known) == 1:
                (lacking,) = set(pair) - set(known)
                if not declared[lacking].required:  # else it is missed already
                    message = f"{declared[lacking].label} is empty, but {declared[known[0]].label} is filled in"
                    yield PartProblem(lacking, message, "both or neither")


def _misplaced(sound: Mapping[str, Value]) -> Iterator[PartProblem]:
    text, screws = sound.get("screw_places"), sound.get("screws")
    if not isinstance(text, str) or not text:
        return
    try:
        places = read_places(text)
    except ValueError as error:
        yield PartProblem("screw_places", str(error), "places in mm, such as 6, 6; 64, 6")
        return
    if isinstance(screws, int | float) and screws != len(places):
        message = f"Screw places are {len(places)}, but Screws is {screws:g}"
        yield PartProblem("screw_places", message, "one place for each screw")
    wide, high = sound.get("plate_width_mm"), sound.get("plate_height_mm")
    if isinstance(wide, int | float) and isinstance(high, int | float):
        for x, y in places:
            if not (0 <= x <= wide and 0 <= y <= high):
                message = f"the screw at {x:g}, {y:g} stands beside the plate of {wide:g} x {high:g} mm"
                yield PartProblem("screw_places", message, "places on the plate, in mm from its lower left")


def _uncovered(sound: Mapping[str, Value]) -> Iterator[PartProblem]:
    """Where a template gives both the hole and the plate above the existing hole, the hole must lie in the window."""
    hole, plate = sound.get("hole_above_existing_mm"), sound.get("plate_above_existing_mm")
    low, high = sound.get("window_y0_mm"), sound.get("window_y1_mm")
    if not all(isinstance(each, int | float) for each in (hole, plate, low, high)):
        return
    up = cast(float, hole) - cast(float, plate)
    if not cast(float, low) <= up <= cast(float, high):
        message = f"the hole would lie {up:g} mm above the plate's lower edge, its window from {low:g} to {high:g}"
        yield PartProblem("plate_above_existing_mm", message, "a plate whose window lies over its hole")


def _disordered(sound: Mapping[str, Value], declared: Mapping[str, Attribute]) -> Iterator[PartProblem]:
    for low, high in ORDERED:
        least, most = sound.get(low), sound.get(high)
        if isinstance(least, int | float) and isinstance(most, int | float) and least > most:
            message = (
                f"{declared[high].label} ({show_value(declared[high], most)}) is less than "
                f"{declared[low].label} ({show_value(declared[low], least)})"
            )
            yield PartProblem(high, message, f"at least {show_value(declared[low], least)}")
