"""Judging openings by a query: of which it is true, of which it is false, and of which nobody knows.

A comparison with an unknown fact is neither true nor false, and only what is true is found. So ``not (x > 1)`` is not
true where x is unknown either; ``x is unknown`` finds those. ``and`` is false as soon as one part is, ``or`` true as
soon as one is, whatever else is unknown. A fact of leaves or items is compared with each: ``leaf.thickness > 1 3/4`` is
true where some leaf is so thick, with ``every`` where all are. Where no leaf (no item) is on record at all, its facts
are unknown. Lengths are compared as the project shows them: what is shown as 1 3/4 is not thicker than 1 3/4.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import reduce
from typing import Any, Final, Protocol

from hwsched.quantities import LengthStyle, shown_steps
from hwsched.query.asking import Compare, Joined, Node, Not, Query, Sign, Words
from hwsched.query.facts import SEARCHED, Fact
from hwsched.survey import OPENING
from hwsched.telling.natural import natural

Test = Callable[[Any], bool]
_ROUNDING: Final = 1e-9
"""Share by which two numbers may differ and be the same: what conversion between units leaves behind."""
_NOBODY_KNOWS: Final = (None,)
_BETWEEN: Final = "\0"


class Columns(Protocol):
    """Facts of openings, a column a fact; every column has the same openings in the same order."""

    def __len__(self) -> int:
        """Return the number of openings."""
        ...

    def column(self, fact: Fact) -> Sequence[Any]:
        """Return the values of a fact, None where unknown; of one that can be there several times a tuple of them."""
        ...


@dataclass(frozen=True, slots=True)
class Truth:
    """Of which openings, by their number in the columns, a query is true and of which false; of others nobody knows."""

    true: frozenset[int]
    false: frozenset[int]


def judge(query: Query, columns: Columns) -> Truth:
    """Judge openings by a query.

    Parameters
    ----------
    query : Query
        What is asked.
    columns : Columns
        Facts of the openings; asked for those of the query alone.
    """
    if query.root is None:
        return Truth(frozenset(range(len(columns))), frozenset())
    return _judged(query.root, columns, query.length_style)


def _judged(node: Node, columns: Columns, style: LengthStyle) -> Truth:
    if isinstance(node, Not):
        opposite = _judged(node.of, columns, style)
        return Truth(opposite.false, opposite.true)
    if isinstance(node, Joined):
        parts = [_judged(part, columns, style) for part in node.parts]
        return reduce(both if node.by == "and" else either, parts)
    if isinstance(node, Words):
        return _looked_for(node.words, columns)
    return _compared(node, columns, style)


def both(one: Truth, other: Truth) -> Truth:
    """Return where both are true."""
    return Truth(one.true & other.true, one.false | other.false)


def either(one: Truth, other: Truth) -> Truth:
    """Return where one of them is true."""
    return Truth(one.true | other.true, one.false & other.false)


def _looked_for(words: Sequence[str], columns: Columns) -> Truth:
    """Judge by words that stand alone: mark, building or a room holds each of them."""
    pieces = [word.casefold() for word in words]
    names = [columns.column(Fact(OPENING.name, OPENING.attribute(name))) for name in SEARCHED]
    true, false = [], []
    for place, texts in enumerate(zip(*names, strict=True)):
        known = [text for text in texts if text is not None]
        # Put together with what no name holds, the names are searched at once.
        together = _BETWEEN.join(known).casefold()
        held = [piece in together and _BETWEEN not in piece for piece in pieces]
        if all(held):
            true.append(place)
        elif len(known) == len(texts):
            false.append(place)
    return Truth(frozenset(true), frozenset(false))


def _compared(node: Compare, columns: Columns, style: LengthStyle) -> Truth:
    column = columns.column(node.fact)
    one = _verdict(node, style)
    judged = _of_several(one, node) if node.fact.several else one
    # Columns repeat themselves: each different value is judged once.
    verdicts = {value: judged(value) for value in set(column)}
    found = list(map(verdicts.__getitem__, column))
    return Truth(
        frozenset([place for place, verdict in enumerate(found) if verdict]),
        frozenset([place for place, verdict in enumerate(found) if verdict is False]),
    )


def _of_several(one: Callable[[Any], bool | None], node: Compare) -> Callable[[Any], bool | None]:
    """Judge all values of one opening together: some is so, or with every each is."""
    decides = not node.every

    def judged(values: tuple[Any, ...]) -> bool | None:
        found = [one(value) for value in (values or (_NOBODY_KNOWS if node.fact.of_rows else ()))]
        if decides in found:
            return decides
        return None if None in found else not decides

    return judged


def _verdict(node: Compare, style: LengthStyle) -> Callable[[Any], bool | None]:
    """Return what judges one value, None being unknown."""
    of_unknown = {"known": False, "unknown": True}.get(node.sign)
    if node.sign == "in" and any(asked.value is None for asked in node.values):
        of_unknown = True
    test = _test(node, style)

    def judged(value: Any) -> bool | None:
        return of_unknown if value is None else test(value)

    return judged


def _test(node: Compare, style: LengthStyle) -> Test:
    """Return what judges a known value."""
    if node.sign in ("known", "unknown"):
        known = node.sign == "known"
        return lambda _: known
    asked = [each.value for each in node.values if each.value is not None]
    if node.fact.attribute.kind == "length":
        return _as_shown(node.sign, asked, style)
    if node.sign == "contains":
        piece = str(asked[0]).casefold()
        return lambda value: piece in value.casefold()
    if node.sign in ("=", "!=", "in"):
        return _equal(node.fact, asked, wanted=node.sign != "!=")
    return _ordered(node, asked)


def _as_shown(sign: Sign, asked: Sequence[Any], style: LengthStyle) -> Test:
    """Compare lengths in whole steps of what is shown, so that none is found that is shown as what it is not."""
    steps = [shown_steps(value, style) for value in asked]
    if sign in ("=", "!=", "in"):
        among, wanted = frozenset(steps), sign != "!="
        return lambda value: (shown_steps(value, style) in among) is wanted
    return _between(sign, lambda value: shown_steps(value, style), (steps[0], steps[0]), (steps[-1], steps[-1]))


def _equal(fact: Fact, asked: Sequence[Any], *, wanted: bool) -> Test:
    if fact.attribute.kind == "number":
        bounds = [_bounds(value) for value in asked]
        return lambda value: any(low <= value <= high for low, high in bounds) is wanted
    if fact.attribute.kind == "text":
        texts = {value.casefold() for value in asked}
        return lambda value: (value.casefold() in texts) is wanted
    values = set(asked)
    return lambda value: (value in values) is wanted


def _ordered(node: Compare, asked: Sequence[Any]) -> Test:
    key = order_of(node.fact)
    low, high = key(asked[0]), key(asked[-1])
    if node.fact.attribute.kind == "number":
        return _between(node.sign, key, _bounds(low), _bounds(high))
    return _between(node.sign, key, (low, low), (high, high))


def _between(sign: Sign, key: Callable[[Any], Any], first: tuple[Any, Any], last: tuple[Any, Any]) -> Test:
    """Compare by a key with what is the same as the first value asked for, and as the last."""
    (low, above), (below, high) = first, last
    tests: Mapping[str, Test] = {
        "<": lambda value: key(value) < low,
        "<=": lambda value: key(value) <= above,
        ">": lambda value: key(value) > high,
        ">=": lambda value: key(value) >= below,
        "between": lambda value: low <= key(value) <= high,
    }
    return tests[sign]


def _bounds(value: float) -> tuple[float, float]:
    """Return between which numbers a number is the same."""
    room = _ROUNDING * max(1.0, abs(value))
    return value - room, value + room


def order_of(fact: Fact) -> Callable[[Any], Any]:
    """Return the key by which values of a fact are ordered: texts as people count, choices by what they count."""
    ranks = fact.ranks
    if ranks is not None:
        return ranks.__getitem__
    return _counted if fact.attribute.kind == "text" else _itself


def _counted(text: str) -> Any:
    # Capital letters make no difference, as they make none for =.
    return natural(text.casefold())


def _itself(value: Any) -> Any:
    return value
