"""`hwsched findings check`: lets every rule speak of the openings as they are fitted, and of what feeds them."""

from __future__ import annotations

from hwsched.cli.counting import counted
from hwsched.cli.verb import DONE, FINDINGS, NOT_JUDGED, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse
    from collections.abc import Sequence

    from hwsched.cli.findings.shapes import Check, NotJudged, SupplyFinding, SupplyNotJudged
    from hwsched.model.project import Project
    from hwsched.operations.findings.checked_supplies import CheckedSupply
    from hwsched.operations.findings.checking import CheckedProject
    from hwsched.values import Finding

_MOST_TOLD = 5
"""Of names in a row; the rest is counted."""


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.choices import SEVERITIES
    from hwsched.cli.scope import add_scope
    from hwsched.cli.session import add_project

    add_project(parser)
    add_scope(parser)
    parser.add_argument(
        "--fail-on",
        choices=SEVERITIES,
        help="exit status 1 when an unwaived finding is as bad as this or worse; else 5 when an opening is not judged: "
        "changed since it was worked out, worked out by an earlier version or never, to measure, without a fit; "
        "when a supply that feeds one cannot be worked out; or when there is no opening at all",
    )
    parser.add_argument(
        "--fit", action="store_true", help="first work out what is not, or no longer, worked out; that is a step"
    )


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.scope import openings_asked
    from hwsched.cli.session import opened, print_json, progress_bar
    from hwsched.operations.findings.checking import check_project
    from hwsched.operations.findings.finding_record import finding_record
    from hwsched.operations.findings.verdict import counts_of, found, unjudged

    with opened(arguments, tell=not arguments.fit) as project:
        ids = openings_asked(project, arguments)
        if arguments.fit:
            _fit_first(project, ids, arguments)
        with progress_bar("Check", arguments.json) as progress:
            checked = check_project(project, ids, progress=progress)
    openings, supplies = checked.openings, checked.supplies
    counts = counts_of(checked)
    result: Check = {
        "findings": [finding_record(each.given.opening.mark, said) for each in openings for said in each.findings],
        "not_judged": [
            {"mark": each.given.opening.mark, "why": why} for each in openings if (why := unjudged(each)) is not None
        ],
        "supply_findings": [_supply_finding(each, said) for each in supplies for said in each.findings],
        "supplies_not_judged": [_supply_not_judged(each) for each in supplies if each.unsolved],
        "counts": counts,
    }
    print_json(result)
    if not arguments.json:
        _tell(checked)
        print(counts.words)
    if not arguments.fail_on:
        return DONE
    # An opening that nobody can judge does not pass: silence of the rules is no consent.
    _tell_unjudged(result["not_judged"])
    _tell_unsolved(result["supplies_not_judged"])
    if not openings:
        _tell_nothing_checked()
        return NOT_JUDGED
    bad, bad_supplies = found(openings, arguments.fail_on), found(supplies, arguments.fail_on)
    if bad or bad_supplies:
        return FINDINGS
    return DONE if counts.all_judged else NOT_JUDGED


def _supply_finding(supply: CheckedSupply, finding: Finding) -> SupplyFinding:
    return {
        "supply": supply.result.supply.name,
        "rule": finding.rule,
        "discipline": finding.discipline,
        "severity": finding.severity,
        "message": finding.message,
        "basis": finding.basis,
        "cure": finding.cure,
        "values": dict(finding.values),
        "about": finding.about or None,
        "needs": list(finding.needs),
        "waived": finding.waived,
        "waived_by": finding.waived_by or None,
    }


def _supply_not_judged(supply: CheckedSupply) -> SupplyNotJudged:
    marks = supply.result.marks
    return {
        "supply": supply.result.supply.name,
        "reasons": [
            {
                "circuit": each.circuit or None,
                "mark": marks.get(each.problem.opening_id),
                "message": each.problem.message,
                "needs": list(each.problem.needs),
            }
            for each in supply.unsolved
        ],
    }


def _fit_first(project: Project, ids: Sequence[str] | None, arguments: argparse.Namespace) -> None:
    from hwsched.cli.opening.fit import tell_kept
    from hwsched.cli.session import progress_bar, said, who
    from hwsched.operations.opening.fitting_openings import fit_openings

    with progress_bar("Fit", arguments.json) as progress:
        changes, outcomes = fit_openings(project, ids, who=who(arguments), progress=progress)
    tell_kept(outcomes)
    if changes.number is not None:
        said(arguments, f"Worked out what was not; change set {changes.number} written.")


def _tell(checked: CheckedProject) -> None:
    said = [(each.given.opening.mark, finding) for each in checked.openings for finding in each.findings]
    said += [(f"supply {each.result.supply.name}", finding) for each in checked.supplies for finding in each.findings]
    for name, finding in said:
        waived = f" (waived: {finding.waived_by})" if finding.waived else ""
        print(f"{name}: {finding.severity}{waived}: {finding.rule}: {finding.message}")
        print(f"    cure: {finding.cure}")


def _tell_nothing_checked() -> None:
    import sys

    from hwsched.cli.answering import add_problem

    message = "no opening was checked: none is there, or none is as asked; that passes nothing"
    print(f"hwsched: {message}", file=sys.stderr)
    add_problem(message=message)


def _tell_unjudged(rows: Sequence[NotJudged]) -> None:
    import sys

    from hwsched.operations.findings.verdict import UNJUDGED_WORDS

    for why, words in UNJUDGED_WORDS.items():
        marks = [row["mark"] for row in rows if row["why"] == why]
        if marks:
            more = f" and {len(marks) - _MOST_TOLD} more" if len(marks) > _MOST_TOLD else ""
            openings = counted(len(marks), "opening does", "openings do")
            print(f"{openings} not pass: {words}: {', '.join(marks[:_MOST_TOLD])}{more}", file=sys.stderr)


def _tell_unsolved(rows: Sequence[SupplyNotJudged]) -> None:
    import sys

    for row in rows[:_MOST_TOLD]:
        reasons = [each["message"] for each in row["reasons"]]
        more = f" and {len(reasons) - _MOST_TOLD} more" if len(reasons) > _MOST_TOLD else ""
        why = "; ".join(reasons[:_MOST_TOLD])
        print(f"supply {row['supply']} does not pass, since it cannot be worked out: {why}{more}", file=sys.stderr)
    if len(rows) > _MOST_TOLD:
        more_supplies = len(rows) - _MOST_TOLD
        print(f"and {more_supplies} more supplies that cannot be worked out", file=sys.stderr)


VERB = Verb(_arguments, _run, result="hwsched.cli.findings.shapes:Check")
