"""`hwsched release print`: issues documents and true-size templates."""

from __future__ import annotations

from hwsched.cli.counting import counted
from hwsched.cli.session import Wrote
from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse

    from hwsched.documents.view import ProjectView
    from hwsched.model.project import Project
    from hwsched.values.revision import RevisionThen


class Printed(Wrote):
    """What was printed, and of which openings it was written down that their packets went out."""

    document: str
    issued: list[str]
    held: list[str]
    """Openings whose packets were to go out and did not; the gate says what is missing."""


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.scope import add_scope
    from hwsched.cli.session import add_output, add_project
    from hwsched.documents import LINES

    add_project(parser)
    parser.add_argument(
        "document", choices=[*(line.name for line in LINES), "bound-packets", "templates"], help="what to print"
    )
    add_scope(parser)
    add_output(parser, "folder to write into (default: here); - is standard output, for one file", "--to", folder=True)
    parser.add_argument("--format", action="append", choices=("pdf", "xlsx", "ics"), help="default: all that it has")
    parser.add_argument(
        "--walk", choices=("mark", "surveyed"), help="bound packets: order on each level, by mark or as the survey went"
    )
    parser.add_argument("--issue", action="store_true", help="packets: write down that those that are ready went out")
    parser.add_argument(
        "--with-templates",
        action="store_true",
        help="packets, type sheets: the true-size templates too; each step or strip names their page",
    )
    parser.add_argument(
        "--revision",
        metavar="LETTER",
        help="as it was frozen under this letter, with photos and bench work of then; not with --where or --issue",
    )
    parser.add_argument("--since", metavar="LETTER", help="mark what is otherwise since this revision")
    parser.add_argument(
        "--paper", choices=("letter", "a4", "a5"), default="", help="default: what the office declared, else letter"
    )


def _run(arguments: argparse.Namespace) -> int:
    from contextlib import ExitStack
    from pathlib import Path

    from hwsched.cli.session import (
        goes_to_stream,
        opened,
        print_json,
        progress_bar,
        said,
        who,
        write_through,
        wrong_usage,
    )
    from hwsched.operations.release.issued_documents import TEMPLATES
    from hwsched.operations.release.issued_packets import write_down_packets
    from hwsched.operations.release.printed_set import print_set
    from hwsched.operations.release.printed_view import printed_view
    from hwsched.operations.release.revision_view import revision_view
    from hwsched.operations.release.revisions import read_revision
    from hwsched.writing import scratch_folder

    if arguments.issue and arguments.document not in ("packets", "bound-packets"):
        return wrong_usage("--issue goes with packets")
    if arguments.issue and arguments.revision is not None:
        return wrong_usage("--issue goes with the project as it stands, not with --revision")
    if arguments.walk is not None and arguments.document != "bound-packets":
        return wrong_usage("--walk goes with bound-packets")
    if arguments.with_templates and arguments.document not in ("packets", "bound-packets", "type-sheets"):
        return wrong_usage("--with-templates goes with packets and type sheets")
    streamed = goes_to_stream(arguments.output)
    if streamed and arguments.json:
        return wrong_usage("what is printed and --json would both go to standard output")
    with opened(arguments) as project, ExitStack() as stack:
        view, then = _asked(project, arguments)
        since = None if arguments.since is None else revision_view(read_revision(project, arguments.since))
        folder = stack.enter_context(scratch_folder()) if streamed else Path(arguments.output or ".")
        progress = stack.enter_context(progress_bar("Print", arguments.json or arguments.quiet))
        printed = print_set(
            view,
            {arguments.document: arguments.format} | ({TEMPLATES: ["pdf"]} if arguments.with_templates else {}),
            folder,
            dressed=lambda shown, name: printed_view(project, shown, name, arguments.walk or "mark", then),
            paper=arguments.paper,
            progress=progress,
            since=since,
        )
        if streamed:
            write_through(printed.all_written(), arguments.output)
        issued: list[str] = []
        held: list[str] = []
        # After the files are written: what failed to print must not be down as handed out.
        if arguments.issue and printed.went_out(arguments.document):
            write_down_packets(project, view, who=who(arguments))
            issued = [each.mark for each in view.openings if each.ready]
            held = [each.mark for each in view.openings if not each.ready]
        files = [] if streamed else printed.all_written()
    told: Printed = {
        "files": [str(path) for path in files], "document": arguments.document, "issued": issued, "held": held,
    }  # fmt: skip
    print_json(told)
    if streamed:
        pass
    elif len(files) > 4:
        said(arguments, f"Wrote {counted(len(files), 'file')} into {files[0].parent}")
    else:
        for path in files:
            said(arguments, f"Wrote {path}")
    if arguments.issue:
        said(arguments, f"Written down as given out: {len(issued)} packets")
        if held:
            said(arguments, f"Held, see hwsched release gate: {', '.join(held)}")
    return DONE


def _asked(project: Project, arguments: argparse.Namespace) -> tuple[ProjectView, RevisionThen | None]:
    """Return what is printed: the project as it stands, or a revision; each of the openings that are asked for."""
    import sys

    from hwsched.cli.scope import openings_asked, scope_asked
    from hwsched.operations.release.printed_view import revision_asked
    from hwsched.operations.release.project_view import project_view

    if arguments.revision is None:
        return project_view(project, openings_asked(project, arguments)), None
    view, then, notes = revision_asked(project, arguments.revision, scope_asked(arguments))
    for note in notes:
        print(f"hwsched: {note}", file=sys.stderr)
    return view, then


VERB = Verb(_arguments, _run, result=Printed)
