"""`hwsched opening fit`: works out parts, place, cable, power and holes of openings."""

from __future__ import annotations

from hwsched.cli.counting import counted
from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse
    from collections.abc import Sequence

    from hwsched.cli.opening.shapes import DifferingValue, FittedOpenings, UpgradeDifferences
    from hwsched.operations.opening.fit_differences import Differs
    from hwsched.operations.opening.fitting_openings import FitOutcome
    from hwsched.operations.opening.since_upgrade import SinceUpgrade


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.scope import add_scope
    from hwsched.cli.session import add_dry_run, add_project

    add_project(parser)
    add_scope(parser)
    parser.add_argument(
        "--since-upgrade",
        action="store_true",
        help="only what an earlier version has worked out; lists what this one says otherwise, and takes it",
    )
    add_dry_run(parser, "with --since-upgrade: only list, change nothing")
    parser.add_argument(
        "--released",
        action="store_true",
        help="also openings whose packet went out (else they keep what they were released with)",
    )


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import wrong_usage

    if arguments.dry_run and not arguments.since_upgrade:
        return wrong_usage("--dry-run goes with --since-upgrade; opening what-if shows what would be different")
    return _since_upgrade(arguments) if arguments.since_upgrade else _fit_all(arguments)


def _fit_all(arguments: argparse.Namespace) -> int:
    from hwsched.cli.scope import openings_asked
    from hwsched.cli.session import opened, print_json, progress_bar, said, who
    from hwsched.operations.opening.fitting_openings import fit_openings

    with opened(arguments, tell=False) as project:
        ids = openings_asked(project, arguments)
        with progress_bar("Fit", arguments.json) as progress:
            changes, outcomes = fit_openings(
                project, ids, who=who(arguments), released=arguments.released, progress=progress
            )
    tell_kept(outcomes)
    result = _result(outcomes)
    print_json(result)
    if arguments.json:
        return DONE
    from hwsched.values.amounts import times_words

    print(f"{counted(len(outcomes), 'opening')}: " + ", ".join(_counted(result)))
    for each in outcomes if arguments.marks else ():
        print(f"\n{each.given.opening.mark}: {each.fit.status}")
        for at in each.points:
            if at.given.point.name:
                print(f"  at the {at.given.point.name}: {at.fit.status if at.fit else 'unknown'}")
            for part in at.fit.parts if at.fit else ():
                much = times_words(at.given.catalogue.get(part.part), part.quantity, at.given.settings.length_style)
                print(f"  {part.role:<15} {part.part:<12} {much}  {part.reason}")
            for need in at.fit.needs if at.fit else ():
                print(f"  unknown: needs {need.label} ({need.blocks})")
            for refusal in at.fit.refused if at.fit else ():
                print(f"  refused {refusal.part}: {refusal.reason}")
    said(arguments, "Nothing to change." if changes.number is None else f"Change set {changes.number} written.")
    return DONE


def _counted(result: FittedOpenings) -> list[str]:
    counts = (
        (result["does_not_fit_count"], "does-not-fit"),
        (result["fits_count"], "fits"),
        (result["to_measure_count"], "to-measure"),
    )
    return [f"{count} {status}" for count, status in counts if count]


def tell_kept(outcomes: Sequence[FitOutcome]) -> None:
    """Say which openings keep what they were released with."""
    import sys

    marks = [each.given.opening.mark for each in outcomes if each.kept]
    if marks:
        named = ", ".join(marks[:5]) + (f" and {len(marks) - 5} more" if len(marks) > 5 else "")
        print(
            f"Released, kept as an earlier version worked them out, though this one says otherwise: {named}; see "
            "hwsched opening fit PROJECT --since-upgrade --released --dry-run.",
            file=sys.stderr,
        )


def _since_upgrade(arguments: argparse.Namespace) -> int:
    from hwsched.cli.scope import openings_asked
    from hwsched.cli.session import opened, print_json, progress_bar, said, who
    from hwsched.operations.opening.fit_differences import in_words
    from hwsched.operations.opening.since_upgrade import since_upgrade, summary, take_since_upgrade

    with opened(arguments, tell=False) as project:
        ids = openings_asked(project, arguments)
        with progress_bar("Fit", arguments.json) as progress:
            found = since_upgrade(project, ids, released=arguments.released, progress=progress)
        if found is None:
            return DONE
        changes = None if arguments.dry_run else take_since_upgrade(project, found, who=who(arguments))
    number = changes.number if changes is not None else None
    print_json(_upgrade(found))
    if arguments.json:
        return DONE
    for each in found.openings:
        packet = f"the packet of {each.packet.at} ({each.packet.by})" if each.packet is not None else ""
        kept = f": released, kept by {packet}" if each.kept else f": released by {packet}" if packet else ""
        print(f"{each.mark}{kept}")
        for what, before, after in (in_words(differs, found.style) for differs in each.differs):
            print(f"  {what}: {before} -> {after}")
    print(summary(found))
    if not arguments.dry_run:
        said(arguments, "Nothing to change." if number is None else f"Change set {number} written.")
    return DONE


def _result(outcomes: Sequence[FitOutcome]) -> FittedOpenings:
    from hwsched.operations.opening.showing import fitted_point

    statuses = [each.fit.status for each in outcomes]
    return {
        "openings": [
            {
                "mark": each.given.opening.mark,
                "status": each.fit.status,
                "kept": each.kept,
                "lock_points": [fitted_point(at) for at in each.points],
            }
            for each in outcomes
        ],
        "fits_count": statuses.count("fits"),
        "does_not_fit_count": statuses.count("does-not-fit"),
        "to_measure_count": statuses.count("to-measure"),
    }


def _upgrade(found: SinceUpgrade) -> UpgradeDifferences:
    return {
        "openings": [
            {
                "mark": each.mark,
                "released": each.packet is not None,
                "kept": each.kept,
                "differs": [_differing(differs) for differs in each.differs],
            }
            for each in found.openings
        ],
        "looked_at_count": found.looked_at,
        "alike_count": found.alike,
        "changed": list(found.changed),
    }


def _differing(differs: Differs) -> DifferingValue:
    return {"what": differs.what, "before": differs.before, "after": differs.after, "unit": differs.unit or None}


VERB = Verb(_arguments, _run, result="hwsched.cli.opening.shapes:FitAnswer", in_batch=True)
