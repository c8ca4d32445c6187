"""Part kind: rim cylinders."""

from hwsched.attributes import Attribute
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.cam_forms import TAIL_FORM, TAIL_STEP
from hwsched.catalogue.traits.lead import LEAD
from hwsched.catalogue.traits.place import EXPOSURE, FIRE_LISTED

RIM_CYLINDER = PartKind(
    "rim-cylinder",
    "Rim cylinders",
    (
        Attribute(
            "body_length_mm", "Body length", "length", "mm", low=5, high=120, note="From under the head to the back."
        ),
        TAIL_FORM,
        Attribute(
            "tail_length_mm",
            "Tailpiece length",
            "length",
            "mm",
            low=5,
            high=250,
            required=True,
            note="As supplied, from the cylinder's back.",
        ),
        TAIL_STEP,
        Attribute("body_diameter_mm", "Body diameter", "length", "mm", low=10, high=60),
        Attribute("head_diameter_mm", "Head diameter", "length", "mm", low=10, high=80),
        *LEAD,
        EXPOSURE,
        FIRE_LISTED,
    ),
    note="Plain cylinders held by a back plate, with a tailpiece cut to length.",
)
