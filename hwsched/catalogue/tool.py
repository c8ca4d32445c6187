"""Part kind: jigs, bits and tools."""

from hwsched.attributes import Attribute, Choice
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.leaf_materials import LEAF_MATERIALS

TOOL = PartKind(
    "tool",
    "Jigs, bits and tools",
    (
        Attribute(
            "form",
            "Form",
            "choice",
            choices=(
                Choice("drilling-jig", "Drilling jig"),
                Choice("twist-drill", "Twist drill"),
                Choice("installer-bit", "Installer bit, long"),
                Choice("spade-bit", "Spade bit"),
                Choice("hole-saw", "Hole saw"),
                Choice("step-drill", "Step drill"),
                Choice("mortiser", "Mortiser"),
                Choice("mill", "Mill or router for metal"),
                Choice("saw-and-files", "Saw and files"),
                Choice("driver", "Driver"),
                Choice("other", "Other"),
            ),
            required=True,
        ),
        Attribute("diameter_mm", "Diameter", "length", "mm", low=0.3, high=150),
        Attribute("reach_mm", "Reach", "length", "mm", low=5, high=2000),
        Attribute("leaf_material", "For leaf material", "choice", choices=LEAF_MATERIALS, note="Empty: for any."),
    ),
    note="Drilling jigs, bits, hole saws and other tools.",
)
