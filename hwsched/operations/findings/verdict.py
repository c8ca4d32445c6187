"""What a check comes to: how many findings, and how many openings and supplies no rule could judge."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final, Literal, Protocol, TypeAlias, TypeVar

from hwsched.operations.findings.checked import Checked
from hwsched.operations.findings.checking import CheckedProject
from hwsched.values import SEVERITIES, Finding, Severity


class _Said(Protocol):
    """What findings stand at."""

    @property
    def findings(self) -> tuple[Finding, ...]: ...


_Judged = TypeVar("_Judged", bound=_Said)

Unjudged: TypeAlias = Literal[
    "facts-changed", "earlier-version", "not-worked-out", "to-measure", "does-not-fit"
]  # fmt: skip
"""Why an opening does not pass whatever the rules say: how its fit stands, else its status."""

UNJUDGED_WORDS: Final[dict[Unjudged, str]] = {
    "facts-changed": "changed since worked out",
    "earlier-version": "worked out by an earlier version",
    "not-worked-out": "never worked out",
    "to-measure": "to measure",
    "does-not-fit": "without a fit",
}
"""As they follow a number of openings."""


@dataclass(frozen=True, slots=True)
class Counts:
    """How many of each; findings that are waived are counted as such only."""

    opening_count: int
    error_count: int
    warning_count: int
    note_count: int
    waived_count: int
    facts_changed_count: int
    earlier_version_count: int
    not_worked_out_count: int
    to_measure_count: int
    does_not_fit_count: int
    not_judged_count: int
    """The last five together."""
    supply_count: int
    """Supplies with a circuit."""
    supply_error_count: int
    """Findings of supplies themselves; what concerns an opening is counted there."""
    supply_warning_count: int
    supply_note_count: int
    supply_waived_count: int
    supply_not_judged_count: int
    """Supplies of which a circuit, or something of the supply itself, cannot be worked out."""

    @property
    def words(self) -> str:
        """The last line for people."""
        said = f"{_number(self.opening_count, 'opening')}: {self._found('')}"
        if self.supply_count:
            said += f"; {_number(self.supply_count, 'supply', 'supplies')}: {self._found('supply_')}"
        counts = [(getattr(self, f"{why.replace('-', '_')}_count"), words) for why, words in UNJUDGED_WORDS.items()]
        unjudged = [f"{count} {words}" for count, words in counts if count]
        if self.supply_not_judged_count:
            supplies = _number(self.supply_not_judged_count, "supply", "supplies")
            unjudged.append(f"{supplies} that cannot be worked out")
        return said + (f"; not judged: {', '.join(unjudged)}" if unjudged else "")

    def _found(self, whose: str) -> str:
        said = ", ".join(f"{getattr(self, f'{whose}{severity}_count')} {severity}" for severity in SEVERITIES)
        waived: int = getattr(self, f"{whose}waived_count")
        return said + (f", {waived} waived" if waived else "")

    @property
    def all_judged(self) -> bool:
        """Whether nothing is left that no rule could judge."""
        return not self.not_judged_count and not self.supply_not_judged_count


def _number(count: int, one: str, many: str = "") -> str:
    return f"{count} {one if count == 1 else many or one + 's'}"


def unjudged(checked: Checked) -> Unjudged | None:
    """Return why an opening does not pass whatever the rules say of it; None where its fit counts and is one."""
    if checked.fit is None:
        # Of an opening with several lock points one may lack what the others have.
        return "not-worked-out" if checked.standing == "current" else checked.standing
    return None if checked.fit.status == "fits" else checked.fit.status


def counts_of(checked: CheckedProject) -> Counts:
    """Count what a check found and what it could not judge."""
    openings, supplies = checked.openings, checked.supplies
    said = Counter("waived" if f.waived else f.severity for each in openings for f in each.findings)
    of_supplies = Counter("waived" if f.waived else f.severity for each in supplies for f in each.findings)
    why = Counter(filter(None, map(unjudged, openings)))
    return Counts(
        opening_count=len(openings),
        error_count=said["error"],
        warning_count=said["warning"],
        note_count=said["note"],
        waived_count=said["waived"],
        facts_changed_count=why["facts-changed"],
        earlier_version_count=why["earlier-version"],
        not_worked_out_count=why["not-worked-out"],
        to_measure_count=why["to-measure"],
        does_not_fit_count=why["does-not-fit"],
        not_judged_count=sum(why.values()),
        supply_count=len(supplies),
        supply_error_count=of_supplies["error"],
        supply_warning_count=of_supplies["warning"],
        supply_note_count=of_supplies["note"],
        supply_waived_count=of_supplies["waived"],
        supply_not_judged_count=sum(bool(each.unsolved) for each in supplies),
    )


def found(checked: Iterable[_Judged], limit: Severity) -> list[_Judged]:
    """Return the openings or supplies with an unwaived finding as bad as a limit, or worse."""
    bad = frozenset(SEVERITIES[: SEVERITIES.index(limit) + 1])
    return [each for each in checked if any(f.severity in bad and not f.waived for f in each.findings)]


def not_passed(checked: Iterable[Checked], limit: Severity) -> list[Checked]:
    """Return the openings that do not pass: those with such a finding, and those that are not judged.

    No waiver and no rule that is off lets an opening pass that has no fit that counts.
    """
    openings = list(checked)
    bad = {each.given.opening.id for each in found(openings, limit)}
    return [each for each in openings if each.given.opening.id in bad or unjudged(each) is not None]
