"""Of which thing a shape is, and on which layer it lies: what stands, what is new, holes, lead and so on."""

from collections.abc import Collection, Iterable
from dataclasses import replace
from typing import Final, Literal

from hwsched.drawings.drawing import Arc, Callout, Circle, Dimension, Drawing, Line, Shape, Text
from hwsched.values import Hole

Layer = Literal["stands", "new", "holes", "lead", "keep-outs", "dimensions"]
LAYERS: Final[dict[Layer, str]] = {
    "stands": "What stands",
    "new": "What is new",
    "holes": "Holes",
    "lead": "Lead",
    "keep-outs": "Keep-outs",
    "dimensions": "Dimensions",
}
"""In the order in which people see them, with their titles."""
UNIT: Final = "unit"
LOCK: Final = "new lock"
LEAD: Final = "lead"
_HOLE: Final = "hole "


def hole_thing(hole: Hole) -> str:
    """Return by which word all shapes of a hole are known."""
    return f"{_HOLE}{hole.order or hole.name}"


def of_thing(shapes: Iterable[Shape], thing: str) -> list[Shape]:
    """Say of shapes to which thing they belong; those that say so themselves keep theirs."""
    return [
        replace(shape, about=thing) if isinstance(shape, Line | Circle | Arc | Callout) and not shape.about else shape
        for shape in shapes
    ]


def layer_of(shape: Shape) -> Layer:
    """Return the layer on which a shape lies."""
    if isinstance(shape, Dimension):
        return "dimensions"
    if isinstance(shape, Text):
        return "stands"
    if shape.about.startswith(_HOLE):
        return "holes"
    if shape.about == LEAD:
        return "lead"
    if isinstance(shape, Callout):
        return "new" if shape.about in (UNIT, LOCK) else "stands"
    if shape.pen == "keepout":
        return "keep-outs"
    return "new" if shape.about in (UNIT, LOCK) or shape.pen == "new" else "stands"


def on_layers(drawing: Drawing, layers: Collection[Layer]) -> Drawing:
    """Return a drawing with what lies on these layers; its ends stay where they are."""
    return replace(drawing, shapes=tuple(shape for shape in drawing.shapes if layer_of(shape) in layers))
