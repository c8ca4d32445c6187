"""`hwsched release attach`: attaches a file to an opening, a part or another thing."""

from __future__ import annotations

from hwsched.cli.session import Step
from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


class AttachedFile(Step):
    """The new attachment, by which it is taken off again."""

    id: str


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument(
        "words",
        nargs="+",
        metavar="THING FILE",
        help="a mark; a mark and leaf, lock, item:2 or point:2; part NUMBER, supply NAME or set NAME; then the file",
    )
    parser.add_argument("--title", default="", help="what people should call it")
    parser.add_argument("--note", default="", help="what else should be known of it")


def _run(arguments: argparse.Namespace) -> int:
    from pathlib import Path

    from hwsched.cli.session import opened, step_of, tell_step, who, wrong_usage
    from hwsched.operations.release.attachments import attach
    from hwsched.operations.survey.things import thing_named

    *words, file = arguments.words
    if not words:
        return wrong_usage("name a thing and a file, such as M016 photograph.jpg")
    with opened(arguments) as project:
        thing = thing_named(project, words)
        changes = attach(
            project,
            thing.entity,
            thing.row_id,
            Path(file),
            who=who(arguments),
            title=arguments.title,
            note=arguments.note,
        )
        attached: AttachedFile = {**step_of(project, changes), "id": changes.added[0]}
    return tell_step(arguments, "Attached", changes, attached)


VERB = Verb(_arguments, _run, result=AttachedFile, in_batch=True)
