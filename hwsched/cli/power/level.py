"""`hwsched power level`: says how high the floor of a level lies."""

from __future__ import annotations

from hwsched.cli.session import Step
from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("building")
    parser.add_argument("level")
    parser.add_argument("height", type=float, metavar="M", help="of its floor over the building's zero")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, step_of, tell_step, who
    from hwsched.operations.power.connecting import set_level_height

    with opened(arguments) as project:
        changes = set_level_height(project, arguments.building, arguments.level, arguments.height, who=who(arguments))
        return tell_step(arguments, "Set", changes, step_of(project, changes))


VERB = Verb(_arguments, _run, result=Step, in_batch=True)
