"""The page of a rule for people: all that it declares, as plain text; desktop and command line show the same."""

from collections.abc import Mapping

from hwsched.rules.rule import OPENINGS, AnyRule
from hwsched.values import DISCIPLINES

_SLOTS = {
    "lock": "It refuses a lock or cylinder while a fit is built.",
    "unit": "It refuses a unit or its place while a fit is built.",
    "power": "It refuses a way to feed the unit while a fit is built.",
    "whole": "It judges the opening as a whole.",
}


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
        rule.title,
        "",
        f"Identifier   {rule.id}",
        f"Discipline   {DISCIPLINES[rule.discipline]}",
        f"Severity     {rule.severity.capitalize()}",
        f"Judges       {rule.subject.text}",
        f"Basis        {rule.basis}",
    ]
    if rule.subject is OPENINGS:
        lines += ["", _SLOTS[rule.slot]]
    if rule.limits:
        lines += ["", "Limits that a project may change:"]
        for limit in rule.limits:
            value = limit.value if limits is None else limits.get(limit.name, limit.value)
            own = "" if value == limit.value else f" (the rule's own: {limit.value:g})"
            lines.append(f"  {limit.name} = {value:g}{own}: {limit.text} Source: {limit.source}.")
            lines.append(f"    A project may set {limit.bounds}.")
    lines += ["", f"Cure: {rule.cure}"]
    if rule.defers:
        lines += ["", "It advises; the label, the code in force, the authority and licensed practice decide."]
    if off:
        lines += ["", "Switched off in this project."]
    return "\n".join(lines)
