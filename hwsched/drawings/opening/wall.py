"""Openings without a leaf: a reader at a lift or a turnstile, drawn as plates on a wall."""

from hwsched.attributes.of_parts import FACE_HEIGHT_MM, FACE_WIDTH_MM
from hwsched.calc.opening.placement import Rect
from hwsched.drawings.conventions import FIRST_DIMENSION_MM
from hwsched.drawings.dimensions import stack_vertical
from hwsched.drawings.drawing import Callout, Circle, Dimension, Drawing, Line, Shape, Text
from hwsched.drawings.handing import Face
from hwsched.drawings.not_drawn import unknown_drawing
from hwsched.drawings.opening.hole_words import size_words
from hwsched.drawings.opening.symbols import box
from hwsched.drawings.unknown import known, positive
from hwsched.language import phrase
from hwsched.quantities import LengthStyle, format_length
from hwsched.rules.reading import in_role, lock_item, unit_part
from hwsched.rules.saying import label_said
from hwsched.rules.wording import aside_words
from hwsched.values import Fit, OpeningInput

_AROUND_MM = 220.0
"""Of the wall, so much is shown beside what is mounted."""
TITLES = {"key": "Wall, reader side", "inside": "Wall, unit side"}


def wall(given: OpeningInput, fit: Fit, face: Face, style: LengthStyle) -> Drawing:
    """Draw the reader (key side) or the unit (inside) of an opening without a leaf on its wall.

    x counts from the reader's centre, to the right as the unit's side is seen; the reader's side is its mirror image.
    """
    title = TITLES[face]
    lock = lock_item(given)
    height = lock.cylinder_height_mm if lock is not None else None
    if not positive(height):
        return unknown_drawing(
            title, [phrase("unknown: needs {label_of}", label_of=label_said("existing_item.cylinder_height_mm"))]
        )
    mirror = 1.0 if face == "inside" else -1.0
    shapes: list[Shape] = []
    notes: list[str] = []
    rects: list[Rect] = []
    if face == "key":
        reader = in_role(given, fit, "reader")
        wide = reader.number_of(FACE_WIDTH_MM) if reader is not None else None
        tall = reader.number_of(FACE_HEIGHT_MM) if reader is not None else None
        if reader is not None and positive(wide) and positive(tall):
            rect = Rect(-wide / 2, height - tall / 2, wide / 2, height + tall / 2)
            rects.append(rect)
            shapes += [
                box(rect, "new", "new", "reader"),
                Callout(0.0, height + tall / 4, phrase("New reader {number}", number=reader.number), "right"),
            ]
        elif reader is not None:
            notes.append(
                phrase("The reader's face is not drawn: needs the face size of part {number}.", number=reader.number)
            )
    aside = given.opening.reader_aside_mm
    entrance = None if aside is None else -aside
    if face == "key" and entrance is None:
        # Seen from there one measures it.
        notes.append(phrase("The entrance is not drawn: {aside}.", aside=aside_words(given)))
    shapes += _unit(given, fit, mirror, face, rects)
    for hole in fit.holes:
        if hole.face != "wall" or hole.by_template or hole.count > 1 or hole.diameter_mm <= 0:
            continue
        x = hole.x_mm * mirror
        shapes.append(Circle(x, hole.y_mm, hole.diameter_mm, "new" if face == "key" else "hidden", "hole", hole.name))
        if face == "key":
            shapes.append(Callout(x, hole.y_mm, f"Hole {size_words(hole, style)}", "right"))
    x0 = min([-60.0, *(r.x0 for r in rects)]) - _AROUND_MM
    x1 = max([60.0, *(r.x1 for r in rects)]) + _AROUND_MM
    if face == "key" and entrance is not None:
        x0, x1 = min(x0, entrance - 60.0), max(x1, entrance + 60.0)
    top = max([height + 60.0, *(r.y1 for r in rects)]) + _AROUND_MM
    shapes = [
        box(Rect(x0, 0.0, x1, top), "thin", "leaf", "wall"),
        Line(((x0 - 60, 0.0), (x1 + 60, 0.0)), "outline", name="finished floor"),
        *shapes,
        Line(((x0, height), (60.0, height)), "centre", name="reader centre line"),
        Line(((0.0, height - 60.0), (0.0, height + 60.0)), "centre"),
        *stack_vertical(x0, -1.0, [(0.0, height, format_length(height, style))]),
    ]
    if face == "key" and entrance is not None:
        shapes += [
            Line(((entrance, 0.0), (entrance, top)), "outline", name="edge of the entrance"),
            Callout(entrance, top - 60.0, phrase("Edge of the entrance"), "left" if entrance < 0 else "right"),
            Dimension(0.0, 0.0, entrance, 0.0, -FIRST_DIMENSION_MM if entrance > 0 else FIRST_DIMENSION_MM,
                      format_length(abs(entrance), style), "horizontal"),
        ]  # fmt: skip
    unit = fit.placement
    if unit is not None and unit.face == "wall" and face == "inside":
        x = unit.x_mm * mirror
        shapes += [
            *stack_vertical(x1, 1.0, [(0.0, unit.y_mm, format_length(unit.y_mm, style))]),
            Dimension(0.0, 0.0, x, 0.0, -FIRST_DIMENSION_MM if x > 0 else FIRST_DIMENSION_MM,
                      format_length(abs(unit.x_mm), style), "horizontal"),
        ]  # fmt: skip
    if unit is None:
        shapes.append(
            Text((x0 + x1) / 2, top / 2, phrase("No unit placed") if face == "inside" else "", "label", "centre")
        )
    notes.append(phrase("The wall is drawn only about what is mounted on it."))
    return Drawing(title, tuple(shapes), (x0, 0.0, x1, top), tuple(notes))


def _unit(given: OpeningInput, fit: Fit, mirror: float, face: Face, rects: list[Rect]) -> list[Shape]:
    unit = fit.placement
    if unit is None or unit.face != "wall":
        return []
    values = (unit.x_mm, unit.y_mm, unit.width_mm, unit.height_mm)
    if not all(known(value) for value in values):
        return []
    x0, x1 = sorted((unit.x_mm * mirror, (unit.x_mm + unit.width_mm) * mirror))
    rect = Rect(x0, unit.y_mm, x1, unit.y_mm + unit.height_mm)
    rects.append(rect)
    if face == "key":
        return [box(rect, "hidden", "none", "unit on the other side")]
    part = unit_part(given, fit)
    label = f"Unit {part.number}" if part is not None else phrase("Unit")
    return [box(rect, "new", "new", "unit"), Callout((x0 + x1) / 2, (rect.y0 + rect.y1) / 2, label, "right")]
