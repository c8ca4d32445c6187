"""`hwsched project history`: lists the change sets of the journal."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse

    from hwsched.model.history import ChangeSetInfo


class Step(TypedDict):
    """A step of the history."""

    number: int
    when: str
    who: str
    verb: str
    summary: str
    kind: str
    target: int | None
    undone: bool
    row_count: int
    uuid: str
    base: int | None
    device: str | None
    session: str | None


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("--last", type=int, metavar="N", help="only the last N")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, print_json
    from hwsched.model.time_zone import second_of
    from hwsched.operations.project.history import history

    with opened(arguments) as project:
        steps = history(project)
    if arguments.last:
        steps = steps[-arguments.last :]
    print_json([_step(step) for step in steps])
    if not arguments.json:
        for step in steps:
            undone = " (taken back)" if step.undone else ""
            print(f"{step.number:>5}  {second_of(step.when)}  {step.who:<16} {step.summary}{undone}")
    return DONE


def _step(held: ChangeSetInfo) -> Step:
    return {
        "number": held.number,
        "when": held.when,
        "who": held.who,
        "verb": held.verb,
        "summary": held.summary,
        "kind": held.kind,
        "target": held.target,
        "undone": held.undone,
        "row_count": held.rows,
        "uuid": held.uuid,
        "base": held.base,
        "device": held.device,
        "session": held.session,
    }


VERB = Verb(_arguments, _run, result=list[Step])
