"""The last answer to a question, kept while the same is asked: rules and search ask one after the other."""

from collections.abc import Callable
from operator import is_
from typing import Any, Final, TypeVar

_Found = TypeVar("_Found")
_held: Final[dict[str, tuple[tuple[object, ...], Any]]] = {}


def last(question: str, key: tuple[object, ...], make: Callable[[], _Found]) -> _Found:
    """Return what was made for these very objects, else make it.

    Parameters
    ----------
    question : str
        What is asked; of each the last answer is kept.
    key : tuple
        Objects that the answer follows from, compared by identity: an equal opening is watched by somebody else.
    make : callable
        Works the answer out; nobody may change it.
    """
    held = _held.get(question)
    if held is not None and len(held[0]) == len(key) and all(map(is_, held[0], key)):
        found: _Found = held[1]
        return found
    made = make()
    _held[question] = (key, made)
    return made
