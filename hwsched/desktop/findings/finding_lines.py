"""Findings of openings and supplies as lines: one a finding, and one a missing fact, whoever asks. No widgets."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from hwsched.desktop.looks.severities import severity_order
from hwsched.language import phrase
from hwsched.operations.findings.checked import Checked
from hwsched.operations.findings.checked_supplies import CheckedSupply
from hwsched.operations.findings.waivers import Spoken
from hwsched.rules import OF_WAIVERS
from hwsched.rules.saying import cure_of, label_said, message_of, rule_said
from hwsched.values import Finding


@dataclass(frozen=True, slots=True)
class FindingLine:
    """One line: a finding at an opening or a supply, or a fact that is missing there."""

    id: str
    opening: str
    """Empty where it is said of a supply."""
    mark: str
    """Of the opening, or the name of the supply."""
    building: str
    level: str
    findings: tuple[Finding, ...]
    """The finding; of a missing fact all that ask for it, the worst first."""
    need: str = ""
    """The missing fact, as ``entity.attribute``; empty for a finding that is proved."""
    supply: str = ""
    """The supply of which it is said."""

    @property
    def first(self) -> Finding:
        """The finding, or the worst of those that ask for a fact."""
        return self.findings[0]

    @property
    def title(self) -> str:
        """What rule speaks, or how many of them."""
        titles = list(dict.fromkeys(rule_said(each.rule) for each in self.findings))
        return (
            titles[0]
            if len(titles) == 1
            else phrase("{titles} and {count} more", titles=titles[0], count=len(titles) - 1)
        )

    @property
    def said(self) -> str:
        """What is found."""
        return phrase("Not known: {label_of}", label_of=label_said(self.need)) if self.need else message_of(self.first)

    @property
    def cure(self) -> str:
        """What helps: of a missing fact to find it, whoever asks."""
        return phrase("Find out {label_of}", label_of=label_said(self.need)) if self.need else cure_of(self.first)

    @property
    def text(self) -> str:
        """In which words are looked for."""
        rules = " ".join(each.rule for each in self.findings)
        words = (self.mark, self.building, self.level, self.first.severity, rules, self.title, self.said, self.cure)
        return " ".join((*words, self.first.about)).casefold()

    @property
    def waived(self) -> bool:
        """Whether all of it is accepted."""
        return all(each.waived for each in self.findings)

    @property
    def spoken(self) -> tuple[Spoken, ...]:
        """What of it can be waived."""
        return tuple(
            Spoken(self.opening, each.rule, each.about, supply=self.mark if self.supply else "")
            for each in self.findings
            if not each.waived and each.rule not in OF_WAIVERS
        )


def finding_lines(checked: Iterable[Checked], supplies: Iterable[CheckedSupply] = ()) -> list[FindingLine]:
    """Return the lines of openings and then of supplies, the worst of each first."""
    of_openings = [line for each in checked for line in lines_of(each)]
    return of_openings + [line for each in supplies for line in lines_of_supply(each)]


def lines_of(checked: Checked) -> list[FindingLine]:
    """Return the lines of an opening: findings in their order, a missing fact where it is first asked for."""
    opening = checked.given.opening
    at = FindingLine("", opening.id, opening.mark, opening.building or "", opening.level or "", ())
    return _lines(at, checked.findings)


def lines_of_supply(checked: CheckedSupply) -> list[FindingLine]:
    """Return the lines of a supply: what is said of none of its openings."""
    supply = checked.result.supply
    at = FindingLine("", "", supply.name, supply.building or "", supply.level or "", (), supply=supply.id)
    return _lines(at, checked.findings)


def _lines(at: FindingLine, findings: Iterable[Finding]) -> list[FindingLine]:
    together: dict[str, list[Finding]] = {}
    order: dict[str, str] = {}
    for number, finding in enumerate(findings):
        # What is accepted asks for nothing any more: it stays a line of its own.
        needs = finding.needs if not finding.waived else ()
        for need in needs:
            together.setdefault(f"needs {need}", []).append(finding)
            order[f"needs {need}"] = need
        if not needs:
            together[f"{number} {finding.rule} {finding.about}"] = [finding]
    lines = [
        replace(
            at,
            id=f"{at.opening or at.supply} {key}",
            findings=tuple(sorted(found, key=severity_order)),
            need=order.get(key, ""),
        )
        for key, found in together.items()
    ]
    return sorted(lines, key=lambda line: severity_order(line.first))


def sharing(lines: Sequence[FindingLine], chosen: FindingLine) -> list[FindingLine]:
    """Return the lines that the same cure mends: the same missing fact, or the same rule with the same cure."""
    key = _mended_by(chosen)
    return [each for each in lines if _mended_by(each) == key]


def shares(lines: Sequence[FindingLine], chosen: Iterable[FindingLine]) -> list[list[FindingLine]]:
    """Return for each cure of the chosen lines, in their order, all lines that it mends."""
    found: dict[object, list[FindingLine]] = {_mended_by(each): [] for each in chosen}
    for each in lines if found else ():
        share = found.get(_mended_by(each))
        if share is not None:
            share.append(each)
    return list(found.values())


def _mended_by(line: FindingLine) -> object:
    return line.need or (line.first.rule, line.first.cure)
