"""Part kind: coin backup cells."""

from hwsched.attributes import Attribute
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.pieces import PIECES

COIN_CELL = PartKind(
    "coin-cell",
    "Coin backup cells",
    (
        Attribute("designation", "Designation", required=True),
        Attribute("voltage_v", "Voltage", "number", "V", low=0.5, high=12, required=True),
        Attribute("capacity_mah", "Capacity", "number", "mAh", low=1, high=5000, required=True),
        PIECES,
    ),
    note="Cells that keep a unit's clock and memory.",
)
