"""A line of a comparison, and how two lists of lines are laid beside each other."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Changed:
    """Something that is otherwise: what, before and after, as people read it; empty where it was or is not there."""

    what: str
    before: str
    after: str


def unshared(before: Mapping[str, str], after: Mapping[str, str]) -> Iterable[Changed]:
    """Yield what two lists of lines do not share, in their order.

    Examples
    --------
    >>> list(unshared({"Wire": "18 AWG"}, {"Wire": "16 AWG", "Notes": "new"}))[1]
    Changed(what='Notes', before='', after='new')
    """
    for what in dict.fromkeys((*before, *after)):
        if before.get(what) != after.get(what):
            yield Changed(what, before.get(what, ""), after.get(what, ""))
