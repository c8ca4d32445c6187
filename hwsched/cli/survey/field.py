"""`hwsched survey field`: defines a field of the project's own; a survey's column of that name is then taken in."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


class Field(TypedDict):
    """A field, and the openings whose values went with it."""

    entity: str
    name: str
    marks: list[str]


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
    from hwsched.cli.session import opened, step_of, tell_step, who
    from hwsched.operations.survey.own_fields import define_field, remove_field

    with opened(arguments) as project:
        if arguments.remove:
            changes = remove_field(project, arguments.entity, arguments.name, who=who(arguments))
        else:
            changes = define_field(
                project,
                arguments.entity,
                arguments.name,
                arguments.label or arguments.name,
                arguments.kind,
                who=who(arguments),
                choices=tuple(arguments.choice),
            )
        touched: Field = {"entity": arguments.entity, "name": arguments.name, **step_of(project, changes)}
    return tell_step(arguments, "Removed" if arguments.remove else "Defined", changes, touched)


VERB = Verb(_arguments, _run, result=Field, in_batch=True)
