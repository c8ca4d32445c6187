"""What people call each rule, by its identifier: told by the table of contents once all rules are loaded."""

from typing import Final

TITLES: Final[dict[str, str]] = {}
"""Filled by `hwsched.rules`. Rules cannot ask it themselves, since it loads them."""


def title_of(rule_id: str) -> str:
    """Return what people call a rule; its identifier where this version has no such rule.

    In English, for sentences that are kept. No identifier of a rule stands in a sentence that people read.

    Examples
    --------
    >>> title_of("fit-complete"), title_of("of-an-earlier-version")
    ('Fit complete before a packet is issued', 'of-an-earlier-version')
    """
    return TITLES.get(rule_id, rule_id)
