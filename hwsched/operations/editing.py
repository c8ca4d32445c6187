"""Editing by hand: facts of openings, leaves and existing items; choices of parts and places; settings; own fields."""

from collections.abc import Mapping
from typing import Any, Final, cast

from sqlalchemy import Table, select

from hwsched.attributes import Attribute, CellError, Choice, accepted_by, read_value, within_limits
from hwsched.model.errors import ConflictError, MissingRowError, ValueRefusedError
from hwsched.model.journal import Change
from hwsched.model.placing import levels_for
from hwsched.model.project import Project
from hwsched.model.tables import (
    BUILDING,
    CHOSEN_PART,
    ITEM_TABLE,
    LEAF_TABLE,
    LEVEL,
    OPENING_TABLE,
    OWN_FIELD,
    PLACED_UNIT,
    PROJECT,
)
from hwsched.operations.changes import Changes
from hwsched.survey import ITEM, LEAF, OPENING, Entity

_TABLES: Final[Mapping[str, tuple[Entity, Table]]] = {
    OPENING.name: (OPENING, OPENING_TABLE),
    LEAF.name: (LEAF, LEAF_TABLE),
    ITEM.name: (ITEM, ITEM_TABLE),
}


def edit_facts(
    project: Project,
    entity: str,
    row_id: str,
    values: Mapping[str, Any],
    *,
    who: str,
    expected_version: int | None = None,
) -> Changes:
    """Set facts of one opening, leaf or existing item.

    Parameters
    ----------
    project : Project
        Open project.
    entity : {"opening", "leaf", "existing_item"}
        What is edited.
    row_id : str
        Its identifier.
    values : mapping
        Values by attribute as held (mm, choice values); None is unknown.
    who : str
        For the journal.
    expected_version : int, optional
        Version that the editor saw; another one in the project is a conflict.

    Raises
    ------
    ValueRefusedError, MissingRowError, ConflictError, DuplicateValueError
        And nothing is changed.
    """
    declared, table = _TABLES[entity]
    held = {name: _checked(_attribute(declared, name), value) for name, value in values.items()}
    labels = ", ".join(_attribute(declared, name).label.lower() for name in held)
    with project.change("edit-facts", f"Edit {labels}", who) as change:
        row = change.connection.execute(select(table.c.id, table.c.version).where(table.c.id == row_id)).first()
        if row is None:
            raise MissingRowError(f"this {declared.label.lower()} is not in the project any more")
        if expected_version is not None and row.version != expected_version:
            raise ConflictError(
                f"somebody else changed this {declared.label.lower()} meanwhile; look at it again",
                expected_version,
                row.version,
            )
        if entity == OPENING.name:
            _move_to_level(change, row_id, held)
        change.update(table, [(row_id, held)], [f"edited by {who}"])
        change.summary = f"Edit {labels} of {_mark_of(change, table, row_id)}"
    return Changes.of(change)


def edit_fact_text(project: Project, entity: str, row_id: str, attribute: str, text: str, *, who: str) -> Changes:
    """Set one fact from what a person typed; empty text means unknown.

    Raises
    ------
    ValueRefusedError
        When the text cannot be read as that fact; says what is accepted.
    """
    declared = _attribute(_TABLES[entity][0], attribute)
    try:
        read = read_value(declared, text, bare_unit=project.bare_unit)
    except CellError as error:
        accepted = f"; accepted: {error.accepted}" if error.accepted else ""
        raise ValueRefusedError(declared.label, f"'{text}' {error.message}{accepted}") from error
    return edit_facts(project, entity, row_id, {attribute: read.value}, who=who)


def add_opening(project: Project, facts: Mapping[str, Any], *, who: str, leaves: int = 1) -> tuple[Changes, str]:
    """Add an opening with its leaves; returns its identifier too."""
    held = {name: _checked(_attribute(OPENING, name), value) for name, value in facts.items()}
    if not held.get("mark"):
        raise ValueRefusedError("Mark", "an opening needs its mark")
    with project.change("add-opening", f"Add opening {held['mark']}", who) as change:
        place = (held.pop("building", None), held.pop("level", None))
        held["level_id"] = levels_for(change, {place})[place]
        opening_id = change.insert(OPENING_TABLE, [held], [f"added by {who}"])[0]
        positions: tuple[str, ...] = {0: (), 1: ("single",), 2: ("active", "inactive")}[leaves]
        rows = [{"opening_id": opening_id, "ordinal": n, "position": p} for n, p in enumerate(positions)]
        change.insert(LEAF_TABLE, rows, [f"added by {who}"] * len(rows))
    return Changes.of(change), opening_id


def add_item(project: Project, opening_id: str, facts: Mapping[str, Any], *, who: str) -> tuple[Changes, str]:
    """Add an existing item to an opening; returns its identifier too."""
    held = {name: _checked(_attribute(ITEM, name), value) for name, value in facts.items()}
    with project.change("add-item", "Add existing item", who) as change:
        mark = _mark_of(change, OPENING_TABLE, opening_id)
        others = change.connection.execute(
            select(ITEM_TABLE.c.ordinal).where(ITEM_TABLE.c.opening_id == opening_id)
        ).scalars()
        ordinal = max(others, default=-1) + 1
        item_id = change.insert(
            ITEM_TABLE, [{**held, "opening_id": opening_id, "ordinal": ordinal}], [f"added by {who}"]
        )[0]
        change.summary = f"Add existing item {held.get('kind') or ''} to {mark}".replace("  ", " ")
    return Changes.of(change), item_id


def remove(project: Project, entity: str, row_id: str, *, who: str) -> Changes:
    """Remove an opening with all that belongs to it, a leaf, or an existing item."""
    declared, table = _TABLES[entity]
    with project.change("remove", f"Remove {declared.label.lower()}", who) as change:
        change.summary = f"Remove {declared.label.lower()} of {_mark_of(change, table, row_id)}"
        change.delete(table, [row_id])
    return Changes.of(change)


def choose_part(project: Project, opening_id: str, role: str, part: str, *, who: str, quantity: float = 1.0) -> Changes:
    """Choose a part by hand for a role of an opening; it is kept by every fit, and checked."""
    with project.change("choose-part", f"Choose {part} as {role}", who) as change:
        mark = _mark_of(change, OPENING_TABLE, opening_id)
        change.delete(CHOSEN_PART, _chosen(change, opening_id, role))
        change.insert(CHOSEN_PART, [{"opening_id": opening_id, "role": role, "part": part, "quantity": quantity}])
        change.summary = f"Choose {part} as {role} of {mark}"
    return Changes.of(change)


def release_part(project: Project, opening_id: str, role: str, *, who: str) -> Changes:
    """Leave a role of an opening to the fit again."""
    with project.change("release-part", f"Release {role}", who) as change:
        change.delete(CHOSEN_PART, _chosen(change, opening_id, role))
    return Changes.of(change)


def place_unit(
    project: Project, opening_id: str, *, leaf: str, face: str, pattern: str, x_mm: float, y_mm: float, who: str
) -> Changes:
    """Place the control unit by hand: lower left corner of its plate; it is kept by every fit, and checked."""
    row = {"leaf": leaf, "face": face, "pattern": pattern, "x_mm": x_mm, "y_mm": y_mm}
    with project.change("place-unit", "Place the unit", who) as change:
        change.summary = f"Place the unit of {_mark_of(change, OPENING_TABLE, opening_id)}"
        held = _placed(change, opening_id)
        if held:
            change.update(PLACED_UNIT, [(held[0], row)])
        else:
            change.insert(PLACED_UNIT, [{"opening_id": opening_id, **row}])
    return Changes.of(change)


def release_unit(project: Project, opening_id: str, *, who: str) -> Changes:
    """Leave the unit's place to the fit again."""
    with project.change("release-unit", "Release the unit's place", who) as change:
        change.delete(PLACED_UNIT, _placed(change, opening_id))
    return Changes.of(change)


def set_settings(
    project: Project,
    *,
    who: str,
    length_style: str | None = None,
    limits: Mapping[str, float | None] | None = None,
    rules_off: Mapping[str, bool] | None = None,
    prefer: str | None = None,
) -> Changes:
    """Change what the project decides; a limit of None goes back to the rule's own.

    Every opening can be touched by it: the caller reads all anew.
    """
    with project.change("set-settings", "Change settings", who) as change:
        row = change.connection.execute(select(PROJECT)).one()
        held = dict(row.settings)
        if limits is not None:
            merged = {**held.get("limits", {}), **limits}
            held["limits"] = {name: value for name, value in merged.items() if value is not None}
        if rules_off is not None:
            off = set(held.get("rules_off", ())) | {name for name, is_off in rules_off.items() if is_off}
            held["rules_off"] = sorted(off - {name for name, is_off in rules_off.items() if not is_off})
        if prefer is not None:
            held["prefer"] = prefer
        change.update(PROJECT, [(row.id, {"settings": held, "length_style": length_style or row.length_style})])
    if length_style is not None:
        project.length_style = length_style
    return Changes.of(change)


def define_field(
    project: Project,
    entity: str,
    name: str,
    label: str,
    kind: str,
    *,
    who: str,
    unit: str = "",
    choices: tuple[str, ...] = (),
) -> Changes:
    """Define a field of the project's own on openings, existing items or parts."""
    if entity not in (OPENING.name, ITEM.name, "part"):
        raise ValueRefusedError(
            "entity", f"{entity} takes no fields of its own; accepted: opening, existing_item, part"
        )
    if not name.isidentifier():
        raise ValueRefusedError("name", f"'{name}' is no name; accepted: letters, digits and underscores")
    with project.change("define-field", f"Define field {label}", who) as change:
        change.insert(
            OWN_FIELD,
            [{"entity": entity, "name": name, "label": label, "kind": kind, "unit": unit, "choices": list(choices)}],
        )
    return Changes.of(change)


def set_own_value(project: Project, entity: str, row_id: str, name: str, value: Any, *, who: str) -> Changes:
    """Set a field of the project's own on one row; None takes it away."""
    table = _TABLES[entity][1]
    with project.change("set-own-value", f"Set {name}", who) as change:
        field = change.connection.execute(
            select(OWN_FIELD).where(OWN_FIELD.c.entity == entity, OWN_FIELD.c.name == name)
        ).first()
        if field is None:
            raise ValueRefusedError(name, f"the project has no field '{name}' on {entity}")
        attribute = Attribute(
            name, field.label, field.kind, field.unit, tuple(Choice(word, word) for word in field.choices)
        )
        row = change.connection.execute(select(table.c.extra).where(table.c.id == row_id)).first()
        if row is None:
            raise MissingRowError(f"this {entity.replace('_', ' ')} is not in the project any more")
        extra = {**row.extra, name: _checked(attribute, value)}
        change.update(table, [(row_id, {"extra": {key: held for key, held in extra.items() if held is not None}})])
    return Changes.of(change)


def _attribute(entity: Entity, name: str) -> Attribute:
    try:
        return entity.attribute(name)
    except KeyError:
        raise ValueRefusedError(name, f"{entity.label.lower()} has no such fact") from None


def _checked(attribute: Attribute, value: Any) -> Any:
    if value is None:
        if attribute.required:
            raise ValueRefusedError(attribute.label, "cannot be unknown")
        return None
    if attribute.kind in ("length", "number", "integer"):
        if isinstance(value, bool) or not isinstance(value, int | float) or value != value:
            raise ValueRefusedError(attribute.label, f"must be a number, got {value!r}")
        value = int(value) if attribute.kind == "integer" else float(value)
    elif attribute.kind == "flag" and not isinstance(value, bool):
        raise ValueRefusedError(attribute.label, "must be yes or no")
    elif attribute.kind == "choice" and attribute.choice(str(value)) is None:
        words = ", ".join(choice.value for choice in attribute.choices)
        raise ValueRefusedError(attribute.label, f"'{value}' is not one of {words}")
    if isinstance(value, int | float) and not within_limits(attribute, value):
        raise ValueRefusedError(attribute.label, f"{value:g} cannot be; accepted: {accepted_by(attribute)}")
    return value


def _mark_of(change: Change, table: Table, row_id: str) -> str:
    query = select(OPENING_TABLE.c.mark)
    if table is OPENING_TABLE:
        query = query.where(OPENING_TABLE.c.id == row_id)
    else:
        query = query.join(table, table.c.opening_id == OPENING_TABLE.c.id).where(table.c.id == row_id)
    mark = change.connection.execute(query).scalar()
    if mark is None:
        raise MissingRowError("this opening is not in the project any more")
    return str(mark)


def _move_to_level(change: Change, opening_id: str, held: dict[str, Any]) -> None:
    if not {"building", "level"} & held.keys():
        return
    query = (
        select(BUILDING.c.name, LEVEL.c.name)
        .select_from(OPENING_TABLE)
        .outerjoin(LEVEL, OPENING_TABLE.c.level_id == LEVEL.c.id)
        .outerjoin(BUILDING, LEVEL.c.building_id == BUILDING.c.id)
        .where(OPENING_TABLE.c.id == opening_id)
    )
    building, level = change.connection.execute(query).one()
    place = (cast("str | None", held.pop("building", building)), cast("str | None", held.pop("level", level)))
    held["level_id"] = levels_for(change, {place})[place]


def _chosen(change: Change, opening_id: str, role: str) -> list[str]:
    query = select(CHOSEN_PART.c.id).where(CHOSEN_PART.c.opening_id == opening_id, CHOSEN_PART.c.role == role)
    return list(change.connection.execute(query).scalars())


def _placed(change: Change, opening_id: str) -> list[str]:
    return list(
        change.connection.execute(select(PLACED_UNIT.c.id).where(PLACED_UNIT.c.opening_id == opening_id)).scalars()
    )
