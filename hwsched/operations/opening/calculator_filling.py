"""A calculator filled from an opening as it stands, and what was tried there taken over as facts of the opening.

Here belongs which fact of an opening, of its parts or of the project's settings is which field of a calculator. What is
not known is left out, and said.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, Final

from hwsched.attributes.of_parts import (
    BODY_LENGTH_MM,
    CAM_OFFSET_MM,
    CAPACITY_MAH,
    HEAD_DIAMETER_MM,
    HEIGHT_MM,
    INNER_DIAMETER_MM,
    INSIDE_HALF_MM,
    KEY_HALF_MM,
    LENGTH_MM,
    OPERATION_MA,
    OPERATION_S,
    SELF_DISCHARGE_SHARE,
    STANDING_UA,
    TAIL_LENGTH_MM,
    TAIL_STEP_MM,
    THREAD_DIAMETER_MM,
    THREAD_PITCH_MM,
    USABLE_SHARE,
    NumberName,
)
from hwsched.model.project import Project
from hwsched.operations.changes import Changes
from hwsched.operations.survey.editing import edit_facts
from hwsched.rules import limits_of, rule_named
from hwsched.rules.network.cold import cold_share_of
from hwsched.rules.reading import in_role, lock_item, lock_leaf, lock_part, unit_part
from hwsched.values import Fit, OpeningInput, Part

_FLUSH: Final = rule_named("cylinder-flush")
_EURO: Final = rule_named("euro-projection")
_TAIL: Final = rule_named("tail-reach")


@dataclass(frozen=True, slots=True)
class Home:
    """The fact of an opening that a field stands for."""

    entity: str
    row_id: str
    attribute: str


@dataclass(slots=True)
class Filled:
    """What an opening says to a calculator."""

    values: dict[str, Any] = field(default_factory=dict)
    """As JSON has it; what is not known is left out."""
    homes: dict[str, Home] = field(default_factory=dict)
    """Fields that can be given back, with the fact that each stands for."""
    needs: list[str] = field(default_factory=list)
    """What is not known, in words."""

    def put(self, name: str, value: Any, words: str) -> None:
        """Fill a field; where nothing is known its words are said."""
        if value is None:
            self.needs.append(words)
        else:
            self.values[name] = value


Fill = Callable[[OpeningInput, Fit, Filled], None]


def fillable(name: str) -> bool:
    """Tell whether a calculator can be filled from an opening."""
    return name in _FILLS


def filled(name: str, given: OpeningInput, fit: Fit | None) -> Filled:
    """Fill a calculator from an opening as it stands.

    Parameters
    ----------
    name : str
        The calculator; one of those that `fillable` tells.
    given : OpeningInput
        The opening at its lock point.
    fit : Fit or None
        What it is fitted with; without one, parts are not known.
    """
    found = Filled()
    _FILLS[name](given, fit or Fit("to-measure"), found)
    return found


def take_over(project: Project, values: Sequence[tuple[Home, float]], *, who: str, base: int | None = None) -> Changes:
    """Set facts that were tried in a calculator, as one step.

    Parameters
    ----------
    project : Project
        Open project.
    values : sequence
        Facts with their values as held.
    who : str
        For the journal.
    base : int, optional
        The newest change set when the opening was read; what others changed since at these facts is a conflict.

    Raises
    ------
    ValueRefusedError, MissingRowError, ConflictError
        And nothing is changed.
    """
    rows: dict[tuple[str, str], dict[str, float]] = {}
    for home, value in values:
        rows.setdefault((home.entity, home.row_id), {})[home.attribute] = value
    with project.change("edit-facts", "", who, base=base) as change:
        for (entity, row_id), facts in rows.items():
            edit_facts(project, entity, row_id, facts, who=who)
        change.summary = "; ".join(change.said)
    return Changes.of(change)


def _leaf_and_trim(given: OpeningInput, found: Filled, trim: str) -> None:
    leaf, lock = lock_leaf(given), lock_item(given)
    found.put("leaf_mm", leaf.thickness_mm if leaf is not None else None, "leaf thickness")
    if leaf is not None:
        found.homes["leaf_mm"] = Home("leaf", leaf.id, "thickness_mm")
    if trim:
        found.put(trim, lock.trim_key_mm if lock is not None else None, "trim thickness on the key side")
        if lock is not None:
            found.homes[trim] = Home("existing_item", lock.id, "trim_key_mm")


def _stack(given: OpeningInput, fit: Fit, found: Filled) -> None:
    _leaf_and_trim(given, found, "trim_mm")
    lock, part = lock_item(given), lock_part(given, fit)
    if lock is not None and lock.case_offset_mm is not None:
        found.values["case_offset_mm"] = lock.case_offset_mm
        found.homes["case_offset_mm"] = Home("existing_item", lock.id, "case_offset_mm")
    limits = limits_of(_FLUSH, given.settings)
    found.values |= {"max_turns_beyond": int(limits["turns_beyond"]), "tolerance_mm": limits["tolerance_mm"]}
    part = part if part is not None and part.kind == "mortise-cylinder" else None
    pitch = part.number_of(THREAD_PITCH_MM) if part is not None else None
    if pitch is not None:
        found.values["pitch_mm"] = pitch
    cylinders = [
        {"part": number, "length_mm": long, "cam_offset_mm": offset}
        for number, (long, offset, thread) in _numbers(
            given, "mortise-cylinder", LENGTH_MM, CAM_OFFSET_MM, THREAD_PITCH_MM
        ).items()
        if pitch is None or thread == pitch
    ]
    found.put("cylinders", cylinders or None, "cylinders of the catalogue")
    for role, of_height in (("collar", "collars"), ("ring", "rings")):
        found.values[of_height] = [
            {"part": each.number, "height_mm": height}
            for each in _for_sale(given, role)
            if (height := each.number_of(HEIGHT_MM)) and _suits(each, part)
        ]


def _euro(given: OpeningInput, _fit: Fit, found: Filled) -> None:
    _leaf_and_trim(given, found, "key_trim_mm")
    lock = lock_item(given)
    found.put("inside_trim_mm", lock.trim_inside_mm if lock is not None else None, "trim thickness inside")
    if lock is not None:
        found.homes["inside_trim_mm"] = Home("existing_item", lock.id, "trim_inside_mm")
        if lock.case_offset_mm is not None:
            found.values["screw_offset_mm"] = lock.case_offset_mm
    limits = limits_of(_EURO, given.settings)
    found.values |= {"key_limit_mm": limits["key_limit_mm"], "inside_limit_mm": limits["inside_limit_mm"]}
    sizes = [
        {"part": number, "a_mm": key, "b_mm": inside}
        for number, (key, inside) in _numbers(given, "euro-cylinder", KEY_HALF_MM, INSIDE_HALF_MM).items()
    ]
    found.put("sizes", sizes or None, "euro-profile cylinders of the catalogue")


def _tailpiece(given: OpeningInput, fit: Fit, found: Filled) -> None:
    _leaf_and_trim(given, found, "")
    lock, part = lock_item(given), lock_part(given, fit)
    part = part if part is not None and part.kind == "rim-cylinder" else None
    body = part.number_of(BODY_LENGTH_MM) if part is not None else None
    trim = lock.trim_key_mm if lock is not None else None
    # The trim lifts the cylinder, so that its body reaches less far in.
    found.put("cylinder_back_mm", None if body is None or trim is None else body - trim, "rim cylinder and its trim")
    found.put("tailpiece_mm", part.number_of(TAIL_LENGTH_MM) if part is not None else None, "its tailpiece")
    step = part.number_of(TAIL_STEP_MM) if part is not None else None
    if step is not None:
        found.values["break_off_mm"] = step
    found.values["minimum_engagement_mm"] = limits_of(_TAIL, given.settings)["engagement_mm"]
    if lock is not None and lock.case_width_mm is not None:
        found.values["maximum_engagement_mm"] = lock.case_width_mm


def _battery(given: OpeningInput, fit: Fit, found: Filled) -> None:
    unit, cell = unit_part(given, fit), in_role(given, fit, "battery")
    asked: tuple[tuple[str, Part | None, NumberName, str], ...] = (
        ("capacity_mah", cell, CAPACITY_MAH, "capacity of the pack"),
        ("usable_share", cell, USABLE_SHARE, "usable share of the pack"),
        ("self_discharge_per_year", cell, SELF_DISCHARGE_SHARE, "self-discharge of the pack"),
        ("standing_ua", unit, STANDING_UA, "standing current of the unit"),
        ("operation_ma", unit, OPERATION_MA, "operating current of the unit"),
        ("operation_s", unit, OPERATION_S, "duration of an operation"),
    )
    for name, part, fact, words in asked:
        found.put(name, part.number_of(fact) if part is not None else None, words)
    opening = given.opening
    found.homes["operations_per_day"] = Home("opening", opening.id, "operations_per_day")
    found.put("operations_per_day", opening.operations_per_day, "operations a day")
    if opening.operations_per_day is not None and opening.operations_day_off is not None:
        week = [float(opening.operations_per_day)] * 5 + [float(opening.operations_day_off)] * 2
        found.values["operations_by_weekday"] = week
        del found.values["operations_per_day"], found.homes["operations_per_day"]
    if cell is not None:
        found.put("temperature_factor", cold_share_of(cell, opening.temperature_low_c), "what the cold leaves of it")


_FILLS: Final[Mapping[str, Fill]] = {
    "cylinder-stack": _stack,
    "euro-halves": _euro,
    "tailpiece": _tailpiece,
    "battery-life": _battery,
}


def _for_sale(given: OpeningInput, kind: str) -> list[Part]:
    return [each for each in given.catalogue.of_kind(kind) if not each.superseded_by]


def _numbers(given: OpeningInput, kind: str, *names: NumberName) -> dict[str, tuple[float, ...]]:
    """Return numeric attributes of the parts of a kind that have them all."""
    found: dict[str, tuple[float, ...]] = {}
    for each in _for_sale(given, kind):
        values = [value for name in names if (value := each.number_of(name)) is not None]
        if len(values) == len(names):
            found[each.number] = tuple(values)
    return found


def _suits(each: Part, cylinder: Part | None) -> bool:
    """Tell whether a collar or ring goes over the thread and under the head; what is not known is no reason against."""
    bore = each.number_of(INNER_DIAMETER_MM)
    if cylinder is None or bore is None:
        return True
    thread, head = cylinder.number_of(THREAD_DIAMETER_MM), cylinder.number_of(HEAD_DIAMETER_MM)
    return (thread is None or bore >= thread) and (head is None or bore < head)
