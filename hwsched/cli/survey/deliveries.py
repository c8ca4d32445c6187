"""`hwsched survey deliveries`: the survey files that were taken in; one is looked at whole, or taken back whole."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse

    from hwsched.operations.survey.deliveries import Delivery


class Delivered(TypedDict):
    """A survey file that was taken in; what it did, row by row, where it is looked at whole."""

    number: int
    file: str
    at: str
    person: str
    step: int
    decided_steps: list[int]
    open_count: int
    counts: dict[str, int]
    columns: dict[str, dict[str, str]]
    rows: list[str]


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("number", nargs="?", type=int, help="look at this delivery whole (default: list all)")
    parser.add_argument(
        "--undo", action="store_true", help="take it back whole, its decisions with it, while nothing depends on it"
    )


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, print_json, said, who, wrong_usage
    from hwsched.model.time_zone import second_of
    from hwsched.operations.survey.deliveries import deliveries, delivery_numbered, lines_of_delivery, take_back

    if arguments.undo and arguments.number is None:
        return wrong_usage("say which delivery is taken back: hwsched survey deliveries PROJECT NUMBER --undo")
    rows: list[str] = []
    with opened(arguments) as project:
        if arguments.number is None:
            found = deliveries(project)
        else:
            found = [delivery_numbered(project, arguments.number)]
            rows = lines_of_delivery(project, found[0])
            if arguments.undo:
                take_back(project, arguments.number, who=who(arguments))
    print_json([_row(each, rows) for each in found])
    if not arguments.json:
        for each in found:
            counts = ", ".join(f"{count} {name}" for name, count in each.counts.items() if count)
            left = f"; {each.open} question{'s' if each.open > 1 else ''} left" if each.open else ""
            print(f"{each.number:>3}  {second_of(each.at)}  {each.person:<16} {each.file}: {counts}{left}")
        for line in rows:
            print(line)
        if not found:
            print("No delivery was taken in yet.")
    if arguments.undo:
        said(arguments, f"Delivery {arguments.number} taken back.")
    return DONE


def _row(each: Delivery, rows: list[str]) -> Delivered:
    return {
        "number": each.number,
        "file": each.file,
        "at": each.at,
        "person": each.person,
        "step": each.step,
        "decided_steps": list(each.decided),
        "open_count": each.open,
        "counts": dict(each.counts),
        "columns": {sheet: dict(columns) for sheet, columns in each.columns.items()},
        "rows": rows,
    }


VERB = Verb(_arguments, _run, result=list[Delivered])
