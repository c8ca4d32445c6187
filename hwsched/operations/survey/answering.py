"""Answering what deliveries left to be decided, without their files: what they say is kept with the questions."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any, Final

from sqlalchemy import Connection, select

from hwsched.exchange.survey.deciding import decide, settled_key
from hwsched.exchange.survey.decisions import answered
from hwsched.exchange.survey.difference import FactChange, OpeningChange, Preview, Undecided, difference
from hwsched.exchange.survey.facts import Answer, AnswerKey, Decisions, SurveyRead, is_same
from hwsched.model.bulk import among
from hwsched.model.journal.journal import Change
from hwsched.model.project import Project
from hwsched.model.queries import opening_ids, read_extra, read_inputs, retired_openings
from hwsched.model.tables import DELIVERY, ITEM_TABLE, LEAF_TABLE, OPEN_QUESTION, OPENING_TABLE
from hwsched.operations.changes import Changes
from hwsched.operations.collector import collector_paused
from hwsched.operations.survey.deliveries import OpenQuestion, read_questions, replace_questions, summary_of
from hwsched.operations.survey.hand_edits import settle_by_hand
from hwsched.operations.survey.survey_writing import write_preview
from hwsched.values import OpeningInput

_WHOLE: Final = frozenset({"renamed", "spelling", "divided", "joined", "again", "new", "split", "merged"})
"""Kinds of which the question holds all that the file says of the opening."""
_PROPOSED: Final = ("renamed", "spelling", "divided", "joined")
_USUAL: Final[Mapping[str, Answer]] = {"ask": "ask", "take": "file", "apart": "apart"}


@dataclass(frozen=True, slots=True)
class Answered:
    """What came of answers."""

    changes: Changes
    preview: Preview
    """What they change."""
    count: int
    """Questions that are answered."""
    left: tuple[OpenQuestion, ...]
    """Questions that still stand."""


def preview_answers(project: Project, decisions: Decisions, *, delivery: int | None = None) -> Answered:
    """Say what answers would change; nothing is written."""
    with collector_paused(), project.reading() as connection:
        judged = _judged(project, connection, decisions, delivery)
    return Answered(Changes(), judged.preview, len(judged.done), judged.left)


def answer_questions(
    project: Project, decisions: Decisions, *, who: str, delivery: int | None = None, base: int | None = None
) -> Answered:
    """Answer questions that deliveries left, as one step.

    Parameters
    ----------
    project : Project
        Open project.
    decisions : Decisions
        Answers, as at the taking in of a file; what they do not speak of stays open.
    who : str
        For the journal.
    delivery : int, optional
        Of this delivery only.
    base : int, optional
        The newest change set that was seen.

    Raises
    ------
    MissingRowError, ConflictError, DuplicateValueError
        And nothing is changed.
    """
    with project.change("decide-survey", "Decide on deliveries", who, base=base) as change, collector_paused():
        judged = _judged(project, change.connection, decisions, delivery)
        if judged.done:
            write_preview(change, judged.preview, judged.files)
            _close(change, judged)
            count = len(judged.done)
            change.summary = f"Decide {count} question{'s' if count > 1 else ''} of {judged.files}"
            change.summary += f": {summary_of(replace(judged.preview, left=()))}"
    return Answered(Changes.of(change), judged.preview, len(judged.done), judged.left)


@dataclass(frozen=True, slots=True)
class _Judged:
    preview: Preview
    done: Mapping[str, str]
    """What becomes of the row of each question that is answered: the answer that is kept, or ``gone``."""
    left: tuple[OpenQuestion, ...]
    questions: Mapping[str, OpenQuestion]
    files: str


def _judged(project: Project, connection: Connection, decisions: Decisions, delivery: int | None) -> _Judged:
    questions = read_questions(connection, delivery)
    answers = {question.id: _answer(decisions, question.undecided) for question in questions}
    went = _part(questions, answers, decisions)
    asked = [question for question in questions if answers[question.id] != "ask"]
    whole = [question for question in asked if question.undecided.kind in _WHOLE and answers[question.id] != "held"]
    whole = [question for question in whole if not _still_open(question, questions, answers)]
    marks = {row_id: mark for mark, row_id in opening_ids(connection).items()}
    told = _difference(
        project, connection, [question.undecided for question in whole], answers_of(whole, answers, marks)
    )
    facts = [question for question in asked if question.undecided.fact is not None and answers[question.id] == "file"]
    changed = [*told.changed, *_fact_changes(connection, [question.undecided for question in facts])]
    retired = [
        (each.mark, each.opening_id)
        for question in asked
        if (each := question.undecided).kind == "gone" and answers[question.id] == "file" and each.opening_id
    ]
    retired += [(mark, row_id) for mark, row_id, _ in went]
    preview = replace(told, changed=tuple(_merged(changed)), retired=tuple(retired), joined=tuple(went))
    # What an opening that is taken now says otherwise than by hand, or leaves blank, is asked like the rest.
    done = {question.id: _kept(question.undecided, answers[question.id]) for question in asked}
    files = dict.fromkeys(_file(connection, question.delivery) for question in asked)
    left = tuple(question for question in questions if question.id not in done)
    return _Judged(preview, done, left, {each.id: each for each in questions}, ", ".join(files) or "deliveries")


def _of_one(each: Undecided) -> tuple[str, str | None] | None:
    """Return what the several have in common that are one mark now, or were one."""
    if each.kind == "divided":
        return each.kind, each.opening_id
    return (each.kind, each.opening.mark) if each.kind == "joined" and each.opening is not None else None


def _part(
    questions: Sequence[OpenQuestion], answers: dict[str, Answer], decisions: Decisions
) -> list[tuple[str, str, str]]:
    """Let what is said of one of several hold of all: one carries on, the others are new, or are one with it now.

    Returns
    -------
    list of (str, str, str)
        Mark and identifier of openings that are one with another now, and its mark.
    """
    groups: dict[tuple[str, str | None], list[OpenQuestion]] = {}
    for question in questions:
        if (of := _of_one(question.undecided)) is not None:
            groups.setdefault(of, []).append(question)
    went: list[tuple[str, str, str]] = []
    for (kind, _), group in groups.items():
        said = [question for question in group if answers[question.id] in ("file", "renamed")]
        if not said:
            continue
        # What was said of one mark goes before what was said of all; of them the first carries on.
        told = {each.id: decisions.answers.get((kind, each.undecided.mark, "")) == "file" for each in said}
        carries = min(said, key=lambda each: (not told[each.id], each.undecided.mark))
        for question in group:
            each = question.undecided
            if question is carries:
                answers[question.id] = "file"
            elif kind == "divided":
                answers[question.id] = "apart"
            elif answers[question.id] != "apart" and each.opening is not None and each.opening_id is not None:
                answers[question.id] = "held"
                went.append((each.known, each.opening_id, each.opening.mark))
    return went


def _still_open(question: OpenQuestion, questions: Sequence[OpenQuestion], answers: Mapping[str, Answer]) -> bool:
    """Tell whether the file's opening waits for what becomes of others that may be it, or comes in with one of them."""
    if question.undecided.kind != "joined" or answers[question.id] != "apart":
        return False
    of = _of_one(question.undecided)
    return any(answers[each.id] in ("ask", "file") for each in questions if _of_one(each.undecided) == of)


def _answer(decisions: Decisions, each: Undecided) -> Answer:
    if each.kind in _PROPOSED:
        if each.kind == "joined":
            if each.opening is not None and decisions.renamed.get(each.opening.mark) == each.known:
                return "file"
            return answered(decisions, each.kind, each.mark) or _USUAL[decisions.proposals]
        if each.mark in decisions.apart:
            return "apart"
        if each.mark in decisions.renamed:
            return "renamed"
        if each.mark in decisions.same:
            return "file"
        return answered(decisions, each.kind, each.mark) or _USUAL[decisions.proposals]
    fact = each.fact
    if fact is None:
        return answered(decisions, each.kind, each.mark) or "ask"
    said = answered(decisions, each.kind, each.mark, fact.attribute, fact.where)
    if said is None:
        names = {"by-hand": decisions.over_hand, "blank": decisions.emptied}.get(each.kind, frozenset())
        said = "file" if "all" in names or fact.attribute in names else "ask"
    return said


def answers_of(whole: Sequence[OpenQuestion], answers: Mapping[str, Answer], marks: Mapping[str, str]) -> Decisions:
    """Return answers on whole openings as decisions on what the file says of them; marks: of now, by opening."""
    same: dict[str, str] = {}
    renamed: dict[str, str] = {}
    apart: set[str] = set()
    kept: dict[AnswerKey, Answer] = {}
    for question in whole:
        each, answer = question.undecided, answers[question.id]
        if each.kind in _PROPOSED and answer != "apart":
            taken = same if each.kind == "spelling" and answer == "file" else renamed
            taken[_told_mark(each)] = marks.get(each.opening_id or "", each.known)
        elif each.kind in (*_PROPOSED, "new"):
            apart.add(_told_mark(each))
        if each.kind not in _PROPOSED:
            # The file may spell it otherwise, and since the question was asked it may have got another mark.
            now = marks.get(each.opening_id or "", each.mark)
            kept[each.kind, now, ""] = answer
            if each.opening is not None and each.opening.mark != now:
                same[each.opening.mark] = now
    return Decisions(same=same, renamed=renamed, apart=frozenset(apart), proposals="apart", answers=kept)


def _told_mark(each: Undecided) -> str:
    """Return the file's mark of an opening."""
    return each.opening.mark if each.kind == "joined" and each.opening is not None else each.mark


def _difference(project: Project, connection: Connection, whole: Sequence[Undecided], decisions: Decisions) -> Preview:
    """Compare what the file says of openings that are taken now with the project as it is."""
    openings = {each.opening.mark: each.opening for each in whole if each.opening is not None}
    if not openings:
        return Preview((), (), (), ())
    marks, catalogue = opening_ids(connection), project.catalogue.read(connection)
    read = SurveyRead("", tuple(openings.values()), (), (), (), (), (), ())
    extra = {**read_extra(connection, OPENING_TABLE), **read_extra(connection, ITEM_TABLE)}
    resting = [row_id for mark, row_id in retired_openings(connection).items() if mark in openings]
    retired = read_inputs(connection, resting, catalogue, retired=True) if resting else ()
    by_mark = {given.opening.mark: given for given in retired}
    found = difference(read, read_inputs(connection, None, catalogue), extra, decisions, by_mark)
    # Nothing else of the delivery is looked at: what its file does not name was asked about when it came.
    found = replace(found, gone=(), missing=(), part="")
    return decide(settle_by_hand(connection, found, decisions), openings.values(), marks, decisions)


def _fact_changes(connection: Connection, told: Sequence[Undecided]) -> list[OpeningChange]:
    """Return what single facts change, as far as they are not so already."""
    present: dict[str, Mapping[str, Any]] = {}
    for table in (OPENING_TABLE, LEAF_TABLE, ITEM_TABLE):
        ids = {each.fact.row_id for each in told if each.fact is not None and each.fact.entity == table.name}
        for row in connection.execute(select(table).where(table.c.id.in_(ids))) if ids else ():
            present[row.id] = dict(row._mapping)
    places = {given.opening.id: given for given in _inputs(connection, told)}
    found = []
    for each in told:
        fact = each.fact
        held = present.get(fact.row_id) if fact is not None else None
        if fact is None or held is None or each.opening_id is None:
            continue
        now = _value(held, fact, places.get(fact.row_id))
        if not is_same(now, fact.after):
            found.append(OpeningChange(each.mark, each.opening_id, (replace(fact, before=now),)))
    return found


def _inputs(connection: Connection, told: Sequence[Undecided]) -> Sequence[OpeningInput]:
    moved = {each.opening_id for each in told if each.fact is not None and each.fact.attribute in ("building", "level")}
    ids = [each for each in moved if each is not None]
    return list(read_inputs(connection, ids)) if ids else []


def _value(row: Mapping[str, Any], fact: FactChange, given: OpeningInput | None) -> Any:
    if fact.attribute in ("building", "level") and given is not None:
        return getattr(given.opening, fact.attribute)
    return row[fact.attribute] if fact.attribute in row else row["extra"].get(fact.attribute)


def _merged(changed: Sequence[OpeningChange]) -> list[OpeningChange]:
    """Put the changes of each opening together: a row is edited once in a step."""
    found: dict[str, OpeningChange] = {}
    for each in changed:
        held = found.get(each.opening_id)
        if held is None:
            found[each.opening_id] = each
            continue
        known = {(fact.row_id, fact.attribute) for fact in held.facts}
        more = tuple(fact for fact in each.facts if (fact.row_id, fact.attribute) not in known)
        found[each.opening_id] = replace(held, facts=(*held.facts, *more))
    return list(found.values())


def _kept(each: Undecided, answer: Answer) -> str:
    """Return the answer that holds of later deliveries: a mark that is a known opening's other spelling."""
    if answer == "held" and each.kind not in _PROPOSED:
        return "held"
    return "file" if each.kind == "spelling" and answer == "file" else "gone"


def _file(connection: Connection, number: int) -> str:
    return str(connection.execute(select(DELIVERY.c.file).where(DELIVERY.c.number == number)).scalar_one())


def _close(change: Change, judged: _Judged) -> None:
    """Close the questions that are answered, and keep what the openings that are taken now leave open themselves."""
    by_delivery: dict[int, dict[str, str | None]] = {}
    # Those of an opening that goes went with it.
    query = select(OPEN_QUESTION.c.id)
    there = {row[0] for row in among(change.connection, query, OPEN_QUESTION.c.id, list(judged.done))}
    asked = {settled_key(question.undecided) for question in judged.left}
    for row_id, answer in judged.done.items():
        rows = by_delivery.setdefault(judged.questions[row_id].delivery, {})
        rows[row_id] = None if answer == "gone" else answer
    for number, rows in by_delivery.items():
        row = change.connection.execute(select(DELIVERY).where(DELIVERY.c.number == number)).one()
        told = [question.undecided for question in judged.questions.values() if question.delivery == number]
        here = {mark for each in told for mark in (each.mark, _told_mark(each))}
        ids = {each.opening_id for each in told if each.opening_id is not None}
        new = [
            (each, None)
            for each in judged.preview.left
            if (each.mark in here or each.opening_id in ids) and settled_key(each) not in asked
        ]
        asked.update(settled_key(each) for each, _ in new)
        replace_questions(change, row.id, new, {key: answer for key, answer in rows.items() if key in there})
        kept = dict(row.told)
        kept["decided"] = int(kept.get("decided", 0)) + len(rows)
        change.update(DELIVERY, [(row.id, {"told": kept})])
