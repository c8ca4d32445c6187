"""Part kind: electric strikes."""

from hwsched.attributes import Attribute
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.place import FIRE_LISTED
from hwsched.catalogue.traits.supplied_load import FAIL, SUPPLIED_LOAD

ELECTRIC_STRIKE = PartKind(
    "electric-strike",
    "Electric strikes",
    (
        *SUPPLIED_LOAD,
        FAIL,
        FIRE_LISTED,
        Attribute("plate_width_mm", "Width of its plate", "length", "mm", low=10, high=200),
        Attribute("plate_height_mm", "Height of its plate", "length", "mm", low=20, high=600),
        Attribute("guard_latch", "Holds a latch's guard", "flag", note="The guard bolt of a latch rests on it."),
    ),
    note="Strikes in the frame that release the latch.",
)
