"""Part kind: primary cells."""

from hwsched.attributes import Attribute
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.pieces import PIECES
from hwsched.catalogue.traits.place import TEMPERATURE_LOW

PRIMARY_BATTERY = PartKind(
    "primary-battery",
    "Primary cells",
    (
        Attribute("designation", "Designation", required=True),
        Attribute("voltage_v", "Voltage", "number", "V", low=0.5, high=24, required=True),
        Attribute("capacity_mah", "Capacity", "number", "mAh", low=1, high=100000, required=True),
        Attribute("usable_share", "Usable share", "number", "share", low=0.05, high=1, required=True),
        Attribute("self_discharge_share", "Self-discharge a year", "number", "share", low=0, high=0.9, required=True),
        Attribute("end_v", "Capacity down to", "number", "V", low=0.1, high=24, note="A cell, by its data sheet."),
        Attribute("chemistry", "Chemistry"),
        Attribute(
            "cold_c",
            "Cold capacity stated at",
            "number",
            "degC",
            synonyms=("cold capacity at",),
            low=-60,
            high=19,
            note="Coldest temperature for which the data sheet says what is left.",
        ),
        Attribute(
            "cold_share",
            "Share left in the cold",
            "number",
            "share",
            synonyms=("cold capacity share",),
            low=0.01,
            high=1,
            note="Of the capacity, at that temperature. Goes before the table of defaults by chemistry.",
        ),
        TEMPERATURE_LOW,
        PIECES,
    ),
    note="Cells of a control unit's pack.",
)
