"""`hwsched survey remove`: removes an opening with all that belongs to it, a leaf, or an existing item."""

from __future__ import annotations

from hwsched.cli.session import Step
from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("mark", help="the opening")
    parser.add_argument(
        "where", nargs="?", default="opening", help="opening, leaf:inactive, lock, item:2 (default: opening)"
    )


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, tell_step, who
    from hwsched.operations.opening.named_openings import marks_of, openings_of_marks, row_of
    from hwsched.operations.survey.editing import remove

    with opened(arguments) as project:
        entity, row = row_of(project, arguments.mark, arguments.where)
        touched: Step = {"marks": marks_of(project, openings_of_marks(project, [arguments.mark]))}
        changes = remove(project, entity, row, who=who(arguments))
    return tell_step(arguments, "Removed", changes, touched)


VERB = Verb(_arguments, _run, result=Step, in_batch=True)
