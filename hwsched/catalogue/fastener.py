"""Part kind: fasteners."""

from hwsched.attributes import Attribute, Choice
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.leaf_materials import LEAF_MATERIALS

FASTENER = PartKind(
    "fastener",
    "Fasteners",
    (
        Attribute(
            "form",
            "Form",
            "choice",
            choices=(
                Choice("wood-screw", "Wood screw"),
                Choice("sheet-metal-screw", "Sheet-metal screw"),
                Choice("machine-screw", "Machine screw"),
                Choice("through-bolt", "Through bolt"),
                Choice("adhesive", "Adhesive pad"),
            ),
            required=True,
        ),
        Attribute("size", "Size", required=True, note="Such as #6."),
        Attribute("length_mm", "Length", "length", "mm", low=1, high=300),
        Attribute(
            "security_drive", "Security drive", "flag", note="A head that no common screwdriver or spanner turns."
        ),
        Attribute("leaf_material", "For leaf material", "choice", choices=LEAF_MATERIALS, required=True),
    ),
    note="Screws, bolts and pads by the leaf material that they are for.",
)
