"""`hwsched missing`: facts that are missing, most useful first; and the return-visit sheet."""

from __future__ import annotations

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.scope import add_scope
    from hwsched.cli.session import add_project

    add_project(parser)
    add_scope(parser)
    parser.add_argument("--to", metavar="DIR", help="write the return-visit sheet and a workbook a building into it")
    parser.add_argument("--paper", choices=("letter", "a4"), default="letter")


def _run(arguments: argparse.Namespace) -> int:
    from pathlib import Path

    from hwsched.cli.scope import openings_asked
    from hwsched.cli.session import opened, print_json
    from hwsched.operations.survey.return_visit import missing_and_visit

    with opened(arguments) as project:
        ids = openings_asked(project, arguments)
        folder = Path(arguments.to) if arguments.to else None
        found, files = missing_and_visit(project, folder, ids=ids, paper=arguments.paper)
    if arguments.json:
        rows = [
            {"fact": f.fact, "label": f.label, "unblocks": list(f.alone), "needed_by": list(f.needed)} for f in found
        ]
        print_json({"facts": rows, "files": [str(path) for path in files]})
        return DONE
    for fact in found:
        print(f"{fact.label}: unblocks {len(fact.alone)}, needed by {len(fact.needed)}: {', '.join(fact.needed[:10])}")
    if not found:
        print("Nothing is missing.")
    for path in files:
        print(f"Wrote {path}")
    return DONE


MISSING = Verb("missing", "List the missing facts, most useful first; write the return-visit sheet.", _arguments, _run)
