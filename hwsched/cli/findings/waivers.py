"""`hwsched findings waivers`: all waivers with person, reason and last day."""

from __future__ import annotations

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, print_json
    from hwsched.operations.findings.waivers import waivers_with_marks

    with opened(arguments) as project:
        found = waivers_with_marks(project)
    rows = [
        {
            "rule": each.rule,
            "about": each.about,
            "scope": each.scope,
            "mark": mark,
            "person": each.person,
            "reason": each.reason,
            "given_on": each.given_on.isoformat(),
            "until": each.until.isoformat() if each.until else None,
        }
        for each, mark in found
    ]
    if arguments.json:
        print_json(rows)
        return DONE
    for each, mark in found:
        print(f"{mark or 'project'}: {each.rule} {each.about} ({each.scope}): {each.words}")
    if not rows:
        print("No waiver is given.")
    return DONE


VERB = Verb(_arguments, _run)
