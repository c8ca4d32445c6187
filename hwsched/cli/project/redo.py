"""`hwsched project redo`: do again what the person took back last, or one step of the history that was taken back."""

from __future__ import annotations

from hwsched.cli.session import Step
from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("--step", type=int, metavar="NUMBER", help="any step taken back, by its number in the history")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, step_of, tell_step, who
    from hwsched.operations.project.history import redo, redo_one

    with opened(arguments) as project:
        if arguments.step is None:
            changes = redo(project, who=who(arguments))
        else:
            changes = redo_one(project, arguments.step, who=who(arguments))
        return tell_step(arguments, "Done again", changes, step_of(project, changes))


VERB = Verb(_arguments, _run, result=Step)
