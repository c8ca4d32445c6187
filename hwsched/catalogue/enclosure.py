"""Part kind: cabinets for supplies and boxes in which runs are joined."""

from hwsched.attributes import Attribute, Choice
from hwsched.catalogue.kind import PartKind

ENCLOSURE = PartKind(
    "enclosure",
    "Cabinets and boxes",
    (
        Attribute(
            "form",
            "Form",
            "choice",
            choices=(
                Choice("cabinet", "Cabinet of a supply"),
                Choice("junction-box", "Junction box"),
            ),
            required=True,
        ),
        Attribute("batteries", "Batteries that it takes", "integer", low=0, high=20, note="Of a cabinet."),
        Attribute("battery_ah", "Largest of them", "number", "Ah", low=0.1, high=1000, note="Of a cabinet."),
        Attribute("conductors", "Conductors that it joins", "integer", low=2, high=200, note="Of a junction box."),
    ),
    note="A supply that comes bare stands in a cabinet; where runs meet there is a box.",
)
