"""Many facts of openings, leaves and existing items set at once, from what a person typed or pasted: one step."""

from collections.abc import Iterable, Mapping, Sequence
from typing import Any, Final

from sqlalchemy import Table

from hwsched.attributes import Attribute
from hwsched.model.errors import ValueRefusedError
from hwsched.model.journal.journal import Change
from hwsched.model.project import Project
from hwsched.model.queries import read_own_fields
from hwsched.model.tables import ITEM_TABLE, LEAF_TABLE, OPENING_TABLE
from hwsched.operations.changes import Changes
from hwsched.operations.survey.accepted_values import accepted, row_there
from hwsched.operations.survey.editing import attribute_named, put_level, typed_value
from hwsched.operations.survey.fact_edit import FactEdit
from hwsched.operations.survey.own_fields import own_attributes
from hwsched.survey import ENTITIES, ITEM, LEAF, OPENING

_TABLES: Final[Mapping[str, Table]] = {table.name: table for table in (OPENING_TABLE, LEAF_TABLE, ITEM_TABLE)}
_NAMED: Final = 3
"""Facts that the name of a step says."""
_SEVERAL: Final = {OPENING.name: "openings", LEAF.name: "leaves", ITEM.name: "existing items"}


def edit_many(project: Project, edits: Sequence[FactEdit], *, who: str, base: int | None = None) -> Changes:
    """Set many facts as one step.

    Parameters
    ----------
    project : Project
        Open project.
    edits : sequence of FactEdit
        Each fact of a thing once.
    who : str
        For the journal.
    base : int, optional
        The newest change set that the editor had seen; what others changed since at these facts is a conflict.

    Returns
    -------
    Changes
        What was touched; nothing where all was so already.

    Raises
    ------
    ValueRefusedError, MissingRowError, ConflictError, DuplicateValueError
        And nothing is changed.
    """
    with project.reading() as connection:
        fields = read_own_fields(connection)
    own = {entity.name: {each.name: each for each in own_attributes(fields, entity.name)} for entity in ENTITIES}
    declared: dict[str, dict[str, Any]] = {}
    extra: dict[str, dict[str, Any]] = {}
    entities: dict[str, str] = {}
    labels: dict[str, None] = {}
    for edit in edits:
        if edit.entity not in _TABLES:
            raise ValueRefusedError("entity", f"there is no '{edit.entity}' to edit; accepted: {', '.join(_TABLES)}")
        field = own[edit.entity].get(edit.name)
        attribute: Attribute = field or attribute_named(edit.entity, edit.name)
        held = accepted(attribute, typed_value(project, attribute, edit.text))
        (declared if field is None else extra).setdefault(edit.row_id, {})[edit.name] = held
        entities[edit.row_id] = edit.entity
        labels[attribute.label.lower()] = None
    with project.change("edit-facts", _summary(labels, entities), who, base=base) as change:
        for entity, table in _TABLES.items():
            ids = [each for each, of in entities.items() if of == entity]
            wanted = list(_wanted(change, table, ids, declared, extra))
            change.update(table, wanted, [f"edited by {who}"] * len(wanted))
    return Changes.of(change)


def _wanted(
    change: Change,
    table: Table,
    ids: Iterable[str],
    declared: Mapping[str, dict[str, Any]],
    extra: Mapping[str, dict[str, Any]],
) -> Iterable[tuple[str, dict[str, Any]]]:
    """Return what is to stand on the rows of a table."""
    for row_id in ids:
        held = dict(declared.get(row_id, {}))
        if table.name == OPENING.name:
            put_level(change, row_id, held)
        if row_id in extra:
            fields = {**row_there(change, table, row_id).extra, **extra[row_id]}
            held["extra"] = {name: value for name, value in fields.items() if value is not None}
        yield row_id, held


def _summary(labels: Mapping[str, None], entities: Mapping[str, str]) -> str:
    names = list(labels)
    said = ", ".join(names[:_NAMED]) + (f" and {len(names) - _NAMED} more" if len(names) > _NAMED else "")
    words = {entity.name: entity.label.lower() for entity in ENTITIES}
    counts = {kind: sum(each == kind for each in entities.values()) for kind in dict.fromkeys(entities.values())}
    things = [f"{n} {words[kind] if n == 1 else _SEVERAL[kind]}" for kind, n in counts.items()]
    return f"Edit {said} of {', '.join(things)}"
