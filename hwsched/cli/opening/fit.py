"""`hwsched fit`: works out parts, place, cable, power and holes of openings."""

from __future__ import annotations

from hwsched.cli.verb import DONE, WRONG_USAGE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse
    from typing import Any

    from hwsched.operations.opening.fitting_openings import FitOutcome
    from hwsched.operations.opening.since_upgrade import SinceUpgrade
    from hwsched.values import Fit


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.scope import add_scope
    from hwsched.cli.session import add_project

    add_project(parser)
    add_scope(parser)
    parser.add_argument(
        "--since-upgrade",
        action="store_true",
        help="only what an earlier version has worked out; lists what this one says otherwise, and takes it",
    )
    parser.add_argument("--preview", action="store_true", help="with --since-upgrade: only list, change nothing")
    parser.add_argument(
        "--released",
        action="store_true",
        help="also openings whose packet went out (else they keep what they were released with)",
    )


def _run(arguments: argparse.Namespace) -> int:
    import sys

    if arguments.preview and not arguments.since_upgrade:
        print("hwsched fit: --preview goes with --since-upgrade", file=sys.stderr)
        return WRONG_USAGE
    return _since_upgrade(arguments) if arguments.since_upgrade else _fit_all(arguments)


def _fit_all(arguments: argparse.Namespace) -> int:
    from collections import Counter

    from hwsched.cli.scope import openings_asked
    from hwsched.cli.session import opened, print_json, progress_bar, who
    from hwsched.operations.opening.fitting_openings import fit_openings

    with opened(arguments, tell=False) as project:
        ids = openings_asked(project, arguments)
        with progress_bar("Fit", arguments.json) as progress:
            changes, outcomes = fit_openings(
                project, ids, who=who(arguments), released=arguments.released, progress=progress
            )
    _tell_kept([each.given.opening.mark for each in outcomes if each.kept])
    if arguments.json:
        print_json([as_json(each) for each in outcomes])
        return DONE
    statuses = Counter(each.fit.status for each in outcomes)
    print(f"{len(outcomes)} openings: " + ", ".join(f"{count} {status}" for status, count in sorted(statuses.items())))
    for each in outcomes if arguments.marks or arguments.where else ():
        print(f"\n{each.given.opening.mark}: {each.fit.status}")
        for at in each.points:
            if at.given.point.name:
                print(f"  at the {at.given.point.name}: {at.fit.status if at.fit else 'unknown'}")
            for part in at.fit.parts if at.fit else ():
                print(f"  {part.role:<15} {part.part:<12} x{part.quantity:g}  {part.reason}")
            for need in at.fit.needs if at.fit else ():
                print(f"  unknown: needs {need.label} ({need.blocks})")
            for refusal in at.fit.refused if at.fit else ():
                print(f"  refused {refusal.part}: {refusal.reason}")
    print("Nothing to change." if changes.number is None else f"Change set {changes.number} written.")
    return DONE


def _tell_kept(marks: list[str]) -> None:
    import sys

    if marks:
        named = ", ".join(marks[:5]) + (f" and {len(marks) - 5} more" if len(marks) > 5 else "")
        print(
            f"Released, kept as an earlier version worked them out, though this one says otherwise: {named}; see "
            "hwsched fit PROJECT --since-upgrade --released --preview.",
            file=sys.stderr,
        )


def _since_upgrade(arguments: argparse.Namespace) -> int:
    from hwsched.cli.scope import openings_asked
    from hwsched.cli.session import opened, print_json, progress_bar, who
    from hwsched.operations.opening.fit_differences import in_words
    from hwsched.operations.opening.since_upgrade import since_upgrade, summary, take_since_upgrade

    with opened(arguments, tell=False) as project:
        ids = openings_asked(project, arguments)
        with progress_bar("Fit", arguments.json) as progress:
            found = since_upgrade(project, ids, released=arguments.released, progress=progress)
        if found is None:
            return DONE
        changes = None if arguments.preview else take_since_upgrade(project, found, who=who(arguments))
    number = changes.number if changes is not None else None
    if arguments.json:
        print_json(upgrade_json(found, number))
        return DONE
    for each in found.openings:
        packet = f"the packet of {each.packet.at} ({each.packet.by})" if each.packet is not None else ""
        said = f": released, kept by {packet}" if each.kept else f": released by {packet}" if packet else ""
        print(f"{each.mark}{said}")
        for what, before, after in (in_words(differs, found.style) for differs in each.differs):
            print(f"  {what}: {before} -> {after}")
    print(summary(found))
    if not arguments.preview:
        print("Nothing to change." if number is None else f"Change set {number} written.")
    return DONE


def upgrade_json(found: SinceUpgrade, number: int | None) -> dict[str, Any]:
    """Return what differs since an upgrade for machines; lengths in mm."""
    return {
        "openings": [
            {
                "mark": each.mark,
                "released": each.packet is not None,
                "kept": each.kept,
                "differs": [
                    {"what": differs.what, "before": differs.before, "after": differs.after, "unit": differs.unit}
                    for differs in each.differs
                ],
            }
            for each in found.openings
        ],
        "looked_at": found.looked_at,
        "alike": found.alike,
        "changed": list(found.changed),
        "change_set": number,
    }


def as_json(outcomes: FitOutcome) -> dict[str, Any]:
    """Return one opening's fit for machines; of an opening with several lock points that of each too."""
    whole = {"opening": outcomes.given.opening.mark, **_fit(outcomes.fit)}
    if len(outcomes.points) == 1:
        return whole
    points = [{"name": at.given.point.name, **_fit(at.fit)} for at in outcomes.points if at.fit is not None]
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
