"""`hwsched parts export`: writes the catalogue as a workbook that can be edited and taken in again."""

from __future__ import annotations

from hwsched.cli.counting import counted
from hwsched.cli.session import Wrote
from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


class Exported(Wrote):
    """The workbook that was written."""

    part_count: int


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_output, add_project

    add_project(parser)
    add_output(parser, "workbook to write, ending .xlsx", "file")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, output_file, output_wanted, tell_wrote, wrong_usage
    from hwsched.operations.parts.catalogue_export import export_catalogue

    if lacks := output_wanted(arguments):
        return wrong_usage(lacks)
    with opened(arguments) as project, output_file(arguments.output, ".xlsx") as path:
        parts = export_catalogue(project, path)
    tell_wrote(arguments, {"part_count": parts}, f": {counted(parts, 'part')}")
    return DONE


VERB = Verb(_arguments, _run, result=Exported)
