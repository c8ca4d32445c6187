"""`hwsched survey edit`: sets one surveyed fact of an opening."""

from __future__ import annotations

from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("mark", help="the opening")
    parser.add_argument("where", help="opening, leaf, leaf:inactive, lock, or item:2 for the second existing item")
    parser.add_argument("fact", help="such as hand, thickness_mm, or a field of the project's own")
    parser.add_argument("value", help="as typed in a survey; empty text means unknown")
    parser.add_argument(
        "--was",
        metavar="OLD",
        help="write only where the fact holds this (an equal length or word; empty text means unknown), or the value "
        "already; else exit status 3 with what it holds, who set it and when",
    )


def _run(arguments: argparse.Namespace) -> int:
    from dataclasses import asdict

    from hwsched.cli.session import opened, print_json, tell_step, who
    from hwsched.model.errors import ConflictError
    from hwsched.operations.opening.named_openings import row_of
    from hwsched.operations.survey.typed_values import type_in

    with opened(arguments) as project:
        entity, row = row_of(project, arguments.mark, arguments.where)
        try:
            changes = type_in(
                project, entity, row, arguments.fact, arguments.value, who=who(arguments), was=arguments.was
            )
        except ConflictError as conflict:
            if arguments.json:
                print_json({"conflict": [asdict(clash) for clash in conflict.clashes]})
            raise
    return tell_step(arguments, "Edited", changes)


VERB = Verb(_arguments, _run, in_batch=True)
