"""`hwsched print`: issues documents and true-size templates."""

from __future__ import annotations

from hwsched.cli.verb import DONE, WRONG_USAGE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.scope import add_scope
    from hwsched.cli.session import add_common
    from hwsched.operations.release.issued_documents import PRINTS

    parser.add_argument("document", choices=[name for name, _, _ in PRINTS], help="what to print")
    parser.add_argument("project", help="project file (.hwsched) or database URL")
    add_common(parser)
    add_scope(parser)
    parser.add_argument("--to", default=".", metavar="DIR", help="folder to write into (default: here)")
    parser.add_argument("--format", action="append", choices=("pdf", "xlsx", "ics"), help="default: all that it has")
    parser.add_argument("--issue", action="store_true", help="packets: write down that those that are ready went out")
    parser.add_argument("--paper", choices=("letter", "a4"), default="letter")


def _run(arguments: argparse.Namespace) -> int:
    import sys
    from pathlib import Path

    from hwsched.cli.scope import openings_asked
    from hwsched.cli.session import opened, print_json, progress_bar, who
    from hwsched.operations.release.issued_documents import issue_by_name
    from hwsched.operations.release.issued_packets import write_down_packets
    from hwsched.operations.release.project_view import project_view

    if arguments.issue and arguments.document != "packets":
        print("hwsched print: --issue goes with packets", file=sys.stderr)
        return WRONG_USAGE
    with opened(arguments) as project:
        view = project_view(project, openings_asked(project, arguments))
    with progress_bar("Print", arguments.json) as progress:
        files = issue_by_name(
            view, arguments.document, Path(arguments.to), arguments.format, paper=arguments.paper, progress=progress
        )
    # After the files are written: what failed to print must not be down as handed out.
    if arguments.issue:
        with opened(arguments) as project:
            write_down_packets(project, view, who=who(arguments))
    if arguments.json:
        print_json([str(path) for path in files])
    elif len(files) > 4:
        print(f"Wrote {len(files)} files into {files[0].parent}")
    else:
        for path in files:
            print(f"Wrote {path}")
    return DONE


PRINT = Verb("print", "Print a document: schedules, lists, packets, true-size templates.", _arguments, _run)
