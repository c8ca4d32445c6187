"""`hwsched power remove`: takes away a supply, a circuit, or the run that ends at a node."""

from __future__ import annotations

from hwsched.cli.session import Step
from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("name", help="SUPPLY or SUPPLY/CIRCUIT")
    parser.add_argument("--run-to", metavar="NODE", help="only the run of this circuit that ends at a junction or mark")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, step_of, tell_step, who
    from hwsched.operations.power.power_editing import power_row_named, remove_power_row, run_to

    with opened(arguments) as project:
        entity, row_id = power_row_named(project, arguments.name)
        if arguments.run_to:
            entity, row_id = run_to(project, row_id, arguments.run_to)
        changes = remove_power_row(project, entity, row_id, who=who(arguments))
        return tell_step(arguments, "Taken away", changes, step_of(project, changes))


VERB = Verb(_arguments, _run, result=Step, in_batch=True)
