"""`hwsched survey-form`: writes a blank survey workbook for the surveyor."""

from __future__ import annotations

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.quantities import BARE_UNITS

    parser.add_argument("file", help="workbook to write, ending .xlsx")
    parser.add_argument("--bare-unit", choices=BARE_UNITS, default="in", help="unit that the form asks for")
    parser.add_argument("--json", action="store_true", help="print JSON for machines")


def _run(arguments: argparse.Namespace) -> int:
    from pathlib import Path

    from hwsched.cli.session import print_json
    from hwsched.exchange.survey_form import write_survey_form

    write_survey_form(Path(arguments.file), bare_unit=arguments.bare_unit)
    if arguments.json:
        print_json({"file": arguments.file})
    else:
        print(f"Wrote {arguments.file}")
    return DONE


SURVEY_FORM = Verb("survey-form", "Write a blank survey workbook for the surveyor.", _arguments, _run)
