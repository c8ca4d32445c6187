"""`hwsched findings check`: lets every rule speak of the openings as they are fitted."""

from __future__ import annotations

from hwsched.cli.verb import DONE, FINDINGS, NOT_JUDGED, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse
    from collections.abc import Sequence

    from hwsched.cli.findings.shapes import Check, NotJudged
    from hwsched.model.project import Project
    from hwsched.operations.findings.checking import Checked


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
        "or when there is no opening at all",
    )
    parser.add_argument(
        "--fit", action="store_true", help="first work out what is not, or no longer, worked out; that is a step"
    )


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.scope import openings_asked
    from hwsched.cli.session import opened, print_json, progress_bar
    from hwsched.operations.findings.checking import check_openings
    from hwsched.operations.findings.finding_record import finding_record
    from hwsched.operations.findings.verdict import counts_of, found, unjudged

    with opened(arguments, tell=not arguments.fit) as project:
        ids = openings_asked(project, arguments)
        if arguments.fit:
            _fit_first(project, ids, arguments)
        with progress_bar("Check", arguments.json) as progress:
            checked = check_openings(project, ids, progress=progress)
    counts = counts_of(checked)
    result: Check = {
        "findings": [finding_record(each.given.opening.mark, said) for each in checked for said in each.findings],
        "not_judged": [
            {"mark": each.given.opening.mark, "why": why} for each in checked if (why := unjudged(each)) is not None
        ],
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
    if not checked:
        _tell_nothing_checked()
        return NOT_JUDGED
    return FINDINGS if found(checked, arguments.fail_on) else NOT_JUDGED if counts.not_judged_count else DONE


def _fit_first(project: Project, ids: Sequence[str] | None, arguments: argparse.Namespace) -> None:
    from hwsched.cli.opening.fit import tell_kept
    from hwsched.cli.session import progress_bar, said, who
    from hwsched.operations.opening.fitting_openings import fit_openings

    with progress_bar("Fit", arguments.json) as progress:
        changes, outcomes = fit_openings(project, ids, who=who(arguments), progress=progress)
    tell_kept(outcomes)
    if changes.number is not None:
        said(arguments, f"Worked out what was not; change set {changes.number} written.")


def _tell(checked: Sequence[Checked]) -> None:
    for each in checked:
        for finding in each.findings:
            waived = f" (waived: {finding.waived_by})" if finding.waived else ""
            print(f"{each.given.opening.mark}: {finding.severity}{waived}: {finding.rule}: {finding.message}")
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
            more = f" and {len(marks) - 5} more" if len(marks) > 5 else ""
            openings = "1 opening does" if len(marks) == 1 else f"{len(marks)} openings do"
            print(f"{openings} not pass: {words}: {', '.join(marks[:5])}{more}", file=sys.stderr)


VERB = Verb(_arguments, _run, result="hwsched.cli.findings.shapes:Check")
