"""Which sheet is the current one: the short code that every packet carries, and what stands behind a code.

A code follows from what the packet of an opening shows, so that a sheet is current as long as nothing of that changes,
whenever it was printed.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final, Literal

from sqlalchemy import select

from hwsched.documents.view import OpeningView
from hwsched.model.errors import ValueRefusedError
from hwsched.model.project import Project
from hwsched.model.tables import ISSUED_PACKET
from hwsched.operations.release.packet_key import packet_key
from hwsched.operations.release.project_view import project_view
from hwsched.operations.release.revision_differences import OpeningDifference, differences
from hwsched.operations.release.revisions import read_revision, revisions
from hwsched.values import PointFit

_LETTERS: Final = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"
"""Digits and capitals without those that a hand takes for another: no I, L, O, U (Crockford's base 32)."""
_TAKEN_FOR: Final = str.maketrans({"I": "1", "L": "1", "O": "0"})
LENGTH: Final = 8
"""Letters of a code: among ten thousand openings two share one about once in twenty thousand projects."""

State = Literal["current", "withdrawn", "superseded", "unknown"]


@dataclass(frozen=True, slots=True)
class SheetState:
    """What stands behind a code."""

    code: str
    state: State
    mark: str = ""
    said: str = ""
    """Why, as people read it."""
    current: str = ""
    """Code of the sheet that counts; empty where none does."""
    changed: tuple[str, ...] = ()
    """What is otherwise at this opening since, where the state of then is kept."""


def sheet_code(points: Sequence[PointFit]) -> str:
    """Return the code of what the packet of an opening shows; empty where nothing is worked out."""
    key = packet_key(points)
    return _short(key) if key else ""


def _short(key: str) -> str:
    number = int(key[:16], 16)
    found = ""
    for _ in range(LENGTH):
        number, at = divmod(number, len(_LETTERS))
        found += _LETTERS[at]
    return found


def as_code(typed: str) -> str:
    """Return a code as it is kept from how a person types it; raises ValueRefusedError.

    Examples
    --------
    >>> as_code("k7m2-qf4p"), as_code("KLO2QF4P")
    ('K7M2QF4P', 'K102QF4P')
    """
    found = "".join(typed.upper().replace("-", "").split()).translate(_TAKEN_FOR)
    if len(found) != LENGTH or any(letter not in _LETTERS for letter in found):
        raise ValueRefusedError("code", f"'{typed}' is no code of a sheet: it has {LENGTH} letters and digits")
    return found


def verify_sheet(project: Project, typed: str) -> tuple[SheetState, ...]:
    """Say of every opening whose sheet carries a code whether that sheet counts.

    Parameters
    ----------
    project : Project
        Open project.
    typed : str
        The code as a person reads it off a sheet; case, spaces and hyphens do not matter.

    Returns
    -------
    tuple of SheetState
        Most often one; "unknown" where no sheet of the project as it stands, of its revisions or given out last has it.

    Raises
    ------
    ValueRefusedError
        For what is no code.
    """
    code = as_code(typed)
    view = project_view(project)
    here = {each.given.opening.id: each for each in view.openings}
    found = [_present(code, each) for each in view.openings if sheet_code(each.points) == code]
    return tuple(found or _earlier(project, code, here) or [SheetState(code, "unknown", said=_NOWHERE)])


_NOWHERE: Final = "No sheet of this project carries it: neither as it stands, nor in a revision, nor given out last."


def _present(code: str, view: OpeningView) -> SheetState:
    if view.ready:
        return SheetState(code, "current", view.mark, "It shows what is to be done.", code)
    why = "; ".join(finding.message for finding in view.blocking) or "it does not fit"
    return SheetState(code, "withdrawn", view.mark, f"Nothing may be installed: {why}")


def _earlier(project: Project, code: str, here: dict[str, OpeningView]) -> list[SheetState]:
    """Look for a code in the revisions, the newest first, and among the packets that went out last."""
    for revision in reversed(revisions(project)):
        for then in read_revision(project, revision.letter).openings:
            if sheet_code(then.points) == code:
                return [_superseded(project, code, then.given.opening.id, then.mark, revision.letter, here)]
    with project.reading() as connection:
        issued = list(connection.execute(select(ISSUED_PACKET)))
    return [
        _replaced(code, here.get(row.opening_id), f"It was given out on {row.at} by {row.by}.")
        for row in issued
        if _short(row.shown_key) == code
    ]


def _superseded(
    project: Project, code: str, opening_id: str, mark: str, letter: str, here: dict[str, OpeningView]
) -> SheetState:
    view = here.get(opening_id)
    said = f"It is of revision {letter}."
    if view is None:
        return SheetState(code, "withdrawn", mark, f"{said} The opening is gone.")
    found = next((each for each in differences(project, letter).openings if each.opening_id == opening_id), None)
    return _replaced(code, view, said, _lines(found) if found is not None else ())


def _replaced(code: str, view: OpeningView | None, said: str, changed: tuple[str, ...] = ()) -> SheetState:
    if view is None:
        return SheetState(code, "withdrawn", said=f"{said} The opening is gone.")
    if not view.ready:
        return SheetState(code, "withdrawn", view.mark, f"{said} Nothing may be installed now.", changed=changed)
    current = sheet_code(view.points)
    return SheetState(code, "superseded", view.mark, f"{said} The current sheet is {current}.", current, changed)


def _lines(found: OpeningDifference) -> tuple[str, ...]:
    told = (*found.facts, *found.parts, *found.place, *found.holes)
    return tuple(f"{each.what}: {each.before or 'none'} -> {each.after or 'none'}" for each in told)
