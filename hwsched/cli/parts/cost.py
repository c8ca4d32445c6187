"""`hwsched parts cost`: parts, labour and total by building, hardware set or opening."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.verb import DONE, Verb

_NAMED = 5

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


class CostLine(TypedDict):
    """Cost of a building, hardware set or opening: of what is known; labour is null while an hour has no price."""

    key: str
    hours: float
    parts: str
    labour: str | None
    total: str
    currency: str | None
    unknown: list[str]


class CostMoved(TypedDict):
    """What costs something else than in a revision; null where it was not priced."""

    key: str
    before: str | None
    now: str | None
    change: str


class CostShown(TypedDict):
    """What the project costs, exact."""

    by: str
    lines: list[CostLine]
    whole: CostLine
    without_fit: list[str]
    """Marks of the openings that have no fit, and so no cost."""
    since: str | None
    changes: list[CostMoved]
    """With --since, the largest change first; the whole stands last, under the key ``whole``."""


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.scope import add_scope
    from hwsched.cli.session import add_project

    add_project(parser)
    add_scope(parser)
    parser.add_argument("--by", choices=("building", "set", "opening"), default="building")
    parser.add_argument("--since", metavar="LETTER", help="also what costs something else than in this revision")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.calc.parts.cost import Cost, combined
    from hwsched.cli.scope import openings_asked
    from hwsched.cli.session import opened, print_json
    from hwsched.documents.parts.cost_estimate import totals, without_fit
    from hwsched.fitting.costing import terms_of
    from hwsched.operations.parts.cost_since import CostChange, changed_costs, costs_of_revision, whole_change
    from hwsched.operations.release.project_view import project_view
    from hwsched.quantities.money import rounded

    with opened(arguments) as project:
        asked = openings_asked(project, arguments)
        view = project_view(project, asked)
        found = totals(view, arguments.by)
        moved: tuple[CostChange, ...] = ()
        if arguments.since:
            marks = None if asked is None else [each.mark for each in view.openings]
            then = costs_of_revision(project, view, arguments.since, arguments.by, marks)
            moved = (*changed_costs(then, found), whole_change(then, found))
    whole = combined(found.values())
    left = without_fit(view)
    currency = terms_of(view.terms, view.catalogue).currency or None
    priced = view.terms.labour_per_hour is not None

    def line(key: str, cost: Cost) -> CostLine:
        return {
            "key": key,
            "hours": float(cost.hours),
            "parts": f"{cost.parts:f}",
            "labour": f"{cost.labour:f}" if priced else None,
            "total": f"{cost.total:f}",
            "currency": currency,
            "unknown": [each.text for each in cost.unknown],
        }

    lines = [line(key, cost) for key, cost in found.items()]
    changes: list[CostMoved] = [
        {
            "key": "whole" if each is moved[-1] else each.key,
            "before": f"{each.before.total:f}" if each.before is not None else None,
            "now": f"{each.now.total:f}" if each.now is not None else None,
            "change": f"{each.change:f}",
        }
        for each in moved
    ]
    told: CostShown = {
        "by": arguments.by,
        "lines": lines,
        "whole": line("whole", whole),
        "without_fit": left,
        "since": arguments.since or None,
        "changes": changes,
    }
    print_json(told)
    if arguments.json:
        return DONE

    def work(cost: Cost) -> str:
        return str(rounded(cost.labour)) if priced else "unknown"

    total = f"total of what is known [{currency}]" if currency else "total of what is known"
    for key, cost in found.items():
        print(
            f"{key:<32} {rounded(cost.hours, 1):>9} h {rounded(cost.parts):>12} {work(cost):>12} "
            f"{rounded(cost.total):>12}"
        )
    print(
        f"{total:<32} {rounded(whole.hours, 1):>9} h {rounded(whole.parts):>12} "
        f"{work(whole):>12} {rounded(whole.total):>12}"
    )
    for unknown in whole.unknown:
        print(f"not counted: {unknown.text}")
    if left:
        more = f" and {len(left) - _NAMED} more" if len(left) > _NAMED else ""
        print(f"not counted: {len(left)} without a fit: {', '.join(left[:_NAMED])}{more}")
    if arguments.since:
        print(f"\nsince revision {arguments.since}:")
    for each in moved:
        was, is_now = (str(rounded(cost.total)) if cost is not None else "-" for cost in (each.before, each.now))
        print(f"{each.key:<32} {was:>12} -> {is_now:>12} {rounded(each.change):>+12}")
    return DONE


VERB = Verb(_arguments, _run, result=CostShown)
