"""Limits of rules and what ranks alternatives, in words: their names are for files and the command line."""

from collections.abc import Mapping
from typing import Final

from hwsched.attributes.showing import unit_sign
from hwsched.language import phrase, to_phrase
from hwsched.rules.rule import Limit

PREFERRED: Final[Mapping[str, str]] = {
    "cost": to_phrase("Least cost first"),
    "holes": to_phrase("Fewest holes first"),
    "stock": to_phrase("What is in stock first"),
    "preferred": to_phrase("Preferred parts first"),
}
"""What ranks the alternatives of a fit, as a person chooses it."""


def limit_words(limit: Limit) -> str:
    """Say what a limit is, with the unit in which it is typed."""
    said = phrase(limit.text).rstrip(".")
    return f"{said} [{_sign(limit.unit)}]" if limit.unit else said


def limit_value(limit: Limit, value: float) -> str:
    """Say the value of a limit with its unit."""
    if not limit.unit:
        return f"{value:g}"
    sign = _sign(limit.unit)
    return f"{value:g}{sign}" if sign == "°" else f"{value:g} {sign}"


def _sign(unit: str) -> str:
    """Return a unit as people write it: a sign in every language alike, a word in the language in force."""
    sign = unit_sign(unit)
    return phrase(unit) if sign == unit else sign
