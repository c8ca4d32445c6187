"""Part kind: in-edge units."""

from hwsched.attributes import Attribute
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.lead import MATES_WITH
from hwsched.catalogue.traits.place import FIRE_LISTED, TEMPERATURE_LOW
from hwsched.catalogue.traits.screws import SCREWS
from hwsched.catalogue.traits.template import BRIDGE_HOLE
from hwsched.catalogue.traits.unit_power import UNIT_POWER

EDGE_UNIT = PartKind(
    "edge-unit",
    "In-edge units",
    (
        Attribute(
            "pocket_length_mm",
            "Pocket length",
            "length",
            "mm",
            low=50,
            high=800,
            required=True,
            note="Clear edge that it needs.",
        ),
        Attribute("pocket_depth_mm", "Pocket depth", "length", "mm", low=10, high=200, required=True),
        Attribute("pocket_width_mm", "Pocket width", "length", "mm", low=5, high=60, required=True),
        Attribute("connector_y_mm", "Connector from the lock's end", "length", "mm", low=0, high=800, required=True),
        MATES_WITH,
        BRIDGE_HOLE,
        Attribute(
            "service_mm",
            "Hand's allowance",
            "length",
            "mm",
            low=0,
            high=500,
            required=True,
            note="Lead for connecting it in the hand before it slides in.",
        ),
        *UNIT_POWER,
        *SCREWS,
        TEMPERATURE_LOW,
        FIRE_LISTED,
    ),
    note="Control units that stand in a pocket in the lock edge.",
)
