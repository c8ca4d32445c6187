"""Laying waivers over findings: which hold, which have lapsed, which are past, which nothing needs any more."""

import hashlib
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import astuple, dataclass, field, replace
from datetime import date

from hwsched.model.columns import json_text
from hwsched.rules import OF_WAIVERS, in_rulebook, limits_of
from hwsched.values import Finding, OpeningInput, Settings
from hwsched.values.earlier_words import in_first_words
from hwsched.values.input_key import survey_key
from hwsched.values.power import SupplyResult
from hwsched.values.record import Waiver


def facts_of(given: OpeningInput, finding: Finding) -> str:
    """Hash what a waiver at an opening is given for: its surveyed facts and choices, and what the finding says.

    Equal for openings alike; a catalogue or a setting changes it only through what the finding says. The input is that
    of the lock point that the finding speaks of.
    """
    # Its numbers, not its words, where it has some: how lengths are shown must not wake a waiver.
    numbers = sorted(finding.values.items())
    # Without what was worked out at other lock points: a waiver was given for this one's facts.
    facts = survey_key(replace(given, beside=()))
    said = [facts, finding.rule, finding.about, numbers or finding.message, list(finding.needs)]
    if finding.point:
        said.append(finding.point)
    return hashlib.sha256(in_first_words(json_text(said)).encode()).hexdigest()


def facts_of_supply(result: SupplyResult, finding: Finding) -> str:
    """Hash what a waiver at a supply is given for: what is laid there, and what the finding says."""
    circuits = [[each.circuit.id, each.openings] for each in result.circuits]
    numbers = sorted(finding.values.items())
    # Neither its name nor a note: what was accepted is what stands there.
    laid = replace(result.supply, name="", notes=None)
    said = ["supply", *astuple(laid), circuits, finding.rule, finding.about, numbers or finding.message]
    return hashlib.sha256(json_text([*said, list(finding.needs)]).encode()).hexdigest()


def input_of(inputs: Sequence[OpeningInput], finding: Finding) -> OpeningInput:
    """Return the input of the lock point that a finding speaks of; the first where it speaks of the opening."""
    return next((given for given in inputs if finding.point and given.point.name == finding.point), inputs[0])


def facts_of_rule(rule_id: str, settings: Settings) -> str:
    """Hash what a waiver for the whole project is given for: the rule with its limits in force."""
    rule = in_rulebook(rule_id)
    limits = {} if rule is None else dict(limits_of(rule, settings))
    said = json_text([rule_id, sorted(limits.items())])
    return hashlib.sha256(in_first_words(said).encode()).hexdigest()


@dataclass
class WaivedFindings:
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
    ended: dict[str, list[Waiver]]
    """Those for the whole project whose last day is over."""
    outdated: dict[str, list[Waiver]]
    """Those for the whole project that were given for other limits."""
    at_opening: dict[str, list[Waiver]]
    rules: frozenset[str]
    """Rules of which something is waived."""
    today: date

    @classmethod
    def of(cls, waivers: Iterable[Waiver], settings: Settings, today: date) -> "WaiverBook":
        """Sort waivers by what they are found by; those of rules that are off wait until they are on again."""
        by_facts: dict[str, list[Waiver]] = {}
        by_rule: dict[str, list[Waiver]] = {}
        ended: dict[str, list[Waiver]] = {}
        outdated: dict[str, list[Waiver]] = {}
        at_opening: dict[str, list[Waiver]] = {}
        for waiver in waivers:
            # A rule that is off says nothing, from which it does not follow that its waiver is needed no more.
            if waiver.rule in settings.rules_off:
                continue
            if waiver.scope == "project":
                same = waiver.facts == facts_of_rule(waiver.rule, settings)
                held = outdated if not same else ended if waiver.past(today) else by_rule
                held.setdefault(waiver.rule, []).append(waiver)
                continue
            by_facts.setdefault(waiver.facts, []).append(waiver)
            if waiver.opening_id is not None:
                at_opening.setdefault(waiver.opening_id, []).append(waiver)
        rules = {waiver.rule for found in by_facts.values() for waiver in found}
        rules |= by_rule.keys() | ended.keys() | outdated.keys()
        return cls(by_facts, by_rule, ended, outdated, at_opening, frozenset(rules), today)

    def lay_over(self, inputs: Sequence[OpeningInput], findings: Sequence[Finding]) -> WaivedFindings:
        """Lay the waivers over the findings of one opening, given by its lock points; none is hidden.

        A waiver that has ended or lapsed asks again only while its finding stands open: once it is given anew, nothing
        needs the old one. Those of the whole project are never told to be unneeded, since one opening cannot know.
        """
        opening_id = inputs[0].opening.id
        present = WaivedFindings(())
        used: set[str] = set()
        open_: set[tuple[str, str]] = set()
        out = []
        for finding in findings:
            if finding.rule not in self.rules:
                out.append(finding)
                continue
            holds = _of(self.by_rule, finding)
            past = _of(self.ended, finding)
            for waiver in self.by_facts.get(facts_of(input_of(inputs, finding), finding), ()):
                # Openings alike have equal facts; a waiver for one of them is not one for all.
                if waiver.scope == "opening" and waiver.opening_id != opening_id:
                    continue
                if waiver.past(self.today):
                    past.append(waiver)
                else:
                    used.add(waiver.id)
                    holds.append(waiver)
            if holds:
                out.append(replace(finding, waived=True, waived_by=holds[-1].words))
                continue
            out.append(finding)
            open_.add((finding.rule, finding.about))
            # Past is not unneeded: the finding is still there, and somebody has to decide again.
            used |= {waiver.id for waiver in past}
            present.past += [waiver for waiver in past if waiver not in present.past]
            present.lapsed += [waiver for waiver in _of(self.outdated, finding) if waiver not in present.lapsed]
        for waiver in self.at_opening.get(opening_id, ()):
            if waiver.id not in used and waiver.rule not in OF_WAIVERS:
                (present.lapsed if (waiver.rule, waiver.about) in open_ else present.unneeded).append(waiver)
        present.findings = tuple(out)
        return present

    def of_supply(self, result: SupplyResult, finding: Finding) -> Finding:
        """Lay the waivers of a supply and of the whole project over a finding that stands at no opening."""
        if finding.rule not in self.rules:
            return finding
        given = self.by_facts.get(facts_of_supply(result, finding), ())
        holds = [*_of(self.by_rule, finding), *(each for each in given if not each.past(self.today))]
        return replace(finding, waived=True, waived_by=holds[-1].words) if holds else finding


def _of(held: Mapping[str, Sequence[Waiver]], finding: Finding) -> list[Waiver]:
    return [waiver for waiver in held.get(finding.rule, ()) if waiver.about in ("", finding.about)]
