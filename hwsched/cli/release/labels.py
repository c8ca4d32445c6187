"""`hwsched release labels`: a label for the box of each opening, on sheets of labels."""

from __future__ import annotations

from hwsched.cli.session import Wrote
from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


class Labelled(Wrote):
    """What was written, and openings without a label since they may not be picked for."""

    held: list[str]


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.scope import add_scope
    from hwsched.cli.session import add_output, add_project

    add_project(parser)
    add_scope(parser)
    add_output(parser, "folder to write into (default: here)", "--to", folder=True)
    parser.add_argument(
        "--sheet", default="letter-30", metavar="NAME", help="label sheet: paper and labels a sheet, such as a4-21"
    )
    parser.add_argument("--start", type=int, default=1, metavar="N", help="first free label of the first sheet")
    parser.add_argument("--right-mm", type=float, default=0.0, metavar="MM", help="shift all to the right")
    parser.add_argument("--down-mm", type=float, default=0.0, metavar="MM", help="shift all down")


def _run(arguments: argparse.Namespace) -> int:
    from pathlib import Path

    from hwsched.cli.scope import openings_asked
    from hwsched.cli.session import opened, print_json, said
    from hwsched.operations.release.issued_labels import issue_labels
    from hwsched.operations.release.project_view import project_view

    with opened(arguments) as project:
        view = project_view(project, openings_asked(project, arguments))
    files = issue_labels(
        view,
        Path(arguments.output or "."),
        arguments.sheet,
        start=arguments.start,
        shift_mm=(arguments.right_mm, arguments.down_mm),
    )
    held = [each.mark for each in view.openings if not each.ready]
    told: Labelled = {"files": [str(path) for path in files], "held": held}
    print_json(told)
    for path in files:
        said(arguments, f"Wrote {path}")
    if held:
        said(arguments, f"Without a label, see hwsched release gate: {', '.join(held)}")
    return DONE


VERB = Verb(_arguments, _run, result=Labelled)
