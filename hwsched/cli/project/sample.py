"""`hwsched project sample`: runs the main job on the invented sample."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


_FOLDER = "hwsched-demo"


class Demonstrated(TypedDict):
    """What the main job made of the sample; what was refused of the survey stands among the problems."""

    project: str
    kept: str | None
    files: list[str]
    opening_count: int
    status_counts: dict[str, int]
    severity_counts: dict[str, int]


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_common, add_output

    add_common(parser)
    add_output(parser, f"folder to write into (default: {_FOLDER})", "--to", folder=True)
    parser.add_argument(
        "--again", action="store_true",
        help="put a new project in the place of one that is there; one that was worked in is kept under another name",
    )  # fmt: skip


def _run(arguments: argparse.Namespace) -> int:
    from pathlib import Path

    from hwsched.cli.answering import add_input_problem
    from hwsched.cli.session import print_json, progress_bar, who
    from hwsched.operations.project.demonstration import demonstrate

    folder = Path(arguments.output or _FOLDER)
    with progress_bar("Sample", arguments.json or arguments.quiet) as progress:
        shown = demonstrate(folder, who=who(arguments), again=arguments.again, progress=progress)
    for problem in shown.problems:
        add_input_problem(problem)
    print_json(
        {
            "project": str(shown.project),
            "kept": None if shown.kept is None else str(shown.kept),
            "files": [str(path) for path in shown.files],
            "opening_count": sum(shown.statuses.values()),
            "status_counts": dict(shown.statuses),
            "severity_counts": dict(shown.severities),
        }
    )
    if not arguments.json:
        for line in shown.lines:
            print(line)
    return DONE


VERB = Verb(_arguments, _run, result=Demonstrated)
