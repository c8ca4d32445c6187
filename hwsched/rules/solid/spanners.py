"""Spanners on hexagons: which heads and nuts of a fit are turned by one, and how far each can be swung.

Here belongs what the catalogue says is turned by a spanner. A socket on a nut stands in `nuts`, a screwdriver in
`tools`.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from math import hypot
from typing import Final

from hwsched.attributes.of_parts import CASE_HEIGHT_MM, CASE_WIDTH_MM, FORM, HEAD, MOUNTING, SIZE, TURNED_BY
from hwsched.calc.opening.placement import Rect
from hwsched.calc.opening.spanner import widest_swing_deg
from hwsched.rules.practice import across_flats_mm, lock_fasteners
from hwsched.rules.reading import entry, lock_item, lock_leaf, lock_part, unit_part
from hwsched.rules.rule import Limit, Limits
from hwsched.rules.solid.bodies import Body
from hwsched.rules.solid.clashes import bodies_of
from hwsched.rules.solid.clearances import ON_FACE
from hwsched.rules.solid.housing import housing_rect
from hwsched.rules.solid.nuts import corners, nut_limits
from hwsched.rules.solid.screws import screw_places
from hwsched.values import Fit, OpeningInput, Part

LIMITS: Final = (
    Limit(
        "swing_deg",
        60.0,
        "Least angle over which an open spanner is swung: from one side of the hexagon to the next.",
        "common practice; geometry of six sides",
        unit="deg",
        low=0.0,
        high=360.0,
    ),
    Limit(
        "ring_swing_deg",
        30.0,
        "The same of a ring of twelve points, or of one that is offset.",
        "common practice; geometry of twelve points",
        unit="deg",
        low=0.0,
        high=360.0,
    ),
    Limit(
        "reach_flats",
        12.0,
        "Length of a spanner from the middle of its hexagon, in widths across the flats.",
        "from memory, unverified: about 160 mm of a combination spanner of 13 mm",
        unit="",
        low=1.0,
        high=40.0,
    ),
    Limit(
        "jaw_flats",
        2.2,
        "Width of an open spanner's head, in widths across the flats.",
        "from memory, unverified: about 28 mm of one of 13 mm",
        unit="",
        low=1.0,
        high=5.0,
    ),
    Limit(
        "ring_flats",
        1.5,
        "Diameter of a ring spanner's head, in widths across the flats.",
        "from memory, unverified: about 20 mm of one of 13 mm",
        unit="",
        low=1.0,
        high=5.0,
    ),
    Limit(
        "over_mm",
        3.0,
        "How far something may stand out of the face that a spanner passes over.",
        "from memory, unverified: half the height of a nut of 5/16 in or M8",
        unit="mm",
        low=0.0,
        high=60.0,
    ),
)
_SPANNERS: Final = ("spanner", "ring")
_HANDLE_FLATS: Final = 0.5
"""Half the width of a handle, in widths across the flats; from memory, unverified."""


@dataclass(frozen=True, slots=True)
class Hexagon:
    """A head or nut that is turned by a spanner."""

    part: Part
    name: str
    face: str
    x: float
    y: float
    own: bool = False
    """Whether it stands on the unit's own plate."""


@dataclass(frozen=True, slots=True)
class Swing:
    """How far a spanner can be swung."""

    widest_deg: float
    needed_deg: float
    beside: tuple[str, ...]
    """What leaves it no more, by name."""
    needs: tuple[str, ...] = ()
    """Facts of what may or may not stand there, where only that leaves it too little."""


def hexagons(given: OpeningInput, fit: Fit) -> Iterator[Hexagon]:
    """Yield the heads and nuts of a fit that the catalogue has turned by a spanner."""
    lock, part, leaf = lock_item(given), lock_part(given, fit), lock_leaf(given)
    if leaf is None:
        return
    wanted = lock_fasteners(part.kind, part.text_of(MOUNTING) or "") if part is not None else ()
    of_lock = {each.form for each in wanted}
    for fit_part in fit.parts:
        held = entry(given, fit_part) if fit_part.role == "fastener" else None
        if held is None or held.text_of(TURNED_BY) not in _SPANNERS:
            continue
        if part is not None and lock is not None and held.text_of(FORM) in of_lock:
            wide, high = part.number_of(CASE_WIDTH_MM), part.number_of(CASE_HEIGHT_MM)
            x, y = lock.backset_mm, lock.cylinder_height_mm
            if wide is not None and high is not None and x is not None and y is not None:
                lock_case = Rect(x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)
                for at_x, at_y in corners(lock_case, nut_limits(given.settings)["corner_mm"]):
                    yield Hexagon(held, "nut of the gate lock's bolt", "inside", at_x, at_y)
        elif held.text_of(HEAD) == "hexagon":
            yield from _of_unit(given, fit, held)


def _of_unit(given: OpeningInput, fit: Fit, held: Part) -> Iterator[Hexagon]:
    unit, place = unit_part(given, fit), fit.placement
    if unit is not None and place is not None and place.face in ON_FACE:
        for spot in screw_places(unit, place.width_mm, place.height_mm):
            x, y = place.x_mm + spot[0], place.y_mm + spot[1]
            yield Hexagon(held, "head of the unit's screw", place.face, x, y, own=True)


def swing(given: OpeningInput, fit: Fit, hexagon: Hexagon, limits: Limits) -> Swing | None:
    """Return how far a spanner can be swung on a hexagon; None where it is turned as far as it must be."""
    flats = across_flats_mm(hexagon.part.text_of(SIZE) or "")
    ring = hexagon.part.text_of(TURNED_BY) == "ring"
    needed = limits["ring_swing_deg" if ring else "swing_deg"]
    head = limits["ring_flats" if ring else "jaw_flats"] * flats / 2
    reach, handle = limits["reach_flats"] * flats, _HANDLE_FLATS * flats
    there = list(_beside(given, fit, hexagon, limits["over_mm"]))

    def widest(rects: list[Rect]) -> float:
        if any(_off(rect, hexagon) < head for rect in rects):
            return 0.0
        return widest_swing_deg(hexagon.x, hexagon.y, reach, handle, rects)

    found = widest([rect for _, rect, _ in there])
    if found >= needed:
        return None
    surely = widest([rect for _, rect, needs in there if not needs])
    if surely >= needed:
        return Swing(found, needed, (), tuple(need for _, _, needs in there for need in needs))
    near = tuple(dict.fromkeys(name for name, rect, needs in there if not needs and _off(rect, hexagon) < reach))
    return Swing(surely, needed, near)


def _beside(
    given: OpeningInput, fit: Fit, hexagon: Hexagon, over_mm: float
) -> Iterator[tuple[str, Rect, tuple[str, ...]]]:
    """Yield what stands out of the hexagon's face farther than a spanner passes over: name, place, facts it lacks."""
    for body in bodies_of(given, fit, ("proud", "head")):
        if body.face == hexagon.face and _out(body) > over_mm:
            (x0, y0, _), (x1, y1, _) = body.reach
            yield body.name, Rect(x0, y0, x1, y1), body.needs
    place = fit.placement
    if place is not None and place.face == hexagon.face and not hexagon.own:
        yield "the unit", housing_rect(place, unit_part(given, fit)), ()


def _out(body: Body) -> float:
    (_, _, low), (_, _, high) = body.reach
    return high - low


def _off(rect: Rect, hexagon: Hexagon) -> float:
    x = max(rect.x0 - hexagon.x, hexagon.x - rect.x1, 0.0)
    y = max(rect.y0 - hexagon.y, hexagon.y - rect.y1, 0.0)
    return hypot(x, y)
