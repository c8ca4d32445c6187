"""The command line's entry: `hwsched` and `python -m hwsched`."""

from __future__ import annotations

import os
import sys

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import NoReturn


def _stopped_early(*_: object) -> NoReturn:
    """End a process that has not begun its work: there is nothing to clear away, and nothing to say but that."""
    os.write(2, b"hwsched: stopped; nothing was begun\n")
    os._exit(130)


def _help() -> int | None:
    """Print the overview; None where that does not go well, so that it is told as of any other verb.

    Start-up is measured (tests/benchmarks/test_main_job.py): the modules for signals and streams alone would take as
    long as all this.
    """
    # Closed by whoever started it: printing would go nowhere without a word.
    if sys.stdout is None:
        return None
    from hwsched.cli.command import run

    try:
        status = run(sys.argv[1:])
        sys.stdout.flush()
    except OSError:
        return None
    except KeyboardInterrupt:
        return _INTERRUPTED
    return status


_INTERRUPTED = 130


def main() -> int:
    """Run one command; returns the exit status."""
    try:
        return _run()
    except KeyboardInterrupt:
        # Before there is a handler: Python's own modules for signals take a moment to load.
        return _stopped_early()


def _run() -> int:
    if "_ARGCOMPLETE" in os.environ:
        from hwsched.cli.completing import complete

        complete()
    if sys.argv[1:] in (["--help"], ["-h"]):
        status = _help()
        if status is not None:
            return status
    import signal

    if signal.getsignal(signal.SIGINT) is signal.default_int_handler:
        signal.signal(signal.SIGINT, _stopped_early)
    # Little is loaded before the verb is known, and nothing before a signal finds a handler.
    from hwsched.cli.outermost import run_process

    return run_process(sys.argv[1:])


if __name__ == "__main__":
    sys.exit(main())
