"""Finding the openings that are asked for: by building, level, mark and in the language of `hwsched.query`."""

from dataclasses import dataclass
from functools import cache

from sqlalchemy import Connection, select

from hwsched.model.errors import ValueRefusedError
from hwsched.model.project import Project
from hwsched.model.queries import read_own_fields
from hwsched.model.tables import BUILDING, LEVEL, OPENING_TABLE, PART
from hwsched.operations.collector import collector_paused
from hwsched.operations.opening.asked_facts import columns_needed, surveyed, worked_out
from hwsched.operations.opening.scope import Scope, in_order, narrowed, opening_rows
from hwsched.operations.snapshot import of_one_state
from hwsched.operations.survey.own_fields import attribute_of
from hwsched.quantities import LENGTH_STYLES, LengthStyle
from hwsched.query import Askable, Fault, Query, QueryError, judge, parse, said_in_words
from hwsched.rules import RULEBOOK


@dataclass(frozen=True, slots=True)
class AskedOpenings:
    """The openings that were found."""

    ids: tuple[str, ...]
    """In the order of building, level and mark, as people count."""
    marks: tuple[str, ...]
    """Of the same openings."""
    of: int
    """Openings that the project has."""
    said: str = ""
    """What the query asks for, in words; empty without one."""
    notes: tuple[str, ...] = ()
    """What is to be said beside it: names taken in other letters or not there at all, nothing found."""


class QueryRefusedError(ValueRefusedError):
    """A query that cannot be read.

    Parameters
    ----------
    error : QueryError
        Why, with the place.
    """

    def __init__(self, error: QueryError) -> None:
        super().__init__("where", error.pointed)
        self.fault: Fault = error.fault


@of_one_state
def asked_openings(project: Project, scope: Scope) -> AskedOpenings:
    """Find the openings of a scope.

    Parameters
    ----------
    project : Project
        Open project; it is only read. Fits and findings are read only where the query asks for them.
    scope : Scope
        What is asked for.

    Raises
    ------
    MissingRowError, ValueRefusedError
        For a mark, building or level that is not there; with the names that are nearly the same.
    QueryRefusedError
        Where the query cannot be read.
    """
    notes: list[str] = []
    with collector_paused(), project.reading() as connection:
        askable = askable_of(project, connection)
        query = _read(scope.where, askable)
        names = columns_needed(query)
        rows = opening_rows(connection, [OPENING_TABLE.c[name] for name in names])
        kept = narrowed(rows, scope, notes)
        notes += map(str, query.remarks)
        if query.root is not None:
            columns = surveyed(connection, query, kept, None if len(kept) == len(rows) else [row.id for row in kept])
            truth = judge(query, columns)
            true = set(truth.true)
            if query.sources - {"survey"}:
                # What the survey alone decides stays decided, whatever fits and findings say.
                undecided = [n for n in range(len(kept)) if n not in truth.true and n not in truth.false]
                told = worked_out(project, query, [kept[n].id for n in undecided]) if undecided else {}
                more = judge(query, columns.some(undecided, told))
                true |= {undecided[n] for n in more.true}
            kept = [kept[n] for n in true]
    found = in_order(kept)
    if not found:
        notes.append(f"no opening of {len(rows)} is asked for" if rows else "the project has no openings")
    said = said_in_words(query, askable.length_style) if query.root is not None else ""
    return AskedOpenings(
        tuple(row.id for row in found), tuple(row.mark for row in found), len(rows), said, tuple(notes)
    )


def askable_of(project: Project, connection: Connection) -> Askable:
    """Return what can be asked of the openings of a project; its names are read when they are asked for."""
    own = tuple((field.entity, attribute_of(field)) for field in read_own_fields(connection))

    def names(column: object) -> tuple[str, ...]:
        found = connection.execute(select(column).distinct()).scalars()  # type: ignore[call-overload]
        return tuple(name for name in found if name is not None)

    style: LengthStyle = next((each for each in LENGTH_STYLES if each == project.length_style), "fraction")
    return Askable(
        own=own,
        bare_unit=project.bare_unit,
        length_style=style,
        buildings=cache(lambda: names(BUILDING.c.name)),
        levels=cache(lambda: names(LEVEL.c.name)),
        parts=cache(lambda: names(PART.c.number)),
        rules=lambda: tuple(rule.id for rule in RULEBOOK),
    )


def _read(text: str, askable: Askable) -> Query:
    try:
        return parse(text, askable)
    except QueryError as error:
        raise QueryRefusedError(error) from error
