"""Reads the command line, finds the verb, runs it and turns what can go wrong into messages and exit statuses."""

from __future__ import annotations

import sys

from hwsched.cli import ENTRIES, ROOMS
from hwsched.cli.contents import DESCRIPTION
from hwsched.cli.verb import (
    CANNOT_OPEN,
    DONE,
    FAILED_INSIDE,
    INTERRUPTED,
    NOT_JUDGED,
    REJECTED,
    STATUSES,
    WRONG_USAGE,
)

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse
    from collections.abc import Sequence

    from hwsched.cli.answering import Answer
    from hwsched.cli.contents import Entry, Room
    from hwsched.cli.verb import Verb
    from hwsched.model.journal.written import Written

_LOUDNESS = {"-v": "verbose", "--verbose": "verbose", "-q": "quiet", "--quiet": "quiet"}


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
            return _wrong_usage(words, f"argument {place} is not UTF-8 text: {shown}; rename the file or type it anew")
    # Before room and verb they are accepted too.
    loudness = []
    while words and words[0] in _LOUDNESS:
        loudness.append(words.pop(0))
    entry, rest, earlier = _entry_of(words)
    if entry is None:
        return _overview(words)
    from hwsched.cli.parsing import UsageError, hint, parsed

    try:
        verb, arguments = parsed(entry, [*rest, *loudness], earlier=earlier)
    except SystemExit as stop:
        return stop.code if isinstance(stop.code, int) else WRONG_USAGE
    except UsageError as error:
        print(error.usage, end="", file=sys.stderr)
        return _wrong_usage(words, error.message, entry)
    except Exception as error:
        from hwsched.outside import OutsideError

        if not isinstance(error, OutsideError):
            raise
        # A package that adds rules or part kinds, met as the choices of an argument are listed.
        return _wrong_usage(words, str(error), entry, CANNOT_OPEN)
    if earlier and not arguments.quiet:
        print(hint(entry, earlier), file=sys.stderr)
    if not own_process or not (arguments.verbose or not verb.quick):
        return _answered(entry, verb, arguments)
    import logging

    from hwsched import __version__
    from hwsched.telling.log import start_log

    start_log(verbose=arguments.verbose)
    log = logging.getLogger(__name__)
    log.info(f"{entry.spelling} begins, hwsched {__version__}")
    status = _answered(entry, verb, arguments)
    log.info(f"{entry.spelling} ends with status %d", status)
    return status


def _as_text(word: str) -> str:
    """Return an argument as UTF-8, which is what it is in nearly every locale; as it came where it is not."""
    if word.isascii():
        return word
    import os

    try:
        return os.fsencode(word).decode("utf-8")
    except UnicodeError:
        return word


def _room_of(words: Sequence[str]) -> Room | None:
    return next((room for room in ROOMS if words and room.name == words[0]), None)


def _entry_of(words: Sequence[str]) -> tuple[Entry | None, Sequence[str], str]:
    """Find the verb: its entry, the words behind it, and the earlier spelling where it was called by that."""
    room = _room_of(words)
    if room is not None and len(words) > 1:
        for entry in room.entries:
            if entry.name == words[1]:
                return entry, words[2:], ""
        # A room's name may have been a verb's own: `power PROJECT`. Help is asked of the room.
        if words[1] in ("-h", "--help"):
            return None, (), ""
    # The longer spelling first: `import survey` before any `import`.
    for count in (2, 1):
        spelt = " ".join(words[:count])
        for entry in ENTRIES:
            if spelt in entry.earlier and len(words) >= count and not (room and len(words) == 1):
                return entry, words[count:], spelt
    return None, (), ""


def _overview(words: Sequence[str]) -> int:
    if list(words) == ["--version"]:
        from hwsched import __version__

        print(f"hwsched {__version__}")
        return 0
    room = _room_of(words)
    shown = "\n".join(_room_lines(room) if room else _all_lines())
    if list(words[1:] if room else words) in (["--help"], ["-h"]):
        print(shown)
        return 0
    if room and len(words) > 1:
        return _wrong_usage(words, f"'{room.name}' has no verb '{words[1]}'{_near(words[1], room)}")
    if words and not room:
        return _wrong_usage(words, f"no command '{words[0]}'{_near(words[0])}; see hwsched --help")
    print(shown, file=sys.stderr)
    return WRONG_USAGE


def _all_lines() -> list[str]:
    wide = max(len(each.name) for each in ENTRIES)
    lines = ["usage: hwsched ROOM VERB [PROJECT] ...", "", DESCRIPTION]
    for room in ROOMS:
        lines += [
            "",
            f"{room.name}: {room.about}",
            *(f"  {each.name:<{wide}}  {each.summary}" for each in room.entries),
        ]
    lines += [
        "",
        "hwsched ROOM VERB --help tells the arguments of a verb. The project stands first behind the verb, or is given",
        "by -p PROJECT or in HWSCHED_PROJECT. -v shows the log, -q only results and errors.",
    ]
    lines += ["", "exit status:", *(f"  {status:>3}  {meaning}" for status, meaning in STATUSES)]
    return lines


def _room_lines(room: Room) -> list[str]:
    wide = max(len(each.name) for each in room.entries)
    lines = [f"usage: hwsched {room.name} VERB [PROJECT] ...", "", room.about, ""]
    lines += [f"  {each.name:<{wide}}  {each.summary}" for each in room.entries]
    return [*lines, "", f"hwsched {room.name} VERB --help tells the arguments of a verb."]


def _near(word: str, room: Room | None = None) -> str:
    """Name what may have been meant; in every room that has it."""
    from difflib import get_close_matches

    entries = room.entries if room else ENTRIES
    names = {each.name for each in entries} | (set() if room else {each.name for each in ROOMS})
    near = get_close_matches(word, sorted(names), n=1, cutoff=0.7)
    if not near and room:
        return f"; it has {', '.join(each.name for each in entries)}"
    meant = [
        each.spelling for each in ENTRIES if near and each.name == near[0] and (not room or each.room == room.name)
    ]
    return f"; perhaps hwsched {', hwsched '.join(meant or near)}" if near else ""


def _wrong_usage(words: Sequence[str], message: str, entry: Entry | None = None, status: int = WRONG_USAGE) -> int:
    print(f"hwsched{f' {entry.spelling}' if entry else ''}: {message}", file=sys.stderr)
    # What cannot be parsed cannot say whether a machine reads: the word itself does.
    if "--json" in words:
        from hwsched.cli.answering import add_problem, begin, envelope, print_value

        begun: Answer = begin()
        add_problem(message=message)
        print_value(envelope(begun, status, ()))
    return status


def _answered(entry: Entry, verb: Verb, arguments: argparse.Namespace) -> int:
    """Run a verb, and print the envelope where a machine asked."""
    from hwsched.cli.answering import begin, envelope, print_value

    begun = begin()
    if verb.quick:
        written: Sequence[Written] = ()
        status = _guarded(entry, verb, arguments, written)
    else:
        from hwsched.model.journal.written import noting

        with noting() as written:
            status = _guarded(entry, verb, arguments, written)
    if begun.damaged and status in (DONE, NOT_JUDGED):
        # What was found is found; that nothing was may lie in what is lost.
        status = CANNOT_OPEN
    if arguments.json and not verb.lines:
        try:
            print_value(envelope(begun, status, written))
        except ValueError as error:
            # What is no JSON, such as infinity; nothing of it was printed yet.
            status = _failed(entry, error, written)
            begun.result = None
            print_value(envelope(begun, status, written))
    return status


def _guarded(entry: Entry, verb: Verb, arguments: argparse.Namespace, written: Sequence[Written]) -> int:
    from hwsched.cli.signals import Stopped

    try:
        status = verb.run(arguments)
        sys.stdout.flush()
    except (Stopped, KeyboardInterrupt) as told:
        return _stopped(told.status if isinstance(told, Stopped) else INTERRUPTED, written)
    except Exception as error:
        # What tells of failures is loaded when there is one: a list of stored rows does without.
        return _failed(entry, error, written)
    return status


def _stopped(status: int, written: Sequence[Written]) -> int:
    from hwsched.cli.answering import add_problem
    from hwsched.cli.failing import tell
    from hwsched.operations.outcome import said_of

    add_problem(message="stopped")
    tell(f"stopped. {said_of(written)}")
    return status


def _unnameable(error: Exception) -> str:
    """Say so where a file's name cannot be said to the system in this locale; empty for any other error."""
    from codecs import lookup

    told = sys.getfilesystemencoding()
    if not isinstance(error, UnicodeEncodeError) or lookup(error.encoding) != lookup(told):
        return ""
    letters = error.object[error.start : error.end]
    return (
        f"in this locale ({told}) no file can be named with {letters!r}; set one of UTF-8, such as LC_ALL=C.UTF-8, or "
        "PYTHONUTF8=1"
    )


def _failed(entry: Entry, error: Exception, written: Sequence[Written]) -> int:
    from hwsched.cli.answering import add_error, add_problem
    from hwsched.cli.failing import tell, tell_failure
    from hwsched.cli.signals import status_told
    from hwsched.cli.streams import OutputLostError
    from hwsched.operations.outcome import CLOSED, REFUSED, said_of

    for kinds, status in ((REFUSED, REJECTED), (CLOSED, CANNOT_OPEN), ((OutputLostError,), FAILED_INSIDE)):
        if isinstance(error, kinds):
            tell(error)
            add_error(error)
            if written or status != CANNOT_OPEN:
                print(said_of(written), file=sys.stderr)
            return status
    signalled = status_told()
    if signalled is not None:
        # A library has made something else of the signal on its way.
        return _stopped(signalled, written)
    unnamed = _unnameable(error)
    if unnamed:
        tell(unnamed)
        add_problem(message=unnamed)
        print(said_of(written), file=sys.stderr)
        return REJECTED
    add_problem(message=f"failed inside the program: {type(error).__name__}")
    return tell_failure(error, entry.spelling, written)
