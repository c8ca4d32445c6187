"""The command line's entry: `hwsched` and `python -m hwsched`."""

import sys


def main() -> int:
    """Run one command; returns the exit status."""
    # Start-up is measured (tests/benchmarks/test_start.py): nothing but argparse is loaded before the verb is known.
    from hwsched.cli.command import run

    return run(sys.argv[1:])


if __name__ == "__main__":
    sys.exit(main())
