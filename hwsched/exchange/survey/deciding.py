"""What becomes of the differences between a file and the project once a person's word is laid on them.

Pure: it takes out of a preview what stays as it is, and says what is left to be decided. Which facts were set by hand
is settled before, by the journal.
"""

from collections.abc import Collection, Iterable, Mapping
from dataclasses import replace
from typing import Any, Final

from hwsched.exchange.survey.decisions import BY_NAME, Line, answered
from hwsched.exchange.survey.difference import FactChange, LeafGone, OpeningChange, Preview, Undecided
from hwsched.exchange.survey.facts import Answer, Decisions, SurveyedOpening

Settled = tuple[str, str | None, str, str]
"""Kind, opening, fact, what the file says: what somebody decided at an earlier delivery that said the same."""
_PLACE: Final = frozenset({"building", "level"})


def settled_key(each: Undecided) -> Settled:
    """Return by what a decision is known again when a later delivery says the same."""
    says = repr(each.fact.after) if each.fact is not None else ""
    # Of a mark that became several each is asked about, and all of them are about one opening.
    whose = each.mark if each.kind == "divided" else each.opening_id or each.mark
    return each.kind, whose, each.about, says


def decide(
    preview: Preview,
    openings: Iterable[SurveyedOpening],
    ids: Mapping[str, str],
    decisions: Decisions,
    settled: Collection[Settled] = (),
) -> Preview:
    """Lay decisions on a preview.

    Parameters
    ----------
    preview : Preview
        With what was set by hand settled.
    openings : iterable of SurveyedOpening
        All that the file tells.
    ids : mapping of str to str
        Identifiers of the project's openings by their marks.
    decisions : Decisions
        What was said.
    settled : collection of Settled
        What was decided to stay as it is, at earlier deliveries.

    Returns
    -------
    Preview
        Of which all that it changes is to be written.
    """
    court = _Court(decisions, settled)
    read = {opening.mark: opening for opening in openings}
    by_mark = {**ids, **{each.mark: each.opening_id for each in preview.changed if each.opening_id}}
    # Of an opening that keeps its mark by a person's word nothing else may change.
    by_mark |= {mark: fact.row_id for mark, fact in preview.by_hand if fact.entity == "opening"}
    for proposal in preview.undecided:
        court.leave(
            Undecided(
                proposal.kind, proposal.known if proposal.kind == "joined" else proposal.mark,
                ids.get(proposal.known), proposal.known,
                opening=read.get(proposal.mark), evidence=proposal.evidence,
            )
        )  # fmt: skip
    retired = [
        (mark, row_id)
        for mark, row_id in preview.gone
        if court.takes(Undecided("gone", mark, row_id, evidence="in the project, and not in the file"))
    ]
    for opening, row_id in preview.again:
        court.leave(Undecided("again", opening.mark, row_id, opening=opening, evidence="retired, and in the file"))
    for mark, fact in preview.by_hand:
        court.leave(Undecided("by-hand", mark, by_mark.get(mark), fact=fact))
    for mark, fact in preview.blank:
        court.leave(Undecided("blank", mark, by_mark.get(mark), fact=fact))
    merged = [each for each in preview.merged if court.takes(_undecided_leaf(each, read))]
    pairs = {each.opening_id for each in preview.merged} - {each.opening_id for each in merged}
    changed, unchanged = list(preview.changed), list(preview.unchanged)
    if court.wants("changed", "moved", "split") or pairs:
        changed = []
        told = {mark: spelt for spelt, mark in preview.same}
        for change in preview.changed:
            kept = court.judge(change, read.get(told.get(change.mark, change.mark)), change.opening_id in pairs)
            if kept.facts or kept.new_leaves or kept.new_items:
                changed.append(kept)
            else:
                unchanged.append(change.mark)
    new, left_out = list(preview.new), list(preview.left_out)
    if court.wants("new"):
        new = [each for each in new if court.takes(Undecided("new", each.mark, opening=each, evidence="new"))]
        left_out += [each.mark for each in preview.new if each not in new]
    return replace(
        preview,
        new=tuple(new),
        changed=tuple(changed),
        unchanged=tuple(unchanged),
        retired=(*retired, *((mark, row_id) for mark, row_id, _ in preview.joined)),
        leaves_gone=tuple(merged),
        left_out=tuple(left_out),
        left=tuple(court.left),
        settled=(*court.held, *_known_by_spelling(preview, ids, decisions)),
    )


def _known_by_spelling(
    preview: Preview, ids: Mapping[str, str], decisions: Decisions
) -> Iterable[tuple[Undecided, Answer]]:
    """Yield which marks of the file are known openings that keep their mark: so it is at later deliveries too."""
    for mark, known in preview.same:
        evidence = "the same opening by a person's word"
        yield Undecided("spelling", mark, ids.get(known), known, evidence=evidence), "file"


def lines_of(left: Iterable[Undecided]) -> list[Line]:
    """Return undecided differences as lines of a text of decisions."""
    return [
        Line(each.kind, each.mark, each.about, each.known, BY_NAME[each.kind].usual, each.describe())
        if each.kind in ("renamed", "spelling", "divided")
        else Line(each.kind, each.mark, each.about, "", "ask", each.describe())
        for each in left
    ]


def _undecided_leaf(each: LeafGone, read: Mapping[str, SurveyedOpening]) -> Undecided:
    count = f" with {len(each.items)} existing items on it" if each.items else ""
    said = f"a pair in the project, single in the file; the {each.position} leaf{count}"
    return Undecided("merged", each.mark, each.opening_id, opening=read.get(each.told), evidence=said)


def _is_split(opening: OpeningChange) -> bool:
    return any(fact.attribute == "form" and (fact.before, fact.after) == ("single", "pair") for fact in opening.facts)


def _of_form(fact: FactChange) -> bool:
    return fact.attribute in ("form", "position")


class _Court:
    """Answers, and what is left without one."""

    def __init__(self, decisions: Decisions, settled: Collection[Settled]) -> None:
        self._decisions, self._settled = decisions, settled
        self.left: list[Undecided] = []
        self.held: list[tuple[Undecided, Answer]] = []
        """What stays as it is by a person's word, at later deliveries that say the same too."""
        self._kinds = {kind for kind, _, _ in decisions.answers}

    def wants(self, *kinds: str) -> bool:
        """Tell whether anything was said of such kinds."""
        return not self._kinds.isdisjoint((*kinds, "any"))

    def answer(self, each: Undecided) -> Answer:
        fact, where = (each.fact.attribute, each.fact.where) if each.fact is not None else ("", "")
        return answered(self._decisions, each.kind, each.mark, fact, where) or BY_NAME[each.kind].usual

    def leave(self, each: Undecided) -> None:
        """Keep a difference for later, unless it was decided to stay."""
        if self.answer(each) == "held" or settled_key(each) in self._settled:
            self.held.append((each, "held"))
        else:
            self.left.append(each)

    def takes(self, each: Undecided) -> bool:
        """Tell whether the file goes before; what is not decided is kept for later."""
        if self.answer(each) == "file":
            return True
        self.leave(each)
        return False

    def judge(self, opening: OpeningChange, read: SurveyedOpening | None, stays_pair: bool) -> OpeningChange:
        """Return what of a change is taken."""
        facts: list[FactChange] = []
        leaves: Any = opening.new_leaves
        items: Any = opening.new_items
        whole = _is_split(opening)
        if stays_pair:
            opening = replace(opening, facts=tuple(fact for fact in opening.facts if not _of_form(fact)))
        elif whole:
            told = Undecided(
                "split", opening.mark, opening.opening_id, opening=read, evidence="single in the project, now a pair"
            )
            if not self.takes(told):
                kept = [fact for fact in opening.facts if not _of_form(fact)]
                leaves = tuple(each for each in leaves if each.position != "inactive")
                items = tuple(each for each in items if each.facts.get("leaf") != "inactive")
                opening = replace(opening, facts=tuple(kept))
        for fact in opening.facts:
            if fact.source or (whole and _of_form(fact)):
                # Whether the file goes before what was set by hand was settled already.
                facts.append(fact)
                continue
            kind = "moved" if fact.entity == "opening" and fact.attribute in _PLACE else "changed"
            if self.takes(Undecided(kind, opening.mark, opening.opening_id, fact=fact)):
                facts.append(fact)
        return replace(opening, facts=tuple(facts), new_leaves=leaves, new_items=items)


def differences_of(preview: Preview, decisions: Decisions) -> list[tuple[Undecided, Answer]]:
    """Return every difference of a decided preview from the project, each with what becomes of it."""
    found: list[tuple[Undecided, Answer]] = [(each, "ask") for each in preview.left]
    found += [(each, answer) for each, answer in preview.settled if answer == "held"]
    found += [(Undecided("spelling", mark, known=known), "file") for mark, known in preview.same]
    found += preview.parted
    parted = {each.opening_id for each, _ in preview.parted}
    went = {row_id for _, row_id, _ in preview.joined}
    found += [(Undecided("gone", mark, row_id), "file") for mark, row_id in preview.retired if row_id not in went]
    found += [(Undecided("again", mark, row_id), "file") for mark, row_id in preview.restored]
    found += [(Undecided("merged", each.mark, each.opening_id), "file") for each in preview.leaves_gone]
    for opening in preview.changed:
        if _is_split(opening):
            found.append((Undecided("split", opening.mark, opening.opening_id), "file"))
        for fact in opening.facts:
            if fact.entity == "opening" and fact.attribute == "mark":
                if opening.opening_id in parted:
                    continue
                found.append((Undecided("renamed", opening.mark, opening.opening_id, str(fact.before)), "file"))
                continue
            kind = _kind_of(fact)
            found.append((Undecided(kind, opening.mark, opening.opening_id, fact=fact), "file"))
    found += [(Undecided("new", each.mark), "file") for each in preview.new]
    found += [
        (Undecided(kind, mark, evidence="an opening of its own"), answer)
        for (kind, mark, _), answer in decisions.answers.items()
        if kind in ("renamed", "spelling") and mark and answer == "apart"
    ]
    return sorted(found, key=lambda each: _ORDER[each[0].kind])


def _kind_of(fact: FactChange) -> str:
    if fact.source:
        return "by-hand"
    if fact.after is None:
        return "blank"
    return "moved" if fact.entity == "opening" and fact.attribute in _PLACE else "changed"


_ORDER: Final = {name: place for place, name in enumerate(BY_NAME)}
