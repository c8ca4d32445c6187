"""Part kind: electromagnetic locks."""

from hwsched.attributes import Attribute
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.place import FIRE_LISTED
from hwsched.catalogue.traits.supplied_load import SUPPLIED_LOAD

ELECTROMAGNETIC_LOCK = PartKind(
    "electromagnetic-lock",
    "Electromagnetic locks",
    (
        *SUPPLIED_LOAD,
        Attribute("header_mm", "Depth under the head", "length", "mm", low=0, high=300, note="That it stands on."),
        Attribute("force_n", "Holding force", "number", "N", low=1, high=50000),
        FIRE_LISTED,
    ),
    note="Locks that hold by current alone; fail-safe by nature.",
)
