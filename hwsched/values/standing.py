"""How a stored fit stands to the opening and to the program as they are now, and how that is said."""

from collections.abc import Mapping
from typing import Final, Literal

Standing = Literal["current", "facts-changed", "earlier-version", "not-worked-out"]
"""Worked out by this version from facts that still hold; from facts that have changed; by an earlier version; never.
Only the first counts."""

WHY: Final[Mapping[Standing, str]] = {
    "current": "",
    "facts-changed": "something that it follows from has changed since it was worked out",
    "earlier-version": "it was worked out by an earlier version of the program, and this one may say otherwise",
    "not-worked-out": "it was never worked out",
}
"""Why a fit does not count, as it goes on after the opening's mark and a colon."""


def earlier_words(openings: int) -> str:
    """Say how many openings an earlier version has worked out."""
    if openings == 1:
        return "Worked out by an earlier version: 1 opening may differ"
    return f"Worked out by an earlier version: {openings} openings may differ"
