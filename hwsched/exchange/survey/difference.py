"""What a survey file would change in a project: new, changed, unchanged, missing from the file.

A blank cell leaves a known fact alone, and so does ``?``: nothing that a file leaves out is ever erased or removed.
Here belongs which leaf and which item of the file is which of the project's.
"""

from collections import Counter
from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any, Final

from hwsched.attributes import said_value, show_value
from hwsched.exchange.survey.decisions import answered
from hwsched.exchange.survey.facts import (
    HELP_SHEET,
    Answer,
    Assumption,
    Decisions,
    Oddity,
    Proposal,
    Question,
    SurveyedItem,
    SurveyedLeaf,
    SurveyedOpening,
    SurveyRead,
    UnmappedColumn,
    is_same,
)
from hwsched.exchange.survey.renaming import Parted, divided, joined, renamed, spelt_otherwise
from hwsched.exchange.survey.words import LOCK_FACTS, SIZE
from hwsched.kept_sentences import kept_error
from hwsched.language import phrase
from hwsched.quantities import LengthStyle
from hwsched.survey import ENTITIES
from hwsched.values import Item, Leaf, Opening, OpeningInput

_OPENING = frozenset(Opening.__slots__)
_LEAF = frozenset(Leaf.__slots__)
_ITEM = frozenset(Item.__slots__)
_SHOWN: Final = 50
"""Changed openings that a preview lists for people; the rest is counted."""
_DECLARED: Final = {(entity.name, a.name): a for entity in ENTITIES for a in entity.attributes}


@dataclass(frozen=True, slots=True)
class FactChange:
    """One fact that changes."""

    entity: str
    row_id: str
    where: str
    """Opening, Leaf active, Lock ..."""
    attribute: str
    before: Any
    after: Any
    origin: str
    source: str = ""
    """Who gave the present value by hand, and when; empty where a file did."""
    given: str = ""
    """File, sheet and row of an earlier delivery that gave the present value; empty where it was set by hand."""

    @property
    def label(self) -> str:
        """Return what people call the fact."""
        declared = _DECLARED.get((self.entity, self.attribute))
        return declared.label if declared else self.attribute.replace("_", " ")

    def place(self) -> str:
        """Return for people what of the opening it is of."""
        return kept_error(self.where)

    def title(self) -> str:
        """Return what people call the fact, and what of the opening it is of."""
        return f"{self.place()} {phrase(self.label)}"

    def given_said(self) -> str:
        """Return for people which earlier delivery gave the present value."""
        place, row, number = self.given.rpartition(", row ")
        return phrase("{place}, row {row}", place=place, row=number) if row else self.given

    def said(self, value: Any, style: LengthStyle = "mm") -> str:
        """Return a value of the fact for people; style: how lengths are shown."""
        declared = _DECLARED.get((self.entity, self.attribute))
        if value is None:
            return phrase("unknown")
        return said_value(declared, value, style) if declared else str(value)

    def shown(self, value: Any, style: LengthStyle = "mm") -> str:
        """Return a value of the fact in English; style: how lengths are shown."""
        declared = _DECLARED.get((self.entity, self.attribute))
        if value is None:
            return "unknown"
        return show_value(declared, value, style) if declared else str(value)


@dataclass(frozen=True, slots=True)
class OpeningChange:
    """An opening that is known and changes."""

    mark: str
    opening_id: str
    facts: tuple[FactChange, ...]
    new_leaves: tuple[SurveyedLeaf, ...] = ()
    new_items: tuple[SurveyedItem, ...] = ()


@dataclass(frozen=True, slots=True)
class Undecided:
    """A difference that is left for a person to decide."""

    kind: str
    """As in `decisions`."""
    mark: str
    """In the file; of what is gone the project's."""
    opening_id: str | None = None
    """Opening of the project that it is about."""
    known: str = ""
    """The project's mark of an opening that the file may name otherwise."""
    fact: FactChange | None = None
    opening: SurveyedOpening | None = None
    """What the file says of an opening that is left out."""
    evidence: str = ""

    @property
    def about(self) -> str:
        """Return what of the opening it is about, as a person names it in a decision; empty: all of it."""
        return f"{self.fact.where}.{self.fact.attribute}" if self.fact is not None else ""

    def describe(self) -> str:
        """Return it in one line.

        Examples
        --------
        >>> Undecided("gone", "104", evidence="the file names its neighbours").describe()
        '104: gone: the file names its neighbours'
        """
        if self.fact is None:
            head = f"{self.mark} may be {self.known}" if self.known and self.known != self.mark else self.mark
            return f"{head}: {self.kind}: {self.evidence}"
        fact = self.fact
        says = "its cell is blank" if self.kind == "blank" else f"the file says {fact.shown(fact.after)}"
        by = f" ({fact.source})" if fact.source else ""
        return f"{self.mark}: {self.kind}: {fact.where}, {fact.label} is {fact.shown(fact.before)}{by}; {says}"


@dataclass(frozen=True, slots=True)
class LeafGone:
    """A leaf of the project of which a file says, by its form, that it is not there."""

    mark: str
    told: str
    """Its mark in the file."""
    opening_id: str
    leaf_id: str
    position: str
    items: tuple[str, ...]
    """Identifiers of the existing items on it."""


@dataclass(frozen=True, slots=True)
class Preview:
    """Differences between a file and a project."""

    new: tuple[SurveyedOpening, ...]
    changed: tuple[OpeningChange, ...]
    unchanged: tuple[str, ...]
    missing: tuple[str, ...]
    """Marks in the project that the file does not name; they stay."""
    assumptions: tuple[Assumption, ...] = ()
    unmapped: tuple[str, ...] = ()
    """Columns that are not read, sheets that look like openings, rows."""
    kept: tuple[str, ...] = ()
    """Leaves and items of openings in the file that the file does not name; they stay."""
    other_sheets: tuple[str, ...] = ()
    """Names of the sheets without openings."""
    questions: tuple[Question, ...] = ()
    """What was taken in the safest way and only a person can say."""
    oddities: tuple[Oddity, ...] = ()
    """Measures that can hardly be so, taken as written."""
    undecided: tuple[Proposal, ...] = ()
    """Openings of the file that may be known under another mark; they are left out."""
    blank: tuple[tuple[str, FactChange], ...] = ()
    """Known facts whose cell in the file is blank, by mark; they stay."""
    by_hand: tuple[tuple[str, FactChange], ...] = ()
    """Facts that were set by hand and that the file says otherwise than before, by mark; they stay."""
    gone: tuple[tuple[str, str], ...] = ()
    """Mark and identifier of openings that the file should name and does not."""
    part: str = ""
    """Why the file is taken for a part of the building, so that nothing is gone; empty: for the whole of its levels."""
    merged: tuple[LeafGone, ...] = ()
    """Leaves of pairs that are single in the file; they stay until somebody decides."""
    again: tuple[tuple[SurveyedOpening, str], ...] = ()
    """Openings of the file that are retired in the project, with their identifiers."""
    retired: tuple[tuple[str, str], ...] = ()
    """Mark and identifier of openings that are retired by a person's word."""
    restored: tuple[tuple[str, str], ...] = ()
    """Mark and identifier of retired openings that are brought back by a person's word."""
    leaves_gone: tuple[LeafGone, ...] = ()
    """Leaves that go by a person's word."""
    left_out: tuple[str, ...] = ()
    """Marks of the file that do not come in by a person's word."""
    left: tuple[Undecided, ...] = ()
    """What is left for a person to decide."""
    settled: tuple[tuple[Undecided, Answer], ...] = ()
    """What was decided and holds of later deliveries that say the same."""
    same: tuple[tuple[str, str], ...] = ()
    """Marks of the file that are known openings under another mark, which they keep."""
    parted: tuple[tuple[Undecided, Answer], ...] = ()
    """Marks that became several, or several that became one, by a person's word: each with what becomes of it."""
    joined: tuple[tuple[str, str, str], ...] = ()
    """Mark and identifier of openings that are one with another now, and the mark of that; they are retired."""
    likely: tuple[UnmappedColumn, ...] = ()
    """Columns that are not read, and whose cells are words of one fact."""

    def describe(self) -> list[str]:
        """Return the preview in lines for people."""
        lines = [
            f"{len(self.new)} new, {len(self.changed)} changed, {len(self.unchanged)} unchanged, "
            f"{len(self.missing)} in the project but not in the file"
        ]
        lines += [f"asked: {question.describe()}" for question in self.questions]
        lines += [f"doubtful: {oddity.describe()}" for oddity in self.oddities]
        lines += [f"read as: {each.describe()}" for each in self.assumptions]
        lines += [f"not read: {line}" for line in self.unmapped]
        lines += [f"not read: sheet {name}, no openings in it" for name in self.other_sheets]
        lines += [f"retired: {line}" for line in _named_lines(self.retired)]
        lines += [f"brought back: {line}" for line in _named_lines(self.restored)]
        lines += [f"{mark}: one with {into} now, retired" for mark, _, into in self.joined[:_SHOWN]]
        lines += [f"{each.mark}: leaf {each.position} goes" for each in self.leaves_gone[:_SHOWN]]
        if self.left_out:
            lines.append(f"left out as decided: {_named_marks(self.left_out)}")
        if self.part:
            lines.append(self.part)
        alone = [each for each in self.left if each.kind in _ASKED_ALONE]
        lines += [f"asked: {each.describe()}" for each in alone[:_SHOWN]]
        if len(alone) > _SHOWN:
            lines.append(f"asked: and {len(alone) - _SHOWN} more")
        lines += [f"asked: {proposal.describe()}" for proposal in self.undecided[:_SHOWN]]
        if len(self.undecided) > _SHOWN:
            lines.append(f"asked: and {len(self.undecided) - _SHOWN} more marks that may be known openings")
        lines += _first("not in the file, kept: ", self.kept)
        if self.missing:
            lines.append(f"in the project but not in the file, kept: {_named_marks(self.missing)}")
        lines += [f"blank in the file, kept: {line}" for line in _by_fact(self.blank)]
        lines += [
            f"{mark}: {change.where}, {change.label}: {change.shown(change.before)} stays, set by hand "
            f"({change.source}); the file says {change.shown(change.after)}"
            for mark, change in self.by_hand[:_SHOWN]
        ]
        if len(self.by_hand) > _SHOWN:
            lines.append(f"and {len(self.by_hand) - _SHOWN} more facts set by hand that the file says otherwise")
        for opening in self.changed[:_SHOWN]:
            lines += [
                f"{opening.mark}: {change.where}, {change.label}: {change.shown(change.before)} -> "
                f"{change.shown(change.after)}" + (f" (was set by hand, {change.source})" if change.source else "")
                for change in opening.facts
            ]
            lines += [f"{opening.mark}: new leaf {leaf.position}" for leaf in opening.new_leaves]
            lines += [f"{opening.mark}: new item {item.facts.get('kind', '')}" for item in opening.new_items]
        if len(self.changed) > _SHOWN:
            lines.append(f"and {len(self.changed) - _SHOWN} more changed openings")
        return lines


def _named_lines(openings: Sequence[tuple[str, str]]) -> list[str]:
    return [_named_marks([mark for mark, _ in openings])] if openings else []


_ASKED_ALONE: Final = frozenset({"gone", "again", "merged", "split", "new", "changed", "moved"})
"""Kinds of undecided differences that no other line of a preview tells."""


def _named_marks(marks: Sequence[str]) -> str:
    more = f" and {len(marks) - _SHOWN} more" if len(marks) > _SHOWN else ""
    return ", ".join(marks[:_SHOWN]) + more


def _by_fact(found: Sequence[tuple[str, FactChange]]) -> list[str]:
    """Say of which openings a fact is blank, one line a fact."""
    marks: dict[str, list[str]] = {}
    for mark, change in found:
        marks.setdefault(change.label, []).append(mark)
    return [
        f"{label} of {len(named)} opening{'s' if len(named) > 1 else ''} ({_named_marks(named)})"
        for label, named in marks.items()
    ]


def _first(head: str, lines: Sequence[str]) -> list[str]:
    rest = [f"{head}{len(lines) - _SHOWN} more"] if len(lines) > _SHOWN else []
    return [f"{head}{line}" for line in lines[:_SHOWN]] + rest


def difference(
    read: SurveyRead,
    inputs: Iterable[OpeningInput],
    extra: Mapping[str, Mapping[str, Any]],
    decisions: Decisions | None = None,
    retired: Mapping[str, OpeningInput] | None = None,
) -> Preview:
    """Compare what was read with a project's openings, matched by mark.

    Leaves are matched by position, existing items by kind, leaf, face and their order; an item whose leaf or face one
    side does not know is matched by what both know.

    Parameters
    ----------
    read : SurveyRead
        From the file.
    inputs : iterable of OpeningInput
        The project's openings.
    extra : mapping
        Values of the project's own fields by row.
    decisions : Decisions, optional
        Which marks are which openings.
    retired : mapping of str to OpeningInput, optional
        The retired openings that the file names, by their marks.

    Returns
    -------
    Preview
        Nothing is written.
    """
    # By mark: it stands on the frame and in every file, while no surveyor knows our identifiers.
    known = {given.opening.mark: given for given in inputs}
    new: list[SurveyedOpening] = []
    changed: list[OpeningChange] = []
    unchanged: list[str] = []
    kept: list[str] = []
    blank: list[tuple[str, FactChange]] = []
    covered, of_items = _covered(read), _covered_of_items(read)
    decisions = decisions or Decisions()
    resting = retired or {}
    same, takes, undecided, parted = _decided(read, known, resting, decisions)
    went = [(each.known, known[each.known].opening.id, each.mark) for each, answer in parted if answer == "held"]
    left_out = {proposal.mark for proposal in undecided}
    again: list[tuple[SurveyedOpening, str]] = []
    restored: list[tuple[str, str]] = []
    merged: list[LeafGone] = []
    kept_marks: list[tuple[str, str]] = []
    matched: set[str] = set()
    for opening in read.openings:
        if opening.mark in left_out:
            continue
        mark = same.get(opening.mark, opening.mark)
        given = known.get(mark)
        if given is None and mark in resting:
            if answered(decisions, "again", mark) != "file":
                again.append((opening, resting[mark].opening.id))
                continue
            given = resting[mark]
            restored.append((mark, given.opening.id))
        if given is None:
            new.append(opening)
            continue
        if mark in known:
            matched.add(mark)
        merged += _merged(opening, given)
        if mark != opening.mark and opening.mark not in takes:
            kept_marks.append((opening.mark, mark))
            opening = replace(opening, mark=mark, facts={**opening.facts, "mark": mark})
        change = _compare(opening, given, extra, kept)
        blank += [(given.opening.mark, each) for each in _blank(opening, given, extra, covered)]
        blank += [(given.opening.mark, each) for each in _blank_of_items(opening, given, of_items)]
        if change.facts or change.new_leaves or change.new_items:
            changed.append(change)
        else:
            unchanged.append(opening.mark)
    named = {opening.mark for opening in read.openings} | set(read.rejected) | set(same.values())
    named |= {proposal.known for proposal in undecided} | {mark for mark, _, _ in went}
    missing = tuple(mark for mark in known if mark not in named)
    gone, part = _gone(missing, known, matched, read, decisions)
    not_read = [
        f"sheet {u.sheet}, column {u.column} ({u.header or 'no header'}): {u.filled} cells"
        + (", left out as asked" if u.left_out else "")
        + (f", which can be read as {u.likely}" if u.likely else "")
        for u in read.unmapped
    ]
    return Preview(
        tuple(new),
        tuple(changed),
        tuple(unchanged),
        missing,
        read.assumptions,
        (*not_read, *read.passed_over),
        tuple(kept),
        read.other_sheets,
        read.questions,
        read.oddities,
        tuple(undecided),
        tuple(blank),
        gone=gone,
        part=part,
        merged=tuple(merged),
        again=tuple(again),
        restored=tuple(restored),
        same=tuple(kept_marks),
        parted=tuple((_parted(each, known), answer) for each, answer in parted),
        joined=tuple(went),
        likely=tuple(u for u in read.unmapped if u.likely),
    )


def _parted(each: Proposal, known: Mapping[str, OpeningInput]) -> Undecided:
    mark = each.known if each.kind == "joined" else each.mark
    return Undecided(each.kind, mark, known[each.known].opening.id, each.known, evidence=each.evidence)


def _merged(opening: SurveyedOpening, given: OpeningInput) -> Iterable[LeafGone]:
    """Yield the inactive leaf of a pair that is single in the file."""
    if given.opening.form != "pair" or opening.facts.get("form") != "single":
        return
    named = {leaf.position for leaf in opening.leaves}
    for leaf in given.leaves:
        if leaf.position == "inactive" and leaf.position not in named:
            items = tuple(item.id for item in given.items if item.leaf == "inactive")
            yield LeafGone(given.opening.mark, opening.mark, given.opening.id, leaf.id, "inactive", items)


def _gone(
    missing: Sequence[str],
    known: Mapping[str, OpeningInput],
    matched: Collection[str],
    read: SurveyRead,
    decisions: Decisions,
) -> tuple[tuple[tuple[str, str], ...], str]:
    """Return the openings that the file should name and does not: on the levels that it covers, if it covers them."""
    places: set[tuple[object, object]] = {(known[mark].opening.building, known[mark].opening.level) for mark in matched}
    places |= {(opening.facts.get("building"), opening.facts.get("level")) for opening in read.openings}
    levels = Counter(building for building, _ in places)
    # A list of several levels of a building is one of all of them; one of a single level says nothing of the others.
    found = tuple(
        (mark, known[mark].opening.id)
        for mark in missing
        if (known[mark].opening.building, known[mark].opening.level) in places
        or levels[known[mark].opening.building] > 1
    )
    if not found or ("gone", "", "") in decisions.answers:
        return found, ""
    if HELP_SHEET in read.other_sheets:
        return (), "the file is a form that was written for some openings: nothing is taken for gone"
    if len(matched) < len(found):
        named = f"{len(matched)} of {len(matched) + len(found)} openings"
        words = f"the file names {named} of its levels and is taken for a part of them: nothing is taken for gone"
        return (), words
    return found, ""


def _decided(
    read: SurveyRead, known: Mapping[str, OpeningInput], resting: Collection[str], decisions: Decisions
) -> tuple[dict[str, str], set[str], list[Proposal], list[tuple[Proposal, Answer]]]:
    """Return the project's mark by the file's of openings under another mark, which take it, and what is undecided.

    Of marks that became several, or one of several, last what was decided of each: it carries on (``file``), it is none
    of them (``apart``), it is one with another (``held``: retired).
    """
    new = [opening for opening in read.openings if opening.mark not in known and opening.mark not in resting]
    if not new or not known:
        return {}, set(), [], []
    said = {**decisions.same, **decisions.renamed}
    takes = set(decisions.renamed)
    same = {mark: said[mark] for mark in (opening.mark for opening in new) if said.get(mark) in known}
    named = {opening.mark for opening in read.openings} | set(read.rejected) | set(same.values())
    gone = [mark for mark in known if mark not in named]
    open_ones = [opening for opening in new if opening.mark not in same and opening.mark not in decisions.apart]
    spelling = "the same but for case, dashes, blanks, leading zeros or .0"
    found = [
        Proposal(mark, other, "spelling", spelling)
        for mark, other in spelt_otherwise([opening.mark for opening in open_ones], gone).items()
    ]
    undecided: list[Proposal] = []
    settled: list[tuple[Proposal, Answer]] = []
    taken, others = {each.mark for each in found}, {each.known for each in found}
    for way in (divided, joined):
        rest = [opening for opening in open_ones if opening.mark not in taken]
        for parted in way(rest, [known[mark] for mark in gone if mark not in others]):
            taken |= {each.mark for each in parted.proposals}
            others |= {each.known for each in parted.proposals}
            carried, left, done = _carried(parted, decisions)
            undecided += left
            settled += done
            if carried is not None:
                same[carried.mark] = carried.known
                takes.add(carried.mark)
    found += renamed(
        [opening for opening in open_ones if opening.mark not in taken],
        [known[mark] for mark in gone if mark not in others],
    )
    for each in found:
        answer = answered(decisions, each.kind, each.mark) or _PROPOSALS[decisions.proposals]
        if answer == "ask":
            undecided.append(each)
        elif answer != "apart":
            same[each.mark] = each.known
            takes |= {each.mark} if "renamed" in (each.kind, answer) else set()
    return same, takes, undecided, settled


def _carried(
    parted: Parted, decisions: Decisions
) -> tuple[Proposal | None, list[Proposal], list[tuple[Proposal, Answer]]]:
    """Return which of several carries on, which are left open, and what was decided of each."""
    usual = _PROPOSALS[decisions.proposals]
    marks = {each: each.known if parted.kind == "joined" else each.mark for each in parted.proposals}
    answers = {each: answered(decisions, parted.kind, mark) or usual for each, mark in marks.items()}
    carry = [each for each, answer in answers.items() if answer == "file"]
    # What was said of one mark goes before what was said of all.
    carry.sort(key=lambda each: decisions.answers.get((parted.kind, marks[each], "")) != "file")
    if not carry:
        settled: list[tuple[Proposal, Answer]] = [
            (each, answer) for each, answer in answers.items() if answer == "apart"
        ]
        return None, [each for each, answer in answers.items() if answer != "apart"], settled
    rest: Answer = "held" if parted.kind == "joined" else "apart"
    return carry[0], [], [
        (each, "file" if each is carry[0] else "apart" if answer == "apart" else rest)
        for each, answer in answers.items()
    ]  # fmt: skip


_PROPOSALS: Final[Mapping[str, Answer]] = {"ask": "ask", "take": "file", "apart": "apart"}


def _covered(read: SurveyRead) -> dict[str, frozenset[str]]:
    """Return the facts that have a column in every sheet of openings, by what they describe."""
    facts: dict[str, set[str]] = {}
    for mapping in read.mapping:
        for column in mapping.columns:
            names = ("width_mm", "height_mm") if column.target.attribute == SIZE else (column.target.attribute,)
            if not column.target.slot:
                facts.setdefault(column.target.entity, set()).update(names)
    return {entity: frozenset(names) for entity, names in facts.items()}


def _covered_of_items(read: SurveyRead) -> dict[str, frozenset[str]]:
    """Return the facts that have a column of an item's own in a sheet of openings, by the item's kind."""
    facts: dict[str, set[str]] = {}
    for mapping in read.mapping:
        for column in mapping.columns:
            target = column.target
            kind = target.slot or ("lock" if target.attribute in LOCK_FACTS else "")
            if target.entity == "existing_item" and kind and target.attribute in _ITEM:
                facts.setdefault(kind, set()).add(target.attribute)
    return {kind: frozenset(names - {"kind", "leaf"}) for kind, names in facts.items()}


def _blank_of_items(
    opening: SurveyedOpening, given: OpeningInput, covered: Mapping[str, frozenset[str]]
) -> Iterable[FactChange]:
    """Yield the known facts of existing items that have a column in the file, in which their cell is blank."""
    for kind, names in covered.items():
        held = [item for item in given.items if item.kind == kind]
        told = [each for each in opening.items if each.facts.get("kind") == kind]
        # The only one of its kind may have lost all its cells: then the file does not name it at all.
        alone: list[tuple[SurveyedItem | None, Item | None]] = [(None, held[0])] if len(held) == 1 and not told else []
        for each, item in (*alone, *_match_items(told, held)[0]):
            if item is None:
                continue
            for name in names:
                value = getattr(item, name)
                if value is not None and (each is None or name not in each.facts):
                    origin = opening.origin if each is None else each.origin
                    yield FactChange("existing_item", item.id, _named(kind), name, value, None, origin)


def _blank(
    opening: SurveyedOpening,
    given: OpeningInput,
    extra: Mapping[str, Mapping[str, Any]],
    covered: Mapping[str, frozenset[str]],
) -> Iterable[FactChange]:
    """Yield the known facts that have a column in the file, in which their cell is blank."""
    held = given.opening
    for name in covered.get("opening", ()):
        if name not in opening.facts:
            value = getattr(held, name) if name in _OPENING else extra.get(held.id, {}).get(name)
            if value is not None:
                yield FactChange("opening", held.id, "Opening", name, value, None, opening.origin)
    names = covered.get("leaf", frozenset()) - {"position"}
    if not names:
        return
    for leaf in given.leaves:
        told = next((each for each in opening.leaves if each.position == leaf.position), None)
        for name in names if told is not None else ():
            if told is not None and name not in told.facts and (value := getattr(leaf, name)) is not None:
                yield FactChange("leaf", leaf.id, f"Leaf {leaf.position}", name, value, None, told.origin)


def _compare(
    opening: SurveyedOpening, given: OpeningInput, extra: Mapping[str, Mapping[str, Any]], kept: list[str]
) -> OpeningChange:
    held = given.opening
    facts = _facts("opening", held.id, "Opening", opening.facts, held, _OPENING, extra, opening.origin)
    new_leaves: list[SurveyedLeaf] = []
    leaves = list(given.leaves)
    for leaf in opening.leaves:
        known = _leaf_for(leaf, opening, leaves)
        if known is None:
            new_leaves.append(leaf)
            continue
        leaves.remove(known)
        where = f"Leaf {known.position or leaf.position}"
        facts += _facts("leaf", known.id, where, leaf.facts, known, _LEAF, extra, leaf.origin)
    kept += [f"{opening.mark}, leaf {leaf.position or 'of unknown position'}" for leaf in leaves if opening.leaves]
    new_items: list[SurveyedItem] = []
    matches, unmatched = _match_items(opening.items, given.items)
    for surveyed, item in matches:
        if item is None:
            new_items.append(surveyed)
            continue
        # What only follows from other facts fills gaps; it must never overrule what somebody saw.
        told = {n: v for n, v in surveyed.deduced.items() if getattr(item, n) is None} | dict(surveyed.facts)
        facts += _facts("existing_item", item.id, _named(item.kind), told, item, _ITEM, extra, surveyed.origin)
    # A file that names no items of an opening says nothing of them, and not that they are gone.
    if opening.items:
        kept += [f"{opening.mark}, {_named(item.kind).lower()} {item.face or ''}".rstrip() for item in unmatched]
    return OpeningChange(opening.mark, held.id, tuple(facts), tuple(new_leaves), tuple(new_items))


def _named(kind: str | None) -> str:
    return str(kind or "item").replace("-", " ").capitalize()


def _leaf_for(leaf: SurveyedLeaf, opening: SurveyedOpening, leaves: list[Leaf]) -> Leaf | None:
    """Return which of the project's leaves a leaf of the file is; a single leaf may turn out to be the active one."""
    named = next((known for known in leaves if known.position == leaf.position), None)
    if named is not None:
        return named
    positions = {each.position for each in opening.leaves}
    others = {"active": "single", "single": "active"}
    other = others.get(leaf.position, "")
    if other in positions:
        return None
    return next((known for known in leaves if known.position in (other, None)), None)


def _match_items(
    surveyed: Sequence[SurveyedItem], items: Sequence[Item]
) -> tuple[list[tuple[SurveyedItem, Item | None]], list[Item]]:
    """Match items in the order of the file, the surest matches first."""
    left = list(items)
    found: dict[int, Item] = {}
    # The surest way over all items before the next one: an item must not be taken by a weaker match that another fits
    # exactly.
    for way in _WAYS:
        for index, each in enumerate(surveyed):
            if index in found or not left:
                continue
            kind = each.facts.get("kind")
            match = next((item for item in left if item.kind == kind and all(fits(each, item) for fits in way)), None)
            if match is not None:
                found[index] = match
                left = [item for item in left if item is not match]
    return [(each, found.get(index)) for index, each in enumerate(surveyed)], left


def _either(one: object, other: object) -> bool:
    return one == other or one is None or other is None


def _leaf_of(surveyed: SurveyedItem) -> object:
    return surveyed.facts.get("leaf", surveyed.deduced.get("leaf"))


def _same_leaf(surveyed: SurveyedItem, item: Item) -> bool:
    return item.leaf == _leaf_of(surveyed)


def _same_face(surveyed: SurveyedItem, item: Item) -> bool:
    return item.face == surveyed.facts.get("face")


def _possible_leaf(surveyed: SurveyedItem, item: Item) -> bool:
    return _either(item.leaf, _leaf_of(surveyed))


def _possible_face(surveyed: SurveyedItem, item: Item) -> bool:
    return _either(item.face, surveyed.facts.get("face"))


def _leaf_renamed(surveyed: SurveyedItem, item: Item) -> bool:
    """Tell whether a single door turned out to be a pair or the other way round, or the file only deduces the leaf."""
    return {item.leaf, _leaf_of(surveyed)} == {"single", "active"} or "leaf" not in surveyed.facts


_WAYS: Final[tuple[tuple[Callable[[SurveyedItem, Item], bool], ...], ...]] = (
    (_same_leaf, _same_face),
    (_possible_leaf, _same_face),
    (_same_leaf, _possible_face),
    (_possible_leaf, _possible_face),
    (_leaf_renamed, _possible_face),
)
"""What must hold for an item of the file to be one of the project's of the same kind, the surest way first."""


def _facts(
    entity: str,
    row_id: str,
    where: str,
    told: Mapping[str, Any],
    held: Any,
    declared: frozenset[str],
    extra: Mapping[str, Mapping[str, Any]],
    origin: str,
) -> list[FactChange]:
    found = []
    for name, value in told.items():
        before = getattr(held, name) if name in declared else extra.get(row_id, {}).get(name)
        # Plain inequality first: it settles nearly all facts, and the comparison within a nanometre is dear.
        if before != value and not is_same(before, value):
            found.append(FactChange(entity, row_id, where, name, before, value, origin))
    return found
