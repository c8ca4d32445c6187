"""`hwsched survey import`: takes in a survey workbook, with a preview of what it changes."""

from __future__ import annotations

import sys
from typing import TypedDict

from hwsched.cli.verb import DONE, FINDINGS, REJECTED, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse

    from hwsched.exchange.survey.difference import OpeningChange, Preview


class Fact(TypedDict):
    """A fact that changes; lengths in mm, money as a decimal string, null for unknown."""

    where: str
    fact: str
    before: str | float | bool | None
    after: str | float | bool | None


class ChangedOpening(TypedDict):
    """An opening that is known and changes."""

    mark: str
    facts: list[Fact]
    new_leaf_count: int
    new_item_count: int


class SurveyImport(TypedDict):
    """What a survey changes."""

    new_marks: list[str]
    changed: list[ChangedOpening]
    unchanged_count: int
    missing_marks: list[str]
    assumptions: list[str]
    unmapped: list[str]
    kept: list[str]
    shown: str | None


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.choices import BARE_UNITS
    from hwsched.cli.session import add_dry_run, add_project, add_shown
    from hwsched.operations.imports import import_named

    add_project(parser)
    parser.add_argument("file", help=import_named("survey").what)
    parser.add_argument("--sheet", help="sheet that holds the openings (default: the one that looks like it)")
    parser.add_argument("--bare-unit", choices=BARE_UNITS, help="unit of numbers where neither cell nor header has one")
    parser.add_argument(
        "--column",
        action="append",
        default=[],
        metavar="HEADER=FACT",
        help="what a column means, such as 'Nominal=leaf.width_mm'; an empty fact leaves it out; may be repeated",
    )
    parser.add_argument(
        "--as-typed", action="store_true", help="take numbers that stand far apart from their column without asking"
    )
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
    from hwsched.cli.session import opened, print_json, progress_bar, said, who
    from hwsched.exchange.survey.book import SurveyOptions
    from hwsched.operations.shown import check_shown, shown_key
    from hwsched.operations.survey.survey_import import import_survey, preview_survey

    # From the right: a header may hold an equals sign, a fact never does.
    columns = {
        header.strip(): fact.strip() for header, _, fact in (entry.rpartition("=") for entry in arguments.column)
    }
    options = SurveyOptions(
        sheet=arguments.sheet, bare_unit=arguments.bare_unit, columns=columns, as_typed=arguments.as_typed
    )
    with opened(arguments) as project:
        path = Path(arguments.file)
        key: str | None = None
        if arguments.dry_run or arguments.shown:
            seen = preview_survey(project, path, options)
            preview, problems, number = seen.preview, seen.problems, None
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
    for problem in problems:
        add_input_problem(problem)
    if not arguments.json:
        for line in preview.describe():
            print(line)
        for problem in problems:
            print(f"refused: {problem.describe()}", file=sys.stderr)
    if arguments.dry_run:
        if not arguments.json:
            print(f"Dry run; nothing was written. Shown as {key}.")
    elif number is None:
        said(arguments, "Nothing to change.")
    else:
        said(arguments, f"Change set {number} written.")
    if not problems:
        return DONE
    # What was left out is said by the status too: a script must not take it for all.
    return REJECTED if arguments.accept == "all" else FINDINGS


def _result(preview: Preview, key: str | None) -> SurveyImport:
    return {
        "new_marks": [opening.mark for opening in preview.new],
        "changed": [_changed(opening) for opening in preview.changed],
        "unchanged_count": len(preview.unchanged),
        "missing_marks": list(preview.missing),
        "assumptions": list(preview.assumptions),
        "unmapped": list(preview.unmapped),
        "kept": list(preview.kept),
        "shown": key,
    }


def _changed(opening: OpeningChange) -> ChangedOpening:
    return {
        "mark": opening.mark,
        "facts": [
            {"where": fact.where, "fact": fact.attribute, "before": fact.before, "after": fact.after}
            for fact in opening.facts
        ],
        "new_leaf_count": len(opening.new_leaves),
        "new_item_count": len(opening.new_items),
    }


VERB = Verb(_arguments, _run, result=SurveyImport, in_batch=True)
