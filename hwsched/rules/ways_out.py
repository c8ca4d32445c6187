"""From which face people leave, and which faces a lock may hold locked. What follows from it is said by the rules."""

from typing import Final

from hwsched.attributes.of_parts import THUMB_TURN
from hwsched.rules.reading import LATCHING, lock_item, lock_leaf, lock_part, on_leaf, remains
from hwsched.values import Fit, Item, OpeningInput

ON_EXIT: Final = ("egress", "panic")
"""Egress roles of an opening through which people leave."""
DOORS: Final = ("single", "pair", None)
"""Forms that are doors in a wall; a form that nobody noted is taken for one."""
_FROM: Final = {"key": ("inside",), "inside": ("key",), "both": ("inside", "key"), "none": ()}
_HELD_ON_KEY_SIDE: Final = ("privacy", "office", "classroom", "storeroom", "exit", "deadlock")
"""Functions by which the key side can be locked while the inside stays free (BHMA A156.13 and A156.2, from memory): all
but passage. A privacy lock opens from the key side by an emergency tool only."""
SIDE: Final = {"inside": "inside", "key": "key side"}


def on_exit(given: OpeningInput) -> bool:
    """Tell whether people leave through the opening; unknown counts as no, since another rule asks for it."""
    return given.opening.egress in ON_EXIT


def is_door(given: OpeningInput) -> bool:
    """Tell whether the opening is a door in a wall: no gate, cabinet, lift or turnstile."""
    return given.opening.form in DOORS


def leaving_from(given: OpeningInput) -> tuple[str, ...] | None:
    """Return the faces from which people leave, key or inside; None while unknown."""
    toward = given.opening.egress_toward
    return None if toward is None else _FROM.get(toward)


def entered_again_from(given: OpeningInput) -> tuple[str, ...] | None:
    """Return the faces from which people come back: those towards which they leave; None while unknown."""
    toward = given.opening.egress_toward
    return (
        None if toward is None else {"key": ("key",), "inside": ("inside",), "both": ("inside", "key")}.get(toward, ())
    )


def holding(given: OpeningInput) -> tuple[Item, ...]:
    """Return the locks that hold the lock point's leaf after the work: the one that is converted, and what stays."""
    leaf, lock = lock_leaf(given), lock_item(given)
    # A reader alone holds nothing.
    if lock is not None and lock.lock_form == "reader":
        lock = None
    others = (
        item
        for item in given.items
        if item is not lock
        and item.lock_form != "reader"
        and item.kind in ("lock", "deadbolt")
        and remains(item)
        and leaf
        and on_leaf(item, leaf)
        # What is converted at another lock point is judged there.
        and item.id not in given.point.others
    )
    return (*((lock,) if lock is not None else ()), *others)


def is_deadlock(item: Item) -> bool:
    """Tell whether a lock is a deadlock; a deadbolt is one, whether or not the survey names its function."""
    return item.function == "deadlock" or (item.kind == "deadbolt" and item.function is None)


def locked_on(item: Item, face: str) -> tuple[bool | None, str]:
    """Tell whether a lock may hold a face locked, None while unknown; with the fact of the item that decides."""
    if is_deadlock(item):
        if face == "key":
            return True, "function"
        return (None if item.thumb_turn is None else not item.thumb_turn), "thumb_turn"
    if face == "inside":
        # By every function but a deadlock's the inside is free at all times.
        return False, "function"
    return (None if item.function is None else item.function in _HELD_ON_KEY_SIDE), "function"


def held_after(given: OpeningInput, fit: Fit, item: Item, face: str) -> tuple[bool | None, str]:
    """Tell the same with the new cylinder: by its turn a deadlock opens from the inside, whatever the old one had."""
    part = lock_part(given, fit) if face == "inside" and is_deadlock(item) and item is lock_item(given) else None
    if part is not None and part.kind == "euro-cylinder" and part.flag_of(THUMB_TURN):
        return False, "thumb_turn"
    return locked_on(item, face)


def keeps_in(given: OpeningInput, fit: Fit) -> bool:
    """Tell whether a new cylinder without a turn surely keeps people in who leave from the inside."""
    lock = lock_item(given)
    # In this order, so that a door's fit hangs on its egress only where that may decide.
    if lock is None or lock.lock_form != "euro-profile" or lock.thumb_turn or not is_deadlock(lock):
        return False
    if not on_exit(given) or "inside" not in (leaving_from(given) or ()):
        return False
    return held_after(given, fit, lock, "inside")[0] is True


def latches(item: Item) -> bool | None:
    """Tell whether an item holds its leaf shut by itself; None while unknown."""
    if item.kind == "exit-device" or item.function == "exit":
        return True
    if item.kind == "flush-bolt":
        return None if item.bolt_form is None else item.bolt_form != "manual"
    if item.kind == "deadbolt" or item.kind not in LATCHING:
        return False
    return None if item.latch_form is None else item.latch_form in ("latch", "deadlatch")
