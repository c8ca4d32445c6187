"""Four letters by which people name a sheet; they follow from what it says and shows."""

import hashlib
from typing import Final

_LETTERS: Final = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"
"""Without those that are read as a digit or as each other."""


def short_code(said: object) -> str:
    """Return four letters that follow from what is said and drawn.

    Parameters
    ----------
    said : object
        Plain values whose `repr` says all of them.

    Examples
    --------
    >>> short_code(["a"]) == short_code(["a"]) != short_code(["b"])
    True
    """
    number = int(hashlib.sha256(repr(said).encode()).hexdigest()[:10], 16)
    found = ""
    for _ in range(4):
        number, at = divmod(number, len(_LETTERS))
        found += _LETTERS[at]
    return found
