"""Part kind: power supplies."""

from hwsched.attributes import Attribute, Choice
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.drawing_power import TERMINALS

POWER_SUPPLY = PartKind(
    "power-supply",
    "Power supplies",
    (
        Attribute("output_v", "Output voltage", "number", "V", low=1, high=60, required=True),
        Attribute("output_a", "Output current", "number", "A", low=0.01, high=100, required=True),
        Attribute("tolerance_share", "Tolerance", "number", "share", low=0, high=0.5),
        Attribute("class_2", "Class 2", "flag"),
        Attribute("regulated", "Regulated", "flag"),
        Attribute("standby_v", "Standby battery voltage", "number", "V", low=1, high=60),
        Attribute(
            "input",
            "Fed by",
            "choice",
            choices=(
                Choice("mains", "Mains"),
                Choice("poe", "Power over Ethernet"),
            ),
        ),
        Attribute(
            "current",
            "Output",
            "choice",
            choices=(Choice("dc", "DC"), Choice("ac", "AC")),
            note="Empty: unknown, and nothing is fed from it.",
        ),
        Attribute(
            "limiting",
            "Limited by",
            "choice",
            choices=(Choice("inherent", "Its own design"), Choice("overcurrent-device", "An overcurrent device")),
            note="Which column of the power-limited tables holds.",
        ),
        Attribute("inside_ohm", "Resistance inside", "number", "ohm", low=0, high=10),
        Attribute(
            "cabinet",
            "Its cabinet",
            "choice",
            choices=(Choice("included", "Comes in a cabinet"), Choice("bare", "Comes without one")),
            note="With room for its standby batteries where it is included.",
        ),
        Attribute(
            "own_limiters",
            "Outputs with a limiter",
            "integer",
            low=0,
            high=64,
            note="Circuits that it limits itself. Empty: none.",
        ),
        Attribute("own_limiter_a", "Rating of these limiters", "number", "A", low=0.05, high=100),
        *TERMINALS,
    ),
    note="Low-voltage supplies; never on the leaf.",
)
