"""What a finding says, in the language in force; compared, stored and sent to machines it stays as its rule made it."""

from hwsched.kept_sentences import GATE, kept_phrase
from hwsched.language import phrase
from hwsched.rules.rule_titles import title_of
from hwsched.rules.wording import label_of
from hwsched.values import Finding


def message_of(finding: Finding) -> str:
    """Return the message for a person."""
    return kept_phrase(finding.message, finding.rule)


def cure_of(finding: Finding) -> str:
    """Return the cure for a person."""
    return kept_phrase(finding.cure, finding.rule)


def about_said(finding: Finding) -> str:
    """Return which of several things of an opening it is of, for a person; names and numbers stay as they are."""
    return kept_phrase(title_of(finding.about), GATE)


def label_said(need: str) -> str:
    """Return what a missing fact is called, for a person."""
    return kept_phrase(label_of(need), GATE)


def rule_said(rule_id: str) -> str:
    """Return what people call a rule; its identifier where this version has no such rule."""
    return phrase(title_of(rule_id))


def finding_named(finding: Finding) -> str:
    """Return what people call a finding: by its rule, and by which of several things it is of."""
    about = about_said(finding)
    return f"{rule_said(finding.rule)}, {about}" if about else rule_said(finding.rule)
