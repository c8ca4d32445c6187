"""What an electric strike, an electromagnetic lock or an electrified lock draws, and what it does without power."""

from typing import Final

from hwsched.attributes import Attribute, Choice
from hwsched.catalogue.traits.drawing_power import DRAWS, TERMINALS

SUPPLIED_LOAD: Final[tuple[Attribute, ...]] = (
    Attribute(
        "supply_v",
        "Rated voltage",
        "number",
        "V",
        synonyms=("voltage", "supply voltage", "nominal voltage"),
        low=1,
        high=60,
        required=True,
    ),
    Attribute(
        "holding_a",
        "Holding current",
        "number",
        "A",
        synonyms=("current", "continuous current"),
        low=0,
        high=20,
        required=True,
        note="Drawn for as long as it is energised, at the rated voltage.",
    ),
    Attribute(
        "inrush_a",
        "Inrush current",
        "number",
        "A",
        synonyms=("peak current", "pull-in current"),
        low=0,
        high=60,
        note="Greatest at switching on; empty where it is not declared.",
    ),
    Attribute(
        "rest_a",
        "Current at rest",
        "number",
        "A",
        synonyms=("rest current", "standing current"),
        low=0,
        high=20,
        note="While nobody operates it. Empty: none where it is fail-secure, else reckoned as the holding current.",
    ),
    Attribute(
        "current",
        "Current",
        "choice",
        choices=(Choice("dc", "DC"), Choice("ac", "AC"), Choice("either", "AC or DC")),
        note="Empty: reckoned as DC.",
    ),
    Attribute("supply_low_v", "Lowest voltage", "number", "V", low=0, high=60, note="At its terminals."),
    Attribute("supply_high_v", "Highest voltage", "number", "V", low=0, high=60),
    DRAWS,
    *TERMINALS,
)

FAIL: Final = Attribute(
    "fail",
    "Without power",
    "choice",
    choices=(
        Choice("fail-safe", "Fail-safe, unlocked", ("fail safe", "fs", "unlocked")),
        Choice("fail-secure", "Fail-secure, locked", ("fail secure", "fse", "locked")),
    ),
    synonyms=("fail", "fail mode", "fail safe/secure"),
    required=True,
    note="Decides egress and, on a rated leaf, whether it stays latched: ask the authority having jurisdiction.",
)
