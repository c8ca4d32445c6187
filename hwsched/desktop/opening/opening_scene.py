"""The scene of one opening: its views, the things in it with what may be moved, and where a move brings them.

Between what an opening holds and what the drawing shows; no widgets.
"""

from typing import TYPE_CHECKING, Final

from hwsched.desktop.looks.severities import severities_in_words
from hwsched.desktop.opening.drawing_move import Move, Stretch
from hwsched.desktop.opening.drawing_state import Thing, known_things
from hwsched.drawings.drawing import View
from hwsched.drawings.handing import FACES
from hwsched.drawings.layers import LEAD, LOCK, UNIT, hole_thing
from hwsched.kept_sentences import FIT, kept_phrase
from hwsched.language import phrase, to_phrase
from hwsched.operations.findings.checked import Checked
from hwsched.quantities import LengthStyle, format_length
from hwsched.survey import ITEM
from hwsched.values import Fit, Hole, Item, OpeningInput, PointFit, Severity
from hwsched.values.lock_points import leaf_name, lock_item, on_leaf

if TYPE_CHECKING:
    from hwsched.operations.opening.trial_placement import PlaceCosts

_AT_LOCK: Final = to_phrase("it stands where backset and height of the lock say; change these facts")


def scene_of(checked: Checked, number: int, style: LengthStyle) -> tuple[tuple[View, ...], tuple[Thing, ...]]:
    """Draw a lock point of an opening, and name what is drawn."""
    from hwsched.drawings.opening.scene import views_of

    at = checked.shown(number)
    every = [checked.shown(each.given.point.number) for each in checked.points]
    beside = [each for each in every if each.given.point != at.given.point]
    fit = at.fit or Fit("to-measure")
    views = views_of(at.given, fit, style, beside=beside)
    lock = lock_item(at.given)
    things = [*_new(at, fit), *(_named(at.given, item, item is lock) for item in at.given.items)]
    return views, known_things(views, {each.name: each for each in things})


def _new(at: PointFit, fit: Fit) -> list[Thing]:
    parts = {part.role: part.part for part in fit.parts}
    found = [Thing(LEAD, phrase("Lead"), why_not=phrase("its way follows from the places of lock and unit"))]
    lock = next((parts[role] for role in ("lock", "cylinder", "reader") if role in parts), "")
    found.append(Thing(LOCK, phrase("New lock {lock}", lock=lock).strip(), why_not=phrase(_AT_LOCK)))
    place, words = fit.placement, phrase("Unit {part}", part=parts.get("unit", "")).strip()
    if place is not None:
        on_face = place.face in FACES
        why = "" if on_face else phrase("its place follows from the lock; it is not moved by hand")
        face = place.face if on_face else ""
        found.append(Thing(UNIT, words, face, why, by_hand=at.given.placed is not None))
    found += [
        Thing(
            hole_thing(hole),
            _hole_words(hole),
            why_not=phrase("it follows from the places of lock and unit"),
        )
        for hole in fit.holes
    ]
    return found


def _named(given: OpeningInput, item: Item, is_lock: bool) -> Thing:
    from hwsched.rules.solid.footprints import face_of, rectangle

    choice = ITEM.attribute("kind").choice(item.kind or "other")
    words = phrase(choice.label) if choice is not None else (item.kind or phrase("Other"))
    if is_lock or item.kind == "lock":
        return Thing(item.id, words, why_not=phrase(_AT_LOCK))
    where = face_of(item)
    face = "inside" if where == "both" else where
    if face not in FACES or rectangle(item) is None or _toward_hinge(given, face, item=item) is None:
        return Thing(item.id, words, why_not=phrase("its place is not surveyed in full"))
    return Thing(item.id, words, face)


def _toward_hinge(given: OpeningInput, face: str, *, leaf: str = "", item: Item | None = None) -> float | None:
    """Return 1 where the hinge edge is on the right in the view of a face, -1 on the left; None while unknown."""
    from hwsched.drawings.sheet import leaves_on_face

    leaves = leaves_on_face(given, "inside" if face == "inside" else "key")[0]
    for each in leaves:
        if (item is None and leaf in ("", leaf_name(each.leaf))) or (item is not None and on_leaf(item, each.leaf)):
            return each.toward_hinge
    return None


def unit_corner(at: PointFit, move: Move) -> tuple[float, float] | None:
    """Return where a move brings the lower left corner of the unit's plate: from the lock edge, above the floor."""
    place = at.fit.placement if at.fit is not None else None
    sign = _toward_hinge(at.given, move.view, leaf=place.leaf) if place is not None else None
    if place is None or sign is None or place.face != move.view:
        return None
    return place.x_mm + sign * move.dx, place.y_mm + move.dy


def item_centre(at: PointFit, move: Move) -> tuple[float, float] | None:
    """Return where a move brings the middle of an existing item: from the lock edge, above the floor."""
    item = next((each for each in at.given.items if each.id == move.thing), None)
    sign = _toward_hinge(at.given, move.view, item=item) if item is not None else None
    if item is None or sign is None or item.x_mm is None or item.y_mm is None:
        return None
    return item.x_mm + sign * move.dx, item.y_mm + move.dy


def item_sized(at: PointFit, move: Stretch) -> tuple[float, float, float, float] | None:
    """Return width and height that a stretch gives an existing item, and where its middle then is."""
    item = next((each for each in at.given.items if each.id == move.thing), None)
    sign = _toward_hinge(at.given, move.view, item=item) if item is not None else None
    if item is None or sign is None or item.x_mm is None or item.y_mm is None:
        return None
    x0, y0, x1, y1 = move.box
    wide, high = item.width_mm or x1 - x0, item.height_mm or y1 - y0
    across, up = move.edges
    return wide + across * move.dx, high + up * move.dy, item.x_mm + sign * move.dx / 2, item.y_mm + move.dy / 2


def stands_at(at: PointFit, thing: str) -> tuple[float, float] | None:
    """Return the numbers of a thing's place as people type them; None where it has none that can be typed."""
    place = at.fit.placement if at.fit is not None else None
    if thing == UNIT:
        return (place.x_mm, place.y_mm) if place is not None else None
    item = next((each for each in at.given.items if each.id == thing), None)
    return (item.x_mm, item.y_mm) if item is not None and item.x_mm is not None and item.y_mm is not None else None


def cost_words(now: "PlaceCosts", before: "PlaceCosts | None", style: LengthStyle) -> str:
    """Say what a place costs, a line each, and what of it is otherwise than where the unit stands."""
    lines = []
    for title, said, was in (
        (phrase("Lead"), _lead(now, style), _lead(before, style) if before is not None else ""),
        (phrase("Holes"), str(now.holes), str(before.holes) if before is not None else ""),
        (phrase("Findings"), _found(now), _found(before) if before is not None else ""),
    ):
        lines.append(f"{title}: {said}" + (phrase(" (now {was})", was=was) if was and was != said else ""))
    if now.nearest is not None:
        name, free = now.nearest
        lines.append(
            phrase("Nearest: {name}, ", name=name)
            + (phrase("{length} free", length=format_length(free, style)) if free >= 0 else phrase("overlapped"))
        )
    return "\n".join(lines)


def _lead(costs: "PlaceCosts", style: LengthStyle) -> str:
    if costs.lead_mm is None or costs.spare_mm is None:
        return phrase("none")
    spare = format_length(abs(costs.spare_mm), style)
    return f"{format_length(costs.lead_mm, style)}, {spare} {phrase('to spare' if costs.spare_mm >= 0 else 'short')}"


def _found(costs: "PlaceCosts") -> str:
    counted: dict[Severity, int] = {"error": costs.errors, "warning": costs.warnings}
    return ", ".join(severities_in_words(counted)) or phrase("none")


def _hole_words(hole: Hole) -> str:
    name = kept_phrase(hole.name, FIT)
    return phrase("Hole {order}: {name}", order=hole.order, name=name) if hole.order else name
