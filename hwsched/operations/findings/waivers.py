"""Waivers: findings that a person accepts, for how long and for which facts; laid over findings, never hiding them."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date

from hwsched.model.errors import MissingRowError, ValueRefusedError
from hwsched.model.project import Project
from hwsched.model.queries import opening_ids, read_settings
from hwsched.model.record_queries import read_waivers
from hwsched.model.tables import WAIVER
from hwsched.operations.changes import Changes
from hwsched.operations.findings.checking import Checker, check_project, look_again
from hwsched.operations.findings.waiver_book import facts_of, facts_of_rule, facts_of_supply, input_of
from hwsched.operations.survey.accepted_values import mark_of, row_there
from hwsched.rules import OF_WAIVERS, RULEBOOK, in_rulebook
from hwsched.rules.rule_titles import title_of
from hwsched.telling.nearest import nearest_words
from hwsched.values.record import SCOPES, Waiver


def waive(
    project: Project,
    rule: str,
    *,
    person: str,
    reason: str,
    who: str,
    opening_id: str | None = None,
    supply: str | None = None,
    scope: str = "opening",
    about: str | None = None,
    until: str | None = None,
    today: date | None = None,
) -> Changes:
    """Accept the findings of a rule.

    Parameters
    ----------
    project : Project
        Open project.
    rule : str
        Whose findings.
    person, reason : str
        Who accepts it and why; both must be said.
    who : str
        For the journal.
    opening_id : str, optional
        At which opening; not for the whole project.
    supply : str, optional
        At which supply, by its name; its scope is "supply".
    scope : {"opening", "alike", "supply", "project"}
        This opening, all openings alike, the supply, or every finding of the rule in the project.
    about : str, optional
        Only findings about this, such as a part number; all of the rule at the opening when left out.
    until : str, optional
        Last day, as 2031-12-24; no end when left out.
    today : date, optional
        Of the decision; the day it is when left out.

    Raises
    ------
    ValueRefusedError
        Where there is no such finding, or something is not said.
    MissingRowError
        For an opening that is not there.
    """
    day = today or project.today()
    _check(rule, scope, supply, about)
    common = {**_decision(person, reason, until, day), "rule": rule, "scope": scope}
    if scope == "project":
        with project.reading() as connection:
            settings = read_settings(connection)
        # Tied to the limits in force: one given for 1/8 in must ask again when the limit becomes 1/16 in.
        rows = [{**common, "about": about or "", "facts": facts_of_rule(rule, settings)}]
    elif supply is not None:
        rows = [{**common, "about": supply, "facts": facts} for facts in _at_supply(project, supply, rule, about, day)]
    else:
        if opening_id is None:
            raise ValueRefusedError("opening", f"a waiver for {SCOPES[scope]} is given at an opening")
        rows = [{**common, **row} for row in _at_opening(project, opening_id, rule, about, day)]
    with project.change("waive", f"Waive '{title_of(rule)}'", who) as change:
        if opening_id is not None and scope != "project":
            change.summary = f"Waive '{title_of(rule)}' of {mark_of(change, opening_id)} for {SCOPES[scope]}"
        else:
            change.summary = (
                f"Waive '{title_of(rule)}' for {'the whole project' if supply is None else f'supply {supply}'}"
            )
        change.insert(WAIVER, rows)
    return Changes.of(change)


@dataclass(frozen=True, slots=True)
class Spoken:
    """A finding at an opening or a supply, as it is pointed at: its rule, and what it speaks of."""

    opening_id: str
    """Empty where it is said of a supply."""
    rule: str
    about: str
    supply: str = ""
    """The supply's name."""


def waive_several(
    project: Project,
    findings: Sequence[Spoken],
    *,
    person: str,
    reason: str,
    who: str,
    until: str | None = None,
    today: date | None = None,
) -> Changes:
    """Accept findings at several openings and supplies, each for its own, as one step.

    Parameters
    ----------
    project : Project
        Open project.
    findings : sequence of Spoken
        Each must be open.
    person, reason, who, until, today
        As in `waive`.

    Raises
    ------
    ValueRefusedError, MissingRowError
        And nothing is accepted.
    """
    day = today or project.today()
    decision = _decision(person, reason, until, day)
    rows = []
    for each in dict.fromkeys(findings):
        if each.supply:
            _check(each.rule, "supply", each.supply, None)
            facts = _at_supply(project, each.supply, each.rule, each.about or None, day)
            common = {**decision, "rule": each.rule, "scope": "supply", "about": each.supply}
            rows += [{**common, "facts": held} for held in facts]
            continue
        _check(each.rule, "opening", None, None)
        at = _at_opening(project, each.opening_id, each.rule, None, day)
        about = [row for row in at if row["about"] == each.about]
        if not about:
            raise ValueRefusedError(
                "rule",
                f"there is no open finding of '{title_of(each.rule)}' about {title_of(each.about) or 'it'} any more",
            )
        rows += [{**decision, "rule": each.rule, "scope": "opening", **row} for row in about]
    rules = _titles(each.rule for each in findings)
    openings = {each.opening_id for each in findings if not each.supply}
    supplies = {each.supply for each in findings if each.supply}
    words = [f"{len(openings)} openings"] if openings or not supplies else []
    words += [f"{len(supplies)} supplies"] if supplies else []
    with project.change("waive", f"Waive {rules} of {' and '.join(words)}", who) as change:
        change.insert(WAIVER, rows)
    return Changes.of(change)


def _check(rule: str, scope: str, supply: str | None, about: str | None) -> None:
    """Refuse what cannot be waived."""
    if in_rulebook(rule) is None:
        raise ValueRefusedError("rule", f"there is no '{rule}'{nearest_words(rule, (each.id for each in RULEBOOK))}")
    # A waiver of what is said of waivers would hide that another one has run out.
    if rule in OF_WAIVERS:
        raise ValueRefusedError(
            "rule", f"'{title_of(rule)}' speaks of a waiver: take that waiver back, or give it anew"
        )
    if scope not in SCOPES:
        raise ValueRefusedError("scope", f"there is no '{scope}'; accepted: {', '.join(SCOPES)}")
    # A word left empty by a slip would accept all that the rule says.
    if about is not None and not about.strip():
        raise ValueRefusedError("about", "says nothing; leave it out to accept whatever the findings speak of")
    if (scope == "supply") != (supply is not None):
        raise ValueRefusedError("supply", "a waiver for a supply names it, and no other waiver does")


def _decision(person: str, reason: str, until: str | None, day: date) -> dict[str, str | None]:
    """Return who accepts, why, when and how long, as it is written down."""
    last = _day(until)
    for name, text in (("person", person), ("reason", reason)):
        if not text.strip():
            raise ValueRefusedError(name, "a waiver says who accepts it and why")
    if last is not None and last < day:
        raise ValueRefusedError("until", f"{last.isoformat()} is over already")
    return {
        "person": " ".join(person.split()),
        "reason": " ".join(reason.split()),
        "given_on": day.isoformat(),
        "until": last.isoformat() if last else None,
    }


def _titles(rules: Iterable[str]) -> str:
    """Return what people call rules, each once."""
    return ", ".join(f"'{title_of(each)}'" for each in dict.fromkeys(rules))


def unwaive(project: Project, waiver_ids: Sequence[str], *, who: str, base: int | None = None) -> Changes:
    """Take waivers back; raises MissingRowError, and ConflictError for one that others changed since ``base``."""
    with project.change("unwaive", "Take waivers back", who, base=base) as change:
        rules = [row_there(change, WAIVER, each).rule for each in waiver_ids]
        change.summary = f"Take back the waiver of {_titles(rules)}"
        change.delete(WAIVER, waiver_ids)
    return Changes.of(change)


def waivers(project: Project) -> list[Waiver]:
    """Return all waivers, oldest first."""
    with project.reading() as connection:
        return read_waivers(connection)


def waivers_with_marks(project: Project) -> list[tuple[Waiver, str]]:
    """Return all waivers, oldest first, each with the mark of its opening; "" for the whole project."""
    with project.reading() as connection:
        marks = {opening_id: mark for mark, opening_id in opening_ids(connection).items()}
        return [(each, marks.get(each.opening_id or "", "")) for each in read_waivers(connection)]


def waivers_of(project: Project, rule: str, opening_id: str | None, supply: str | None = None) -> list[Waiver]:
    """Return the waivers of a rule at an opening, a supply or the whole project; raises MissingRowError if none."""

    def here(each: Waiver) -> bool:
        if opening_id is not None:
            return each.opening_id == opening_id
        return each.scope == "project" if supply is None else (each.scope, each.about) == ("supply", supply)

    found = [each for each in waivers(project) if each.rule == rule and here(each)]
    if not found:
        raise MissingRowError(f"no waiver of '{title_of(rule)}' was given here")
    return found


def _at_opening(project: Project, opening_id: str, rule: str, about: str | None, today: date) -> list[dict[str, str]]:
    # As the sheet shows it: a fit that is worked out but not stored yet has findings too.
    checked = look_again(project, [opening_id], checker=Checker(), today=today)
    if not checked:
        raise MissingRowError("this opening is not in the project any more")
    given = checked[0].given
    found = [f for f in checked[0].findings if f.rule == rule and not f.waived and (about is None or f.about == about)]
    if not found:
        raise ValueRefusedError("rule", f"{given.opening.mark} has no open finding of '{title_of(rule)}'")
    wanted = dict.fromkeys((f.about, facts_of(input_of(checked[0].inputs, f), f)) for f in found)
    return [{"opening_id": opening_id, "about": each, "facts": facts} for each, facts in wanted]


def _at_supply(project: Project, name: str, rule: str, about: str | None, today: date) -> list[str]:
    """Return what each open finding of a rule at a supply is waived for."""
    supplies = check_project(project, today=today).supplies
    at = next((each for each in supplies if each.result.supply.name == name), None)
    if at is None:
        raise MissingRowError(f"no supply {name} with a circuit is in the project")
    found = [f for f in at.findings if f.rule == rule and not f.waived and (about is None or f.about == about)]
    if not found:
        raise ValueRefusedError("rule", f"{name} has no open finding of '{title_of(rule)}' of its own")
    return list(dict.fromkeys(facts_of_supply(at.result, finding) for finding in found))


def _day(text: str | None) -> date | None:
    if not text:
        return None
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise ValueRefusedError("until", f"'{text}' is no day; accepted: a day such as 2031-12-24") from None
