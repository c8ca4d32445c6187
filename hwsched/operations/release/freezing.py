"""Freezing the state of a project under a letter."""

from dataclasses import dataclass
from datetime import UTC, date, datetime

from hwsched.attributes import Attribute
from hwsched.model.errors import ValueRefusedError
from hwsched.model.frozen import RevisionInfo, hold_frozen, read_revisions
from hwsched.model.project import Project
from hwsched.model.queries import latest_change
from hwsched.model.tables import REVISION
from hwsched.operations.changes import Changes
from hwsched.operations.findings.checking import Cancelled, Checker, Progress
from hwsched.operations.release.frozen_state import gather
from hwsched.operations.survey.accepted_values import accepted
from hwsched.values.revision import LETTERS, Scope, is_letter, next_letter, place_of

_PURPOSE = Attribute("purpose", "Purpose")


@dataclass(frozen=True, slots=True)
class FrozenRevision:
    """What a freeze made."""

    changes: Changes
    letter: str
    openings: int
    contents: int
    """How many contents were held anew; what earlier revisions hold already is shared."""


def freeze(
    project: Project,
    *,
    who: str,
    letter: str | None = None,
    purpose: str = "",
    scope: Scope | None = None,
    today: date | None = None,
    checker: Checker | None = None,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> FrozenRevision:
    """Freeze the state of a project, or of a part of it, under a letter.

    Facts, choices, stored fits, findings with their waivers, circuits, settings, catalogue, rule texts and the program
    that made them are held whole; undo takes the letter away, and the contents stay.

    Parameters
    ----------
    project : Project
        Open project.
    who : str
        For the journal and the revision.
    letter : str, optional
        A, B and so on without I and O, then AA; the next one when left out.
    purpose : str
        What it is for, such as "for approval".
    scope : Scope, optional
        What of the project; all of it when left out.
    today : date, optional
        Against which waivers end; the day it is when left out.
    checker : Checker, optional
        Remembers earlier judgements.
    progress, cancelled : callable, optional
        Told how far it is; asked whether to stop.

    Returns
    -------
    FrozenRevision
        With the letter that it got.

    Raises
    ------
    ValueRefusedError
        For a letter that is none, is taken, or comes before one that is taken.
    MissingRowError
        For a building, level or mark that there is not, or where no opening is left to freeze.
    StoppedError
        When it was asked to stop.
    """
    wanted, day = scope or Scope(), today or project.today()
    said = accepted(_PURPOSE, purpose)
    with project.reading() as connection:
        before = read_revisions(connection)
    _letter(letter, before)
    gathered = gather(
        project, wanted, day, base=_base(before, wanted), checker=checker, progress=progress, cancelled=cancelled
    )
    with project.change("freeze", "Freeze", who) as change:
        if latest_change(change.connection) != gathered.change_set:
            # Somebody wrote meanwhile. Now nobody can: what is read from here on is one state.
            before = read_revisions(change.connection)
            gathered = gather(project, wanted, day, base=_base(before, wanted), checker=checker, cancelled=cancelled)
        stated = _letter(letter, before)
        contents = hold_frozen(change.connection, gathered.contents)
        row = {
            "letter": stated,
            "at": datetime.now(UTC).isoformat(timespec="seconds"),
            "person": who,
            "purpose": said,
            "scope": wanted.plain(),
            "root": gathered.root,
        }
        change.insert(REVISION, [row])
        change.summary = (
            f"Freeze revision {stated}: {gathered.openings} openings of {wanted.words}"
            if gathered.openings != 1
            else f"Freeze revision {stated}: 1 opening of {wanted.words}"
        )
    return FrozenRevision(Changes.of(change), stated, gathered.openings, contents)


def _base(revisions: list[RevisionInfo], scope: Scope) -> RevisionInfo | None:
    """Return the latest revision of the same scope."""
    return next((each for each in reversed(revisions) if Scope.of(each.scope) == scope), None)


def _letter(asked: str | None, revisions: list[RevisionInfo]) -> str:
    taken = [each.letter for each in revisions]
    if asked is None:
        return next_letter(taken)
    letter = asked.strip().upper()
    if not is_letter(letter):
        raise ValueRefusedError("letter", f"'{asked}' is none; accepted: letters of {LETTERS}, such as A or AB")
    if letter in taken:
        raise ValueRefusedError("letter", f"there is a revision {letter} already; the next is {next_letter(taken)}")
    last = max(taken, key=place_of, default="")
    if place_of(letter) < place_of(last):
        raise ValueRefusedError("letter", f"{letter} comes before {last}, the latest; the next is {next_letter(taken)}")
    return letter
