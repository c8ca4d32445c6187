"""One entry of the catalogue at a time: added, changed, withdrawn, a step each; `part_form` reads what is typed."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final

from sqlalchemy import select

from hwsched.attributes import Attribute
from hwsched.model.catalogue_writing import write_part
from hwsched.model.errors import MissingRowError, ValueRefusedError
from hwsched.model.journal.journal import Change
from hwsched.model.project import Project
from hwsched.model.queries import catalogue_of, read_own_fields
from hwsched.model.tables import HARDWARE_SET, KIT_CONTENT, PART, SET_LINE, SUPPLY_TABLE
from hwsched.operations.changes import Changes
from hwsched.operations.parts.part_form import PartEdit, PartRead, fields_of, read_part
from hwsched.operations.survey.own_fields import own_attributes
from hwsched.telling.nearest import nearest_words
from hwsched.values import Catalogue, Part

_NAMED: Final = 5
"""Holders that a refusal names."""


@dataclass(frozen=True, slots=True)
class PartForm:
    """What the form of a part needs to know of the project, read once."""

    catalogue: Catalogue
    own: tuple[Attribute, ...]
    bare_unit: str | None
    extra: Mapping[str, Mapping[str, Any]]
    """Values of the project's own fields by part number."""
    ids: Mapping[str, str]
    """Identifier of each part's row by its number."""

    def read(self, edit: PartEdit) -> PartRead:
        """Read what was typed."""
        return read_part(self.catalogue, self.own, self.bare_unit, edit)


def part_form(project: Project) -> PartForm:
    """Read the catalogue with what its forms ask."""
    with project.reading() as connection:
        rows = connection.execute(select(PART.c.id, PART.c.number, PART.c.extra)).all()
        return PartForm(
            project.catalogue.read(connection),
            own_attributes(read_own_fields(connection), PART.name),
            project.bare_unit,
            {row.number: row.extra for row in rows if row.extra},
            {row.number: row.id for row in rows},
        )


def edit_part(project: Project, edit: PartEdit, *, who: str, base: int | None = None) -> Changes:
    """Add a part, change one or withdraw it, as one step.

    Parameters
    ----------
    project : Project
        Open project.
    edit : PartEdit
        What is asked, as it was typed.
    who : str
        For the journal.
    base : int, optional
        The newest change set that was seen; what others changed since at the same facts of the part is a conflict.

    Raises
    ------
    ValueRefusedError
        Names the first field that cannot be as typed, or what holds a part that was to be withdrawn.
    ConflictError, MissingRowError
        And nothing is changed.
    """
    with project.change(verb_of(edit), "", who, base=base) as change:
        write_part_edit(project, change, edit, who=who)
    return Changes.of(change)


def verb_of(edit: PartEdit) -> str:
    """Return the word by which the journal and the roles know what is asked."""
    withdrawing, verb = "withdraw-part", "add-part" if edit.new else "edit-part"
    return withdrawing if edit.withdrawn else verb


def write_part_edit(project: Project, change: Change, edit: PartEdit, *, who: str) -> None:
    """Do what is asked of a part within a change set, and give that its sentence."""
    connection = change.connection
    row = connection.execute(select(PART.c.id, PART.c.extra).where(PART.c.number == edit.number.strip())).first()
    if edit.withdrawn:
        if row is None:
            near = nearest_words(edit.number, connection.execute(select(PART.c.number)).scalars())
            raise MissingRowError(f"the catalogue has no part '{edit.number}'{near}")
        _refuse_held(change, edit.number)
        change.summary = f"Withdraw part {edit.number}"
        change.delete(PART, [row.id])
        return
    own = own_attributes(read_own_fields(connection), PART.name)
    read = read_part(project.catalogue.read(connection), own, project.bare_unit, edit)
    for problem in read.problems:
        label = {"number": "Part number", "kind": "kind", "like": "like"}.get(problem.attribute)
        asked = fields_of(read.part.kind, own).get(problem.attribute)
        raise ValueRefusedError(label or (asked.label if asked is not None else problem.attribute), str(problem))
    before = row.extra if row is not None else {}
    if row is None and edit.like:
        before = connection.execute(select(PART.c.extra).where(PART.c.number == edit.like)).scalar() or {}
    extra = {name: value for name, value in {**before, **read.extra}.items() if value is not None}
    change.summary = _sentence(edit, read, own)
    write_part(change, read.part, f"edited by {who}", extra)


def edited_catalogue(
    catalogue: Catalogue, edit: PartEdit, own: Sequence[Attribute], bare_unit: str | None
) -> Catalogue:
    """Return the catalogue as it would be; raises ValueRefusedError for what cannot be."""
    parts: dict[str, Part] = dict(catalogue.parts)
    if edit.withdrawn:
        if parts.pop(edit.number, None) is None:
            near = nearest_words(edit.number, parts)
            raise ValueRefusedError("part", f"the catalogue has no part '{edit.number}'{near}")
    else:
        read = read_part(catalogue, own, bare_unit, edit)
        if read.problems:
            raise ValueRefusedError("part", str(read.problems[0]))
        parts[read.part.number] = read.part
    return catalogue_of(parts[number] for number in sorted(parts))


def _sentence(edit: PartEdit, read: PartRead, own: Sequence[Attribute]) -> str:
    if edit.new:
        return f"Add part {read.part.number}" + (f" like {edit.like}" if edit.like else "")
    asked = fields_of(read.part.kind, own)
    labels = ", ".join(asked[name].label.lower() for name in edit.typed)
    return f"Edit {labels} of part {read.part.number}"


def _refuse_held(change: Change, number: str) -> None:
    """Refuse to withdraw a part that others name: what names it would say nothing any more."""
    connection = change.connection
    asked = (
        ("in the box of", select(PART.c.number).join(KIT_CONTENT).where(KIT_CONTENT.c.number == number)),
        ("the successor of", select(PART.c.number).where(PART.c.superseded_by == number)),
        ("in the hardware set", select(HARDWARE_SET.c.name).join(SET_LINE).where(SET_LINE.c.part == number)),
        ("the supply", select(SUPPLY_TABLE.c.name).where(SUPPLY_TABLE.c.part == number)),
    )
    held = []
    for words, query in asked:
        names = sorted(set(connection.execute(query).scalars()))
        if names:
            more = f" and {len(names) - _NAMED} more" if len(names) > _NAMED else ""
            held.append(f"{words} {', '.join(names[:_NAMED])}{more}")
    if held:
        raise ValueRefusedError("part", f"{number} is {'; '.join(held)}; put another there first, or supersede it")
