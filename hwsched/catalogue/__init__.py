"""The catalogue: part kinds, one file each; the import lines below are their table of contents."""

from typing import Final

from hwsched.catalogue.kind import PartKind
from hwsched.outside import members
from hwsched.family import imported

# Their order is the order in which people see them.
from hwsched.catalogue.mortise_cylinder import MORTISE_CYLINDER
from hwsched.catalogue.rim_cylinder import RIM_CYLINDER
from hwsched.catalogue.euro_cylinder import EURO_CYLINDER
from hwsched.catalogue.cabinet_lock import CABINET_LOCK
from hwsched.catalogue.fixed_reader import FIXED_READER
from hwsched.catalogue.bored_lever_lock import BORED_LEVER_LOCK
from hwsched.catalogue.gate_lock import GATE_LOCK
from hwsched.catalogue.surface_unit import SURFACE_UNIT
from hwsched.catalogue.edge_unit import EDGE_UNIT
from hwsched.catalogue.cam import CAM
from hwsched.catalogue.tailpiece import TAILPIECE
from hwsched.catalogue.collar import COLLAR
from hwsched.catalogue.ring import RING
from hwsched.catalogue.lead_extension import LEAD_EXTENSION
from hwsched.catalogue.power_supply import POWER_SUPPLY
from hwsched.catalogue.enclosure import ENCLOSURE
from hwsched.catalogue.limiter import LIMITER
from hwsched.catalogue.standby_battery import STANDBY_BATTERY
from hwsched.catalogue.primary_battery import PRIMARY_BATTERY
from hwsched.catalogue.coin_cell import COIN_CELL
from hwsched.catalogue.power_transfer import POWER_TRANSFER
from hwsched.catalogue.wire import WIRE
from hwsched.catalogue.surface_raceway import SURFACE_RACEWAY
from hwsched.catalogue.electric_strike import ELECTRIC_STRIKE
from hwsched.catalogue.electromagnetic_lock import ELECTROMAGNETIC_LOCK
from hwsched.catalogue.electrified_lock import ELECTRIFIED_LOCK
from hwsched.catalogue.mounting import MOUNTING
from hwsched.catalogue.fastener import FASTENER
from hwsched.catalogue.tool import TOOL
from hwsched.catalogue.consumable import CONSUMABLE
from hwsched.catalogue.credential import CREDENTIAL

OWN_KINDS: Final = imported(globals(), PartKind)

KINDS: tuple[PartKind, ...] = (*OWN_KINDS, *members("hwsched.part_kinds", PartKind, lambda kind: kind.name, OWN_KINDS))
"""Our own, then those of packages from outside."""

_BY_NAME = {kind.name: kind for kind in KINDS}


def kind_of(name: str) -> PartKind | None:
    """Return the kind of that name."""
    return _BY_NAME.get(name)


__all__ = ["KINDS", "PartKind", "kind_of"]
