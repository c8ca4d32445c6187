"""`hwsched check`: lets every rule speak of the openings as they are fitted."""

from __future__ import annotations

from hwsched.cli.verb import DONE, FINDINGS, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse
    from typing import Any

    from hwsched.operations.findings.checking import Checked


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.scope import add_scope
    from hwsched.cli.session import add_project
    from hwsched.values import SEVERITIES

    add_project(parser)
    add_scope(parser)
    parser.add_argument(
        "--fail-on",
        choices=SEVERITIES,
        help="exit status 1 when an unwaived finding is as bad as this or worse, or an opening is unjudged or unknown",
    )


def _run(arguments: argparse.Namespace) -> int:
    import sys
    from collections import Counter

    from hwsched.cli.scope import openings_asked
    from hwsched.cli.session import opened, print_json, progress_bar
    from hwsched.operations.findings.checking import check_openings, not_passed
    from hwsched.values import SEVERITIES

    with opened(arguments) as project:
        ids = openings_asked(project, arguments)
        with progress_bar("Check", arguments.json) as progress:
            checked = check_openings(project, ids, progress=progress)
    if arguments.json:
        print_json([finding for each in checked for finding in as_json(each)])
    else:
        for each in checked:
            for finding in each.findings:
                waived = f" (waived: {finding.waived_by})" if finding.waived else ""
                print(f"{each.given.opening.mark}: {finding.severity}{waived}: {finding.rule}: {finding.message}")
                print(f"    cure: {finding.cure}")
        counts = Counter(f.severity for each in checked for f in each.findings if not f.waived)
        waived_too = sum(f.waived for each in checked for f in each.findings)
        total = ", ".join(f"{counts.get(s, 0)} {s}" for s in SEVERITIES)
        print(f"{len(checked)} openings: {total}" + (f", {waived_too} waived" if waived_too else ""))
    if not arguments.fail_on:
        return DONE
    # An opening that nobody can judge does not pass: silence of the rules is no consent.
    failed = not_passed(checked, arguments.fail_on)
    for words, unjudged in (
        ("not judged, since no fit of them counts", [each for each in failed if each.fit is None]),
        ("unknown, since facts are missing", [e for e in failed if e.fit is not None and e.fit.status == "to-measure"]),
    ):
        if unjudged:
            marks = [each.given.opening.mark for each in unjudged]
            more = f" and {len(marks) - 5} more" if len(marks) > 5 else ""
            print(f"{len(marks)} openings do not pass: {words}: {', '.join(marks[:5])}{more}", file=sys.stderr)
    return FINDINGS if failed else DONE


def as_json(checked: Checked) -> list[dict[str, Any]]:
    """Return one opening's findings for machines."""
    return [
        {
            "opening": checked.given.opening.mark,
            "rule": finding.rule,
            "discipline": finding.discipline,
            "severity": finding.severity,
            "message": finding.message,
            "basis": finding.basis,
            "cure": finding.cure,
            "values": dict(finding.values),
            "about": finding.about,
            "lock_point": finding.point,
            "needs": list(finding.needs),
            "waived": finding.waived,
        }
        for finding in checked.findings
    ]


CHECK = Verb("check", "Let every rule speak of the openings and their fits.", _arguments, _run)
