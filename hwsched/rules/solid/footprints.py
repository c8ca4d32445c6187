"""What stands on a face of the lock's leaf, as rectangles, and which facts are missing to know it.

Here belongs how an existing item becomes a rectangle on a face. Which distance a unit keeps from it is said by the
rules of placement.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Final

from hwsched.attributes.of_parts import (
    CASE_HEIGHT_MM,
    CASE_WIDTH_MM,
    DEPTH_MM,
    THREAD_DIAMETER_MM,
    THUMB_TURN,
    TRIM_DIAMETER_MM,
    NumberName,
)
from hwsched.calc.opening.placement import Rect
from hwsched.rules.carried import NOTHING, Carried, of_centre, of_item
from hwsched.rules.last import last
from hwsched.rules.reading import (
    KIND_OF_FORM,
    at_point,
    beside_here,
    leaf_reach_mm,
    leaf_span_mm,
    lock_form,
    lock_item,
    lock_leaf,
    lock_part,
    on_leaf,
    other_locks,
    remains,
    stop_side,
    unit_part,
)
from hwsched.rules.solid.exit_devices import device_rects, devices
from hwsched.rules.solid.housing import housing_rect
from hwsched.rules.solid.turns import turn_limits
from hwsched.values import Fit, Item, Leaf, LockPoint, OpeningInput

_ELSEWHERE: Final = {"hinge": "edge", "strike": "frame", "electric-strike": "frame", "electromagnetic-lock": "frame"}
"""Where items stand by their nature while the survey does not say."""
_ON_A_SIDE: Final = ("release-sensor", "release-button")
"""Kinds whose face is the side of the opening on which they hang, over or beside it: never on the leaf."""
_DESCRIBES_TRIM: Final = ("trim", "lever", "thumb-turn", "exit-device")
"""Items that show what stands round the lock on a face when the lock's own footprint was not taken."""
_DESCRIBES_TURN: Final = ("trim", "thumb-turn")
_SHOWS_TRIM: Final = ("trim", "exit-device")
"""Items that show how far the lock's trim reaches: a lever or turn stands on it, and tells nothing of it."""


@dataclass(frozen=True, slots=True)
class Footprint:
    """One thing that stands on the face."""

    kind: str
    """Kind of existing item."""
    name: str
    """As findings name it."""
    rect: Rect | None
    """None: it stands there, but where is unknown."""
    needs: tuple[str, ...] = ()
    other: bool = False
    """Whether it is the trim of a lock at another lock point."""
    perhaps: bool = False
    """Whether it may as well not stand there: nobody told on which face it does, or what `needs` names."""
    carried: Carried = NOTHING
    """Facts by which it stands there."""
    proud_mm: float | None = None
    """How far it stands out of the face; None: nobody measured it."""


def face_of(item: Item) -> str:
    """Return the face an item stands on; while unknown where its kind stands by nature, else both."""
    if item.kind in _ON_A_SIDE:
        return "frame"
    # Unknown counts as both faces: what may stand there is kept clear of.
    return item.face or _ELSEWHERE.get(item.kind or "", "both")


def face_unknown(item: Item) -> bool:
    """Tell whether nobody told on which face an item stands, and its kind does not say so either."""
    return item.face is None and item.kind not in _ELSEWHERE


def rectangle(item: Item) -> Rect | None:
    """Return an item's footprint; None while a number of it is missing."""
    x, y, w, h = item.x_mm, item.y_mm, item.width_mm, item.height_mm
    if x is None or y is None or w is None or h is None:
        return None
    return Rect(x - w / 2, y - h / 2, x + w / 2, y + h / 2)


def missing(item: Item) -> tuple[str, ...]:
    """Name the numbers that a footprint lacks."""
    return tuple(
        f"existing_item.{name}" for name in ("x_mm", "y_mm", "width_mm", "height_mm") if getattr(item, name) is None
    )


def footprints(given: OpeningInput, fit: Fit, face: str) -> tuple[Footprint, ...]:
    """List what stands on a face of the lock's leaf after the work, the trim of every converted lock included.

    Parameters
    ----------
    given, fit : OpeningInput, Fit
        The fit gives the new lock, whose trim counts in place of the old one's.
    face : str
        inside or key.

    Returns
    -------
    tuple of Footprint
        In the survey's order; the lock's trim after them, then what stands at the leaf's other lock points.
    """
    # Of the fit only its lock counts: rules ask one after the other, at each place that is tried.
    return last(f"footprints {face}", (given, fit.parts), lambda: _footprints(given, fit, face))


def _footprints(given: OpeningInput, fit: Fit, face: str) -> tuple[Footprint, ...]:
    leaf = lock_leaf(given)
    lock = lock_item(given)
    others = other_locks(given)
    found: list[Footprint] = []
    for item in given.items:
        if item is lock or item.id in given.point.others or item.kind is None or not remains(item):
            continue
        if leaf is not None and not on_leaf(item, leaf):
            continue
        where = face_of(item)
        if where not in (face, "both"):
            continue
        found.append(_footprint(item))
    if lock is not None and leaf is not None:
        trim = _lock_trim(given, fit, lock, leaf, face, _at_lock(lock, others, found))
        if trim is not None:
            found.append(trim)
        turn = _lock_turn(given, fit, lock, face, found)
        if turn is not None:
            found.append(turn)
    if leaf is not None:
        found += device_rods(given, leaf, face)
    if others and leaf is not None:
        found += [*_other_trims(given, leaf, face, others, tuple(found)), *_other_units(given, face)]
    return tuple(found)


def _other_trims(
    given: OpeningInput, leaf: Leaf, face: str, others: tuple[Item, ...], found: tuple[Footprint, ...]
) -> Iterable[Footprint]:
    """Yield what stands on the face round the locks of the leaf's other lock points."""
    fits = {each.point.item_id: each.fit for each in beside_here(given)}
    for item in others:
        # Any other identifier keeps the case one of several points.
        there = replace(given, point=LockPoint(item_id=item.id, others=("",)), beside=())
        if lock_leaf(there) is leaf:
            fit = fits.get(item.id) or Fit("to-measure")
            rest = [lock_item(given), *(each for each in others if each is not item)]
            trim = _lock_trim(there, fit, item, leaf, face, _at_lock(item, rest, found))
            if trim is not None:
                yield replace(trim, name=f"{(item.kind or 'lock').replace('-', ' ')}: {trim.name}", other=True)


def _at_lock(lock: Item, others: Iterable[Item | None], found: Iterable[Footprint]) -> list[Footprint]:
    """Leave out what describes the trim of another lock of the leaf: it stands nearer to that one."""
    heights = [item.cylinder_height_mm for item in others if item is not None]
    own = lock.cylinder_height_mm

    def here(each: Footprint) -> bool:
        if each.kind not in _DESCRIBES_TRIM or each.rect is None or own is None:
            return True
        middle = (each.rect.y0 + each.rect.y1) / 2
        return all(high is None or abs(middle - own) <= abs(middle - high) for high in heights)

    return [each for each in found if here(each)]


def device_rods(given: OpeningInput, leaf: Leaf, face: str) -> Iterable[Footprint]:
    """Yield the rods and latches that exit devices have on a face, and what is not told of them."""
    for item in devices(given, leaf):
        if face_of(item) not in (face, "both"):
            continue
        span = leaf_span_mm(given, leaf)
        for name, rect, needs, perhaps in device_rects(item, rectangle(item), span):
            unsure = face_unknown(item)
            line = Carried((("existing_item.rod_x_mm", item.rod_x_mm, 1.0),), of_item(item).up)
            perhaps = rect is not None and (perhaps or unsure)
            proud = item.projection_mm
            yield Footprint("exit-device", name, rect, needs, perhaps=perhaps, carried=line, proud_mm=proud)


def _other_units(given: OpeningInput, face: str) -> Iterable[Footprint]:
    """Yield the units that earlier lock points of the leaf have on the face."""
    for each in beside_here(given):
        place = each.fit.placement if each.fit is not None else None
        if each.fit is not None and place is not None and place.face == face:
            unit = unit_part(at_point(given, each), each.fit)
            proud = unit.number_of(DEPTH_MM) if unit is not None else None
            yield Footprint("unit", f"unit of the {each.point.name}", housing_rect(place, unit), proud_mm=proud)


def _footprint(item: Item) -> Footprint:
    rect = rectangle(item)
    kind = item.kind or "other"
    needs = () if rect else missing(item)
    name, perhaps = kind.replace("-", " "), face_unknown(item)
    return Footprint(kind, name, rect, needs, perhaps=perhaps, carried=of_item(item), proud_mm=item.projection_mm)


def _lock_trim(
    given: OpeningInput, fit: Fit, lock: Item, leaf: Leaf, face: str, others: list[Footprint]
) -> Footprint | None:
    """Return what stands on the face round the lock itself; None when nothing does."""
    form = lock_form(given)
    if lock.kind == "exit-device":
        return _own(lock, "exit-device", "exit device") if face_of(lock) in (face, "both") else None
    if form == "bored":
        return _new_trim(given, fit, lock, TRIM_DIAMETER_MM, "new lock's trim")
    if form == "gate":
        return _gate_case(given, fit, lock)
    if form == "cabinet":
        # A nut on the thread is taken as twice its diameter across.
        return _new_trim(given, fit, lock, THREAD_DIAMETER_MM, "cabinet bolt", 2.0)
    if form == "reader":
        return None
    if form == "rim" and face == "inside":
        own = _rim_case(lock)
        # With an exit device the rim cylinder works the device: its case is asked for by itself only where it was
        # measured, and then stands there whatever footprint the device was given.
        if own.rect is not None or not any(o.kind == "exit-device" for o in others):
            return own
    return _surveyed_trim(lock, face, others)


def _lock_turn(given: OpeningInput, fit: Fit, lock: Item, face: str, found: list[Footprint]) -> Footprint | None:
    """Return the turn of a lock or new cylinder that is part of its trim, with fingers round it; None without one."""
    part, x, y = lock_part(given, fit), lock.backset_mm, lock.cylinder_height_mm
    turned = lock.thumb_turn or (part is not None and part.flag_of(THUMB_TURN))
    if face != "inside" or not turned or lock.lock_form not in ("mortise", "euro-profile") or x is None or y is None:
        return None
    # What was surveyed by itself stands where it was measured; without any place the trim is asked for.
    if any(each.kind == "thumb-turn" for each in found):
        return None
    half = turn_limits(given.settings)["fingers_mm"] / 2
    rect = Rect(x - half, y - half, x + half, y + half)
    # A plate as broad as that, or broader, leaves the room by itself.
    if any(each.rect is not None and _holds(each.rect, rect) for each in found):
        return None
    return Footprint("thumb-turn", "thumb turn", rect, carried=of_centre(lock))


def _holds(outer: Rect, inner: Rect) -> bool:
    return outer.x0 <= inner.x0 and inner.x1 <= outer.x1 and outer.y0 <= inner.y0 and inner.y1 <= outer.y1


def _own(lock: Item, kind: str, name: str) -> Footprint:
    rect = rectangle(lock)
    needs = () if rect else missing(lock)
    return Footprint(kind, name, rect, needs, carried=of_item(lock), proud_mm=lock.projection_mm)


def _surveyed_trim(lock: Item, face: str, others: list[Footprint]) -> Footprint | None:
    where = lock.face or "both"
    if where not in (face, "both"):
        return None
    rect = rectangle(lock)
    if rect is not None:
        return Footprint("lock", "lock's trim", rect, carried=of_item(lock))
    if face == "inside" and not any(o.kind in _DESCRIBES_TURN for o in others):
        # Whether a turn stands there decides where a unit can: unknown is asked, not taken as none.
        if lock.thumb_turn is None and lock.lock_form in ("mortise", "euro-profile"):
            return Footprint("thumb-turn", "thumb turn", None, ("existing_item.thumb_turn",))
        if lock.thumb_turn:
            return Footprint("thumb-turn", "thumb turn", None, missing(lock))
    # What was surveyed by itself is not asked for a second time as the lock's own trim.
    if any(o.kind in _SHOWS_TRIM for o in others):
        return None
    side = "trim_inside_mm" if face == "inside" else "trim_key_mm"
    trim = getattr(lock, side)
    if trim is None:
        return Footprint("lock", "lock's trim", None, (f"existing_item.{side}",))
    return Footprint("lock", "lock's trim", None, missing(lock)) if trim > 0 else None


def _new_trim(
    given: OpeningInput, fit: Fit, lock: Item, attribute: NumberName, name: str, factor: float = 1.0
) -> Footprint:
    """Return a square round the lock's centre as wide as the new part's trim, its nut for a cabinet bolt."""
    part = lock_part(given, fit)
    x, y = lock.backset_mm, lock.cylinder_height_mm
    needs = []
    if x is None:
        needs.append("existing_item.backset_mm")
    if y is None:
        needs.append("existing_item.cylinder_height_mm")
    size = part.number_of(attribute) if part is not None else _widest(given, attribute) if given.point.others else None
    if part is not None and size is None:
        needs.append(f"part {part.number}.{attribute}")
    if x is None or y is None or size is None:
        return Footprint("lock", name, None, tuple(needs))
    half = size * factor / 2
    return Footprint("lock", name, Rect(x - half, y - half, x + half, y + half), carried=of_centre(lock))


def _widest(given: OpeningInput, attribute: NumberName) -> float | None:
    """Return the most that a lock of the point's form takes on a face, whichever it will be; None while unknown."""
    offered = given.catalogue.of_kind(KIND_OF_FORM.get(lock_form(given) or "", ""))
    sizes = [size for part in offered if (size := part.number_of(attribute)) is not None]
    return max(sizes, default=None)


def _gate_case(given: OpeningInput, fit: Fit, lock: Item) -> Footprint:
    part = lock_part(given, fit)
    x, y = lock.backset_mm, lock.cylinder_height_mm
    if part is None or x is None or y is None:
        needs = [f"existing_item.{n}" for n, v in (("backset_mm", x), ("cylinder_height_mm", y)) if v is None]
        return Footprint("lock", "gate lock's case", None, tuple(needs))
    width, height = part.number_of(CASE_WIDTH_MM), part.number_of(CASE_HEIGHT_MM)
    if width is None or height is None:
        return Footprint("lock", "gate lock's case", None, (f"part {part.number}.case_width_mm",))
    rect = Rect(x - width / 2, y - height / 2, x + width / 2, y + height / 2)
    return Footprint("lock", "gate lock's case", rect, carried=of_centre(lock))


def _rim_case(lock: Item) -> Footprint:
    """Return the rim lock's case, which stands on the inside face from the lock edge inward."""
    rect = rectangle(lock)
    if rect is not None:
        return Footprint("lock", "rim lock's case", rect, carried=of_item(lock))
    y, above, high, deep = lock.cylinder_height_mm, lock.case_above_mm, lock.case_height_mm, lock.case_depth_mm
    if y is None or above is None or high is None or deep is None:
        names = ("cylinder_height_mm", "case_above_mm", "case_height_mm", "case_depth_mm")
        return Footprint(
            "lock", "rim lock's case", None, tuple(f"existing_item.{n}" for n in names if getattr(lock, n) is None)
        )
    return Footprint(
        "lock", "rim lock's case", Rect(0.0, y + above - high, deep, y + above), carried=rim_case_carried(lock)
    )


def rim_case_carried(lock: Item) -> Carried:
    """Return the facts of a rim lock's case: from the lock edge, and from its cylinder."""
    up = (
        *of_centre(lock).up,
        ("existing_item.case_above_mm", lock.case_above_mm, 1.0),
        ("existing_item.case_height_mm", lock.case_height_mm, 1.0),
    )
    return Carried((("existing_item.case_depth_mm", lock.case_depth_mm, 1.0),), up)


def stop_carried(given: OpeningInput, leaf: Leaf, band: Rect) -> Carried:
    """Return the facts of one band that the frame's stop hides."""
    stop = (("opening.frame_stop_mm", given.opening.frame_stop_mm, 1.0),)
    # The upright at the lock edge is there whatever the leaf measures.
    across = () if band.x0 == 0.0 else (("leaf.width_mm", leaf.width_mm, 1.0),)
    top = (("leaf.height_mm", leaf.height_mm, 1.0), ("leaf.undercut_mm", leaf.undercut_mm, 1.0))
    return Carried((*stop, *across), (*stop, *top))


def stop_bands(
    given: OpeningInput, leaf: Leaf, face: str, *, surely: bool = False
) -> tuple[tuple[Rect, ...], tuple[str, ...]]:
    """Return the bands of a face that the frame's stop hides, and the facts missing to know them.

    surely: of a leaf whose undercut nobody measured as high as they may be, else as low.

    A leaf of a pair meets the other leaf at its lock edge, so its stop runs along hinge edge and top only. Cabinets
    close flat against their body: no stop is reckoned with.
    """
    if given.opening.form == "cabinet" or (leaf.material == "glass" and given.opening.frame_material == "none"):
        return (), ()
    stop, side = given.opening.frame_stop_mm, stop_side(given)
    # The other face opens away from the stop and has no hidden band, whatever the stop measures.
    if stop == 0 or (stop is None and given.opening.frame_material == "none") or (side is not None and side != face):
        return (), ()
    needs = [f"opening.{n}" for n, v in (("hand", side), ("frame_stop_mm", stop)) if v is None]
    needs += [f"leaf.{n}" for n in ("width_mm", "height_mm") if getattr(leaf, n) is None]
    span = leaf_reach_mm(given, leaf) if surely else leaf_span_mm(given, leaf)
    if stop is None or side is None or leaf.width_mm is None or span is None:
        return (), tuple(needs) or ("leaf.undercut_mm",)
    low, top = 0.0, span[1]
    bands = [Rect(leaf.width_mm - stop, low, leaf.width_mm, top), Rect(0.0, top - stop, leaf.width_mm, top)]
    # A pair's leaves meet each other at the lock edge: no stop stands there.
    if given.opening.form != "pair":
        bands.append(Rect(0.0, low, stop, top))
    return tuple(bands), ()
