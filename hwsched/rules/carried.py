"""Which facts of the survey say where a thing stands and how large it is, so that their rounding can be told of it.

Here belongs which fact moves a thing by how much on which axis; how far a fact may be off stands in `rounding`.
"""

from dataclasses import dataclass
from typing import TypeAlias

from hwsched.values import Item, Leaf

Facts: TypeAlias = tuple[tuple[str, float | None, float], ...]
"""``entity.attribute``, its value [mm], and by how much of it a side of the thing moves."""


@dataclass(frozen=True, slots=True)
class Carried:
    """Facts by which a thing stands where it does: from the lock edge, above the floor, from the inside face."""

    across: Facts = ()
    up: Facts = ()
    deep: Facts = ()


NOTHING = Carried()


def of_item(item: Item) -> Carried:
    """Return the facts of what stands on a face where it was measured."""
    return Carried(
        (("existing_item.x_mm", item.x_mm, 1.0), ("existing_item.width_mm", item.width_mm, 0.5)),
        (("existing_item.y_mm", item.y_mm, 1.0), ("existing_item.height_mm", item.height_mm, 0.5)),
    )


def of_middle(item: Item) -> Carried:
    """Return the facts of what an item has in the leaf at its middle, such as a spindle."""
    return Carried(
        (("existing_item.x_mm", item.x_mm, 1.0),),
        (("existing_item.y_mm", item.y_mm, 1.0),),
    )


def of_centre(lock: Item | None) -> Carried:
    """Return the facts of what stands by a lock's centre line: its bores, its head, and all of the new unit."""
    if lock is None:
        return NOTHING
    return Carried(
        (("existing_item.backset_mm", lock.backset_mm, 1.0),),
        (("existing_item.cylinder_height_mm", lock.cylinder_height_mm, 1.0),),
    )


def of_case(lock: Item, leaf: Leaf) -> Carried:
    """Return the facts of a lock's case in the leaf."""
    return Carried(
        (("existing_item.case_depth_mm", lock.case_depth_mm, 1.0),),
        (
            ("existing_item.cylinder_height_mm", lock.cylinder_height_mm, 1.0),
            ("existing_item.case_above_mm", lock.case_above_mm, 1.0),
            ("existing_item.case_height_mm", lock.case_height_mm, 1.0),
        ),
        (
            ("leaf.thickness_mm", leaf.thickness_mm, 0.5),
            ("existing_item.case_width_mm", lock.case_width_mm, 0.5),
            ("existing_item.case_offset_mm", lock.case_offset_mm, 1.0),
        ),
    )


def of_front(lock: Item, leaf: Leaf) -> Carried:
    """Return the facts of a lock's front: its middle is the case's, and half of its height goes each way."""
    behind = of_case(lock, leaf)
    (up, above, high), (thick, _, offset) = behind.up, behind.deep
    half = ("existing_item.front_height_mm", lock.front_height_mm, 0.5)
    across = ("existing_item.front_width_mm", lock.front_width_mm, 0.5)
    return Carried(up=(up, above, (high[0], high[1], 0.5), half), deep=(thick, across, offset))


def between(a: Facts, b: Facts) -> Facts:
    """Return the facts that move two things against each other: what moves both alike does not.

    Examples
    --------
    >>> between((("existing_item.y_mm", 900.0, 1.0),), (("existing_item.cylinder_height_mm", 1000.0, 1.0),))
    (('existing_item.y_mm', 900.0, 1.0), ('existing_item.cylinder_height_mm', 1000.0, 1.0))
    >>> between((("existing_item.y_mm", 900.0, 1.0),), (("existing_item.y_mm", 900.0, 1.0),))
    ()
    """
    return tuple(each for each in a if each not in b) + tuple(each for each in b if each not in a)
