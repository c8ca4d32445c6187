"""Where the screws of a plate stand: as its part says, else where the trade puts them."""

from hwsched.attributes.of_parts import SCREW_PLACES, SCREWS
from hwsched.catalogue.traits.screw_places import Spot as Spot
from hwsched.catalogue.traits.screw_places import read_places
from hwsched.rules.practice import distance_mm
from hwsched.values import Part


def screw_places(unit: Part, width_mm: float, height_mm: float) -> tuple[Spot, ...]:
    """Return where the screws of a unit's plate stand.

    Parameters
    ----------
    unit : Part
        A control unit.
    width_mm, height_mm : float
        Of its plate.

    Returns
    -------
    tuple of (float, float)
        As the catalogue gives them; where it gives none, 6 mm inside the corners (common practice, unverified): two
        screws in the middle of the short sides, of more than four the others spread along the long ones.
    """
    text, count = unit.text_of(SCREW_PLACES), int(unit.number_of(SCREWS) or 0)
    if text:
        return read_places(text)
    inset = distance_mm("screw-corner")
    left, right, low, high = inset, width_mm - inset, inset, height_mm - inset
    if count <= 0:
        return ()
    if count == 1:
        return ((width_mm / 2, height_mm / 2),)
    if count == 2:
        if height_mm >= width_mm:
            return ((width_mm / 2, low), (width_mm / 2, high))
        return ((left, height_mm / 2), (right, height_mm / 2))
    if count == 3:
        return ((left, high), (right, high), (width_mm / 2, low))
    places = [(left, low), (right, low), (left, high), (right, high)]
    rest = count - 4
    for side in (left, right):
        here = rest // 2 + (rest % 2 if side == left else 0)
        places += [(side, low + (high - low) * (i + 1) / (here + 1)) for i in range(here)]
    return tuple(places)


def places_given(unit: Part) -> bool:
    """Tell whether the catalogue gives the places."""
    return bool(unit.text_of(SCREW_PLACES))
