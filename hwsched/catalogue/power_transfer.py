"""Part kind: power transfers."""

from hwsched.attributes import Attribute, Choice
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.place import FIRE_LISTED

POWER_TRANSFER = PartKind(
    "power-transfer",
    "Power transfers",
    (
        Attribute(
            "form",
            "Form",
            "choice",
            choices=(
                Choice("door-loop", "Door loop"),
                Choice("transfer-hinge", "Transfer hinge"),
            ),
            required=True,
        ),
        Attribute("conductors", "Conductors", "integer", low=1, high=24, required=True),
        Attribute("gauge", "Gauge", required=True),
        Attribute("length_mm", "Length", "length", "mm", low=10, high=5000),
        Attribute(
            "conductor_names", "Names of its conductors", note="Colours or numbers, plus first, such as red, black."
        ),
        Attribute("hinge_height_mm", "Height of the hinge", "length", "mm", low=30, high=300),
        Attribute("hinge_width_mm", "Width of the hinge, open", "length", "mm", low=30, high=300),
        FIRE_LISTED,
    ),
    note="What carries wires from the frame onto the leaf.",
)
