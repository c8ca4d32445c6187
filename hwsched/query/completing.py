"""What may stand next in a query: offered while a person types."""

import re
from dataclasses import dataclass
from typing import Final

from hwsched.attributes import normal
from hwsched.query.asking import quoted
from hwsched.query.facts import FINDING, STATUS, USES, WAIVED, Askable, Fact
from hwsched.query.parsing import Open, Reader, signs, signs_typed
from hwsched.query.refusal import QueryError

_MOST: Final = 200
_WORDS: Final = re.compile(r"[\W_]+")


@dataclass(frozen=True, slots=True)
class Offer:
    """Something that may stand there."""

    text: str
    """What is written."""
    says: str
    """What it is, in the trade's words."""


@dataclass(frozen=True, slots=True)
class Completions:
    """What may stand at a place, and what of the text it takes the place of."""

    start: int
    end: int
    offers: tuple[Offer, ...]


def completions(text: str, cursor: int, askable: Askable) -> Completions:
    """Return what may stand at a place of a query; nothing where what stands before it cannot be read.

    Parameters
    ----------
    text : str
        As typed so far.
    cursor : int
        Where it goes on: characters from the beginning.
    askable : Askable
        What can be asked for.

    Examples
    --------
    >>> found = completions("leaf.thi", 8, Askable())
    >>> found.start, [offer.text for offer in found.offers]
    (0, ['leaf.thickness'])
    >>> [offer.text for offer in completions("hand = L", 8, Askable()).offers]
    ['LH', 'LHR']
    """
    before = text[: max(0, min(cursor, len(text)))]
    try:
        reader = Reader(before, askable)
    except QueryError:
        return Completions(len(before), len(before), ())
    try:
        reader.query()
    except QueryError:
        if reader.open is None:
            return Completions(len(before), len(before), ())
    left = reader.open
    if left is None:
        return Completions(len(before), len(before), ())
    typed = before[left.start :]
    begun, ended = typed.strip(), typed[-1:].isspace() and bool(typed.strip())
    offers = _offers(left, begun, askable)
    if ended:
        # What stands there may be whole: what can follow it is offered too, and stands behind it.
        follows = _following(left, begun, askable)
        if follows:
            return Completions(len(before), len(before), follows)
    return Completions(left.start, len(before), offers[:_MOST])


def _offers(left: Open, begun: str, askable: Askable) -> tuple[Offer, ...]:
    if left.kind in ("term", "run"):
        return _facts(begun, askable, every=left.every)
    if left.kind == "is" and left.fact is not None:
        return tuple(_starting(begun, [Offer(each, "") for each in signs(left.fact) if each in ("known", "unknown")]))
    if left.kind == "value" and left.fact is not None:
        return tuple(_starting(begun, _values(left.fact, left.sign, askable)))
    return _joints(left)


def _following(left: Open, begun: str, askable: Askable) -> tuple[Offer, ...]:
    if left.kind == "run":
        fact = askable.fact(begun)
        told = () if fact is None else tuple(Offer(each, fact.attribute.label) for each in signs_typed(fact))
        more = () if fact is None else tuple(o for o in _facts(begun, askable, every=left.every) if " " in o.says)
        return told or more or (() if left.every else _joints(left))
    return _joints(left) if left.kind == "value" else ()


def _joints(left: Open) -> tuple[Offer, ...]:
    offers = (Offer("and", "both"), Offer("or", "one of both"))
    return (*offers, Offer(")", "")) if left.depth else offers


def _facts(begun: str, askable: Askable, *, every: bool) -> tuple[Offer, ...]:
    wanted = normal(begun)
    found, within = [], []
    for fact in askable.facts:
        if every and not fact.of_rows:
            continue
        names = [fact.name, fact.attribute.label, *fact.attribute.synonyms]
        if "." not in begun:
            names.append(fact.name.partition(".")[2])
        if not wanted or any(normal(name).startswith(wanted) for name in names):
            found.append(Offer(fact.name, fact.attribute.label))
        elif any(normal(word).startswith(wanted) for name in names for word in _WORDS.split(name)[1:]):
            within.append(Offer(fact.name, fact.attribute.label))
    words = [] if every else [Offer("not", "the opposite"), Offer("every", "of all leaves or items"), Offer("(", "")]
    # What begins so stands first, then what has such a word.
    return (*found, *within, *_starting(begun, words))


def _values(fact: Fact, sign: str, askable: Askable) -> list[Offer]:
    attribute = fact.attribute
    found = [Offer(quoted(each.value), each.label) for each in attribute.choices]
    if attribute.kind == "flag":
        found = [Offer("yes", attribute.label), Offer("no", attribute.label)]
    found += [Offer(quoted(name), attribute.label) for name in askable.names(fact)()]
    if sign in ("=", "!=", "in") and fact not in (STATUS, USES, FINDING, WAIVED):
        found.append(Offer("unknown", "not known"))
    return found


def _starting(begun: str, offers: list[Offer]) -> list[Offer]:
    wanted = begun.strip("\"'").casefold()
    return [
        each
        for each in offers
        if each.text.strip('"').casefold().startswith(wanted) or each.says.casefold().startswith(wanted)
    ]
