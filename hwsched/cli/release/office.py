"""`hwsched release office`: takes in how the office's documents look; shows it, writes it out, takes it away."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


class OfficeRecord(TypedDict):
    """What is declared, null where nothing is, and the files that were written."""

    text: str | None
    files: list[str]


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_output, add_project

    add_project(parser)
    parser.add_argument("file", nargs="?", metavar="FILE", help="what is taken in; its pictures lie beside it")
    what = parser.add_mutually_exclusive_group()
    what.add_argument("--example", action="store_true", help="print a file to begin with")
    what.add_argument("--export", action="store_true", help="write what is declared, with its pictures")
    what.add_argument("--clear", action="store_true", help="let documents look as by default")
    add_output(parser, "folder for --export (default: here)", "--to", folder=True)


def _run(arguments: argparse.Namespace) -> int:
    from pathlib import Path

    from hwsched.cli.session import opened, print_json, said, who, wrong_usage
    from hwsched.exchange.release.office_file import EXAMPLE
    from hwsched.operations.release.office import clear_office, office_text, set_office, write_office

    if arguments.file is not None and (arguments.example or arguments.export or arguments.clear):
        return wrong_usage("--example, --export and --clear take no file")
    written: list[Path] = []
    with opened(arguments) as project:
        if arguments.file is not None:
            changes = set_office(project, Path(arguments.file), who=who(arguments))
            said(arguments, f"Taken in; change set {changes.number} written.")
        elif arguments.clear:
            changes = clear_office(project, who=who(arguments))
            said(arguments, f"Documents look as by default; change set {changes.number} written.")
        elif arguments.export:
            written = write_office(project, Path(arguments.output or "."))
            for path in written:
                said(arguments, f"Wrote {path}")
        text = EXAMPLE if arguments.example else office_text(project)
    told: OfficeRecord = {"text": text or None, "files": [str(path) for path in written]}
    print_json(told)
    if arguments.json or arguments.file is not None or arguments.clear or written:
        return DONE
    print(text.rstrip() if text else "Nothing is declared: documents look as by default. --example prints a beginning.")
    return DONE


VERB = Verb(_arguments, _run, result=OfficeRecord)
