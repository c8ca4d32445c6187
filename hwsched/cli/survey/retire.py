"""`hwsched survey retire`: openings that the building has no more; they rest with their history."""

from __future__ import annotations

from hwsched.cli.session import Step
from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("marks", nargs="+", metavar="MARK", help="openings that the building has no more")
    parser.add_argument("--why", default="", metavar="REASON", help="what is read beside them, such as 'walled up'")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, step_of, tell_step, who
    from hwsched.operations.opening.named_openings import openings_of_marks
    from hwsched.operations.survey.retiring import retire_openings

    with opened(arguments) as project:
        ids = openings_of_marks(project, arguments.marks)
        changes = retire_openings(project, ids, who=who(arguments), why=arguments.why)
        touched = step_of(project, changes)
    return tell_step(arguments, "Retired", changes, touched)


VERB = Verb(_arguments, _run, result=Step, in_batch=True)
