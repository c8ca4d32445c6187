"""Measures that came in and can hardly be so: each oddity is one question over all openings that raise it.

What surely cannot be is refused by the limits of its fact, cell by cell; here belongs what is doubtful only beside
other facts of the same opening. The bounds are common practice, wide enough that an ordinary door never meets them.
"""

from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass, replace
from typing import Any, Final

from hwsched.exchange.survey.facts import Facts, Oddity, SurveyedLeaf, SurveyedOpening
from hwsched.language import to_phrase
from hwsched.quantities import MM_PER_INCH
from hwsched.stopping import asking

_UNUSUAL: Final = frozenset({"gate", "cabinet", "lift", "turnstile"})
"""Forms of which neither width nor height says anything."""
_THIN: Final = frozenset({"hollow-metal", "wood", "mineral-core", "aluminium", "composite"})
_THINNEST_MM: Final = 32.0
"""Doors of these materials are 1 3/8 in (34.9 mm) and more thick, common practice."""
_THICKEST_MM: Final = 76.5
"""Leaves thicker than 3 in are vaults, common practice."""
_WIDEST_MM: Final = 1400.0
"""Of one leaf, 4 ft (1219 mm) is the usual end, common practice."""
_TALLEST_MM: Final = 3100.0
"""10 ft (3048 mm) is the usual end, common practice."""
_LOWEST_MM: Final = 1500.0
_DIGITS_OF_WIDTH: Final = frozenset({20.0, 24.0, 26.0, 28.0, 30.0, 34.0, 36.0, 38.0, 40.0})
_DIGITS_OF_HEIGHT: Final = frozenset({66.0, 68.0, 70.0})
"""In inches no door is as high; as feet and inches run together they are 6'-6", 6'-8", 7'-0": common practice."""
_DEEPEST_UNDERCUT_MM: Final = 60.0


@dataclass(frozen=True, slots=True)
class OddityKind:
    """One thing that can hardly be."""

    id: str
    question: str
    """With ``{count}`` for how many openings."""
    raised: Callable[[Facts, Facts], bool]
    """Of a leaf's facts and its lock's: those in `OF_LEAF` and `OF_LOCK`."""
    cure: str = ""
    """What the cure does; empty where only the person at the door can mend it."""
    mend: Callable[[Facts], dict[str, Any]] | None = None
    """Of the leaf's facts."""


_SIZES: Final = frozenset({"wide-leaf", "tall-leaf", "low-leaf", "lock-above-leaf"})
"""Not asked of a leaf that is asked about already, whether width and height are swapped."""


def _swapped(leaf: Facts) -> dict[str, Any]:
    return {**leaf, "width_mm": leaf["height_mm"], "height_mm": leaf["width_mm"]}


def _number(facts: Facts, name: str) -> float | None:
    value = facts.get(name)
    return float(value) if isinstance(value, int | float) and not isinstance(value, bool) else None


def _over(facts: Facts, name: str, most: float) -> bool:
    value = _number(facts, name)
    return value is not None and value > most


def _beyond(one: float | None, other: float | None) -> bool:
    return one is not None and other is not None and one > other


def _run_together(leaf: Facts) -> bool:
    """Tell whether a leaf is as low as no door is, and its digits are a usual size in feet and inches."""
    inches = [round(mm / MM_PER_INCH, 3) if (mm := _number(leaf, name)) else 0.0 for name in ("width_mm", "height_mm")]
    return inches[0] in _DIGITS_OF_WIDTH and inches[1] in _DIGITS_OF_HEIGHT


def _taken_apart(leaf: Facts) -> dict[str, Any]:
    told = {name: divmod(round(float(leaf[name]) / MM_PER_INCH), 10) for name in ("width_mm", "height_mm")}
    return {**leaf, **{name: (feet * 12 + inches) * MM_PER_INCH for name, (feet, inches) in told.items()}}


ODDITIES: Final[tuple[OddityKind, ...]] = (
    OddityKind(
        "run-together",
        to_phrase(
            "are the sizes feet and inches run together in {count}? To the door trade 30 x 70 is 3'-0\" x 7'-0\""
        ),
        lambda leaf, _lock: _run_together(leaf),
        to_phrase("30 is read as 3'-0\", 70 as 7'-0\""),
        _taken_apart,
    ),
    OddityKind(
        "wider-than-high",
        to_phrase("are width and height swapped in {count}? The leaf is wider than it is high"),
        lambda leaf, _lock: _beyond(_number(leaf, "width_mm"), _number(leaf, "height_mm")),
        to_phrase("width and height change places"),
        _swapped,
    ),
    OddityKind(
        "thin-leaf",
        to_phrase("is the thickness right in {count}? No leaf of this material is as thin"),
        lambda leaf, _lock: leaf.get("material") in _THIN and _beyond(_THINNEST_MM, _number(leaf, "thickness_mm")),
    ),
    OddityKind(
        "thick-leaf",
        to_phrase("is the thickness right in {count}? The leaf is thicker than 3 in (76 mm)"),
        lambda leaf, _lock: _over(leaf, "thickness_mm", _THICKEST_MM),
    ),
    OddityKind(
        "wide-leaf",
        to_phrase("is it a pair in {count}? One leaf is wider than 4'-7\" (1400 mm)"),
        lambda leaf, _lock: _over(leaf, "width_mm", _WIDEST_MM),
    ),
    OddityKind(
        "tall-leaf",
        to_phrase("is the height right in {count}? The leaf is higher than 10'-2\" (3100 mm)"),
        lambda leaf, _lock: _over(leaf, "height_mm", _TALLEST_MM),
    ),
    OddityKind(
        "low-leaf",
        to_phrase("is the height right in {count}? Nobody walks upright through a leaf lower than 4'-11\" (1500 mm)"),
        lambda leaf, _lock: (
            _beyond(_LOWEST_MM, _number(leaf, "height_mm"))
            and not _beyond(_number(leaf, "width_mm"), _number(leaf, "height_mm"))
        ),
    ),
    OddityKind(
        "deep-undercut",
        to_phrase('is the undercut right in {count}? It is more than 2 3/8" (60 mm)'),
        lambda leaf, _lock: _over(leaf, "undercut_mm", _DEEPEST_UNDERCUT_MM),
    ),
    OddityKind(
        "bore-over-stile",
        to_phrase("are bore and stile right in {count}? The bore is wider than the stile that it stands in"),
        lambda leaf, lock: _beyond(_number(lock, "cross_bore_mm"), _number(leaf, "stile_mm")),
    ),
    OddityKind(
        "backset-over-stile",
        to_phrase("are backset and stile right in {count}? The backset reaches beyond the stile"),
        lambda leaf, lock: _beyond(_number(lock, "backset_mm"), _number(leaf, "stile_mm")),
    ),
    OddityKind(
        "lock-above-leaf",
        to_phrase("is the lock's height right in {count}? It stands above the leaf"),
        lambda leaf, lock: _beyond(_number(lock, "cylinder_height_mm"), _number(leaf, "height_mm")),
    ),
)
"""All kinds of oddity, in the order in which they are asked."""
BY_ID: Final = {kind.id: kind for kind in ODDITIES}
OF_LEAF: Final = ("width_mm", "height_mm", "thickness_mm", "undercut_mm", "stile_mm", "material")
OF_LOCK: Final = ("cross_bore_mm", "backset_mm", "cylinder_height_mm")
"""Facts that any kind looks at: leaves alike in them raise the same."""


def with_oddities(
    openings: Sequence[SurveyedOpening], cured: Collection[str]
) -> tuple[tuple[SurveyedOpening, ...], tuple[Oddity, ...]]:
    """Find what can hardly be among openings, and mend what a person said is to be mended.

    Parameters
    ----------
    openings : sequence of SurveyedOpening
        As they were read.
    cured : collection of str
        Identifiers of oddities, the cure of which was asked for.

    Returns
    -------
    tuple
        The openings, mended ones in place of theirs, and one oddity for each kind that is left.
    """
    raised: dict[str, list[str]] = {}
    kept: list[SurveyedOpening] = []
    known: dict[tuple[object, ...], _Found] = {}
    for opening in asking(openings):
        mended = opening
        if opening.leaves and opening.facts.get("form") not in _UNUSUAL:
            mended = _look(opening, cured, raised, known)
        kept.append(mended)
    return tuple(kept), tuple(
        Oddity(kind.id, kind.question, kind.cure, tuple(raised[kind.id])) for kind in ODDITIES if kind.id in raised
    )


@dataclass(frozen=True, slots=True)
class _Found:
    """What a leaf raises."""

    asked: tuple[str, ...]
    cured: tuple[OddityKind, ...]


_NOTHING: Final = _Found((), ())


def _look(
    opening: SurveyedOpening,
    cured: Collection[str],
    raised: dict[str, list[str]],
    known: dict[tuple[object, ...], _Found],
) -> SurveyedOpening:
    lock: Facts = next((item.facts for item in opening.items if item.facts.get("kind") == "lock"), {})
    of_lock = tuple(map(lock.get, OF_LOCK))
    mended: dict[int, SurveyedLeaf] = {}
    asked: dict[str, None] = {}
    for place, leaf in enumerate(opening.leaves):
        key = (*map(leaf.facts.get, OF_LEAF), *of_lock)
        # Most openings are like many others: each is judged once.
        found = known.get(key)
        if found is None:
            found = known[key] = _judged(leaf.facts, lock, cured)
        if found is _NOTHING:
            continue
        asked |= dict.fromkeys(found.asked)
        facts = leaf.facts
        for kind in found.cured:
            facts = kind.mend(facts) if kind.mend is not None else facts
        if facts is not leaf.facts:
            mended[place] = replace(leaf, facts=facts)
    for name in asked:
        raised.setdefault(name, []).append(opening.mark)
    if not mended:
        return opening
    return replace(opening, leaves=tuple(mended.get(place, leaf) for place, leaf in enumerate(opening.leaves)))


def _judged(leaf: Facts, lock: Facts, cured: Collection[str]) -> _Found:
    if leaf.get("material") == "steel-gate":
        return _NOTHING
    asked: list[str] = []
    cures: list[OddityKind] = []
    swapped = False
    for kind in ODDITIES:
        if (not swapped or kind.id not in _SIZES) and kind.raised(leaf, lock):
            if kind.mend is not None and kind.id in cured:
                leaf = kind.mend(leaf)
                cures.append(kind)
            else:
                asked.append(kind.id)
                swapped = swapped or kind.mend in (_swapped, _taken_apart)
    return _Found(tuple(asked), tuple(cures)) if asked or cures else _NOTHING
