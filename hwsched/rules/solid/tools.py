"""What drills and drives stand for in the solid model: room for bit, drill, driver and hand square to a face or edge.

The leaf stands open for the work: only what stands out of its own faces can be in the way. Here belongs where tools
stand and how large they are; that they must have room is said by the rules.
"""

from collections.abc import Iterator, Mapping
from typing import Final

from hwsched.calc.opening.bore import Box, Rod
from hwsched.rules.rule import Limit
from hwsched.values import Hole, Settings

LIMITS: Final = (
    Limit(
        "proud_mm",
        101.6,
        "How far an item is taken to stand out of its face where nobody measured it.",
        "common practice, unverified: 4 in; an exit device stands out 3 to 3 7/8 in",
        unit="mm",
        low=0.0,
        high=500.0,
    ),
    Limit(
        "flat_mm",
        6.35,
        "The same for plates, trim, labels, viewers and astragals.",
        "common practice, unverified, 1/4 in",
        unit="mm",
        low=0.0,
        high=100.0,
    ),
    Limit(
        "drill_radius_mm",
        28.0,
        "From a drill's axis to the side of its housing.",
        "from memory, unverified: 28 to 35 mm",
        unit="mm",
        low=5.0,
        high=100.0,
    ),
    Limit(
        "drill_long_mm",
        150.0,
        "Length of a drill without its bit.",
        "from memory, unverified: 150 to 200 mm",
        unit="mm",
        low=20.0,
        high=500.0,
    ),
    Limit(
        "bit_base_mm",
        50.8,
        "Length of an ordinary bit, besides eight times its diameter.",
        "from memory, unverified: 1/4 in 4, 3/8 in 5, 1/2 in 6 in long",
        unit="mm",
        low=0.0,
        high=500.0,
    ),
    Limit(
        "bit_long_mm",
        304.8,
        "Length of a long bit, or of a saw or step drill on an extension.",
        "encyclopedia: long bits of 6, 8, 12 and 18 in; 12 in taken",
        unit="mm",
        low=50.0,
        high=2000.0,
    ),
    Limit(
        "grip_mm",
        25.4,
        "How much of a bit its chuck holds.",
        "common practice, unverified, 1 in",
        unit="mm",
        low=0.0,
        high=100.0,
    ),
    Limit(
        "shank_mm",
        11.0,
        "Diameter of what turns a screw: a blade, or a holder of a 1/4 in hexagon bit.",
        "common practice, unverified",
        unit="mm",
        low=2.0,
        high=50.0,
    ),
    Limit(
        "blade_mm",
        101.6,
        "From a screw to the handle of an ordinary screwdriver.",
        "common practice, unverified, 4 in",
        unit="mm",
        low=20.0,
        high=500.0,
    ),
    Limit(
        "blade_long_mm",
        304.8,
        "From a screw to the handle of a long screwdriver, or to the drill on an extension.",
        "common practice, unverified, 12 in",
        unit="mm",
        low=50.0,
        high=1000.0,
    ),
    Limit(
        "hand_wide_mm",
        107.0,
        "Room across for a hand that turns a screwdriver.",
        "from memory, unverified: family of MIL-STD-1472, 107 x 117 mm",
        unit="mm",
        low=20.0,
        high=500.0,
    ),
    Limit(
        "hand_high_mm",
        117.0,
        "Room up and down for a hand that turns a screwdriver.",
        "from memory, unverified: family of MIL-STD-1472, 107 x 117 mm",
        unit="mm",
        low=20.0,
        high=500.0,
    ),
    Limit(
        "hand_long_mm",
        120.0,
        "Length of the handle with the hand on it.",
        "common practice, unverified",
        unit="mm",
        low=20.0,
        high=500.0,
    ),
    Limit(
        "pinch_mm",
        25.4,
        "Across thumb and finger that draw a lead out of its hole and hold its plug.",
        "from memory, unverified, 1 in",
        unit="mm",
        low=0.0,
        high=100.0,
    ),
)
"""Of the rule that says whether tools and fingers have room; the other one takes them from there."""
_RULE: Final = "tool-room"
_DECLARED: Final = {limit.name: limit.value for limit in LIMITS}
FLAT: Final = ("trim", "push-plate", "kick-plate", "label", "astragal", "viewer")
"""Kinds of item that lie flat on a face."""
COME_OFF: Final = (*FLAT, "thumb-turn", "lever", "pull")
"""Kinds that are taken off for the work and put back where they are in its way, by common practice."""


def sizes(settings: Settings) -> Mapping[str, float]:
    """Return the sizes of tools, as the project has them."""
    return settings.limits_for(_RULE, _DECLARED)


def proud_of(kind: str, measured_mm: float | None, size: Mapping[str, float]) -> float:
    """Return how far an item stands out of its face [mm]: as measured, else as its kind is taken to."""
    if measured_mm is not None:
        return measured_mm
    return size["flat_mm"] if kind in FLAT else size["proud_mm"]


def is_square(hole: Hole) -> bool:
    """Tell whether a hole is bored square to its face, by itself and not through a template."""
    return not (hole.by_template or hole.up_deg or hole.edge_deg)


def bit_out_mm(hole: Hole, thick: float, size: Mapping[str, float], *, long: bool) -> float:
    """Return how far a hole's bit stands out of the face when the hole is as deep as it will be [mm].

    Examples
    --------
    >>> hole = Hole("access hole", "single", "inside", 70.0, 1000.0, 12.7, depth_mm=9.5)
    >>> size = {"bit_base_mm": 50.8, "bit_long_mm": 304.8, "grip_mm": 25.4}
    >>> round(bit_out_mm(hole, 44.45, size, long=False), 3), round(bit_out_mm(hole, 44.45, size, long=True), 3)
    (117.5, 269.9)
    """
    # A saw or step drill is short by nature; its depth is its own.
    usual = size["bit_base_mm"] + 8 * hole.diameter_mm if hole.tool == "twist-drill" else size["bit_base_mm"]
    whole = size["bit_long_mm"] if long else usual
    return max(whole - size["grip_mm"] - min(hole.depth_mm or thick, thick), 0.0)


def drill(x: float, y: float, z: float, out: float, stands_mm: float, size: Mapping[str, float]) -> Rod:
    """Return a drill's body square to a face, behind its bit; out: -1 on the inside, 1 on the key side."""
    near = z + out * stands_mm
    return Rod((x, y, near), (x, y, near + out * size["drill_long_mm"]), 2 * size["drill_radius_mm"])


def shank(x: float, y: float, z: float, out: float, stands_mm: float, wide: float) -> Rod:
    """Return what goes straight to the hole or screw: bit, saw or blade."""
    return Rod((x, y, z), (x, y, z + out * stands_mm), wide)


def hand(x: float, y: float, z: float, out: float, stands_mm: float, size: Mapping[str, float]) -> Box:
    """Return the room of a hand on a screwdriver square to a face, its blade as long as said."""
    wide, high = size["hand_wide_mm"] / 2, size["hand_high_mm"] / 2
    low, top = sorted((z + out * stands_mm, z + out * (stands_mm + size["hand_long_mm"])))
    return Box((x - wide, y - high, low), (x + wide, y + high, top))


def fingers(hole: Hole, thick: float, size: Mapping[str, float]) -> Rod:
    """Return thumb and finger at a lead's hole."""
    z, out = (0.0, -1.0) if hole.face == "inside" else (thick, 1.0)
    return shank(hole.x_mm, hole.y_mm, z, out, size["hand_long_mm"], size["pinch_mm"])


def at_edge(y: float, z: float, size: Mapping[str, float], *, long: bool) -> Iterator[Rod | Box]:
    """Yield what turns a screw in the lock edge: the blade before it, and the hand behind."""
    stands, wide, high = (
        size["blade_long_mm" if long else "blade_mm"],
        size["hand_wide_mm"] / 2,
        size["hand_high_mm"] / 2,
    )
    yield Rod((0.0, y, z), (-stands, y, z), size["shank_mm"])
    yield Box((-stands - size["hand_long_mm"], y - high, z - wide), (-stands, y + high, z + wide))


def at_hole(hole: Hole, thick: float, size: Mapping[str, float], *, long: bool) -> Iterator[Rod]:
    """Yield what bores a hole square to its face: the drill; with a long bit also the bit itself."""
    z, out = (0.0, -1.0) if hole.face == "inside" else (thick, 1.0)
    stands = bit_out_mm(hole, thick, size, long=long)
    yield drill(hole.x_mm, hole.y_mm, z, out, stands, size)
    if long and stands > 0:
        yield shank(hole.x_mm, hole.y_mm, z, out, stands, hole.diameter_mm)


def at_screw(
    x: float, y: float, face: str, thick: float, size: Mapping[str, float], *, long: bool
) -> Iterator[Rod | Box]:
    """Yield what drives a screw square to its face: the hand; with a long blade also the blade itself."""
    z, out = (0.0, -1.0) if face == "inside" else (thick, 1.0)
    stands = size["blade_long_mm" if long else "blade_mm"]
    yield hand(x, y, z, out, stands, size)
    if long:
        yield shank(x, y, z, out, stands, size["shank_mm"])
