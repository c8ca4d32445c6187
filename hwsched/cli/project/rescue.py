"""`hwsched rescue`: writes what can be read of a damaged project into a new one, and names what is lost."""

from __future__ import annotations

from hwsched.cli.verb import DONE, FINDINGS, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


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
            {"table": each.table, "rows": each.rows, "from_journal": each.from_journal, "lost": each.lost}
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
        print(f"Saved {sum(each.rows for each in found.tables)} rows into {arguments.new}")
    return DONE if found.whole else FINDINGS


RESCUE = Verb("rescue", "Save what can be read of a damaged project into a new one.", _arguments, _run)
