"""Passwords and the name of the person's account, taken out of what is shown, logged or sent."""

import getpass
import re
from pathlib import Path
from typing import Final

_MASK: Final = "***"
# To the last @: a password that was not encoded may hold one, or a slash.
_IN_ADDRESS: Final = re.compile(r"(?<=://)([^\s/:@?#]*):(\S*)@")
_ADDRESS: Final = re.compile(r"(?i)\b[a-z][a-z0-9+]*://\S+")
_OPTION: Final = re.compile(r"""(?<=[?&])([^\s=&#'"]+)=([^\s&#'"]*)""")
OPEN_OPTIONS: Final = frozenset({"service", "host", "hostaddr", "port", "dbname", "user", "sslmode", "connect_timeout"})
"""Options of an address whose values may be shown; whatever else is given, known or mistyped, may be a secret."""
_NAMED: Final = re.compile(r"""(?i)\b(\w*(?:password|passwd|pwd)["']?\s*[=:]\s*)("[^"]*"|'[^']*'|[^\s&;,'"]+)""")
_SHORTEST: Final = 3
"""A shorter account name is too likely to be a part of other words."""


def masked(text: str) -> str:
    """Return a text without the passwords in it, in a database's address or behind the word.

    Examples
    --------
    >>> masked("postgresql://ann:s3cret@db/yard?sslmode=require&password=other")
    'postgresql://ann:***@db/yard?sslmode=require&password=***'
    """
    return _NAMED.sub(rf"\1{_MASK}", _ADDRESS.sub(_masked_options, _IN_ADDRESS.sub(rf"\1:{_MASK}@", text)))


def _masked_options(address: re.Match[str]) -> str:
    return _OPTION.sub(
        lambda option: option[0] if option[1].lower() in OPEN_OPTIONS else f"{option[1]}={_MASK}", address[0]
    )


def without_person(text: str) -> str:
    """Return a text in which the person's folder is ``~`` and the account's name is left out."""
    home = str(Path.home())
    if len(home) > 1:
        text = text.replace(home, "~")
    try:
        account = getpass.getuser()
    except (KeyError, OSError):
        account = ""
    if len(account) >= _SHORTEST and account != "root":
        text = re.sub(rf"(?<![\w]){re.escape(account)}(?![\w])", "USER", text)
    return text
