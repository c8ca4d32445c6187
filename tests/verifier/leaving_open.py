"""Leaves cells open of openings that fit: with a fact less, none may be refused for good.

What fits with a cell filled must be asked for that cell while it is blank, or fit without it: a refusal would say that
no value of it helps, and the truth does. So each opening that is called fitted is asked again, some cells left open.
"""

from dataclasses import dataclass, replace
from random import Random
from typing import Any, Final

from tests.verifier.cells import Opening
from tests.verifier.driving import answered
from tests.verifier.judging import passed, refused
from tests.verifier.shops import catalogue
from tests.verifier.surveys import survey

TIMES: Final = 2
"""How often each opening is asked again, with other cells open."""
_WHICH: Final = frozenset({"building", "level", "room", "form", "leaf", "on_leaf", "kind", "lock", "power_wish"})
"""Cells that say which thing it is, and no size or property of it."""


@dataclass(frozen=True)
class FalseRefusal:
    """An opening that fits, and is refused with some of its cells blank."""

    mark: str
    blank: dict[str, Any]
    """Each open cell with the truth that fits."""
    said: str

    def __str__(self) -> str:
        return f"{self.mark}: {self.blank}\n    the program: {self.said[:300]}"


def false_refusals(seed: int, count: int) -> tuple[int, list[FalseRefusal]]:
    """Draw openings; return how many were asked again with cells open, and those that are refused then."""
    rng = Random(f"open {seed}")
    parts = catalogue(rng)
    whole = survey(rng, parts, count, blanks=0.0)
    answers = answered(parts, whole)
    asked = [
        (opening, _left_open(rng, opening, number))
        for opening in whole
        if passed(answers[opening.mark])
        for number in range(TIMES)
    ]
    after = answered(parts, [left for _, left in asked])
    found = []
    for opening, left in asked:
        if refused(after[left.mark]):
            errors = [each["message"] for each in after[left.mark]["findings"] if each["severity"] == "error"]
            blank = {name: _cell(opening, name) for name in sorted(left.blank)}
            found.append(FalseRefusal(left.mark, blank, " / ".join(errors)))
    return len(asked), found


def _left_open(rng: Random, opening: Opening, number: int) -> Opening:
    """Return an opening under a mark of its own with some more cells left open, whatever a surveyor can leave open."""
    rows = {"opening": opening.facts, "leaf": opening.leaf(), "lock": opening.lock}
    rows |= {f"item{i}": item for i, item in enumerate(opening.items)}
    names = [
        f"{entity}.{cell}"
        for entity, row in rows.items()
        for cell, value in row.items()
        if value is not None and cell not in _WHICH and f"{entity}.{cell}" not in opening.blank
    ]
    blank = set(rng.sample(names, k=min(len(names), rng.choice((1, 1, 2, 3)))))
    return replace(opening, mark=f"{opening.mark}-{number}", blank=opening.blank | blank)


def _cell(opening: Opening, name: str) -> Any:
    entity, cell = name.split(".", 1)
    if entity.startswith("item"):
        return opening.items[int(entity.removeprefix("item"))][cell]
    return {"opening": opening.facts, "leaf": opening.leaf(), "lock": opening.lock}[entity].get(cell)
