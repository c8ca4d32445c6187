"""The key of a case: equal for openings alike in all that matters, different as soon as a fact differs.

What does not matter: identifiers, mark, rooms, building, level, wave, priority, notes.
"""

import hashlib
import json
from dataclasses import asdict, fields
from operator import attrgetter
from typing import Any, Final

from hwsched.cases.case import Case, Settings
from hwsched.cases.facts import Item, Leaf, Opening
from hwsched.cases.fit import Fit
from hwsched.quantities.money import decimal_text

VERSION: Final = 1
"""Raised when the meaning of a stored fit changes, so that older ones count as out of date."""
_IGNORED: Final = frozenset(
    {
        *("id", "mark", "building", "level", "room_from", "room_to", "wave", "priority", "notes", "item_notes"),
        *("plan_x_m", "plan_y_m", "rise_m", "difficulty", "installed_on"),
    }
)
_LATER: Final = ("operations_day_off", "fail")
"""Facts that came after the first fits were stored: they enter the key only where they are known, so that a fit of a
project that knows nothing of them still belongs to its facts."""


def _getter(kind: type[Any]) -> "attrgetter[tuple[Any, ...]]":
    return attrgetter(
        *(field.name for field in fields(kind) if field.name not in _IGNORED and field.name not in _LATER)
    )


_OPENING: Final = _getter(Opening)
_LEAF: Final = _getter(Leaf)
_ITEM: Final = _getter(Item)
_encode: Final = json.JSONEncoder(separators=(",", ":"), ensure_ascii=True).encode


def _settings(settings: Settings) -> tuple[Any, ...]:
    return (sorted(settings.limits.items()), sorted(settings.rules_off), settings.prefer, settings.length_style)


def survey_key(case: Case) -> str:
    """Return the key of what was surveyed and chosen by hand at an opening: catalogue and settings left out.

    Returns
    -------
    str
        64 hexadecimal digits; equal for openings alike.
    """
    return hashlib.sha256(_encode((_surveyed(case), _by_hand(case), _later(case))).encode()).hexdigest()


def case_key(case: Case) -> str:
    """Return the key of a case.

    Parameters
    ----------
    case : Case
        All that a fit of one opening can depend on.

    Returns
    -------
    str
        64 hexadecimal digits: SHA-256 over the facts that matter in canonical JSON.
    """
    later = _later(case)
    if case.settings.prefer in ("stock", "preferred"):
        later["ranks"] = case.catalogue.ranks
    if len(case.catalogue.currencies) > 1:
        # Only where parts are priced in several currencies do rates decide which is cheaper.
        rates = {c: decimal_text(rate) for c, rate in case.settings.rates.items() if c in case.catalogue.currencies}
        later["exchange"] = (case.settings.currency, sorted(rates.items()))
    content = (
        VERSION,
        *_surveyed(case),
        case.catalogue.key,
        _settings(case.settings),
        *_by_hand(case),
        *([later] if later else []),
    )
    return hashlib.sha256(_encode(content).encode()).hexdigest()


def _surveyed(case: Case) -> tuple[Any, ...]:
    return _OPENING(case.opening), [_LEAF(leaf) for leaf in case.leaves], [_ITEM(item) for item in case.items]


def _by_hand(case: Case) -> tuple[Any, ...]:
    placed = case.placed
    return (
        [(chosen.role, chosen.part, chosen.quantity) for chosen in case.chosen],
        None if placed is None else (placed.leaf, placed.face, placed.pattern, placed.x_mm, placed.y_mm),
    )


def _later(case: Case) -> dict[str, Any]:
    """Return what of survey and choices came into cases later, as far as it is known."""
    found: dict[str, Any] = {}
    if case.opening.operations_day_off is not None:
        found["operations_day_off"] = case.opening.operations_day_off
    fails = [item.fail for item in case.items]
    if any(fails):
        found["fail"] = fails
    if case.feed is not None:
        found["feed"] = case.feed.part
    sources = [chosen.source for chosen in case.chosen]
    if any(source != "by-hand" for source in sources):
        found["sources"] = sources
    if case.point.others:
        found["point"] = _point(case)
    return found


def _point(case: Case) -> list[Any]:
    """Return which of several lock points it is, and what stands at the earlier ones; identifiers are left out."""
    at = {item.id: place for place, item in enumerate(case.items)}
    own = [at.get(case.point.item_id or ""), [at.get(each) for each in case.point.others]]
    return [*own, *([at.get(b.point.item_id or ""), _standing(b.fit)] for b in case.beside)]


def _standing(fit: Fit | None) -> list[Any] | None:
    """Return what of a fit another lock point meets."""
    if fit is None:
        return None
    standing = [*fit.parts, *fit.holes, *(each for each in (fit.stack, fit.placement) if each is not None)]
    return [fit.status, fit.power, [asdict(each) for each in standing]]
