"""The past of one opening, step by step: who, when, and each fact as it was seen before and after."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any, Final

from hwsched.attributes import Attribute, said_value
from hwsched.attributes.unknown import unknown_word
from hwsched.kept_sentences import GATE, kept_phrase
from hwsched.language import phrase, to_phrase
from hwsched.model.journal.history import RowChange, changes_of_opening, history
from hwsched.model.project import Project
from hwsched.model.queries import read_levels, read_own_fields
from hwsched.operations.survey.own_fields import own_attributes
from hwsched.quantities import LENGTH_STYLES, LengthStyle, format_length
from hwsched.survey import ENTITIES, ITEM, LEAF, Entity
from hwsched.values.role_words import role_said

_ENTITIES: Final[Mapping[str, Entity]] = {entity.name: entity for entity in ENTITIES}
_WORDS: Final = {
    "chosen_part": to_phrase("Part chosen by hand"),
    "placed_unit": to_phrase("Place of the unit by hand"),
    "waiver": to_phrase("Waiver"),
    "attachment": to_phrase("File"),
    "piece": to_phrase("Piece"),
    "lock_point": "",
    "opening_fit": to_phrase("Fit"),
    "open_question": to_phrase("Question"),
}
"""Of rows that belong to an opening and are no surveyed thing; empty: nobody is told of them."""
_TOLD: Final = ("status", "role", "part", "quantity", "face", "pattern", "x_mm", "y_mm", "rule", "reason", "person",
                "name", "serial", "lot", "state", "text", "answer")  # fmt: skip
"""Columns of such rows that people are told of."""
_WORDED: Final = frozenset({"status", "face", "pattern", "state"})
"""Of these, those that hold a word of the program."""


@dataclass(frozen=True, slots=True)
class PastFact:
    """One fact that a step changed."""

    where: str
    label: str
    before: str
    after: str


@dataclass(frozen=True, slots=True)
class PastStep:
    """One step of the journal, as far as it touched an opening."""

    number: int
    when: str
    who: str
    summary: str
    kind: str
    """edit, undo or redo: only an edit is taken back and done again."""
    undone: bool
    facts: tuple[PastFact, ...]


def past_of(project: Project, opening_id: str) -> tuple[PastStep, ...]:
    """Return the steps that touched an opening or what belongs to it, the latest first.

    Parameters
    ----------
    project : Project
        Open project; it is only read.
    opening_id : str
        Which opening.
    """
    with project.reading() as connection:
        changes = changes_of_opening(connection, opening_id)
        steps = {each.number: each for each in history(connection)}
        levels = {level_id: place for place, level_id in read_levels(connection).items()}
        fields = read_own_fields(connection)
    style: LengthStyle = next((each for each in LENGTH_STYLES if each == project.length_style), "fraction")
    own = {name: {each.name: each for each in own_attributes(fields, name)} for name in _ENTITIES}
    names = _names(changes)
    facts: dict[int, list[PastFact]] = {}
    for change in changes:
        facts.setdefault(change.change_set, []).extend(_facts(change, names, levels, own, style))
    return tuple(
        PastStep(step.number, step.when, step.who, step.summary, step.kind, step.undone, tuple(facts[number]))
        for number in sorted(facts, reverse=True)
        if (step := steps.get(number)) is not None
    )


def _names(changes: Iterable[RowChange]) -> dict[str, str]:
    """Name each leaf and existing item by what it last was."""
    held: dict[str, dict[str, Any]] = {}
    entities: dict[str, str] = {}
    for change in changes:
        held.setdefault(change.row_id, {}).update(change.after or change.before or {})
        entities[change.row_id] = change.entity
    found = {}
    for row_id, values in held.items():
        entity = entities[row_id]
        if entity == LEAF.name:
            word = LEAF.attribute("position").choice(str(values.get("position") or ""))
            several = word is not None and word.value != "single"
            leaf = f"Leaf, {word.label.lower()}" if word is not None and several else "Leaf"
            found[row_id] = kept_phrase(leaf, GATE)
        elif entity == ITEM.name:
            kind = ITEM.attribute("kind").choice(str(values.get("kind") or ""))
            found[row_id] = phrase(kind.label if kind else ITEM.label)
    return found


def _facts(
    change: RowChange,
    names: Mapping[str, str],
    levels: Mapping[str, tuple[str | None, str | None]],
    own: Mapping[str, Mapping[str, Attribute]],
    style: LengthStyle,
) -> Iterable[PastFact]:
    before, after = _spread(change.before), _spread(change.after)
    entity = _ENTITIES.get(change.entity)
    if entity is None:
        where = phrase(_WORDS.get(change.entity, change.entity.replace("_", " ").capitalize()))
        yield from _others(where, before, after, style) if where else ()
        return
    where = names.get(change.row_id) or phrase(entity.label)
    declared = {each.name: each for each in entity.attributes} | dict(own.get(entity.name, {}))
    for name in dict.fromkeys((*before, *after)):
        if name == "level_id":
            old, new = (_place(levels, values.get(name)) for values in (before, after))
            if old != new:
                yield PastFact(where, phrase("Building and level"), old, new)
        attribute = declared.get(name)
        if attribute is None or before.get(name) == after.get(name):
            continue
        old, new = (
            said_value(attribute, values.get(name), style, unknown=unknown_word()) for values in (before, after)
        )
        yield PastFact(where, phrase(attribute.label), old, new)


def _spread(values: Mapping[str, Any] | None) -> dict[str, Any]:
    """Put fields of the project's own beside the declared facts."""
    found = dict(values or {})
    extra = found.pop("extra", None)
    return {**found, **(extra if isinstance(extra, dict) else {})}


def _place(levels: Mapping[str, tuple[str | None, str | None]], level: Any) -> str:
    place = levels.get(str(level)) if level is not None else None
    return ", ".join(word for word in place if word) if place is not None else unknown_word()


def _others(where: str, before: Mapping[str, Any], after: Mapping[str, Any], style: LengthStyle) -> Iterable[PastFact]:
    """Tell of a choice, a place, a waiver, a fit: what people know of it, in one line."""
    old, new = (
        ", ".join(_said(name, values[name], style) for name in _TOLD if values.get(name) not in (None, ""))
        for values in (before, after)
    )
    if old != new:
        yield PastFact(where, "", old or phrase("none"), new or phrase("none"))


def _said(name: str, value: Any, style: LengthStyle) -> str:
    if isinstance(value, float | int) and not isinstance(value, bool):
        return f"{name[:1]} {format_length(value, style)}" if name.endswith("_mm") else f"{value:g}"
    return role_said(str(value)) if name == "role" else phrase(str(value)) if name in _WORDED else str(value)
