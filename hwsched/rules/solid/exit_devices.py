"""What an exit device has besides its bar: rods, latches and fixings, and what must be told of it to place them.

Sizes that no survey asks for stand in `resources/practice/distances.csv`, each with its source.
"""

from collections.abc import Iterator
from typing import Final

from hwsched.calc.opening.placement import Rect
from hwsched.rules.practice import distance_mm
from hwsched.rules.reading import lock_item, on_leaf, remains
from hwsched.survey.asked import WITH_RODS
from hwsched.values import Item, Leaf, OpeningInput

_FORM: Final = "existing_item.device_form"
_LINE: Final = "existing_item.rod_x_mm"
_ENDS: Final = "existing_item.rod_ends"
FAR_MM: Final = 10_000.0
"""Beyond every leaf [mm]."""
Stretch = tuple[float, float, float, float, tuple[str, ...]]
"""Lower and upper end of a rod and of the latch at its end [mm], and what is missing to know that it is there."""


def devices(given: OpeningInput, leaf: Leaf) -> tuple[Item, ...]:
    """Return the exit devices of a leaf that stand there after the work, one that is converted included."""
    lock = lock_item(given)
    return tuple(
        item
        for item in given.items
        if item.kind == "exit-device" and (item is lock or remains(item)) and on_leaf(item, leaf)
    )


def rod_line_mm(item: Item) -> tuple[float | None, tuple[str, ...]]:
    """Tell where a device's rods run from the lock edge [mm]; None where it has none, or where the facts are missing.

    Returns
    -------
    float or None, tuple of str
        With the facts that are missing to know it.
    """
    if item.device_form is None:
        return None, (_FORM,)
    if item.device_form not in WITH_RODS:
        return None, ()
    return (item.rod_x_mm, ()) if item.rod_x_mm is not None else (None, (_LINE,))


def stretches(item: Item, middle: float, span: tuple[float, float] | None) -> Iterator[Stretch]:
    """Yield how far a device's rods reach, upper one first.

    Parameters
    ----------
    item : Item
        With rods.
    middle : float
        Height of the device's middle above the floor [mm]: from there they lead up and down.
    span : (float, float), optional
        The leaf's lower and upper end above the floor [mm].
    """
    low, top = span or (-FAR_MM, FAR_MM)
    long = distance_mm("device-latch-high")
    yield middle, top, top - long, top, ()
    if item.rod_ends != "top":
        yield low, middle, low, low + long, () if item.rod_ends else (_ENDS,)


def device_rects(
    item: Item, own: Rect | None, span: tuple[float, float] | None
) -> Iterator[tuple[str, Rect | None, tuple[str, ...], bool]]:
    """Yield what a device's rods and latches take of its face: name, rectangle, what is missing, whether it is unsure.

    Parameters
    ----------
    item : Item
        An exit device.
    own : Rect, optional
        Its footprint; without it nothing is told that its footprint does not ask for.
    span : (float, float), optional
        The leaf's lower and upper end above the floor [mm].
    """
    if own is None or item.device_form in ("rim", "mortise", "concealed-rods"):
        return
    x, needs = rod_line_mm(item)
    if x is None:
        # A unit placed as if none ran there could stand on it.
        yield "exit device's rods", None, needs, False
        return
    half, wide = distance_mm("device-rod-guide") / 2, distance_mm("device-latch-wide") / 2
    for low, high, latch_low, latch_high, missing in stretches(item, (own.y0 + own.y1) / 2, span):
        yield "exit device's rod", Rect(x - half, low, x + half, high), missing, bool(missing)
        yield "exit device's latch", Rect(x - wide, latch_low, x + wide, latch_high), missing, bool(missing)
