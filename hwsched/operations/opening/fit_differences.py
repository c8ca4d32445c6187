"""What differs between two fits of one opening, value by value; words alone are no difference."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, fields, is_dataclass
from decimal import Decimal
from functools import cache
from typing import Any, Final, get_args

from hwsched.kept_sentences import FIT, kept_phrase
from hwsched.language import phrase, to_phrase
from hwsched.quantities import LengthStyle, format_length
from hwsched.quantities.money import decimal_text
from hwsched.rules.rule_titles import title_of
from hwsched.rules.wording import label_of
from hwsched.values import Fit, Hole, Placement, fit
from hwsched.values.place_words import FACE_WORDS
from hwsched.work.tools import WORDS as WORDS_OF_TOOLS

_WORDS: Final = frozenset({"reason", "description", "label", "blocks", "name"})
"""What a sheet says of a value that is compared by itself."""
_SAME: Final = 6e-4
"""Numbers that differ by less are one number that was rounded on two ways: places were once kept to 3 or 4 decimals."""
_TOLD: Final = {
    "purpose": ("count", "diameter_mm", "width_mm", "height_mm", "depth_mm", "x_mm", "y_mm", "tool"),
    "pattern": ("face", "pattern", "x_mm", "y_mm"),
    "points_mm": ("length_mm", "available_mm"),
    "mah_per_day": ("days",),
}
"""What people are told of a hole, a place, a cable, a battery's life, each known by a name that only it has."""
_LISTED: Final = frozenset(
    {"parts", "placement", "holes", "refused", "needs", "runners_up", "cost", "currency", "cost_needs"}
)
"""Compared member by member; whatever else a fit has, or gets, is compared field by field."""


@dataclass(frozen=True, slots=True)
class Differs:
    """One value that differs."""

    what: str
    """In the words of the trade."""
    before: Any
    """Plain value, or a mapping of name to value; lengths in mm. None: there is none."""
    after: Any
    unit: str = ""
    """mm, deg, or empty where the value is no measure or carries its units by name."""


def differences(before: Fit, after: Fit) -> tuple[Differs, ...]:
    """Compare two fits of one opening.

    Parameters
    ----------
    before, after : Fit
        As stored, and as worked out anew.

    Returns
    -------
    tuple of Differs
        Empty where both say the same, be it in other words.
    """
    return tuple(_compared(before, after))


def _compared(before: Fit, after: Fit) -> Iterator[Differs]:
    yield from _value("status", "status", before.status, after.status)
    was, now = _parts(before), _parts(after)
    for role, part in dict.fromkeys((*was, *now)):
        old, new = was.get((role, part)), now.get((role, part))
        yield from _value(f"{_said(role)} {part}", "", old and old[0], new and new[0])
        if old is not None and new is not None:
            yield from _value(f"who chose {_said(role)} {part}", "", old[1], new[1])
    yield from _placement(before.placement, after.placement)
    yield from _holes(before.holes, after.holes)
    for each in fields(Fit):
        if each.name not in _LISTED and each.name != "status":
            yield from _thing(_said(each.name), each.name, getattr(before, each.name), getattr(after, each.name))
    yield from _members(_refused, before.refused, after.refused, ("part", "role", "rule"))
    yield from _members(_needs, before.needs, after.needs, ("fact",))
    yield from _cost(before, after)
    yield from _value("what else would fit", "", _plain(before.runners_up), _plain(after.runners_up))


def _refused(part: str, role: str, rule: str) -> str:
    return f"refused {part} as {role} by {rule}"


def _refused_said(part: str, role: str, title: str) -> str:
    return f"refused {part} as {role} by '{title}'"


def _needs(fact: str) -> str:
    return f"needs {fact}"


def _parts(fit: Fit) -> dict[tuple[str, str], tuple[float, str]]:
    """Return quantity and source by role and part; a part on two lines of a role counts once, with both."""
    found: dict[tuple[str, str], tuple[float, str]] = {}
    for each in fit.parts:
        held, _ = found.get((each.role, each.part), (0.0, ""))
        found[each.role, each.part] = (held + each.quantity, each.source)
    return found


def _cost(before: Fit, after: Fit) -> Iterator[Differs]:
    """Compare costs; a version that wrote no currency down is compared by the amount alone."""
    was, now = (f"{decimal_text(each.cost)} {each.currency}".strip() for each in (before, after))
    # An earlier version wrote no currency: that it is written now is no change of the cost.
    if not before.currency or not after.currency:
        was, now = decimal_text(before.cost), decimal_text(after.cost)
    yield from _value("cost", "", was, now)
    if before.currency or before.cost_needs:
        yield from _value("what the cost needs", "", list(before.cost_needs), list(after.cost_needs))


def _placement(before: Placement | None, after: Placement | None) -> Iterator[Differs]:
    if before is None or after is None:
        yield from _value("place of the unit", "", _brief(before), _brief(after))
        return
    for name in _names(before):
        title = {"alternatives": "other places for the unit", "clearances": "clearances of the unit"}.get(name)
        yield from _value(title or f"unit: {_said(name)}", name, *(_plain(getattr(p, name)) for p in (before, after)))


def _holes(before: Sequence[Hole], after: Sequence[Hole]) -> Iterator[Differs]:
    """Compare holes pair by pair: those for one purpose in one face, equal ones first, then in their order."""
    kinds = dict.fromkeys((hole.purpose, hole.leaf, hole.face) for hole in (*before, *after))
    for kind in kinds:
        was, now = ([h for h in holes if (h.purpose, h.leaf, h.face) == kind] for holes in (before, after))
        for hole in list(was):
            # Equal ones first: otherwise one hole put in front would make all that follow look changed.
            twin = next((each for each in now if _same(_plain(each), _plain(hole))), None)
            if twin is not None:
                was.remove(hole)
                now.remove(twin)
        for at in range(max(len(was), len(now))):
            old, new = (holes[at] if at < len(holes) else None for holes in (was, now))
            named = old or new
            title = f"{FACE_WORDS.get(kind[2], kind[2])}, {named.name if named is not None else kind[0]}"
            yield from _thing(title, "", old, new)


def _members(
    title: Callable[..., str], before: Sequence[Any], after: Sequence[Any], names: tuple[str, ...]
) -> Iterator[Differs]:
    """Compare what is told apart by some of its fields; a value is what else is known of it, such as its numbers."""
    was, now = (_by(members, names) for members in (before, after))
    for key in dict.fromkeys((*was, *now)):
        told = [each[0] if each is not None and len(each) == 1 else each for each in (was.get(key), now.get(key))]
        yield from _value(title(*key), "", *told)


def _by(members: Sequence[Any], names: tuple[str, ...]) -> dict[tuple[str, ...], list[dict[str, Any]]]:
    found: dict[tuple[str, ...], list[dict[str, Any]]] = {}
    for each in members:
        rest = {name: value for name, value in _plain(each).items() if name not in names}
        found.setdefault(tuple(getattr(each, name) for name in names), []).append(rest)
    return found


def _thing(title: str, name: str, before: Any, after: Any) -> Iterator[Differs]:
    """Compare two things field by field; one that is only there before or after is told whole."""
    if is_dataclass(before) and is_dataclass(after):
        for each in _names(before):
            yield from _value(
                f"{title}: {_said(each)}", each, *(_plain(getattr(held, each)) for held in (before, after))
            )
    else:
        yield from _value(title, name, _brief(before), _brief(after))


def _value(what: str, name: str, before: Any, after: Any) -> Iterator[Differs]:
    if not _same(before, after):
        yield Differs(what, before, after, _unit_of(name))


def _same(one: Any, other: Any) -> bool:
    # Equal within a tolerance: another order of the same sums is no difference that anybody could drill.
    if isinstance(one, float | int) and isinstance(other, float | int) and not isinstance(one, bool):
        return abs(one - other) <= _SAME or one == other
    if isinstance(one, list) and isinstance(other, list):
        return len(one) == len(other) and all(map(_same, one, other))
    if isinstance(one, dict) and isinstance(other, dict):
        return one.keys() == other.keys() and all(_same(one[name], other[name]) for name in one)
    return bool(one == other)


def _names(thing: Any) -> list[str]:
    return [each.name for each in fields(thing) if each.name not in _WORDS]


def _plain(value: Any) -> Any:
    """Put a value into plain ones, without words."""
    if is_dataclass(value):
        return {name: _plain(getattr(value, name)) for name in _names(value)}
    if isinstance(value, Mapping):
        return {name: _plain(each) for name, each in value.items()}
    if isinstance(value, tuple | list):
        return [_plain(each) for each in value]
    return decimal_text(value) if isinstance(value, Decimal) else value


def _brief(thing: Any) -> Any:
    """Put a thing into plain values, what is empty left out."""
    held = _plain(thing)
    if not isinstance(held, dict):
        return held
    return {name: each for name, each in held.items() if each not in (None, "", [], {})}


def _said(name: str) -> str:
    """Put a field's name into words; its unit is said with the value."""
    for unit in ("_mm", "_deg"):
        name = name.removesuffix(unit)
    return name.replace("_", " ").replace("-", " ")


def in_words(each: Differs, style: LengthStyle) -> tuple[str, str, str]:
    """Return what differs, its old and its new value, as people read them.

    Parameters
    ----------
    each : Differs
        One difference.
    style : LengthStyle
        How the project shows lengths.
    """
    way = each.what.rpartition(" ")[2]
    return _spoken(each.what), _shown(each.before, each.unit, style, way), _shown(each.after, each.unit, style, way)


def _spoken(what: str) -> str:
    """Say what differs, or a word of a value, in the language in force; numbers and names of things stay."""
    if what in _known():
        return phrase(what)
    if what.startswith("needs "):
        return kept_phrase(_needs(label_of(what.removeprefix("needs "))), FIT)
    if what.startswith("refused "):
        begun, _, rule = what.rpartition(" by ")
        part, _, role = begun.removeprefix("refused ").rpartition(" as ")
        return kept_phrase(_refused_said(part, role, title_of(rule)), FIT)
    head, found, tail = what.partition(": ")
    if found and not what.startswith(_TOLD_WHOLE):
        return f"{_spoken(head)}: {_spoken(tail)}"
    role, found, part = what.rpartition(" ")
    return f"{phrase(role)} {part}" if found and role in _known() and role != "needs" else kept_phrase(what, FIT)


@cache
def _known() -> frozenset[str]:
    return frozenset(said_words())


def said_words() -> tuple[str, ...]:
    """Return the words by which values of a fit are named, for the list of all texts."""
    made = (held for held in vars(fit).values() if isinstance(held, type) and is_dataclass(held))
    named = (_said(each.name) for held in made for each in fields(held))
    words = (*_TITLES, *WORDS_OF_TOOLS, *get_args(fit.Role), *get_args(fit.Status), *get_args(fit.Purpose))
    return tuple(dict.fromkeys((*named, *words, *map(_said, words), *FACE_WORDS, *FACE_WORDS.values())))


_TOLD_WHOLE: Final = ("needs ", "refused ", "who chose ")
_TITLES: Final = (
    "unit", "place of the unit", "other places for the unit", "clearances of the unit", "what the cost needs",
    "what else would fit", "by-hand", "set", "worked-out", "battery", "supply", "straight", "above", "below", "in-edge",
    "beside", "threaded", "euro-profile", "rim", "bored", "hasp",
)  # fmt: skip
_WAYS: Final = {
    "up": (to_phrase("up"), to_phrase("down")),
    "edge": (to_phrase("toward the lock edge"), to_phrase("toward the hinge edge")),
}
"""To which side a hole leans by an angle above zero, and by one below."""


def _leaning(value: float, way: str) -> str:
    over, under = _WAYS.get(way, ("", "-"))
    if not over:
        return f"{value:g}°"
    return f"{abs(value):.3g}° {phrase(over if value >= 0 else under)}"


def _shown(value: Any, unit: str, style: LengthStyle, way: str = "") -> str:
    if value is None or value == []:
        return phrase("none")
    if value == {}:
        return phrase("yes")
    if isinstance(value, bool):
        return phrase("yes" if value else "no")
    if isinstance(value, float | int):
        if unit == "mm":
            return format_length(float(value), style)
        return _leaning(float(value), way) if unit == "deg" else f"{round(value, 3):g}"
    if isinstance(value, Mapping):
        listed = next((names for mark, names in _TOLD.items() if mark in value), tuple(value))
        shown = [(name, _shown(value[name], _unit_of(name), style)) for name in listed if name in value]
        told = [f"{phrase(_said(name))} {text}".strip() for name, text in shown if text not in ("", phrase("none"))]
        return ", ".join(told) or phrase("yes")
    if isinstance(value, list | tuple):
        between = "; " if any(isinstance(each, Mapping) for each in value) else ", "
        return between.join(_shown(each, unit, style) for each in value)
    return _spoken(str(value)) or phrase("none")


def _unit_of(name: str) -> str:
    return next((unit for unit in ("mm", "deg") if name.endswith(f"_{unit}")), "")
