"""What stands new at the other lock points of an opening, as outlines beside the point that is drawn in full."""

from hwsched.calc.opening.placement import Rect
from hwsched.drawings.drawing import Callout, Circle, Shape
from hwsched.drawings.handing import Face
from hwsched.drawings.opening.face_lock import words_side
from hwsched.drawings.opening.lock_place import face_diameter, lock_place
from hwsched.drawings.opening.symbols import box
from hwsched.drawings.sheet import LeafOnSheet
from hwsched.language import phrase
from hwsched.quantities import LengthStyle
from hwsched.rules.reading import lock_leaf
from hwsched.values import PointFit


def outlined(at: PointFit, face: Face, leaves: tuple[LeafOnSheet, ...], style: LengthStyle) -> list[Shape]:
    """Draw the new lock and unit of another lock point as a face shows them.

    Parameters
    ----------
    at : PointFit
        The other point; nothing is drawn of one without a fit.
    face : {"inside", "key"}
        Which face is looked at.
    leaves : tuple of LeafOnSheet
        As they stand on the sheet.
    style : LengthStyle
        How lengths are written.
    """
    given, fit = at.given, at.fit
    here = lock_leaf(given)
    leaf = next((each for each in leaves if each.leaf is here), None)
    if fit is None or leaf is None:
        return []
    shapes: list[Shape] = []
    place = lock_place(given, leaf.leaf, style)[0]
    part, diameter = face_diameter(given, fit)
    seen = part is not None and (face == "key" or part.kind == "bored-lever-lock")
    if place is not None and part is not None and seen:
        x = leaf.across(place.x_mm)
        if diameter is not None:
            shapes.append(Circle(x, place.y_mm, diameter, "outline", "none", f"{part.kind} of the {given.point.name}"))
        shapes.append(
            Callout(
                x,
                place.y_mm,
                phrase("Of the {name}: {number}", name=given.point.name, number=part.number),
                words_side(leaf),
            )
        )
    unit = fit.placement
    if unit is None or unit.face not in ("inside", "key"):
        return shapes
    x0, x1 = sorted((leaf.across(unit.x_mm), leaf.across(unit.x_mm + unit.width_mm)))
    rect = Rect(x0, unit.y_mm, x1, unit.y_mm + unit.height_mm)
    name = phrase("unit of the {name}", name=given.point.name)
    shapes.append(box(rect, "outline" if unit.face == face else "hidden", "none", name))
    if unit.face == face:
        shapes.append(Callout((x0 + x1) / 2, (rect.y0 + rect.y1) / 2, f"U{name[1:]}", words_side(leaf)))
    return shapes
