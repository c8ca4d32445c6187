"""Part kind: fuses and limiters of circuits."""

from hwsched.attributes import Attribute, Choice
from hwsched.catalogue.kind import PartKind

LIMITER = PartKind(
    "limiter",
    "Fuses and limiters",
    (
        Attribute("rating_a", "Rating", "number", "A", low=0.05, high=100, required=True),
        Attribute(
            "form",
            "Form",
            "choice",
            choices=(
                Choice("fuse", "Fuse with its holder"),
                Choice("breaker", "Circuit breaker"),
                Choice("resettable", "Resettable limiter"),
            ),
        ),
    ),
    note="One a circuit, between supply and circuit.",
)
