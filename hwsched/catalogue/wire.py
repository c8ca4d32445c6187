"""Part kind: wire."""

from hwsched.attributes import Attribute, Choice
from hwsched.catalogue.kind import PartKind

WIRE = PartKind(
    "wire",
    "Wire",
    (
        Attribute("gauge", "Gauge", required=True, note="Such as 18 AWG or 1.0 mm2."),
        Attribute("conductors", "Conductors", "integer", low=1, high=50, required=True),
        Attribute(
            "stranding",
            "Stranding",
            "choice",
            choices=(
                Choice("solid", "Solid"),
                Choice("stranded", "Stranded"),
            ),
            required=True,
        ),
        Attribute("jacket", "Jacket"),
        Attribute("outside_diameter_mm", "Outside diameter", "length", "mm", low=0.5, high=60),
        Attribute("reel_m", "Reel", "number", "m", low=1, high=5000),
    ),
    note="Wire and cable on reels.",
)
