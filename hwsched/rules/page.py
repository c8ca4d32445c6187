"""The page of a rule for people: all that it declares, as plain text; desktop and command line show the same."""

from collections.abc import Mapping
from typing import Final

from hwsched.kept_sentences import kept_phrase
from hwsched.language import phrase, to_phrase
from hwsched.rules.rule import OPENINGS, AnyRule
from hwsched.values import DISCIPLINES

SLOTS: Final = {
    "lock": to_phrase("It refuses a lock or cylinder while a fit is built."),
    "unit": to_phrase("It refuses a unit or its place while a fit is built."),
    "power": to_phrase("It refuses a way to feed the unit while a fit is built."),
    "whole": to_phrase("It judges the opening as a whole."),
}
"""What a rule of openings does, by its slot."""


def page_of(rule: AnyRule, limits: Mapping[str, float] | None = None, *, off: bool = False) -> str:
    """Return the page of a rule.

    Parameters
    ----------
    rule : Rule
        Any member of the rulebook.
    limits : mapping, optional
        Limits in force; the rule's own when left out.
    off : bool
        Whether the project has switched it off.
    """
    lines = [
        phrase(rule.title),
        "",
        phrase("Identifier   {name}", name=rule.id),
        phrase("Discipline   {name}", name=phrase(DISCIPLINES[rule.discipline])),
        phrase("Severity     {word}", word=phrase(rule.severity.capitalize())),
        phrase("Judges       {what}", what=phrase(rule.subject.text)),
        phrase("Basis        {basis}", basis=phrase(rule.basis)),
    ]
    if rule.subject is OPENINGS:
        lines += ["", phrase(SLOTS[rule.slot])]
    if rule.limits:
        lines += ["", phrase("Limits that a project may change:")]
        for limit in rule.limits:
            value = limit.value if limits is None else limits.get(limit.name, limit.value)
            own = "" if value == limit.value else phrase(" (the rule's own: {value:g})", value=limit.value)
            said = phrase(": {text} Source: {source}", text=phrase(limit.text), source=phrase(limit.source))
            lines.append(f"  {limit.name} = {value:g}{own}{said}.")
            lines.append(phrase("    A project may set {bounds}.", bounds=limit.bounds_said()))
    lines += ["", phrase("Cure: {cure}", cure=kept_phrase(rule.cure, rule.id))]
    if rule.defers:
        lines += ["", phrase("It advises; the label, the code in force, the authority and licensed practice decide.")]
    if off:
        lines += ["", phrase("Switched off in this project.")]
    return "\n".join(lines)
