"""What a command-line verb is, and its exit statuses. Verbs themselves stand one a file in the rooms beside this."""

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
NOT_JUDGED = 5
FAILED_INSIDE = 6
HUNG_UP = 129
INTERRUPTED = 130
TERMINATED = 143
STATUSES = (
    (DONE, "done, or passed"),
    (FINDINGS, "found: findings at or above --fail-on, or rows that were left out"),
    (WRONG_USAGE, "wrong usage"),
    (REJECTED, "refused, or in conflict with what somebody else did; the message says what was written before, if any"),
    (CANNOT_OPEN, "cannot be opened: the project, the database, the desktop, a package that adds to the program"),
    (NOT_JUDGED, "not judged: nothing found, but not all could be judged (stale, to measure, a supply not worked out)"),
    (FAILED_INSIDE, "failed inside the program or while telling the result; a report and the log say where"),
    (INTERRUPTED, "interrupted (Ctrl-C); 143 and 129 when told to end or the terminal went away"),
)
"""Exit statuses and what they mean: the help and the guide show this table."""
EPILOG = "exit status: " + "; ".join(f"{status} {words}" for status, words in STATUSES)
"""The same for the help of every verb."""


class Verb:
    """One command. `arguments` and `run` load what they need when they are called, so that help stays quick.

    Parameters
    ----------
    arguments : callable
        Adds the verb's arguments to a parser.
    run : callable
        Does it; returns the exit status.
    own_help : bool
        The verb answers --help itself.
    lines : bool
        It prints JSON line by line as it goes, and no envelope.
    result : type or str, optional
        What it hands to `answering.answer`: a dataclass, TypedDict or another type of which msgspec makes a JSON
        Schema; as ``module:name`` where help should not wait for it. None where it tells machines nothing but the
        envelope.
    quick : bool
        It only reads what is stored and is asked often: it starts without log and without noting change sets.
    in_batch : bool
        It writes into a project and nothing else, so that it can be a part of a larger step (`project batch`).
    """

    __slots__ = ("arguments", "in_batch", "lines", "own_help", "quick", "result", "run")

    def __init__(
        self,
        arguments: Callable[[argparse.ArgumentParser], None],
        run: Callable[[argparse.Namespace], int],
        own_help: bool = False,
        lines: bool = False,
        result: object = None,
        quick: bool = False,
        in_batch: bool = False,
    ) -> None:
        self.arguments, self.run = arguments, run
        self.own_help, self.lines, self.result = own_help, lines, result
        self.quick, self.in_batch = quick, in_batch
