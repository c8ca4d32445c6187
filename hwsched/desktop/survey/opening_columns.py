"""The columns of the register: what is seen at first, every fact of opening, leaf and lock, every result."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import partial
from typing import Any, Final, get_args

from PySide6.QtGui import QColor

from hwsched.attributes import Attribute, said_value
from hwsched.attributes.unknown import unknown_word
from hwsched.desktop.grid.column import Column, Target
from hwsched.desktop.looks.severities import severities_in_words
from hwsched.desktop.looks.tokens import colour
from hwsched.desktop.parts.set_book import OpeningSet
from hwsched.desktop.survey.ahead import Ahead
from hwsched.desktop.survey.states import STATES, state_colour, state_of, state_shape
from hwsched.language import phrase, to_phrase
from hwsched.operations.findings.checked import Checked
from hwsched.quantities import LengthStyle, format_length
from hwsched.survey import ITEM, LEAF, OPENING, Entity
from hwsched.survey.asked import OF_KINDS
from hwsched.telling.natural import natural
from hwsched.values import SEVERITIES
from hwsched.values.fit import Role
from hwsched.values.lock_points import LOCK_KINDS, active_leaf, lock_item

NOT_HERE: Final = ""
"""Value of a fact of a leaf or a lock that an opening does not have."""
_NO_LEAF: Final = to_phrase("no leaf")
_TALL: Final = frozenset({"length", "number", "integer", "money"})
_ROLE_NOT_SAID: Final = frozenset({"fastener", "tool", "consumable"})
"""Roles with too many parts for one cell."""


@dataclass
class Beside:
    """What columns show that does not stand in the opening itself."""

    style: LengthStyle = "fraction"
    sets: Mapping[str, OpeningSet] = field(default_factory=dict)
    levels: Mapping[tuple[str | None, str | None], tuple[bool, float, int]] = field(default_factory=dict)


def opening_columns(beside: Beside, own: Sequence[Attribute] = ()) -> tuple[Column[Checked], ...]:
    """Return all columns, those that are seen at first before the others.

    Parameters
    ----------
    beside : Beside
        Read whenever a cell is shown.
    own : sequence of Attribute
        The project's own fields of openings.
    """
    seen = _seen_first(beside)
    names = {each.name for each in seen}
    facts = [
        _fact_column(entity, attribute, beside)
        for entity in (OPENING, LEAF, ITEM)
        for attribute in entity.attributes
        if entity is not ITEM or LOCK_KINDS.keys() & set(OF_KINDS.get(attribute.name, LOCK_KINDS))
    ]
    mine = [_own_column(attribute, beside) for attribute in own]
    return (*seen, *(each for each in (*facts, *mine, *_results(beside)) if each.name not in names))


def _seen_first(beside: Beside) -> tuple[Column[Checked], ...]:
    fact = partial(_fact_column, beside=beside, standard=True)
    return (
        fact(OPENING, OPENING.attribute("mark"), width=9, typed=False),
        Column(
            "result.state",
            to_phrase("State"),
            state_of,
            phrase,
            _state_order,
            colour=state_colour,
            icon=state_shape,
            width=20,
            section=to_phrase("Results"),
        ),
        Column("opening.location", to_phrase("Location"), _location, width=24, section=to_phrase("Opening")),
        Column(
            "result.findings",
            to_phrase("Findings"),
            _counts,
            _findings_text,
            _worst_first,
            width=22,
            section=to_phrase("Results"),
        ),
        Column("opening.set", to_phrase("Set"), partial(_set_name, beside), width=8, section=to_phrase("Opening")),
        fact(OPENING, OPENING.attribute("form"), title=to_phrase("Form"), width=12),
        fact(OPENING, OPENING.attribute("hand"), title=to_phrase("Hand"), width=10),
        fact(OPENING, OPENING.attribute("rating"), title=to_phrase("Rating"), width=11),
        fact(LEAF, LEAF.attribute("material"), title=to_phrase("Leaf"), width=15, missing=_NO_LEAF),
        Column("result.locks", to_phrase("Lock"), _locks, width=20, section=to_phrase("Lock")),
        fact(OPENING, OPENING.attribute("building"), title=to_phrase("Building"), width=14),
        Column(
            "opening.level",
            to_phrase("Level"),
            lambda each: each.given.opening.level,
            row_key=partial(_level_order, beside),
            attribute=OPENING.attribute("level"),
            target=partial(_of_opening, "level"),
            width=10,
            section=to_phrase("Opening"),
        ),
    )


def _of_opening(name: str, each: Checked) -> Target | None:
    return None if isinstance(each, Ahead) else Target(OPENING.name, each.given.opening.id, name)


def _state_order(state: str) -> int:
    return STATES.index(state) if state in STATES else len(STATES)


def _counts(each: Checked) -> tuple[int, ...]:
    counts = [sum(f.severity == s and not f.waived for f in each.findings) for s in SEVERITIES]
    return (*counts, sum(f.waived for f in each.findings))


def _findings_text(counts: tuple[int, ...]) -> str:
    said = severities_in_words(dict(zip(SEVERITIES, counts, strict=False)))
    waived = counts[len(SEVERITIES)] if counts else 0
    return "  ".join([*said, phrase("{waived} waived", waived=waived)] if waived else said)


def _worst_first(counts: tuple[int, ...]) -> tuple[int, ...]:
    """Return a key by which what is worst comes first: more errors, then more warnings, then more notes."""
    return tuple(-n for n in counts)


def _set_name(beside: Beside, each: Checked) -> str:
    held = beside.sets.get(each.given.opening.id)
    return held.name if held is not None else ""


def _location(each: Checked) -> str:
    opening = each.given.opening
    rooms = [room for room in (opening.room_from, opening.room_to) if room]
    return phrase("{before} to {behind}", before=rooms[0], behind=rooms[1]) if len(rooms) == 2 else "".join(rooms)


def _locks(each: Checked) -> str:
    locks = [lock for at in each.points if (lock := lock_item(at.given)) is not None]
    form = ITEM.attribute("lock_form")
    return " + ".join(said_value(form, lock.lock_form, unknown=unknown_word()) for lock in locks) or phrase("none")


def _level_order(beside: Beside, each: Checked) -> Any:
    opening = each.given.opening
    upward = beside.levels.get((opening.building, opening.level), (True, 0.0, 0))
    name = (opening.level or "").casefold()
    return opening.level is None, natural((opening.building or "").casefold()), upward, natural(name)


def thing_of(each: Checked, entity: Entity) -> Any:
    """Return of an opening what facts of an entity are shown: itself, its active leaf, the lock of its first point."""
    if entity is OPENING:
        return each.given.opening
    return active_leaf(each.given.leaves) if entity is LEAF else lock_item(each.given)


def fact_name(entity: Entity, attribute: Attribute) -> str:
    """Return by what the column of a fact is known; the query language calls it so too."""
    return f"{entity.name.removeprefix('existing_')}.{attribute.name}"


def _fact_column(
    entity: Entity,
    attribute: Attribute,
    beside: Beside,
    *,
    title: str = "",
    width: int = 0,
    missing: str = NOT_HERE,
    standard: bool = False,
    typed: bool = True,
) -> Column[Checked]:
    name = attribute.name

    def value(each: Checked) -> Any:
        thing = thing_of(each, entity)
        return getattr(thing, name) if thing is not None else missing

    def target(each: Checked) -> Target | None:
        thing = thing_of(each, entity)
        return Target(entity.name, thing.id, name) if thing is not None and not isinstance(each, Ahead) else None

    note = {LEAF.name: to_phrase("Of the single or active leaf."), ITEM.name: to_phrase("Of the lock.")}.get(
        entity.name, ""
    )
    return Column(
        fact_name(entity, attribute),
        title or attribute.label,
        value,
        partial(_fact_text, attribute, beside, _silent(entity, attribute), missing),
        partial(_fact_order, attribute, missing),
        attribute=attribute,
        target=target,
        colour=partial(_fact_colour, missing),
        typed=typed,
        width=width or max(11, min(24, len(attribute.label) + 3)),
        right=attribute.kind in _TALL,
        note=attribute.note,
        besides=note,
        standard=standard,
        section={OPENING.name: to_phrase("Opening"), LEAF.name: to_phrase("Leaf"), ITEM.name: to_phrase("Lock")}[
            entity.name
        ],
    )


def _silent(entity: Entity, attribute: Attribute) -> bool:
    """Tell whether nothing stands for unknown, as of a name; of what has to be found out it is said."""
    return entity is OPENING and attribute.kind == "text"


def _fact_text(attribute: Attribute, beside: Beside, silent: bool, missing: str, value: Any) -> str:
    unknown = "" if silent else unknown_word()
    return phrase(missing) if value == missing else said_value(attribute, value, beside.style, unknown=unknown)


def _fact_colour(missing: str, value: Any) -> QColor | None:
    """Return the quiet colour of what nobody knows, or is not there."""
    return colour("soft") if value is None or value == missing else None


def _fact_order(attribute: Attribute, missing: str, value: Any) -> Any:
    if value == missing:
        return (1,)
    if attribute.kind == "choice":
        words = [choice.value for choice in attribute.choices]
        return 0, words.index(value) if value in words else len(words)
    return 0, natural(value.casefold()) if isinstance(value, str) else value


def _own_column(attribute: Attribute, beside: Beside) -> Column[Checked]:
    def value(each: Checked) -> Any:
        return next(
            (o.value for o in each.own if o.entity == OPENING.name and o.attribute.name == attribute.name), None
        )

    return Column(
        f"opening.{attribute.name}",
        attribute.label,
        value,
        partial(_fact_text, attribute, beside, True, NOT_HERE),
        partial(_fact_order, attribute, NOT_HERE),
        attribute=attribute,
        target=partial(_of_opening, attribute.name),
        right=attribute.kind in _TALL,
        standard=False,
        section=to_phrase("Fields of the project"),
    )


def _results(beside: Beside) -> tuple[Column[Checked], ...]:
    def length(read: Callable[[Checked], float | None], name: str, title: str) -> Column[Checked]:
        def text(value: float | None) -> str:
            return "" if value is None else format_length(value, beside.style)

        return Column(name, title, read, text, right=True, standard=False, section=to_phrase("Results"))

    def whole(read: Callable[[Checked], int | None], name: str, title: str) -> Column[Checked]:
        return Column(name, title, read, width=8, right=True, standard=False, section=to_phrase("Results"))

    parts = tuple(
        Column(
            f"part.{role}",
            role.replace("-", " ").capitalize(),
            partial(_parts, role),
            standard=False,
            section=to_phrase("Parts"),
        )
        for role in get_args(Role)
        if role not in _ROLE_NOT_SAID
    )
    return (
        length(_spare, "result.lead_spare", to_phrase("Lead to spare")),
        length(lambda each: _place(each, "x_mm"), "result.unit_x", to_phrase("Unit from the lock edge")),
        length(lambda each: _place(each, "y_mm"), "result.unit_y", to_phrase("Unit above the floor")),
        whole(lambda each: len(each.fit.holes) if each.fit is not None else None, "result.holes", to_phrase("Holes")),
        whole(lambda each: len(_needs(each)), "result.missing", to_phrase("Facts missing")),
        whole(lambda each: len(each.points), "result.points", to_phrase("Lock points")),
        *parts,
    )


def _parts(role: str, each: Checked) -> str | None:
    """Return the parts of a role; None while no fit counts."""
    if each.fit is None:
        return None
    return ", ".join(dict.fromkeys(part.part for part in each.fit.parts if part.role == role))


def _spare(each: Checked) -> float | None:
    cable = each.points[0].fit.cable if each.points[0].fit is not None else None
    return cable.available_mm - cable.length_mm if cable is not None else None


def _place(each: Checked, name: str) -> float | None:
    fit = each.points[0].fit
    return getattr(fit.placement, name) if fit is not None and fit.placement is not None else None


def _needs(each: Checked) -> frozenset[str]:
    """Return the facts that are missing, each once however many rules ask for it."""
    return frozenset(need for finding in each.findings if not finding.waived for need in finding.needs)
