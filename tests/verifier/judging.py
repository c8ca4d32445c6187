"""Judges every opening that the program calls fitted: can it be installed and powered as printed?

A violation has a mark, a family, numbers, and the sentence from which it follows. Judged is against the whole truth of
the opening, also where the surveyor left a cell open: what was never known must not be taken for known.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from tests.verifier import judging_hands, judging_locks, judging_power, judging_tools, judging_units
from tests.verifier.cells import Cells, Opening
from tests.verifier.standing import CircuitFeed, Standing, stand
from tests.verifier.violation import Found


@dataclass(frozen=True)
class Violation:
    """One reason for which a fitted opening cannot be installed or powered as printed."""

    mark: str
    family: str
    numbers: dict[str, float]
    sentence: str
    guessed: bool = False
    """Whether a cell of the opening was left open."""


def passed(answer: dict[str, Any]) -> bool:
    """Tell whether the program calls an opening fitted: each lock point fits, no error stands unwaived."""
    points = answer["lock_points"]
    errors = any(each["severity"] == "error" and not each["waived"] for each in answer["findings"])
    return bool(points) and all(point["status"] == "fits" for point in points) and not errors


def refused(answer: dict[str, Any]) -> bool:
    """Tell whether the program says that nothing fits."""
    return any(point["status"] == "does-not-fit" for point in answer["lock_points"])


def to_measure(answer: dict[str, Any]) -> bool:
    """Tell whether the program asks for facts."""
    return not refused(answer) and any(point["status"] == "to-measure" for point in answer["lock_points"])


def by_rounding(answer: dict[str, Any]) -> bool:
    """Tell whether the program says that an opening is right by the rounding of its survey, and what to measure."""
    return any("right only by the rounding" in each["message"] for each in answer["findings"])


def judge(
    opening: Opening, parts: dict[str, Cells], answer: dict[str, Any], laid: CircuitFeed | None = None
) -> list[Violation]:
    """Return what is wrong with a fitted opening, one violation a family; what a laid circuit brings is told."""
    seen: dict[str, Violation] = {}
    for point in answer["lock_points"]:
        for family, numbers, sentence in _found(stand(opening, parts, point, laid)):
            rounded = {name: round(value, 3) for name, value in numbers.items()}
            seen.setdefault(family, Violation(opening.mark, family, rounded, sentence, bool(opening.blank)))
    return list(seen.values())


def _found(at: Standing) -> Iterable[Found]:
    yield from judging_locks.judged(at)
    yield from judging_units.judged(at)
    yield from judging_tools.judged(at)
    yield from judging_hands.judged(at)
    yield from judging_power.judged(at)
