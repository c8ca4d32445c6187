"""Telling a person at the command line of a failure inside the program, with what can be done about it."""

from __future__ import annotations

import logging
import sys

from hwsched.cli.verb import FAILED_INSIDE

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence

    from hwsched.model.journal.written import Written

_LOG = logging.getLogger(__name__)


def tell(text: object) -> None:
    """Print a sentence to standard error, without the passwords that may be in it."""
    from hwsched.telling.masking import masked

    print(f"hwsched: {masked(str(text))}", file=sys.stderr)


def tell_failure(error: BaseException, doing: str, written: Sequence[Written]) -> int:
    """Tell of a failure that is the program's own, log it, and write the report of it.

    Returns
    -------
    int
        Exit status.
    """
    from hwsched.operations.outcome import said_of
    from hwsched.telling.crash import crash_report, save_report, without_data
    from hwsched.telling.log import log_file

    _LOG.error(f"{doing} failed inside the program", exc_info=error)
    path = save_report(crash_report(error, doing))
    tell(f"{doing} failed inside the program ({without_data(error)}). {said_of(written)}")
    if path is not None:
        print(f"A report that can be read and sent is at {path}; the log is {log_file()}.", file=sys.stderr)
    else:
        print("Run it again with --verbose to see where: no report could be written.", file=sys.stderr)
    return FAILED_INSIDE
