"""Reads the command line, finds the verb, runs it and turns what can go wrong into messages and exit statuses."""

from __future__ import annotations

import sys

from hwsched.cli import VERBS
from hwsched.cli.verb import CANNOT_OPEN, REJECTED, WRONG_USAGE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse
    from collections.abc import Sequence

DESCRIPTION = "Survey, fit, prove, schedule and install electronic locking on doors that already stand."
EPILOG = (
    "exit status: 0 done; 1 findings at or above --fail-on; 2 wrong usage; 3 input rejected, nothing changed; "
    "4 the project cannot be opened"
)


def run(words: Sequence[str]) -> int:
    """Run one command line; returns the exit status."""
    try:
        return _run(words)
    except Exception as error:
        from hwsched.outside import OutsideError

        if not isinstance(error, OutsideError):
            raise
        print(f"hwsched: {error}", file=sys.stderr)
        return CANNOT_OPEN


def _run(words: Sequence[str]) -> int:
    verb = _verb_of(words)
    if verb is None:
        return _overview(words)
    import argparse

    parser = argparse.ArgumentParser(
        prog=f"hwsched {verb.name}", description=verb.summary, epilog=EPILOG, add_help=not verb.own_help
    )
    verb.arguments(parser)
    try:
        arguments = parser.parse_intermixed_args(list(words[len(verb.name.split()) :]))
    except SystemExit as stop:
        return stop.code if isinstance(stop.code, int) else WRONG_USAGE
    return _guarded(verb, arguments)


def _verb_of(words: Sequence[str]) -> Verb | None:
    for verb in VERBS:
        name = verb.name.split()
        if list(words[: len(name)]) == name:
            return verb
    return None


def _overview(words: Sequence[str]) -> int:
    if list(words) == ["--version"]:
        from hwsched import __version__

        print(f"hwsched {__version__}")
        return 0
    wide = max(len(verb.name) for verb in VERBS)
    lines = [f"usage: hwsched {{{', '.join(verb.name for verb in VERBS)}}} ...", "", DESCRIPTION, "", "commands:"]
    lines += [f"  {verb.name:<{wide}}  {verb.summary}" for verb in VERBS]
    lines += ["", "hwsched COMMAND --help tells each command's arguments.", EPILOG]
    if list(words) in (["--help"], ["-h"]):
        print("\n".join(lines))
        return 0
    if words:
        near = [verb.name for verb in VERBS if verb.name.split()[0] == words[0]]
        what = f"'{words[0]}' needs one of: {', '.join(near)}" if near else f"no command '{words[0]}'"
        print(f"hwsched: {what}; see hwsched --help", file=sys.stderr)
    else:
        print("\n".join(lines), file=sys.stderr)
    return WRONG_USAGE


def _guarded(verb: Verb, arguments: argparse.Namespace) -> int:
    from hwsched.exchange.problems import InputRejected
    from hwsched.model.errors import ChangeError, ProjectError

    try:
        return verb.run(arguments)
    except ProjectError as error:
        print(f"hwsched: {error}", file=sys.stderr)
        return CANNOT_OPEN
    except (InputRejected, ChangeError) as error:
        print(f"hwsched: {error}\nNothing was changed.", file=sys.stderr)
        return REJECTED
    except KeyboardInterrupt:
        print("hwsched: stopped; what was not finished was not written", file=sys.stderr)
        return 130
    except BrokenPipeError:
        sys.stderr.close()
        return 0
