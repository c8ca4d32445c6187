"""What was shown before it is accepted: bound to the file and to the rows that it stands on, and to nothing else.

A file that is another one by now is refused. Where others changed what was used, that is compared anew: if it comes to
the same, it is accepted; if not, it is shown and asked again. What was not used changes nothing.
"""

import hashlib
import json
from collections.abc import Mapping, Set
from dataclasses import fields, is_dataclass
from pathlib import Path
from typing import Any

from hwsched.exchange.file_key import file_key
from hwsched.model.errors import ChangeError, ValueRefusedError


class ShownOtherwiseError(ChangeError):
    """What was shown is not what would come of it any more; nothing is changed.

    Parameters
    ----------
    message : str
        What has changed.
    now : object
        As it would be shown now; None where it is to be worked out again.
    """

    def __init__(self, message: str, now: object = None) -> None:
        super().__init__(message)
        self.now = now


def check_file(path: Path, key: str) -> None:
    """Refuse a file that is not the one that was shown; raises ValueRefusedError.

    Parameters
    ----------
    path : Path
        The file.
    key : str
        `file_key` of what was shown.
    """
    if file_key(path) != key:
        raise ValueRefusedError(
            "file", f"{path.name} is not what was shown any more, it was changed or taken away; look at it again"
        )


def changed_meanwhile(marks: list[str], again: str = "look at it again") -> str:
    """Say that openings changed since something was shown."""
    named = ", ".join(marks[:5]) + (f" and {len(marks) - 5} more" if len(marks) > 5 else "")
    return f"what was shown no longer holds, {named} changed meanwhile; {again}"


def shown_key(shown: object) -> str:
    """Return a key by which a person, or another program, names what was shown when it is accepted.

    Parameters
    ----------
    shown : object
        Plain values and dataclasses of them; fields that do not compare are left out.

    Returns
    -------
    str
        16 hexadecimal digits, alike for alike content in every process.

    Examples
    --------
    >>> shown_key({"a": 1, "b": {2, 3}}) == shown_key({"b": {3, 2}, "a": 1})
    True
    """
    return hashlib.sha256(json.dumps(_plain(shown), sort_keys=True).encode()).hexdigest()[:16]


def check_shown(asked: str, key: str) -> None:
    """Refuse what is not what a person names; an empty name names nothing. Raises ShownOtherwiseError."""
    if asked and asked != key:
        raise ShownOtherwiseError(f"what would be accepted is {key}, not {asked} as it was shown; look at it again")


def _plain(value: object) -> Any:
    if is_dataclass(value) and not isinstance(value, type):
        held = {each.name: _plain(getattr(value, each.name)) for each in fields(value) if each.compare}
        return [type(value).__name__, held]
    if isinstance(value, Mapping):
        return {str(key): _plain(each) for key, each in value.items()}
    if isinstance(value, Set):
        return sorted(_plain(each) for each in value)
    if isinstance(value, list | tuple):
        return [_plain(each) for each in value]
    return value if isinstance(value, str | int | float | bool | None) else str(value)
