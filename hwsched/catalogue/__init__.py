"""The catalogue: part kinds, one file each; the tuple below is their table of contents."""

from hwsched.catalogue.bored_lever_lock import BORED_LEVER_LOCK
from hwsched.catalogue.cabinet_lock import CABINET_LOCK
from hwsched.catalogue.cam import CAM
from hwsched.catalogue.coin_cell import COIN_CELL
from hwsched.catalogue.collar import COLLAR
from hwsched.catalogue.consumable import CONSUMABLE
from hwsched.catalogue.credential import CREDENTIAL
from hwsched.catalogue.edge_unit import EDGE_UNIT
from hwsched.catalogue.electric_strike import ELECTRIC_STRIKE
from hwsched.catalogue.electrified_lock import ELECTRIFIED_LOCK
from hwsched.catalogue.electromagnetic_lock import ELECTROMAGNETIC_LOCK
from hwsched.catalogue.euro_cylinder import EURO_CYLINDER
from hwsched.catalogue.fastener import FASTENER
from hwsched.catalogue.fixed_reader import FIXED_READER
from hwsched.catalogue.gate_lock import GATE_LOCK
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.lead_extension import LEAD_EXTENSION
from hwsched.catalogue.mortise_cylinder import MORTISE_CYLINDER
from hwsched.catalogue.mounting import MOUNTING
from hwsched.catalogue.power_supply import POWER_SUPPLY
from hwsched.catalogue.power_transfer import POWER_TRANSFER
from hwsched.catalogue.primary_battery import PRIMARY_BATTERY
from hwsched.catalogue.rim_cylinder import RIM_CYLINDER
from hwsched.catalogue.ring import RING
from hwsched.catalogue.standby_battery import STANDBY_BATTERY
from hwsched.catalogue.surface_unit import SURFACE_UNIT
from hwsched.catalogue.tailpiece import TAILPIECE
from hwsched.catalogue.tool import TOOL
from hwsched.catalogue.wire import WIRE
from hwsched.outside import members

OWN_KINDS: tuple[PartKind, ...] = (
    MORTISE_CYLINDER,
    RIM_CYLINDER,
    EURO_CYLINDER,
    CABINET_LOCK,
    FIXED_READER,
    BORED_LEVER_LOCK,
    GATE_LOCK,
    SURFACE_UNIT,
    EDGE_UNIT,
    CAM,
    TAILPIECE,
    COLLAR,
    RING,
    LEAD_EXTENSION,
    POWER_SUPPLY,
    STANDBY_BATTERY,
    PRIMARY_BATTERY,
    COIN_CELL,
    POWER_TRANSFER,
    WIRE,
    ELECTRIC_STRIKE,
    ELECTROMAGNETIC_LOCK,
    ELECTRIFIED_LOCK,
    MOUNTING,
    FASTENER,
    TOOL,
    CONSUMABLE,
    CREDENTIAL,
)

KINDS: tuple[PartKind, ...] = (*OWN_KINDS, *members("hwsched.part_kinds", PartKind, lambda kind: kind.name, OWN_KINDS))
"""Our own, then those of packages from outside."""

_BY_NAME = {kind.name: kind for kind in KINDS}


def kind_of(name: str) -> PartKind | None:
    """Return the kind of that name."""
    return _BY_NAME.get(name)


__all__ = ["KINDS", "PartKind", "kind_of"]
