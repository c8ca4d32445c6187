"""`hwsched parts withdraw`: takes a part out of the catalogue; undo brings it back."""

from __future__ import annotations

from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_dry_run, add_project

    add_project(parser)
    parser.add_argument("number", help="the part")
    add_dry_run(parser, "only show which openings would be different")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.parts.editing import edit
    from hwsched.operations.parts.part_form import PartEdit

    return edit(arguments, PartEdit(arguments.number, withdrawn=True), "Withdrawn")


VERB = Verb(_arguments, _run, result="hwsched.cli.parts.shapes:EditedPart", in_batch=True)
