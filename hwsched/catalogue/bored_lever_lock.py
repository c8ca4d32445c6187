"""Part kind: bored lever locks."""

from hwsched.attributes import Attribute, Choice
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.lead import LEAD
from hwsched.catalogue.traits.place import EXPOSURE, FIRE_LISTED
from hwsched.catalogue.traits.template import BORED_TEMPLATE

BORED_LEVER_LOCK = PartKind(
    "bored-lever-lock",
    "Bored lever locks",
    (
        Attribute("backset_mm", "Backset", "length", "mm", low=30, high=200, required=True),
        Attribute("cross_bore_mm", "Cross bore", "length", "mm", low=20, high=80, required=True),
        Attribute("edge_bore_mm", "Edge bore", "length", "mm", low=10, high=50, required=True),
        Attribute("leaf_low_mm", "Least leaf thickness", "length", "mm", low=10, high=120, required=True),
        Attribute("leaf_high_mm", "Greatest leaf thickness", "length", "mm", low=10, high=120, required=True),
        Attribute(
            "latch_length_mm",
            "Latch length",
            "length",
            "mm",
            low=20,
            high=250,
            note="From the leaf's edge to its rear end.",
        ),
        Attribute("bolt_hole_mm", "Through-bolt hole", "length", "mm", low=3, high=20),
        Attribute(
            "function",
            "Function",
            "choice",
            choices=(
                Choice("passage", "Passage"),
                Choice("privacy", "Privacy"),
                Choice("office", "Office or entry"),
                Choice("classroom", "Classroom"),
                Choice("storeroom", "Storeroom"),
            ),
            required=True,
        ),
        Attribute("trim_diameter_mm", "Trim diameter", "length", "mm", low=30, high=200),
        *LEAD,
        *BORED_TEMPLATE,
        EXPOSURE,
        FIRE_LISTED,
    ),
    note="Electronic lever locks for a cross bore and an edge bore.",
)
