"""The outermost handler of the command line's process: nothing leaves it but an exit status and a sentence."""

from __future__ import annotations

import sys

from hwsched.cli.signals import Stopped, leave_at_once, status_told, watch_signals
from hwsched.cli.streams import OutputLostError, take_over
from hwsched.cli.verb import FAILED_INSIDE, INTERRUPTED

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence

_STOPPED = "hwsched: stopped; what was not finished was not written"


def run_process(words: Sequence[str]) -> int:
    """Run one command line as a process of its own: with its log, its signals, its standard streams.

    Parameters
    ----------
    words : sequence of str
        Without the program's name.

    Returns
    -------
    int
        Exit status; whatever goes wrong, no exception leaves.
    """
    take_over()
    status = FAILED_INSIDE
    try:
        watch_signals()
        # Loads all verbs: only where a signal already finds its handler.
        from hwsched.cli.command import run

        status = run(words, own_process=True)
        sys.stdout.flush()
    except Stopped as stopped:
        status = stopped.status
        print(_STOPPED, file=sys.stderr)
    except KeyboardInterrupt:
        status = INTERRUPTED
        print(_STOPPED, file=sys.stderr)
    except OutputLostError as error:
        status = FAILED_INSIDE
        print(f"hwsched: {error}", file=sys.stderr)
    except Exception as error:
        # A library may have made something else of the signal on its way.
        status = status_told() or _told_of(error)
        if status_told() is not None:
            print(_STOPPED, file=sys.stderr)
    leave_at_once(status)
    return status


def _told_of(error: Exception) -> int:
    """Tell of a failure before any verb was found."""
    from hwsched.cli.failing import tell_failure

    return tell_failure(error, "reading the command line", [])
