"""What a survey workbook shows of openings that are known: their rows, and every value as it is read back.

Here belongs the way back from facts to cells; the layout stands in `survey_form`.
"""

from collections.abc import Collection, Iterable, Mapping
from dataclasses import fields
from typing import Any, Final

from hwsched.attributes import Attribute, CellError, read_value, show_value
from hwsched.exchange.survey.words import LOCK_FACTS
from hwsched.quantities import BareUnit, format_length
from hwsched.values import Item, Leaf, Opening, OpeningInput

Row = dict[tuple[str, str], Any]
"""Values by heading over the columns and name of the fact."""

_ORDER: Final = {"single": 0, "active": 0, "inactive": 1}


def opening_rows(
    inputs: Iterable[OpeningInput],
    extra: Mapping[str, Mapping[str, Any]],
    taken: Mapping[str, Collection[str]] | None = None,
) -> list[Row]:
    """Return the rows of openings: one each, one more for each further leaf; the lock stands beside its leaf.

    Parameters
    ----------
    inputs : iterable of OpeningInput
        Openings.
    extra : mapping
        Values of the project's own fields by identifier.
    taken : mapping, optional
        By identifier of the opening, what it takes from its level or building: it is not said again of the opening.
    """
    rows = []
    for given in inputs:
        from_place = (taken or {}).get(given.opening.id, ())
        leaves = sorted(given.leaves, key=lambda leaf: _ORDER.get(leaf.position or "", 2)) or [Leaf("")]
        for number, leaf in enumerate(leaves):
            row: Row = {("Opening", "mark"): given.opening.mark}
            if number == 0:
                facts = _facts("Opening", given.opening)
                row |= {key: value for key, value in facts.items() if key[1] not in from_place}
                row |= _own("Opening", extra.get(given.opening.id, {}))
            row |= _facts("Leaf", leaf)
            lock = _lock_of(given, leaf, first=number == 0)
            if lock is not None:
                row |= {key: value for key, value in _facts("Lock", lock).items() if key[1] in LOCK_FACTS}
            rows.append(row)
    return rows


def item_rows(inputs: Iterable[OpeningInput], extra: Mapping[str, Mapping[str, Any]]) -> list[Row]:
    """Return the rows of existing items; of a lock that stands beside its leaf only what is not said there."""
    rows = []
    for given in inputs:
        leaves = sorted(given.leaves, key=lambda leaf: _ORDER.get(leaf.position or "", 2)) or [Leaf("")]
        said = [_lock_of(given, leaf, first=number == 0) for number, leaf in enumerate(leaves)]
        for item in given.items:
            row: Row = {}
            for (_, name), value in _facts("", item).items():
                row["Lock" if name in LOCK_FACTS else "Existing item", name] = value
            row |= _own("Existing item", extra.get(item.id, {}))
            if any(item is lock for lock in said):
                row = {key: value for key, value in row.items() if key[0] != "Lock"}
                if row.keys() <= {("Existing item", "kind"), ("Existing item", "leaf")}:
                    continue
            rows.append({("Opening", "mark"): given.opening.mark, **row})
    return rows


def _lock_of(given: OpeningInput, leaf: Leaf, *, first: bool) -> Item | None:
    """Return the lock that a leaf's row describes: the first there of which more than its place is known."""
    for item in given.items:
        here = item.leaf == leaf.position or (first and item.leaf in (None, "single"))
        if item.kind == "lock" and here and any(getattr(item, name) is not None for name in LOCK_FACTS):
            return item
    return None


def _facts(heading: str, held: Opening | Leaf | Item) -> Row:
    return {
        (heading, each.name): value
        for each in fields(held)
        if each.name != "id" and (value := getattr(held, each.name)) is not None
    }


def _own(heading: str, extra: Mapping[str, Any]) -> Row:
    return {(heading, name): value for name, value in extra.items() if value is not None}


def spelled(attribute: Attribute, value: Any, bare_unit: BareUnit) -> Any:
    """Return a value as a surveyor would type it, so that it is read back as exactly the same.

    Parameters
    ----------
    attribute : Attribute
        The fact.
    value : object
        As held.
    bare_unit : {"in", "ft", "mm", "cm", "m"}
        Unit of the column.

    Examples
    --------
    >>> backset = Attribute("backset_mm", "Backset", "length", "mm")
    >>> spelled(backset, 69.85, "in"), spelled(backset, 70.0, "in"), spelled(backset, 70.0, "mm")
    ('2 3/4"', '70 mm', '70 mm')
    """
    if attribute.kind in ("choice", "flag"):
        return show_value(attribute, value)
    if attribute.kind != "length":
        return value
    if bare_unit in ("in", "ft"):
        inches = format_length(float(value), "fraction")
        try:
            # Only if it comes back as exactly the same: 44.5 mm rounded to 1 3/4 in would be a change that nobody
            # made.
            if read_value(attribute, inches, bare_unit=bare_unit).value == value:
                return inches
        except CellError:
            pass
    # By its shortest text, which reads back as the same float.
    return f"{float(value)!r}".removesuffix(".0") + " mm"
