"""Part kind: cabinet bolts."""

from hwsched.attributes import Attribute
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.lead import LEAD
from hwsched.catalogue.traits.place import FIRE_LISTED

CABINET_LOCK = PartKind(
    "cabinet-lock",
    "Cabinet bolts",
    (
        Attribute("thread_diameter_mm", "Body diameter", "length", "mm", low=8, high=60, required=True),
        Attribute("grip_mm", "Greatest panel thickness", "length", "mm", low=1, high=120, required=True),
        Attribute(
            "grip_low_mm",
            "Least panel thickness",
            "length",
            "mm",
            low=0,
            high=120,
            note="Below it the nut runs out of thread before the body is tight; 0 where there is no least.",
        ),
        Attribute("bolt_throw_mm", "Bolt throw", "length", "mm", low=1, high=60),
        *LEAD,
        FIRE_LISTED,
    ),
    note="Bolts for cabinet doors, with the reader in the head.",
)
