"""Part kind: electrified locks."""

from hwsched.attributes import Attribute, Choice
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.place import FIRE_LISTED
from hwsched.catalogue.traits.supplied_load import FAIL, SUPPLIED_LOAD

ELECTRIFIED_LOCK = PartKind(
    "electrified-lock",
    "Electrified locks",
    (
        Attribute(
            "form",
            "Form",
            "choice",
            choices=(
                Choice("mortise", "Mortise"),
                Choice("bored", "Bored"),
                Choice("exit-device", "Exit device"),
            ),
            required=True,
        ),
        *SUPPLIED_LOAD,
        FAIL,
        FIRE_LISTED,
    ),
    note="Electrified mortise and bored locks and exit devices.",
)
