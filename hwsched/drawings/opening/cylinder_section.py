"""Cylinders and bored locks cut through along their axis: body, head, collar and rings, trim, cam plane, tailpiece."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final, Literal

from hwsched.attributes.of_parts import (
    BODY_DIAMETER_MM,
    BODY_LENGTH_MM,
    CAM_OFFSET_MM,
    CASE_DEPTH_MM,
    CASE_WIDTH_MM,
    CROSS_BORE_MM,
    HEAD_DIAMETER_MM,
    LENGTH_MM,
    TAIL_LENGTH_MM,
    THREAD_DIAMETER_MM,
    TRIM_DIAMETER_MM,
    NumberName,
)
from hwsched.calc.opening.placement import Rect
from hwsched.catalogue import kind_of
from hwsched.drawings.drawing import Callout, Line, Shape
from hwsched.drawings.opening.symbols import box
from hwsched.drawings.unknown import known, positive
from hwsched.language import phrase
from hwsched.quantities import LengthStyle, format_length
from hwsched.values import Fit, Item, Part


@dataclass(frozen=True, slots=True)
class Cut:
    """What a section through the lock knows: positions on the sheet are x and -z, the key side below."""

    x: float
    """Cylinder's axis on the sheet."""
    thickness_mm: float
    item: Item
    part: Part
    fit: Fit
    style: LengthStyle
    toward_hinge: float

    def rect(self, half_mm: float, z0: float, z1: float) -> Rect:
        """Return a rectangle about the axis between two depths."""
        return Rect(self.x - half_mm, -max(z0, z1), self.x + half_mm, -min(z0, z1))

    @property
    def trim_face(self) -> float:
        """Level of the trim's outer face on the key side; the leaf's face while the trim is unknown."""
        trim = self.item.trim_key_mm
        return self.thickness_mm + (trim if known(trim) else 0.0)

    @property
    def head(self) -> float | None:
        """Level of the head's front, None while the stack is unknown."""
        stack = self.fit.stack
        if stack is None:
            return None
        # A rim cylinder's head lies on the trim: nothing is under it.
        return self.trim_face + (0.0 if stack.form == "rim" else stack.projection_mm)


Drawn = tuple[list[Shape], list[str]]
Side = Literal["left", "right"]


def cylinder_shapes(cut: Cut) -> Drawn:
    """Draw the new part in section; returns shapes and notes on what could not be drawn."""
    draw = _PARTS.get(cut.part.kind)
    if draw is None:
        return [], [phrase("{replace} is shown by its axis only.", replace=cut.part.kind.replace("-", " "))]
    return draw(cut)


def _label(kind: str, name: str) -> str:
    declared = kind_of(kind)
    found = (each.label for each in declared.attributes if each.name == name) if declared is not None else iter(())
    return next((phrase(label).lower() for label in found), name.replace("_", " "))


def _missing(cut: Cut, *names: NumberName) -> list[str]:
    lacking = [name for name in names if not positive(cut.part.number_of(name))]
    return (
        [
            phrase(
                "Not drawn in full: needs {lacking} of part {number}.",
                lacking=", ".join(_label(cut.part.kind, name) for name in lacking),
                number=cut.part.number,
            )
        ]
        if lacking
        else []
    )


def _proud(cut: Cut) -> list[Shape]:
    """Say how far the head stands proud of the trim; too small a distance for a dimension with words."""
    # Less than a rule shows is flush to whoever looks at it.
    if cut.head is None or cut.head - cut.trim_face < 0.05:
        return []
    words = phrase("head {length} proud of the trim", length=format_length(cut.head - cut.trim_face, cut.style))
    return [Callout(cut.x, -cut.head, words, _side(cut))]


def _collar(cut: Cut, head_mm: float | None) -> list[Shape]:
    stack = cut.fit.stack
    if stack is None or stack.form == "rim" or cut.head is None or not positive(head_mm):
        return []
    # Collar and rings together: what the head stands proud of the trim, less the gap that is left under it.
    height = stack.projection_mm - stack.gap_mm
    if height <= 0:
        return []
    z1 = cut.head
    return [box(cut.rect(head_mm / 2, z1 - height, z1), "new", "new", "collar and rings")]


def _mortise(cut: Cut) -> Drawn:
    length, thread = cut.part.number_of(LENGTH_MM), cut.part.number_of(THREAD_DIAMETER_MM)
    head = cut.part.number_of(HEAD_DIAMETER_MM)
    notes = _missing(cut, LENGTH_MM, THREAD_DIAMETER_MM)
    if cut.head is None:
        return [], [phrase("Cylinder not drawn: no stack of collar and rings is worked out.")]
    shapes = _collar(cut, head)
    if positive(length) and positive(thread):
        shapes.append(box(cut.rect(thread / 2, cut.head - length, cut.head), "new", "new", "cylinder"))
        rear = cut.head - length
        offset = cut.part.number_of(CAM_OFFSET_MM)
        if known(offset):
            z = rear - offset
            reach = thread * 0.8
            shapes.append(Line(((cut.x - reach, -z), (cut.x + reach, -z)), "centre", name="cam plane"))
            shapes.append(Callout(cut.x - cut.toward_hinge * reach, -z, phrase("cam plane"), _side(cut)))
    return [*shapes, *_proud(cut)], notes


def _rim(cut: Cut) -> Drawn:
    length, across = cut.part.number_of(BODY_LENGTH_MM), cut.part.number_of(BODY_DIAMETER_MM)
    tail = cut.part.number_of(TAIL_LENGTH_MM)
    stack = cut.fit.stack
    notes = _missing(cut, BODY_LENGTH_MM, BODY_DIAMETER_MM)
    front = cut.head if cut.head is not None else cut.trim_face
    shapes = _collar(cut, cut.part.number_of(HEAD_DIAMETER_MM))
    if positive(length) and positive(across):
        rear = front - length
        shapes.append(box(cut.rect(across / 2, rear, front), "new", "new", "cylinder"))
        if positive(tail) and stack is not None:
            # Drawn as it will be fitted, and not as it comes in the box.
            left = max(tail - stack.cut_off_mm, 0.0)
            shapes.append(box(cut.rect(2.0, rear, rear - left), "new", "new", "tailpiece"))
            if stack.cut_off_mm > 0:
                shapes.append(
                    Callout(
                        cut.x,
                        -(rear - left),
                        phrase("break off {length}", length=format_length(stack.cut_off_mm, cut.style)),
                        _side(cut),
                    )
                )
    return [*shapes, *_proud(cut)], notes


def _euro(cut: Cut) -> Drawn:
    stack = cut.fit.stack
    if stack is None or stack.key_half_mm <= 0:
        return [], [phrase("Cylinder not drawn: its halves are not worked out.")]
    offset = cut.item.case_offset_mm if known(cut.item.case_offset_mm) else 0.0
    middle = cut.thickness_mm / 2 + offset
    half = 8.5  # round part 17 mm (DIN 18252, from memory, unverified); a symbol, not dimensioned
    z0, z1 = middle - stack.inside_half_mm, middle + stack.key_half_mm
    shapes: list[Shape] = [
        box(cut.rect(half, z0, z1), "new", "new", "cylinder"),
        Line(((cut.x - half, -middle), (cut.x + half, -middle)), "centre", name="cam plane"),
    ]
    for z, size, name in (
        (z1, stack.key_half_mm, phrase("key half")),
        (z0, stack.inside_half_mm, phrase("inside half")),
    ):
        shapes.append(Callout(cut.x, -(z + middle) / 2, f"{name} {format_length(size, cut.style)}", _side(cut)))
    return [*shapes, *_proud(cut)], []


def _bored(cut: Cut) -> Drawn:
    bore, trim = cut.part.number_of(CROSS_BORE_MM), cut.part.number_of(TRIM_DIAMETER_MM)
    notes = _missing(cut, CROSS_BORE_MM, TRIM_DIAMETER_MM)
    shapes: list[Shape] = []
    if positive(bore):
        shapes.append(box(cut.rect(bore / 2, 0.0, cut.thickness_mm), "new", "hole", "cross bore"))
    if positive(trim):
        rose = 6.0  # a symbol of the rose's thickness, not dimensioned
        shapes += [
            box(cut.rect(trim / 2, -rose, 0.0), "new", "new", "trim"),
            box(cut.rect(trim / 2, cut.thickness_mm, cut.thickness_mm + rose), "new", "new", "trim"),
        ]
    return shapes, notes


def _cabinet(cut: Cut) -> Drawn:
    thread = cut.part.number_of(THREAD_DIAMETER_MM)
    notes = _missing(cut, THREAD_DIAMETER_MM)
    if not positive(thread):
        return [], notes
    return [box(cut.rect(thread / 2, -6.0, cut.thickness_mm), "new", "new", "cabinet bolt")], notes


def _gate(cut: Cut) -> Drawn:
    wide, deep = cut.part.number_of(CASE_WIDTH_MM), cut.part.number_of(CASE_DEPTH_MM)
    notes = _missing(cut, CASE_WIDTH_MM, CASE_DEPTH_MM)
    if not positive(wide) or not positive(deep):
        return [], notes
    # Bolted onto the gate's key side, its case stands proud of it.
    return [box(cut.rect(wide / 2, cut.thickness_mm, cut.thickness_mm + deep), "new", "new", "gate lock")], notes


def _side(cut: Cut) -> Side:
    """Words stand beyond the lock edge; the leaf goes on at the other end."""
    return "left" if cut.toward_hinge > 0 else "right"


_PARTS: Final[dict[str, Callable[[Cut], Drawn]]] = {
    "mortise-cylinder": _mortise,
    "rim-cylinder": _rim,
    "euro-cylinder": _euro,
    "bored-lever-lock": _bored,
    "cabinet-lock": _cabinet,
    "gate-lock": _gate,
}
