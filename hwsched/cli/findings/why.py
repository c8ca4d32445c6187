"""`hwsched findings why`: the chain of facts, rules and numbers behind a part, place, hole or finding."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


class ReasonRecord(TypedDict):
    """One step of a chain, with what it stands on."""

    text: str
    under: list[str]


class WhyRecord(TypedDict):
    """The chain of one thing; lock_point null: of the opening, or of its only lock point."""

    about: str
    lock_point: str | None
    headline: str
    reasons: list[ReasonRecord]


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("mark", help="the opening")
    parser.add_argument("role", nargs="?", help="a role such as unit, or: place, holes, a rule; all without it")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, print_json
    from hwsched.operations.findings.why import as_lines, why

    with opened(arguments) as project:
        told = why(project, arguments.mark, arguments.role)
    chains: list[WhyRecord] = [
        {
            "about": each.about,
            "lock_point": each.point or None,
            "headline": each.headline,
            "reasons": [{"text": reason.text, "under": list(reason.under)} for reason in each.reasons],
        }
        for each in told
    ]
    print_json(chains)
    if arguments.json:
        return DONE
    for line in as_lines(told):
        print(line)
    return DONE


VERB = Verb(_arguments, _run, result=list[WhyRecord])
