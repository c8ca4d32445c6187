"""Part kind: cabinet bolts."""

from hwsched.attributes import Attribute
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.lead import LEAD

CABINET_LOCK = PartKind(
    "cabinet-lock",
    "Cabinet bolts",
    (
        Attribute("thread_diameter_mm", "Body diameter", "length", "mm", low=8, high=60, required=True),
        Attribute("grip_mm", "Greatest panel thickness", "length", "mm", low=1, high=120, required=True),
        Attribute("bolt_throw_mm", "Bolt throw", "length", "mm", low=1, high=60),
        *LEAD,
    ),
    note="Bolts for cabinet doors, with the reader in the head.",
)
