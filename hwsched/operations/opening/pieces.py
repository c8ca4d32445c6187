"""Pieces of openings: what of a fit can be taken in the hand, and what is known of each besides.

A piece follows from the fit and costs nothing until something is known of it: then it has a row of its own, which stays
when a later fit has the piece no longer.
"""

from collections.abc import Collection, Sequence
from dataclasses import replace
from typing import Any

from sqlalchemy import Connection, select

from hwsched.model.bulk import among
from hwsched.model.errors import MissingRowError, ValueRefusedError
from hwsched.model.journal.journal import Change
from hwsched.model.project import Project
from hwsched.model.tables import ASSIGNED_PART, OPENING_TABLE
from hwsched.operations.changes import Changes
from hwsched.operations.findings.checked import Checked
from hwsched.operations.findings.checking import Checker, look_again
from hwsched.operations.survey.accepted_values import mark_of
from hwsched.values import PointFit
from hwsched.values.piece import AT_BENCH, BENCH, ISSUED, PLANNED, Piece, PieceThen, pieces_of, state_text, with_state


def pieces(project: Project, opening_id: str) -> tuple[Piece, ...]:
    """List the pieces of an opening: those of its fit, then those on record that the fit has no longer.

    Raises
    ------
    MissingRowError
        When the opening is gone.
    """
    looked = look_again(project, [opening_id], checker=Checker())
    if not looked:
        raise MissingRowError("this opening is not in the project any more")
    return pieces_on_record(project, looked[0])


def pieces_on_record(project: Project, checked: Checked) -> tuple[Piece, ...]:
    """`pieces` for an opening that was looked at already."""
    opening_id = checked.given.opening.id
    with project.reading() as connection:
        rows = _rows(connection, [opening_id])
    return _told(checked.points, rows.get(opening_id, []))


def pieces_by_opening(project: Project, checked: Sequence[Checked]) -> dict[str, tuple[Piece, ...]]:
    """Return `pieces` of many openings that were looked at already, by the opening's identifier."""
    with project.reading() as connection:
        rows = _rows(connection, [each.given.opening.id for each in checked])
    return {each.given.opening.id: _told(each.points, rows.get(each.given.opening.id, [])) for each in checked}


def record_piece(
    project: Project,
    opening_id: str,
    piece_id: str,
    *,
    who: str,
    serial: str | None = None,
    lot: str | None = None,
    done: Collection[str] | None = None,
    base: int | None = None,
) -> Changes:
    """Write down serial number, lot or bench work of a piece; what is left out stays, what is empty takes it away.

    Parameters
    ----------
    project : Project
        Open project.
    opening_id, piece_id : str
        Which piece, as `pieces` lists it.
    who : str
        For the journal.
    serial, lot : str, optional
        As they stand on the piece or on its box.
    done : collection of {"built", "programmed", "tested"}, optional
        All that was done to it at the bench.
    base : int, optional
        The newest change set that was seen; what others wrote down of the piece since is a conflict.

    Raises
    ------
    MissingRowError, ConflictError
        When the opening has no such piece; when others wrote something else.
    ValueRefusedError
        For a serial number that another piece of the same part has; for work that is not done to such a piece.
    """
    piece = next((each for each in pieces(project, opening_id) if each.id == piece_id), None)
    if piece is None:
        raise MissingRowError("the opening has no such piece; list them again")
    with project.change("record-piece", "Record a piece", who, base=base) as change:
        mark = mark_of(change, opening_id)
        held = next(
            (row for row in _rows(change.connection, [opening_id]).get(opening_id, ()) if row.id == piece_id), None
        )
        piece = piece if held is None else _with(piece, held)
        said = piece.serial if serial is None else " ".join(serial.split())
        of_lot = piece.lot if lot is None else " ".join(lot.split())
        work = piece.done if done is None else _bench_work(piece, done)
        change.summary = f"Record {piece.part}, {piece.role} of {mark}"
        if said:
            _check_serial(change, piece, said)
        _write(change, [(opening_id, replace(piece, serial=said, lot=of_lot, done=work))])
    return Changes.of(change)


def recorded_pieces(connection: Connection, ids: Collection[str] | None = None) -> dict[str, tuple[PieceThen, ...]]:
    """Return what the bench put on record, by the opening's identifier; those of which nothing is are left out.

    That a packet went out writes a row of each piece: those alone would be the fit a second time. Beside one of which
    something is said they count: what was done to one of two was not done to both.

    Parameters
    ----------
    connection : Connection
        In a transaction.
    ids : collection of str, optional
        Openings; all when left out.
    """
    found: dict[str, tuple[PieceThen, ...]] = {}
    for opening_id, rows in _rows(connection, ids).items():
        by_place: dict[tuple[str, str], list[PieceThen]] = {}
        for row in rows:
            words = row.state.split(", ")
            done = tuple(word for word in BENCH if word in words)
            piece = PieceThen(
                row.lock_point_id or "", row.role, row.part, row.piece, done, row.serial or "", row.lot or ""
            )
            by_place.setdefault((piece.point_id, piece.role), []).append(piece)
        told = [each for alike in by_place.values() if any(map(_is_told, alike)) for each in alike]
        if told:
            found[opening_id] = tuple(sorted(told, key=lambda each: (each.point_id, each.role, each.part, each.number)))
    return found


def _is_told(piece: PieceThen) -> bool:
    return bool(piece.done or piece.serial or piece.lot)


def _bench_work(piece: Piece, done: Collection[str]) -> tuple[str, ...]:
    possible = AT_BENCH.get(piece.role, ())
    wrong = [word for word in done if word not in possible]
    if wrong:
        accepted = ", ".join(possible) or "nothing"
        raise ValueRefusedError(
            "bench work", f"'{wrong[0]}' is not done to the {piece.role} at the bench; accepted: {accepted}"
        )
    return tuple(word for word in BENCH if word in done)


def write_issued(change: Change, openings: Collection[tuple[str, Sequence[PointFit]]]) -> None:
    """Write down that the pieces of openings went out, as their fits have them."""
    rows = _rows(change.connection, [opening_id for opening_id, _ in openings])
    out: list[tuple[str, Piece]] = []
    for opening_id, points in openings:
        planned = {each.id: each for at in points if at.fit is not None for each in pieces_of(at.given.point, at.fit)}
        out += [
            (opening_id, replace(each, state=ISSUED, quantity=planned[each.id].quantity))
            for each in _told(points, rows.get(opening_id, []))
            if each.in_fit
        ]
    _write(change, out)


def piece_named(found: Sequence[Piece], name: str, point: str | None = None) -> Piece:
    """Return the piece that a person names: ``ROLE``, ``ROLE#2``, ``ROLE/PART`` or ``ROLE/PART#2``.

    Parameters
    ----------
    found : sequence of Piece
        As `pieces` lists them.
    name : str
        Role, part where the role has several, number where there are several alike.
    point : str, optional
        Identifier of the lock point; the first one that has such a piece when left out.

    Raises
    ------
    ValueRefusedError
        When there is none, or when it is not told which of several; says what there is.
    """
    role_part, _, number = name.partition("#")
    role, _, part = role_part.partition("/")
    fitting = [
        each
        for each in found
        if each.role == role.strip()
        and part.strip() in ("", each.part)
        and number.strip() in ("", str(each.number))
        and point in (None, each.point_id)
    ]
    here = [each for each in fitting if each.point_id == fitting[0].point_id]
    if len(here) == 1:
        return here[0]
    offered = ", ".join(f"{each.role}/{each.part}#{each.number}" for each in (here or found))
    raise ValueRefusedError("piece", f"'{name}' is {'more than one' if here else 'none'} of {offered or 'no piece'}")


def _rows(connection: Connection, ids: Collection[str] | None) -> dict[str, list[Any]]:
    found: dict[str, list[Any]] = {}
    query = select(ASSIGNED_PART).order_by(ASSIGNED_PART.c.role, ASSIGNED_PART.c.part, ASSIGNED_PART.c.piece)
    for row in among(connection, query, ASSIGNED_PART.c.opening_id, ids):
        found.setdefault(row.opening_id, []).append(row)
    return found


def _told(points: Sequence[PointFit], rows: Sequence[Any]) -> tuple[Piece, ...]:
    """Lay what is on record over the pieces of an opening's fits."""
    known = {row.id: row for row in rows}
    found = []
    for at in points:
        for piece in pieces_of(at.given.point, at.fit) if at.fit is not None else ():
            row = known.pop(piece.id, None)
            found.append(piece if row is None else _with(piece, row))
    names = {at.given.point.id: at.given.point.name for at in points}
    for row in known.values():
        name = names.get(row.lock_point_id, "")
        gone = Piece(row.id, row.lock_point_id, name, row.role, row.part, row.piece, row.quantity, row.source)
        found.append(_with(replace(gone, in_fit=False), row))
    return tuple(found)


def _with(piece: Piece, row: Any) -> Piece:
    """Return a piece with what is on record; what went out went out in the quantity of that time."""
    piece = with_state(piece, row.state)
    return replace(
        piece,
        # What went out went out: a later fit that wants more does not change what lies in the box.
        quantity=row.quantity if piece.state == ISSUED else piece.quantity,
        serial=row.serial or "",
        lot=row.lot or "",
        version=row.version,
    )


def _write(change: Change, wanted: Sequence[tuple[str, Piece]]) -> None:
    """Keep a row of every piece of which anything is known, and of no other; each with its opening."""
    query = select(ASSIGNED_PART.c.id)
    ids = [each.id for _, each in wanted]
    held = {row[0] for row in among(change.connection, query, ASSIGNED_PART.c.id, ids)}
    kept: dict[str, dict[str, Any]] = {}
    gone = []
    for opening_id, each in wanted:
        # A row for every planned piece would be the fit a second time, and go out of date with it.
        if not each.serial and not each.lot and not each.done and each.state == PLANNED:
            gone.append(each.id)
            continue
        kept[each.id] = {
            "opening_id": opening_id,
            "lock_point_id": each.point_id,
            "role": each.role,
            "part": each.part,
            "piece": each.number,
            "quantity": each.quantity,
            "source": each.source,
            "serial": each.serial or None,
            "lot": each.lot or None,
            "state": state_text(each),
        }
    change.delete(ASSIGNED_PART, gone)
    change.update(ASSIGNED_PART, [(row_id, row) for row_id, row in kept.items() if row_id in held])
    change.insert(ASSIGNED_PART, [{"id": row_id, **row} for row_id, row in kept.items() if row_id not in held])


def _check_serial(change: Change, piece: Piece, serial: str) -> None:
    query = (
        select(OPENING_TABLE.c.mark, ASSIGNED_PART.c.role)
        .join(OPENING_TABLE, ASSIGNED_PART.c.opening_id == OPENING_TABLE.c.id)
        # Of the same part only: two makes may well use the same number.
        .where(ASSIGNED_PART.c.part == piece.part, ASSIGNED_PART.c.serial == serial, ASSIGNED_PART.c.id != piece.id)
    )
    other = change.connection.execute(query).first()
    if other is not None:
        message = f"{serial} is the serial number of the {other.role} {piece.part} of {other.mark} already"
        raise ValueRefusedError("serial number", message)
