"""Which schema a project has: its revisions in order, and what marks a file as ours.

Here belong the numbers only; `migrating` moves a project from one revision to the next.
"""

from typing import Final

REVISIONS: Final = (
    *("0001", "0002", "0004", "0006", "0005", "0007", "0003"),
    *("0008", "0009", "0010", "0011", "0012", "0013", "0014", "0016", "0017", "0018", "0019", "0020", "0021", "0022"),
)
"""Every revision under `migrations/`, oldest first; the last is the one that the tables of this version need."""

HEAD: Final = REVISIONS[-1]

APPLICATION_ID: Final = 0x48775363
"""Our own number in the header of a SQLite file; so other programs' files are told apart."""

SUFFIX: Final = ".hwsched"
"""Ending of a project file's name."""
