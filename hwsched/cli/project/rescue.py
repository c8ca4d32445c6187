"""`hwsched project rescue`: writes what can be read of a damaged project into a new one, and names what is lost."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.counting import counted
from hwsched.cli.verb import DONE, FINDINGS, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


class Table(TypedDict):
    """Of one table: rows saved, of these from the journal, and lost; null: nobody knows how many."""

    table: str
    row_count: int
    from_journal_count: int
    lost_count: int | None


class Rescued(TypedDict):
    """What was saved into the new project."""

    project: str
    tables: list[Table]
    left_out: list[str]


def _arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("project", help="project file (.hwsched) that cannot be opened")
    parser.add_argument("new", help="project file to make")
    parser.add_argument("--json", action="store_true", help="print JSON for machines")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import print_json
    from hwsched.operations.project.rescuing import rescue

    found = rescue(arguments.project, arguments.new)
    if arguments.json:
        tables = [
            {
                "table": each.table,
                "row_count": each.rows,
                "from_journal_count": each.from_journal,
                "lost_count": each.lost,
            }
            for each in found.tables
        ]
        print_json({"project": arguments.new, "tables": tables, "left_out": list(found.left_out)})
    else:
        for each in found.tables:
            if each.lost or each.from_journal:
                lost = "unknown how many" if each.lost is None else each.lost
                print(f"table {each.table}: {each.rows} rows saved ({each.from_journal} from the journal), {lost} lost")
        for said in found.left_out:
            print(f"left out: {said}")
        print(f"Saved {counted(sum(each.rows for each in found.tables), 'row')} into {arguments.new}")
    return DONE if found.whole else FINDINGS


VERB = Verb(_arguments, _run, result=Rescued)
