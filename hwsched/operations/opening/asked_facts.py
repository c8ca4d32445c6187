"""Facts of openings as the columns that a query is judged by: only those that it asks for are read.

What is worked out, fits and findings, takes a hundred times as long as the survey; it is read for those openings alone
of which the survey leaves open whether they are meant (`asked_openings`).
"""

from collections.abc import Collection, Mapping, Sequence
from typing import Any, Final

from sqlalchemy import Column, Connection, Table, func, select

from hwsched.attributes import AttributeKind
from hwsched.model.bulk import among
from hwsched.model.project import Project
from hwsched.model.queries import by_opening, read_fits, read_inputs
from hwsched.model.tables import BUILDING, ITEM_TABLE, LEAF_TABLE, LEVEL, OPENING_TABLE
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.opening.facts_at_hand import NOT_READ, Values, exact, of_checked, of_fit
from hwsched.operations.opening.lock_points import point_results, standing_of
from hwsched.operations.opening.scope import Row
from hwsched.operations.opening.standings import Standings
from hwsched.query import PLACE, Fact, Query
from hwsched.query.facts import PLACES, SEARCHED
from hwsched.survey import INHERITED, ITEM, LEAF, OPENING
from hwsched.values.fit import together

_TABLES: Final[Mapping[str, Table]] = {LEAF.name: LEAF_TABLE, ITEM.name: ITEM_TABLE}
_ON_ROWS: Final = frozenset({"mark", "building", "level"})
"""Facts of the opening that each row has anyhow."""


class AskedFacts:
    """Columns of facts that are at hand.

    Parameters
    ----------
    rows : list of Row
        The openings.
    columns : mapping of Fact to sequence
        Values for them in the same order.
    """

    def __init__(self, rows: list[Row], columns: Mapping[Fact, Values]) -> None:
        self.rows = rows
        self._columns = dict(columns)

    def __len__(self) -> int:
        """Return the number of openings."""
        return len(self.rows)

    def column(self, fact: Fact) -> Values:
        """Return the values of a fact; what is worked out is unknown as long as it was not read."""
        found = self._columns.get(fact)
        return found if found is not None else [NOT_READ] * len(self.rows)

    def some(self, places: Sequence[int], more: Mapping[Fact, Values]) -> "AskedFacts":
        """Return the openings at some places, with further columns for them."""
        columns = {fact: [column[place] for place in places] for fact, column in self._columns.items()}
        return AskedFacts([self.rows[place] for place in places], {**columns, **more})


def columns_needed(query: Query) -> tuple[str, ...]:
    """Return the names of the opening's own columns that a query needs on its rows."""
    names = [fact.attribute.name for fact in query.facts if fact.entity == OPENING.name]
    names += SEARCHED if query.searches else ()
    names += PLACES if PLACE in query.facts else ()
    kept = dict.fromkeys(name for name in names if name not in _ON_ROWS)
    known = OPENING_TABLE.c
    return (*(name for name in kept if name in known), *(("extra",) if any(n not in known for n in kept) else ()))


def surveyed(connection: Connection, query: Query, rows: list[Row], ids: Collection[str] | None) -> AskedFacts:
    """Read what a query asks of the survey.

    Parameters
    ----------
    connection : Connection
        In a transaction.
    query : Query
        What is asked.
    rows : list of Row
        The openings, with the columns of `columns_needed`.
    ids : collection of str or None
        Their identifiers; None where they are all of the project.
    """
    names = columns_needed(query)

    def of_opening(name: str, kind: AttributeKind = "text") -> Values:
        if name in _ON_ROWS:
            return [getattr(row, name) for row in rows]
        if name in names:
            place = names.index(name)
            own = [row.more[place] for row in rows]
            return _inherited(connection, name, rows, own) if name in INHERITED else own
        place, read = names.index("extra"), exact(kind)
        return [read((row.more[place] or {}).get(name)) for row in rows]

    found: dict[Fact, Values] = {}
    searched = [Fact(OPENING.name, OPENING.attribute(name)) for name in SEARCHED] if query.searches else []
    for fact in {*query.facts, *searched}:
        if fact.entity == OPENING.name:
            found[fact] = of_opening(fact.attribute.name, fact.attribute.kind)
        elif fact == PLACE:
            found[fact] = list(zip(*map(of_opening, PLACES), strict=True))
    for entity, table in _TABLES.items():
        facts = [fact for fact in query.facts if fact.entity == entity]
        if facts:
            found |= _of_rows(connection, table, facts, [row.id for row in rows], ids)
    return AskedFacts(rows, found)


def _inherited(connection: Connection, name: str, rows: list[Row], own: Values) -> Values:
    """Put in the place of what openings do not say what their level says, or else their building."""
    columns = (LEVEL.c[name], BUILDING.c[name])
    query = (
        select(BUILDING.c.name, LEVEL.c.name, func.coalesce(*columns))
        .select_from(LEVEL)
        .outerjoin(BUILDING, LEVEL.c.building_id == BUILDING.c.id)
    )
    held = {(building, level): value for building, level, value in connection.execute(query)}
    return [
        value if value is not None else held.get((row.building, row.level))
        for row, value in zip(rows, own, strict=True)
    ]


def _of_rows(
    connection: Connection, table: Table, facts: list[Fact], order: list[str], ids: Collection[str] | None
) -> dict[Fact, Values]:
    """Read facts of leaves or items: of each opening the values on all its rows."""
    declared = [fact for fact in facts if fact.attribute.name in table.c]
    own = [fact for fact in facts if fact.attribute.name not in table.c]
    columns: list[Column[Any]] = [table.c[fact.attribute.name] for fact in declared]
    query = select(table.c.opening_id, *columns, *([table.c.extra] if own else ()))
    columns_read = list(zip(*among(connection, query, table.c.opening_id, ids), strict=True))
    if not columns_read:
        return {fact: [()] * len(order) for fact in facts}
    openings = columns_read[0]
    found = {fact: _grouped(openings, columns_read[place], order) for place, fact in enumerate(declared, start=1)}
    for fact in own:
        name, read = fact.attribute.name, exact(fact.attribute.kind)
        found[fact] = _grouped(openings, [read((extra or {}).get(name)) for extra in columns_read[-1]], order)
    return found


def _grouped(ids: Sequence[str], values: Sequence[Any], order: list[str]) -> Values:
    """Return the values on the rows of each opening, given the openings of all rows and their values."""
    held: dict[str, tuple[Any, ...]] = {}
    for opening_id, value in zip(ids, values, strict=True):
        before = held.get(opening_id)
        held[opening_id] = (value,) if before is None else (*before, value)
    return [held.get(opening_id, ()) for opening_id in order]


def worked_out(project: Project, query: Query, ids: Sequence[str]) -> dict[Fact, Values]:
    """Read what a query asks of fits and findings, for openings in this order."""
    told = _findings(project, ids) if "findings" in query.sources else _fits(project, ids)
    return {fact: [told[opening_id][fact] for opening_id in ids] for fact in query.facts if fact.source != "survey"}


def _fits(project: Project, ids: Sequence[str]) -> dict[str, dict[Fact, tuple[Any, ...]]]:
    with project.reading() as connection:
        stored = read_fits(connection, ids)
        openings = list(by_opening(read_inputs(connection, ids, project.catalogue.read(connection))))
    found, standings = {}, Standings()
    for inputs in openings:
        points = point_results(inputs, stored, standings=standings)
        fit = together([each.at.fit for each in points])
        found[inputs[0].opening.id] = of_fit(fit, standing_of(points), inputs)
    return found


def _findings(project: Project, ids: Sequence[str]) -> dict[str, dict[Fact, tuple[Any, ...]]]:
    return {each.given.opening.id: of_checked(each) for each in check_openings(project, ids)}
