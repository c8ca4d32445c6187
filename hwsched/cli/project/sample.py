"""`hwsched project sample`: runs the main job on the invented sample."""

from __future__ import annotations

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_common

    add_common(parser)
    parser.add_argument(
        "--to", default="hwsched-demo", metavar="DIR", help="folder to write into (default: %(default)s)"
    )


def _run(arguments: argparse.Namespace) -> int:
    from pathlib import Path

    from hwsched.cli.session import print_json, progress_bar, who
    from hwsched.operations.project.demonstration import demonstrate

    folder = Path(arguments.to)
    with progress_bar("Demo", arguments.json) as progress:
        shown = demonstrate(folder, who=who(arguments), progress=progress)
    if arguments.json:
        print_json(
            {
                "project": str(shown.project),
                "files": [str(path) for path in shown.files],
                "statuses": dict(shown.statuses),
                "severities": dict(shown.severities),
                "refused": [problem.describe() for problem in shown.problems],
            }
        )
        return DONE
    for line in shown.lines:
        print(line)
    return DONE


VERB = Verb(_arguments, _run)
