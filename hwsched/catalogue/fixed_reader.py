"""Part kind: fixed readers."""

from hwsched.attributes import Attribute
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.lead import LEAD
from hwsched.catalogue.traits.place import EXPOSURE, FIRE_LISTED

FIXED_READER = PartKind(
    "fixed-reader",
    "Fixed readers",
    (
        Attribute("hole_mm", "Mounting hole", "length", "mm", low=5, high=80, required=True),
        Attribute("depth_mm", "Depth behind the face", "length", "mm", low=1, high=200),
        Attribute("face_width_mm", "Face width", "length", "mm", low=5, high=300, required=True),
        Attribute("face_height_mm", "Face height", "length", "mm", low=5, high=300, required=True),
        *LEAD,
        EXPOSURE,
        FIRE_LISTED,
    ),
    note="Readers in which nothing turns: at lifts, turnstiles, barriers.",
)
