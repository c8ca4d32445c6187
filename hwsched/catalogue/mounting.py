"""Part kind: gaskets, covers, plates."""

from hwsched.attributes import Attribute, Choice
from hwsched.catalogue.kind import PartKind

MOUNTING = PartKind(
    "mounting",
    "Gaskets, covers, plates",
    (
        Attribute(
            "form",
            "Form",
            "choice",
            choices=(
                Choice("gasket", "Gasket"),
                Choice("cover", "Cover"),
                Choice("mounting-plate", "Mounting plate"),
            ),
            required=True,
        ),
        Attribute("for_part", "For unit", note="Catalogue number of the unit."),
        Attribute("plate_width_mm", "Width", "length", "mm", low=5, high=600),
        Attribute("plate_height_mm", "Height", "length", "mm", low=5, high=800),
        Attribute("thickness_mm", "Thickness", "length", "mm", low=0.1, high=40),
        Attribute("material_use", "For leaf material"),
    ),
    note="What stands between a unit and the leaf, or covers it.",
)
