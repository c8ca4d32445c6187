"""Runs the rules of supplies and circuits, and turns what they say into findings."""

from collections.abc import Mapping

from hwsched.rules.circuit_rule import CircuitRule, CircuitVerdict
from hwsched.rules.circuits import CIRCUIT_RULES
from hwsched.rules.judging import RuleError, limits_of, severity_of
from hwsched.rules.rule import DEFERS
from hwsched.values import Finding, OpeningInput, Settings
from hwsched.values.power import PowerFinding, SupplyResult


def judge_supply(
    result: SupplyResult, inputs: Mapping[str, OpeningInput], settings: Settings
) -> tuple[PowerFinding, ...]:
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
        finding_of(rule, verdict, result)
        for rule in CIRCUIT_RULES
        if rule.id not in settings.rules_off
        for verdict in judge(rule, result, inputs, settings)
    )


def judge(
    rule: CircuitRule, result: SupplyResult, inputs: Mapping[str, OpeningInput], settings: Settings
) -> tuple[CircuitVerdict, ...]:
    """Let one rule speak; raises RuleError when it falls over."""
    try:
        return tuple(rule.judge(result, inputs, limits_of(rule, settings)))
    except Exception as error:
        raise RuleError(f"rule {rule.id} failed: {error!r}; supply: {result.supply}") from error


def finding_of(rule: CircuitRule, verdict: CircuitVerdict, result: SupplyResult) -> PowerFinding:
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
    return PowerFinding(finding, result.supply.id, verdict.circuit_id, verdict.opening_ids)
