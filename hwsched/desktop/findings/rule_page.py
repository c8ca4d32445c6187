"""The page of a rule as it is read in the window: what it asks for, on what it stands, what helps."""

from collections.abc import Iterable, Mapping
from html import escape

from PySide6.QtWidgets import QTextBrowser

from hwsched.desktop.looks.limit_words import limit_value
from hwsched.desktop.looks.severities import severity_word
from hwsched.desktop.looks.tokens import SPACE
from hwsched.kept_sentences import kept_phrase
from hwsched.language import phrase
from hwsched.rules.page import SLOTS
from hwsched.rules.rule import OPENINGS, AnyRule
from hwsched.values import DISCIPLINES


class RulePage(QTextBrowser):
    """Shows the page of a rule: the program's own words, each of them escaped, and nothing of a project's texts."""

    def __init__(self) -> None:
        super().__init__()
        self.setOpenLinks(False)
        self.setReadOnly(True)

    def show_rule(self, rule: AnyRule, limits: Mapping[str, float], *, off: bool) -> None:
        """Show a rule as it is in force."""
        self.setHtml(rule_page(rule, limits, off=off))


def rule_page(rule: AnyRule, limits: Mapping[str, float], *, off: bool, level: int = 3) -> str:
    """Return the page of a rule as HTML.

    Parameters
    ----------
    rule : Rule
        Any member of the rulebook.
    limits : mapping
        Limits in force.
    off : bool
        Whether the project has switched it off.
    level : int
        Of its heading, from 1: how large it is among what stands about it.
    """
    judges = phrase(rule.subject.text)
    if rule.subject is OPENINGS:
        judges = f"{judges}. {phrase(SLOTS[rule.slot])}"
    facts = (
        (phrase("Severity"), severity_word(rule.severity)),
        (phrase("Discipline"), phrase(DISCIPLINES[rule.discipline])),
        (phrase("Judges"), judges),
        (phrase("Basis"), phrase(rule.basis)),
        (phrase("Cure"), kept_phrase(rule.cure, rule.id)),
        (phrase("Identifier"), rule.id),
    )
    made = [f"<h{level}>{escape(phrase(rule.title))}</h{level}>"]
    if off:
        made.append(_line(phrase("Switched off in this project."), strong=True))
    made.append(_table(facts))
    if rule.limits:
        made.append(f"<h{level + 1}>{escape(phrase('Limits that a project may change'))}</h{level + 1}>")
    for limit in rule.limits:
        value = limits.get(limit.name, limit.value)
        own = "" if value == limit.value else phrase("the rule's own: {value}", value=limit_value(limit, limit.value))
        said = phrase("{text} Source: {source}.", text=phrase(limit.text), source=phrase(limit.source))
        may = phrase("A project may set {bounds}.", bounds=limit.bounds_said())
        now = f"{limit_value(limit, value)} ({own})" if own else limit_value(limit, value)
        made.append(f"<p><b>{escape(now)}</b><br>{escape(said)} {escape(may)}</p>")
    if rule.defers:
        words = phrase("It advises; the label, the code in force, the authority and licensed practice decide.")
        made.append(_line(words))
    return "".join(made)


def _line(text: str, *, strong: bool = False) -> str:
    said = escape(text)
    return f"<p><b>{said}</b></p>" if strong else f"<p>{said}</p>"


def _table(facts: Iterable[tuple[str, str]]) -> str:
    # No padding at the left: names stand under the heading.
    above, aside = f"padding-top: {SPACE.hair}px", f"padding-right: {SPACE.large}px"
    rows = "".join(
        f"<tr><td style='{above};{aside}'>{escape(name)}</td><td style='{above}'>{escape(said)}</td></tr>"
        for name, said in facts
    )
    return f"<table cellspacing='0' cellpadding='0'>{rows}</table>"
