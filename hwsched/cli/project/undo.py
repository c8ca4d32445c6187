"""`hwsched project undo`: take back the person's last step, or one step of the history that nothing depends on."""

from __future__ import annotations

from hwsched.cli.session import Step
from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("--step", type=int, metavar="NUMBER", help="any step, by its number in the history")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, step_of, tell_step, who
    from hwsched.operations.project.history import undo, undo_one

    with opened(arguments) as project:
        if arguments.step is None:
            changes = undo(project, who=who(arguments))
        else:
            changes = undo_one(project, arguments.step, who=who(arguments))
        return tell_step(arguments, "Taken back", changes, step_of(project, changes))


VERB = Verb(_arguments, _run, result=Step)
