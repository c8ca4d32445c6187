"""The places of a plate's screws, as the catalogue writes them."""

import re
from typing import Final

Spot = tuple[float, float]
"""From the plate's lower left corner [mm]."""

_PAIR: Final = re.compile(r"\s*(-?[0-9]+(?:\.[0-9]+)?)\s*[,x]\s*(-?[0-9]+(?:\.[0-9]+)?)\s*", re.IGNORECASE)


def read_places(text: str) -> tuple[Spot, ...]:
    """Read the places of screws as the catalogue writes them; raises ValueError with what is accepted.

    Examples
    --------
    >>> read_places("6, 6; 64, 6; 35, 144.5")
    ((6.0, 6.0), (64.0, 6.0), (35.0, 144.5))
    """
    found = []
    for pair in text.split(";"):
        match = _PAIR.fullmatch(pair)
        if match is None:
            raise ValueError(f"'{pair.strip()}' is no place: mm from the plate's lower left, such as 6, 6; 64, 6")
        found.append((float(match[1]), float(match[2])))
    return tuple(found)
