"""`hwsched parts successors`: every opening that uses a superseded part, with its successor in its place."""

from __future__ import annotations

from hwsched.cli.counting import counted
from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.opening.what_if import differences_json, print_differences
    from hwsched.cli.session import opened, print_json
    from hwsched.operations.opening.what_if import successors

    with opened(arguments) as project:
        found = successors(project)
    print_json(differences_json(found))
    if arguments.json:
        return DONE
    print_differences(found)
    lost = sum(each.after != "fits" or bool(each.why) for each in found)
    print(
        f"{counted(len(found), 'opening uses', 'openings use')} a superseded part; "
        f"at {lost} of them the successor does not fit."
    )
    return DONE


VERB = Verb(_arguments, _run, result="hwsched.cli.opening.shapes:Successors")
