"""`hwsched power route`: says how long the cable route between an opening and a supply is."""

from __future__ import annotations

from hwsched.cli.session import Step
from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("mark")
    parser.add_argument("supply")
    parser.add_argument("length", nargs="?", type=float, metavar="M", help="measured along the route, one way")
    pinned = parser.add_mutually_exclusive_group()
    pinned.add_argument("--pin", action="store_true", default=None, help="the siting must keep this pair")
    pinned.add_argument("--loose", dest="pin", action="store_false", help="the siting may part this pair")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, step_of, tell_step, who
    from hwsched.operations.opening.named_openings import openings_of_marks
    from hwsched.operations.power.connecting import set_route
    from hwsched.operations.power.power_editing import power_row_named

    with opened(arguments) as project:
        opening = openings_of_marks(project, [arguments.mark])[0]
        supply = power_row_named(project, arguments.supply)[1]
        changes = set_route(
            project, opening, supply, who=who(arguments), length_m=arguments.length, pinned=arguments.pin
        )
        return tell_step(arguments, "Set", changes, step_of(project, changes))


VERB = Verb(_arguments, _run, result=Step, in_batch=True)
