"""Where each fact of an opening comes from: the file with sheet and cell, the delivery, the person, the step."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any, Final

from hwsched.attributes import Attribute, said_value
from hwsched.exchange.survey.words import SIZE
from hwsched.language import phrase
from hwsched.model.journal.history import RowChange, changes_of_opening
from hwsched.model.project import Project
from hwsched.model.queries import read_inputs, read_levels, read_own_fields
from hwsched.operations.snapshot import of_one_state
from hwsched.operations.survey.deliveries import Delivery, deliveries
from hwsched.operations.survey.hand_edits import last_state
from hwsched.operations.survey.own_fields import attribute_of
from hwsched.quantities import LENGTH_STYLES, LengthStyle
from hwsched.survey import ITEM, LEAF, OPENING, Entity

_ROW: Final = ", row "


@dataclass(frozen=True, slots=True)
class FactOrigin:
    """A known fact with where it comes from."""

    where: str
    """Opening, Leaf active, Lock ..."""
    fact: str
    """Name of the attribute."""
    label: str
    value: Any
    shown: str
    person: str
    at: str
    """ISO 8601, in the project's zone."""
    step: int
    """Number of the change set."""
    verb: str
    delivery: int | None = None
    """Number of the delivery that gave it; None where it was set by hand, or came before deliveries were kept."""
    file: str = ""
    sheet: str = ""
    row: int | None = None
    cell: str = ""
    """Such as F7; empty where the fact has no column of its own, such as what a heading says of the rows below."""

    @property
    def said(self) -> str:
        """Return where it comes from in words."""
        if self.file:
            row = phrase("row {row}", row=self.row) if self.row else ""
            place = phrase("cell {cell}", cell=self.cell) if self.cell else row
            parts = [self.file, phrase("sheet {sheet}", sheet=self.sheet) if self.sheet else "", place]
            where = ", ".join(part for part in parts if part)
            if self.delivery is None:
                return phrase("{where}; taken in by {person}", where=where, person=self.person)
            return phrase(
                "delivery {number}: {where}; taken in by {person}",
                number=self.delivery,
                where=where,
                person=self.person,
            )
        return phrase("set by {person} in step {step}", person=self.person, step=self.step)


@of_one_state
def origins(project: Project, opening_id: str) -> list[FactOrigin]:
    """Return every known fact of an opening, its leaves and existing items, with where it comes from."""
    held = {step: each for each in deliveries(project) for step in (each.step, *each.decided)}
    with project.reading() as connection:
        given = next(iter(read_inputs(connection, [opening_id], project.catalogue.read(connection))))
        levels = {level_id: place for place, level_id in read_levels(connection).items()}
        own: dict[str, list[Attribute]] = {}
        for made in read_own_fields(connection):
            own.setdefault(made.entity, []).append(attribute_of(made))
        by_row: dict[tuple[str, str], list[RowChange]] = {}
        for change in changes_of_opening(connection, opening_id):
            by_row.setdefault((change.entity, change.row_id), []).append(change)
    style: LengthStyle = next((each for each in LENGTH_STYLES if each == project.length_style), "fraction")
    rows: list[tuple[Entity, str, str, str]] = [(OPENING, opening_id, "Opening", "")]
    rows += [(LEAF, leaf.id, f"Leaf {leaf.position or ''}".rstrip(), leaf.position or "") for leaf in given.leaves]
    rows += [(ITEM, item.id, str(item.kind or "item").replace("-", " ").capitalize(), "") for item in given.items]
    found = []
    for entity, row_id, where, slot in rows:
        changes = by_row.get((entity.name, row_id), [])
        for attribute in (*entity.attributes, *own.get(entity.name, ())):
            state = last_state(changes, attribute.name, levels)
            if state.value is None or state.source is None:
                continue
            found.append(_origin(entity.name, slot, where, attribute, state.value, state.source, held, style))
    return found


def _origin(
    entity: str,
    slot: str,
    where: str,
    attribute: Attribute,
    value: Any,
    source: RowChange,
    held: Mapping[int, Delivery],
    style: LengthStyle,
) -> FactOrigin:
    delivery = held.get(source.change_set)
    told = (where, attribute.name, attribute.label, value, said_value(attribute, value, style), source.who, source.when)
    plain = FactOrigin(*told, source.change_set, source.verb)
    if source.verb not in ("import-survey", "decide-survey") or not source.origin:
        return plain
    before, _, number = source.origin.rpartition(_ROW)
    name = delivery.file if delivery is not None else before.partition(", ")[0]
    sheet = before.removeprefix(f"{name}, ")
    row = int(number) if number.isdigit() else None
    letters = _letters(entity, slot, attribute.name, delivery.columns.get(sheet, {}) if delivery is not None else {})
    return FactOrigin(
        *told, source.change_set, source.verb, delivery.number if delivery is not None else None, name, sheet, row,
        "+".join(f"{letter}{row}" for letter in letters) if row is not None else "",
    )  # fmt: skip


def _letters(entity: str, slot: str, name: str, columns: Mapping[str, str]) -> Iterable[str]:
    """Return the columns that carry a fact; none where two could and the row does not say which."""
    names = (name, SIZE) if name in ("width_mm", "height_mm") else (name,)
    for each in names:
        for key in (f"{entity}.{each}@{slot}" if slot else "", f"{entity}.{each}"):
            if key in columns:
                return columns[key].split("+")
        alike = [letters for fact, letters in columns.items() if fact.startswith(f"{entity}.{each}@")]
        if len(alike) == 1:
            return alike[0].split("+")
    return ()
