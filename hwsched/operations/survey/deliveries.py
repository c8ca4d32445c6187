"""Deliveries: the survey files that were taken in, and what they left for a person to decide.

A delivery is kept beside what it changed, in the same change set, so that it goes with it when that is taken back. What
somebody decided to leave as it is stands there too: a later delivery that says the same asks nothing again.
"""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any, Final

from sqlalchemy import Connection, func, select

from hwsched.exchange.problems import column_letter
from hwsched.exchange.survey.deciding import Settled, settled_key
from hwsched.exchange.survey.difference import Preview, Undecided
from hwsched.exchange.survey.facts import SurveyRead
from hwsched.exchange.survey.left import content_of, undecided_of
from hwsched.language import phrase, to_phrase
from hwsched.model.bulk import among
from hwsched.model.errors import MissingRowError, NotUndoableError
from hwsched.model.journal.fact_words import FactWords
from hwsched.model.journal.history import Entry, changes_of, entries_of, standing
from hwsched.model.journal.journal import Change
from hwsched.model.project import Project
from hwsched.model.tables import DELIVERY, OPEN_QUESTION, OPENING_TABLE
from hwsched.model.time_zone import read_zone, told_in
from hwsched.operations.changes import Changes
from hwsched.operations.project.history import undo_one
from hwsched.operations.survey.open_counts import OPEN
from hwsched.operations.survey.things import OF_OPENINGS, Thing, names_of


@dataclass(frozen=True, slots=True)
class Delivery:
    """A survey file that was taken in."""

    number: int
    """Counted from 1."""
    file: str
    at: str
    """ISO 8601, in the project's zone."""
    person: str
    step: int
    """Number of the change set that took it in."""
    decided: tuple[int, ...]
    """Numbers of the change sets in which its questions were decided."""
    open: int
    """Questions that are left."""
    counts: Mapping[str, int]
    """How many openings were new, changed, unchanged, retired, brought back."""
    columns: Mapping[str, Mapping[str, str]]
    """Letters of the column by fact, by sheet."""
    id: str = ""


@dataclass(frozen=True, slots=True)
class OpenQuestion:
    """What a delivery left for a person to decide."""

    id: str
    delivery: int
    undecided: Undecided


@dataclass(frozen=True, slots=True)
class EarlierAnswers:
    """What was decided at earlier deliveries and holds of later ones that say the same."""

    held: frozenset[Settled]
    same: Mapping[str, str]
    """Marks of files that are known openings, which keep their mark."""


_ROWS: Final = (
    select(OPEN_QUESTION, DELIVERY.c.number, OPENING_TABLE.c.mark.label("present"))
    .join(DELIVERY, OPEN_QUESTION.c.delivery_id == DELIVERY.c.id)
    .outerjoin(OPENING_TABLE, OPEN_QUESTION.c.opening_id == OPENING_TABLE.c.id)
    .order_by(DELIVERY.c.number, OPEN_QUESTION.c.id)
)

_KINDS: Final = (
    select(OPEN_QUESTION.c.opening_id, DELIVERY.c.number, OPEN_QUESTION.c.kind)
    .join(DELIVERY, OPEN_QUESTION.c.delivery_id == DELIVERY.c.id)
    .outerjoin(OPENING_TABLE, OPEN_QUESTION.c.opening_id == OPENING_TABLE.c.id)
    .where(*OPEN, OPEN_QUESTION.c.opening_id.is_not(None))
    .order_by(DELIVERY.c.number, OPEN_QUESTION.c.id)
)


def read_settled(connection: Connection) -> EarlierAnswers:
    """Return what was decided at earlier deliveries."""
    held: set[Settled] = set()
    same: dict[str, str] = {}
    for row in connection.execute(_ROWS.where(OPEN_QUESTION.c.answer.is_not(None))):
        each = _undecided(row)
        if row.answer == "file" and row.present is not None:
            same[each.mark] = row.present
        elif row.answer == "held":
            held.add(settled_key(each))
    return EarlierAnswers(frozenset(held), same)


def read_questions(connection: Connection, delivery: int | None = None) -> list[OpenQuestion]:
    """Return what is left to be decided, oldest delivery first; of openings that rest since only their return."""
    query = _ROWS.where(*OPEN)
    if delivery is not None:
        query = query.where(DELIVERY.c.number == delivery)
    return [OpenQuestion(row.id, row.number, _undecided(row)) for row in connection.execute(query)]


def questions_by_opening(
    connection: Connection, ids: Collection[str] | None = None
) -> dict[str, tuple[tuple[int, str], ...]]:
    """Return what is left to be decided of openings that are there: number of the delivery and kind, oldest first.

    Parameters
    ----------
    connection : Connection
        In a transaction.
    ids : collection of str, optional
        Openings; all when left out.
    """
    found: dict[str, tuple[tuple[int, str], ...]] = {}
    for opening_id, number, kind in among(connection, _KINDS, OPEN_QUESTION.c.opening_id, ids):
        found[opening_id] = (*found.get(opening_id, ()), (number, kind))
    return found


def open_questions(project: Project, delivery: int | None = None) -> list[OpenQuestion]:
    """Return what is left to be decided, of one delivery or of all."""
    with project.reading() as connection:
        return read_questions(connection, delivery)


def _undecided(row: Any) -> Undecided:
    return undecided_of(row.kind, row.mark, row.opening_id, row.content)


def deliveries(project: Project) -> list[Delivery]:
    """Return the deliveries that are in force, oldest first."""
    with project.reading() as connection:
        left: dict[int, int] = {}
        for each in read_questions(connection):
            left[each.delivery] = left.get(each.delivery, 0) + 1
        zone = read_zone(connection)
        found = []
        for row in connection.execute(select(DELIVERY).order_by(DELIVERY.c.number)):
            changes = changes_of(connection, row.id, str(DELIVERY.name))
            made = [each.change_set for each in changes if each.action == "insert" and each.kind == "edit"]
            steps = [each.change_set for each in changes if each.action == "update" and each.kind == "edit"]
            decided = [step for step in steps if (held := standing(connection, step)) is not None and held.in_force]
            found.append(
                Delivery(
                    row.number, row.file, told_in(zone, row.at), row.person, made[-1] if made else 0, tuple(decided),
                    left.get(row.number, 0), row.told.get("counts", {}), row.told.get("columns", {}), row.id,
                )
            )  # fmt: skip
    return found


def delivery_numbered(project: Project, number: int) -> Delivery:
    """Return a delivery; raises MissingRowError."""
    found = deliveries(project)
    for each in found:
        if each.number == number:
            return each
    there = f"there are {len(found)}" if found else "there is none yet"
    raise MissingRowError(f"no delivery has the number {number}; {there}")


def lines_of_delivery(project: Project, delivery: Delivery) -> list[str]:
    """Return what a delivery did row by row, in words: what it was decided to do later with it."""
    lines: list[str] = []
    with project.reading() as connection:
        for step in (delivery.step, *delivery.decided):
            entries = entries_of(connection, step)
            words = FactWords(connection)
            names = names_of(connection, {Thing(each.entity, each.row_id) for each in entries})
            for each in entries:
                if each.entity in _OF_THE_BUILDING:
                    name = names.get(Thing(each.entity, each.row_id)) or _mark(each.before, each.after)
                    lines.append(f"{_said_name(each.entity, name)}: {phrase(_DONE[each.action])}{_told(each, words)}")
    return lines


_OF_THE_BUILDING: Final = ("opening", "leaf", "existing_item")
_DONE: Final = {"insert": to_phrase("new"), "update": to_phrase("changed"), "delete": to_phrase("removed")}


def _said_name(entity: str, name: str) -> str:
    word = OF_OPENINGS.get(entity, "")
    return f"{name.removesuffix(word)}{phrase(word)}" if word and name.endswith(word) else name


def _mark(*rows: Mapping[str, Any] | None) -> str:
    return next((str(row["mark"]) for row in rows if row and row.get("mark")), phrase("an opening that is gone"))


def _told(each: Entry, words: FactWords) -> str:
    """Say what changed of a row, and where it stands in the file."""
    file, joint, row = (each.origin or "").rpartition(", row ")
    place = f" ({phrase('{place}, row {row}', place=file, row=row) if joint else each.origin})" if each.origin else ""
    if each.action != "update":
        return place
    before, after = each.before or {}, each.after or {}
    facts = []
    for name, value in after.items():
        declared = words.attribute(each.entity, (name,))
        label = (
            phrase(declared.label)
            if declared is not None
            else phrase(name.removesuffix("_id").replace("_", " ").capitalize())
        )
        was, now = (words.value(each.entity, (name,), held) for held in (before.get(name), value))
        facts.append(f"{label} {was} -> {now}")
    return f": {', '.join(facts)}{place}"


def take_back(project: Project, number: int, *, who: str) -> Changes:
    """Take a delivery back whole, with what was decided on its questions: one step, that is done again as one.

    Raises
    ------
    MissingRowError
        Where there is no such delivery.
    NotUndoableError
        Where a later step depends on it, which is named; nothing is changed then.
    """
    found = delivery_numbered(project, number)
    try:
        return undo_one(project, found.step, *found.decided, who=who)
    except NotUndoableError as error:
        raise NotUndoableError(
            f"delivery {number} ({found.file}) cannot be taken back: {error}", error.dependents
        ) from error


def summary_of(preview: Preview) -> str:
    """Say in words how much a preview changes, for the name of a step."""
    words = [f"{len(preview.new)} new", f"{len(preview.changed)} changed"]
    words += [f"{len(preview.retired)} retired"] if preview.retired else []
    words += [f"{len(preview.restored)} brought back"] if preview.restored else []
    count = len(preview.left)
    words += [f"{count} question{'s' if count > 1 else ''} left"] if count else []
    return ", ".join(words)


def keep_delivery(
    change: Change, file: str, key: str, preview: Preview, read: SurveyRead, marks: Mapping[str, str]
) -> None:
    """Keep a delivery with what it leaves to be decided; one that changes and asks nothing new leaves no trace.

    Parameters
    ----------
    change : Change
        In which it was taken in.
    file, key : str
        Name and hash of the content.
    preview : Preview
        What it changed and left.
    read : SurveyRead
        What the file says.
    marks : mapping of str to str
        Identifiers of the openings before it, by their marks.
    """
    named = {opening.mark for opening in read.openings} | set(read.rejected)
    spoken = {row_id for mark, row_id in marks.items() if mark in named}
    spoken |= {each.opening_id for each in preview.changed} | {marks[known] for _, known in preview.same}
    new, rows = _compared(change.connection, preview, named, spoken)
    if change.number is None and not new and not rows:
        return
    last = change.connection.execute(select(func.max(DELIVERY.c.number))).scalar() or 0
    counts = {name: len(getattr(preview, name)) for name in ("new", "changed", "unchanged", "retired", "restored")}
    told = {"counts": counts, "columns": _columns(read)}
    at = datetime.now(UTC).isoformat(timespec="seconds")
    made = {"number": last + 1, "file": file, "key": key, "at": at, "person": change.who, "told": told}
    delivery_id = change.insert(DELIVERY, [made])[0]
    replace_questions(change, delivery_id, new, rows)


def replace_questions(
    change: Change,
    delivery_id: str,
    new: Sequence[tuple[Undecided, str | None]],
    rows: Mapping[str, str | None],
) -> None:
    """Put questions into the place of others.

    Parameters
    ----------
    change : Change
        In which it is written.
    delivery_id : str
        Whose they are.
    new : sequence of (Undecided, str or None)
        With the answer, None while open.
    rows : mapping of str to str or None
        Answers by the row that holds the question already; None: it goes.
    """
    change.delete(OPEN_QUESTION, [row_id for row_id, answer in rows.items() if answer is None])
    change.update(OPEN_QUESTION, [(row_id, {"answer": answer}) for row_id, answer in rows.items() if answer])
    change.insert(
        OPEN_QUESTION,
        [
            {
                "delivery_id": delivery_id, "opening_id": each.opening_id, "kind": each.kind, "mark": each.mark,
                "fact": each.about or None, "answer": answer, "content": content_of(each),
            }
            for each, answer in new
        ],
        [each.fact.origin if each.fact is not None else None for each, _ in new],
    )  # fmt: skip


def _compared(
    connection: Connection, preview: Preview, named: Collection[str], spoken: Collection[str]
) -> tuple[list[tuple[Undecided, str | None]], dict[str, str | None]]:
    """Return the questions that are new, and what becomes of those that are kept: another answer, or they go."""
    wanted: dict[Settled, tuple[Undecided, str | None]] = {settled_key(each): (each, None) for each in preview.left}
    wanted |= {settled_key(each): (each, answer) for each, answer in preview.settled}
    rows: dict[str, str | None] = {}
    for row in connection.execute(_ROWS):
        each = _undecided(row)
        key = settled_key(each)
        if key in wanted:
            _, answer = wanted.pop(key)
            if answer is not None and answer != row.answer:
                rows[row.id] = answer
        elif each.opening_id in spoken or each.mark in named:
            rows[row.id] = None
    return list(wanted.values()), rows


def _columns(read: SurveyRead) -> dict[str, dict[str, str]]:
    """Return by sheet which column told which fact."""
    found: dict[str, dict[str, str]] = {}
    for mapping in read.mapping:
        letters = found.setdefault(mapping.sheet, {})
        for column in mapping.columns:
            fact, letter = column.target.text(), column_letter(column.index)
            letters[fact] = f"{letters[fact]}+{letter}" if fact in letters else letter
    return found
