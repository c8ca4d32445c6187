"""How rows are written down: the journal's entries, as they are put into its table."""

from collections.abc import Iterable, Mapping, Sequence
from typing import Any, Final, Literal

import msgspec
from sqlalchemy import Table

from hwsched.model.columns import ExactText, JsonText, json_text
from hwsched.model.tables import JOURNALLED, REFERENCES, UNIQUE
from hwsched.stopping import asking

Action = Literal["insert", "update", "delete"]
Origins = Sequence[str | None] | None
"""Where each row's values came from, row for row, such as ``survey.xlsx, Doors, row 12``."""

_FIELDS: Final = "extra"
_FLAT: Final = frozenset(
    name
    for name, table in JOURNALLED.items()
    if not any(isinstance(each.type, JsonText | ExactText) for each in table.columns if each.name != _FIELDS)
)
"""Tables whose rows hold bare text, numbers and flags, fields of the project's own aside."""
_flat_text: Final = msgspec.json.Encoder(order="sorted").encode


def row_bytes(entity: str, row: Mapping[str, Any]) -> bytes:
    """Write a row as canonical JSON, as `json_text` does; the same row always in the same way."""
    if entity in _FLAT and _FIELDS not in row:
        # Ten thousand openings are forty thousand entries: json takes half as long as writing them all.
        text = _flat_text(row)
        # Neither NaN nor infinity is refused there, both become null.
        if b"null" not in text:
            return text
    return json_text(row).encode()


def new_texts(
    entity: str, told: Mapping[str, Any], rows: Iterable[Mapping[str, Any]], ids: Iterable[str]
) -> list[bytes]:
    """Write new rows as `row_bytes` writes them without their unknowns.

    Parameters
    ----------
    entity : str
        Their table.
    told : mapping
        What is known of a row that does not say it.
    rows : iterable of mapping
        What they say, with unknowns or without.
    ids : iterable of str
        Their identifiers.
    """
    flat = entity in _FLAT
    texts: list[bytes] = []
    for row, row_id in zip(asking(rows), ids, strict=True):
        whole = {**told, **row, "id": row_id}
        text = _flat_text(whole) if flat and _FIELDS not in whole else b"null"
        # Most rows have no unknowns: those that have are seen by what they are written as.
        texts.append(row_bytes(entity, known(whole)) if b"null" in text else text)
    return texts


def row_text(entity: str, row: Mapping[str, Any] | None) -> str | None:
    """Write a row, or what differs in it, as text; None where there is none."""
    return None if row is None else row_bytes(entity, row).decode()


def entry_of(
    entity: str,
    row_id: str,
    opening_id: str | None,
    action: Action,
    before: str | None,
    after: str | None,
    origin: str | None,
) -> dict[str, Any]:
    """Return an entry, to be numbered when it is written; before and after as `row_text` writes them."""
    return {
        "entity": entity,
        "row_id": row_id,
        "opening_id": opening_id,
        "action": action,
        "before": before,
        "after": after,
        "origin": origin,
    }


def origin_at(origins: Origins, index: int) -> str | None:
    """Return where the values of one row came from."""
    return None if origins is None else origins[index]


def known(row: Mapping[str, Any]) -> dict[str, Any]:
    """Return a row without its unknowns."""
    return {name: value for name, value in row.items() if value is not None and value != {}}


def row_ids(rows: Iterable[Mapping[str, Any]], name: str) -> list[dict[str, Any]]:
    """Return the identifiers of rows, as a statement is bound to them."""
    return [{"row_id": row[name]} for row in rows]


def exchangeable(table: Table, names: Sequence[str]) -> list[str]:
    """Return one column that can hold any text, of each group that must be unique and is about to change."""
    found = []
    for group in UNIQUE[table.name]:
        free = [name for name in group if name in names and name not in REFERENCES[table.name]]
        found += free[:1]
    return found
