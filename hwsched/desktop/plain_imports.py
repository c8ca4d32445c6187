"""Imports as Python makes them, though the toolkit is loaded.

PySide puts a function of its own in the place of Python's import: it reads the source of every module that is loaded
from then on, and searches it for the toolkit's name, so that a module may ask for methods under other names
(``from __feature__ import snake_case``). Nothing here asks for that, and of a thousand modules it costs a fifth of the
time that loading them takes, and as much memory as their sources.
"""

import builtins
from typing import Final

import PySide6  # noqa: F401 what it puts in place, it puts there as it is loaded

_KEPT: Final = "__orig_import__"
"""By which name PySide keeps, among the built-in functions, what stood there before."""


def import_plainly() -> None:
    """Put back what stood there before; told twice it is the same, and where nothing was replaced nothing happens."""
    before = getattr(builtins, _KEPT, None)
    if callable(before):
        builtins.__import__ = before
