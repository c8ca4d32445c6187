"""`hwsched survey form`: writes the surveyor's workbook or paper sheets, blank or filled for a return visit."""

from __future__ import annotations

from hwsched.cli.counting import counted
from hwsched.cli.session import Wrote
from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


class Form(Wrote):
    """The workbook or the sheets, and how many openings stand in it."""

    opening_count: int


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.choices import BARE_UNITS
    from hwsched.cli.scope import add_scope
    from hwsched.cli.session import add_output

    parser.add_argument(
        "project",
        nargs="?",
        help="with the fields of this project's own; needed for a choice of openings; left out: a blank form",
    )
    add_output(parser, "to write: a workbook, ending .xlsx, or paper sheets, ending .pdf", "file")
    add_scope(parser)
    parser.add_argument(
        "--bare-unit", choices=BARE_UNITS, help="unit that the form asks for (default: the project's, or in)"
    )
    parser.add_argument("--paper", choices=("letter", "a4"), default="letter", help="of the sheets")
    parser.add_argument("--json", action="store_true", help="print JSON for machines")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.scope import is_scoped, openings_asked
    from hwsched.cli.session import opened, output_file, output_wanted, tell_wrote, wrong_usage
    from hwsched.operations.survey.survey_forms import write_blank_form, write_form

    if arguments.project and not arguments.output and not arguments.file:
        # Before the project stood first, the one word was the file.
        arguments.project, arguments.output = None, arguments.project
    wanted = output_wanted(arguments)
    if wanted:
        return wrong_usage(wanted)
    if is_scoped(arguments) and not arguments.project:
        return wrong_usage("a choice of openings needs a project")
    filled = 0
    with output_file(arguments.output, ".xlsx") as path:
        if arguments.project:
            with opened(arguments) as project:
                ids = openings_asked(project, arguments)
                filled = write_form(project, path, ids=ids, bare_unit=arguments.bare_unit, paper=arguments.paper)
        else:
            write_blank_form(path, bare_unit=arguments.bare_unit or "in", paper=arguments.paper)
    tell_wrote(arguments, {"opening_count": filled}, f" with {counted(filled, 'opening')} filled in" if filled else "")
    return DONE


VERB = Verb(_arguments, _run, result=Form)
