"""The page of a rule for people: all that it declares; desktop and command line tell the same."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from hwsched.kept_sentences import kept_phrase
from hwsched.language import phrase, to_phrase
from hwsched.rules.rule import OPENINGS, AnyRule
from hwsched.values import DISCIPLINES

_APART: Final = 3
"""Spaces between what a fact is called and what it is."""
_SLOTS = {
    "lock": to_phrase("It refuses a lock or cylinder while a fit is built."),
    "unit": to_phrase("It refuses a unit or its place while a fit is built."),
    "power": to_phrase("It refuses a way to feed the unit while a fit is built."),
    "whole": to_phrase("It judges the opening as a whole."),
}


@dataclass(frozen=True, slots=True)
class RulePage:
    """What is told of a rule, before it is set as lines of a terminal or as a page of the screen."""

    title: str
    facts: tuple[tuple[str, str], ...]
    """What each is called, and what it is."""
    paragraphs: tuple[tuple[str, ...], ...]
    """Lines of each; one that begins with spaces stands in by as many."""


def told_of(rule: AnyRule, limits: Mapping[str, float] | None = None, *, off: bool = False) -> RulePage:
    """Return what is told of a rule.

    Parameters
    ----------
    rule : Rule
        Any member of the rulebook.
    limits : mapping, optional
        Limits in force; the rule's own when left out.
    off : bool
        Whether the project has switched it off.
    """
    facts = (
        (phrase("Identifier"), rule.id),
        (phrase("Discipline"), phrase(DISCIPLINES[rule.discipline])),
        (phrase("Severity"), phrase(rule.severity.capitalize())),
        (phrase("Judges"), phrase(rule.subject.text)),
        (phrase("Basis"), phrase(rule.basis)),
    )
    told: list[tuple[str, ...]] = []
    if rule.subject is OPENINGS:
        told.append((phrase(_SLOTS[rule.slot]),))
    if rule.limits:
        lines = [phrase("Limits that a project may change:")]
        for limit in rule.limits:
            value = limit.value if limits is None else limits.get(limit.name, limit.value)
            own = "" if value == limit.value else phrase(" (the rule's own: {value:g})", value=limit.value)
            said = phrase(": {text} Source: {source}", text=phrase(limit.text), source=phrase(limit.source))
            lines.append(f"  {limit.name} = {value:g}{own}{said}.")
            lines.append(phrase("    A project may set {bounds}.", bounds=limit.bounds))
        told.append(tuple(lines))
    told.append((phrase("Cure: {cure}", cure=kept_phrase(rule.cure, rule.id)),))
    if rule.defers:
        told.append((phrase("It advises; the label, the code in force, the authority and licensed practice decide."),))
    if off:
        told.append((phrase("Switched off in this project."),))
    return RulePage(phrase(rule.title), facts, tuple(told))


def page_of(rule: AnyRule, limits: Mapping[str, float] | None = None, *, off: bool = False) -> str:
    """Return the page of a rule as lines of equally wide letters, as for `told_of`."""
    page = told_of(rule, limits, off=off)
    wide = max(len(name) for name, _ in page.facts) + _APART
    facts = "\n".join(f"{name.ljust(wide)}{text}" for name, text in page.facts)
    return "\n\n".join((page.title, facts, *("\n".join(lines) for lines in page.paragraphs)))
