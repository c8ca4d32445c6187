"""Part kind: consumables."""

from hwsched.attributes import Attribute, Choice
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.leaf_materials import LEAF_MATERIALS
from hwsched.catalogue.traits.pieces import PIECES
from hwsched.catalogue.traits.place import EXPOSURE

CONSUMABLE = PartKind(
    "consumable",
    "Consumables",
    (
        Attribute(
            "form",
            "Form",
            "choice",
            choices=(
                Choice("sealant", "Sealant"),
                Choice("sleeve", "Sleeve"),
                Choice("grommet", "Grommet"),
                Choice("adhesive-pad", "Adhesive pad"),
                Choice("thread-lock", "Thread lock"),
                Choice("label", "Label"),
                Choice("other", "Other"),
            ),
            required=True,
        ),
        Attribute(
            "hole_mm",
            "For hole",
            "length",
            "mm",
            synonyms=("hole diameter", "for hole"),
            low=1,
            high=150,
            note="Diameter of the hole that a sleeve or grommet goes into.",
        ),
        Attribute("leaf_material", "For leaf material", "choice", choices=LEAF_MATERIALS, note="Empty: for any."),
        EXPOSURE,
        PIECES,
    ),
    note="Sealing, sleeves and what else is used up.",
)
