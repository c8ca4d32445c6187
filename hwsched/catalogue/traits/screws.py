"""The screws that hold a unit."""

from typing import Final

from hwsched.attributes import Attribute

SCREWS: Final[tuple[Attribute, ...]] = (
    Attribute(
        "screw_size",
        "Screw size",
        synonyms=("screw", "screw gauge"),
        note="Gauge as in sheet Fasteners, such as #6; length and form follow from the leaf.",
    ),
    Attribute("screws", "Number of screws", "integer", synonyms=("screws", "screw count"), low=0, high=24),
)
