"""`hwsched survey field`: defines a field of the project's own; a survey's column of that name is then taken in."""

from __future__ import annotations

from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("entity", choices=("opening", "existing_item", "part"), help="what has the field")
    parser.add_argument("name", help="letters, digits, underscores")
    parser.add_argument("label", nargs="?", help="header in sheets and forms")
    parser.add_argument("--remove", action="store_true", help="take the field away, with its values")
    parser.add_argument(
        "--kind", default="text", choices=("text", "length", "number", "integer", "choice", "flag", "date")
    )
    parser.add_argument("--choice", action="append", default=[], help="a word of a choice; repeated")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, tell_step, who
    from hwsched.operations.survey.own_fields import define_field, remove_field

    with opened(arguments) as project:
        if arguments.remove:
            removed = remove_field(project, arguments.entity, arguments.name, who=who(arguments))
            return tell_step(arguments, "Removed", removed)
        changes = define_field(
            project,
            arguments.entity,
            arguments.name,
            arguments.label or arguments.name,
            arguments.kind,
            who=who(arguments),
            choices=tuple(arguments.choice),
        )
    return tell_step(arguments, "Defined", changes)


VERB = Verb(_arguments, _run, in_batch=True)
