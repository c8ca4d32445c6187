"""The preparation that a bored lock asks of its leaf, by the catalogue, and that which is there, by the survey."""

from hwsched.attributes.of_parts import (
    BACKSET_MM,
    CROSS_BORE_MM,
    EDGE_BORE_MM,
    LATCH_LENGTH_MM,
    LEAF_HIGH_MM,
    LEAF_LOW_MM,
)
from hwsched.calc.opening.bored_prep import Latch, PrepFound, PrepWanted
from hwsched.rules.reading import lock_item, lock_leaf
from hwsched.rules.rounding import EQUAL_MM, Allowance, allowance
from hwsched.values import OpeningInput, Part


def wanted_prep(part: Part) -> PrepWanted | None:
    """Return the preparation that a bored lever lock needs; None while an attribute is missing."""
    cross, edge = part.number_of(CROSS_BORE_MM), part.number_of(EDGE_BORE_MM)
    low, high = part.number_of(LEAF_LOW_MM), part.number_of(LEAF_HIGH_MM)
    backset = part.number_of(BACKSET_MM)
    if cross is None or edge is None or low is None or high is None or backset is None:
        return None
    latch = Latch("latch", backset, backset, part.number_of(LATCH_LENGTH_MM))
    return PrepWanted(cross, edge, low, high, (latch,))


def found_prep(given: OpeningInput, wanted: PrepWanted) -> tuple[PrepFound, dict[str, tuple[Allowance, float]]]:
    """Return the preparation that is there, and which bores are large enough by the rounding of the survey alone.

    A bore of 25.4 mm that was written as 25 mm is no bore to be enlarged by 0.4 mm: it is taken as large as the lock
    asks, and its fact, ``existing_item.edge_bore_mm``, is in the answer with what it carries and what it is off [mm].
    """
    leaf, lock = lock_leaf(given), lock_item(given)
    thick = leaf.thickness_mm if leaf is not None else None
    if lock is None:
        return PrepFound(thick, None, None, None), {}
    owed: dict[str, tuple[Allowance, float]] = {}

    def bore(fact: str, there: float | None, asked: float) -> float | None:
        allowed = allowance([(fact, there, 1.0)], (asked,))
        if not there or not 0.0 < asked - there <= allowed.mm + EQUAL_MM:
            return there
        owed[fact] = allowed, asked - there
        return asked

    cross = bore("existing_item.cross_bore_mm", lock.cross_bore_mm, wanted.cross_bore_mm)
    edge = bore("existing_item.edge_bore_mm", lock.edge_bore_mm, wanted.edge_bore_mm)
    return PrepFound(thick, cross, edge, lock.backset_mm), owed
