"""`hwsched project verify`: compares tables and journal with what the change sets left there."""

from __future__ import annotations

from typing import Any, TypedDict

from hwsched.cli.verb import DONE, FINDINGS, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse

    from hwsched.operations.project.verifying import Foreign


class Row(TypedDict):
    """A row that is not as the journal left it; before and now by column."""

    id: str
    label: str | None
    before: dict[str, Any] | None
    now: dict[str, Any] | None


class Table(TypedDict):
    """A table that is not as the change sets left it."""

    table: str
    since_change_set: int | None
    row_count_before: int | None
    row_count_now: int | None
    rows: list[Row]
    all_told: bool


class WrongSet(TypedDict):
    """A change set that is not as it was written."""

    change_set: int
    problem: str


class Verified(TypedDict):
    """What was changed past the journal, and whether it was taken as it is."""

    tables: list[Table]
    change_sets: list[WrongSet]
    contents: list[str]
    accepted: bool


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument(
        "--accept",
        action="store_true",
        help="take what was changed past the journal as it is, in one change set that an undo takes back",
    )


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, print_json, who
    from hwsched.operations.project.verifying import accept, verify

    number = None
    with opened(arguments, tell=False) as project:
        if arguments.accept:
            found, changes = accept(project, who=who(arguments))
            number = changes.number
        else:
            found = verify(project)
        place = project.place
    result = verified(found, accepted=number is not None)
    print_json(result)
    if not arguments.json:
        for sentence in found.sentences():
            print(f"changed past the journal: {sentence}")
        if not found:
            print(f"{place}: tables and journal are as the change sets left them.")
        elif number is not None:
            print(f"Taken as it is: change set {number} written.")
    return FINDINGS if found and number is None else DONE


def verified(found: Foreign, *, accepted: bool) -> Verified:
    """Return what was found for machines."""
    return {
        "tables": [
            {
                "table": table.entity,
                "since_change_set": table.since,
                "row_count_before": table.rows_before,
                "row_count_now": table.rows_now,
                "rows": [
                    {
                        "id": row.row_id,
                        "label": row.label,
                        "before": None if row.before is None else dict(row.before),
                        "now": None if row.now is None else dict(row.now),
                    }
                    for row in table.rows
                ],
                "all_told": table.all_told,
            }
            for table in found.tables
        ],
        "change_sets": [{"change_set": number, "problem": wrong} for number, wrong in found.sets.items()],
        "contents": list(found.contents),
        "accepted": accepted,
    }


VERB = Verb(_arguments, _run, result=Verified)
