"""Runs the rules of supplies and circuits, and turns what they say into findings."""

from collections.abc import Mapping

from hwsched.rules.circuit_rule import CircuitRule, CircuitVerdict
from hwsched.rules.circuits import CIRCUIT_RULES
from hwsched.rules.judging import RuleError, limits_of, severity_of
from hwsched.rules.rule import DEFERS
from hwsched.values import Case, Finding, Settings
from hwsched.values.power import PowerFinding, WorkedSupply


def judge_supply(worked: WorkedSupply, cases: Mapping[str, Case], settings: Settings) -> tuple[PowerFinding, ...]:
    """Judge a supply and its circuits by every rule that is not switched off.

    Parameters
    ----------
    worked : WorkedSupply
        As worked out.
    cases : mapping
        Openings that it feeds, by identifier.
    settings : Settings
        Limits of the project, rules that are off.

    Raises
    ------
    RuleError
        When a rule falls over.
    """
    if not worked.circuits:
        return ()
    return tuple(
        finding_of(rule, verdict, worked)
        for rule in CIRCUIT_RULES
        if rule.id not in settings.rules_off
        for verdict in judge(rule, worked, cases, settings)
    )


def judge(
    rule: CircuitRule, worked: WorkedSupply, cases: Mapping[str, Case], settings: Settings
) -> tuple[CircuitVerdict, ...]:
    """Let one rule speak; raises RuleError when it falls over."""
    try:
        return tuple(rule.judge(worked, cases, limits_of(rule, settings)))
    except Exception as error:
        raise RuleError(f"rule {rule.id} failed: {error!r}; supply: {worked.supply}") from error


def finding_of(rule: CircuitRule, verdict: CircuitVerdict, worked: WorkedSupply) -> PowerFinding:
    """Turn a verdict into a finding of its supply."""
    cure = verdict.cure or rule.cure
    finding = Finding(
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
    return PowerFinding(finding, worked.supply.id, verdict.circuit_id, verdict.opening_ids)
