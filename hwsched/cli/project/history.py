"""`hwsched project history`: lists the change sets of the journal."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse

    from hwsched.model.journal.history import ChangeSetInfo
    from hwsched.operations.opening.past import PastStep


class Fact(TypedDict):
    """A fact that a step changed, as the project shows it."""

    where: str
    fact: str
    before: str
    after: str


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
    facts: list[Fact]
    """What it changed of the opening that was asked about; empty where none was."""


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument(
        "--opening", metavar="MARK", help="only what touched this opening, with each fact before and after"
    )
    parser.add_argument("--last", type=int, metavar="N", help="only the last N")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, print_json
    from hwsched.model.time_zone import second_of
    from hwsched.operations.opening.named_openings import openings_of_marks
    from hwsched.operations.opening.past import past_of
    from hwsched.operations.project.history import history
    from hwsched.operations.step_titles import titled

    past: dict[int, PastStep] = {}
    with opened(arguments) as project:
        steps = history(project)
        if arguments.opening:
            opening = openings_of_marks(project, [arguments.opening])[0]
            past = {each.number: each for each in past_of(project, opening)}
            steps = [each for each in steps if each.number in past]
    if arguments.last:
        steps = steps[-arguments.last :]
    print_json([_step(step, past.get(step.number)) for step in steps])
    if not arguments.json:
        for step in steps:
            undone = " (taken back)" if step.undone else ""
            print(f"{step.number:>5}  {second_of(step.when)}  {step.who:<16} {titled(step.summary)}{undone}")
            for fact in past[step.number].facts if past else ():
                name = f"{fact.where}: {fact.label}" if fact.label else fact.where
                print(f"{'':>7}{name}: {fact.before} -> {fact.after}")
    return DONE


def _step(held: ChangeSetInfo, past: PastStep | None) -> Step:
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
        "facts": [
            {"where": each.where, "fact": each.label, "before": each.before, "after": each.after}
            for each in (past.facts if past is not None else ())
        ],
    }


VERB = Verb(_arguments, _run, result=list[Step])
