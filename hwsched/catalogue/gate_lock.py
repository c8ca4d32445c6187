"""Part kind: gate locks."""

from hwsched.attributes import Attribute, Choice
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.lead import LEAD
from hwsched.catalogue.traits.place import EXPOSURE

GATE_LOCK = PartKind(
    "gate-lock",
    "Gate locks",
    (
        Attribute(
            "mounting",
            "Mounting",
            "choice",
            choices=(
                Choice("bolt-on", "Bolted on"),
                Choice("weld-on", "Welded on"),
            ),
            required=True,
        ),
        Attribute("throw_mm", "Bolt throw", "length", "mm", low=1, high=120),
        Attribute("case_width_mm", "Case width", "length", "mm", low=20, high=400, required=True),
        Attribute("case_height_mm", "Case height", "length", "mm", low=20, high=600, required=True),
        *LEAD,
        EXPOSURE,
    ),
    note="Electronic locks for gates of steel tube.",
)
