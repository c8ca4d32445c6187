"""Part kind: gate locks."""

from dataclasses import replace

from hwsched.attributes import Attribute, Choice
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.lead import LEAD
from hwsched.catalogue.traits.place import EXPOSURE, FIRE_LISTED, TEMPERATURE_LOW
from hwsched.catalogue.traits.template import BACK_HOLE
from hwsched.catalogue.traits.unit_power import UNIT_POWER

# A lock with its own unit has no lead, one without has no current of its own: which of them it lacks is said by rules.
_LEAD_OR_POWER = tuple(replace(each, required=False) for each in (*LEAD, *UNIT_POWER))

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
        Attribute(
            "case_depth_mm",
            "Case depth",
            "length",
            "mm",
            low=1,
            high=200,
            note="What its fixing bolts pass of the case, off the gate's face; where it is bolted on.",
        ),
        Attribute(
            "free_inside",
            "Opens freely from the inside",
            "flag",
            synonyms=("free inside", "inside release"),
            note="Yes: a handle or push plate of its own draws its bolt from the inside, without key or power.",
        ),
        Attribute(
            "own_unit",
            "Unit inside",
            "flag",
            synonyms=("own unit", "self-contained", "unit in the lock"),
            note="Yes: its control unit and cells are in its case, and it has no lead.",
        ),
        *_LEAD_OR_POWER,
        BACK_HOLE,
        EXPOSURE,
        TEMPERATURE_LOW,
        FIRE_LISTED,
    ),
    note="Electronic locks for gates of steel tube.",
)
