"""Fills what a surveyor left open: what is refused with a blank cell must be refused whatever stands in it.

A blank cell is filled with the truth that was drawn for it, and with what was drawn for the same cell of other openings
of the form. Where one of them fits, the refusal was false: what could make it fit had to be asked for.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from random import Random
from typing import Any, Final

from tests.verifier.cells import Cells, Opening
from tests.verifier.driving import answered
from tests.verifier.judging import passed, refused
from tests.verifier.shops import catalogue
from tests.verifier.surveys import survey

FILLINGS: Final = 3
"""Of each refused opening, besides the truth."""


@dataclass(frozen=True)
class FalseRefusal:
    """An opening that is refused with blank cells and fits with them filled."""

    mark: str
    blank: dict[str, Any]
    """Each open cell with what fills it."""
    said: str

    def __str__(self) -> str:
        return f"{self.mark}: {self.blank}\n    the program: {self.said[:300]}"


def filled(opening: Opening, number: int, values: dict[str, Any]) -> Opening:
    """Return an opening with its open cells filled, under a mark of its own."""
    facts, leaves, lock = {**opening.facts}, [{**leaf} for leaf in opening.leaves], {**opening.lock}
    items = [{**item} for item in opening.items]
    for name, value in values.items():
        entity, cell = name.split(".", 1)
        if entity == "opening":
            facts[cell] = value
        elif entity == "leaf":
            leaves[0][cell] = value
        elif entity == "lock":
            lock[cell] = value
        else:
            items[int(entity.removeprefix("item"))][cell] = value
    mark = f"{opening.mark}-{number}"
    return replace(opening, mark=mark, facts=facts, leaves=leaves, lock=lock, items=items, blank=set())


def fillings(rng: Random, opening: Opening, others: list[Opening], count: int) -> Iterator[dict[str, Any]]:
    """Yield values for the open cells: first the truth, then what other openings of the form have there."""
    yield {name: _drawn(opening, name, None)[0] for name in sorted(opening.blank)}
    alike = [each for each in others if each.mark[:2] == opening.mark[:2]]
    for _ in range(count):
        yield {
            name: rng.choice(
                [value for each in alike for value in _drawn(each, name, opening)] or _drawn(opening, name, None)
            )
            for name in sorted(opening.blank)
        }


def _drawn(opening: Opening, name: str, asked: Opening | None) -> list[Any]:
    """Return what was drawn for a cell; of items all of the kind of the one that is asked for."""
    entity, cell = name.split(".", 1)
    if entity.startswith("item"):
        at = int(entity.removeprefix("item"))
        rows = [opening.items[at]] if asked is None else _of_kind(opening, asked.items[at]["kind"])
    else:
        rows = [{"opening": opening.facts, "leaf": opening.leaf(), "lock": opening.lock}[entity]]
    return [row[cell] for row in rows if row.get(cell) is not None]


def _of_kind(opening: Opening, kind: str) -> list[Cells]:
    return [item for item in opening.items if item["kind"] == kind]


def false_refusals(seed: int, count: int) -> tuple[int, list[FalseRefusal]]:
    """Draw openings all of which have open cells; return how many were refused, and those refused falsely."""
    rng = Random(f"fillings {seed}")
    parts = catalogue(rng)
    openings = survey(rng, parts, count, blanks=1.0)
    found: list[FalseRefusal] = []
    answers = answered(parts, openings)
    doubted = [each for each in openings if refused(answers[each.mark])]
    tried = [
        (each, filled(each, number, values), values)
        for each in doubted
        for number, values in enumerate(fillings(rng, each, openings, FILLINGS))
    ]
    after = answered(parts, [whole for _, whole, _ in tried]) if tried else {}
    for blank, whole, values in tried:
        if passed(after[whole.mark]):
            errors = [each["message"] for each in answers[blank.mark]["findings"] if each["severity"] == "error"]
            found.append(FalseRefusal(blank.mark, values, " / ".join(errors)))
    return len(doubted), found
