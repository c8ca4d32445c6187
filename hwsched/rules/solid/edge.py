"""The lock edge of the leaf as a line: what stands in it, and what is left clear for an in-edge unit."""

from hwsched.calc.opening.pocket import EdgeItem
from hwsched.rules.reading import beside_here, leaf_span_mm, lock_item, lock_leaf, on_leaf, remains
from hwsched.rules.solid.footprints import face_of
from hwsched.values import Item, Leaf, OpeningInput

_EDGE_KINDS = ("flush-bolt", "deadbolt", "lock")
"""Items that take up the edge even where the survey names their faces."""


def edge_items(given: OpeningInput, bridge_mm: float = 0.0) -> tuple[tuple[EdgeItem, ...], tuple[str, ...]]:
    """Return what stays in the lock edge besides the converted lock, and the facts missing to place it.

    What takes a pocket of its own at another lock point is kept off by a bridge.
    """
    leaf, lock = lock_leaf(given), lock_item(given)
    items: list[EdgeItem] = []
    needs: list[str] = []
    for item in given.items:
        if item is lock or not remains(item) or (leaf is not None and not on_leaf(item, leaf)):
            continue
        if item.id in given.point.others:
            span = pocket_span(item)
            if span is not None:
                items.append(EdgeItem(f"pocket of the {(item.kind or 'lock').replace('-', ' ')}", *span, bridge_mm))
            else:
                needs += _pocket_needs(item)
            continue
        if face_of(item) != "edge" and item.kind not in _EDGE_KINDS:
            continue
        if item.kind == "hinge":  # stands in the other edge
            continue
        if item.y_mm is None or item.height_mm is None:
            needs += [f"existing_item.{n}" for n in ("y_mm", "height_mm") if getattr(item, n) is None]
            continue
        half = item.height_mm / 2
        items.append(EdgeItem(item.kind or "item", item.y_mm - half, item.y_mm + half))
    for each in beside_here(given):
        place = each.fit.placement if each.fit is not None else None
        if place is not None and place.face == "edge":
            top = place.y_mm + place.height_mm
            items.append(EdgeItem(f"unit of the {each.point.name}", place.y_mm, top, bridge_mm))
    return tuple(items), tuple(dict.fromkeys(needs))


def bridge_is_solid(leaf: Leaf) -> bool:
    """Tell whether two pockets in a leaf's edge have anything between them to drill; a tube is hollow."""
    return leaf.material in ("wood", "mineral-core", "composite")


def lock_pocket_span(given: OpeningInput) -> tuple[float, float] | None:
    """Return the lower and upper end of the lock's own pocket in the edge above the floor [mm]; None while unknown."""
    lock = lock_item(given)
    return None if lock is None else pocket_span(lock)


def pocket_span(lock: Item) -> tuple[float, float] | None:
    """Return the lower and upper end of a lock's pocket in the edge above the floor [mm]; None while unknown."""
    if lock.cylinder_height_mm is None:
        return None
    y = lock.cylinder_height_mm
    if lock.lock_form == "bored":
        bore = lock.cross_bore_mm
        return None if bore is None else (y - bore / 2, y + bore / 2)
    if lock.case_height_mm is None or lock.case_above_mm is None:
        return None
    return y + lock.case_above_mm - lock.case_height_mm, y + lock.case_above_mm


def edge_needs(given: OpeningInput) -> tuple[str, ...]:
    """Name the facts missing to know the clear edge."""
    leaf, lock = lock_leaf(given), lock_item(given)
    needs: list[str] = []
    if leaf is None or leaf.height_mm is None:
        needs.append("leaf.height_mm")
    elif leaf_span_mm(given, leaf) is None:
        needs.append("leaf.undercut_mm")
    if lock is None:
        needs.append("existing_item.lock_form")
    elif lock_pocket_span(given) is None:
        needs += _pocket_needs(lock)
    return (*needs, *edge_items(given)[1])


def _pocket_needs(lock: Item) -> list[str]:
    names = ("cross_bore_mm",) if lock.lock_form == "bored" else ("case_height_mm", "case_above_mm")
    return [f"existing_item.{n}" for n in ("cylinder_height_mm", *names) if getattr(lock, n) is None]


def clear_edge(given: OpeningInput, bridge_mm: float, edge_margin_mm: float) -> float:
    """Return the longest clear stretch of the lock edge [mm], a bridge to the lock's pocket left; 0 while unknown."""
    leaf, own = lock_leaf(given), lock_pocket_span(given)
    span = leaf_span_mm(given, leaf) if leaf is not None else None
    if own is None or span is None:
        return 0.0
    others = ((i.y0 - i.clearance_mm, i.y1 + i.clearance_mm) for i in edge_items(given, bridge_mm)[0])
    taken = sorted([(own[0] - bridge_mm, own[1] + bridge_mm), *others])
    longest, at = 0.0, span[0] + edge_margin_mm
    for low, high in (*taken, (span[1] - edge_margin_mm, span[1])):
        longest = max(longest, low - at)
        at = max(at, high)
    return longest
