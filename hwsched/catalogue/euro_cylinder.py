"""Part kind: euro cylinders."""

from hwsched.attributes import Attribute
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.cam_forms import EURO_CAM
from hwsched.catalogue.traits.lead import LEAD
from hwsched.catalogue.traits.place import EXPOSURE, FIRE_LISTED

EURO_CYLINDER = PartKind(
    "euro-cylinder",
    "Euro cylinders",
    (
        Attribute(
            "key_half_mm",
            "Key half",
            "length",
            "mm",
            low=9,
            high=130,
            required=True,
            note="From the fixing screw's centre to the key side's end.",
        ),
        Attribute(
            "inside_half_mm",
            "Inside half",
            "length",
            "mm",
            synonyms=("secured half", "secured_half_mm"),
            low=9,
            high=130,
            required=True,
            note="10 mm is the blind side of a half cylinder.",
        ),
        Attribute("cam_form", "Cam", "choice", choices=(EURO_CAM,), required=True),
        Attribute("thumb_turn", "Thumb turn inside", "flag"),
        *LEAD,
        EXPOSURE,
        FIRE_LISTED,
    ),
    note="Euro-profile cylinders, measured from the fixing screw's centre (DIN 18252 / EN 1303).",
)
