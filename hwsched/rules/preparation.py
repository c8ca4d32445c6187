"""The preparation that a bored lock asks of its leaf, by the catalogue. Whether it is there is said by a rule."""

from hwsched.calc.opening.bored_prep import Latch, PrepWanted
from hwsched.values import Part


def wanted_prep(part: Part) -> PrepWanted | None:
    """Return the preparation that a bored lever lock needs; None while an attribute is missing."""
    cross, edge = part.number_of("cross_bore_mm"), part.number_of("edge_bore_mm")
    low, high = part.number_of("leaf_low_mm"), part.number_of("leaf_high_mm")
    backset = part.number_of("backset_mm")
    if cross is None or edge is None or low is None or high is None or backset is None:
        return None
    latch = Latch("latch", backset, backset, part.number_of("latch_length_mm"))
    return PrepWanted(cross, edge, low, high, (latch,))
