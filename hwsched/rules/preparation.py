"""The preparation that a bored lock asks of its leaf, by the catalogue. Whether it is there is said by a rule."""

from hwsched.attributes.of_parts import (
    BACKSET_MM,
    CROSS_BORE_MM,
    EDGE_BORE_MM,
    LATCH_LENGTH_MM,
    LEAF_HIGH_MM,
    LEAF_LOW_MM,
)
from hwsched.calc.opening.bored_prep import Latch, PrepWanted
from hwsched.values import Part


def wanted_prep(part: Part) -> PrepWanted | None:
    """Return the preparation that a bored lever lock needs; None while an attribute is missing."""
    cross, edge = part.number_of(CROSS_BORE_MM), part.number_of(EDGE_BORE_MM)
    low, high = part.number_of(LEAF_LOW_MM), part.number_of(LEAF_HIGH_MM)
    backset = part.number_of(BACKSET_MM)
    if cross is None or edge is None or low is None or high is None or backset is None:
        return None
    latch = Latch("latch", backset, backset, part.number_of(LATCH_LENGTH_MM))
    return PrepWanted(cross, edge, low, high, (latch,))
