"""`hwsched survey import`: takes in a survey workbook, with a preview of what it changes."""

from __future__ import annotations

import sys

from hwsched.cli.verb import DONE, REJECTED, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project, add_shown
    from hwsched.operations.imports import import_named
    from hwsched.quantities import BARE_UNITS

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
    parser.add_argument("--preview", action="store_true", help="say what would change, write nothing")
    add_shown(parser, "the same file and the same changes as in a preview")
    parser.add_argument("--fit", action="store_true", help="fit the openings that it touches, in the same step")
    parser.add_argument(
        "--accept",
        choices=("all", "good-rows"),
        default="all",
        help="all: one refused cell refuses the file; good-rows: openings with a refused cell are left out",
    )


def _run(arguments: argparse.Namespace) -> int:
    from pathlib import Path

    from hwsched.cli.session import opened, print_json, progress_bar, who
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
        if arguments.preview or arguments.shown:
            seen = preview_survey(project, path, options)
            preview, problems, number = seen.preview, seen.problems, None
            key = shown_key((seen, seen.basis.key))
        if not arguments.preview:
            check_shown(arguments.shown, key or "")
            with progress_bar("Import", arguments.json) as progress:
                done = import_survey(
                    project, path, options, who=who(arguments), accept=arguments.accept, fit_too=arguments.fit,
                    seen=seen if arguments.shown else None, progress=progress,
                )  # fmt: skip
            preview, problems, number = done.preview, done.problems, done.changes.number
    if arguments.json:
        print_json(
            {
                "new": [opening.mark for opening in preview.new],
                "changed": [
                    {
                        "mark": opening.mark,
                        "facts": [
                            {"where": fact.where, "fact": fact.attribute, "before": fact.before, "after": fact.after}
                            for fact in opening.facts
                        ],
                    }
                    for opening in preview.changed
                ],
                "unchanged": len(preview.unchanged),
                "missing": list(preview.missing),
                "assumptions": list(preview.assumptions),
                "unmapped": list(preview.unmapped),
                "kept": list(preview.kept),
                "problems": [problem.describe() for problem in problems],
                "change_set": number,
                "shown": key,
            }
        )
    else:
        for line in preview.describe():
            print(line)
        for problem in problems:
            print(f"refused: {problem.describe()}", file=sys.stderr)
        if arguments.preview:
            print(f"Preview only; nothing was written. Shown as {key}.")
        elif number is None:
            print("Nothing to change.")
        else:
            print(f"Change set {number} written.")
    return REJECTED if problems and arguments.preview and arguments.accept == "all" else DONE


VERB = Verb(_arguments, _run, in_batch=True)
