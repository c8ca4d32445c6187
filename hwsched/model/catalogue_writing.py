"""Writing parts and their kit contents through the journal, in bulk. Reading them stands in the queries."""

from collections.abc import Iterable, Mapping
from typing import Any

from sqlalchemy import select

from hwsched.model.journal.journal import Change
from hwsched.model.tables import KIT_CONTENT, PART
from hwsched.values import Part


def part_row(part: Part) -> dict[str, Any]:
    """Return a part as its row; empty texts are held as unknown, stock and preference that are not told are kept."""
    told = {"stock": part.stock, "preferred": part.preferred}
    return {name: value for name, value in told.items() if value is not None} | {
        "number": part.number,
        "kind": part.kind,
        "description": part.description or None,
        "supplier": part.supplier or None,
        "finish": part.finish or None,
        "unit": part.unit or None,
        "list_price": part.list_price,
        "currency": part.currency or None,
        "superseded_by": part.superseded_by or None,
        "attributes": {name: value for name, value in part.attributes.items() if value is not None},
    }


def write_part(change: Change, part: Part, origin: str, extra: Mapping[str, Any]) -> None:
    """Add one part or change it whole: stock, preference and own fields that it does not tell are unknown then."""
    row = {**part_row(part), "stock": part.stock, "preferred": part.preferred, "extra": dict(extra)}
    held = change.connection.execute(select(PART.c.id).where(PART.c.number == part.number)).scalar()
    if held is None:
        held = change.insert(PART, [row], [origin])[0]
    else:
        change.update(PART, [(held, row)], [origin])
    _write_kits(change, [part], {part.number: held}, origin)


def write_parts(
    change: Change, parts: Iterable[Part], origin: str, extra: Mapping[str, Mapping[str, Any]] | None = None
) -> tuple[int, int]:
    """Add parts that are new by their number and change those that are known; none is removed.

    Parameters
    ----------
    change : Change
        Open change set.
    parts : iterable of Part
        Each number once.
    origin : str
        Where they came from, for the journal.
    extra : mapping, optional
        Values of the project's own fields by part number; what it does not name stays.

    Returns
    -------
    tuple of int
        How many were added, how many changed.
    """
    wanted = list(parts)
    own = extra or {}
    held: dict[str, str] = {}
    values: dict[str, Mapping[str, Any]] = {}
    for row in change.connection.execute(select(PART.c.number, PART.c.id, PART.c.extra)):
        held[row.number], values[row.number] = row.id, row.extra

    def whole(part: Part) -> dict[str, Any]:
        told = own.get(part.number)
        return part_row(part) | ({"extra": {**values.get(part.number, {}), **told}} if told else {})

    fresh = [part for part in wanted if part.number not in held]
    ids = change.insert(PART, [whole(part) for part in fresh], [origin] * len(fresh))
    known = [(held[part.number], whole(part)) for part in wanted if part.number in held]
    plain = [(row_id, row) for row_id, row in known if "extra" not in row]
    told = [(row_id, row) for row_id, row in known if "extra" in row]
    changed = set(change.update(PART, plain, [origin] * len(plain)))
    changed |= set(change.update(PART, told, [origin] * len(told)))
    held.update(zip((part.number for part in fresh), ids, strict=True))
    changed |= _write_kits(change, wanted, held, origin)
    return len(fresh), len(changed - set(ids))


def _write_kits(change: Change, parts: list[Part], ids: dict[str, str], origin: str) -> set[str]:
    kits: dict[str, dict[str, tuple[str, float]]] = {}
    for row in change.connection.execute(select(KIT_CONTENT)):
        kits.setdefault(row.part_id, {})[row.number] = (row.id, row.quantity)
    added: list[dict[str, Any]] = []
    edits: list[tuple[str, dict[str, Any]]] = []
    removed: list[str] = []
    touched: set[str] = set()
    for part in parts:
        part_id = ids[part.number]
        before = kits.get(part_id, {})
        after = dict(part.kit)
        for number, quantity in after.items():
            if number not in before:
                added.append({"part_id": part_id, "number": number, "quantity": quantity})
                touched.add(part_id)
            elif before[number][1] != quantity:
                edits.append((before[number][0], {"quantity": quantity}))
                touched.add(part_id)
        for number, (row_id, _) in before.items():
            if number not in after:
                removed.append(row_id)
                touched.add(part_id)
    change.delete(KIT_CONTENT, removed)
    change.insert(KIT_CONTENT, added, [origin] * len(added))
    change.update(KIT_CONTENT, edits, [origin] * len(edits))
    return touched
