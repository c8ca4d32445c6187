"""`hwsched import catalogue`: takes in a catalogue workbook."""

from __future__ import annotations

import sys

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("file", help="catalogue as .xlsx")
    parser.add_argument(
        "--accept",
        choices=("all", "good-rows"),
        default="all",
        help="all: one refused cell refuses the file; good-rows: parts with a refused cell are left out",
    )


def _run(arguments: argparse.Namespace) -> int:
    from pathlib import Path

    from hwsched.cli.session import opened, print_json, who
    from hwsched.operations.parts.catalogue_import import import_catalogue

    with opened(arguments) as project:
        done = import_catalogue(project, Path(arguments.file), who=who(arguments), accept=arguments.accept)
    if arguments.json:
        print_json(
            {
                "parts": done.parts,
                "added": done.added,
                "changed": done.changed,
                "problems": [problem.describe() for problem in done.problems],
                "change_set": done.changes.number,
            }
        )
    else:
        for problem in done.problems:
            print(f"refused: {problem.describe()}", file=sys.stderr)
        print(f"{done.parts} parts read: {done.added} new, {done.changed} changed")
    return DONE


IMPORT_CATALOGUE = Verb("import catalogue", "Take in a catalogue workbook.", _arguments, _run)
