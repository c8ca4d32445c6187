"""Widths of pairs that do not say whether they are that of each leaf or of both together: PR 762, 6'-0" x 7'-0" PR.

Here belongs what such a cell holds, and the question that is asked of them once a column.
"""

import re
from typing import Final, Literal

from hwsched.attributes import as_text, within_limits
from hwsched.attributes.emptiness import UNKNOWN
from hwsched.language import to_phrase
from hwsched.quantities import BareUnit, One, ReadingError, Size, read_length
from hwsched.survey import LEAF

PAIRS: Final[tuple[Literal["leaf", "both"], ...]] = (to_phrase("leaf"), to_phrase("both"))
"""What a person answers: the width is that of each leaf, or of both together."""
ANSWERS: Final = (UNKNOWN, *PAIRS)
_WIDTH: Final = LEAF.attribute("width_mm")
_BETWEEN: Final = re.compile(r"[+/&]")
_PAIR: Final = re.compile(
    r"^(?:pr|pair|dbl|double)\b\.?[\s-]*(?:of\s+)?|\s*[,(]?\s*(?:pr|pair|dbl|double)\b\.?\)?$", re.IGNORECASE
)


def pair_measures(cell: object, bare: BareUnit | None) -> tuple[float, float | None] | None:
    r"""Return width and height of a pair in mm as they stand, the height where there is one; None for another cell.

    Examples
    --------
    >>> pair_measures("PR 762", "mm"), pair_measures("6'-0\" x 7'-0\" PR", None), pair_measures("762", "mm")
    ((762.0, None), (1828.8, 2133.6), None)
    """
    text = as_text(cell).strip()
    inner = _PAIR.sub("", text).strip()
    if not inner or inner == text:
        return None
    try:
        found = read_length(inner, bare)
    except ReadingError:
        return None
    if isinstance(found, Size):
        return found.width_mm, found.height_mm
    mm = getattr(found, "mm", None)
    return (mm, None) if mm is not None else None


def unequal_leaves(cell: object, bare: BareUnit | None) -> tuple[float, float] | None:
    """Return the widths of the active and the other leaf in mm of a cell such as 926 + 526; None for another cell.

    The wider one is the active one, common practice.

    Examples
    --------
    >>> unequal_leaves("526 + 926", "mm"), unequal_leaves("926+", "mm"), unequal_leaves("1 + 2", "mm")
    ((926.0, 526.0), None, None)
    >>> unequal_leaves("826/826", "mm"), unequal_leaves("3/0", "in")
    ((826.0, 826.0), None)
    """
    parts = _BETWEEN.split(as_text(cell))
    if len(parts) != 2:
        return None
    try:
        found = [read_length(part.strip(), bare) for part in parts]
    except ReadingError:
        return None
    widths = sorted((each.mm for each in found if isinstance(each, One)), reverse=True)
    if len(widths) != 2 or not all(within_limits(_WIDTH, mm) for mm in widths):
        return None
    return widths[0], widths[1]


def leaf_width(mm: float, pairs: str) -> float | None:
    """Return the width of one leaf, as a person said what the width of a pair is; None where nobody did."""
    return mm if pairs == "leaf" else mm / 2 if pairs == "both" else None
