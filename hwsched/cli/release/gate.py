"""`hwsched release gate`: which openings may be picked for and installed, and what is missing at the others."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


class PassageRecord(TypedDict):
    """Whether an opening may go out; nothing missing where it may."""

    mark: str
    free: bool
    missing: list[str]
    decisions: list[str]
    """Rules whose findings wait for a person who accepts them, as `hwsched finding waive` names them."""


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.scope import add_scope
    from hwsched.cli.session import add_project

    add_project(parser)
    add_scope(parser)


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.scope import openings_asked
    from hwsched.cli.session import opened, print_json
    from hwsched.operations.release.release_gate import gate

    with opened(arguments) as project:
        found = gate(project, openings_asked(project, arguments))
    told: list[PassageRecord] = [
        {"mark": each.mark, "free": each.free, "missing": list(each.missing), "decisions": list(each.decisions)}
        for each in found
    ]
    print_json(told)
    if arguments.json:
        return DONE
    held = [each for each in found if not each.free]
    print(f"{len(found) - len(held)} of {len(found)} openings may be picked for and installed")
    for each in held:
        print(f"{each.mark}: held")
        for lack in each.lacks:
            rule = f" [{lack.rule}]" if lack.decision else ""
            print(f"  {lack.said}{rule}")
    return DONE


VERB = Verb(_arguments, _run, result=list[PassageRecord])
