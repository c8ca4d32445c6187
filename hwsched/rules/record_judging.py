"""Runs the rules of records, and turns what they say into findings."""

from hwsched.rules.judging import RuleError, severity_of
from hwsched.rules.record_rule import RecordRule
from hwsched.rules.records import RECORD_RULES
from hwsched.rules.rule import Verdict
from hwsched.values import Finding, Settings
from hwsched.values.record import Record


def judge_record(record: Record, settings: Settings) -> tuple[Finding, ...]:
    """Judge what is on record of an opening by every rule that is not switched off.

    Raises
    ------
    RuleError
        When a rule falls over.
    """
    return tuple(
        finding_of(rule, verdict)
        for rule in RECORD_RULES
        if rule.id not in settings.rules_off
        for verdict in judge(rule, record)
    )


def judge(rule: RecordRule, record: Record) -> tuple[Verdict, ...]:
    """Let one rule speak; raises RuleError when it falls over."""
    try:
        return tuple(rule.judge(record))
    except Exception as error:
        raise RuleError(f"rule {rule.id} failed: {error!r}; opening {record.given.opening.mark}") from error


def finding_of(rule: RecordRule, verdict: Verdict) -> Finding:
    """Turn a verdict into a finding."""
    return Finding(
        rule.id,
        rule.discipline,
        severity_of(rule, verdict),
        verdict.message,
        rule.basis,
        verdict.cure or rule.cure,
        verdict.values,
        verdict.about,
        verdict.needs,
    )
