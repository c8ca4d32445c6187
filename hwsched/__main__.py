"""The command line's entry: `hwsched` and `python -m hwsched`."""

import os
import signal
import sys


def _stopped_early(*_: object) -> None:
    """End a process that has not begun its work: there is nothing to clear away, and nothing to say but that."""
    os.write(2, b"hwsched: stopped; nothing was begun\n")
    os._exit(130)


def main() -> int:
    """Run one command; returns the exit status."""
    if signal.getsignal(signal.SIGINT) is signal.default_int_handler:
        signal.signal(signal.SIGINT, _stopped_early)
    # Start-up is measured (tests/benchmarks/test_main_job.py): little is loaded before the verb is known.
    from hwsched.cli.outermost import run_process

    return run_process(sys.argv[1:])


if __name__ == "__main__":
    sys.exit(main())
