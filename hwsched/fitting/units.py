"""The unit's slot: which control unit, where on or in the leaf, with which lead and extension.

Places are calculated in `calc`; whether a candidate will do is said by the rules of the slot.
"""

import itertools
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any

from hwsched.calc.cable import route
from hwsched.calc.calculator import InputError
from hwsched.calc.placement import (
    KeepOut,
    Pattern,
    PlacementCase,
    PositionCheck,
    Rect,
    check_position,
    nearest_clearance,
    place,
)
from hwsched.calc.pocket import EdgeItem, PocketCase, pocket
from hwsched.cases import Alternative, CablePath, Case, Fit, Hole, Item, Leaf, Part, Placed, Placement
from hwsched.fitting.candidate import Judged, cost_of, fitted, judged, offered, with_parts
from hwsched.fitting.keepouts import surroundings
from hwsched.fitting.patterns import ABOVE, BELOW, STRAIGHT, LockPlace, lock_place, patterns
from hwsched.fitting.practice import distance_mm, lead_hole
from hwsched.rules import limits_of
from hwsched.rules.clearances import window_of
from hwsched.rules.footprints import rectangle
from hwsched.rules.placement.plate_within_leaf import RULE as PLATE_WITHIN_LEAF
from hwsched.rules.reading import leaf_name, leaf_span_mm, leafless, lock_item, lock_leaf, lock_part, rated, remains
from hwsched.rules.wording import length

Point = tuple[float, float, float]
_FACE = "secured"


@dataclass(frozen=True, slots=True)
class UnitSlot:
    """All candidates of the unit's slot."""

    good: tuple[Judged, ...]
    """Best first."""
    others: tuple[Judged, ...]


def unit_slot(case: Case, base: Fit) -> UnitSlot:
    """Judge every control unit for an opening whose lock is chosen."""
    good: list[Judged] = []
    others: list[Judged] = []
    for unit in offered(case, "unit", "surface-unit", "edge-unit"):
        bare = with_parts(base, fitted(case, "unit", unit, _why(case, unit)))
        first = judged(case, bare, "unit", unit.number, "unit")
        if not first.good:
            others.append(first)
            continue
        for partial in _placed(case, bare, unit):
            found = judged(case, partial, "unit", unit.number, "unit")
            (good if found.good else others).append(found)
    good.sort(key=lambda found: _rank(case, found))
    return UnitSlot(tuple(good), tuple(others))


def _rank(case: Case, found: Judged) -> tuple[Any, ...]:
    fit = found.fit
    unpriced, cost = cost_of(case, fit)
    drilled = sum(hole.count for hole in fit.holes)
    pattern = fit.placement.pattern if fit.placement else ""
    order = {STRAIGHT: 0, ABOVE: 1, BELOW: 2}.get(pattern, 3)
    unit = next(part.part for part in fit.parts if part.role == "unit")
    if case.settings.prefer == "holes":
        return drilled, unpriced, cost, order, unit
    return unpriced, cost, order, drilled, unit


def _why(case: Case, unit: Part) -> str:
    if unit.kind == "edge-unit":
        return "the unit stands in the leaf's edge, beside the lock"
    leaf = lock_leaf(case)
    if leafless(case) or leaf is None:
        return "the unit stands at the wall, near the reader"
    if leaf.construction == "narrow-stile":
        return f"a {unit.text_of('housing')} housing for the stile of {_said(case, leaf.stile_mm)}"
    return (
        f"a {unit.text_of('housing')} housing on the secured side of a {(leaf.material or '').replace('-', ' ')} leaf"
    )


def _said(case: Case, mm: float | None) -> str:
    return "unknown width" if mm is None else length(case, mm)


def _placed(case: Case, bare: Fit, unit: Part) -> Iterator[Fit]:
    leaf, lock = lock_leaf(case), lock_item(case)
    if leafless(case):
        yield _at_wall(case, bare, unit)
        return
    if leaf is None or lock is None:
        return
    at = lock_place(case, leaf, lock)
    span = leaf_span_mm(case, leaf)
    if at is None or span is None or leaf.width_mm is None:
        return
    if unit.kind == "edge-unit":
        yield from _in_edge(case, bare, unit, leaf, lock, at, span)
    else:
        yield from _on_face(case, bare, unit, leaf, lock, at, span)


# --- on a face ----------------------------------------------------------------------------------------------------


def _on_face(
    case: Case, bare: Fit, unit: Part, leaf: Leaf, lock: Item, at: LockPlace, span: tuple[float, float]
) -> Iterator[Fit]:
    size = _plate(unit)
    window = window_of(unit)
    if size is None or window is None or leaf.width_mm is None:
        return
    around = surroundings(case, bare, leaf, _FACE)
    margin = limits_of(PLATE_WITHIN_LEAF, case.settings)["edge_margin_mm"]
    keepouts = around.keepouts
    if leaf.stile_mm is not None and (leaf.construction in ("narrow-stile", "stile-and-rail")):
        keepouts = (*keepouts, KeepOut("edge of the stile", Rect(leaf.stile_mm, span[0], leaf.width_mm, span[1])))
    ways = _glass_ways(leaf, at) if leaf.material == "glass" else patterns(leaf, lock, at)
    # What reaches past the plate, such as a window in a tail, is covered by the unit too.
    left, down = min(0.0, window.x0), min(0.0, window.y0)
    right, up = max(size[0], window.x1), max(size[1], window.y1)
    question = PlacementCase(
        leaf_width_mm=leaf.width_mm,
        leaf_height_mm=span[1] - span[0],
        edge_margin_mm=margin,
        plate_width_mm=right - left,
        plate_height_mm=up - down,
        window=Rect(window.x0 - left, window.y0 - down, window.x1 - left, window.y1 - down),
        connector=(
            (unit.number_of("connector_x_mm") or 0.0) - left,
            (unit.number_of("connector_y_mm") or 0.0) - down,
        ),
        cylinder=(at.x, at.y - span[0]),
        keepouts=tuple(KeepOut(k.name, _lower(k.rect, span[0]), k.clearance_mm) for k in keepouts),
        patterns=tuple(replace(way, hole=_lower(way.hole, span[0])) for way in ways),
    )
    if not question.patterns:
        return
    if case.placed is not None:
        yield from _by_hand(case, bare, unit, leaf, lock, at, question, (left, down), span[0], case.placed)
        return
    try:
        result = place(question)
    except InputError:
        return
    if not result.feasible:
        yield _nearest_try(case, bare, unit, leaf, lock, at, question, (left, down), span[0])
        return
    others = tuple(
        Alternative(p.pattern, p.plate[0] - left, p.plate[1] - down + span[0], p.cable_mm, p.cost)
        for p in result.alternatives
    )
    for found in result.alternatives:
        where = _placement(
            case, unit, leaf, found.pattern, (found.plate[0] - left, found.plate[1] - down + span[0]),
            (found.hole[0], found.hole[1] + span[0]), size,
        )  # fmt: skip
        clear = tuple((c.name, round(c.clearance_mm, 3)) for c in nearest_clearance(question, found.plate)[:6])
        where = replace(where, alternatives=tuple(o for o in others if o.pattern != found.pattern), clearances=clear)
        yield _with_cable(case, bare, unit, leaf, lock, at, where)


def _plate(unit: Part) -> tuple[float, float] | None:
    wide, high = unit.number_of("plate_width_mm"), unit.number_of("plate_height_mm")
    return None if wide is None or high is None else (wide, high)


def _lower(rect: Rect, by: float) -> Rect:
    return Rect(rect.x0, rect.y0 - by, rect.x1, rect.y1 - by)


def _glass_ways(leaf: Leaf, at: LockPlace) -> tuple[Pattern, ...]:
    """On glass nothing is drilled: the lead leaves the lock's patch along the face."""
    room = distance_mm("channel-room")
    return (
        Pattern(ABOVE, Rect(at.x, at.top, at.x, at.top + room), at.top - at.y + at.z, 1.0),
        Pattern(BELOW, Rect(at.x, at.bottom - room, at.x, at.bottom), at.y - at.bottom + at.z, 2.0),
    )


def _placement(
    case: Case,
    unit: Part,
    leaf: Leaf,
    pattern: str,
    corner: tuple[float, float],
    hole: tuple[float, float],
    size: tuple[float, float],
) -> Placement:
    return Placement(
        leaf=leaf_name(leaf),
        face=_FACE,
        pattern=pattern,
        x_mm=round(corner[0], 4),
        y_mm=round(corner[1], 4),
        width_mm=size[0],
        height_mm=size[1],
        hole_x_mm=round(hole[0], 4),
        hole_y_mm=round(hole[1], 4),
    )


def _by_hand(
    case: Case,
    bare: Fit,
    unit: Part,
    leaf: Leaf,
    lock: Item,
    at: LockPlace,
    question: PlacementCase,
    reach: tuple[float, float],
    low: float,
    placed: Placed,
) -> Iterator[Fit]:
    size = _plate(unit)
    if size is None:
        return
    x, y = placed.x_mm + reach[0], placed.y_mm + reach[1] - low
    checks: list[tuple[bool, float, Pattern, PositionCheck]] = []
    for way in question.patterns:
        check = check_position(question, way, x, y)
        wanted = way.name != placed.pattern
        checks.append((wanted, check.cable_mm if check.cable_mm is not None else 1e9, way, check))
    checks.sort(key=lambda entry: (entry[3].hole is None, entry[0], entry[1]))
    _, _, way, check = checks[0]
    hole = check.hole or (way.hole.x0, way.hole.y0)
    where = _placement(case, unit, leaf, way.name, (placed.x_mm, placed.y_mm), (hole[0], hole[1] + low), size)
    clear = tuple((c.name, round(c.clearance_mm, 3)) for c in nearest_clearance(question, (x, y))[:6])
    where = replace(where, source="by-hand", clearances=clear)
    yield _with_cable(case, bare, unit, leaf, lock, at, where)


def _nearest_try(
    case: Case,
    bare: Fit,
    unit: Part,
    leaf: Leaf,
    lock: Item,
    at: LockPlace,
    question: PlacementCase,
    reach: tuple[float, float],
    low: float,
) -> Fit:
    """Put the unit where least is in its way, so that the rules say by how much it does not fit."""
    best: tuple[float, Fit] | None = None
    size = _plate(unit) or (0.0, 0.0)
    window = question.window
    for way in question.patterns:
        for hole in {(way.hole.x0, way.hole.y0), (way.hole.x1, way.hole.y1)}:
            for across in (window.x0, (window.x0 + window.x1) / 2, window.x1):
                for up in (window.y0, window.y1):
                    x, y = hole[0] - across, hole[1] - up
                    check = check_position(question, way, x, y)
                    short = sum(reason.short_mm for reason in check.reasons)
                    if best is not None and short >= best[0]:
                        continue
                    where = _placement(
                        case, unit, leaf, way.name, (x - reach[0], y - reach[1] + low), (hole[0], hole[1] + low), size
                    )  # fmt: skip
                    best = (short, _with_cable(case, bare, unit, leaf, lock, at, where))
    return best[1] if best is not None else bare


# --- cable and holes ----------------------------------------------------------------------------------------------


def _with_cable(case: Case, bare: Fit, unit: Part, leaf: Leaf, lock: Item, at: LockPlace, where: Placement) -> Fit:
    hole = (where.hole_x_mm, where.hole_y_mm)
    connector = (
        where.x_mm + (unit.number_of("connector_x_mm") or 0.0),
        where.y_mm + (unit.number_of("connector_y_mm") or 0.0),
    )
    points: list[Point] = [(at.x, at.y, at.z)]
    names = []
    if where.pattern != STRAIGHT:
        points.append((hole[0], hole[1], at.z))
        names.append("along the leaf from the lock" if leaf.material != "glass" else "from the lock's patch")
    points.append((hole[0], hole[1], 0.0))
    names.append("through the access hole" if leaf.material != "glass" else "to the glass's face")
    points.append((connector[0], connector[1], 0.0))
    names.append("behind the plate to the connector")
    slack = unit.number_of("slack_mm") or 0.0
    with_lead = _lead(case, bare, unit, _apart(points), slack, names)
    return replace(with_lead, placement=where, holes=_holes(leaf, lock, at, where))


def _apart(points: list[Point]) -> list[Point]:
    kept = points[:1]
    for point in points[1:]:
        if max(abs(a - b) for a, b in zip(point, kept[-1], strict=True)) > 1e-6:
            kept.append(point)
    return kept


def _lead(case: Case, bare: Fit, unit: Part, points: list[Point], slack: float, names: list[str]) -> Fit:
    part = lock_part(case, bare)
    lead = part.number_of("lead_mm") if part is not None else None
    if part is None or lead is None:
        return bare
    way = route(points, distance_mm("bend-radius"), slack) if len(points) > 1 else None
    needed = way.length_mm if way is not None else slack
    available = lead
    extended = bare
    if needed > lead:
        longer = _extension(case, part, unit, needed - lead)
        if longer is not None:
            available += longer.number_of("length_mm") or 0.0
            short = length(case, needed - lead)
            extended = with_parts(bare, fitted(case, "lead-extension", longer, f"the lead is {short} short"))
    stretches = [
        sum((a - b) ** 2 for a, b in zip(start, end, strict=True)) ** 0.5 for start, end in itertools.pairwise(points)
    ]
    segments = tuple((name, round(mm, 3)) for name, mm in zip(names, stretches, strict=False))
    path = CablePath(tuple(points), round(needed, 3), available, slack, (*segments, ("slack", slack)))
    return replace(extended, cable=path)


def _extension(case: Case, part: Part, unit: Part, short_mm: float) -> Part | None:
    plug, socket = part.text_of("connector"), unit.text_of("mates_with")
    found = [
        (each.number_of("length_mm") or 0.0, each.number, each)
        for each in offered(case, "lead-extension", "lead-extension")
        if each.text_of("mates_with") == plug and each.text_of("connector") == socket
    ]
    reaching = sorted(entry for entry in found if entry[0] >= short_mm)
    return reaching[0][2] if reaching else None


def _holes(leaf: Leaf, lock: Item, at: LockPlace, where: Placement) -> tuple[Hole, ...]:
    if leaf.material is None or leaf.material == "glass":
        return ()
    sizes = lead_hole(leaf.material)
    if sizes is None:
        return ()
    diameter, pilot, bit = sizes
    relative = (round(where.hole_x_mm - at.x, 4), round(where.hole_y_mm - at.y, 4))
    if lock.lock_form == "bored" and where.pattern != STRAIGHT and leaf.material not in ("hollow-metal", "aluminium"):
        slanted = Hole(
            "channel for the lead", where.leaf, "secured", at.x, at.y, distance_mm("bored-cable-hole"), up_deg=45.0,
            edge_deg=15.0, depth_mm=round(abs(relative[1]) * 1.5, 1), from_cylinder_mm=(0.0, 0.0), tool="twist-drill",
            order=2,
        )  # fmt: skip
        first = Hole(
            "access hole for the lead", where.leaf, where.face, where.hole_x_mm, where.hole_y_mm, diameter, pilot,
            round(at.z, 3), from_cylinder_mm=relative, tool=bit, order=1,
        )  # fmt: skip
        return (first, slanted)
    depth: float | None = round(at.z, 3)
    square = depth
    if where.pattern in (ABOVE, BELOW) and leaf.material in ("wood", "mineral-core", "composite"):
        square = distance_mm("channel-square")
    found = [
        Hole(
            "access hole for the lead",
            where.leaf,
            where.face,
            where.hole_x_mm,
            where.hole_y_mm,
            diameter,
            pilot,
            square,
            from_cylinder_mm=relative,
            tool=bit,
            order=1,
        )
    ]
    if square != depth:
        beyond = abs(relative[1]) - (at.top - at.y if where.pattern == ABOVE else at.y - at.bottom)
        found.append(
            Hole(
                "channel into the lock's pocket",
                where.leaf,
                where.face,
                where.hole_x_mm,
                where.hole_y_mm,
                diameter,
                None,
                round(beyond / 0.984808, 3),
                up_deg=-80.0 if where.pattern == ABOVE else 80.0,
                from_cylinder_mm=relative,
                tool="twist-drill",
                order=2,
            )
        )
    return tuple(found)


# --- in the edge, at the wall -------------------------------------------------------------------------------------


def _in_edge(
    case: Case, bare: Fit, unit: Part, leaf: Leaf, lock: Item, at: LockPlace, span: tuple[float, float]
) -> Iterator[Fit]:
    part = lock_part(case, bare)
    long, deep, wide = (unit.number_of(f"pocket_{name}_mm") for name in ("length", "depth", "width"))
    if part is None or long is None or deep is None or wide is None or leaf.thickness_mm is None:
        return
    lead = part.number_of("lead_mm")
    stile = leaf.stile_mm if leaf.construction in ("narrow-stile", "stile-and-rail") else leaf.width_mm
    question = PocketCase(
        leaf_mm=leaf.thickness_mm,
        leaf_height_mm=span[1] - span[0],
        stile_mm=stile or 0.0,
        lock_y0=at.bottom - span[0],
        lock_y1=at.top - span[0],
        length_mm=long,
        depth_mm=deep,
        width_mm=wide,
        bridge_mm=distance_mm("pocket-bridge"),
        hand_mm=unit.number_of("service_mm") or 0.0,
        lead_from_y=at.top - span[0],
        lead_mm=lead,
        lead_before_mm=at.top - at.y,
        connector_mm=unit.number_of("connector_y_mm") or 0.0,
        side_wall_mm=distance_mm("pocket-wall"),
        back_wall_mm=distance_mm("pocket-back"),
        items=tuple(_edge_items(case, lock, span[0])),
        rated=rated(case),
    )
    try:
        result = pocket(question)
    except InputError:
        return
    spot = result.best
    if spot is None:
        return
    low = spot.y0 + span[0]
    where = Placement(
        leaf_name(leaf), "edge", "in-edge", 0.0, round(low, 4), deep, long, 0.0,
        round(low if spot.side == "above" else low + long, 4),
    )  # fmt: skip
    enter = low if spot.side == "above" else low + long
    inside = enter + (question.connector_mm if spot.side == "above" else -question.connector_mm)
    points = _apart([(at.x, at.y, at.z), (deep, enter, at.z), (deep, inside, at.z)])
    segments = (("from the lock into the pocket", round(spot.lead_needed_mm - deep - question.hand_mm, 3)),
                ("whole depth of the pocket", deep), ("a hand's allowance", question.hand_mm))  # fmt: skip
    path = CablePath(tuple(points), round(spot.lead_needed_mm, 3), lead or 0.0, question.hand_mm, segments)
    hole = Hole(
        "pocket for the unit, mortised", leaf_name(leaf), "lock-edge", 0.0, round(low + long / 2, 3), wide,
        depth_mm=deep, from_cylinder_mm=(round(-at.x, 4), round(low + long / 2 - at.y, 4)), tool="mortiser", order=1,
    )  # fmt: skip
    yield replace(bare, placement=where, cable=path, holes=(hole,))


def _edge_items(case: Case, lock: Item, low: float) -> Iterator[EdgeItem]:
    for item in case.items:
        if item is lock or item.face != "edge" or not remains(item):
            continue
        rect = rectangle(item)
        if rect is not None:
            yield EdgeItem(item.kind or "item", rect.y0 - low, rect.y1 - low)


def _at_wall(case: Case, bare: Fit, unit: Part) -> Fit:
    """At a lift or a turnstile the unit stands at the wall beside the reader; only the lead's length is known."""
    lock = lock_item(case)
    size = _plate(unit) or (unit.number_of("pocket_depth_mm") or 0.0, unit.number_of("pocket_length_mm") or 0.0)
    high = (lock.cylinder_height_mm if lock else None) or 0.0
    where = Placement("", "wall", "beside", 0.0, high - size[1] / 2, size[0], size[1], size[0] / 2, high)
    return replace(bare, placement=where)
