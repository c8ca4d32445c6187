"""`hwsched parts export`: writes the catalogue as a workbook that can be edited and taken in again."""

from __future__ import annotations

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("file", help="workbook to write, ending .xlsx; - is standard output")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, output_file, tell_wrote
    from hwsched.operations.parts.catalogue_export import export_catalogue

    with opened(arguments) as project, output_file(arguments.file, ".xlsx") as path:
        parts = export_catalogue(project, path)
    tell_wrote(arguments, {"parts": parts}, f": {parts} parts")
    return DONE


VERB = Verb(_arguments, _run)
