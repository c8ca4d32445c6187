"""Rules: one small file a rule, in a folder a discipline. The tuple below is their table of contents.

A rule checks a stored fit and, in its slot, is a constraint while a fit is built. Geometry belongs to `calc`.
"""

from hwsched.cases import Case, Finding, Fit
from hwsched.rules.judging import RuleError, findings_of, judge, limits_of, severity_of
from hwsched.rules.rule import DEFERS, Limit, Limits, Rule, Slot, Verdict

RULES: tuple[Rule, ...] = ()

_IN_SLOT: dict[str, tuple[Rule, ...]] = {
    slot: tuple(rule for rule in RULES if rule.slot == slot) for slot in ("lock", "unit", "power", "whole")
}


def rules_in_slot(slot: Slot) -> tuple[Rule, ...]:
    """Return the rules that speak in a slot, in the order of the table of contents."""
    return _IN_SLOT[slot]


def rule_named(rule_id: str) -> Rule | None:
    """Return the rule of that identifier."""
    return next((rule for rule in RULES if rule.id == rule_id), None)


def check(case: Case, fit: Fit) -> tuple[Finding, ...]:
    """Judge an opening and its fit by every rule that is not switched off.

    Parameters
    ----------
    case : Case
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
    return findings_of(RULES, case, fit)


__all__ = [
    "DEFERS",
    "RULES",
    "Limit",
    "Limits",
    "Rule",
    "RuleError",
    "Slot",
    "Verdict",
    "check",
    "judge",
    "limits_of",
    "rule_named",
    "rules_in_slot",
    "severity_of",
]
