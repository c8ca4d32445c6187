"""Part kind: surface raceways."""

from hwsched.attributes import Attribute
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.place import FIRE_LISTED

SURFACE_RACEWAY = PartKind(
    "surface-raceway",
    "Surface raceways",
    (
        Attribute(
            "inside_mm",
            "Clear inside",
            "length",
            "mm",
            low=2,
            high=60,
            required=True,
            note="Thickest cable that lies in it.",
        ),
        Attribute("width_mm", "Width on the leaf", "length", "mm", low=4, high=100, required=True),
        Attribute("reel_m", "Length of a bar", "number", "m", low=0.5, high=100),
        Attribute("glass_mount", "May be bonded to glass", "flag"),
        FIRE_LISTED,
    ),
    note="Carry a wire over the face of a leaf where none can be brought through it. Comes in bars.",
)
