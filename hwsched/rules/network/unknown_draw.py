"""How much an opening can draw of which something is not known: by this bound the others on its supply are proved."""

from hwsched.attributes.of_parts import HOLDING_A, INRUSH_A, SUPPLY_A, SUPPLY_INRUSH_A, SUPPLY_REST_A
from hwsched.catalogue import kind_of
from hwsched.quantities.adding import added
from hwsched.rules.network.connected_opening import ConnectedOpening
from hwsched.rules.network.devices import COILS, UNITS, amps, device_of, releases_kept
from hwsched.survey.item import ITEM
from hwsched.values import Part
from hwsched.values.power import Device

_LEAST_V = 1.0
"""A load of constant power that names no lowest voltage is reckoned down to here [V]."""
_DRAWN = frozenset((SUPPLY_A, SUPPLY_REST_A, SUPPLY_INRUSH_A, HOLDING_A, INRUSH_A))


def most_drawn_a(connected: ConnectedOpening) -> float:
    """Return the most that an opening can hang on its circuit, whichever parts of the catalogue it gets [A].

    A unit at each lock point, for each leaf the strike, magnet or lock that draws most, and what stays there. Where the
    catalogue or the survey does not say what something draws, the most that its sheet can say.
    """
    catalogue = connected.given.catalogue
    units, coils = (
        max((_most_a(part) for part in catalogue.of_kind(*kinds)), default=0.0) for kinds in (UNITS, tuple(COILS))
    )
    limit = next(each.high for each in ITEM.attributes if each.name == "rated_a") or 0.0
    kept = added(limit if item.rated_a is None else item.rated_a for item in releases_kept(connected.given))
    return len(connected.points) * units + max(1, len(connected.given.leaves)) * coils + kept


def _most_a(part: Part) -> float:
    made = device_of(part, "strike")
    if not isinstance(made, Device):
        kind = kind_of(part.kind)
        declared = kind.attributes if kind is not None else ()
        return max((each.high or 0.0 for each in declared if each.name in _DRAWN), default=0.0)
    values = [made.holding, made.peak, *([] if made.inrush is None else [made.inrush])]
    volts = max(made.minimum_v, _LEAST_V) if made.kind == "power" else made.maximum_v
    return max(amps(made, value, volts) for value in values)
