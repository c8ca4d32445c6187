"""`hwsched parts edit`: changes one part of the catalogue, or shows which openings that would change."""

from __future__ import annotations

from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.parts.editing import add_facts
    from hwsched.cli.session import add_dry_run, add_project

    add_project(parser)
    parser.add_argument("number", help="the part")
    add_facts(parser)
    add_dry_run(parser, "only show which openings would be different")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.parts.editing import edit, typed
    from hwsched.cli.session import wrong_usage
    from hwsched.operations.parts.part_form import PartEdit

    facts = typed(arguments)
    if not facts:
        return wrong_usage("say what to change, such as list_price=84.50")
    return edit(arguments, PartEdit(arguments.number, facts), "Edited")


VERB = Verb(_arguments, _run, result="hwsched.cli.parts.shapes:EditedPart", in_batch=True)
