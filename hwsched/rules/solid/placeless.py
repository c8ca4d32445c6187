"""A fit that does not tell where anything stands: what a rule says of it holds wherever that is."""

from dataclasses import fields
from typing import Any, Final, NoReturn

from hwsched.values import Fit

PLACES: Final = ("placement", "cable", "holes")
"""What of a fit tells where unit, lead and holes are."""


class PlaceReadError(Exception):
    """A place was asked for, so that the answer hangs on it."""


def _refuse(_: Any) -> NoReturn:
    raise PlaceReadError


_Placeless: Final[Any] = type("Placeless", (Fit,), dict.fromkeys(PLACES, property(_refuse)))
_TOLD: Final = tuple(each.name for each in fields(Fit) if each.name not in PLACES)


def placeless(fit: Fit) -> Fit:
    """Return a fit like another whose places raise PlaceReadError when they are read.

    Examples
    --------
    >>> placeless(Fit("fits", power="battery")).power
    'battery'
    """
    made: Fit = object.__new__(_Placeless)
    for name in _TOLD:
        object.__setattr__(made, name, getattr(fit, name))
    return made
