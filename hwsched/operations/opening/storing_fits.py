"""Storing fits: each content once, and per lock point a pointer with program and facts that it was made from."""

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from sqlalchemy import Connection, Table, insert, select

from hwsched.model.bulk import among, execute_many
from hwsched.model.columns import json_text
from hwsched.model.fit_record import fit_texts, text_key
from hwsched.model.journal.journal import Change
from hwsched.model.lock_points import points_to_openings
from hwsched.model.queries import StoredFit
from hwsched.model.tables import ENGINE, FACTS_READ, FIT_CONTENT, OPENING_FIT


def store_fits(change: Change, fits: Mapping[str, StoredFit]) -> None:
    """Store fits.

    Parameters
    ----------
    change : Change
        Open change set; the pointers are journalled, the contents are immutable.
    fits : mapping
        Lock point to its fit with what made it.
    """
    if not fits:
        return
    keys: dict[int, tuple[str, str | None]] = {}
    contents: dict[str, tuple[str, str]] = {}
    for stored in fits.values():
        # Openings alike share one object, so its text is made once.
        if id(stored.fit) not in keys:
            texts = fit_texts(stored.fit)
            key = text_key(texts.content)
            keys[id(stored.fit)] = key, texts.battery
            contents[key] = (stored.fit.status, texts.content)
            if texts.common is not None:
                contents[text_key(texts.common)] = (stored.fit.status, texts.common)
    connection = change.connection
    _hold(
        connection,
        FIT_CONTENT,
        [{"key": key, "status": status, "content": content} for key, (status, content) in contents.items()],
    )
    engines = {each.engine.key: each.engine for each in fits.values() if each.engine is not None}
    _hold(
        connection,
        ENGINE,
        [{"key": e.key, "program": e.program, "parts": json_text(dict(e.parts))} for e in engines.values()],
    )
    readings = {each.read.key: each.read for each in fits.values() if each.read is not None}
    _hold(connection, FACTS_READ, [{"key": each.key, "names": each.text} for each in readings.values()])
    rows = {point: _row(stored, *keys[id(stored.fit)]) for point, stored in fits.items()}
    known = {row[0] for row in among(connection, select(OPENING_FIT.c.id), OPENING_FIT.c.id, list(rows))}
    opening_of = points_to_openings(connection, [point for point in rows if point not in known])
    change.insert(OPENING_FIT, [{"id": p, "opening_id": opening, **rows[p]} for p, opening in opening_of.items()])
    change.update(OPENING_FIT, [(point, row) for point, row in rows.items() if point in known])


def pointers(connection: Connection, points: Sequence[str]) -> dict[str, tuple[str | None, ...]]:
    """Return what each lock point's row points to, as `StoredFit.pointer`; points without a fit are left out."""
    query = select(
        OPENING_FIT.c.id,
        *(OPENING_FIT.c[name] for name in ("fit_key", "input_key", "engine", "facts_read", "battery")),
    )
    return {row[0]: tuple(row[1:]) for row in among(connection, query, OPENING_FIT.c.id, list(points))}


def _row(stored: StoredFit, fit_key: str, battery: str | None) -> dict[str, Any]:
    return {
        "input_key": stored.input_key,
        "fit_key": fit_key,
        "engine": stored.engine.key if stored.engine is not None else None,
        "facts_read": stored.read.key if stored.read is not None else None,
        "battery": battery,
    }


def _hold(connection: Connection, table: Table, rows: Iterable[Mapping[str, Any]]) -> None:
    """Insert rows that are not there yet, by their key."""
    wanted = {row["key"]: row for row in rows}
    held = {row[0] for row in among(connection, select(table.c.key), table.c.key, list(wanted))}
    execute_many(connection, insert(table), [dict(row) for key, row in wanted.items() if key not in held])
