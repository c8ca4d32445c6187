"""`hwsched release print`: issues documents and true-size templates."""

from __future__ import annotations

from hwsched.cli.session import Wrote
from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


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
    parser.add_argument("--since", metavar="LETTER", help="mark what is otherwise since this revision")
    parser.add_argument(
        "--paper", choices=("letter", "a4", "a5"), default="", help="default: what the office declared, else letter"
    )


def _run(arguments: argparse.Namespace) -> int:
    from contextlib import ExitStack
    from pathlib import Path

    from hwsched.cli.scope import openings_asked
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
    from hwsched.operations.release.issued_documents import issue_by_name
    from hwsched.operations.release.issued_packets import write_down_packets
    from hwsched.operations.release.issued_templates import issue_templates_first
    from hwsched.operations.release.printed_view import printed_view
    from hwsched.operations.release.project_view import project_view
    from hwsched.operations.release.revision_view import revision_view
    from hwsched.operations.release.revisions import read_revision
    from hwsched.writing import scratch_folder

    if arguments.issue and arguments.document not in ("packets", "bound-packets"):
        return wrong_usage("--issue goes with packets")
    if arguments.walk is not None and arguments.document != "bound-packets":
        return wrong_usage("--walk goes with bound-packets")
    if arguments.with_templates and arguments.document not in ("packets", "bound-packets", "type-sheets"):
        return wrong_usage("--with-templates goes with packets and type sheets")
    with opened(arguments) as project:
        view = project_view(project, openings_asked(project, arguments))
        view = printed_view(project, view, arguments.document, arguments.walk or "mark")
        since = None if arguments.since is None else revision_view(read_revision(project, arguments.since))
    streamed = goes_to_stream(arguments.output)
    if streamed and arguments.json:
        return wrong_usage("what is printed and --json would both go to standard output")
    with ExitStack() as stack:
        folder = stack.enter_context(scratch_folder()) if streamed else Path(arguments.output or ".")
        progress = stack.enter_context(progress_bar("Print", arguments.json or arguments.quiet))
        templates: list[Path] = []
        if arguments.with_templates:
            view, templates = issue_templates_first(view, folder, paper=arguments.paper, progress=progress)
        files = issue_by_name(
            view,
            arguments.document,
            folder,
            arguments.format,
            paper=arguments.paper,
            progress=progress,
            since=since,
        )
        files += templates
        if streamed:
            write_through(files, arguments.output)
            files = []
    # After the files are written: what failed to print must not be down as handed out.
    issued: list[str] = []
    held: list[str] = []
    if arguments.issue:
        with opened(arguments) as project:
            write_down_packets(project, view, who=who(arguments))
        issued = [each.mark for each in view.openings if each.ready]
        held = [each.mark for each in view.openings if not each.ready]
    printed: Printed = {
        "files": [str(path) for path in files], "document": arguments.document, "issued": issued, "held": held,
    }  # fmt: skip
    print_json(printed)
    if streamed:
        pass
    elif len(files) > 4:
        said(arguments, f"Wrote {len(files)} files into {files[0].parent}")
    else:
        for path in files:
            said(arguments, f"Wrote {path}")
    if arguments.issue:
        said(arguments, f"Written down as given out: {len(issued)} packets")
        if held:
            said(arguments, f"Held, see hwsched release gate: {', '.join(held)}")
    return DONE


VERB = Verb(_arguments, _run, result=Printed)
