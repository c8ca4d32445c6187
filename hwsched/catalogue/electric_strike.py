"""Part kind: electric strikes."""

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
    ),
    note="Strikes in the frame that release the latch.",
)
