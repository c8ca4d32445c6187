"""Which marks of a file may be openings that the project knows under another mark: spelt otherwise, or renamed.

Nothing is decided here: each likeness is a proposal with its evidence. Marks are laid beside each other by what they
have in common, never each by each, so that ten thousand cost ten times a thousand.
"""

import re
import unicodedata
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final, Literal

from hwsched.exchange.survey.facts import Proposal, SurveyedOpening, agree
from hwsched.values import OpeningInput

_DASHES: Final = re.compile(r"[\u2010-\u2015\u2212\ufe58\ufe63\uff0d_]")
_LEADING: Final = re.compile(r"(?<![\d.])0+(?=\d)")
_WHOLE: Final = re.compile(r"(?<=\d)\.0+$")
_DIGITS: Final = re.compile(r"\d+")
_PART: Final = re.compile(r"(?P<base>.*\d)(?:[-./]?[a-z]|[-./]\d{1,2})")
"""Of a mark that is another one with a letter or a number behind, such as 101A or 101-2."""
_PLACES: Final = ("building", "level", "room_from", "room_to")
_LEAF: Final = ("width_mm", "height_mm", "thickness_mm", "material")
_OPENING: Final = ("form", "hand", "rating", "frame_material", "exposure")
_MOST_ALIKE: Final = 8
"""Openings alike in what they are looked up by; where more are, the likeness says nothing."""
_SHARE: Final = 0.7
"""Of the facts that both know which must agree."""


def mark_key(mark: str) -> str:
    """Return what marks have in common that a person reads as one: case, dashes, blanks, leading zeros and .0 aside.

    Examples
    --------
    >>> mark_key("D-0101") == mark_key("d\u2013101 "), mark_key("12.0") == mark_key("0012")
    (True, True)
    >>> mark_key("101A") == mark_key("101B"), mark_key("1.05") == mark_key("1.5")
    (False, False)
    """
    # Nearly all marks are of plain letters and figures, and there are many of them: no more is asked of them.
    plain = mark.replace("_", "-") if mark.isascii() else _DASHES.sub("-", unicodedata.normalize("NFKC", mark))
    text = "".join(plain.casefold().split())
    return _WHOLE.sub("", _LEADING.sub("", text)) if "0" in text else text


def spelt_otherwise(new: Iterable[str], known: Iterable[str]) -> dict[str, str]:
    """Return the known mark by each new one that is the same but for its spelling; none where two would be."""
    by_key: dict[str, list[str]] = {}
    for mark in known:
        by_key.setdefault(mark_key(mark), []).append(mark)
    found: dict[str, str] = {}
    taken: dict[str, str] = {}
    for mark in new:
        alike = by_key.get(mark_key(mark), [])
        if len(alike) == 1 and alike[0] != mark and alike[0] not in taken:
            found[mark] = alike[0]
            taken[alike[0]] = mark
    return found


def alike_in_file(marks: Sequence[str]) -> list[tuple[str, ...]]:
    """Return the marks of one file that are one but for their spelling, in groups.

    Examples
    --------
    >>> alike_in_file(["D-1", "d-1", "D-2", "D-01"])
    [('D-1', 'd-1', 'D-01')]
    """
    groups: dict[str, list[str]] = {}
    for mark in marks:
        groups.setdefault(mark_key(mark), []).append(mark)
    return [tuple(group) for group in groups.values() if len(group) > 1]


def renamed(new: Sequence[SurveyedOpening], gone: Sequence[OpeningInput]) -> list[Proposal]:
    """Propose which new openings of a file are known ones that it does not name any more.

    Parameters
    ----------
    new : sequence of SurveyedOpening
        Openings whose mark the project does not know.
    gone : sequence of OpeningInput
        Openings of the project that the file does not name.

    Returns
    -------
    list of Proposal
        Each opening once at most, the surest first.
    """
    if not new or not gone:
        return []
    told_new = {opening.mark: _told(opening) for opening in new}
    told_gone = {given.opening.mark: _known(given) for given in gone}
    found: list[tuple[float, Proposal]] = []
    for way in _WAYS:
        index, wanted = _indexed(way, told_gone), _indexed(way, told_new)
        for key, marks in wanted.items():
            alike = index.get(key, [])
            if not 0 < len(alike) <= way.most or len(marks) > way.most:
                continue
            for mark in marks:
                for known in alike:
                    score, evidence = _likeness(told_new[mark], told_gone[known], way)
                    if score >= way.share:
                        near = 0.1 * _near(mark, known)
                        found.append((score + way.bonus + near, Proposal(mark, known, "renamed", evidence)))
    return _each_once(found)


@dataclass(frozen=True, slots=True)
class _Way:
    """One way in which a new mark and one that is gone are looked up beside each other."""

    keys: Callable[[str, Mapping[str, Any]], Iterable[object]]
    said: str = ""
    """What speaks for it beside the facts."""
    fewest: int = 0
    """Facts that both must know."""
    share: float = _SHARE
    most: int = _MOST_ALIKE
    bonus: float = 0.0


def _indexed(way: _Way, told: Mapping[str, Mapping[str, Any]]) -> dict[object, list[str]]:
    index: dict[object, list[str]] = {}
    for mark, facts in told.items():
        for key in way.keys(mark, facts):
            index.setdefault(key, []).append(mark)
    return index


@dataclass(frozen=True, slots=True)
class Parted:
    """One mark that may have become several, or several that may have become one."""

    kind: Literal["divided", "joined"]
    proposals: tuple[Proposal, ...]
    """One for each of the several, in the order of their marks."""


def divided(new: Sequence[SurveyedOpening], gone: Sequence[OpeningInput]) -> list[Parted]:
    """Propose which openings of a file are one that the project knew under the mark that theirs begin with.

    Parameters
    ----------
    new : sequence of SurveyedOpening
        Openings whose mark the project does not know.
    gone : sequence of OpeningInput
        Openings of the project that the file does not name.
    """
    told = {opening.mark: _told(opening) for opening in new}
    known = {given.opening.mark: _known(given) for given in gone}
    return [
        Parted(
            "divided",
            tuple(
                Proposal(
                    mark,
                    base,
                    "divided",
                    f"{base} may be {_listed(marks)} now; {_likeness(told[mark], known[base])[1]}",
                )
                for mark in marks
            ),
        )
        for base, marks in _with_parts(known, told, lambda base, mark: _may_be(told[mark], known[base]))
    ]


def joined(new: Sequence[SurveyedOpening], gone: Sequence[OpeningInput]) -> list[Parted]:
    """Propose which openings of a file are several of the project, whose marks begin with theirs; as `divided`."""
    told = {opening.mark: _told(opening) for opening in new}
    known = {given.opening.mark: _known(given) for given in gone}
    return [
        Parted(
            "joined",
            tuple(
                Proposal(
                    base,
                    mark,
                    "joined",
                    f"{_listed(marks)} may be {base} now; {_likeness(told[base], known[mark])[1]}",
                )
                for mark in marks
            ),
        )
        for base, marks in _with_parts(told, known, lambda base, mark: _may_be(told[base], known[mark]))
    ]


def _with_parts(
    bases: Iterable[str], parts: Iterable[str], may_be: Callable[[str, str], bool]
) -> Iterable[tuple[str, list[str]]]:
    """Yield marks with the several others that are theirs with a letter or a number behind."""
    by_base: dict[str, list[str]] = {}
    for mark in parts:
        if found := _PART.fullmatch(mark_key(mark)):
            by_base.setdefault(found["base"], []).append(mark)
    if by_base:
        for base in bases:
            marks = sorted(mark for mark in by_base.get(mark_key(base), ()) if may_be(base, mark))
            if 1 < len(marks) <= _MOST_ALIKE:
                yield base, marks


def _may_be(new: Mapping[str, Any], gone: Mapping[str, Any]) -> bool:
    """Tell whether nothing of where they are speaks against it."""
    for name in ("building", "level"):
        if new[name] is not None and gone[name] is not None and not agree(name, new[name], gone[name]):
            return False
    rooms = [name for name in ("room_from", "room_to") if new[name] is not None and gone[name] is not None]
    return not rooms or any(agree(name, new[name], gone[name]) for name in rooms)


def _listed(marks: Sequence[str]) -> str:
    return f"{', '.join(marks[:-1])} and {marks[-1]}"


def _each_once(found: list[tuple[float, Proposal]]) -> list[Proposal]:
    """Keep the surest proposals; where an opening is as like to two others, neither is proposed."""
    best: dict[tuple[str, str], list[tuple[float, Proposal]]] = {}
    for score, proposal in found:
        for end in (("new", proposal.mark), ("gone", proposal.known)):
            best.setdefault(end, []).append((score, proposal))
    kept: dict[tuple[str, str], Proposal] = {}
    for score, proposal in sorted(found, key=lambda each: -each[0]):
        ends = (("new", proposal.mark), ("gone", proposal.known))
        rivals = [
            each
            for end in ends
            for each in best[end]
            if (each[1].mark, each[1].known) != (proposal.mark, proposal.known)
        ]
        if any(other >= score for other, _ in rivals) or any(end in kept for end in ends):
            continue
        kept |= dict.fromkeys(ends, proposal)
    return list(dict.fromkeys(kept.values()))


def _told(opening: SurveyedOpening) -> dict[str, Any]:
    facts = {name: opening.facts.get(name) for name in (*_PLACES, *_OPENING)}
    leaf = opening.leaves[0].facts if opening.leaves else {}
    return {**facts, **{name: leaf.get(name) for name in _LEAF}}


def _known(given: OpeningInput) -> dict[str, Any]:
    facts = {name: getattr(given.opening, name) for name in (*_PLACES, *_OPENING)}
    leaf = given.leaves[0] if given.leaves else None
    return {**facts, **{name: getattr(leaf, name) if leaf else None for name in _LEAF}}


def _rooms(_mark: str, facts: Mapping[str, Any]) -> Iterable[object]:
    rooms = [str(facts[name]).strip().casefold() for name in ("room_from", "room_to") if facts[name] is not None]
    return [(facts["building"], facts["level"], *rooms)] if rooms else []


def _digits(mark: str, facts: Mapping[str, Any]) -> Iterable[object]:
    numbers = tuple(number.lstrip("0") for number in _DIGITS.findall(mark))
    return [(facts["building"], facts["level"], numbers)] if numbers else []


def _one_sign_off(mark: str, facts: Mapping[str, Any]) -> Iterable[object]:
    """Return a mark with each of its signs left open: two that differ in one sign have one of these in common."""
    key = mark_key(mark)
    if len(key) < _SHORTEST or len(key) > _LONGEST:
        return []
    return [(facts["building"], facts["level"], key[:place], key[place + 1 :]) for place in range(len(key))]


def _all_facts(_mark: str, facts: Mapping[str, Any]) -> Iterable[object]:
    return [tuple(facts.values())]


_SHORTEST, _LONGEST = 2, 24
"""Letters and figures of marks of which one may be another with one sign otherwise."""
_WAYS: Final = (
    _Way(_rooms, bonus=0.5),
    _Way(_digits, "the same digits in both marks", fewest=3),
    # Less speaks for these two: all that is known must be alike, and of the last no other opening may be so.
    _Way(_one_sign_off, "marks that differ in one sign", fewest=4, share=1.0, bonus=-0.2),
    _Way(_all_facts, "no other opening like these", fewest=5, share=1.0, most=1, bonus=-0.3),
)
_ANYHOW: Final = _Way(_rooms)


def _near(mark: str, known: str) -> float:
    one, other = mark_key(mark), mark_key(known)
    same = sum(a == b for a, b in zip(one, other, strict=False))
    return same / max(len(one), len(other), 1)


def _likeness(new: Mapping[str, Any], gone: Mapping[str, Any], way: _Way = _ANYHOW) -> tuple[float, str]:
    """Return the share of the facts known on both sides that agree, and what speaks for it in words."""
    both = [
        name for name in new if new[name] is not None and gone[name] is not None and name not in ("building", "level")
    ]
    same = [name for name in both if agree(name, new[name], gone[name])]
    rooms = [name for name in same if name.startswith("room_")]
    if len(both) < way.fewest:
        return 0.0, ""
    alike = f"{len(same)} of {len(both)} facts alike"
    if rooms:
        named = ", ".join(str(new[name]) for name in rooms)
        # One sentence: a comma stands in it that parts no pieces.
        alike = f"the same rooms ({named}), {len(same)} of {len(both)} facts alike"
    return (len(same) / len(both) if both else 0.0), ", ".join(filter(None, (way.said, alike)))
