"""Setting a fact from what a person typed, be it declared or a field of the project's own."""

from hwsched.attributes import Attribute
from hwsched.model.errors import ValueRefusedError
from hwsched.model.project import Project
from hwsched.model.queries import read_own_fields
from hwsched.operations.changes import Changes
from hwsched.operations.survey.editing import attribute_named, edit_fact_text, typed_value
from hwsched.operations.survey.expected import Expected
from hwsched.operations.survey.own_fields import own_attributes, set_own_value


def type_in(
    project: Project,
    entity: str,
    row_id: str,
    name: str,
    text: str,
    *,
    who: str,
    base: int | None = None,
    was: str | None = None,
) -> Changes:
    """Set one fact of an opening, leaf or existing item; empty text means unknown.

    Parameters
    ----------
    project : Project
        Open project.
    entity, row_id : str
        What is edited.
    name : str
        The fact, or a field of the project's own.
    text : str
        As typed.
    who : str
        For the journal.
    base : int, optional
        The newest change set that the editor had seen; what others changed since at this fact is a conflict.
    was : str, optional
        What the editor says that the fact holds, as typed or as the project shows it; another value is a conflict.

    Raises
    ------
    ValueRefusedError
        When there is no such fact, or a text cannot be read as it; says what is accepted.
    ConflictError
        When the fact holds something else than was seen, and not what is typed either; with who set it and when.
    MissingRowError, DuplicateValueError
        As the edits that it calls; nothing is changed.
    """
    with project.reading() as connection:
        own = {attribute.name: attribute for attribute in own_attributes(read_own_fields(connection), entity)}
    attribute = own.get(name) or attribute_named(entity, name)
    said = None if was is None else _expected(project, attribute, was)
    if name not in own:
        return edit_fact_text(project, entity, row_id, name, text, who=who, base=base, was=said)
    value = typed_value(project, attribute, text)
    return set_own_value(project, entity, row_id, name, value, who=who, base=base, was=said)


def _expected(project: Project, attribute: Attribute, text: str) -> Expected:
    try:
        return Expected(text, typed_value(project, attribute, text))
    except ValueRefusedError as error:
        return Expected(text, unread=error)
