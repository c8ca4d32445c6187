"""Draws openings, lets the program answer, and prints what is wrong with the answers, by family.

Run from the repository: ``python -m tests.verifier.run --openings 2000 --seeds 1``.
"""

import argparse
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from random import Random
from typing import Any, Final

from tests.verifier import shops, surveys
from tests.verifier.cells import SHEETS, Cells, Opening, in_millimetres
from tests.verifier.driving import answered
from tests.verifier.judging import Violation, by_rounding, judge, passed, refused, to_measure
from tests.verifier.searching import search

BATCH: Final = 1000
"""Openings a project: so many that what a project costs by itself does not count, so few that catalogues differ."""
_EXAMPLES: Final = 3
_ALWAYS: Final = ("unit-for-no-glass",)
"""Rules that refuse a part at every opening of a kind and tell nothing."""


@dataclass
class Report:
    """What came of some openings."""

    openings: int = 0
    passed: int = 0
    fitted_whole: int = 0
    """Of them those of which every cell was given."""
    wrong: int = 0
    """Fitted ones of which every cell was given, with one violation at least."""
    rounded: int = 0
    """Of the fitted ones those that are said to be right by the rounding alone: what to measure is said."""
    refused: int = 0
    searched: int = 0
    measured: int = 0
    unjudged: int = 0
    forms: dict[str, Counter[str]] = field(default_factory=dict)
    """Start of the mark, which is the form's, to what became of its openings."""
    ways: Counter[tuple[str, str]] = field(default_factory=Counter)
    """Units of the fitted openings with what feeds them, to how many have them."""
    open_errors: Counter[str] = field(default_factory=Counter)
    """Rules with an error on openings that fit."""
    families: dict[str, list[Violation]] = field(default_factory=dict)
    refusals: list[tuple[str, str, str, str]] = field(default_factory=list)
    """Mark, witness, what the program said, and the rules by which its search ended; every cell given."""
    doubted: list[tuple[str, str, str, str]] = field(default_factory=list)
    """The same where a cell was left open: what is refused may hang on what it could be."""
    rounded_off: list[tuple[str, str, str]] = field(default_factory=list)
    """Mark, witness, and what the program said, where the truth can be fitted and what was read of it is refused."""
    unknowns: list[tuple[str, str]] = field(default_factory=list)
    """Openings of which every cell was given and facts are asked for all the same."""

    def share(self, family: str) -> float:
        """Share of the fitted openings, every cell given, that a family spoils."""
        found = [each for each in self.families.get(family, []) if not each.guessed]
        return len(found) / self.fitted_whole if self.fitted_whole else 0.0

    def take(self, opening: Opening, parts: dict[str, Cells], answer: dict[str, Any], searching: bool = True) -> None:
        """Judge one answer."""
        self.openings += 1
        of_form = self.forms.setdefault(opening.mark[:2], Counter())
        if passed(answer):
            of_form["fitted"] += 1
            self.passed += 1
            self.fitted_whole += not opening.blank
            for point in answer["lock_points"]:
                unit = next((each["part"] for each in point["parts"] if each["role"] == "unit"), "in the lock")
                self.ways[unit, point["power"]] += 1
            found = [] if by_rounding(answer) else judge(opening, parts, answer)
            self.rounded += by_rounding(answer)
            self.wrong += bool(found) and not opening.blank
            for violation in found:
                self.families.setdefault(violation.family, []).append(violation)
        elif refused(answer):
            of_form["refused"] += 1
            self.refused += 1
            if searching:
                self._search(opening, parts, answer)
        elif to_measure(answer):
            of_form["to measure"] += 1
            self.measured += 1
            if not opening.blank:
                needs = sorted({need["fact"] for point in answer["lock_points"] for need in point["needs"]})
                # What a maker does not say nobody can measure: it is asked of the catalogue.
                if not all(_untold(need, parts) for need in needs):
                    self.unknowns.append((opening.mark, ", ".join(needs)))
        else:
            of_form["open error"] += 1
            self.unjudged += 1
            self.open_errors.update({each["rule"] for each in answer["findings"] if each["severity"] == "error"})
            # What fits with an error that nobody accepted counts as refused.
            if searching:
                self._search(opening, parts, answer)

    def _search(self, opening: Opening, parts: dict[str, Cells], answer: dict[str, Any]) -> None:
        self.searched += 1
        witness = search(opening, parts)
        if witness is None:
            return
        where = self.doubted if opening.blank else self.refusals
        where.append((opening.mark, str(witness), _said(answer), _ended(answer)))


def _untold(need: str, parts: dict[str, Cells]) -> bool:
    """Tell whether a need is of a part of which the catalogue leaves a cell empty."""
    number = need.removeprefix("part ").partition(".")[0] if need.startswith("part ") else ""
    part = parts.get(number)
    return part is not None and any(part.get(name) is None for name in SHEETS[part["kind"]][1])


def _said(answer: dict[str, Any]) -> str:
    errors = [each["message"] for each in answer["findings"] if each["severity"] == "error"]
    return errors[0] if errors else ""


def _ended(answer: dict[str, Any]) -> str:
    """Name the rules of the last slot that the program's search came to."""
    refusals = [each for point in answer["lock_points"] for each in point["refused"]]
    for roles in (("supply", "battery", "wire", "power-transfer"), ("unit",), ("cylinder", "lock", "reader")):
        rules = sorted({each["rule"] for each in refusals if each["role"] in roles and each["rule"] not in _ALWAYS})
        if rules:
            return ", ".join(rules)
    return "a finding on a fit"


def drawn(seed: int, count: int) -> Iterator[tuple[dict[str, Cells], list[Opening]]]:
    """Draw catalogues with their surveys, a batch at a time."""
    for first in range(0, count, BATCH):
        rng = Random(f"{seed}/{first}")
        parts = shops.catalogue(rng)
        yield parts, surveys.survey(rng, parts, min(BATCH, count - first), first + 1)


def verified(seed: int, count: int, searching: bool = True, digits: int | None = None) -> Report:
    """Draw, let the program answer, and judge; where told, of what is read in millimetres with so many decimals."""
    report = Report()
    for parts, openings in drawn(seed, count):
        read = openings if digits is None else [in_millimetres(opening, digits) for opening in openings]
        answers = answered(parts, read)
        for opening, truth in zip(read, openings, strict=True):
            before = len(report.refusals)
            report.take(opening, parts, answers[opening.mark], searching)
            if digits is not None and len(report.refusals) == before and refused(answers[opening.mark]):
                witness = None if opening.blank else search(truth, parts)
                if witness is not None:
                    report.rounded_off.append((opening.mark, str(witness), _said(answers[opening.mark])))
    return report


def told(report: Report) -> str:
    """Return the report as a table."""
    lines = [
        f"openings {report.openings}: fitted {report.passed} (every cell given: {report.fitted_whole}), refused "
        f"{report.refused}, right by rounding {report.rounded}, to measure {report.measured}, fitted with an open "
        f"error {report.unjudged}",
        "    by form: "
        + "; ".join(
            f"{form} " + ", ".join(f"{count} {what}" for what, count in sorted(counts.items()))
            for form, counts in sorted(report.forms.items())
        ),
        "    ways: " + ", ".join(f"{unit} by {power} {count}" for (unit, power), count in sorted(report.ways.items())),
        "    open errors: " + ", ".join(f"{rule} {count}" for rule, count in report.open_errors.most_common()),
        f"false passes: {report.wrong} of {report.fitted_whole}",
        "",
        f"{'family':<28}{'passes':>8}{'share':>8}{'guessed':>9}",
    ]
    for family, found in sorted(report.families.items(), key=lambda entry: (-len(entry[1]), entry[0])):
        guessed = sum(each.guessed for each in found)
        lines.append(f"{family:<28}{len(found) - guessed:>8}{report.share(family):>8.1%}{guessed:>9}")
        lines += [f"    {each.mark}: {each.sentence}" for each in found[:_EXAMPLES]]
    feasible = report.fitted_whole + len(report.refusals)
    lines += [
        "",
        f"refused {report.refused}, searched {report.searched}, false refusals {len(report.refusals)} of {feasible} "
        f"feasible, every cell given ({len(report.refusals) / max(feasible, 1):.2%}); with open cells "
        f"{len(report.doubted)}",
    ]
    by_form = Counter(mark[:2] for mark, _, _, _ in report.refusals)
    lines.append(f"    by form: {', '.join(f'{form} {count}' for form, count in sorted(by_form.items()))}")
    for ended, count in Counter(each[3] for each in report.refusals).most_common():
        lines.append(f"    {count} ended by {ended}")
        for mark, witness, said, _ in [each for each in report.refusals if each[3] == ended][:_EXAMPLES]:
            lines.append(f"        {mark}: {witness}")
            lines.append(f"            the program: {said[:200]}")
    lines += [f"refused as read in millimetres, and feasible in truth: {len(report.rounded_off)}"]
    lines += [
        f"    {mark}: {witness}\n            the program: {said[:300]}" for mark, witness, said in report.rounded_off
    ]
    lines += ["", f"to measure where every cell was given: {len(report.unknowns)}"]
    lines += [f"    {mark}: {needs}" for mark, needs in report.unknowns]
    return "\n".join(lines)


def main() -> None:
    """Run from the command line."""
    parser = argparse.ArgumentParser(prog="python -m tests.verifier.run", description=__doc__)
    parser.add_argument("--openings", type=int, default=2000, help="openings a seed (default: 2000)")
    parser.add_argument("--seeds", type=int, default=1, help="how many seeds, from --first on (default: 1)")
    parser.add_argument("--first", type=int, default=1, help="first seed (default: 1)")
    parser.add_argument("--digits", type=int, help="read every length in millimetres, with so many decimals")
    given = parser.parse_args()
    for seed in range(given.first, given.first + given.seeds):
        print(f"seed {seed}")
        print(told(verified(seed, given.openings, digits=given.digits)))


if __name__ == "__main__":
    main()
