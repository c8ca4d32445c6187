"""What stands on a face of the lock's leaf, as rectangles, and which facts are missing to know it.

Here belongs how an existing item becomes a rectangle on a face. Which distance a unit keeps from it is said by the
rules of placement.
"""

from dataclasses import dataclass
from typing import Final

from hwsched.calc.placement import Rect
from hwsched.cases import Case, Fit, Item, Leaf
from hwsched.rules.reading import leaf_span_mm, lock_form, lock_item, lock_leaf, lock_part, on_leaf, remains, stop_side

_ELSEWHERE: Final = {"hinge": "edge", "strike": "frame", "electric-strike": "frame", "electromagnetic-lock": "frame"}
"""Where items stand by their nature while the survey does not say."""
_DESCRIBES_TRIM: Final = ("trim", "lever", "thumb-turn", "exit-device")
"""Items that show what stands round the lock on a face when the lock's own footprint was not taken."""
_DESCRIBES_TURN: Final = ("trim", "thumb-turn")


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


def face_of(item: Item) -> str:
    """Return the face an item stands on; while unknown where its kind stands by nature, else both."""
    return item.face or _ELSEWHERE.get(item.kind or "", "both")


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


def footprints(case: Case, fit: Fit, face: str) -> tuple[Footprint, ...]:
    """List what stands on a face of the lock's leaf after the work, the converted lock's trim included.

    Parameters
    ----------
    case, fit : Case, Fit
        The fit gives the new lock, whose trim counts in place of the old one's.
    face : str
        secured or key.

    Returns
    -------
    tuple of Footprint
        In the survey's order; the lock's trim last.
    """
    leaf = lock_leaf(case)
    lock = lock_item(case)
    found: list[Footprint] = []
    for item in case.items:
        if item is lock or item.kind is None or not remains(item):
            continue
        if leaf is not None and not on_leaf(item, leaf):
            continue
        where = face_of(item)
        if where not in (face, "both"):
            continue
        found.append(_footprint(item))
    if lock is not None and leaf is not None:
        trim = _lock_trim(case, fit, lock, leaf, face, found)
        if trim is not None:
            found.append(trim)
    return tuple(found)


def _footprint(item: Item) -> Footprint:
    rect = rectangle(item)
    kind = item.kind or "other"
    return Footprint(kind, kind.replace("-", " "), rect, () if rect else missing(item))


def _lock_trim(case: Case, fit: Fit, lock: Item, leaf: Leaf, face: str, others: list[Footprint]) -> Footprint | None:
    """Return what stands on the face round the lock itself; None when nothing does."""
    form = lock_form(case)
    if lock.kind == "exit-device":
        return _own(lock, "exit-device", "exit device") if face_of(lock) in (face, "both") else None
    if form == "bored":
        return _new_trim(case, fit, lock, "trim_diameter_mm", "new lock's trim")
    if form == "gate":
        return _gate_case(case, fit, lock)
    if form == "cabinet":
        return _new_trim(case, fit, lock, "thread_diameter_mm", "cabinet bolt", 2.0)
    if form == "reader":
        return None
    if form == "rim" and face == "secured" and not any(o.kind == "exit-device" for o in others):
        return _rim_case(lock)
    return _surveyed_trim(lock, face, others)


def _own(lock: Item, kind: str, name: str) -> Footprint:
    rect = rectangle(lock)
    return Footprint(kind, name, rect, () if rect else missing(lock))


def _surveyed_trim(lock: Item, face: str, others: list[Footprint]) -> Footprint | None:
    where = lock.face or "both"
    if where not in (face, "both"):
        return None
    rect = rectangle(lock)
    if rect is not None:
        return Footprint("lock", "lock's trim", rect)
    if face == "secured" and not any(o.kind in _DESCRIBES_TURN for o in others):
        if lock.thumb_turn is None and lock.lock_form in ("mortise", "euro-profile"):
            return Footprint("thumb-turn", "thumb turn", None, ("existing_item.thumb_turn",))
        if lock.thumb_turn:
            return Footprint("thumb-turn", "thumb turn", None, missing(lock))
    if any(o.kind in _DESCRIBES_TRIM for o in others):
        return None
    side = "trim_secured_mm" if face == "secured" else "trim_key_mm"
    trim = getattr(lock, side)
    if trim is None:
        return Footprint("lock", "lock's trim", None, (f"existing_item.{side}",))
    return Footprint("lock", "lock's trim", None, missing(lock)) if trim > 0 else None


def _new_trim(case: Case, fit: Fit, lock: Item, attribute: str, name: str, factor: float = 1.0) -> Footprint:
    """Return a square round the lock's centre as wide as the new part's trim, its nut for a cabinet bolt."""
    part = lock_part(case, fit)
    x, y = lock.backset_mm, lock.cylinder_height_mm
    needs = []
    if x is None:
        needs.append("existing_item.backset_mm")
    if y is None:
        needs.append("existing_item.cylinder_height_mm")
    size = part.number_of(attribute) if part is not None else None
    if part is not None and size is None:
        needs.append(f"part {part.number}.{attribute}")
    if x is None or y is None or size is None:
        return Footprint("lock", name, None, tuple(needs))
    half = size * factor / 2
    return Footprint("lock", name, Rect(x - half, y - half, x + half, y + half))


def _gate_case(case: Case, fit: Fit, lock: Item) -> Footprint:
    part = lock_part(case, fit)
    x, y = lock.backset_mm, lock.cylinder_height_mm
    if part is None or x is None or y is None:
        needs = [f"existing_item.{n}" for n, v in (("backset_mm", x), ("cylinder_height_mm", y)) if v is None]
        return Footprint("lock", "gate lock's case", None, tuple(needs))
    width, height = part.number_of("case_width_mm"), part.number_of("case_height_mm")
    if width is None or height is None:
        return Footprint("lock", "gate lock's case", None, (f"part {part.number}.case_width_mm",))
    return Footprint("lock", "gate lock's case", Rect(x - width / 2, y - height / 2, x + width / 2, y + height / 2))


def _rim_case(lock: Item) -> Footprint:
    """Return the rim lock's case, which stands on the secured face from the lock edge inward."""
    rect = rectangle(lock)
    if rect is not None:
        return Footprint("lock", "rim lock's case", rect)
    y, above, high, deep = lock.cylinder_height_mm, lock.case_above_mm, lock.case_height_mm, lock.case_depth_mm
    if y is None or above is None or high is None or deep is None:
        names = ("cylinder_height_mm", "case_above_mm", "case_height_mm", "case_depth_mm")
        return Footprint(
            "lock", "rim lock's case", None, tuple(f"existing_item.{n}" for n in names if getattr(lock, n) is None)
        )
    return Footprint("lock", "rim lock's case", Rect(0.0, y + above - high, deep, y + above))


def stop_bands(case: Case, leaf: Leaf, face: str) -> tuple[tuple[Rect, ...], tuple[str, ...]]:
    """Return the bands of a face that the frame's stop hides, and the facts missing to know them.

    A leaf of a pair meets the other leaf at its lock edge, so its stop runs along hinge edge and top only. Cabinets
    close flat against their body: no stop is reckoned with.
    """
    if case.opening.form == "cabinet" or (leaf.material == "glass" and case.opening.frame_material == "none"):
        return (), ()
    stop, side = case.opening.frame_stop_mm, stop_side(case)
    if stop == 0 or (stop is None and case.opening.frame_material == "none") or (side is not None and side != face):
        return (), ()
    needs = [f"opening.{n}" for n, v in (("hand", side), ("frame_stop_mm", stop)) if v is None]
    needs += [f"leaf.{n}" for n in ("width_mm", "height_mm") if getattr(leaf, n) is None]
    span = leaf_span_mm(case, leaf)
    if stop is None or side is None or leaf.width_mm is None or span is None:
        return (), tuple(needs) or ("leaf.undercut_mm",)
    low, top = 0.0, span[1]
    bands = [Rect(leaf.width_mm - stop, low, leaf.width_mm, top), Rect(0.0, top - stop, leaf.width_mm, top)]
    if case.opening.form != "pair":
        bands.append(Rect(0.0, low, stop, top))
    return tuple(bands), ()
