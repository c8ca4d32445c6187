"""`hwsched project batch`: runs many verbs as one step, from JSON lines or a CSV."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, TypedDict

from hwsched.cli.verb import DONE, Verb

if TYPE_CHECKING:
    import argparse


class Done(TypedDict):
    """A line of the batch with what its verb answered."""

    line: int
    verb: str
    result: Any


class Result(TypedDict):
    """What the whole did."""

    dry_run: bool
    command_count: int
    commands: list[Done]


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument(
        "file",
        help='JSON lines such as {"verb": "survey edit", "mark": "M101", "where": "leaf", "fact": "thickness_mm", '
        '"value": "1 3/4 in"}, or a .csv with a column for each argument; - reads JSON lines from standard input',
    )
    parser.add_argument("--verb", default="", metavar="'ROOM VERB'", help="verb of the lines that name none")
    parser.add_argument("--dry-run", action="store_true", help="do it all, tell what comes of it, and keep nothing")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.batching import LineRefusedError, read_commands, run_commands
    from hwsched.cli.session import opened, print_json, said, who

    name, text = _read(arguments.file)
    if text is None:
        raise LineRefusedError(name, 1, "is not UTF-8 text")
    commands = read_commands(text, name, arguments.project, arguments.who, arguments.verb)
    with opened(arguments) as project:
        told = run_commands(project, commands, name, who=who(arguments), trial=arguments.dry_run)
    if arguments.json:
        print_json({"dry_run": arguments.dry_run, "command_count": len(told), "commands": told})
    else:
        said(arguments, f"{len(told)} commands{' tried, nothing kept' if arguments.dry_run else ' done as one step'}.")
    return DONE


def _read(file: str) -> tuple[str, str | None]:
    import sys
    from pathlib import Path

    from hwsched.model.errors import ValueRefusedError

    try:
        content = sys.stdin.buffer.read() if file == "-" else Path(file).read_bytes()
    except OSError as error:
        raise ValueRefusedError("file", f"{file} cannot be read: {error.strerror or error}") from error
    try:
        return ("standard input" if file == "-" else Path(file).name), content.decode("utf-8-sig")
    except UnicodeDecodeError:
        return Path(file).name, None


VERB = Verb(_arguments, _run, result=Result)
