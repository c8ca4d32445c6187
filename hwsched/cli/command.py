"""Reads the command line, finds the verb, runs it and turns what can go wrong into messages and exit statuses."""

from __future__ import annotations

import os
import sys

from hwsched.cli import VERBS
from hwsched.cli.verb import CANNOT_OPEN, FAILED_INSIDE, REJECTED, STATUSES, WRONG_USAGE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse
    from collections.abc import Sequence

DESCRIPTION = "Survey, fit, prove, schedule and install electronic locking on doors that already stand."
EPILOG = "exit status: " + "; ".join(f"{status} {words}" for status, words in STATUSES)
_VERBOSE = "--verbose"


def run(words: Sequence[str], *, own_process: bool = False) -> int:
    """Run one command line; returns the exit status.

    Parameters
    ----------
    words : sequence of str
        Without the program's name.
    own_process : bool
        This process is there for the command alone: its log is kept.
    """
    words = [_as_text(word) for word in words]
    for place, word in enumerate(words, start=1):
        if any("\ud800" <= letter <= "\udfff" for letter in word):
            shown = word.encode("utf-8", "surrogateescape").decode("utf-8", "backslashreplace")
            print(
                f"hwsched: argument {place} is not UTF-8 text: {shown}; rename the file or type it anew",
                file=sys.stderr,
            )
            return WRONG_USAGE
    # Before the verb it is accepted too.
    verbose = list(words[:1]) == [_VERBOSE]
    words = words[1:] if verbose else words
    verb = _verb_of(words)
    if verb is None:
        return _overview(words)
    import argparse

    parser = argparse.ArgumentParser(
        prog=f"hwsched {verb.name}", description=verb.summary, epilog=EPILOG, add_help=not verb.own_help
    )
    try:
        return _parsed_and_run(verb, parser, words, verbose=verbose, own_process=own_process)
    except SystemExit as stop:
        return stop.code if isinstance(stop.code, int) else WRONG_USAGE


def _parsed_and_run(
    verb: Verb, parser: argparse.ArgumentParser, words: Sequence[str], *, verbose: bool, own_process: bool
) -> int:
    from hwsched.outside import OutsideError

    try:
        verb.arguments(parser)
        parser.add_argument(_VERBOSE, action="store_true", help="show on the screen what goes into the log")
        # Options may stand between the project and the rest, as people type them.
        arguments = parser.parse_intermixed_args(list(words[len(verb.name.split()) :]))
    except OutsideError as error:
        # A package that adds rules or part kinds, met as the choices of an argument are listed.
        print(f"hwsched: {error}", file=sys.stderr)
        return CANNOT_OPEN
    if not own_process:
        return _guarded(verb, arguments)
    import logging

    from hwsched import __version__
    from hwsched.telling.log import start_log

    start_log(verbose=verbose or arguments.verbose)
    log = logging.getLogger(__name__)
    log.info(f"{verb.name} begins, hwsched {__version__}")
    status = _guarded(verb, arguments)
    log.info(f"{verb.name} ends with status %d", status)
    return status


def _as_text(word: str) -> str:
    """Return an argument as UTF-8, which is what it is in nearly every locale; as it came where it is not."""
    if word.isascii():
        return word
    try:
        return os.fsencode(word).decode("utf-8")
    except UnicodeError:
        return word


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
    lines += ["", "hwsched COMMAND --help tells each command's arguments; --verbose shows the log.", "", "exit status:"]
    lines += [f"  {status:>3}  {meaning}" for status, meaning in STATUSES]
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
    from hwsched.cli.failing import tell, tell_failure
    from hwsched.cli.signals import Stopped, status_told
    from hwsched.cli.streams import OutputLostError
    from hwsched.model.written import noting
    from hwsched.operations.outcome import CLOSED, REFUSED, said_of

    with noting() as written:
        try:
            status = verb.run(arguments)
            sys.stdout.flush()
        except CLOSED as error:
            tell(error)
            if written:
                print(said_of(written), file=sys.stderr)
            return CANNOT_OPEN
        except REFUSED as error:
            tell(error)
            print(said_of(written), file=sys.stderr)
            return REJECTED
        except OutputLostError as error:
            tell(error)
            print(said_of(written), file=sys.stderr)
            return FAILED_INSIDE
        except (Stopped, KeyboardInterrupt) as stopped:
            tell(f"stopped. {said_of(written)}")
            from hwsched.cli.verb import INTERRUPTED

            return stopped.status if isinstance(stopped, Stopped) else INTERRUPTED
        except Exception as error:
            told = status_told()
            if told is not None:
                # A library has made something else of the signal on its way.
                tell(f"stopped. {said_of(written)}")
                return told
            return tell_failure(error, verb.name, written)
    return status
