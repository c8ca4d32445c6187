"""`hwsched findings waivers`: all waivers with person, reason and last day."""

from __future__ import annotations

from typing import Literal, TypedDict

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


class WaiverRecord(TypedDict):
    """A waiver; mark null: for a supply, which about names, or for the whole project.

    About null: whatever the findings speak of; until null: no end.
    """

    rule: str
    about: str | None
    scope: Literal["opening", "alike", "supply", "project"]
    mark: str | None
    person: str
    reason: str
    given_on: str
    until: str | None


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, print_json
    from hwsched.operations.findings.waivers import waivers_with_marks

    with opened(arguments) as project:
        found = waivers_with_marks(project)
    rows: list[WaiverRecord] = [
        {
            "rule": each.rule,
            "about": each.about or None,
            "scope": each.scope,
            "mark": mark or None,
            "person": each.person,
            "reason": each.reason,
            "given_on": each.given_on.isoformat(),
            "until": each.until.isoformat() if each.until else None,
        }
        for each, mark in found
    ]
    print_json(rows)
    if arguments.json:
        return DONE
    for each, mark in found:
        print(f"{mark or each.scope}: {each.rule} {each.about} ({each.scope}): {each.words}")
    if not rows:
        print("No waiver is given.")
    return DONE


VERB = Verb(_arguments, _run, result=list[WaiverRecord])
