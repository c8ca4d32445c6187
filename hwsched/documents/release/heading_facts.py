"""What a heading says of its openings besides its item lines: where each is, function, power, what stays and goes."""

from collections.abc import Callable, Iterable, Sequence
from typing import Final

from hwsched.documents import words
from hwsched.documents.view import OpeningView
from hwsched.language import phrase, to_phrase
from hwsched.quantities import LengthStyle
from hwsched.rules.reading import lock_item
from hwsched.values import Item

_MOST_APIECE: Final = 8
"""Of more openings a heading does not repeat what stands in the index."""
_SAID: Final = {
    "keep": to_phrase("Stays"),
    "replace": to_phrase("Is replaced"),
    "remove": to_phrase("Goes away"),
    "move": to_phrase("Is moved"),
}
_UNDECIDED: Final = to_phrase("Not decided whether it stays")
_POWER: Final = {"battery": to_phrase("batteries in the unit"), "supply": to_phrase("from a supply")}


def heading_facts(openings: Sequence[OpeningView], style: LengthStyle) -> tuple[tuple[str, str], ...]:
    """Return label and value of what holds for the openings of a heading; what is not known of any has no line.

    Parameters
    ----------
    openings : sequence of OpeningView
        Those that stand under it.
    style : LengthStyle
        How sizes are written.
    """
    lines = [(phrase("Location and size"), _apiece(openings, lambda view: _where(view, style)))]
    for label, said in (
        (phrase("Lock function"), _function),
        (phrase("Power"), _power),
        *((phrase(label), _items(value)) for value, label in _SAID.items()),
        *_own(openings),
        (phrase("Remarks"), lambda view: view.given.opening.notes or ""),
    ):
        if value := _shared(openings, said):
            lines.append((label, value))
    return tuple(lines)


def _where(view: OpeningView, style: LengthStyle) -> str:
    opening = view.given.opening
    said = (words.location(opening.room_from, opening.room_to), words.size(view.lock_leaf, style))
    return ", ".join(each for each in said if each)


def _apiece(openings: Sequence[OpeningView], said: Callable[[OpeningView], str]) -> str:
    """Say something of each opening by its mark, once where it is the same; the index has it where there are many."""
    found = {said(view) for view in openings}
    if len(found) == 1:
        return found.pop()
    if len(openings) > _MOST_APIECE:
        return phrase("by mark in the opening index")
    return "; ".join(f"{view.mark}: {said(view)}" for view in openings)


def _shared(openings: Sequence[OpeningView], said: Callable[[OpeningView], str]) -> str:
    """Say something once where it holds for all, else with the marks that it holds for."""
    found: dict[str, list[str]] = {}
    for view in openings:
        found.setdefault(said(view), []).append(view.mark)
    if len(found) == 1:
        return next(iter(found))
    return "; ".join(f"{value} ({', '.join(marks)})" for value, marks in found.items() if value)


def _function(view: OpeningView) -> str:
    locks = (lock_item(at.given) for at in view.points)
    return ", ".join(
        dict.fromkeys(
            words.item_word("function", lock.function) for lock in locks if lock is not None and lock.function
        )
    )


def _power(view: OpeningView) -> str:
    return ", ".join(
        dict.fromkeys(
            phrase(_POWER.get(at.fit.power, at.fit.power)) for at in view.points if at.fit is not None and at.fit.power
        )
    )


def _items(disposition: str) -> Callable[[OpeningView], str]:
    def said(view: OpeningView) -> str:
        held: Iterable[Item] = (item for item in view.given.items if item.disposition == disposition)
        return ", ".join(dict.fromkeys(words.item_word("kind", item.kind).lower() for item in held))

    return said


def item_words(view: OpeningView) -> str:
    """Say what stays, goes and is replaced of the existing items of an opening, and of which nobody has decided it.

    What becomes of a lock into which something new comes is no question: its cylinder goes, or all of it.
    """
    locks = {at.given.point.id: lock for at in view.points if (lock := lock_item(at.given)) is not None}
    said: dict[str, list[str]] = {}
    for at in view.points:
        lock = locks.get(at.given.point.id)
        if lock is None or at.fit is None or at.fit.status != "fits":
            continue
        if any(part.role == "cylinder" for part in at.fit.parts):
            said.setdefault(phrase(_SAID["replace"]), []).append(phrase("cylinder"))
            # A survey says of a lock that it is replaced where it is to be converted; what is done is what is said.
            said.setdefault(phrase(_SAID["keep"]), []).append(phrase("the lock's case"))
        elif any(part.role == "lock" for part in at.fit.parts):
            said.setdefault(phrase(_SAID["replace"]), []).append(phrase("the lock"))
        else:
            said.setdefault(phrase(_SAID["keep"]), []).append(phrase("the lock"))
    new = {id(lock) for lock in locks.values()}
    for item in view.given.items:
        if id(item) in new:
            continue
        label = _UNDECIDED if item.disposition is None else _SAID.get(item.disposition, item.disposition)
        said.setdefault(phrase(label), []).append(words.item_word("kind", item.kind).lower())
    return " ".join(f"{label}: {', '.join(dict.fromkeys(named))}." for label, named in said.items())


def _own(openings: Sequence[OpeningView]) -> list[tuple[str, Callable[[OpeningView], str]]]:
    """Return the project's own fields, such as keying, each with what it says of an opening."""

    def of(number: int) -> Callable[[OpeningView], str]:
        return lambda view: view.own[number][1] if number < len(view.own) else ""

    return [(label, of(number)) for number, (label, _) in enumerate(openings[0].own)]
