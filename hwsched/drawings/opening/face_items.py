"""Existing items as they stand on a face, each with words that name it and say what happens to it."""

from hwsched.calc.opening.placement import Rect
from hwsched.drawings.drawing import Callout, Shape
from hwsched.drawings.handing import Face
from hwsched.drawings.layers import of_thing
from hwsched.drawings.opening.face_lock import words_side
from hwsched.drawings.opening.lock_place import LockPlace
from hwsched.drawings.opening.symbols import item_shapes
from hwsched.drawings.sheet import LeafOnSheet
from hwsched.drawings.unknown import known
from hwsched.language import phrase
from hwsched.rules.reading import on_leaf, remains
from hwsched.rules.saying import label_said
from hwsched.rules.solid.footprints import face_of, missing, rectangle
from hwsched.rules.wording import label_of
from hwsched.survey import ITEM
from hwsched.values import Fit, Item, OpeningInput

_DISPOSITION = ITEM.attribute("disposition")


def _name(item: Item, new_cylinder: bool = False) -> str:
    """Name an item with what happens to it; of a lock that is converted by its cylinder alone that comes, not it."""
    choice = ITEM.attribute("kind").choice(item.kind or "other")
    label = phrase(choice.label) if choice else (item.kind or "other")
    if new_cylinder:
        return phrase("{item}: new cylinder", item=label)
    fate = _DISPOSITION.choice(item.disposition) if item.disposition else None
    return phrase("{item}: {fate}", item=label, fate=phrase(fate.label).lower()) if fate else label


def existing_items(
    given: OpeningInput,
    fit: Fit,
    leaves: tuple[LeafOnSheet, ...],
    face: Face,
    place: LockPlace | None,
    region: Rect | None = None,
) -> tuple[list[Shape], list[Shape], list[str]]:
    """Draw existing items of a face.

    Returns
    -------
    gone, kept : list of Shape
        What goes away is drawn over what stays.
    notes : list of str
        What is not drawn, and why.
    """
    gone: list[Shape] = []
    kept: list[Shape] = []
    notes: list[str] = []
    by_cylinder = fit.part("cylinder") is not None and fit.part("lock") is None
    for item in given.items:
        where = face_of(item)
        if where not in (face, "both", "frame") or item.kind is None:
            continue
        on = [leaf for leaf in leaves if on_leaf(item, leaf.leaf)]
        rect = rectangle(item)
        is_lock = item.id in given.point.others or (place is not None and item is place.item)
        if not on or (len(on) > 1 and item.leaf is None):
            notes.append(
                phrase(
                    "{name}, not drawn: needs {label_of}.", name=_name(item), label_of=label_said("existing_item.leaf")
                )
            )
            continue
        if rect is None or not all(known(value) for value in rect):
            if not is_lock and where != "frame":
                needed = ", ".join(label_of(fact) for fact in missing(item)) or phrase("its place and size")
                notes.append(phrase("{name}, not drawn: needs {needed}.", name=_name(item), needed=needed))
            continue
        leaf = on[0]
        if rect.x1 <= rect.x0 or rect.y1 <= rect.y0:
            notes.append(phrase("{name}, not drawn: its footprint has no size.", name=_name(item)))
            continue
        middle_x, middle_y = (rect.x0 + rect.x1) / 2, (rect.y0 + rect.y1) / 2
        outside = not (0 <= middle_x <= leaf.width_mm and leaf.bottom_mm <= middle_y <= leaf.top_mm)
        if outside and where != "frame":
            why = (
                phrase("its height in the leaf is unknown")
                if leaf.broken
                else phrase("its surveyed place is outside of the leaf")
            )
            notes.append(phrase("{name}, not drawn: {why}.", name=_name(item), why=why))
            continue
        ends = sorted((leaf.across(rect.x0), leaf.across(rect.x1)))
        on_sheet = Rect(ends[0], rect.y0, ends[1], rect.y1)
        if region is not None:
            if not _within(on_sheet, region):
                continue
            on_sheet = _clipped(on_sheet, region)
        target = kept if remains(item) else gone
        axis_x = leaf.across(place.x_mm) if place is not None and leaf is leaves[0] else None
        # On a lock its own centre lines and what comes into it would run through the words.
        free = (0.0, 0.0) if is_lock else (on_sheet.x1 - on_sheet.x0, on_sheet.y1 - on_sheet.y0)
        words = Callout(
            (on_sheet.x0 + on_sheet.x1) / 2, (on_sheet.y0 + on_sheet.y1) / 2,
            _name(item, by_cylinder and place is not None and item is place.item), words_side(leaf), free,
        )  # fmt: skip
        target += of_thing((*item_shapes(item, on_sheet, leaf.toward_hinge, axis_x), words), item.id)
    return gone, kept, notes


def _within(rect: Rect, region: Rect) -> bool:
    return rect.x0 < region.x1 and rect.x1 > region.x0 and rect.y0 < region.y1 and rect.y1 > region.y0


def _clipped(rect: Rect, region: Rect) -> Rect:
    return Rect(max(rect.x0, region.x0), max(rect.y0, region.y0), min(rect.x1, region.x1), min(rect.y1, region.y1))
