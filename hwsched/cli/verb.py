"""What a command-line verb is. Verbs themselves stand one a file in this folder."""

from __future__ import annotations

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse
    from collections.abc import Callable

DONE = 0
FINDINGS = 1
WRONG_USAGE = 2
REJECTED = 3
CANNOT_OPEN = 4
FAILED_INSIDE = 6
HUNG_UP = 129
INTERRUPTED = 130
TERMINATED = 143
STATUSES = (
    (DONE, "done, or passed"),
    (FINDINGS, "found: findings at or above --fail-on, or openings that are unjudged or unknown"),
    (WRONG_USAGE, "wrong usage"),
    (REJECTED, "refused, or in conflict with what somebody else did; the message says what was written before, if any"),
    (CANNOT_OPEN, "cannot be opened: the project, the database, the desktop, a package that adds to the program"),
    (FAILED_INSIDE, "failed inside the program or while telling the result; a report and the log say where"),
    (INTERRUPTED, "interrupted (Ctrl-C); 143 and 129 when told to end or the terminal went away"),
)
"""Exit statuses and what they mean: the help and the guide show this table."""


class Verb:
    """One command. `arguments` and `run` load what they need when they are called, so that help stays quick.

    A plain class: `hwsched --help` is measured against a bare interpreter, and importing dataclasses would double it.

    Parameters
    ----------
    name : str
        One word, or two for a verb with an object, such as ``import survey``.
    summary : str
        One sentence for the overview.
    arguments : callable
        Adds the verb's arguments to a parser.
    run : callable
        Does it; returns the exit status.
    own_help : bool
        The verb answers --help itself.
    """

    __slots__ = ("arguments", "name", "own_help", "run", "summary")

    def __init__(
        self,
        name: str,
        summary: str,
        arguments: Callable[[argparse.ArgumentParser], None],
        run: Callable[[argparse.Namespace], int],
        own_help: bool = False,
    ) -> None:
        self.name = name
        self.summary = summary
        self.arguments = arguments
        self.run = run
        self.own_help = own_help
