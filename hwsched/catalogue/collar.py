"""Part kind: collars."""

from hwsched.attributes import Attribute
from hwsched.catalogue.kind import PartKind

COLLAR = PartKind(
    "collar",
    "Collars",
    (
        Attribute("height_mm", "Height", "length", "mm", low=0, high=60, required=True),
        Attribute("inner_diameter_mm", "Inner diameter", "length", "mm", low=10, high=80),
        Attribute("outer_diameter_mm", "Outer diameter", "length", "mm", low=10, high=120),
    ),
    note="Collars under a threaded cylinder's head.",
)
