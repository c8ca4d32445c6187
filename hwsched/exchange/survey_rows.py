"""How rows become openings: one row an opening, or several that carry its leaves and existing items.

A row without a mark goes on with the row above it. A row with a mark that stood before joins its opening when it
brings a leaf or an item; one that brings neither is a second opening under the same mark, and refused.
"""

from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Any, Final

from hwsched.exchange.problems import CellProblem
from hwsched.exchange.survey_facts import SurveyedItem, SurveyedLeaf, SurveyedOpening
from hwsched.exchange.survey_grid import Grid
from hwsched.exchange.survey_mapping import Target
from hwsched.exchange.survey_words import LOCK_FACTS

RowFacts = dict[Target, Any]
_MARK: Final = Target("opening", "mark")
_KIND: Final = Target("existing_item", "kind")
_POSITION: Final = Target("leaf", "position")
_LEAFLESS: Final = ("lift", "turnstile")


@dataclass(frozen=True, slots=True)
class Gathered:
    """Openings and what kept others out."""

    openings: tuple[SurveyedOpening, ...]
    rejected: tuple[str, ...]
    problems: tuple[CellProblem, ...]


@dataclass
class _Draft:
    """An opening while its rows come in."""

    mark: str
    origin: str
    row: int
    facts: dict[str, Any] = field(default_factory=dict)
    leaves: dict[str, tuple[dict[str, Any], str]] = field(default_factory=dict)
    items: list[tuple[dict[str, Any], str]] = field(default_factory=list)
    bad: bool = False


def gather(sheets: Iterable[tuple[Grid, dict[int, RowFacts]]], problems: list[CellProblem]) -> Gathered:
    """Gather the rows of sheets into openings.

    Parameters
    ----------
    sheets : iterable
        Each grid with the facts read from its rows, by row from 0; the sheet of openings first.
    problems : list of CellProblem
        Cells that were refused; the opening of their row is kept out.

    Returns
    -------
    Gathered
        In the order of the file.
    """
    drafts: dict[str, _Draft] = {}
    found = list(problems)
    bad_rows = {(problem.sheet, problem.row - 1) for problem in problems}
    for grid, rows in sheets:
        current: _Draft | None = None
        own = not any(key for key in drafts)
        for place in sorted(set(rows) | {row for sheet, row in bad_rows if sheet == grid.sheet}):
            facts = rows.get(place, {})
            current = _take(grid, place, facts, drafts, current, found, own)
            if current is not None and (grid.sheet, place) in bad_rows:
                current.bad = True
    openings = tuple(_finished(draft) for draft in drafts.values() if not draft.bad)
    rejected = tuple(draft.mark for draft in drafts.values() if draft.bad)
    return Gathered(openings, rejected, tuple(found))


def _take(
    grid: Grid,
    place: int,
    facts: RowFacts,
    drafts: dict[str, _Draft],
    current: _Draft | None,
    problems: list[CellProblem],
    own: bool,
) -> _Draft | None:
    origin = f"{grid.file}, {grid.sheet}, row {place + 1}"
    mark = facts.get(_MARK)
    if mark is None:
        if current is None:
            if facts:
                problems.append(_row_problem(grid, place, "has no mark", "the mark of an opening"))
            return None
        _join(current, facts, origin, grid, place, problems, again=True)
        return current
    draft = drafts.get(mark)
    if draft is None:
        if not own:
            problems.append(
                _row_problem(
                    grid, place, f"names the mark {mark}, which the sheet of openings does not have", "its mark"
                )
            )
            return None
        draft = drafts[mark] = _Draft(mark, origin, place)
        _join(draft, facts, origin, grid, place, problems, again=False)
        return draft
    _join(draft, facts, origin, grid, place, problems, again=True)
    return draft


def _join(
    draft: _Draft, facts: RowFacts, origin: str, grid: Grid, place: int, problems: list[CellProblem], *, again: bool
) -> None:
    opening: dict[str, Any] = {}
    leaves: dict[str, dict[str, Any]] = {}
    items: dict[str, dict[str, Any]] = {}
    lock: dict[str, Any] = {}
    item: dict[str, Any] = {}
    for target, value in facts.items():
        if target.entity == "opening":
            opening[target.attribute] = value
        elif target.entity == "leaf":
            if target.attribute != "position":
                leaves.setdefault(target.slot, {})[target.attribute] = value
        elif target.slot:
            items.setdefault(target.slot, {"kind": target.slot})[target.attribute] = value
        elif target.attribute in LOCK_FACTS:
            lock[target.attribute] = value
        else:
            item[target.attribute] = value
    position = facts.get(_POSITION)
    if again:
        _compare(draft, opening, grid, place, problems)
        brings = item or lock or items or (position is not None and position not in draft.leaves)
        if not brings:
            message = f"is a second row of the mark {draft.mark}, which stands in row {draft.row + 1} already"
            accepted = "another mark, or a leaf or an existing item in this row"
            problems.append(_row_problem(grid, place, message, accepted))
            draft.bad = True
            return
    draft.facts.update(opening)
    _join_leaves(draft, leaves, position, origin)
    if lock and (not item.get("kind") or item.get("kind") == "lock"):
        draft.items.append(({**item, **lock, "kind": "lock"}, origin))
    else:
        if lock:
            draft.items.append(({**lock, "kind": "lock"}, origin))
        if item:
            draft.items.append((item, origin))
    draft.items += [(found, origin) for found in items.values()]


def _compare(draft: _Draft, opening: dict[str, Any], grid: Grid, place: int, problems: list[CellProblem]) -> None:
    for name, value in opening.items():
        before = draft.facts.get(name)
        if name != "mark" and before is not None and before != value:
            message = f"says {name.replace('_', ' ')} {value}, row {draft.row + 1} of the same mark says {before}"
            problems.append(_row_problem(grid, place, message, "the same in both rows, or only in one"))
            draft.bad = True


def _join_leaves(draft: _Draft, leaves: dict[str, dict[str, Any]], position: str | None, origin: str) -> None:
    pair = draft.facts.get("form") == "pair" or {"active", "inactive"} & (leaves.keys() | draft.leaves.keys())
    plain = leaves.pop("", {})
    if position is not None or plain:
        name = position or ("active" if pair else "single")
        _add_leaf(draft, name, plain, origin)
    for name, facts in leaves.items():
        _add_leaf(draft, name, facts, origin)


def _add_leaf(draft: _Draft, name: str, facts: dict[str, Any], origin: str) -> None:
    held = draft.leaves.get(name)
    if held is None:
        draft.leaves[name] = (dict(facts), origin)
    else:
        held[0].update(facts)


def _finished(draft: _Draft) -> SurveyedOpening:
    form = draft.facts.get("form")
    leaves = dict(draft.leaves)
    if form == "pair":
        if "single" in leaves:
            leaves["active"] = leaves.pop("single")
        for name in ("active", "inactive"):
            leaves.setdefault(name, ({}, draft.origin))
    elif not leaves and form not in _LEAFLESS:
        leaves["single"] = ({}, draft.origin)
    order = {"single": 0, "active": 1, "inactive": 2}
    named = sorted(leaves.items(), key=lambda entry: order.get(entry[0], 3))
    main = next((name for name, _ in named if name != "inactive"), None)
    return SurveyedOpening(
        draft.mark,
        {**draft.facts, "mark": draft.mark},
        tuple(SurveyedLeaf(name, {**facts, "position": name}, origin) for name, (facts, origin) in named),
        tuple(
            SurveyedItem(facts, {"leaf": main} if main and "leaf" not in facts else {}, origin)
            for facts, origin in draft.items
        ),
        draft.origin,
    )


def _row_problem(grid: Grid, place: int, message: str, accepted: str) -> CellProblem:
    return CellProblem(grid.file, grid.sheet, place + 1, "", "", "", message, accepted)
