"""`hwsched opening what-if`: what another catalogue, limit, preference or choice would change."""

from __future__ import annotations

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse
    from collections.abc import Iterable

    from hwsched.calc.parts.cost import Cost
    from hwsched.cli.opening.shapes import DifferenceRecord, WhatIf
    from hwsched.operations.opening.what_if import Difference


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.scope import add_scope
    from hwsched.cli.session import add_project, add_shown

    add_project(parser)
    add_shown(parser, "the same catalogue and differences")
    add_scope(parser)
    parser.add_argument("--catalogue", metavar="FILE", help="a catalogue workbook, taken in over the project's own")
    parser.add_argument("--limit", action="append", default=[], metavar="RULE.LIMIT=VALUE")
    parser.add_argument("--off", action="append", default=[], metavar="RULE", help="switch a rule off")
    parser.add_argument("--prefer", help="what ranks alternatives: cost, holes, stock, preferred")
    parser.add_argument("--choose", action="append", default=[], metavar="ROLE=PART")
    parser.add_argument("--accept", action="store_true", help="make it so")


def _run(arguments: argparse.Namespace) -> int:
    from pathlib import Path

    from hwsched.cli.scope import openings_asked
    from hwsched.cli.session import opened, print_json, progress_bar, said, who, wrong_usage
    from hwsched.model.errors import ValueRefusedError
    from hwsched.operations.opening.what_if import Question, accept_answer, what_if
    from hwsched.operations.shown import check_shown, shown_key
    from hwsched.values import Chosen

    limits: dict[str, float | None] = {}
    for entry in arguments.limit:
        name, equals, value = entry.partition("=")
        if not equals:
            return wrong_usage(f"'{entry}' is not of the form RULE.LIMIT=VALUE")
        try:
            limits[name] = float(value) if value.strip() else None
        except ValueError:
            raise ValueRefusedError(name, f"'{value}' is no number") from None
    choices = tuple(Chosen(*entry.partition("=")[::2]) for entry in arguments.choose)
    question = Question(
        Path(arguments.catalogue) if arguments.catalogue else None,
        limits,
        dict.fromkeys(arguments.off, True),
        arguments.prefer,
        choices,
    )
    with opened(arguments) as project:
        ids = openings_asked(project, arguments)
        with progress_bar("What if", arguments.json) as progress:
            answer = what_if(project, question, ids, progress=progress)
        key = shown_key((answer, answer.basis.file.key if answer.basis.file else ""))
        if arguments.accept:
            check_shown(arguments.shown, key)
            accept_answer(project, answer, who=who(arguments))
    result: WhatIf = {
        "differences": differences_json(answer.differences),
        "asked_count": len(answer.asked),
        "accepted": arguments.accept,
        "shown": key,
    }
    print_json(result)
    if arguments.json:
        return DONE
    print_differences(answer.differences)
    print(f"{len(answer.differences)} of {len(answer.asked)} openings would be different.")
    if arguments.accept:
        said(arguments, "Accepted.")
    else:
        print(f"Nothing is changed yet; --accept makes it so. Shown as {key}.")
    return DONE


def print_differences(differences: Iterable[Difference]) -> None:
    """Print what would be different, an opening a few lines."""
    for each in differences:
        print(f"{each.mark}: {each.before} -> {each.after}")
        for sign, parts in (("-", each.gone), ("+", each.new)):
            if parts:
                print(f"  {sign} {', '.join(parts)}")
        if each.cost_before is not None and each.cost_after is not None and each.cost_before != each.cost_after:
            print(f"  cost {each.cost_before.total:f} -> {each.cost_after.total:f}")
        if each.holes_before != each.holes_after:
            print(f"  holes {each.holes_before} -> {each.holes_after}")
        for sign, findings in (("-", each.findings_gone), ("+", each.findings_new)):
            for finding in findings:
                print(f"  {sign} {finding.severity}: {finding.rule}: {finding.message}")
        if each.why:
            print(f"  why: {each.why}")


def differences_json(differences: Iterable[Difference]) -> list[DifferenceRecord]:
    """Return what would be different for machines; money as exact decimal texts."""
    from hwsched.operations.findings.finding_record import finding_record

    return [
        {
            "mark": each.mark,
            "before": each.before,
            "after": each.after,
            "gone": list(each.gone),
            "new": list(each.new),
            "cost_before": _total(each.cost_before),
            "cost_after": _total(each.cost_after),
            "currency": each.currency or None,
            "hole_count_before": each.holes_before,
            "hole_count_after": each.holes_after,
            "findings_gone": [finding_record(each.mark, finding) for finding in each.findings_gone],
            "findings_new": [finding_record(each.mark, finding) for finding in each.findings_new],
            "why": each.why or None,
        }
        for each in differences
    ]


def _total(cost: Cost | None) -> str | None:
    return None if cost is None else f"{cost.total:f}"


VERB = Verb(_arguments, _run, result="hwsched.cli.opening.shapes:WhatIf")
