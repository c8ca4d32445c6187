"""`hwsched survey restore`: brings retired openings back with all that was known and decided of them."""

from __future__ import annotations

from hwsched.cli.session import Step
from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument(
        "marks", nargs="+", metavar="MARK", help="retired openings; survey list PROJECT retired names them"
    )


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, step_of, tell_step, who
    from hwsched.operations.survey.retiring import restore_openings, retired_of_marks

    with opened(arguments) as project:
        changes = restore_openings(project, retired_of_marks(project, arguments.marks), who=who(arguments))
        touched = step_of(project, changes)
    return tell_step(arguments, "Brought back", changes, touched)


VERB = Verb(_arguments, _run, result=Step, in_batch=True)
