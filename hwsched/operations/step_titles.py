"""Titles of the journal's steps as people read them: those of earlier versions called rules by their identifiers."""

import re
from typing import Final

from hwsched.kept_sentences import STEPS, kept_phrase

_WAIVER: Final = re.compile("(Waive |Take back the waiver of )")
_IDENTIFIER: Final = re.compile(r"(?<![\w'-])[a-z]+(?:-[a-z0-9]+)+(?![\w'-])")


def step_said(summary: str) -> str:
    """Return the title of a step in the language in force."""
    return kept_phrase(titled(summary), STEPS)


def titled(summary: str) -> str:
    """Return the title of a step in English.

    Examples
    --------
    >>> titled("Waive fit-complete of M008 for this opening")
    "Waive 'Fit complete before a packet is issued' of M008 for this opening"
    >>> titled("Waive 'Lock made for the weather' of A-b for this opening"), titled("Edit Hand of fit-complete")
    ("Waive 'Lock made for the weather' of A-b for this opening", 'Edit Hand of fit-complete')
    """
    begun = _WAIVER.match(summary)
    # The rules come first; a mark of an opening may read as one of them.
    rules, of, rest = summary.partition(" of " if summary.startswith("Waive ") else "\n")
    return summary if begun is None else f"{begun[1]}{_IDENTIFIER.sub(_quoted, rules[begun.end() :])}{of}{rest}"


def _quoted(found: re.Match[str]) -> str:
    # Only here: a list of steps is shown before anything is judged.
    from hwsched.rules.rule_titles import title_of  # noqa: PLC0415

    title = title_of(found[0])
    return found[0] if title == found[0] else f"'{title}'"
