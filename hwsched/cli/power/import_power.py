"""`hwsched import power`: takes in a power workbook."""

from __future__ import annotations

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("file", help="power workbook as .xlsx: sheets Levels, Places, Supplies, Circuits, Runs, Routes")


def _run(arguments: argparse.Namespace) -> int:
    from pathlib import Path

    from hwsched.cli.session import opened, print_json, who
    from hwsched.operations.power.power_import import import_power

    with opened(arguments) as project:
        done = import_power(project, Path(arguments.file), who=who(arguments))
    if arguments.json:
        print_json({"rows": dict(done.rows), "change_set": done.changes.number})
    else:
        print("Read " + ", ".join(f"{count} {name}" for name, count in done.rows.items()))
    return DONE


IMPORT_POWER = Verb("import power", "Take in a power workbook.", _arguments, _run)
