"""Severities in words, in the one way in which every list says them: errors first, then warnings, then notes."""

from collections.abc import Mapping
from typing import Final

from hwsched.desktop.looks.tokens import Text
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.values import SEVERITIES, Finding, Severity

COLOURS: Final[Mapping[Severity, Text]] = {"error": "refused", "warning": "held", "note": "soft"}
_WORDS: Final[Mapping[Severity, str]] = {
    "error": to_phrase("Error"),
    "warning": to_phrase("Warning"),
    "note": to_phrase("Note"),
}


def severity_word(severity: Severity, *, waived: bool = False) -> str:
    """Return how a severity stands in a cell, and before what a finding says.

    Examples
    --------
    >>> severity_word("error"), severity_word("note", waived=True)
    ('Error', 'Note, waived')
    """
    said = phrase(_WORDS[severity])
    return phrase("{severity}, waived", severity=said) if waived else said


def severity_order(finding: Finding) -> int:
    """Order findings as severe ones first."""
    return SEVERITIES.index(finding.severity)


def severities_in_words(counts: Mapping[Severity, int]) -> list[str]:
    """Return a few words for each severity that there is.

    Examples
    --------
    >>> severities_in_words({"error": 1, "warning": 0, "note": 3})
    ['1 error', '3 notes']
    """
    words = {
        "error": phrase_of_count("{count} error", "{count} errors", counts.get("error", 0)),
        "warning": phrase_of_count("{count} warning", "{count} warnings", counts.get("warning", 0)),
        "note": phrase_of_count("{count} note", "{count} notes", counts.get("note", 0)),
    }
    return [words[each] for each, count in counts.items() if count]
