"""`hwsched fit`: works out parts, place, cable, power and holes of openings."""

from __future__ import annotations

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse
    from typing import Any

    from hwsched.cases import Fit
    from hwsched.operations.fitting_openings import Fitted


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_marks, add_project

    add_project(parser)
    add_marks(parser)


def _run(arguments: argparse.Namespace) -> int:
    from collections import Counter

    from hwsched.cli.session import chosen_openings, opened, print_json, progress_bar, who
    from hwsched.operations.fitting_openings import fit_openings

    with opened(arguments) as project:
        ids = chosen_openings(project, arguments.marks)
        with progress_bar("Fit", arguments.json) as progress:
            changes, fitted = fit_openings(project, ids, who=who(arguments), progress=progress)
    if arguments.json:
        print_json([as_json(each) for each in fitted])
        return DONE
    statuses = Counter(each.fit.status for each in fitted)
    print(f"{len(fitted)} openings: " + ", ".join(f"{count} {status}" for status, count in sorted(statuses.items())))
    for each in fitted if arguments.marks else ():
        print(f"\n{each.case.opening.mark}: {each.fit.status}")
        for at in each.points:
            if at.case.point.name:
                print(f"  at the {at.case.point.name}: {at.fit.status if at.fit else 'unknown'}")
            for part in at.fit.parts if at.fit else ():
                print(f"  {part.role:<15} {part.part:<12} x{part.quantity:g}  {part.reason}")
            for need in at.fit.needs if at.fit else ():
                print(f"  unknown: needs {need.label} ({need.blocks})")
            for refusal in at.fit.refused if at.fit else ():
                print(f"  refused {refusal.part}: {refusal.reason}")
    print("Nothing to change." if changes.number is None else f"Change set {changes.number} written.")
    return DONE


def as_json(fitted: Fitted) -> dict[str, Any]:
    """Return one opening's fit for machines; of an opening with several lock points that of each too."""
    whole = {"opening": fitted.case.opening.mark, **_fit(fitted.fit)}
    if len(fitted.points) == 1:
        return whole
    points = [{"name": at.case.point.name, **_fit(at.fit)} for at in fitted.points if at.fit is not None]
    return {**whole, "lock_points": points}


def _fit(fit: Fit) -> dict[str, Any]:
    from dataclasses import asdict

    place, cable = fit.placement, fit.cable
    return {
        "status": fit.status,
        "parts": [
            {"role": p.role, "part": p.part, "quantity": p.quantity, "reason": p.reason, "source": p.source}
            for p in fit.parts
        ],
        "placement": None if place is None else asdict(place),
        "cable": None if cable is None else {"length_mm": cable.length_mm, "available_mm": cable.available_mm},
        "holes": [asdict(hole) for hole in fit.holes],
        "stack": None if fit.stack is None else asdict(fit.stack),
        "power": fit.power,
        "battery": None if fit.battery is None else asdict(fit.battery),
        "refused": [
            {"part": r.part, "role": r.role, "rule": r.rule, "reason": r.reason, "values": dict(r.values)}
            for r in fit.refused
        ],
        "needs": [{"fact": need.fact, "label": need.label, "blocks": need.blocks} for need in fit.needs],
        "cost": f"{fit.cost:f}",
        "currency": fit.currency,
        "cost_needs": list(fit.cost_needs),
    }


FIT = Verb("fit", "Work out parts, place, cable, power and holes.", _arguments, _run)
