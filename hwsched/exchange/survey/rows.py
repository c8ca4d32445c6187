"""How rows become openings: one row an opening, or several that carry its leaves and existing items.

A row without a mark goes on with the row directly above it. A row with a mark that stood before joins its opening when
it brings a leaf or an item; one that brings neither is a second opening under the same mark, and refused. What the rows
of one opening say must agree. How leaves and items follow from the rows gathered here stands in `survey_openings`.
"""

from collections.abc import Iterable, Iterator
from typing import Any

from hwsched.exchange.problems import CellProblem
from hwsched.exchange.survey.row import Row, rows_of
from hwsched.exchange.survey.row_items import take_items
from hwsched.exchange.survey.sheet import SheetFacts
from hwsched.exchange.survey.told import Draft, FileRow, Told, row_problem, tell
from hwsched.exchange.survey.types import Types, is_type_row
from hwsched.stopping import asking


def gather(
    sheets: Iterable[tuple[SheetFacts, bool]],
    *,
    only_named: bool = False,
    types: Types | None = None,
    rows_are_types: bool = False,
) -> tuple[list[Draft], list[CellProblem], int]:
    """Gather the rows of sheets into openings.

    Parameters
    ----------
    sheets : iterable of (SheetFacts, bool)
        With True for a sheet of openings, False for a list of items; those of openings first.
    only_named : bool
        In the lists of items pass over marks that the sheet of openings does not have, since not all were read.
    types : Types, optional
        Of the file's tables of types; rows that stand for a type are added.
    rows_are_types : bool
        Whether a person said that rows of several doors are types.

    Returns
    -------
    tuple
        Drafts in the order of the file, problems, and the number of rows passed over.
    """
    known = types or Types()
    gathering = _Gathering(only_named, known)
    for sheet, makes in sheets:
        gathering.current, gathering.lost = None, False
        known.above = None
        rows = list(rows_of(sheet))
        if rows_are_types:
            for _, row in rows:
                if makes and row.count is not None and row.mark is not None:
                    known.add(row.mark, row)
            rows = [(entry, row) for entry, row in rows if row.count is None or not makes]
        # A list of types alone is a list of openings: only where other marks stand too is a type the heading of them.
        mixed = makes and len({is_type_row(row.mark) for _, row in rows if row.mark is not None}) > 1
        for entry, row in asking(rows):
            if makes and _heads_type(row, mixed=mixed):
                known.above = row
                known.add(row.of_type or row.mark or "", row)
                gathering.current, gathering.lost = None, True
                continue
            gathering.take(sheet, entry, row, makes=makes)
    return list(gathering.drafts.values()), gathering.problems, gathering.skipped


def draft_of(row: Row) -> tuple[Draft, list[CellProblem]]:
    """Return the opening that one row alone describes, and what does not fit in it."""
    draft = Draft(row.mark or "", Told(row.place))
    problems = list(_join(draft, row, again=False))
    draft.bad = bool(problems)
    return draft, problems


def _heads_type(row: Row, *, mixed: bool) -> bool:
    """Tell whether a row says what holds for the openings below it: a type in place of a mark, or beside none."""
    if row.mark is not None:
        return mixed and row.holds_facts and is_type_row(row.mark)
    return row.of_type is not None and row.holds_facts


class _Gathering:
    """Openings so far, and the one with which a row without a mark goes on."""

    def __init__(self, only_named: bool, types: Types) -> None:
        self._types = types
        self.drafts: dict[str, Draft] = {}
        self.problems: list[CellProblem] = []
        self.skipped = 0
        self.current: Draft | None = None
        self.lost = False
        """Whether the rows come after a mark that is refused or not read: they are its, and fall with it."""
        self._only_named = only_named

    def take(self, sheet: SheetFacts, entry: int, row: Row, *, makes: bool) -> None:
        """Take the next row."""
        again = True
        if row.mark is not None:
            self.current = self.drafts.get(row.mark)
            # A list of items makes no openings: a mark that only stands there is more often a slip than a new door.
            self.lost = self.current is None and not makes
            if self.lost:
                self._without_opening(row)
                return
            if self.current is None:
                self.current = self.drafts[row.mark] = Draft(row.mark, Told(row.place))
                self.current.count, self.current.of_type = row.count, row.of_type or ""
                again = False
                row = self._types.opening(row)
        elif entry in sheet.no_mark:
            self.current, self.lost = None, True
        # Below an empty row nothing goes on: a row without a mark there belongs to nobody, not to the last opening
        # above.
        elif entry in sheet.apart:
            self.current, self.lost = None, False
        if self.current is None:
            if not self.lost and row.holds_facts:
                self.problems.append(row_problem(row.place, "has no mark", "the mark of an opening"))
            elif not self.lost:
                sheet.passed_over.append(
                    f"sheet {row.place.sheet}, row {row.place.row}: no mark, and nothing that is read"
                )
            return
        if again and row.mark is None and not row.holds_facts:
            # A second line of a row: what it adds stands in columns that are not read.
            sheet.passed_over.append(
                f"sheet {row.place.sheet}, row {row.place.row}: a further line of {self.current.mark}"
            )
            return
        found = list(_join(self.current, row, again=again))
        if entry in sheet.bad:
            # What the row lacks may be what its refused cell says.
            found = []
            self.current.bad = True
        self.problems += found
        self.current.bad = self.current.bad or bool(found)

    def _without_opening(self, row: Row) -> None:
        if self._only_named:
            self.skipped += 1
            return
        message = f"names the mark {row.mark}, which the sheet of openings does not have"
        self.problems.append(row_problem(row.place, message, "the mark of an opening"))


def _join(draft: Draft, row: Row, *, again: bool) -> Iterator[CellProblem]:
    """Take a row into its opening; yields what does not fit."""
    if again:
        _settle_notes(draft, row)
        if (problem := _brings_nothing(draft, row)) is not None:
            yield problem
            return
        yield from tell(draft.told, row.opening, "opening", row.place)
    else:
        draft.told.facts = row.opening
        draft.told.rows.append((row.place, row.opening))
    if row.two_leaves:
        draft.two_leaves = draft.two_leaves or row.place
    if row.position is not None:
        draft.typed.add(row.position)
    if row.leaf or row.position is not None:
        yield from _tell_leaf(draft, row.position or "", row.leaf, row.place)
    for slot, facts in row.leaf_slots.items():
        yield from _tell_leaf(draft, slot, facts, row.place)
    yield from take_items(draft, row, again=again)


def _settle_notes(draft: Draft, row: Row) -> None:
    """Give a remark in a row of its own to the item of that row, or join it to the opening's."""
    note = row.opening.get("notes")
    held = draft.told.facts.get("notes")
    if note is None or note == held:
        return
    if row.item.get("kind") is not None and "item_notes" not in row.item:
        row.item["item_notes"] = note
        row.opening = {name: value for name, value in row.opening.items() if name != "notes"}
    elif held is not None:
        draft.told.facts["notes"] = row.opening["notes"] = f"{held}; {note}"


def _brings_nothing(draft: Draft, row: Row) -> CellProblem | None:
    """Say so where a further row of a mark names neither a leaf nor an item that was not there."""
    own = bool(row.opening.keys() - {"notes", "building", "level"} or row.leaf)
    new_leaf = row.position is not None and row.position not in draft.typed
    new_lock = bool(row.lock) and not own and (row.position or "") not in draft.locks
    if row.item or row.item_slots or new_leaf or new_lock:
        return None
    first = draft.told.place
    where = f"row {first.row}" if first.sheet == row.place.sheet else f"sheet {first.sheet}, row {first.row}"
    message = f"is a second row of the mark {draft.mark}, which stands in {where} already"
    if row.leaf and "pair" in (draft.told.facts.get("form"), row.opening.get("form")):
        message += ", and does not say which leaf of the pair it is"
        return row_problem(row.place, message, "Active or Inactive in a column Leaf, in both rows")
    return row_problem(row.place, message, "another mark, or a leaf or an existing item in this row")


def _tell_leaf(draft: Draft, position: str, facts: dict[str, Any], place: FileRow) -> Iterator[CellProblem]:
    told = draft.leaves.get(position)
    if told is None:
        draft.leaves[position] = Told(place, facts, [(place, facts)])
    else:
        yield from tell(told, facts, "leaf", place)
