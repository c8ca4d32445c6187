"""Geometry of fits as neutral drawings: elevations, edge view, section, bore detail, true-size template.

Everything is mm of the thing drawn; paper, screen and colours belong to `hwsched.render` and above.
"""

from hwsched.drawings.drawing import (
    Anchor,
    Arc,
    Callout,
    Circle,
    Dimension,
    Drawing,
    Fill,
    Hatch,
    Line,
    Pen,
    Shape,
    Text,
    TextRole,
)
from hwsched.drawings.handing import FACES, Face
from hwsched.drawings.opening.bore_detail import bore_detail
from hwsched.drawings.opening.edge_view import edge_view
from hwsched.drawings.opening.elevation import elevation
from hwsched.drawings.opening.face_detail import face_detail
from hwsched.drawings.opening.section import section
from hwsched.drawings.opening.template import template
from hwsched.drawings.unknown import unknown_drawing

__all__ = [
    "FACES",
    "Anchor",
    "Arc",
    "Callout",
    "Circle",
    "Dimension",
    "Drawing",
    "Face",
    "Fill",
    "Hatch",
    "Line",
    "Pen",
    "Shape",
    "Text",
    "TextRole",
    "bore_detail",
    "edge_view",
    "elevation",
    "face_detail",
    "section",
    "template",
    "unknown_drawing",
]
