"""`hwsched power connect`: puts openings on a circuit, or takes them off."""

from __future__ import annotations

from hwsched.cli.session import Step
from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("circuit", help="SUPPLY/CIRCUIT; a single - takes the openings off their circuits")
    parser.add_argument("marks", nargs="+", metavar="MARK")
    parser.add_argument(
        "--from", dest="begin", default="supply", metavar="NODE", help="junction or mark; default: supply"
    )
    parser.add_argument(
        "--length", type=float, metavar="M", help="of each run, one way; default: measured or estimated"
    )


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, step_of, tell_step, who
    from hwsched.operations.opening.named_openings import openings_of_marks
    from hwsched.operations.power.connecting import connect_openings, disconnect_openings
    from hwsched.operations.power.power_editing import power_row_named

    with opened(arguments) as project:
        openings = openings_of_marks(project, arguments.marks)
        if arguments.circuit == "-":
            changes = disconnect_openings(project, openings, who=who(arguments))
        else:
            circuit = power_row_named(project, arguments.circuit)[1]
            changes = connect_openings(
                project, circuit, openings, who=who(arguments), from_node=arguments.begin, length_m=arguments.length
            )
        return tell_step(arguments, "Connected", changes, step_of(project, changes))


VERB = Verb(_arguments, _run, result=Step, in_batch=True)
