"""A surface unit on the inside face: every place that the ways to the face allow, best first.

Places are calculated in `calc.placement`; what a unit keeps off stands in `keepouts`; whether a place will do is said
by the rules of the slot.
"""

from collections.abc import Iterator, Mapping, Sequence, Set
from contextlib import suppress
from dataclasses import dataclass, replace
from typing import Final, get_args

from hwsched.attributes.of_parts import CONNECTOR_X_MM, CONNECTOR_Y_MM, PLATE_HEIGHT_MM, PLATE_WIDTH_MM, SLACK_MM
from hwsched.calc.calculator import InputError
from hwsched.calc.opening.placement import (
    KeepOut,
    Pattern,
    PlacementInput,
    PlatePosition,
    Rect,
    check_position,
    nearest_clearance,
    place,
)
from hwsched.fitting.keepouts import (
    SCREW_BESIDE_HOLE,
    has_rounding,
    rounded,
    screw_gap_mm,
    screw_keepouts,
    surroundings,
    swung,
)
from hwsched.fitting.lead import with_lead
from hwsched.fitting.ways import ABOVE, Lean, Way, holes_of, run_points, ways
from hwsched.quantities.adding import added
from hwsched.rules import limits_of, rule_named
from hwsched.rules.carried import Carried, of_centre
from hwsched.rules.last import last
from hwsched.rules.reading import leaf_name, leaf_reach_mm, lock_item, lock_part, stile_mm
from hwsched.rules.rounding import half_unit
from hwsched.rules.solid.bodies import slot_of
from hwsched.rules.solid.cavity import Cavity
from hwsched.rules.solid.clearances import TOUCH_MM, plate_sizes
from hwsched.rules.solid.housing import window_of
from hwsched.rules.solid.screws import Spot, screw_places
from hwsched.rules.wording import in_units
from hwsched.values import Alternative, Fit, HandPlacement, Leaf, OpeningInput, Part, Placement

_PLATE_ON_STILE: Final = rule_named("plate-on-stile")
_PLATE_WITHIN_LEAF: Final = rule_named("plate-within-leaf")

FACE = "inside"
_PAST: Final = ((1.0, 0.0), (0.0, 1.0), (0.5**0.5, 0.5**0.5))
"""Shares of the reach of a round hole by which its centre is past a screw on each axis."""
_NEIGHBOURS = 6
_FINER: Final = 16
"""Stretches into which a way is cut where its best place will not do."""
_SHORTER: Final = (1.0, 0.8, 0.64, 0.51, 0.41, 0.33)
"""Lengths of a slanted bore as shares of those that its way holds: each stretch begins where the next one ends."""
_BEGUN_MM: Final = 101.6
"""How far along a channel's way its hole is looked for first; what is farther off has its own slot, and comes last."""
_SAME_MM: Final = 1e-6


@dataclass(frozen=True, slots=True)
class Housing:
    """What a unit covers: its plate, and its window where that reaches past the plate."""

    size: tuple[float, float]
    """Of the plate."""
    window: Rect
    connector: tuple[float, float]
    left: float
    """How far it reaches past the plate's left edge; 0 or negative."""
    down: float
    right: float
    up: float


@dataclass(frozen=True, slots=True)
class _Question:
    """One unit on one leaf."""

    given: OpeningInput
    bare: Fit
    unit: Part
    leaf: Leaf
    at: Cavity
    housing: Housing
    low: float
    """Leaf's lower end above the floor."""
    asks: tuple[tuple[PlacementInput, tuple[Way, ...]], ...]
    """Ways that share a window, and the place that is asked for."""
    covers: Mapping[Way, Rect]
    """What each way's holes take from the face round the access hole."""


def places(
    given: OpeningInput, bare: Fit, unit: Part, leaf: Leaf, at: Cavity, span: tuple[float, float]
) -> Iterator[tuple[Fit, str]]:
    """Yield partial fits with the unit placed, best place first, each with what was tried; the caller judges them.

    Where nothing is free, what comes nearest is yielded, so that the rules say by how much it does not fit.
    """
    question = _question(given, bare, unit, leaf, at, span)
    if question is None or not question.asks:
        return
    if given.placed is not None and given.placed.face == FACE:
        yield _by_hand(question, given.placed), ""
        return
    found: list[tuple[PlatePosition, Way, PlacementInput]] = []
    why: list[str] = []
    for ask, group in question.asks:
        try:
            result = place(ask)
        except InputError as error:
            why.append(f"The place cannot be worked out: {in_units(given, error)}.")
            continue
        by_name = {way.pattern: way for way in group}
        found += [(each, by_name[each.pattern], ask) for each in result.alternatives]
        if not result.feasible:
            why += [result.reason] if result.reason not in why else []
    loose = _question(given, bare, unit, leaf, at, span, loose=True)
    if loose is not None:
        found += _by_rounding(question, loose, {(way.pattern, way.kind) for _, way, _ in found})
    # Each question was answered by itself; the best of all is found only across them.
    found.sort(key=lambda entry: (entry[0].cost, entry[0].cable_mm))
    # Windows beside several screws may share a place.
    found = list({(way.kind, *_rounded(each)): (each, way, ask) for each, way, ask in found}.values())
    if not found:
        yield from _but_for_unknown(given, bare, unit, leaf, at, span, set())
        nearest = question.bare
        with suppress(InputError):
            nearest = _nearest(question)
        yield nearest, f"{' '.join(why)} At the nearest place: "
        return
    others = [_alternative(question, each) if _is_covered(question, each, way) else None for each, way, _ in found]
    for i, (each, way, ask) in enumerate(found):
        rest = _but(others, others[i] or _alternative(question, each))
        yield _built(question, way, ask, each.plate, each.hole, rest), f"{way.pattern.capitalize()}: "
    had = {(way.kind, *_rounded(each)) for each, way, _ in found}
    # None of them would do: where only screws keep a way from having a place, a shorter one is told of.
    for ask, way, each in _but_for_screws(question, {(way.pattern, way.kind) for _, way, _ in found}):
        yield _built(question, way, ask, each.plate, each.hole), f"{way.pattern.capitalize()}: "
    yield from _but_for_unknown(given, bare, unit, leaf, at, span, had)


def _but_for_unknown(
    given: OpeningInput,
    bare: Fit,
    unit: Part,
    leaf: Leaf,
    at: Cavity,
    span: tuple[float, float],
    had: Set[object],
) -> Iterator[tuple[Fit, str]]:
    """Yield the places that would be there but for what nobody measured: a rule asks for it, and none says no."""
    question = _question(given, bare, unit, leaf, at, span, surely=True)
    if question is None:
        return
    for ask, group in question.asks:
        by_name = {way.pattern: way for way in group}
        with suppress(InputError):
            for each in place(ask).alternatives:
                way = by_name[each.pattern]
                if (way.kind, *_rounded(each)) not in had:
                    yield _built(question, way, ask, each.plate, each.hole), f"{way.pattern.capitalize()}: "


def _by_rounding(
    question: _Question, loose: _Question, had: set[tuple[str, str]]
) -> Iterator[tuple[PlatePosition, Way, PlacementInput]]:
    """Yield places of ways that have none but by the rounding of the survey: a rule says what to measure there."""
    for (ask, group), (asked, _) in zip(question.asks, loose.asks, strict=True):
        lacking = {way.pattern: way for way in group if (way.pattern, way.kind) not in had}
        patterns = tuple(each for each in asked.patterns if each.name in lacking)
        if patterns:
            with suppress(InputError):
                for each in place(replace(asked, patterns=patterns)).alternatives:
                    yield each, lacking[each.pattern], ask


def _but_for_screws(
    question: _Question, had: set[tuple[str, str]]
) -> Iterator[tuple[PlacementInput, Way, PlatePosition]]:
    """Yield the places of ways that had none, were it not for the unit's screws."""
    for ask, group in question.asks:
        free = tuple(each for each in ask.keepouts if each.part is None)
        lacking = {way.pattern: way for way in group if (way.pattern, way.kind) not in had}
        if not lacking or len(free) == len(ask.keepouts):
            continue
        patterns = tuple(each for each in ask.patterns if each.name in lacking)
        asked = replace(ask, keepouts=free, patterns=patterns)
        with suppress(InputError):
            for each in place(asked).alternatives:
                yield ask, lacking[each.pattern], each


def finer_places(
    given: OpeningInput, bare: Fit, unit: Part, leaf: Leaf, at: Cavity, span: tuple[float, float]
) -> Iterator[tuple[Fit, str]]:
    """Yield partial fits with the access hole at each of some places along every way, the best first.

    Of a way `places` gives only what costs the least lead. Where a rule of holes speaks against just that, another
    height may do: what a drill meets in the leaf does not follow from the lead's length.
    """
    if given.placed is not None:
        return
    # Then those that would be there but for what nobody measured: a rule asks for it.
    for surely in (False, True):
        for lean in get_args(Lean):
            question = _question(given, bare, unit, leaf, at, span, surely=surely, lean=lean)
            if question is not None:
                yield from _finer(question, at)


def _finer(question: _Question, at: Cavity) -> Iterator[tuple[Fit, str]]:
    found: list[tuple[PlatePosition, Way, PlacementInput]] = []
    for ask, group in question.asks:
        for way, pattern in zip(group, ask.patterns, strict=True):
            for hole in _along(way, at, question.low):
                asked = replace(ask, patterns=(replace(pattern, hole=hole),))
                with suppress(InputError):
                    found += [(each, way, asked) for each in place(asked).alternatives]
    found.sort(key=lambda entry: (entry[0].cost, entry[0].cable_mm))
    for each, way, asked in found:
        yield _built(question, way, asked, each.plate, each.hole), f"{way.pattern.capitalize()}: "


def _along(way: Way, at: Cavity, low: float) -> Iterator[Rect]:
    """Yield places for the access hole of a way; the ends were tried by `places`, or are tried here."""
    hole = _lowered(way.hole, low)
    x0, y0, x1, y1 = hole.x0, hole.y0, hole.x1, hole.y1
    # What a bored lock's jig holds is how the bore leans: nearer to the cross bore it leans the same, and is shorter.
    edge = (at.top if way.pattern == ABOVE else at.bottom) - low
    for long in _SHORTER if way.kind == "slanted" else (1.0,):
        # A way is best at one end of what is free.
        for share in (step / _FINER for step in range(_FINER + 1)):
            x, y = x0 + share * (x1 - x0), y0 + share * (y1 - y0)
            x, y = (x, y) if long == 1.0 else (at.x + long * (x - at.x), edge + long * (y - edge))
            yield Rect(x, y, x, y)
            if (x0, y0) == (x1, y1):
                break


def housing_of(unit: Part) -> Housing | None:
    """Return what a surface unit covers; None while an attribute is missing."""
    wide, high = unit.number_of(PLATE_WIDTH_MM), unit.number_of(PLATE_HEIGHT_MM)
    cx, cy = unit.number_of(CONNECTOR_X_MM), unit.number_of(CONNECTOR_Y_MM)
    window = window_of(unit)
    if wide is None or high is None or cx is None or cy is None or window is None:
        return None
    return Housing(
        (wide, high),
        window,
        (cx, cy),
        min(0.0, window.x0),
        min(0.0, window.y0),
        max(wide, window.x1),
        max(high, window.y1),
    )


def _question(
    given: OpeningInput,
    bare: Fit,
    unit: Part,
    leaf: Leaf,
    at: Cavity,
    span: tuple[float, float],
    *,
    loose: bool = False,
    surely: bool = False,
    lean: Lean = "usual",
) -> _Question | None:
    """Put the question.

    loose: with as much more room as the rounding of the survey leaves open; surely: with all that may be free where
    nobody measured, None where there is nothing of that.
    """
    housing = housing_of(unit)
    if housing is None or leaf.width_mm is None:
        return None
    low = span[0]
    lock = lock_part(given, bare)
    # Whichever unit it is, the same stands round the same lock; which ways lead from it hangs on the unit's template.
    around = last("surroundings", (given, lock), lambda: surroundings(given, bare, leaf, FACE))
    if surely:
        reach = leaf_reach_mm(given, leaf)
        if not around.unsure or reach is None:
            return None
        around = surroundings(given, bare, leaf, FACE, surely=True)
        span, low = reach, reach[0]
    if loose and not has_rounding(given, leaf, unit, around):
        return None
    pairs = zip(around.keepouts, around.carried, strict=True)
    standing = [(rounded(given, unit, each, carried) if loose else each) for each, carried in pairs]
    keepouts = [swung(given, leaf, unit, each) for each in standing]
    has_stile, stile = stile_mm(leaf)
    if has_stile and stile is not None and stile < leaf.width_mm and _PLATE_ON_STILE.id not in given.settings.rules_off:
        margin = limits_of(_PLATE_ON_STILE, given.settings)["stile_margin_mm"]
        # Beyond the stile stands a lite or a panel, into which no screw may go.
        beyond = KeepOut("edge of the stile", Rect(stile, low, leaf.width_mm, span[1]), margin)
        edge = Carried((("leaf.stile_mm", stile, 1.0),))
        keepouts.append(rounded(given, unit, beyond, edge) if loose else beyond)
    off = (housing.left, housing.down)
    keepouts += [replace(each, part=_moved(each.part, off)) for each in screw_keepouts(given, bare, unit, loose=loose)]
    lowered = tuple(replace(each, rect=_lowered(each.rect, low)) for each in keepouts)
    margin = limits_of(_PLATE_WITHIN_LEAF, given.settings)["edge_margin_mm"]
    if loose:
        # Of the leaf's edges the one by the lock decides: the plate stands by the backset.
        margin = max(margin - half_unit(of_centre(lock_item(given)).across, plate_sizes(unit)).mm, 0.0)
    asks = []
    covered = last("ways", (given, lock, unit, bare.stack, lean), lambda: _covered(given, bare, leaf, at, lean))
    found = [(way, _window(way, housing, cover), cover) for way, cover in covered]
    spots = screw_places(unit, *housing.size) if SCREW_BESIDE_HOLE not in given.settings.rules_off else ()
    beside = screw_gap_mm(given, bare)
    for window, group in _grouped(found, spots, beside):
        ask = PlacementInput(
            leaf_width_mm=leaf.width_mm,
            leaf_height_mm=span[1] - low,
            edge_margin_mm=margin,
            plate_width_mm=housing.right - housing.left,
            plate_height_mm=housing.up - housing.down,
            window=Rect(
                window.x0 - housing.left, window.y0 - housing.down, window.x1 - housing.left, window.y1 - housing.down
            ),
            connector=(housing.connector[0] - housing.left, housing.connector[1] - housing.down),
            cylinder=(at.x, at.y - low),
            keepouts=lowered,
            # A hole that lies nearer than the cylinder's centre line would give a way below zero; length must not be
            # paid back.
            patterns=tuple(Pattern(w.pattern, _lowered(w.hole, low), max(w.base_mm, 0.0), w.cost) for w in group),
        )
        asks.append((ask, group))
    return _Question(given, bare, unit, leaf, at, housing, low, tuple(asks), dict(covered))


def _grouped(
    found: list[tuple[Way, Rect, Rect]], spots: Sequence[Spot], beside: float
) -> list[tuple[Rect, tuple[Way, ...]]]:
    """Put the ways together that leave the plate equally free; of a window with a screw in it, what is beside that."""
    groups: dict[Rect, list[Way]] = {}
    for way, window, cover in found:
        for part in _beside_screws(window, cover, spots, beside):
            groups.setdefault(part, []).append(way)
    return [(window, tuple(group)) for window, group in groups.items()]


def _beside_screws(window: Rect, cover: Rect, spots: Sequence[Spot], beside: float) -> list[Rect]:
    """Return the parts of a window in which no screw meets what is cut round the hole; the whole one where none is."""
    near = [(x, y) for x, y in spots if _strictly_in(window, _grown(cover, (x, y), beside, 1.0, 1.0))]
    if not near:
        return [window]
    if window.y0 == window.y1 and _is_round(cover):
        # The trade fixes the height of the hole on the plate: then what is free across is told exactly.
        reach = cover.x1 + beside
        taken = [(x - half, x + half) for x, y in near for half in [max(reach**2 - (window.y0 - y) ** 2, 0.0) ** 0.5]]
        return [Rect(a, window.y0, b, window.y1) for a, b in _free(window.x0, window.x1, taken)] or [window]
    parts = []
    # Past each screw on one axis, or round a hole's rim between the two.
    for across, up in _PAST if _is_round(cover) else _PAST[:2]:
        around = [_grown(cover, spot, beside, across, up) for spot in near]
        columns = _free(window.x0, window.x1, [(each.x0, each.x1) for each in around if across])
        rows = _free(window.y0, window.y1, [(each.y0, each.y1) for each in around if up])
        parts += [Rect(x0, y0, x1, y1) for x0, x1 in columns for y0, y1 in rows]
    # Where nothing is left the rule says by how much.
    return list(dict.fromkeys(parts)) or [window]


def _is_round(cover: Rect) -> bool:
    sides = (cover.x1, cover.y1, -cover.x0, -cover.y0)
    return max(sides) - min(sides) < _SAME_MM


def _grown(cover: Rect, spot: Spot, beside: float, across: float, up: float) -> Rect:
    """Return where the hole's centre would bring what is cut on a screw, by shares of the reach on each axis."""
    (x, y), (x0, y0, x1, y1) = spot, cover
    return Rect(x - across * (x1 + beside), y - up * (y1 + beside), x + across * (beside - x0), y + up * (beside - y0))


def _strictly_in(a: Rect, b: Rect) -> bool:
    return a.x0 < b.x1 and a.x1 > b.x0 and a.y0 < b.y1 and a.y1 > b.y0


def _free(low: float, high: float, taken: Sequence[tuple[float, float]]) -> list[tuple[float, float]]:
    """Return what of a stretch lies in none of some open stretches."""
    found, at = [], low
    for start, end in sorted(taken):
        if start >= at:
            found.append((at, min(start, high)))
        at = max(at, end)
    if at <= high:
        found.append((at, high))
    return [(a, b) for a, b in found if a <= b]


def _moved(rect: Rect | None, by: tuple[float, float]) -> Rect | None:
    return None if rect is None else Rect(rect.x0 - by[0], rect.y0 - by[1], rect.x1 - by[0], rect.y1 - by[1])


def _window(way: Way, housing: Housing, cover: Rect) -> Rect:
    """Return where on the plate a way's hole may be: within its window, and all of what is cut under the plate."""
    window = housing.window
    wide, high = housing.size
    x0, x1 = max(window.x0, -cover.x0), min(window.x1, wide - cover.x1)
    y0, y1 = max(window.y0, -cover.y0), min(window.y1, high - cover.y1)
    # The trade fixes the plate above the hole in a narrow stile.
    if way.plate_above_mm is not None and y0 <= -way.plate_above_mm <= y1:
        y0 = y1 = -way.plate_above_mm
    if x0 > x1 or y0 > y1:
        # Nowhere is it covered: the rule says by how much, at the place where least sticks out.
        return window
    return Rect(x0, y0, x1, y1)


def _covered(given: OpeningInput, bare: Fit, leaf: Leaf, at: Cavity, lean: Lean) -> list[tuple[Way, Rect]]:
    found = ways(given, bare, leaf, at, FACE)
    if lean != "usual":
        # Only a channel's angle is free; all else has been tried.
        found = tuple(replace(way, lean=lean) for way in found if way.kind == "channel")
    return [(way, _cover(given, bare, way, leaf, at)) for way in found]


def _cover(given: OpeningInput, bare: Fit, way: Way, leaf: Leaf, at: Cavity) -> Rect:
    """Return what a way's holes take from the face round the access hole, wherever that comes to lie."""
    x0 = y0 = x1 = y1 = 0.0
    ends = [(way.hole.x0, way.hole.y0)]
    if way.kind == "slanted":
        # Its angle, and with it the slot, follows from the place.
        ends.append((way.hole.x1, way.hole.y1))
    elif way.kind == "channel":
        # A channel's too. Far from the lock it lies so flat that hardly a plate covers its slot: nobody begins there.
        near, far = (way.hole.y0, way.hole.y1) if way.pattern == ABOVE else (way.hole.y1, way.hole.y0)
        ends = [(way.hole.x0, near), (way.hole.x1, min(max(far, near - _BEGUN_MM), near + _BEGUN_MM))]
    for spot in dict.fromkeys(ends):
        # The last hole on the face is the access hole; what lies behind the lock's own case that covers.
        for hole in holes_of(given, bare, way, leaf, at, spot):
            if hole.face == FACE and hole.from_depth_mm == 0 and (hole.x_mm, hole.y_mm) == spot:
                cut = slot_of(hole)
                x0, x1 = min(x0, cut.x0 - spot[0]), max(x1, cut.x1 - spot[0])
                y0, y1 = min(y0, cut.y0 - spot[1]), max(y1, cut.y1 - spot[1])
    return Rect(x0, y0, x1, y1)


def _lowered(rect: Rect, by: float) -> Rect:
    return Rect(rect.x0, rect.y0 - by, rect.x1, rect.y1 - by)


def _corner(question: _Question, plate: tuple[float, float]) -> tuple[float, float]:
    """Lower left corner of the plate above the floor, from that of the housing above the leaf's lower end."""
    return plate[0] - question.housing.left, plate[1] - question.housing.down + question.low


def _but(others: Sequence[Alternative | None], own: Alternative) -> tuple[Alternative, ...]:
    """Return the other places, each once: where the plate stands the same, the lead's hole makes no other place."""
    kept = {_where(own): own}
    for each in others:
        if each is not None:
            kept.setdefault(_where(each), each)
    return tuple(kept.values())[1:]


def _where(place: Alternative) -> tuple[str, float, float]:
    """Tell places apart: what was worked out on two ways differs in its last digits."""
    return place.pattern, round(place.x_mm, 3), round(place.y_mm, 3)


def _rounded(found: PlatePosition) -> tuple[str, tuple[float, ...]]:
    return found.pattern, tuple(round(each, 4) for each in (*found.plate, *found.hole))


def _is_covered(question: _Question, found: PlatePosition, way: Way) -> bool:
    """Tell whether the plate covers what is cut for the lead: a place of which it does not is none that would do."""
    cover, (wide, high) = question.covers[way], question.housing.size
    x, y = (
        found.hole[0] - found.plate[0] + question.housing.left,
        found.hole[1] - found.plate[1] + question.housing.down,
    )
    return (
        x + cover.x0 >= -TOUCH_MM
        and y + cover.y0 >= -TOUCH_MM
        and x + cover.x1 <= wide + TOUCH_MM
        and y + cover.y1 <= high + TOUCH_MM
    )


def _alternative(question: _Question, found: PlatePosition) -> Alternative:
    x, y = _corner(question, found.plate)
    return Alternative(found.pattern, x, y, round(found.cable_mm, 3), float(int(found.cost)))


def _built(
    question: _Question,
    way: Way,
    ask: PlacementInput,
    plate: tuple[float, float],
    hole: tuple[float, float],
    others: tuple[Alternative, ...] = (),
) -> Fit:
    given, unit, leaf, at = question.given, question.unit, question.leaf, question.at
    x, y = _corner(question, plate)
    spot = (hole[0], hole[1] + question.low)
    # What screws keep off lies in the leaf: the plate's own distances are told.
    around = replace(ask, keepouts=tuple(each for each in ask.keepouts if each.part is None))
    where = Placement(
        leaf=leaf_name(leaf),
        face=FACE,
        pattern=way.pattern,
        x_mm=x,
        y_mm=y,
        width_mm=question.housing.size[0],
        height_mm=question.housing.size[1],
        hole_x_mm=spot[0],
        hole_y_mm=spot[1],
        alternatives=others,
        clearances=tuple((c.name, round(c.clearance_mm, 3)) for c in nearest_clearance(around, plate)[:_NEIGHBOURS]),
    )
    holes = holes_of(given, question.bare, way, leaf, at, spot)
    base = replace(question.bare, placement=where, holes=holes)
    try:
        points = run_points(given, question.bare, way, leaf, at, spot, holes)
    except InputError:
        # A bore that cannot be followed is refused by the rules of holes; a straight line keeps the drawing and the
        # length near the truth.
        points = [(at.x, at.y, at.lead_z), (spot[0], spot[1], 0.0)]
    kind = "round the case" if way.kind == "hollow" and len(points) > 4 else way.kind
    names = ["", *(_stretch(kind, i) for i in range(1, len(points)))]
    end = (x + question.housing.connector[0], y + question.housing.connector[1], 0.0)
    stretches = [*zip(names, points, strict=True), ("behind the plate to the connector", end)]
    return with_lead(given, base, unit, stretches, unit.number_of(SLACK_MM) or 0.0)


_STRETCHES = {
    "square": ("through the hole opposite the cylinder",),
    "hollow": ("into the leaf", "inside the leaf", "through the access hole"),
    "round the case": ("out of the case", "along its key side", "over its end", "through the access hole"),
    "channel": ("inside the lock's pocket", "through the channel", "through the access hole"),
    "slanted": ("inside the cross bore", "through the slanted hole"),
    "surface": ("inside the lock", "out of the lock", "along the face"),
}


def _stretch(kind: str, index: int) -> str:
    names = _STRETCHES[kind]
    return names[min(index, len(names)) - 1]


def _by_hand(question: _Question, placed: HandPlacement) -> Fit:
    """Keep a place chosen by hand, with the way that serves it best; the rules say what is wrong with it."""
    x, y = placed.x_mm + question.housing.left, placed.y_mm + question.housing.down - question.low
    best: tuple[tuple[bool, bool, float, float], Way, PlacementInput, tuple[float, float]] | None = None
    for ask, group in question.asks:
        for way, pattern in zip(group, ask.patterns, strict=True):
            found = check_position(ask, pattern, x, y)
            hole = found.hole or _middle(pattern.hole)
            cable = found.cable_mm if found.cable_mm is not None else 0.0
            # A way that can be drilled at all, then the one that the person named, then as the program would choose.
            rank = (found.hole is None, way.pattern != placed.pattern, pattern.cost, cable)
            if best is None or rank < best[0]:
                best = (rank, way, ask, hole)
    if best is None:
        return question.bare
    built = _built(question, best[1], best[2], (x, y), best[3])
    if built.placement is None:
        return built
    return replace(built, placement=replace(built.placement, source="by-hand"))


def _middle(rect: Rect) -> tuple[float, float]:
    return (rect.x0 + rect.x1) / 2, (rect.y0 + rect.y1) / 2


def _nearest(question: _Question) -> Fit:
    """Put the unit where least is in its way."""
    best: tuple[float, Way, PlacementInput, tuple[float, float], tuple[float, float]] | None = None
    for ask, group in question.asks:
        window = ask.window
        for way, pattern in zip(group, ask.patterns, strict=True):
            for hole in dict.fromkeys(((pattern.hole.x0, pattern.hole.y0), (pattern.hole.x1, pattern.hole.y1))):
                for across in dict.fromkeys((window.x0, (window.x0 + window.x1) / 2, window.x1)):
                    for up in dict.fromkeys((window.y0, window.y1)):
                        plate = (hole[0] - across, hole[1] - up)
                        short = added(max(0.0, c.required_mm - c.clearance_mm) for c in nearest_clearance(ask, plate))
                        # By more than rounding, so that the first of equals stays and the answer does not flicker.
                        if best is None or short < best[0] - 1e-9:
                            best = (short, way, ask, plate, hole)
    if best is None:
        return question.bare
    return _built(question, best[1], best[2], best[3], best[4])
