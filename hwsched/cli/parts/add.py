"""`hwsched parts add`: adds a part to the catalogue, of a kind or like another one."""

from __future__ import annotations

from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.parts.editing import add_facts
    from hwsched.cli.session import add_dry_run, add_project

    add_project(parser)
    parser.add_argument("number", help="of the new part")
    parser.add_argument("--kind", default="", help="such as mortise-cylinder; parts list PROJECT kinds lists them")
    parser.add_argument("--like", default="", metavar="NUMBER", help="begin with what is known of this part")
    add_facts(parser)
    add_dry_run(parser, "only show which openings would be different")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.parts.editing import edit, typed
    from hwsched.cli.session import wrong_usage
    from hwsched.operations.parts.part_form import PartEdit

    if bool(arguments.kind) == bool(arguments.like):
        return wrong_usage("say --kind KIND or --like NUMBER, one of them")
    asked = PartEdit(arguments.number, typed(arguments), kind=arguments.kind, like=arguments.like)
    return edit(arguments, asked, "Added")


VERB = Verb(_arguments, _run, result="hwsched.cli.parts.shapes:EditedPart", in_batch=True)
