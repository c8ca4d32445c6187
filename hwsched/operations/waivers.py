"""Laying waivers over findings: which hold, which have lapsed, which are past, which nothing needs any more."""

import hashlib
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace
from datetime import date

from hwsched.cases import Case, Finding, Settings
from hwsched.cases.case_key import survey_key
from hwsched.cases.record import Waiver
from hwsched.model.columns import json_text
from hwsched.rules import in_rulebook
from hwsched.rules.judging import limits_of


def facts_of(case: Case, finding: Finding) -> str:
    """Hash what a waiver at an opening is given for: its surveyed facts and choices, and what the finding says.

    Equal for openings alike; a catalogue or a setting changes it only through what the finding says.
    """
    said = [survey_key(case), finding.rule, finding.about, finding.message]
    return hashlib.sha256(json_text(said).encode()).hexdigest()


def facts_of_rule(rule_id: str, settings: Settings) -> str:
    """Hash what a waiver for the whole project is given for: the rule with its limits in force."""
    rule = in_rulebook(rule_id)
    limits = {} if rule is None else dict(limits_of(rule, settings))
    return hashlib.sha256(json_text([rule_id, sorted(limits.items())]).encode()).hexdigest()


@dataclass
class Laid:
    """Findings of one opening with waivers laid over, and what is to be said of the waivers."""

    findings: tuple[Finding, ...]
    past: list[Waiver] = field(default_factory=list)
    lapsed: list[Waiver] = field(default_factory=list)
    unneeded: list[Waiver] = field(default_factory=list)


@dataclass(frozen=True)
class WaiverBook:
    """All waivers of a project, ready to be laid over many openings."""

    by_facts: dict[str, list[Waiver]]
    by_rule: dict[str, list[Waiver]]
    """Those for the whole project that hold."""
    at_opening: dict[str, list[Waiver]]
    rules: frozenset[str]
    """Rules of which something is waived."""
    today: date

    @classmethod
    def of(cls, waivers: Iterable[Waiver], settings: Settings, today: date) -> "WaiverBook":
        """Sort waivers by what they are found by."""
        by_facts: dict[str, list[Waiver]] = {}
        by_rule: dict[str, list[Waiver]] = {}
        at_opening: dict[str, list[Waiver]] = {}
        for waiver in waivers:
            if waiver.scope == "project":
                if not waiver.past(today) and waiver.facts == facts_of_rule(waiver.rule, settings):
                    by_rule.setdefault(waiver.rule, []).append(waiver)
                continue
            by_facts.setdefault(waiver.facts, []).append(waiver)
            if waiver.opening_id is not None:
                at_opening.setdefault(waiver.opening_id, []).append(waiver)
        rules = {waiver.rule for found in by_facts.values() for waiver in found} | by_rule.keys()
        return cls(by_facts, by_rule, at_opening, frozenset(rules), today)

    def lay(self, case: Case, findings: Sequence[Finding]) -> Laid:
        """Lay the waivers over the findings of one opening; none is hidden."""
        opening_id = case.opening.id
        laid = Laid(())
        used: set[str] = set()
        out = []
        for finding in findings:
            if finding.rule not in self.rules:
                out.append(finding)
                continue
            holds = [w for w in self.by_rule.get(finding.rule, ()) if w.about in ("", finding.about)]
            for waiver in self.by_facts.get(facts_of(case, finding), ()):
                if waiver.scope == "opening" and waiver.opening_id != opening_id:
                    continue
                used.add(waiver.id)
                if waiver.past(self.today):
                    laid.past.append(waiver)
                else:
                    holds.append(waiver)
            out.append(replace(finding, waived=True, waived_by=holds[-1].words) if holds else finding)
        standing = {(finding.rule, finding.about) for finding in findings}
        for waiver in self.at_opening.get(opening_id, ()):
            if waiver.id not in used:
                same = (waiver.rule, waiver.about) in standing
                (laid.lapsed if same else laid.unneeded).append(waiver)
        laid.findings = tuple(out)
        return laid
