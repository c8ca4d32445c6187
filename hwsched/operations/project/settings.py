"""What a project decides: name, how lengths are shown and read, time zone, limits of rules, rules off, preference."""

from collections.abc import Mapping
from math import isfinite
from typing import Any

from sqlalchemy import select

from hwsched.choices import PREFERENCES
from hwsched.model.errors import ValueRefusedError
from hwsched.model.project import BARE_UNITS, Project
from hwsched.model.tables import PROJECT
from hwsched.model.time_zone import SETTING, checked_zone
from hwsched.operations.changes import Changes
from hwsched.quantities import LENGTH_STYLES
from hwsched.rules import RULEBOOK
from hwsched.telling.nearest import nearest_words


def set_settings(
    project: Project,
    *,
    who: str,
    name: str | None = None,
    length_style: str | None = None,
    bare_unit: str | None = None,
    time_zone: str | None = None,
    limits: Mapping[str, float | None] | None = None,
    rules_off: Mapping[str, bool] | None = None,
    prefer: str | None = None,
    base: int | None = None,
) -> Changes:
    """Change what the project decides; what is left out stays. Every opening can be touched: read all anew.

    Parameters
    ----------
    project : Project
        Open project.
    who : str
        For the journal.
    name : str, optional
        What people call the project.
    length_style, bare_unit : str, optional
        How lengths are shown; the unit of one typed without it ("" for: ask).
    time_zone : str, optional
        Whose days count and whose hours are told, such as Europe/Lisbon.
    limits : mapping, optional
        ``rule-id.limit`` to value in the unit of the limit's name; None goes back to the rule's own.
    rules_off : mapping, optional
        Rule to whether it is off.
    prefer : {"cost", "holes", "stock", "preferred"}, optional
        What ranks the alternatives of a fit first.
    base : int, optional
        The newest change set that was seen; what others changed since at the same settings is a conflict.

    Raises
    ------
    ValueRefusedError, ConflictError
        And nothing is changed.
    """
    values: dict[str, Any] = {}
    if name is not None:
        values["name"] = _one_line(name)
    if length_style is not None:
        values["length_style"] = _one_of("length style", length_style, LENGTH_STYLES)
    if bare_unit is not None:
        values["bare_unit"] = _one_of("bare unit", bare_unit, BARE_UNITS) if bare_unit else None
    if prefer is not None:
        _one_of("preference", prefer, PREFERENCES)
    zone = None if time_zone is None else checked_zone(time_zone)
    check_limits(limits or {})
    for rule in rules_off or {}:
        _one_of("rule", rule, [each.id for each in RULEBOOK])
    with project.change("set-settings", "Change settings", who, base=base) as change:
        row = change.connection.execute(select(PROJECT)).one()
        held = dict(row.settings)
        if limits is not None:
            merged = {**held.get("limits", {}), **limits}
            held["limits"] = {key: value for key, value in merged.items() if value is not None}
        if rules_off is not None:
            off = {**dict.fromkeys(held.get("rules_off", ()), True), **rules_off}
            held["rules_off"] = sorted(rule for rule, is_off in off.items() if is_off)
        if prefer is not None:
            held["prefer"] = prefer
        if zone is not None:
            held[SETTING] = zone
        change.update(PROJECT, [(row.id, {**values, "settings": held})])
    return Changes.of(change)


def _one_line(name: str) -> str:
    line = " ".join(name.split())
    if not line:
        raise ValueRefusedError("name", "a project needs a name")
    return line


def _one_of(what: str, word: str, words: tuple[str, ...] | list[str]) -> str:
    if word not in words:
        raise ValueRefusedError(what, f"there is no '{word}'; accepted: {', '.join(words)}")
    return word


def check_limits(limits: Mapping[str, float | None]) -> None:
    """Refuse limits that no rule has, and values out of their bounds; raises ValueRefusedError."""
    known = {f"{rule.id}.{limit.name}": limit for rule in RULEBOOK for limit in rule.limits}
    for name, value in limits.items():
        if name not in known:
            # Nobody reads a hundred names for the one that is meant.
            near = nearest_words(name, known)
            rules = "" if near else "; hwsched findings rules lists the rules, and each with its limits"
            raise ValueRefusedError("limit", f"there is no '{name}'{near}{rules}")
        limit = known[name]
        if value is not None and not (isfinite(value) and limit.low <= value <= limit.high):
            low, high, unit = f"{limit.low:g}", f"{limit.high:g}", limit.unit
            if unit:
                raise ValueRefusedError(name, f"{value:g} is no limit; accepted: {low} to {high} {unit}")
            raise ValueRefusedError(name, f"{value:g} is no limit; accepted: {low} to {high}")
