"""Setting a fact from what a person typed, be it declared or a field of the project's own."""

from hwsched.model.project import Project
from hwsched.model.queries import read_own_fields
from hwsched.operations.changes import Changes
from hwsched.operations.editing import edit_fact_text, typed_value
from hwsched.operations.own_fields import own_attributes, set_own_value


def type_in(project: Project, entity: str, row_id: str, name: str, text: str, *, who: str) -> Changes:
    """Set one fact of an opening, leaf or existing item; empty text means unknown.

    Raises
    ------
    ValueRefusedError
        When there is no such fact, or the text cannot be read as it; says what is accepted.
    MissingRowError, DuplicateValueError
        As the edits that it calls; nothing is changed.
    """
    with project.reading() as connection:
        own = {attribute.name: attribute for attribute in own_attributes(read_own_fields(connection), entity)}
    if name not in own:
        return edit_fact_text(project, entity, row_id, name, text, who=who)
    return set_own_value(project, entity, row_id, name, typed_value(project, own[name], text), who=who)
