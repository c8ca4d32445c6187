"""Parsing the words behind a verb: its own arguments, where its project is said, and what every verb takes."""

from __future__ import annotations

import argparse
import os
from typing import TYPE_CHECKING, Any, Final, NoReturn

from hwsched.cli import ROOMS
from hwsched.cli.answering import named, print_value, schema_of
from hwsched.cli.contents import DESCRIPTION
from hwsched.cli.verb import EPILOG

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from hwsched.cli.contents import Entry
    from hwsched.cli.verb import Verb

PROJECT_VARIABLE: Final = "HWSCHED_PROJECT"


class UsageError(Exception):
    """The words are no command line of the verb; its message says why, ``usage`` how it is called."""

    def __init__(self, usage: str, message: str) -> None:
        super().__init__(message)
        self.usage, self.message = usage, message


class Parser(argparse.ArgumentParser):
    """A parser that raises what it would print, so that a machine can be told as well."""

    def error(self, message: str) -> NoReturn:
        """Raise the refusal of the words."""
        raise UsageError(self.format_usage(), message)


class _Schema(argparse.Action):
    """Prints the schema of a verb's answer: like --help, it needs nothing else."""

    def __init__(self, *, result: object, **told: Any) -> None:
        super().__init__(nargs=0, **told)
        self._of = result

    def __call__(self, parser: argparse.ArgumentParser, *_: object, **__: object) -> None:
        print_value(schema_of(parser.prog, named(self._of)))
        parser.exit()


def parser_of(entry: Entry, verb: Verb) -> Parser:
    """Return the parser of a verb, with what every verb takes."""
    # No abbreviations: one that works today would mean another option when that is added.
    parser = Parser(
        prog=f"hwsched {entry.spelling}",
        description=entry.summary,
        epilog=EPILOG,
        add_help=not verb.own_help,
        allow_abbrev=False,
    )
    fill(parser, verb)
    return parser


def fill(parser: argparse.ArgumentParser, verb: Verb) -> None:
    """Add a verb's arguments to a parser, and what every verb takes."""
    verb.arguments(parser)
    if _project_of(parser) is not None:
        parser.add_argument(
            "-p", "--project", dest="project_elsewhere", metavar="PROJECT",
            help=f"the project, in place of the word behind the verb (without either: {PROJECT_VARIABLE})",
        )  # fmt: skip
    if any(action.dest == "json" for action in parser._actions):
        if not verb.lines:
            parser.add_argument(
                "--schema",
                action=_Schema,
                result=verb.result,
                help="print the JSON Schema of what --json prints, and end",
            )
    else:
        parser.set_defaults(json=False)
    loudness = parser.add_mutually_exclusive_group()
    loudness.add_argument("-v", "--verbose", action="store_true", help="show on the screen what goes into the log")
    loudness.add_argument("-q", "--quiet", action="store_true", help="show only results and errors")


def tree(wanted: Callable[[Entry], bool]) -> argparse.ArgumentParser:
    """Return one parser of all rooms and verbs; only the wanted verbs are loaded, and have their arguments."""
    root = argparse.ArgumentParser(prog="hwsched", description=DESCRIPTION, epilog=EPILOG)
    rooms = root.add_subparsers(metavar="ROOM", title="rooms")
    for room in ROOMS:
        verbs = rooms.add_parser(room.name, help=room.about).add_subparsers(metavar="VERB", title="verbs")
        for entry in room.entries:
            verb = entry.load() if wanted(entry) else None
            parser = verbs.add_parser(
                entry.name, help=entry.summary, description=entry.summary, add_help=not (verb and verb.own_help)
            )
            if verb is not None:
                fill(parser, verb)
    return root


def parsed(entry: Entry, words: Sequence[str], *, earlier: str = "") -> tuple[Verb, argparse.Namespace]:
    """Load a verb and parse the words behind it.

    Parameters
    ----------
    entry : Entry
        The verb.
    words : sequence of str
        Behind it.
    earlier : str
        The earlier spelling by which it was called: then the project may stand behind another word.

    Raises
    ------
    UsageError
        For words that are no command line of it.
    SystemExit
        After its help.
    """
    verb = entry.load()
    parser = parser_of(entry, verb)
    if _project_of(parser) is not None:
        words = _with_project_first(list(words), anywhere=bool(earlier))
    # Options may stand between the project and the rest, as people type them.
    return verb, parser.parse_intermixed_args(list(words))


def _project_of(parser: argparse.ArgumentParser) -> argparse.Action | None:
    return next((each for each in parser._actions if each.dest == "project" and not each.option_strings), None)


def _with_project_first(words: list[str], *, anywhere: bool) -> list[str]:
    """Bring the project to the front, from where it is said: by option, as a word, by the environment."""
    for place, word in enumerate(words):
        if word == "--":
            break
        if word in ("-p", "--project") and place + 1 < len(words):
            return [words[place + 1], *words[:place], *words[place + 2 :]]
        if word.startswith("--project="):
            return [word.partition("=")[2], *words[:place], *words[place + 1 :]]
    named = [place for place, word in enumerate(words) if _is_project(word)]
    if anywhere and named and named[0] != 0:
        return [words[named[0]], *words[: named[0]], *words[named[0] + 1 :]]
    found = os.environ.get(PROJECT_VARIABLE, "")
    return [found, *words] if found and not named else words


def _is_project(word: str) -> bool:
    from hwsched.model.file.schema import SUFFIX

    return word.casefold().endswith(SUFFIX) or word.startswith(
        ("postgresql://", "postgresql+psycopg://", "postgres://")
    )


def hint(entry: Entry, earlier: str) -> str:
    """Say how a verb is spelled now that was called by an earlier spelling."""
    return f"hwsched: '{earlier}' is spelled '{entry.spelling}' now; the earlier spelling goes with the next version"
