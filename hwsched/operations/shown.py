"""What was shown before it is accepted: bound to the file and to the rows that it stands on, and to nothing else.

A file that is another one by now is refused. Where others changed what was used, that is compared anew: if it comes to
the same, it is accepted; if not, it is shown and asked again. What was not used changes nothing.
"""

from pathlib import Path

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
