"""`hwsched project manual`: writes the manual page, made from the declarations of the verbs."""

from __future__ import annotations

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "-o", "--output", default="-", metavar="FILE", help="such as hwsched.1, for man (default: standard output)"
    )


def _run(arguments: argparse.Namespace) -> int:
    from argparse_manpage.manpage import Manpage

    from hwsched import __version__
    from hwsched.cli.parsing import tree
    from hwsched.cli.session import output_file
    from hwsched.writing import replacing

    page = Manpage(
        tree(lambda _entry: True),
        _data={"project_name": "hwsched", "version": __version__, "manual_title": "hwsched", "date": ""},
    )
    # The day on which somebody asks for it is no date of the text.
    page.date = ""
    with output_file(arguments.output, ".1") as path, replacing(path) as partial:
        partial.write_text(str(page), encoding="utf-8")
    return DONE


VERB = Verb(_arguments, _run)
