"""`hwsched survey origin`: tells of each fact of an opening the file, sheet, cell, delivery and person."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse

    from hwsched.operations.survey.origins import FactOrigin


class Origin(TypedDict):
    """A known fact with where it comes from; delivery, file, sheet, row, cell: null where it was set by hand."""

    where: str
    fact: str
    value: str | float | bool | None
    delivery: int | None
    file: str | None
    sheet: str | None
    row: int | None
    cell: str | None
    person: str
    at: str
    step: int


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("mark", help="the opening")
    parser.add_argument("facts", nargs="*", metavar="FACT", help="such as hand or thickness_mm (default: all known)")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, print_json
    from hwsched.operations.opening.named_openings import openings_of_marks
    from hwsched.operations.survey.origins import origins

    with opened(arguments) as project:
        found = origins(project, openings_of_marks(project, [arguments.mark])[0])
    if arguments.facts:
        found = [each for each in found if each.fact in arguments.facts]
    print_json([_row(each) for each in found])
    if not arguments.json:
        for each in found:
            print(f"{each.where}, {each.label}: {each.shown} ({each.said})")
        if not found:
            print("No such fact is known.")
    return DONE


def _row(each: FactOrigin) -> Origin:
    return {
        "where": each.where,
        "fact": each.fact,
        "value": each.value,
        "delivery": each.delivery,
        "file": each.file or None,
        "sheet": each.sheet or None,
        "row": each.row,
        "cell": each.cell or None,
        "person": each.person,
        "at": each.at,
        "step": each.step,
    }


VERB = Verb(_arguments, _run, result=list[Origin])
