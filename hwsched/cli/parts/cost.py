"""`hwsched cost`: parts, labour and total by building, hardware set or opening."""

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
    parser.add_argument("--by", choices=("building", "set", "opening"), default="building")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.calc.parts.cost import Cost, combined
    from hwsched.cli.scope import openings_asked
    from hwsched.cli.session import opened, print_json
    from hwsched.documents.parts.cost_estimate import totals
    from hwsched.operations.release.project_view import project_view
    from hwsched.quantities.money import rounded

    with opened(arguments) as project:
        view = project_view(project, openings_asked(project, arguments))
    found = totals(view, arguments.by)
    whole = combined(found.values())
    if arguments.json:
        rows = [
            {
                "key": key,
                "hours": f"{c.hours:f}",
                "parts": f"{c.parts:f}",
                "labour": f"{c.labour:f}",
                "total": f"{c.total:f}",
                "unknown": [u.text for u in c.unknown],
            }
            for key, c in found.items()
        ]
        print_json({"rows": rows, "total": f"{whole.total:f}", "unknown": [u.text for u in whole.unknown]})
        return DONE

    def work(cost: Cost) -> str:
        return "unknown" if view.terms.labour_per_hour is None else str(rounded(cost.labour))

    for key, cost in found.items():
        print(
            f"{key:<32} {rounded(cost.hours, 1):>9} h {rounded(cost.parts):>12} {work(cost):>12} "
            f"{rounded(cost.total):>12}"
        )
    print(
        f"{'total of what is known':<32} {rounded(whole.hours, 1):>9} h {rounded(whole.parts):>12} "
        f"{work(whole):>12} {rounded(whole.total):>12}"
    )
    for unknown in whole.unknown:
        print(f"not counted: {unknown.text}")
    return DONE


COST = Verb("cost", "Show what the project costs.", _arguments, _run)
