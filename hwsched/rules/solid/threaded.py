"""What of a threaded cylinder's stack fitting and rules share. Whether a head stands right is said by a rule."""

from collections.abc import Iterable, Mapping
from typing import Final

from hwsched.attributes.of_parts import CAM_OFFSET_MM, HEIGHT_MM, LENGTH_MM
from hwsched.rules.reading import entry, lock_item, lock_leaf
from hwsched.rules.rounding import Allowance, allowance
from hwsched.rules.rule import Limit
from hwsched.values import Fit, OpeningInput, Part, Settings

LIMITS: Final = (
    Limit(
        "tolerance_mm",
        25.4 / 32,
        "How far the head may stand off its collar.",
        "common practice, one thread pitch",
        unit="mm",
        low=0.0,
        high=25.0,
    ),
    Limit(
        "turns_beyond",
        2.0,
        "Turns that the cam may lie beyond the case's centre plane.",
        "common practice",
        unit="",
        low=0.0,
        high=20.0,
    ),
)
"""Of the rule that says whether a head stands right."""
_DECLARED: Final = {limit.name: limit.value for limit in LIMITS}


def stack_limits(settings: Settings) -> Mapping[str, float]:
    """Return by how much heads and cams may be off, as the project has it."""
    return settings.limits_for("cylinder-flush", _DECLARED)


def heights_in(given: OpeningInput, fit: Fit) -> tuple[float | None, ...]:
    """Return the heights of a fit's collar and rings."""
    under = (entry(given, each) for each in fit.parts if each.role in ("collar", "ring"))
    return tuple(part.number_of(HEIGHT_MM) for part in under if part is not None)


def stack_allowance(given: OpeningInput, part: Part, heights: Iterable[float | None]) -> Allowance:
    """Return how far a head may be off by the rounding of leaf, trim and case position."""
    leaf, lock = lock_leaf(given), lock_item(given)
    facts = [("leaf.thickness_mm", leaf.thickness_mm if leaf is not None else None, 0.5)]
    if lock is not None:
        facts.append(("existing_item.trim_key_mm", lock.trim_key_mm, 1.0))
        facts.append(("existing_item.case_offset_mm", lock.case_offset_mm, 1.0))
    return allowance(facts, (part.number_of(LENGTH_MM), part.number_of(CAM_OFFSET_MM), *heights))
