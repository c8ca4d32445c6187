"""Fields of a project's own on openings, existing items and parts: defining them, filling them, taking them away."""

from collections.abc import Iterable, Mapping
from typing import Any, Final, cast, get_args

from sqlalchemy import Table, select

from hwsched.attributes import Attribute, AttributeKind, Choice, Unit
from hwsched.model.errors import ValueRefusedError
from hwsched.model.journal.journal import Change
from hwsched.model.project import Project
from hwsched.model.queries import OwnField
from hwsched.model.tables import ITEM_TABLE, OPENING_TABLE, OWN_FIELD, PART
from hwsched.operations.changes import Changes
from hwsched.operations.survey.accepted_values import accepted, row_there
from hwsched.operations.survey.expected import Expected, check_expected

_TABLES: Final[Mapping[str, Table]] = {table.name: table for table in (OPENING_TABLE, ITEM_TABLE, PART)}
_KINDS: Final = get_args(AttributeKind)
_UNITS: Final = get_args(Unit)


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
    """Define a field of the project's own.

    Parameters
    ----------
    project : Project
        Open project.
    entity : {"opening", "existing_item", "part"}
        What has the field.
    name : str
        Identifier: letters, digits, underscores; none of the built-in facts.
    label : str
        Header in sheets and forms.
    kind : str
        An attribute's kind; lengths are held in mm.
    who : str
        For the journal.
    unit : str
        Of a number.
    choices : tuple of str
        Words of a choice.

    Raises
    ------
    ValueRefusedError, DuplicateValueError
        And nothing is changed.
    """
    table = _table(entity)
    if not name.isidentifier():
        raise ValueRefusedError("name", f"'{name}' is no name; accepted: letters, digits and underscores")
    if name in table.c or name in ("building", "level"):
        raise ValueRefusedError("name", f"'{name}' is a built-in fact already")
    if not label.strip():
        raise ValueRefusedError("label", "a field needs a label")
    if kind not in _KINDS:
        raise ValueRefusedError("kind", f"'{kind}' is no kind; accepted: {', '.join(_KINDS)}")
    if unit not in _UNITS:
        raise ValueRefusedError("unit", f"'{unit}' is no unit; accepted: {', '.join(filter(None, _UNITS))}")
    if (kind == "choice") != bool(choices):
        raise ValueRefusedError("choices", "a choice needs its words, and nothing else has any")
    row = {
        "entity": entity,
        "name": name,
        "label": label.strip(),
        "kind": kind,
        "unit": "mm" if kind == "length" else unit,
        "choices": list(choices),
    }
    with project.change("define-field", f"Define field {label.strip()}", who) as change:
        change.insert(OWN_FIELD, [row])
    return Changes.of(change)


def remove_field(project: Project, entity: str, name: str, *, who: str) -> Changes:
    """Take a field away, with its values; undo brings both back.

    Raises
    ------
    ValueRefusedError
        Where there is no such field.
    """
    table = _table(entity)
    with project.change("remove-field", f"Remove field {name}", who) as change:
        field = _field(change, entity, name)
        change.summary = f"Remove field {field.label}"
        rows = change.connection.execute(select(table.c.id, table.c.extra)).all()
        change.update(table, [(row.id, {"extra": _without(row.extra, name)}) for row in rows if name in row.extra])
        change.delete(OWN_FIELD, [field.id])
    return Changes.of(change)


def set_own_value(
    project: Project,
    entity: str,
    row_id: str,
    name: str,
    value: Any,
    *,
    who: str,
    base: int | None = None,
    was: Expected | None = None,
) -> Changes:
    """Set a field of the project's own on one row; None takes the value away.

    ``base`` and ``was`` are what the editor had seen, as in `edit_facts`.

    Raises
    ------
    ValueRefusedError, MissingRowError, ConflictError
        And nothing is changed.
    """
    table = _table(entity)
    with project.change("set-own-value", f"Set {name}", who, base=base) as change:
        field = _field(change, entity, name)
        choices = tuple(Choice(word, word) for word in field.choices)
        attribute = Attribute(name, field.label, field.kind, field.unit, choices)
        held = accepted(attribute, value)
        row = row_there(change, table, row_id)
        if was is not None:
            values = (row.extra.get(name), held)
            check_expected(change, entity, row._mapping, attribute, ("extra", name), values, was)
        extra = _without(row.extra, name) if held is None else {**row.extra, name: held}
        change.summary = f"Set {field.label}"
        change.update(table, [(row_id, {"extra": extra})], [f"edited by {who}"])
    return Changes.of(change)


def attribute_of(field: OwnField) -> Attribute:
    """Return a field of the project's own as a declared fact, for reading and showing."""
    kind, unit = cast(AttributeKind, field.kind), cast(Unit, field.unit)
    return Attribute(field.name, field.label, kind, unit, tuple(Choice(word, word) for word in field.choices))


def own_attributes(fields: Iterable[OwnField], entity: str) -> tuple[Attribute, ...]:
    """Return the project's own fields of one entity as declared facts."""
    return tuple(attribute_of(field) for field in fields if field.entity == entity)


def _table(entity: str) -> Table:
    if entity not in _TABLES:
        raise ValueRefusedError("entity", f"{entity} has no fields of its own; accepted: {', '.join(_TABLES)}")
    return _TABLES[entity]


def _field(change: Change, entity: str, name: str) -> Any:
    query = select(OWN_FIELD).where(OWN_FIELD.c.entity == entity, OWN_FIELD.c.name == name)
    field = change.connection.execute(query).first()
    if field is None:
        raise ValueRefusedError(name, f"the project has no field '{name}' on {entity.replace('_', ' ')}")
    return field


def _without(extra: Mapping[str, Any], name: str) -> dict[str, Any]:
    return {key: value for key, value in extra.items() if key != name}
