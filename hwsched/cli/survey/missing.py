"""`hwsched survey missing`: facts that are missing, most useful first; and the return-visit sheet."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


class Fact(TypedDict):
    """A fact that nobody knows yet."""

    fact: str
    label: str
    unblocked_marks: list[str]
    needing_marks: list[str]


class Missing(TypedDict):
    """What is missing, and the files of the return visit."""

    facts: list[Fact]
    files: list[str]


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.scope import add_scope
    from hwsched.cli.session import add_output, add_project

    add_project(parser)
    add_scope(parser)
    add_output(parser, "write the return-visit sheet and a workbook a building into it", "--to", folder=True)
    parser.add_argument("--paper", choices=("letter", "a4"), default="letter")


def _run(arguments: argparse.Namespace) -> int:
    from pathlib import Path

    from hwsched.cli.scope import openings_asked
    from hwsched.cli.session import opened, print_json, said
    from hwsched.operations.survey.return_visit import missing_and_visit

    folder = Path(arguments.output) if arguments.output else None
    with opened(arguments) as project:
        found, files = missing_and_visit(project, folder, ids=openings_asked(project, arguments), paper=arguments.paper)
    facts: list[Fact] = [
        {
            "fact": each.fact,
            "label": each.label,
            "unblocked_marks": list(each.alone),
            "needing_marks": list(each.needed),
        }
        for each in found
    ]
    result: Missing = {"facts": facts, "files": [str(path) for path in files]}
    print_json(result)
    if arguments.json:
        return DONE
    for fact in found:
        print(f"{fact.label}: unblocks {len(fact.alone)}, needed by {len(fact.needed)}: {', '.join(fact.needed[:10])}")
    if not found:
        print("Nothing is missing.")
    for path in files:
        said(arguments, f"Wrote {path}")
    return DONE


VERB = Verb(_arguments, _run, result=Missing)
