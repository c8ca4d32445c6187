"""`hwsched survey-form`: writes the surveyor's workbook, blank or filled for a return visit."""

from __future__ import annotations

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.scope import add_scope
    from hwsched.quantities import BARE_UNITS

    parser.add_argument("file", help="workbook to write, ending .xlsx; - is standard output")
    parser.add_argument("--project", help="with the fields of this project's own; needed for a choice of openings")
    add_scope(parser)
    parser.add_argument(
        "--bare-unit", choices=BARE_UNITS, help="unit that the form asks for (default: the project's, or in)"
    )
    parser.add_argument("--json", action="store_true", help="print JSON for machines")


def _run(arguments: argparse.Namespace) -> int:
    import sys

    from hwsched.cli.scope import is_scoped, openings_asked
    from hwsched.cli.session import opened, output_file, tell_wrote
    from hwsched.cli.verb import WRONG_USAGE
    from hwsched.exchange.survey.form import write_survey_form
    from hwsched.operations.survey.survey_forms import write_form

    filled = 0
    if is_scoped(arguments) and not arguments.project:
        print("hwsched survey-form: a choice of openings needs --project", file=sys.stderr)
        return WRONG_USAGE
    with output_file(arguments.file, ".xlsx") as path:
        if arguments.project:
            with opened(arguments) as project:
                ids = openings_asked(project, arguments)
                filled = write_form(project, path, ids=ids, bare_unit=arguments.bare_unit)
        else:
            write_survey_form(path, bare_unit=arguments.bare_unit or "in")
    tell_wrote(arguments, {"openings": filled}, f" with {filled} openings filled in" if filled else "")
    return DONE


SURVEY_FORM = Verb("survey-form", "Write the surveyor's workbook, blank or for a return visit.", _arguments, _run)
