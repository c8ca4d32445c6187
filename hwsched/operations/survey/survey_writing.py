"""Writing what a survey changes: new openings, changed facts, what is retired or comes back.

How a file differs from the project is told in `hwsched.exchange.survey`; here it is only written, in a change set that
is open.
"""

from collections.abc import Mapping, Sequence
from typing import Any, Final

from sqlalchemy import Table, select

from hwsched.exchange.survey.difference import OpeningChange, Preview
from hwsched.model.bulk import among
from hwsched.model.journal.journal import Change
from hwsched.model.levels import levels_for
from hwsched.model.queries import by_opening, read_extra, read_inputs
from hwsched.model.tables import BLANK, ITEM_TABLE, LEAF_TABLE, OPENING_TABLE
from hwsched.operations.survey.retiring import restore, retire
from hwsched.stopping import asking

_TABLES: Final[Mapping[str, Table]] = {"opening": OPENING_TABLE, "leaf": LEAF_TABLE, "existing_item": ITEM_TABLE}
_PLACE: Final = ("building", "level")
_COLUMNS: Final[Mapping[str, frozenset[str]]] = {name: frozenset((*BLANK[name], *_PLACE)) for name in _TABLES}
"""Facts that have a column, or make one; the others are fields of the project's own."""


def write_preview(change: Change, preview: Preview, file: str) -> None:
    """Write all that a preview says that a file changes.

    Parameters
    ----------
    change : Change
        In which it is written.
    preview : Preview
        As decided.
    file : str
        Its name, for what is retired.
    """
    if preview.restored:
        restore(change, [row_id for _, row_id in preview.restored])
    _write_new(change, preview)
    write_changed(change, preview.changed)
    for leaf in preview.leaves_gone:
        change.delete(ITEM_TABLE, leaf.items)
        change.delete(LEAF_TABLE, [leaf.leaf_id])
    into: dict[str, list[str]] = {}
    for _, row_id, mark in preview.joined:
        into.setdefault(mark, []).append(row_id)
    for mark, ids in into.items():
        retire(change, ids, f"one with {mark} now")
    others = {row_id for ids in into.values() for row_id in ids}
    if gone := [row_id for _, row_id in preview.retired if row_id not in others]:
        retire(change, gone, f"not in {file}")


def _write_new(change: Change, preview: Preview) -> None:
    if not preview.new:
        return
    places = {_place_of(opening.facts) for opening in preview.new}
    levels = levels_for(change, places)
    rows = []
    for opening in asking(preview.new):
        row = _row({**opening.facts, "level_id": levels[_place_of(opening.facts)]}, OPENING_TABLE)
        for name in _PLACE:
            row.pop(name, None)
        rows.append(row)
    ids = change.insert(OPENING_TABLE, rows, [opening.origin for opening in preview.new])
    leaves, leaf_origins, items, item_origins = [], [], [], []
    for opening_id, opening in asking(zip(ids, preview.new, strict=True)):
        for ordinal, leaf in enumerate(opening.leaves):
            leaves.append({"opening_id": opening_id, "ordinal": ordinal, **leaf.facts})
            leaf_origins.append(leaf.origin)
        for ordinal, item in enumerate(opening.items):
            facts = {"opening_id": opening_id, "ordinal": ordinal, **item.deduced, **item.facts}
            items.append(_row(facts, ITEM_TABLE))
            item_origins.append(item.origin)
    change.insert(LEAF_TABLE, leaves, leaf_origins)
    change.insert(ITEM_TABLE, items, item_origins)


def _place_of(facts: Mapping[str, Any]) -> tuple[str | None, str | None]:
    return facts.get("building"), facts.get("level")


def _row(facts: dict[str, Any], table: Table) -> dict[str, Any]:
    """Split facts into columns and the project's own fields; where there are none of these, they are the row."""
    columns = _COLUMNS[str(table.name)]
    if columns.issuperset(facts):
        return facts
    row = {name: value for name, value in facts.items() if name in columns}
    row["extra"] = {name: value for name, value in facts.items() if name not in row}
    return row


def write_changed(change: Change, openings: tuple[OpeningChange, ...]) -> None:
    """Write the facts that change, and leaves and items that are new."""
    edits: dict[str, dict[str, dict[str, Any]]] = {}
    origins: dict[tuple[str, str], str] = {}
    for opening in openings:
        for fact in opening.facts:
            edits.setdefault(fact.entity, {}).setdefault(fact.row_id, {})[fact.attribute] = fact.after
            origins[fact.entity, fact.row_id] = fact.origin
    _move(change, edits.get("opening", {}))
    for entity, rows in edits.items():
        table = _TABLES[entity]
        told = {row_id: _row(facts, table) for row_id, facts in rows.items()}
        own = [row_id for row_id, row in told.items() if "extra" in row]
        held = read_extra(change.connection, table, own) if own else {}
        for row_id in own:
            told[row_id]["extra"] = {**held.get(row_id, {}), **told[row_id]["extra"]}
        change.update(table, told.items(), [origins[entity, row_id] for row_id in told])
    after = _after_last(change, LEAF_TABLE, [o.opening_id for o in openings if o.new_leaves])
    leaves = [
        (o.opening_id, after.get(o.opening_id, 0) + n, each) for o in openings for n, each in enumerate(o.new_leaves)
    ]
    change.insert(
        LEAF_TABLE,
        [{"opening_id": opening_id, "ordinal": ordinal, **leaf.facts} for opening_id, ordinal, leaf in leaves],
        [leaf.origin for _, _, leaf in leaves],
    )
    after = _after_last(change, ITEM_TABLE, [o.opening_id for o in openings if o.new_items])
    items = [
        (o.opening_id, after.get(o.opening_id, 0) + n, each) for o in openings for n, each in enumerate(o.new_items)
    ]
    change.insert(
        ITEM_TABLE,
        [
            {"opening_id": opening_id, "ordinal": ordinal, **_row({**item.deduced, **item.facts}, ITEM_TABLE)}
            for opening_id, ordinal, item in items
        ],
        [item.origin for _, _, item in items],
    )


def _after_last(change: Change, table: Table, opening_ids: Sequence[str]) -> dict[str, int]:
    """Return the number behind the last of each opening's rows; not their count, since what is removed leaves a gap."""
    if not opening_ids:
        return {}
    query = select(table.c.opening_id, table.c.ordinal)
    found: dict[str, int] = {}
    for opening_id, ordinal in among(change.connection, query, table.c.opening_id, opening_ids):
        found[opening_id] = max(found.get(opening_id, 0), ordinal + 1)
    return found


def _move(change: Change, rows: dict[str, dict[str, Any]]) -> None:
    """Turn changed buildings and levels into the levels' rows."""
    moved = {row_id: facts for row_id, facts in rows.items() if "building" in facts or "level" in facts}
    if not moved:
        return
    places = {
        given.opening.id: (
            moved[given.opening.id].pop("building", given.opening.building),
            moved[given.opening.id].pop("level", given.opening.level),
        )
        for given, *_ in by_opening(read_inputs(change.connection, list(moved)))
    }
    levels = levels_for(change, set(places.values()))
    for row_id, place in places.items():
        moved[row_id]["level_id"] = levels[place]
