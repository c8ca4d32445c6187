"""True-size template of a face with its lock edge: fold line, centre marks, hole and pilot sizes, angles, check rules.

The drawing is in mm of the thing itself and is printed 1:1 by `hwsched.render.true_size`, in tiles where it must be.
"""

from collections.abc import Sequence
from math import cos, hypot, radians, sin, tan
from typing import Final

from hwsched.calc.opening.placement import Rect
from hwsched.drawings.conventions import LETTER_HEIGHT_MM, LINE_SPACING
from hwsched.drawings.drawing import Anchor, Circle, Drawing, Line, Shape, Text
from hwsched.drawings.handing import Face, lock_edge_left
from hwsched.drawings.not_drawn import unknown_drawing
from hwsched.drawings.opening.hole_words import full_words, size_words
from hwsched.drawings.opening.lock_place import LockPlace, face_diameter, lock_place
from hwsched.drawings.opening.symbols import box
from hwsched.drawings.opening.through_leaf import thick_leaf
from hwsched.drawings.unknown import known, positive
from hwsched.language import phrase
from hwsched.quantities import LengthStyle, format_length
from hwsched.rules.reading import by_cylinder, leaf_hand, leafless, unit_part
from hwsched.rules.saying import label_said
from hwsched.values import Fit, Hole, OpeningInput
from hwsched.work.tools import drill_words

INCH_MM: Final = 25.4
CHECK_RULES: Final = ((100.0, 10.0, "100 mm"), (4 * INCH_MM, INCH_MM / 2, "4 in"))
"""Length, distance of its ticks, words."""
_AROUND_MM = 12.0
_LETTERS_A_LINE = 92
FACE_WORDS = {"inside": "INSIDE", "key": "KEY SIDE"}


def template(
    given: OpeningInput, fit: Fit, face: Face, marks: Sequence[str] = (), length_style: LengthStyle = "fraction"
) -> Drawing:
    """Draw the true-size template of one face.

    Parameters
    ----------
    given, fit : OpeningInput, Fit
        Survey and fit; openings that share the template must share what it shows.
    face : {"inside", "key"}
        The face onto which it is taped; its other part folds round the lock edge.
    marks : sequence of str
        Openings for which it holds.
    length_style : LengthStyle
        How sizes are written.

    Returns
    -------
    Drawing
        1 mm is 1 mm; y counts from the cylinder's centre, x from the fold. Words while facts are missing.
    """
    title = phrase("True-size template, {lower}", lower=FACE_WORDS[face].lower())
    if leafless(given):
        return unknown_drawing(title, [phrase("this opening has no leaf")])
    leaf, thick, missing = thick_leaf(given)
    problems = list(missing)
    hand = leaf_hand(given)
    if hand is None:
        problems.append(phrase("unknown: needs {label_of}", label_of=label_said("opening.hand")))
    if leaf is None or hand is None or problems:
        return unknown_drawing(title, problems)
    place, problems_of_lock, needs = lock_place(given, leaf, length_style)
    if place is None:
        return unknown_drawing(
            title, problems_of_lock or [phrase("unknown: needs {need}", need=need) for need in needs]
        )
    # A paper template lies on the face that is looked at: for the other face and the other hand it is a mirror image.
    way = 1.0 if lock_edge_left(hand, face) else -1.0
    made = _holes(fit, face, place, way, thick, length_style)
    ground, rect = _ground(given, fit, face, place, way, thick, made)
    words = [
        *_rows(
            phrase("Holds for: ") + (", ".join(marks) if marks else phrase("the opening of this packet only")) + "."
        ),
        *(row for hole in _listed(fit, face) for row in _rows("• " + full_words(hole, length_style))),
        *_rows(
            # A bevelled edge runs back 1/8 in over 2 in: from its low side every hole would be off by that much.
            phrase(
                "{face_words}, hand {hand}. Backset {length} from the high side of a bevelled edge; cylinder "
                "{length_2} above the floor. Measure both check rules first; print again without scaling if "
                "one is wrong. Compare with the door before you drill.",
                face_words=FACE_WORDS[face],
                hand=hand,
                length=format_length(place.x_mm, length_style),
                length_2=format_length(place.y_mm, length_style),
            )
        ),
    ]
    foot, low = _foot(rect, words)
    x0, x1 = min(rect.x0, rect.x0), max(rect.x1, rect.x0 + CHECK_RULES[1][0])
    return Drawing(title, (*ground, *made, *foot), (x0, low, x1, rect.y1))


def _listed(fit: Fit, face: Face) -> list[Hole]:
    return [hole for hole in sorted(fit.holes, key=lambda h: h.order) if hole.face in (face, "lock-edge")]


def _holes(
    fit: Fit, face: Face, place: LockPlace, way: float, thick: float, style: LengthStyle
) -> list[Shape]:  # fmt: skip
    shapes: list[Shape] = []
    for hole in _listed(fit, face):
        # Holes by template are marked through the part itself: a second mark on paper would compete with it.
        if hole.count > 1 or hole.by_template or not (known(hole.x_mm) and known(hole.y_mm)):
            continue
        y = hole.y_mm - place.y_mm
        # On the folded part the distance from the fold is the distance from this face.
        folded = -way * (hole.x_mm if face == "inside" else thick - hole.x_mm)
        x = way * hole.x_mm if hole.face == face else folded
        shapes += _mark(hole, x, y, way, style)
    return shapes


def _mark(hole: Hole, x: float, y: float, way: float, style: LengthStyle) -> list[Shape]:
    shapes: list[Shape] = []
    if hole.from_depth_mm > 0:
        # It begins at the bottom of a hole that is marked already: only its words and the way it leans are added.
        side: Anchor = "left" if way > 0 else "right"
        words = f"then {_short(hole, style)}"
        return [
            Text(x + way * (hole.diameter_mm / 2 + 6.0), y, words, "label", side, dy=-4.5),
            *_lean(hole, x, y, way),
        ]
    if hole.diameter_mm > 0:
        shapes.append(Circle(x, y, hole.diameter_mm, "new", "none", hole.name))
        arm = hole.diameter_mm / 2 + 4.0
    elif positive(hole.width_mm) and positive(hole.height_mm):
        wide, tall = hole.width_mm / 2, hole.height_mm / 2
        shapes.append(box(Rect(x - wide, y - tall, x + wide, y + tall), "new", "none", hole.name))
        arm = 6.0
    else:
        return []
    if positive(hole.pilot_mm):
        shapes.append(Circle(x, y, hole.pilot_mm, "hidden", "none", f"pilot of {hole.name}"))
    shapes += [
        Line(((x - arm, y), (x + arm, y)), "thin", name="centre mark"),
        Line(((x, y - arm), (x, y + arm)), "thin", name="centre mark"),
        Text(x + way * (arm + 1.5), y, _short(hole, style), "label", "left" if way > 0 else "right", dy=1.2),
    ]
    return [*shapes, *_lean(hole, x, y, way)]


def _lean(hole: Hole, x: float, y: float, way: float) -> list[Shape]:
    """Draw the arrow that shows to which side a hole leans."""
    shapes: list[Shape] = []
    up, edge = tan(radians(hole.up_deg)), -way * tan(radians(hole.edge_deg))
    lean = hypot(up, edge)
    if lean > 1e-3 and hole.face != "lock-edge":
        ux, uy = edge / lean, up / lean
        start = hole.diameter_mm / 2 + 1.0
        tip = start + 14.0
        shapes.append(
            Line(((x + ux * start, y + uy * start), (x + ux * tip, y + uy * tip)), "outline", name="leans this way")
        )
        for turn in (150.0, -150.0):
            c, s = cos(radians(turn)), sin(radians(turn))
            wx, wy = ux * c - uy * s, ux * s + uy * c
            shapes.append(
                Line(((x + ux * tip, y + uy * tip), (x + ux * tip + wx * 3.5, y + uy * tip + wy * 3.5)), "outline")
            )
    return shapes


def _short(hole: Hole, style: LengthStyle) -> str:
    words = [size_words(hole, style)]
    if positive(hole.pilot_mm):
        words.append(f"pilot {drill_words(hole.pilot_mm, style)}")
    if abs(hole.up_deg) >= 0.05:
        words.append(f"{abs(hole.up_deg):.3g}° {'up' if hole.up_deg > 0 else 'down'}")
    if abs(hole.edge_deg) >= 0.05:
        edge_deg = abs(hole.edge_deg)
        words.append(
            phrase("{edge_deg:.3g}° to lock edge", edge_deg=edge_deg)
            if hole.edge_deg > 0
            else phrase("{edge_deg:.3g}° to hinge edge", edge_deg=edge_deg)
        )
    return ", ".join(words)


def _ground(
    given: OpeningInput, fit: Fit, face: Face, place: LockPlace, way: float, thick: float, made: list[Shape]
) -> tuple[list[Shape], Rect]:
    """Draw fold, centre lines, the cylinder's centre and the unit's plate; returns the template's rectangle too."""
    marks: list[tuple[float, float]] = [(way * place.x_mm, 0.0)]
    shapes: list[Shape] = []
    part, diameter = face_diameter(given, fit)
    if part is not None and diameter is not None:
        marks += [(way * place.x_mm + diameter / 2, diameter / 2), (way * place.x_mm - diameter / 2, -diameter / 2)]
        shapes.append(Circle(way * place.x_mm, 0.0, diameter, "hidden", "none", "cylinder head"))
    unit = fit.placement
    if unit is not None and unit.face == face:
        x0, x1 = sorted((way * unit.x_mm, way * (unit.x_mm + unit.width_mm)))
        y0 = unit.y_mm - place.y_mm
        rect = Rect(x0, y0, x1, y0 + unit.height_mm)
        marks += [(rect.x0, rect.y0), (rect.x1, rect.y1)]
        unit_entry = unit_part(given, fit)
        shapes += [
            box(rect, "new", "none", "unit plate"),
            Text(
                (x0 + x1) / 2,
                rect.y1,
                phrase("Plate of unit {number}", number=unit_entry.number)
                if unit_entry
                else phrase("Plate of the unit"),
                "small",
                "centre",
                dy=-4.0,
            ),
        ]
    for shape in made:
        if isinstance(shape, Circle):
            marks += [(shape.x - shape.diameter / 2, shape.y - shape.diameter / 2),
                      (shape.x + shape.diameter / 2, shape.y + shape.diameter / 2)]  # fmt: skip
        elif isinstance(shape, Line):
            marks += shape.points
    centre = phrase("Cylinder centre") if by_cylinder(given) else phrase("Lock centre")
    # The words beside the cylinder's centre need 34 mm.
    reach = max(max(way * x for x, _ in marks) + _AROUND_MM, place.x_mm + 45.0)
    low, top = min(y for _, y in marks) - _AROUND_MM, max(y for _, y in marks) + _AROUND_MM
    x0, x1 = sorted((-way * thick, way * reach))
    rect = Rect(x0, low, x1, top)
    shapes += [
        box(rect, "thin", "none", "template"),
        Line(((0.0, low), (0.0, top)), "hidden", name="fold at the lock edge"),
        Text(0.0, low, phrase("FOLD AT THE LOCK EDGE"), "label", "left", 90.0, dx=-1.2, dy=2.0),
        Line(((x0, 0.0), (x1, 0.0)), "centre", name="cylinder centre line"),
        Line(((way * place.x_mm, low), (way * place.x_mm, top)), "centre", name="backset line"),
        Line(((way * place.x_mm - 9.0, 0.0), (way * place.x_mm + 9.0, 0.0)), "thin", name="cylinder centre"),
        Line(((way * place.x_mm, -9.0), (way * place.x_mm, 9.0)), "thin", name="cylinder centre"),
        Text(way * (place.x_mm + 11.0), 0.0, centre, "label", "left" if way > 0 else "right", dy=-3.7),
        Text(
            way * reach,
            top,
            phrase("{face_words}, this way up ↑", face_words=FACE_WORDS[face]),
            "label",
            "right" if way > 0 else "left",
            dx=-way * 2.0,
            dy=-5.0,
        ),
        Text(-way * thick, top, "EDGE", "label", "left" if way > 0 else "right", dx=way * 2.0, dy=-5.0),
    ]
    return shapes, rect


def _rows(text: str) -> list[str]:
    rows = [""]
    for word in text.split():
        if rows[-1] and len(rows[-1]) + 1 + len(word) > _LETTERS_A_LINE:
            rows.append("")
        rows[-1] = f"{rows[-1]} {word}".strip()
    return rows


def _foot(rect: Rect, words: list[str]) -> tuple[list[Shape], float]:
    """Put check rules and words under the template; returns the lowest level too."""
    shapes: list[Shape] = []
    x0, y = rect.x0, rect.y0 - 10.0
    # Two rules, in millimetres and in inches, across the sheet: printers scale without saying so.
    for length, step, name in CHECK_RULES:
        shapes.append(Line(((x0, y), (x0 + length, y)), "outline", name=f"check rule {name}"))
        for number in range(round(length / step) + 1):
            tall = 3.0 if number in (0, round(length / step)) else 1.6
            shapes.append(Line(((x0 + number * step, y), (x0 + number * step, y + tall)), "thin"))
        shapes.append(Text(x0 + length, y, name, "label", "left", dx=2.0))
        y -= 8.0
    spacing = LETTER_HEIGHT_MM["small"] * LINE_SPACING
    for row in words:
        shapes.append(Text(x0, y, row, "small", "left"))
        y -= spacing
    return shapes, y
