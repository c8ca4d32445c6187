"""Which facts of an opening are shown: what is asked of its form and kinds, and what is known besides."""

from typing import Any, Final

from hwsched.attributes import Attribute
from hwsched.survey import ITEM, Entity
from hwsched.survey.asked import OF_KINDS, asked_of, asked_of_device, asked_of_lock, decides
from hwsched.values import Item, Leaf, Opening
from hwsched.values.lock_points import is_lock

_LOCK_FACTS: Final = frozenset(
    a.name for a in ITEM.attributes if a.name not in ("kind", "leaf", "face", "x_mm", "y_mm", "width_mm", "height_mm")
) - {"projection_mm", "disposition", "item_notes"}


def asked_facts(entity: Entity, values: Any, opening: Opening) -> tuple[Attribute, ...]:
    """Return the facts that are asked of openings of a form, and what is known besides."""
    leaf = values if isinstance(values, Leaf) else None
    return tuple(
        a
        for a in entity.attributes
        if (asked_of(a.name, opening.form) and decides(a.name, opening, leaf)) or getattr(values, a.name) is not None
    )


def item_facts(item: Item, opening: Opening) -> tuple[Attribute, ...]:
    """Return the facts that are asked of an existing item of its kind, and what is known of it all the same."""
    locks = is_lock(item)
    return tuple(a for a in asked_facts(ITEM, item, opening) if _of_item(a.name, item, locks=locks))


def _of_item(name: str, item: Item, *, locks: bool) -> bool:
    kinds = OF_KINDS.get(name)
    if not asked_of_device(name, item.device_form):
        return getattr(item, name) is not None
    if kinds is not None:
        return item.kind in kinds or item.kind is None or getattr(item, name) is not None
    if locks and not asked_of_lock(name, item.lock_form):
        return getattr(item, name) is not None
    return locks or name not in _LOCK_FACTS
