"""`hwsched project history`: lists the change sets of the journal."""

from __future__ import annotations

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("--last", type=int, metavar="N", help="only the last N")


def _run(arguments: argparse.Namespace) -> int:
    from dataclasses import asdict

    from hwsched.cli.session import opened, print_json
    from hwsched.operations.project.history import history

    with opened(arguments) as project:
        steps = history(project)
    if arguments.last:
        steps = steps[-arguments.last :]
    if arguments.json:
        print_json([asdict(step) for step in steps])
    else:
        for step in steps:
            undone = " (taken back)" if step.undone else ""
            print(f"{step.number:>5}  {step.when}  {step.who:<16} {step.summary}{undone}")
    return DONE


VERB = Verb(_arguments, _run)
