"""How many errors, warnings and notes there are, in words."""

from collections.abc import Mapping

from hwsched.language import phrase_of_count
from hwsched.values import Severity


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
