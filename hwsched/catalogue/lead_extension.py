"""Part kind: lead extensions."""

from hwsched.attributes import Attribute
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.lead import MATES_WITH

LEAD_EXTENSION = PartKind(
    "lead-extension",
    "Lead extensions",
    (
        Attribute("length_mm", "Length", "length", "mm", low=10, high=20000, required=True),
        Attribute("connector", "Plug toward the unit", required=True),
        MATES_WITH,
    ),
    note="Cables between a lead and a unit.",
)
