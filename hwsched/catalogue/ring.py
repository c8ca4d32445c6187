"""Part kind: blocking rings."""

from hwsched.attributes import Attribute
from hwsched.catalogue.kind import PartKind

RING = PartKind(
    "ring",
    "Blocking rings",
    (
        Attribute("height_mm", "Height", "length", "mm", low=0.1, high=60, required=True),
        Attribute("inner_diameter_mm", "Inner diameter", "length", "mm", low=10, high=80),
    ),
    note="Rings that take up what a collar leaves.",
)
