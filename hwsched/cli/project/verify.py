"""`hwsched verify`: compares tables and journal with what the change sets left there."""

from __future__ import annotations

from hwsched.cli.verb import DONE, FINDINGS, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse
    from typing import Any

    from hwsched.operations.project.verifying import Foreign


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
    if arguments.json:
        print_json({**as_json(found), "accepted": number is not None, "change_set": number})
    else:
        for sentence in found.sentences():
            print(f"changed past the journal: {sentence}")
        if not found:
            print(f"{place}: tables and journal are as the change sets left them.")
        elif number is not None:
            print(f"Taken as it is: change set {number} written.")
    return FINDINGS if found and number is None else DONE


def as_json(found: Foreign) -> dict[str, Any]:
    """Return what was found for machines."""
    return {
        "tables": [
            {
                "table": table.entity,
                "since_change_set": table.since,
                "rows_before": table.rows_before,
                "rows_now": table.rows_now,
                "rows": [
                    {"row": row.row_id, "label": row.label, "before": row.before, "now": row.now} for row in table.rows
                ],
                "all_told": table.all_told,
            }
            for table in found.tables
        ],
        "change_sets": [{"change_set": number, "problem": wrong} for number, wrong in found.sets.items()],
        "contents": list(found.contents),
    }


VERIFY = Verb("verify", "See whether anything was changed past the journal.", _arguments, _run)
