"""Runs rules over what they judge, and turns what they say into findings.

Here belongs how a rule is called, with which limits, and how its verdict becomes a finding. What is judged stands in
the rules; waivers are laid over findings by an operation.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from typing import Final

from hwsched import rules
from hwsched.rules.impossible_facts import without_impossible
from hwsched.rules.rule import DEFERS, AnyRule, Inputs, Judged, OpeningRule, Rule, Verdict
from hwsched.values import SEVERITIES, Finding, Fit, LockPoint, OpeningInput, Settings, Severity
from hwsched.values.power import PowerFinding, SupplyResult
from hwsched.values.record import Record


class RuleError(Exception):
    """A rule that fell over: a bug of the rule, never a statement on the opening."""


def limits_of(rule: AnyRule, settings: Settings) -> Mapping[str, float]:
    """Return a rule's limits with the project's changes.

    Parameters
    ----------
    rule : Rule
        Any rule.
    settings : Settings
        Its ``limits`` hold ``rule-id.limit`` to value; names that no rule has are left alone.

    Returns
    -------
    mapping
        Name of the limit to value, in the unit of its suffix.
    """
    return settings.limits_for(rule.id, rule.declared)


def judge(rule: Rule[*Judged], *judged: *Judged, settings: Settings) -> tuple[Verdict, ...]:
    """Let one rule speak.

    Parameters
    ----------
    rule : Rule
        Any rule.
    judged
        What its subject is made of: an opening's input and fit, a supply's result and the inputs that it feeds, a
        record.
    settings : Settings
        Say its limits; whether it is switched off is asked before.

    Raises
    ------
    RuleError
        When the rule falls over; names the rule and what it fell over.
    """
    try:
        return tuple(rule.judge(*judged, limits_of(rule, settings)))
    except Exception as error:
        raise RuleError(f"rule {rule.id} failed: {error!r}; {rule.subject.told(*judged)}") from error


def severity_of(rule: AnyRule, verdict: Verdict) -> Severity:
    """Return the verdict's severity: its own, else the rule's, one step milder where facts are missing."""
    if verdict.severity is not None:
        return verdict.severity
    if verdict.needs:
        return SEVERITIES[min(SEVERITIES.index(rule.severity) + 1, len(SEVERITIES) - 1)]
    return rule.severity


def finding_of(rule: AnyRule, verdict: Verdict) -> Finding:
    """Turn a verdict into a finding."""
    cure = verdict.cure or rule.cure
    return Finding(
        rule.id,
        rule.discipline,
        severity_of(rule, verdict),
        verdict.message,
        rule.basis,
        f"{cure} {DEFERS}" if rule.defers else cure,
        verdict.values,
        verdict.about,
        verdict.needs,
    )


_RANK: Final = {severity: rank for rank, severity in enumerate(SEVERITIES)}


def findings_of(members: Iterable[OpeningRule], given: OpeningInput, fit: Fit) -> tuple[Finding, ...]:
    """Judge a case and its fit by some rules; findings worst first, then in the order of the rules."""
    off, sound = given.settings.rules_off, without_impossible(given)
    found = [
        finding_of(rule, verdict)
        for rule in members
        if rule.id not in off
        for verdict in judge(rule, given if rule.sees_all else sound, fit, settings=given.settings)
    ]
    found.sort(key=lambda finding: _RANK[finding.severity])
    return tuple(found)


def check(given: OpeningInput, fit: Fit) -> tuple[Finding, ...]:
    """Judge an opening and its fit by every rule that is not switched off.

    Parameters
    ----------
    given : OpeningInput
        Survey facts, catalogue and settings.
    fit : Fit
        As `hwsched.fitting.fit` built it, or as stored.

    Returns
    -------
    tuple of Finding
        Worst first; equal for equal cases. Waivers are not laid over yet.

    Raises
    ------
    RuleError
        When a rule falls over.
    """
    return findings_of(rules.RULES, given, fit)


def judge_supply(result: SupplyResult, inputs: Inputs, settings: Settings) -> tuple[PowerFinding, ...]:
    """Judge a supply and its circuits by every rule that is not switched off.

    Parameters
    ----------
    result : SupplyResult
        As worked out.
    inputs : mapping
        Openings that it feeds, by identifier.
    settings : Settings
        Limits of the project, rules that are off.

    Raises
    ------
    RuleError
        When a rule falls over.
    """
    if not result.circuits:
        return ()
    return tuple(
        PowerFinding(finding_of(rule, verdict), result.supply.id, verdict.circuit_id, verdict.opening_ids)
        for rule in rules.CIRCUIT_RULES
        if rule.id not in settings.rules_off
        for verdict in judge(rule, result, inputs, settings=settings)
    )


def judge_record(record: Record, settings: Settings) -> tuple[Finding, ...]:
    """Judge what is on record of an opening by every rule that is not switched off.

    Raises
    ------
    RuleError
        When a rule falls over.
    """
    return tuple(
        finding_of(rule, verdict)
        for rule in rules.RECORD_RULES
        if rule.id not in settings.rules_off
        for verdict in judge(rule, record, settings=settings)
    )


def of_opening(said: Sequence[tuple[LockPoint, Sequence[Finding]]]) -> tuple[Finding, ...]:
    """Put together what the rules say of an opening's lock points: what is said of all of them stands once.

    Parameters
    ----------
    said : sequence of (LockPoint, findings)
        One entry a lock point.

    Returns
    -------
    tuple of Finding
        Worst first. What concerns some points only names them.
    """
    if len(said) == 1:
        return tuple(said[0][1])
    found: list[tuple[Finding, list[str]]] = []
    for point, findings in said:
        for finding in findings:
            held = next((names for each, names in found if each == finding and point.name not in names), None)
            if held is None:
                found.append((finding, [point.name]))
            else:
                held.append(point.name)
    named = []
    for finding, names in found:
        if len(names) == len(said):
            named.append(finding)
            continue
        where = ", ".join(names)
        named.append(replace(finding, message=f"{where[:1].upper()}{where[1:]}: {finding.message}", point=where))
    named.sort(key=lambda finding: _RANK[finding.severity])
    return tuple(named)
