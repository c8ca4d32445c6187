"""Editing by hand: facts of openings, leaves and existing items; adding and removing them.

Choices of parts and places stand in `by_hand`, the project's own fields in `own_fields`, its settings in `settings`.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any, Final, cast

from sqlalchemy import Table, select

from hwsched.attributes import Attribute, CellError, Value, read_value
from hwsched.model.errors import ValueRefusedError
from hwsched.model.journal.fact_words import FactWords
from hwsched.model.journal.journal import Change
from hwsched.model.levels import levels_for
from hwsched.model.project import Project
from hwsched.model.queries import HeldPlace, read_places, retired_openings
from hwsched.model.tables import BUILDING, IN_USE, ITEM_TABLE, LEAF_TABLE, LEVEL, OPENING_TABLE
from hwsched.operations.changes import Changes
from hwsched.operations.power.connecting import take_off
from hwsched.operations.survey.accepted_values import accepted, mark_of, row_there
from hwsched.operations.survey.expected import Expected, check_expected
from hwsched.survey import BUILDING_PLACE, INHERITED, ITEM, LEAF, LEVEL_PLACE, OPENING, Entity
from hwsched.telling.natural import natural

_TABLES: Final[Mapping[str, tuple[Entity, Table]]] = {
    OPENING.name: (OPENING, OPENING_TABLE),
    LEAF.name: (LEAF, LEAF_TABLE),
    ITEM.name: (ITEM, ITEM_TABLE),
    BUILDING_PLACE.name: (BUILDING_PLACE, BUILDING),
    LEVEL_PLACE.name: (LEVEL_PLACE, LEVEL),
}
_NAMED: Final = 8
"""Marks that the name of a step says."""
_PLACES: Final = frozenset({BUILDING_PLACE.name, LEVEL_PLACE.name})
"""What is edited beside openings and what stands there: it is neither added nor removed here."""
_POSITIONS: Final[Mapping[int, tuple[str, ...]]] = {0: (), 1: ("single",), 2: ("active", "inactive")}


def edit_facts(
    project: Project,
    entity: str,
    row_id: str,
    values: Mapping[str, Any],
    *,
    who: str,
    base: int | None = None,
    was: Mapping[str, Expected] | None = None,
) -> Changes:
    """Set facts of one opening, leaf or existing item, or those that openings take from a building or a level.

    Parameters
    ----------
    project : Project
        Open project.
    entity : {"opening", "leaf", "existing_item", "building", "level"}
        What is edited.
    row_id : str
        Its identifier.
    values : mapping
        Values by attribute as held (mm, choice values); None is unknown.
    who : str
        For the journal.
    base : int, optional
        The newest change set that the editor had seen; what others changed since at these facts is a conflict.
    was : mapping, optional
        What the editor says that these facts hold; another value in the project is a conflict.

    Returns
    -------
    Changes
        What was touched; nothing where the facts were so already.

    Raises
    ------
    ValueRefusedError, MissingRowError, ConflictError, DuplicateValueError
        And nothing is changed.
    """
    declared, table = _declared(entity)
    held: dict[str, Any] = _held(declared, values)
    labels = ", ".join(declared.attribute(name).label.lower() for name in held)
    with project.change("edit-facts", f"Edit {labels}", who, base=base) as change:
        row = row_there(change, table, row_id)
        change.summary = f"Edit {labels} of {_called(change, entity, row)}"
        for name, expected in (was or {}).items():
            of_place = name in ("building", "level")
            present = _place(change, row_id)[name == "level"] if of_place else row._mapping[name]
            if present is None and entity == OPENING.name and name in INHERITED:
                # People see what holds at the opening, whoever said it.
                said = (place.facts[name] for place in _stands(change, row_id))
                present = next((each for each in said if each is not None), None)
            path = ("level_id",) if of_place else (name,)
            told = (declared.attribute(name), path, (present, held[name]))
            check_expected(change, entity, row._mapping, *told, expected)
        if entity == OPENING.name:
            # An opening stands on a level's row; people name building and level.
            put_level(change, row_id, held)
        change.update(table, [(row_id, held)], [f"edited by {who}"], there={row_id: row})
        taking = _taking(change, entity, row_id) if entity in _PLACES else frozenset()
    made = Changes.of(change)
    # No row of theirs changed, and yet something else holds of them.
    return replace(made, openings=made.openings | taking) if made.number is not None else made


def edit_fact_text(
    project: Project,
    entity: str,
    row_id: str,
    attribute: str,
    text: str,
    *,
    who: str,
    base: int | None = None,
    was: Expected | None = None,
) -> Changes:
    """Set one fact from what a person typed; empty text means unknown.

    Raises
    ------
    ValueRefusedError
        When the text cannot be read as that fact; says what is accepted.
    MissingRowError, ConflictError, DuplicateValueError
        As `edit_facts`.
    """
    facts = typed_facts(project, entity, {attribute: text})
    said = {attribute: was} if was is not None else None
    return edit_facts(project, entity, row_id, facts, who=who, base=base, was=said)


def typed_facts(project: Project, entity: str, texts: Mapping[str, str]) -> dict[str, Any]:
    """Read facts that a person typed; empty text means unknown.

    Raises
    ------
    ValueRefusedError
        For a fact that there is not, or a text that cannot be read as it; says what is accepted.
    """
    declared = _declared(entity)[0]
    return {name: typed_value(project, _attribute(declared, name), text) for name, text in texts.items()}


def attribute_named(entity: str, name: str) -> Attribute:
    """Return the declaration of a fact; raises ValueRefusedError."""
    return _attribute(_declared(entity)[0], name)


def typed_value(project: Project, attribute: Attribute, text: str) -> Value:
    """Read one value that a person typed; raises ValueRefusedError."""
    try:
        # The project's unit is that of lengths; another number without a unit is in the fact's own.
        return read_value(attribute, text, bare_unit=project.bare_unit if attribute.kind == "length" else None).value
    except CellError as error:
        wanted = f"; accepted: {error.accepted}" if error.accepted else ""
        raise ValueRefusedError(attribute.label, f"'{text}' {error.message}{wanted}") from error


def add_opening(project: Project, facts: Mapping[str, Any], *, who: str, leaves: int = 1) -> tuple[Changes, str]:
    """Add an opening with its leaves.

    Parameters
    ----------
    project : Project
        Open project.
    facts : mapping
        Values by attribute; a mark at least.
    who : str
        For the journal.
    leaves : {0, 1, 2}
        How many leaves it has; what they are like is unknown yet.

    Returns
    -------
    changes : Changes
        What was touched.
    opening_id : str
        The new opening.

    Raises
    ------
    ValueRefusedError, DuplicateValueError
        And nothing is changed.
    """
    held = _held(OPENING, facts)
    if not held.get("mark"):
        raise ValueRefusedError("Mark", "an opening needs its mark")
    if leaves not in _POSITIONS:
        raise ValueRefusedError("Leaves", f"{leaves} cannot be; accepted: 0, 1 or 2")
    with project.change("add-opening", f"Add opening {held['mark']}", who) as change:
        if held["mark"] in retired_openings(change.connection):
            raise ValueRefusedError("Mark", f"{held['mark']} is retired; bring it back with: hwsched survey restore")
        place = (held.pop("building", None), held.pop("level", None))
        held["level_id"] = levels_for(change, {place})[place]
        opening_id = change.insert(OPENING_TABLE, [held], [f"added by {who}"])[0]
        rows = [
            {"opening_id": opening_id, "ordinal": ordinal, "position": position}
            for ordinal, position in enumerate(_POSITIONS[leaves])
        ]
        change.insert(LEAF_TABLE, rows, [f"added by {who}"] * len(rows))
    return Changes.of(change), opening_id


def add_leaf(project: Project, opening_id: str, facts: Mapping[str, Any], *, who: str) -> tuple[Changes, str]:
    """Add a leaf to an opening; returns its identifier too; raises as `add_item`."""
    return _add_to_opening(project, LEAF, LEAF_TABLE, opening_id, facts, who)


def add_item(project: Project, opening_id: str, facts: Mapping[str, Any], *, who: str) -> tuple[Changes, str]:
    """Add an existing item to an opening; returns its identifier too.

    Raises
    ------
    ValueRefusedError, MissingRowError
        And nothing is changed.
    """
    return _add_to_opening(project, ITEM, ITEM_TABLE, opening_id, facts, who)


def _add_to_opening(
    project: Project, declared: Entity, table: Table, opening_id: str, facts: Mapping[str, Any], who: str
) -> tuple[Changes, str]:
    held = _held(declared, facts)
    verb = f"add-{declared.name.removeprefix('existing_')}"
    with project.change(verb, f"Add {declared.label.lower()}", who) as change:
        change.summary = f"Add {declared.label.lower()} {held.get('kind') or ''} to {mark_of(change, opening_id)}"
        change.summary = " ".join(change.summary.split())
        query = select(table.c.ordinal).where(table.c.opening_id == opening_id)
        # After the last, and not by their number: a gap left by a removal would give two rows one place.
        ordinal = max(change.connection.execute(query).scalars(), default=-1) + 1
        row = {**held, "opening_id": opening_id, "ordinal": ordinal}
        row_id = change.insert(table, [row], [f"added by {who}"])[0]
    return Changes.of(change), row_id


def remove(project: Project, entity: str, row_id: str, *, who: str, base: int | None = None) -> Changes:
    """Remove an opening with all that belongs to it, a leaf, or an existing item.

    Raises
    ------
    MissingRowError, ConflictError
        And nothing is changed; a conflict is what others changed since ``base`` at anything that would go.
    """
    declared, table = _declared(entity)
    if entity in _PLACES:
        raise ValueRefusedError("entity", f"a {entity} goes with its last opening, it is not removed by itself")
    with project.change("remove", f"Remove {declared.label.lower()}", who, base=base) as change:
        row = row_there(change, table, row_id)
        mark = mark_of(change, row_id if entity == OPENING.name else row.opening_id)
        of = "" if entity == OPENING.name else "of "
        change.summary = f"Remove {declared.label.lower()} {of}{mark}"
        if entity == OPENING.name:
            # What hangs beyond it on its circuit stays fed.
            take_off(change, [row_id])
        change.delete(table, [row_id])
    return Changes.of(change)


def remove_openings(project: Project, ids: Sequence[str], *, who: str, base: int | None = None) -> Changes:
    """Remove openings with all that belongs to them, as one step.

    Raises
    ------
    MissingRowError, ConflictError
        As `remove`, and nothing is changed.
    """
    with project.change("remove", "Remove openings", who, base=base) as change:
        for each in ids:
            row_there(change, OPENING_TABLE, each)
        marks = sorted((mark_of(change, each) for each in ids), key=natural)
        named = ", ".join(marks[:_NAMED]) + (f" and {len(marks) - _NAMED} more" if len(marks) > _NAMED else "")
        what = OPENING.label.lower() if len(marks) == 1 else f"{len(marks)} openings"
        change.summary = f"Remove {what} {named}"
        take_off(change, list(ids))
        change.delete(OPENING_TABLE, list(ids))
    return Changes.of(change)


def _called(change: Change, entity: str, row: Any) -> str:
    """Return what people call the row that is edited."""
    if entity in _PLACES:
        return FactWords(change.connection).whose(entity, row._mapping)
    return mark_of(change, row.id if entity == OPENING.name else row.opening_id)


def _taking(change: Change, entity: str, row_id: str) -> frozenset[str]:
    """Return the openings that stand on a level, or in a building."""
    query = (
        select(OPENING_TABLE.c.id)
        .join(LEVEL, OPENING_TABLE.c.level_id == LEVEL.c.id)
        .where((LEVEL.c.id if entity == LEVEL_PLACE.name else LEVEL.c.building_id) == row_id, IN_USE)
    )
    return frozenset(change.connection.execute(query).scalars())


def _stands(change: Change, opening_id: str) -> tuple[HeldPlace, ...]:
    return read_places(change.connection, [opening_id])[opening_id]


def _declared(entity: str) -> tuple[Entity, Table]:
    if entity not in _TABLES:
        raise ValueRefusedError("entity", f"there is no '{entity}' to edit; accepted: {', '.join(_TABLES)}")
    return _TABLES[entity]


def _attribute(entity: Entity, name: str) -> Attribute:
    try:
        return entity.attribute(name)
    except KeyError:
        near = entity.nearest(name)
        raise ValueRefusedError(name, f"{entity.label.lower()} has no such fact{near}") from None


def _held(declared: Entity, values: Mapping[str, Any]) -> dict[str, Any]:
    return {name: accepted(_attribute(declared, name), value) for name, value in values.items()}


def put_level(change: Change, opening_id: str, held: dict[str, Any]) -> None:
    """Put the level's row in place of the names of building and level among facts of an opening."""
    if not {"building", "level"} & held.keys():
        return
    building, level = _place(change, opening_id)
    place = (cast("str | None", held.pop("building", building)), cast("str | None", held.pop("level", level)))
    held["level_id"] = levels_for(change, {place})[place]


def _place(change: Change, opening_id: str) -> tuple[str | None, str | None]:
    """Return the names of an opening's building and level."""
    query = (
        select(BUILDING.c.name, LEVEL.c.name)
        .select_from(OPENING_TABLE)
        .outerjoin(LEVEL, OPENING_TABLE.c.level_id == LEVEL.c.id)
        .outerjoin(BUILDING, LEVEL.c.building_id == BUILDING.c.id)
        .where(OPENING_TABLE.c.id == opening_id)
    )
    building, level = change.connection.execute(query).one()
    return building, level
