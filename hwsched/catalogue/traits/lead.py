"""The lead that comes out of a cylinder, lock or reader, and the plugs and sockets that meet."""

from typing import Final

from hwsched.attributes import Attribute
from hwsched.catalogue.traits.template import LEAD_TEMPLATE

LEAD: Final[tuple[Attribute, ...]] = (
    Attribute(
        "lead_mm",
        "Lead length",
        "length",
        "mm",
        synonyms=("lead", "cable length", "cable"),
        low=0,
        high=10000,
        required=True,
        note="From where it leaves the part to the face of its plug, pulled straight.",
    ),
    Attribute(
        "connector",
        "Plug on the lead",
        synonyms=("connector", "plug"),
        required=True,
        note="Name of the plug; it fits where a unit or an extension takes a plug of the same name.",
    ),
    *LEAD_TEMPLATE,
)

MATES_WITH: Final = Attribute(
    "mates_with",
    "Takes plug",
    synonyms=("mates with", "socket", "socket takes"),
    required=True,
    note="Name of the plug that its socket takes.",
)
