"""What a finding says, in the language in force; compared, stored and sent to machines it stays as its rule made it."""

from hwsched.kept_sentences import kept_phrase
from hwsched.values import Finding


def message_of(finding: Finding) -> str:
    """Return the message for a person."""
    return kept_phrase(finding.message, finding.rule)


def cure_of(finding: Finding) -> str:
    """Return the cure for a person."""
    return kept_phrase(finding.cure, finding.rule)
