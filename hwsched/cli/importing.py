"""The verb `import` of a room: takes in what `hwsched.operations.imports` has for it and that asks nothing."""

from __future__ import annotations

import sys
from functools import partial
from typing import TYPE_CHECKING, TypedDict

from hwsched.cli.verb import DONE, FINDINGS, Verb
from hwsched.operations.imports import IMPORTS, ImportFormat

if TYPE_CHECKING:
    import argparse
    from pathlib import Path


class Taken(TypedDict):
    """What came in of a file: how much of what, what it touched, sheets not read; rows left out are problems."""

    format: str
    counts: dict[str, int]
    marks: list[str]
    parts: list[str]
    unread: list[str]


def import_verb(room: str) -> Verb:
    """Return the verb that takes in the formats of a room."""
    formats = {each.name: each for each in IMPORTS if each.room == room and not each.asks}
    return Verb(partial(_arguments, formats), partial(_run, formats), result=Taken, in_batch=True)


def _arguments(formats: dict[str, ImportFormat], parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("file", help="; ".join(each.what for each in formats.values()))
    if len(formats) > 1:
        parser.add_argument(
            "--as", dest="format", choices=list(formats), help="what the file holds (default: what its ending says)"
        )
    left_out = " or ".join(each.leaves_out for each in formats.values() if each.leaves_out)
    if left_out:
        parser.add_argument(
            "--accept",
            choices=("all", "good-rows"),
            default="all",
            help=f"all: one refused cell refuses the file; good-rows: {left_out} with a refused cell are left out",
        )


def _run(formats: dict[str, ImportFormat], arguments: argparse.Namespace) -> int:
    from pathlib import Path

    from hwsched.cli.answering import add_input_problem
    from hwsched.cli.session import opened, print_json, said, step_of, who, wrong_usage
    from hwsched.exchange.problems import causes

    path = Path(arguments.file)
    of = _format_of(formats, getattr(arguments, "format", None), path)
    if of is None:
        return wrong_usage(f"{path.name} may be {' or '.join(formats)}: say which with --as")
    accept = arguments.accept if of.leaves_out else "all"
    with opened(arguments) as project:
        taken = of.take_in(project, path, who=who(arguments), accept=accept)
        marks = step_of(project, taken.changes)["marks"]
    for problem in taken.problems:
        add_input_problem(problem)
    for cause in causes(taken.problems):
        print(f"refused: {cause.describe()}", file=sys.stderr)
    result: Taken = {
        "format": of.name,
        "counts": dict(taken.counts),
        "marks": marks,
        "parts": sorted(taken.changes.parts),
        "unread": list(taken.unread),
    }
    print_json(result)
    said(arguments, taken.said)
    return FINDINGS if taken.problems else DONE


def _format_of(formats: dict[str, ImportFormat], named: str | None, path: Path) -> ImportFormat | None:
    if named is not None:
        return formats[named]
    if len(formats) == 1:
        return next(iter(formats.values()))
    fits = [each for each in formats.values() if path.suffix.casefold() in each.endings]
    return fits[0] if len(fits) == 1 else None
