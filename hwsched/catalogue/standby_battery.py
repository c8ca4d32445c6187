"""Part kind: standby batteries."""

from hwsched.attributes import Attribute
from hwsched.catalogue.kind import PartKind

STANDBY_BATTERY = PartKind(
    "standby-battery",
    "Standby batteries",
    (
        Attribute("voltage_v", "Voltage", "number", "V", low=1, high=60, required=True),
        Attribute("capacity_ah", "Capacity", "number", "Ah", low=0.1, high=1000, required=True),
        Attribute("hours_rate", "Hours of the rated capacity", "number", "h", low=0.5, high=120),
        Attribute("end_v", "End voltage", "number", "V", low=0.5, high=60, note="At which the supply lets go of it."),
        Attribute("inside_ohm", "Resistance inside", "number", "ohm", low=0, high=10),
    ),
    note="Rechargeable batteries behind a supply.",
)
