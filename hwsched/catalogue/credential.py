"""Part kind: keys and credentials."""

from hwsched.attributes import Attribute, Choice
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.pieces import PIECES

CREDENTIAL = PartKind(
    "credential",
    "Keys and credentials",
    (
        Attribute(
            "form",
            "Form",
            "choice",
            choices=(
                Choice("electronic-key", "Electronic key"),
                Choice("card", "Card"),
                Choice("fob", "Fob"),
                Choice("programming-key", "Programming key"),
            ),
            required=True,
        ),
        Attribute("for_part", "For part"),
        PIECES,
    ),
    note="Electronic keys, cards, fobs, and keys that program.",
)
