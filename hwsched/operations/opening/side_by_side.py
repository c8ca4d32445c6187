"""Several openings beside one another: the facts they share, what an edit of many would change, how two differ.

Pure: over openings as they were last read; nothing is written here.
"""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field

from hwsched.attributes import Attribute, Value, said_value, show_value
from hwsched.attributes.unknown import unknown_word
from hwsched.kept_sentences import GATE, kept_phrase
from hwsched.language import in_english, phrase, to_phrase
from hwsched.operations.findings.checked import Checked
from hwsched.operations.opening.facts_shown import asked_facts, item_facts
from hwsched.operations.survey.fact_edit import FactEdit
from hwsched.quantities import LengthStyle, format_length
from hwsched.survey import ITEM, LEAF, OPENING
from hwsched.values import Fit
from hwsched.values.amounts import part_words
from hwsched.values.place_words import across_words, face_words
from hwsched.values.role_words import role_said


@dataclass(frozen=True, slots=True)
class Held:
    """One fact of one opening."""

    opening: str
    mark: str
    entity: str
    row_id: str
    value: Value


@dataclass(slots=True)
class SharedFact:
    """A fact that is asked of some openings, with what each of them holds."""

    section: str
    """Opening, a leaf, or the kind of an existing item."""
    attribute: Attribute
    held: list[Held] = field(default_factory=list)

    @property
    def values(self) -> tuple[Value, ...]:
        """The different values, in the order in which they are met."""
        return tuple(dict.fromkeys(each.value for each in self.held))

    @property
    def mixed(self) -> bool:
        """Whether the openings hold different values."""
        return len(self.values) > 1


@dataclass(frozen=True, slots=True)
class Compared:
    """One line of two openings beside one another."""

    section: str
    label: str
    left: str
    right: str

    @property
    def differs(self) -> bool:
        """Whether the two are different."""
        return self.left != self.right


def shared_facts(openings: Iterable[Checked]) -> tuple[SharedFact, ...]:
    """Return every fact that is asked of one of these openings, with what those hold of which it is asked."""
    found: dict[tuple[str, str], SharedFact] = {}
    for checked in openings:
        opening = checked.given.opening
        for section, entity, row_id, attribute, value in _facts(checked):
            key = (section, attribute.name)
            fact = found.get(key)
            if fact is None:
                fact = found[key] = SharedFact(section, attribute)
            fact.held.append(Held(opening.id, opening.mark, entity, row_id, value))
    # What all share stands as in the form of one: sections in the order in which they are met first.
    order = list(dict.fromkeys(section for section, _ in found))
    return tuple(sorted(found.values(), key=lambda each: order.index(each.section)))


def _facts(checked: Checked) -> Iterable[tuple[str, str, str, Attribute, Value]]:
    """Give section, entity, row, fact and value of all that is asked of an opening."""
    given = checked.given
    opening = given.opening
    for attribute in asked_facts(OPENING, opening, opening):
        yield "Opening", OPENING.name, opening.id, attribute, getattr(opening, attribute.name)
    sections = {opening.id: "Opening"}
    for leaf in given.leaves:
        word = LEAF.attribute("position").choice(leaf.position or "")
        sections[leaf.id] = f"Leaf, {word.label.lower()}" if word and leaf.position != "single" else "Leaf"
        for attribute in asked_facts(LEAF, leaf, opening):
            yield sections[leaf.id], LEAF.name, leaf.id, attribute, getattr(leaf, attribute.name)
    counts: dict[str, int] = {}
    for item in given.items:
        choice = ITEM.attribute("kind").choice(item.kind or "")
        title = choice.label if choice else "Existing item"
        counts[title] = counts.get(title, 0) + 1
        sections[item.id] = title if counts[title] == 1 else f"{title} {counts[title]}"
        for attribute in item_facts(item, opening):
            yield sections[item.id], ITEM.name, item.id, attribute, getattr(item, attribute.name)
    for own in checked.own:
        if own.row_id in sections:
            yield sections[own.row_id], own.entity, own.row_id, own.attribute, own.value


def edits_of(fact: SharedFact, value: Value, text: str) -> tuple[tuple[Held, ...], tuple[FactEdit, ...]]:
    """Return whose value a text would change, and the edits that do it; those that hold it already are left alone."""
    changed = tuple(each for each in fact.held if each.value != value)
    return changed, tuple(FactEdit(each.entity, each.row_id, fact.attribute.name, text) for each in changed)


def value_words(fact: SharedFact, style: LengthStyle, most: int = 3, say: Callable[..., str] = show_value) -> str:
    """Say what the openings hold: the one value, or that values are mixed, with the first of them; say: one value."""
    words = [say(fact.attribute, each, style, unknown=unknown_word()) for each in fact.values]
    if len(words) == 1:
        return words[0]
    first = ", ".join(words[:most])
    if len(words) > most:
        return phrase("mixed: {first} and {count} more", first=first, count=len(words) - most)
    return phrase("mixed: {first}", first=first)


def compared(left: Checked, right: Checked, style: LengthStyle) -> tuple[Compared, ...]:
    """Lay two openings beside one another: what the fit gave, then facts; what differs stands first."""
    lines = [*_results(left, right, style)]
    for fact in shared_facts((left, right)):
        of = {each.opening: said_value(fact.attribute, each.value, style, unknown=unknown_word()) for each in fact.held}
        ids = (left.given.opening.id, right.given.opening.id)
        if fact.attribute.name != "mark":
            there = (of.get(each, phrase("none there")) for each in ids)
            lines.append(Compared(kept_phrase(fact.section, GATE), phrase(fact.attribute.label), *there))
    return tuple(sorted(lines, key=lambda each: not each.differs))


def _results(left: Checked, right: Checked, style: LengthStyle) -> Iterable[Compared]:
    both = (left, right)

    def line(label: str, words: Sequence[str]) -> Compared:
        return Compared(phrase("Fit"), label, words[0], words[1])

    none, uncounted = phrase("none"), phrase("no fit counts")
    states = [phrase(each.fit.status.replace("-", " ")) if each.fit is not None else uncounted for each in both]
    yield line(phrase("State"), states)
    roles = dict.fromkeys(part.role for each in both if each.fit is not None for part in each.fit.parts)
    for role in roles:
        yield line(
            role_said(role).capitalize() if in_english() else role_said(role),
            [
                ", ".join(
                    part_words(p.part, each.given.catalogue.get(p.part), p.quantity, style)
                    for p in each.fit.parts
                    if p.role == role
                )
                or none
                if each.fit is not None
                else uncounted
                for each in both
            ],
        )
    places = [each.fit.placement if each.fit is not None else None for each in both]
    yield line(
        phrase("Place of the unit"),
        [
            phrase(
                "{face}, {across}, {height} up",
                face=face_words(p.face),
                across=across_words(p.face, p.x_mm, style),
                height=format_length(p.y_mm, style),
            )
            if p is not None
            else none
            if each.fit is not None
            else uncounted
            for each, p in zip(both, places, strict=True)
        ],
    )

    def holes(fit: Fit | None) -> str:
        if fit is None:
            return uncounted
        return str(sum(hole.count for hole in fit.holes)) if fit.status == "fits" else none

    yield line(phrase("Holes"), [holes(each.fit) for each in both])
    for severity, title in (("error", to_phrase("Errors")), ("warning", to_phrase("Warnings"))):
        yield line(phrase(title), [" ".join(_said_once(each, severity)) or none for each in both])


def _said_once(at: Checked, severity: str) -> Iterable[str]:
    """Return what the rules say, each sentence once however many of them say it."""
    return dict.fromkeys(kept_phrase(f.message, f.rule) for f in at.findings if f.severity == severity and not f.waived)
