"""Why: for a part, a place, a hole or a finding of an opening, the chain of facts, rules and numbers that led to it."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from sqlalchemy import Connection

from hwsched.attributes import said_value
from hwsched.kept_sentences import FIT, kept_phrase
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.model.errors import ValueRefusedError
from hwsched.model.journal.history import RowChange, changes_of
from hwsched.model.project import Project
from hwsched.model.queries import HeldPlace, read_own_words
from hwsched.operations.findings.checked import Checked
from hwsched.operations.findings.checking import Checker, look_again
from hwsched.operations.opening.named_openings import openings_of_marks
from hwsched.operations.snapshot import of_one_state
from hwsched.quantities import LENGTH_STYLES, LengthStyle, format_length
from hwsched.quantities.money import Money
from hwsched.rules import OPENINGS, RULES, in_rulebook, limits_of
from hwsched.rules.rule import Slot
from hwsched.rules.saying import cure_of, message_of, rule_said
from hwsched.rules.tracing import Traced, UsedFact, traced
from hwsched.survey import ENTITIES, INHERITED, ITEM, OPENING
from hwsched.values import Finding, Fit, Hole, OpeningInput, PointFit, RunnerUp
from hwsched.values.amounts import part_words
from hwsched.values.place_words import across_words, face_words, pattern_words
from hwsched.work.tools import WORDS as TOOLS

PLACE, HOLES = "place", "holes"
"""What can be asked about besides the roles of parts and the rules."""
_SLOT_OF: Mapping[str, Slot] = {
    **dict.fromkeys(("cylinder", "lock", "reader", "cam", "tailpiece", "collar", "ring"), "lock"),
    **dict.fromkeys(("unit", "mounting", "lead-extension", PLACE, HOLES), "unit"),
    **dict.fromkeys(("battery", "coin-cell", "supply", "standby-battery", "power-transfer", "wire"), "power"),
    **dict.fromkeys(("raceway", "strike"), "power"),
}
"""Slot whose rules decide what is asked about; the rest is judged with the whole opening."""
_ENTITIES = {entity.name: entity for entity in ENTITIES}
_POWER = {"battery": to_phrase("on battery"), "supply": to_phrase("on a supply")}
_SOURCES = {"by-hand": to_phrase("chosen by hand"), "set": to_phrase("a line of its hardware set")}


@dataclass(frozen=True, slots=True)
class Reason:
    """One step of a chain, with what it stands on."""

    text: str
    under: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Why:
    """The chain of one thing that was asked about."""

    about: str
    """Role, place, holes, or identifier of a rule."""
    headline: str
    reasons: tuple[Reason, ...]
    point: str = ""
    """Name of the lock point that it is told of; empty for the opening, or where there is only one."""


@of_one_state
def why(project: Project, mark: str, about: str | None = None) -> tuple[Why, ...]:
    """Tell why an opening has what it has.

    Parameters
    ----------
    project : Project
        Open project; it is only read.
    mark : str
        The opening.
    about : str, optional
        A role such as ``unit``, "place", "holes", or a rule; all when left out.

    Returns
    -------
    tuple of Why
        Facts with where they came from, rules with their numbers, what was refused and what else would fit.

    Raises
    ------
    MissingRowError
        For an unknown mark.
    ValueRefusedError
        For something that this opening does not have.
    """
    opening = openings_of_marks(project, [mark])[0]
    (checked,) = look_again(project, [opening], checker=Checker())
    with project.reading() as connection:
        return why_of(checked, connection, about)


def why_of(checked: Checked, connection: Connection, about: str | None = None) -> tuple[Why, ...]:
    """`why` for an opening that was looked at already; told lock point by lock point, then what the rules say."""
    tellers = [_Teller(checked, at, connection) for at in checked.points]
    known = {each: None for teller in tellers for each in (*teller.things(), *teller.rules())}
    if about is not None and about not in known:
        accepted = ", ".join(known) or "nothing yet: it has no fit"
        raise ValueRefusedError("about", f"{checked.given.opening.mark} has no '{about}'; it has {accepted}")
    told = [
        teller.tell(each)
        for of_rules in (False, True)
        for teller in tellers
        for each in (teller.rules() if of_rules else teller.things())
        if about in (None, each)
    ]
    return tuple(told)


class _Teller:
    def __init__(self, checked: Checked, at: PointFit, connection: Connection) -> None:
        self.given: OpeningInput = at.given
        self.fit: Fit = at.fit or Fit("to-measure")
        name, first = at.given.point.name, at is checked.points[0]
        named = {each.given.point.name for each in checked.points}
        self.findings = [
            # What names none of the points, or several, is told once.
            finding
            for finding in checked.findings
            if finding.point == name or (first and finding.point not in named)
        ]
        self.connection = connection
        self.style: LengthStyle = next((s for s in LENGTH_STYLES if s == self.given.settings.length_style), "fraction")
        self._origins: dict[str, dict[str, str]] = {}
        self.places = checked.places
        self._own = read_own_words(connection, self.given.opening.id) if checked.places else {}

    def things(self) -> list[str]:
        """Name what can be asked about, rules left out."""
        found: list[str] = list(dict.fromkeys(part.role for part in self.fit.parts))
        if self.fit.placement is not None:
            found.append(PLACE)
        if self.fit.holes:
            found.append(HOLES)
        return found

    def rules(self) -> list[str]:
        """Name the rules that say something of it."""
        return list(dict.fromkeys(finding.rule for finding in self.findings))

    def tell(self, about: str) -> Why:
        """Tell one thing."""
        return replace(self._tell(about), point=self.given.point.name)

    def _tell(self, about: str) -> Why:
        if about == PLACE:
            return self._place()
        if about == HOLES:
            return self._holes()
        if any(part.role == about for part in self.fit.parts):
            return self._part(about)
        return self._rule(about)

    def _part(self, role: str) -> Why:
        parts = [part for part in self.fit.parts if part.role == role]
        headline = "; ".join(
            f"{part_words(p.part, self.given.catalogue.get(p.part), p.quantity, self.style)} {p.description}"
            for p in parts
        )
        reasons = []
        for part in parts:
            source = phrase(_SOURCES.get(part.source, to_phrase("by the fit")))
            reasons.append(Reason(f"{part.part}: {kept_phrase(part.reason, FIT)} ({source})"))
        reasons += self._decided_by(role)
        refused = [each for each in self.fit.refused if each.role == role]
        if refused:
            said = tuple(f"{r.part}, {rule_said(r.rule)}: {kept_phrase(r.reason, r.rule)}" for r in refused)
            reasons.append(Reason(phrase("Refused"), said))
        if self.fit.battery is not None and role == "battery":
            life = self.fit.battery
            reasons.append(
                Reason(
                    phrase(
                        "Lasts {days}: {capacity_mah:g} mAh × {usable_share:g} usable × "
                        "{cold_share:g} in the cold, over {mah_per_day:.3f} mAh a day",
                        days=phrase_of_count("about {count} day", "about {count} days", int(life.days)),
                        capacity_mah=life.capacity_mah,
                        usable_share=life.usable_share,
                        cold_share=life.cold_share,
                        mah_per_day=life.mah_per_day,
                    )
                )
            )
        reasons += self._runners_up()
        return Why(role, headline, tuple(reasons))

    def _decided_by(self, role: str) -> list[Reason]:
        slot = _SLOT_OF.get(role, "whole")
        rules = [rule for rule in RULES if rule.slot == slot and rule.id not in self.given.settings.rules_off]
        found = [traced(rule, self.given, self.fit) for rule in rules]
        facts = self._facts(fact for each in found for fact in each.facts if each.facts)
        reasons = [Reason(phrase("Facts that decided"), facts)] if facts else []
        if slot != "whole":
            reasons.append(Reason(phrase("Rules that it had to pass"), tuple(self._passed(each) for each in found)))
        return reasons

    def _passed(self, each: Traced) -> str:
        limits = limits_of(each.rule, self.given.settings)
        numbers = ", ".join(f"{name} {value:g}" for name, value in limits.items())
        said = " ".join(kept_phrase(verdict.message, each.rule.id) for verdict in each.verdicts)
        return f"{each.rule.id}{f' ({numbers})' if numbers else ''}: {said or phrase('holds')}"

    def _runners_up(self) -> list[Reason]:
        if not self.fit.runners_up:
            return []
        lines = tuple(
            phrase(
                "{parts}: cost {cost}, {holes}, {power}",
                parts=", ".join(each.parts),
                cost=self._cost(each),
                holes=phrase_of_count("{count} hole", "{count} holes", each.holes),
                power=phrase(_POWER.get(each.power, each.power)),
            )
            for each in self.fit.runners_up
        )
        return [Reason(phrase("Ranked by {prefer}; runners-up", prefer=phrase(self.given.settings.prefer)), lines)]

    def _cost(self, runner_up: RunnerUp) -> str:
        if runner_up.cost_needs:
            return phrase("unknown: needs {needs}", needs=", ".join(runner_up.cost_needs))
        return Money(runner_up.cost, self.fit.currency).shown()

    def _place(self) -> Why:
        place = self.fit.placement
        if place is None:
            raise ValueError("no unit is placed")
        headline = phrase(
            "{pattern}, {face}, {across}, {height} above the floor",
            pattern=pattern_words(place.pattern),
            face=face_words(place.face),
            across=across_words(place.face, place.x_mm, self.style),
            height=self._length(place.y_mm),
        )
        by_hand = place.source == "by-hand"
        reasons = [Reason(phrase("placed by hand" if by_hand else "placed by the fit: the shortest lead first"))]
        if place.clearances:
            free = tuple(
                phrase("{name}: {length} free", name=kept_phrase(name, FIT), length=self._length(mm))
                for name, mm in place.clearances
            )
            reasons.append(Reason(phrase("Free distances"), free))
        if place.alternatives:
            other = tuple(
                phrase(
                    "{pattern} at {x}, {y}: lead {lead}",
                    pattern=pattern_words(a.pattern),
                    x=self._length(a.x_mm),
                    y=self._length(a.y_mm),
                    lead=self._length(a.cable_mm),
                )
                for a in place.alternatives
            )
            reasons.append(Reason(phrase("Other places that would do"), other))
        cable = self.fit.cable
        if cable is not None:
            stretches = tuple(f"{kept_phrase(name, FIT)}: {self._length(mm)}" for name, mm in cable.segments)
            text = phrase(
                "Lead: needs {needed}, has {held}",
                needed=self._length(cable.length_mm),
                held=self._length(cable.available_mm),
            )
            reasons.append(Reason(text, stretches))
        return Why(PLACE, headline, (*reasons, *self._decided_by(PLACE)))

    def _holes(self) -> Why:
        lines = tuple(self._hole(hole) for hole in sorted(self.fit.holes, key=lambda hole: hole.order))
        reasons = (Reason(phrase("In the order of drilling"), lines), *self._decided_by(HOLES))
        return Why(
            HOLES, phrase_of_count("{count} hole", "{count} holes", sum(hole.count for hole in self.fit.holes)), reasons
        )

    def _hole(self, hole: Hole) -> str:
        size = (
            phrase("pocket")
            if hole.purpose == "pocket"
            else phrase("diameter {length}", length=self._length(hole.diameter_mm))
        )
        where = (
            phrase("through the part as template")
            if hole.by_template
            else phrase(
                "{across}, {height} above the floor",
                across=across_words(hole.face, hole.x_mm, self.style),
                height=self._length(hole.y_mm),
            )
        )
        tool = phrase(", with {tool}", tool=phrase(TOOLS.get(hole.tool, hole.tool))) if hole.tool else ""
        return f"{hole.order}. {kept_phrase(hole.name, FIT)}: {size}, {face_words(hole.face)}, {where}{tool}"

    def _rule(self, rule_id: str) -> Why:
        said = [finding for finding in self.findings if finding.rule == rule_id]
        known = in_rulebook(rule_id)
        title = rule_said(rule_id)
        reasons = [reason for finding in said for reason in self._finding(finding)]
        if known is not None and known.subject is OPENINGS:
            facts = self._facts(traced(known, self.given, self.fit).facts)
            if facts:
                reasons.append(Reason(phrase("Facts that it looked at"), facts))
        if known is not None:
            limits = limits_of(known, self.given.settings)
            lines = tuple(
                f"{limit.name} {limits[limit.name]:g}"
                + (
                    ""
                    if limits[limit.name] == limit.value
                    else phrase(" (the rule's own: {value:g})", value=limit.value)
                )
                + phrase(": {text} Source: {source}", text=phrase(limit.text), source=phrase(limit.source))
                for limit in known.limits
            )
            if lines:
                reasons.append(Reason(phrase("Limits"), lines))
            reasons.append(Reason(phrase("Basis: {basis}", basis=phrase(known.basis))))
        return Why(rule_id, title, tuple(reasons))

    def _finding(self, finding: Finding) -> Iterable[Reason]:
        numbers = tuple(f"{name} = {value:g}" for name, value in finding.values.items())
        waived = phrase(" (waived by {person})", person=finding.waived_by) if finding.waived else ""
        about = f"{kept_phrase(finding.about, FIT)}: " if finding.about else ""
        yield Reason(f"{phrase(finding.severity)}{waived}: {about}{message_of(finding)}", numbers)
        yield Reason(phrase("Cure: {cure}", cure=cure_of(finding)))

    def _facts(self, facts: Iterable[UsedFact]) -> tuple[str, ...]:
        lines: dict[str, None] = {}
        for fact in facts:
            if fact.value is None:
                continue
            entity = _ENTITIES[fact.entity]
            attribute = entity.attribute(fact.attribute)
            origin, named = self._origin(fact.entity, fact.row_id, fact.attribute), self._named(fact)
            place = self._said_by(fact)
            if place is not None:
                named = f"{phrase(place.entity.capitalize())} {place.name}".strip()
                origin = self._origin(place.entity, place.row_id, fact.attribute)
            what = f"{named}: {phrase(attribute.label)} {said_value(attribute, fact.value, self.style)}"
            lines[f"{what}{f' ({origin})' if origin else ''}"] = None
        return tuple(lines)

    def _said_by(self, fact: UsedFact) -> HeldPlace | None:
        """Return the level or building that an opening takes a fact from; None where the opening says it itself."""
        if fact.entity != OPENING.name or fact.attribute not in INHERITED:
            return None
        if self._own.get(fact.attribute) is not None:
            return None
        return next((place for place in self.places if place.facts[fact.attribute] is not None), None)

    def _named(self, fact: UsedFact) -> str:
        """Name what a fact belongs to: an existing item by its kind."""
        item = next((item for item in self.given.items if item.id == fact.row_id), None)
        kind = ITEM.attribute("kind").choice(item.kind) if item is not None and item.kind else None
        return phrase(kind.label if kind is not None else _ENTITIES[fact.entity].label)

    def _origin(self, entity: str, row_id: str, attribute: str) -> str:
        if row_id not in self._origins:
            self._origins[row_id] = _origins(changes_of(self.connection, row_id, entity))
        return self._origins[row_id].get(attribute, "")

    def _length(self, mm: float) -> str:
        return format_length(mm, self.style)


def _origins(changes: Iterable[RowChange]) -> dict[str, str]:
    """Return where the values of a row came from; an undo or redo brings back a value with its origin."""
    held: dict[str, list[tuple[Any, str]]] = {}
    for change in changes:
        for name, value in (change.after or {}).items():
            known = held.setdefault(name, [])
            step = phrase("step {number}, {person}", number=change.change_set, person=change.who)
            back = None if change.kind == "edit" else next((o for v, o in reversed(known) if v == value), None)
            known.append((value, back or change.origin or step))
    return {name: known[-1][1] for name, known in held.items()}


def as_lines(told: Sequence[Why]) -> list[str]:
    """Put chains into indented lines of text."""
    lines = []
    for each in told:
        where = f"{each.point}, " if each.point else ""
        lines.append(f"{where}{each.about}: {each.headline}")
        for reason in each.reasons:
            lines.append(f"  {reason.text}")
            lines += [f"    {line}" for line in reason.under]
    return lines
