"""How a control unit is fed: its cells, what it draws from them, and the supply that it can take in their place."""

from typing import Final

from hwsched.attributes import Attribute

UNIT_POWER: Final[tuple[Attribute, ...]] = (
    Attribute(
        "cell",
        "Cell",
        synonyms=("battery", "primary cell", "cell designation"),
        note="Designation of its primary cells, as in sheet Primary cells; empty where it takes none.",
    ),
    Attribute(
        "cells",
        "Cells in series",
        "integer",
        synonyms=("number of cells", "cells", "cell count"),
        low=1,
        high=24,
    ),
    Attribute(
        "coin_cell",
        "Backup coin cell",
        synonyms=("coin cell", "backup cell"),
        note="Designation as in sheet Coin backup cells; empty where it has none.",
    ),
    Attribute(
        "standing_ua",
        "Standing current",
        "number",
        "uA",
        synonyms=("standby current", "quiescent current"),
        low=0,
        high=1e6,
        required=True,
        note="Drawn all day, from the pack, while nobody operates it.",
    ),
    Attribute(
        "operation_ma",
        "Current while operating",
        "number",
        "mA",
        synonyms=("operating current", "active current"),
        low=0,
        high=20000,
        required=True,
        note="Mean over the time of one operation, from the pack.",
    ),
    Attribute(
        "operation_s",
        "Time of an operation",
        "number",
        "s",
        synonyms=("operation time", "operating time"),
        low=0,
        high=600,
        required=True,
    ),
    Attribute(
        "supply_low_v",
        "Supply, lowest voltage",
        "number",
        "V",
        synonyms=("min supply voltage", "lowest supply voltage"),
        low=0,
        high=60,
        note="At the unit's terminals. Empty where it cannot be fed from a supply.",
    ),
    Attribute(
        "supply_high_v",
        "Supply, highest voltage",
        "number",
        "V",
        synonyms=("max supply voltage", "highest supply voltage"),
        low=0,
        high=60,
    ),
    Attribute(
        "supply_a",
        "Supply current",
        "number",
        "A",
        synonyms=("supply holding current", "current from supply"),
        low=0,
        high=20,
        note="Held while it is operated, drawn from the supply.",
    ),
)
