"""The key of an input: equal for openings alike in all that matters, different as soon as a fact differs.

What does not matter: identifiers, mark, rooms, building, level, wave, priority, notes.

`input_key` lives as long as the program runs: openings alike are worked out and judged once. Which facts a stored fit
hangs on is another question, that `facts_read` answers.
"""

import hashlib
import json
from collections.abc import Callable
from dataclasses import asdict, fields
from operator import attrgetter
from typing import Any, Final

from hwsched.quantities.money import decimal_text
from hwsched.values.earlier_words import in_first_words
from hwsched.values.facts import Item, Leaf, Opening
from hwsched.values.fit import Fit
from hwsched.values.opening_input import OpeningInput, Settings

IGNORED: Final = frozenset(
    {
        *("id", "mark", "building", "level", "room_from", "room_to", "wave", "priority", "notes", "item_notes"),
        *("plan_x_m", "plan_y_m", "difficulty", "installed_on"),
    }
)
_FIRST: Final = {
    Opening: (
        *("form", "hand", "rating", "stair", "egress", "accessible", "exposure", "temperature_low_c"),
        *("operations_per_day", "power_wish", "supply_distance_m", "frame_material", "frame_stop_mm"),
    ),
    Leaf: ("position", "width_mm", "height_mm", "thickness_mm", "material", "construction", "stile_mm", "undercut_mm"),
    Item: (
        *("kind", "leaf", "face", "x_mm", "y_mm", "width_mm", "height_mm", "projection_mm", "disposition"),
        *("lock_form", "function", "backset_mm", "cylinder_height_mm", "case_height_mm", "case_depth_mm"),
        *("case_width_mm", "case_above_mm", "case_offset_mm", "trim_key_mm", "trim_inside_mm", "thumb_turn"),
        *("cross_bore_mm", "edge_bore_mm", "cam_form"),
    ),
}
"""The facts of the first version, in its order. All others enter a key by name and only where they are known, so that
waivers and packets of a project that knows nothing of them still belong to its facts."""


def _first(kind: type[Any]) -> "attrgetter[tuple[Any, ...]]":
    return attrgetter(*_FIRST[kind])


def _others(kind: type[Any]) -> "tuple[tuple[str, ...], Callable[[Any], Any]]":
    names = tuple(each.name for each in fields(kind) if each.name not in IGNORED and each.name not in _FIRST[kind])
    return names, attrgetter(*names, "id")


_OPENING: Final = _first(Opening)
_LEAF: Final = _first(Leaf)
_ITEM: Final = _first(Item)
_LATER: Final = {kind: _others(kind) for kind in (Opening, Leaf, Item)}
_encode: Final = json.JSONEncoder(separators=(",", ":"), ensure_ascii=True).encode


def _settings(settings: Settings) -> tuple[Any, ...]:
    # Sorted before it is hashed: neither mapping nor set has an order that means anything.
    return (sorted(settings.limits.items()), sorted(settings.rules_off), settings.prefer, settings.length_style)


def survey_key(given: OpeningInput) -> str:
    """Return the key of what was surveyed and chosen by hand at an opening: catalogue and settings left out.

    Waivers and packets hold it: for an opening of which nothing new is known it must stay what it was.

    Returns
    -------
    str
        64 hexadecimal digits; equal for openings alike.
    """
    # In the words of the first version, so that a waiver given before a word changed still belongs to its facts.
    surveyed = _encode((_surveyed(given), _by_hand(given), _later(given)))
    return hashlib.sha256(in_first_words(surveyed).encode()).hexdigest()


def input_key(given: OpeningInput) -> str:
    """Return the key of an input.

    Parameters
    ----------
    given : OpeningInput
        All that a fit of one opening can depend on.

    Returns
    -------
    str
        64 hexadecimal digits: SHA-256 over the facts that matter in canonical JSON.
    """
    later = _later(given)
    # Not in what waivers and packets hold: it follows from other openings, and only one rule speaks of it.
    if given.closed_rooms:
        later["closed_rooms"] = given.closed_rooms
    # Stock changes daily: only where the project ranks by it may it make a fit out of date.
    if given.settings.prefer in ("stock", "preferred"):
        later["ranks"] = given.catalogue.ranks
    if len(given.catalogue.currencies) > 1:
        # Only where parts are priced in several currencies do rates decide which is cheaper.
        rates = {c: decimal_text(rate) for c, rate in given.settings.rates.items() if c in given.catalogue.currencies}
        later["exchange"] = (given.settings.currency, sorted(rates.items()))
    content = (*_surveyed(given), given.catalogue.key, _settings(given.settings), *_by_hand(given), later)
    return hashlib.sha256(_encode(content).encode()).hexdigest()


def _surveyed(given: OpeningInput) -> tuple[Any, ...]:
    return _OPENING(given.opening), [_LEAF(leaf) for leaf in given.leaves], [_ITEM(item) for item in given.items]


def _by_hand(given: OpeningInput) -> tuple[Any, ...]:
    placed = given.placed
    return (
        [(chosen.role, chosen.part, chosen.quantity) for chosen in given.chosen],
        None if placed is None else (placed.leaf, placed.face, placed.pattern, placed.x_mm, placed.y_mm),
    )


def _later(given: OpeningInput) -> dict[str, Any]:
    """Return what of survey and choices came into inputs later, as far as it is known."""
    found: dict[str, Any] = {}
    # Most of what came later is unknown at most openings: to count what is, before looking, halves the cost of a key.
    names, values_of = _LATER[Opening]
    values = values_of(given.opening)[:-1]
    if values.count(None) < len(values):
        found.update((name, value) for name, value in zip(names, values, strict=True) if value is not None)
    things: tuple[tuple[type[Any], str, tuple[Any, ...]], ...] = (
        (Leaf, "leaf.", given.leaves),
        (Item, "", given.items),
    )
    for kind, prefix, held in things:
        names, values_of = _LATER[kind]
        if len(held) == 1:
            # As nearly all openings have it, and each is asked for its key.
            values = values_of(held[0])[:-1]
            if values.count(None) < len(values):
                found.update((prefix + n, [each]) for n, each in zip(names, values, strict=True) if each is not None)
            continue
        rows = [values_of(each)[:-1] for each in held]
        if all(row.count(None) == len(row) for row in rows):
            continue
        for name, *column in zip(names, *rows, strict=True):
            if column.count(None) < len(column):
                found[prefix + name] = column
    if given.supply_link is not None:
        found["feed"] = given.supply_link.part
    sources = [chosen.source for chosen in given.chosen]
    if any(source != "by-hand" for source in sources):
        found["sources"] = sources
    if given.point.others:
        found["point"] = point_facts(given)
    return found


def point_facts(given: OpeningInput) -> list[Any]:
    """Return which of several lock points it is, and what stands at the earlier ones; identifiers are left out."""
    at = {item.id: place for place, item in enumerate(given.items)}
    own = [at.get(given.point.item_id or ""), [at.get(each) for each in given.point.others]]
    return [*own, *([at.get(b.point.item_id or ""), _standing(b.fit)] for b in given.beside)]


def _standing(fit: Fit | None) -> list[Any] | None:
    """Return what of a fit another lock point meets."""
    if fit is None:
        return None
    standing = [*fit.parts, *fit.holes, *(each for each in (fit.stack, fit.placement) if each is not None)]
    return [fit.status, fit.power, [asdict(each) for each in standing]]
