"""`hwsched export catalogue`: writes the catalogue as a workbook that can be edited and taken in again."""

from __future__ import annotations

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("file", help="workbook to write, ending .xlsx")


def _run(arguments: argparse.Namespace) -> int:
    from pathlib import Path

    from hwsched.cli.session import opened, print_json
    from hwsched.operations.catalogue_export import export_catalogue

    with opened(arguments) as project:
        parts = export_catalogue(project, Path(arguments.file))
    if arguments.json:
        print_json({"file": arguments.file, "parts": parts})
    else:
        print(f"Wrote {arguments.file}: {parts} parts")
    return DONE


EXPORT_CATALOGUE = Verb("export catalogue", "Write the catalogue as a workbook.", _arguments, _run)
