"""Words that are nearly one that is known: what is proposed for a word of a list that nobody understands."""

import re
from collections.abc import Iterable
from typing import Final

from hwsched.attributes import Attribute, CellError
from hwsched.attributes.values import choice_words
from hwsched.telling.nearest import nearest

_MOST: Final = 2
_NO_DIGITS: Final = re.compile(r"\D")
_SAID: Final = "; nearest: "


def near_words(attribute: Attribute, word: str) -> list[tuple[str, str]]:
    """Return what a word that is not understood is nearly: label and value of at most two choices.

    Examples
    --------
    >>> from hwsched.survey import LEAF
    >>> near_words(LEAF.attribute("material"), "aluminim"), near_words(LEAF.attribute("material"), "qqq")
    ([('Aluminium', 'aluminium')], [])
    >>> from hwsched.survey import OPENING
    >>> near_words(OPENING.attribute("rating"), "FD70"), near_words(OPENING.attribute("rating"), "60 mim")
    ([], [('60 min', '60')])
    """
    if attribute.kind != "choice" or not word:
        return []
    # A number is no slip of another number: FD30 is not nearly FD60.
    digits = _NO_DIGITS.sub("", word)
    known = {each: value for each, value in choice_words(attribute).items() if _NO_DIGITS.sub("", each) == digits}
    found = dict.fromkeys(known[each] for each in nearest(word, known))
    # A word of several parts may hold one that is known: hollow metal door, insulated.
    parts: Iterable[str] = word.replace("/", " ").replace(",", " ").split()
    found |= dict.fromkeys(known[part.casefold()] for part in parts if part.casefold() in known)
    labels = {choice.value: choice.label for choice in attribute.choices}
    return [(labels[value], value) for value in list(found)[:_MOST]]


def with_near_words(error: CellError, attribute: Attribute) -> CellError:
    """Return the refusal of a word with what it is nearly, where it is nearly a word that is known.

    Examples
    --------
    >>> from hwsched.survey import LEAF
    >>> with_near_words(CellError("timbr", "is none of the words"), LEAF.attribute("material")).message
    'is none of the words; nearest: Wood, solid core'
    """
    near = near_words(attribute, error.read)
    if not near:
        return error
    first, *others = (label for label, _ in near)
    if others:
        return CellError(error.read, f"{error.message}; nearest: {first} or {others[0]}", error.accepted)
    return CellError(error.read, f"{error.message}; nearest: {first}", error.accepted)


def nearest_said(message: str) -> str:
    """Return the first word that a refusal names as near; empty where it names none.

    Examples
    --------
    >>> nearest_said("is none of the words; nearest: Wood, solid core or Glass"), nearest_said("is no number")
    ('Wood, solid core', '')
    """
    return message.partition(_SAID)[2].partition(" or ")[0]
