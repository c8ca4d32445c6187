"""The key of a case: equal for openings alike in all that matters, different as soon as a fact differs.

What does not matter: identifiers, mark, rooms, building, level, wave, priority, notes.
"""

import hashlib
import json
from dataclasses import fields
from operator import attrgetter
from typing import Any, Final

from hwsched.cases.case import Case, Settings
from hwsched.cases.facts import Item, Leaf, Opening

VERSION: Final = 1
"""Raised when the meaning of a stored fit changes, so that older ones count as out of date."""
_IGNORED: Final = frozenset(
    {"id", "mark", "building", "level", "room_from", "room_to", "wave", "priority", "notes", "item_notes"}
)


def _getter(kind: type[Any]) -> "attrgetter[tuple[Any, ...]]":
    return attrgetter(*(field.name for field in fields(kind) if field.name not in _IGNORED))


_OPENING: Final = _getter(Opening)
_LEAF: Final = _getter(Leaf)
_ITEM: Final = _getter(Item)
_encode: Final = json.JSONEncoder(separators=(",", ":"), ensure_ascii=True).encode


def _settings(settings: Settings) -> tuple[Any, ...]:
    return (sorted(settings.limits.items()), sorted(settings.rules_off), settings.prefer, settings.length_style)


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
    content = (
        VERSION,
        _OPENING(case.opening),
        [_LEAF(leaf) for leaf in case.leaves],
        [_ITEM(item) for item in case.items],
        case.catalogue.key,
        _settings(case.settings),
        [(chosen.role, chosen.part, chosen.quantity) for chosen in case.chosen],
        None
        if case.placed is None
        else (case.placed.leaf, case.placed.face, case.placed.pattern, case.placed.x_mm, case.placed.y_mm),
    )
    return hashlib.sha256(_encode(content).encode()).hexdigest()
