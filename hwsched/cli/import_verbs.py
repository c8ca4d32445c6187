"""`hwsched import ...`: a verb for every format of `hwsched.operations.imports` that asks nothing."""

from __future__ import annotations

import sys
from functools import partial

from hwsched.cli.verb import DONE, Verb
from hwsched.operations.imports import IMPORTS, ImportFormat

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(of: ImportFormat, parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("file", help=of.what)
    if of.leaves_out:
        parser.add_argument(
            "--accept",
            choices=("all", "good-rows"),
            default="all",
            help=f"all: one refused cell refuses the file; good-rows: {of.leaves_out} with a refused cell are left out",
        )


def _run(of: ImportFormat, arguments: argparse.Namespace) -> int:
    from pathlib import Path

    from hwsched.cli.session import opened, print_json, who

    accept = arguments.accept if of.leaves_out else "all"
    with opened(arguments) as project:
        taken = of.take_in(project, Path(arguments.file), who=who(arguments), accept=accept)
    if arguments.json:
        problems = {"problems": [each.describe() for each in taken.problems]} if of.leaves_out else {}
        print_json({**taken.counts, **problems, "change_set": taken.changes.number})
        return DONE
    for problem in taken.problems:
        print(f"refused: {problem.describe()}", file=sys.stderr)
    print(taken.said)
    return DONE


IMPORT_VERBS = tuple(
    Verb(f"import {each.name}", each.title, partial(_arguments, each), partial(_run, each))
    for each in IMPORTS
    if not each.asks
)
