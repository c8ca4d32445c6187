"""`hwsched survey import`: takes in a survey workbook, with a preview of what it changes."""

from __future__ import annotations

import sys
from typing import TypedDict

from hwsched.cli.survey.deciding import Open, open_row
from hwsched.cli.verb import DONE, FINDINGS, REJECTED, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse
    from collections.abc import Iterable

    from hwsched.exchange.problems import CellProblem, FileProblem
    from hwsched.exchange.survey.difference import OpeningChange, Preview
    from hwsched.exchange.survey.facts import Question


class Fact(TypedDict):
    """A fact that changes; lengths in mm, null for unknown; who set what stood there, or which row gave it."""

    where: str
    fact: str
    before: str | float | bool | None
    after: str | float | bool | None
    set_by: str | None
    given: str | None


class ChangedOpening(TypedDict):
    """An opening that is known and changes."""

    mark: str
    facts: list[Fact]
    new_leaf_count: int
    new_item_count: int


class Asked(TypedDict):
    """What only a person can say of a column; the first answer is taken until the option gives another."""

    sheet: str
    column: str
    header: str
    read: str
    rows: list[int]
    answers: list[str]
    kind: str
    option: str


class Odd(TypedDict):
    """Measures that can hardly be so, taken as written; the cure is asked for with --cure."""

    id: str
    question: str
    cure: str
    marks: list[str]


class Proposed(TypedDict):
    """A mark of the file that may be an opening which the project knows under another mark; it is left out."""

    mark: str
    known: str
    kind: str
    evidence: str


class Blank(TypedDict):
    """A known fact whose cell in the file is blank; it stays."""

    mark: str
    where: str
    fact: str


class ByHand(TypedDict):
    """A fact that was set by hand and that the file says otherwise than before; it stays."""

    mark: str
    where: str
    fact: str
    held: str | float | bool | None
    file: str | float | bool | None
    set_by: str


class SurveyImport(TypedDict):
    """What a survey changes."""

    new_marks: list[str]
    changed: list[ChangedOpening]
    unchanged_count: int
    missing_marks: list[str]
    assumptions: list[str]
    unmapped: list[str]
    kept: list[str]
    questions: list[Asked]
    oddities: list[Odd]
    undecided: list[Proposed]
    blank: list[Blank]
    by_hand: list[ByHand]
    retired_marks: list[str]
    restored_marks: list[str]
    left_out_marks: list[str]
    part: str | None
    open: list[Open]
    shown: str | None


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.choices import BARE_UNITS
    from hwsched.cli.session import add_dry_run, add_project, add_shown
    from hwsched.cli.survey.deciding import add_decisions
    from hwsched.operations.imports import import_named

    add_project(parser)
    parser.add_argument("file", help=import_named("survey").what)
    parser.add_argument("--sheet", help="sheet that holds the openings (default: the one that looks like it)")
    parser.add_argument(
        "--plan", metavar="NAME|FILE", help="column plan by which the file is read; what it does not cover is said"
    )
    parser.add_argument(
        "--save-plan", metavar="NAME|FILE", help="keep how the file is read as a column plan, under a name or as a file"
    )
    parser.add_argument("--encoding", metavar="NAME", help="of a text, such as cp850 or utf-16 (default: found)")
    parser.add_argument(
        "--decimal", choices=("comma", "point"), default="", help="mark before the decimals of numbers that are texts"
    )
    parser.add_argument("--header-row", type=int, metavar="ROW", help="lowest row of the header (default: found)")
    parser.add_argument(
        "--last-row", type=int, metavar="ROW", help="last row of the table (default: all but totals and notes below it)"
    )
    parser.add_argument("--bare-unit", choices=BARE_UNITS, help="unit of numbers where neither cell nor header has one")
    parser.add_argument(
        "--column",
        action="append",
        default=[],
        metavar="HEADER=FACT",
        help="what a column means, such as 'Nominal=leaf.width_mm' or 'Nominal=Leaf width'; an empty fact, or not "
        "read, leaves it out; may be repeated",
    )
    parser.add_argument(
        "--unit",
        action="append",
        default=[],
        metavar="HEADER=UNIT",
        help="unit of a column's numbers where the cell has none, such as 'Nominal=mm'; may be repeated",
    )
    parser.add_argument(
        "--dash",
        action="append",
        default=[],
        metavar="HEADER=MEANING",
        help="what a dash, zero, cross or n/a means in a column, such as 'Rating=none' or 'Rating=unknown', which is "
        "taken where nothing is said; may be repeated",
    )
    parser.add_argument(
        "--word",
        action="append",
        default=[],
        metavar="HEADER:WORD=MEANING",
        help="what a word means in a column, such as 'Material:STL=hollow metal' or 'Material:?1=unknown'; may be "
        "repeated",
    )
    parser.add_argument(
        "--mark",
        default="",
        metavar="PATTERN",
        help="how the mark is made of several columns, by their headings, such as '{Level}-{No}'",
    )
    parser.add_argument(
        "--counts",
        default="",
        metavar="one|type|PATTERN",
        help="what becomes of a row that stands for several doors: one opening, a type to which others refer, or "
        "openings with marks such as '{mark}-{n}', '{mark}{letter}', '{type}-{level}-{n}'",
    )
    parser.add_argument(
        "--pairs",
        choices=("leaf", "both"),
        default="",
        help="what a width such as PR 762 is: of each leaf, or of both together",
    )
    parser.add_argument(
        "--tables",
        choices=("left-out", "types"),
        default="",
        help="what becomes of a second table in the sheet of the openings that says what their types are",
    )
    parser.add_argument(
        "--openings-in",
        choices=("rows", "columns"),
        default="",
        help="where an opening stands: in a row, or in a column of a table on its side (default: found)",
    )
    parser.add_argument(
        "--mend",
        action="append",
        default=[],
        metavar="CELL=TEXT",
        help="read a cell as this text, such as 'Doors!C7=36 in'; the file is not written, the mend is kept with its "
        "author; may be repeated",
    )
    parser.add_argument(
        "--as-typed", action="store_true", help="take numbers that stand far apart from their column without asking"
    )
    parser.add_argument(
        "--cure",
        action="append",
        default=[],
        metavar="ODDITY",
        help="mend what can hardly be so, such as wider-than-high: width and height change places; it is kept for the "
        "next list of the kind, and none makes no cure of an earlier one; may be repeated",
    )
    add_decisions(parser)
    add_dry_run(parser)
    add_shown(parser, "the same file and the same changes as in a dry run")
    parser.add_argument("--fit", action="store_true", help="fit the openings that it touches, in the same step")
    parser.add_argument(
        "--accept",
        choices=("all", "good-rows"),
        default="all",
        help="all: one refused cell refuses the file; good-rows: openings with a refused cell are left out",
    )


def _run(arguments: argparse.Namespace) -> int:
    from pathlib import Path

    from hwsched.cli.answering import add_input_problem
    from hwsched.cli.session import opened, print_json, progress_bar, said, who, wrong_usage
    from hwsched.cli.survey.deciding import decisions_of, told, told_words, write_decisions
    from hwsched.exchange.problems import causes
    from hwsched.exchange.survey.answers import column_name
    from hwsched.exchange.survey.book import SurveyOptions
    from hwsched.exchange.survey.repeated_marks import AS_IT_STANDS
    from hwsched.exchange.survey.two_readings import NOT_READ
    from hwsched.operations.shown import check_shown, shown_key
    from hwsched.operations.survey.plans import find_plan
    from hwsched.operations.survey.survey_import import import_survey, preview_survey, save_plan

    words = told_words(arguments.word)
    if isinstance(words, str):
        return wrong_usage(words)
    try:
        decisions = decisions_of(arguments)
    except ValueError as error:
        return wrong_usage(str(error))
    options = SurveyOptions(
        sheet=arguments.sheet,
        header_row=arguments.header_row,
        encoding=arguments.encoding,
        decimal=arguments.decimal,
        last_row=arguments.last_row,
        bare_unit=arguments.bare_unit,
        columns={header: "" if fact == NOT_READ else fact for header, fact in told(arguments.column).items()},
        units=told(arguments.unit),
        dashes=told(arguments.dash),
        words=words,
        mark="" if arguments.mark == AS_IT_STANDS else arguments.mark,
        counts=arguments.counts,
        pairs=arguments.pairs,
        tables=arguments.tables,
        openings_in=arguments.openings_in,
        corrections={cell.strip(): text for cell, _, text in (each.partition("=") for each in arguments.mend)},
        as_typed=arguments.as_typed,
        cures=frozenset(arguments.cure),
        decisions=decisions,
    )
    if arguments.plan:
        options = find_plan(arguments.plan).onto(options)
    with opened(arguments) as project:
        path = Path(arguments.file)
        if arguments.save_plan:
            kept = save_plan(project, path, options, arguments.save_plan)
            if not arguments.json:
                print(f"Kept the column plan {kept}.")
        key: str | None = None
        headers: dict[str, tuple[str, ...]] = {}
        if arguments.dry_run or arguments.shown:
            seen = preview_survey(project, path, options)
            preview, problems, number = seen.preview, seen.problems, None
            headers = {mapping.sheet: mapping.headers for mapping in seen.basis.read.mapping}
            key = shown_key((seen, seen.basis.key))
        if not arguments.dry_run:
            check_shown(arguments.shown, key or "")
            with progress_bar("Import", arguments.json) as progress:
                done = import_survey(
                    project, path, options, who=who(arguments), accept=arguments.accept, fit_too=arguments.fit,
                    seen=seen if arguments.shown else None, progress=progress,
                )  # fmt: skip
            preview, problems, number = done.preview, done.problems, done.changes.number
    print_json(_result(preview, key))
    write_decisions(arguments, preview.left, path.name)
    for problem in problems:
        add_input_problem(problem)
    if not arguments.json:
        for line in preview.describe():
            print(line)
        for question in preview.questions:
            print(f"to answer: {_option_of(question)}, for example {_option_of(question, question.answers[-1])}")
        for each in preview.likely:
            name = column_name(each.header, each.column, headers.get(each.sheet, ()))
            print(f"to answer: --column '{name}={each.likely}', or '{name}=not read'")
        if any(oddity.cure for oddity in preview.oddities):
            print("To mend what is doubtful: --cure and its name.")
        if preview.undecided:
            print("Say which: --same NEW=KNOWN, --renamed NEW=KNOWN, --apart NEW, or --proposals take for all of them.")
        if preview.blank:
            print("To make facts unknown whose cells are blank: --empty FACT.")
        if preview.by_hand:
            print("To take what the file says over what was set by hand: --over-hand FACT.")
        if preview.left:
            print("What is left stays on the list of hwsched survey questions; --decide KIND[:FACT][@MARK]=ANSWER.")
        for cause in causes(problems):
            print(f"refused: {cause.describe()}", file=sys.stderr)
            if option := _option_of_refused(cause.problem, headers.get(cause.problem.sheet, ())):
                print(f"to answer: {option}")
    if arguments.dry_run:
        if not arguments.json:
            print(f"Dry run; nothing was written. Shown as {key}.")
    elif number is None:
        said(arguments, "Nothing to change.")
    else:
        said(arguments, f"Change set {number} written.")
    if not problems:
        return FINDINGS if any(each.kind in _OUT for each in preview.left) else DONE
    # What was left out is said by the status too: a script must not take it for all.
    return REJECTED if arguments.accept == "all" else FINDINGS


_OUT = frozenset({"renamed", "spelling", "divided", "joined", "again", "new", "split", "changed", "moved"})
"""Kinds of undecided differences that leave out something of what the file says."""


def _option_of_refused(problem: CellProblem | FileProblem, headers: Iterable[str]) -> str:
    """Return the option that mends what is refused: a word that is nearly one, a unit; empty where none does."""
    from hwsched.exchange.problems import WITHOUT_UNIT, CellProblem
    from hwsched.exchange.survey.answers import column_name
    from hwsched.exchange.survey.near_words import nearest_said

    if not isinstance(problem, CellProblem):
        return ""
    column = column_name(problem.header, problem.column, headers)
    if problem.message == WITHOUT_UNIT:
        return f"--unit '{column}=UNIT', or --bare-unit UNIT for all"
    near = nearest_said(problem.message)
    return f"--word '{column}:{problem.read}={near}'" if near else ""


def _option_of(question: Question, answer: str = "ANSWER") -> str:
    """Return the option that answers a question."""
    from hwsched.exchange.survey.answers import column_key, fact_of

    key = column_key(question)
    return {
        "dash": f"--dash '{key}={answer}'",
        "word": f"--word '{key}:{question.word}={answer}'",
        "count": f"--counts '{answer}'",
        "mark": f"--mark '{answer}'",
        "pair": f"--pairs {answer}",
        "table": f"--tables {answer}",
        "column": f"--column '{key}={fact_of(question, answer)}'",
    }[question.kind]


def _result(preview: Preview, key: str | None) -> SurveyImport:
    return {
        "new_marks": [opening.mark for opening in preview.new],
        "changed": [_changed(opening) for opening in preview.changed],
        "unchanged_count": len(preview.unchanged),
        "missing_marks": list(preview.missing),
        "assumptions": [each.describe() for each in preview.assumptions],
        "unmapped": list(preview.unmapped),
        "kept": list(preview.kept),
        "questions": [
            {
                "sheet": question.sheet,
                "column": question.column,
                "header": question.header,
                "read": question.read,
                "rows": list(question.rows),
                "answers": list(question.answers),
                "kind": question.kind,
                "option": _option_of(question),
            }
            for question in preview.questions
        ],
        "oddities": [
            {
                "id": oddity.id,
                "question": oddity.question.format(count=f"{len(oddity.marks)} openings"),
                "cure": oddity.cure,
                "marks": list(oddity.marks),
            }
            for oddity in preview.oddities
        ],
        "undecided": [
            {"mark": each.mark, "known": each.known, "kind": each.kind, "evidence": each.evidence}
            for each in preview.undecided
        ],
        "blank": [{"mark": mark, "where": fact.where, "fact": fact.attribute} for mark, fact in preview.blank],
        "by_hand": [
            {
                "mark": mark,
                "where": fact.where,
                "fact": fact.attribute,
                "held": fact.before,
                "file": fact.after,
                "set_by": fact.source,
            }
            for mark, fact in preview.by_hand
        ],
        "retired_marks": [mark for mark, _ in preview.retired],
        "restored_marks": [mark for mark, _ in preview.restored],
        "left_out_marks": list(preview.left_out),
        "part": preview.part or None,
        "open": [open_row(each, None) for each in preview.left],
        "shown": key,
    }


def _changed(opening: OpeningChange) -> ChangedOpening:
    return {
        "mark": opening.mark,
        "facts": [
            {
                "where": fact.where,
                "fact": fact.attribute,
                "before": fact.before,
                "after": fact.after,
                "set_by": fact.source or None,
                "given": fact.given or None,
            }
            for fact in opening.facts
        ],
        "new_leaf_count": len(opening.new_leaves),
        "new_item_count": len(opening.new_items),
    }


VERB = Verb(_arguments, _run, result=SurveyImport, in_batch=True)
