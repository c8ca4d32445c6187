"""How one rule speaks: with which limits, and how its verdict becomes a finding.

What is judged stands in the rules; which of them judge an opening, a supply or a record stands in `judging`.
"""

from collections.abc import Iterable, Iterator, Mapping

from hwsched.rules.rule import DEFERS, AnyRule, Judged, OpeningRule, Rule, Verdict
from hwsched.values import SEVERITIES, Finding, Fit, OpeningInput, Settings, Severity


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
        # As limits_of has it; asked straight, since a fit asks hundreds of times.
        return tuple(rule.judge(*judged, settings.limits_for(rule.id, rule.declared)))
    # A rule may come from another package: its slip must be known as one of the rule, not of the opening.
    except Exception as error:
        raise RuleError(f"rule {rule.id} failed: {error!r}; {rule.subject.told(*judged)}") from error


def each_verdict(
    rules: Iterable[OpeningRule], given: OpeningInput, sound: OpeningInput, fit: Fit
) -> Iterator[tuple[OpeningRule, Verdict]]:
    """Let those of some rules that are not switched off speak of an opening, one after the other.

    Parameters
    ----------
    rules : iterable of Rule
        Of openings.
    given, sound : OpeningInput
        As it stands, and without what cannot be: rules would reckon with a leaf of 3 mm or 90 m as if it stood there.
        Only the one that names such facts sees them.
    fit : Fit
        What is judged.

    Raises
    ------
    RuleError
        As `judge`.
    """
    for rule, limits in given.settings.spoken(rules):
        judged = given if rule.sees_all else sound
        try:
            verdicts = tuple(rule.judge(judged, fit, limits))
        except Exception as error:
            raise RuleError(f"rule {rule.id} failed: {error!r}; {rule.subject.told(judged, fit)}") from error
        for verdict in verdicts:
            yield rule, verdict


def severity_of(rule: AnyRule, verdict: Verdict) -> Severity:
    """Return the verdict's severity: its own, else the rule's, one step milder where facts are missing."""
    if verdict.severity is not None:
        return verdict.severity
    if verdict.needs:
        # Not known is not wrong: an opening that may be in order must not stand beside those that cannot be.
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
