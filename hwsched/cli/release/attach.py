"""`hwsched release attach`: attaches a file to an opening, a part or another thing."""

from __future__ import annotations

from hwsched.cli.verb import WRONG_USAGE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


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
    import sys
    from pathlib import Path

    from hwsched.cli.session import opened, tell_step, who
    from hwsched.operations.release.attachments import attach
    from hwsched.operations.survey.things import thing_named

    *words, file = arguments.words
    if not words:
        print("hwsched attach: name a thing and a file, such as M016 photograph.jpg", file=sys.stderr)
        return WRONG_USAGE
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
    return tell_step(arguments, "Attached", changes)


VERB = Verb(_arguments, _run, in_batch=True)
