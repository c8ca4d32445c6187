"""`hwsched survey plan`: the column plans by which lists are read: listed, shown, changed, copied, removed."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse
    from pathlib import Path

    from hwsched.exchange.survey.plan import ColumnPlan


class Plan(TypedDict):
    """A column plan: where it is, and what it says, one line a column; none of it for a file that is no plan."""

    name: str
    file: str
    columns: list[str]
    unit: str
    mark: str
    counts: str
    decimal: str
    pairs: str
    tables: str
    openings_in: str
    cures: list[str]
    encoding: str


class Plans(TypedDict):
    """The plans that are kept, or the one that is named."""

    plans: list[Plan]


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.choices import BARE_UNITS

    parser.add_argument("--json", action="store_true", help="print JSON for machines")
    parser.add_argument("plan", nargs="?", help="name of the plan, or its file (default: list all that have a name)")
    parser.add_argument("--remove", action="store_true", help="remove it")
    parser.add_argument(
        "--copy", metavar="NAME|FILE", help="write a copy, under a name or as a file that another person can take"
    )
    for option, metavar, text in (
        ("--column", "HEADER=FACT", "what a column means, such as 'Wd.=leaf.width_mm'; an empty fact: it is not read"),
        ("--unit", "HEADER=UNIT", "unit of a column's numbers; empty: none"),
        ("--dash", "HEADER=MEANING", "what a dash means in a column; empty: not said"),
        ("--word", "HEADER:WORD=MEANING", "what a word means in a column"),
        ("--drop", "HEADER", "say nothing of this column any more"),
    ):
        parser.add_argument(option, action="append", default=[], metavar=metavar, help=f"{text}; may be repeated")
    parser.add_argument("--bare-unit", choices=BARE_UNITS, help="unit of numbers where neither cell nor header has one")
    parser.add_argument("--mark", metavar="PATTERN", help="how the mark is made of several columns")
    parser.add_argument("--counts", metavar="one|type|PATTERN", help="what becomes of rows of several doors")
    parser.add_argument("--encoding", metavar="NAME", help="of a list that is a text, such as cp850")
    parser.add_argument(
        "--decimal", choices=("comma", "point"), help="mark before the decimals of numbers that are texts"
    )
    parser.add_argument("--pairs", choices=("leaf", "both"), help="what widths of pairs are, which do not say it")
    parser.add_argument("--tables", choices=("left-out", "types"), help="what a second table with types in a sheet is")
    parser.add_argument("--openings-in", choices=("rows", "columns"), help="where an opening stands in the table")
    parser.add_argument(
        "--cure",
        action="append",
        default=[],
        metavar="ODDITY",
        help="what can hardly be so and is to be mended, in place of what the plan says; none for nothing; may be "
        "repeated",
    )


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import print_json, said, wrong_usage
    from hwsched.cli.survey.deciding import told, told_words
    from hwsched.operations.survey.plans import edit_plan, find_plan, keep_plan, list_plans, plan_path, remove_plan

    words = told_words(arguments.word)
    if isinstance(words, str):
        return wrong_usage(words)
    changes = {
        "facts": told(arguments.column), "units": told(arguments.unit), "dashes": told(arguments.dash), "words": words,
        "drop": arguments.drop, "unit": arguments.bare_unit, "mark": arguments.mark, "counts": arguments.counts,
        "encoding": arguments.encoding, "decimal": arguments.decimal, "pairs": arguments.pairs,
        "tables": arguments.tables, "openings_in": arguments.openings_in, "cures": tuple(arguments.cure),
    }  # fmt: skip
    changed = any(changes.values())
    if arguments.plan is None:
        if changed or arguments.remove or arguments.copy:
            return wrong_usage("say which plan: hwsched survey plan NAME")
        found = list_plans()
        print_json({"plans": [_told(name, path, plan) for name, path, plan in found]})
        for name, path, plan in found:
            count = f"{len(plan.columns.columns)} columns" if plan else "no column plan"
            said(arguments, f"{name}: {count}, {path}")
        if not found:
            said(arguments, "No plan is kept; hwsched survey import PROJECT FILE --save-plan NAME keeps one.")
        return DONE
    path = plan_path(arguments.plan)
    if arguments.remove:
        remove_plan(arguments.plan)
        print_json({"plans": []})
        said(arguments, f"Removed the column plan {path}.")
        return DONE
    if changed:
        try:
            edit_plan(arguments.plan, lambda plan: plan.changed(**changes))
        except ValueError as error:
            return wrong_usage(str(error))
    plan = find_plan(arguments.plan)
    if arguments.copy:
        said(arguments, f"Kept the column plan {keep_plan(arguments.copy, plan)}.")
    print_json({"plans": [_told(plan.name, path, plan)]})
    if not arguments.json:
        told_of = plan.columns
        for name, text in (
            ("unit", told_of.bare_unit), ("mark", told_of.mark), ("counts", told_of.counts),
            ("encoding", plan.encoding), ("decimal", told_of.decimal),
            ("pairs", told_of.pairs), ("tables", told_of.tables),
            ("openings in", told_of.openings_in), ("cures", ", ".join(told_of.cures)),
        ):  # fmt: skip
            if text:
                print(f"{name}: {text}")
        for line in plan.lines():
            print(line)
    return DONE


def _told(name: str, path: Path, plan: ColumnPlan | None) -> Plan:
    told = plan.columns if plan else None
    return {
        "name": name,
        "file": str(path),
        "columns": plan.lines() if plan else [],
        "unit": told.bare_unit if told else "",
        "mark": told.mark if told else "",
        "counts": told.counts if told else "",
        "decimal": told.decimal if told else "",
        "pairs": told.pairs if told else "",
        "tables": told.tables if told else "",
        "openings_in": told.openings_in if told else "",
        "cures": list(told.cures) if told else [],
        "encoding": (plan.encoding or "") if plan else "",
    }


VERB = Verb(_arguments, _run, result=Plans)
