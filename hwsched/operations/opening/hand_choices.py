"""Choices by hand: parts for roles, and the control unit's place. Every fit keeps them, and rules check them.

They are made for a lock point; without a word for the first one of the opening.
"""

from collections.abc import Mapping, Sequence
from math import isfinite
from typing import Final, get_args

from sqlalchemy import select

from hwsched.model.errors import MissingRowError, ValueRefusedError
from hwsched.model.journal.journal import Change
from hwsched.model.lock_points import points_to_openings
from hwsched.model.project import Project
from hwsched.model.queries import points_of_opening
from hwsched.model.tables import CHOSEN_PART, PART, PLACED_UNIT
from hwsched.operations.changes import Changes
from hwsched.operations.survey.accepted_values import mark_of
from hwsched.telling.nearest import nearest_words
from hwsched.values import Chosen, LockPoint
from hwsched.values.fit import Role

ROLES: Final = get_args(Role)
"""Of a fitted part."""
_FACES: Final = ("inside", "key", "edge", "wall")


def choose_part(
    project: Project,
    opening_id: str,
    role: str,
    part: str,
    *,
    who: str,
    quantity: float = 1.0,
    point: str | None = None,
    base: int | None = None,
) -> Changes:
    """Choose a part by hand for a role at a lock point, in place of an earlier choice.

    Parameters
    ----------
    project : Project
        Open project.
    opening_id : str
        For which opening.
    role : str
        One of the roles of a fitted part.
    part : str
        A number of the catalogue.
    who : str
        For the journal.
    quantity : float
        More than none.
    point : str, optional
        Lock point of the opening; its first one when left out.
    base : int, optional
        The newest change set that was seen; another choice that others made since is a conflict.

    Raises
    ------
    ValueRefusedError, MissingRowError, ConflictError
        And nothing is changed.
    """
    _check_role(role)
    if not isfinite(quantity) or quantity <= 0:
        raise ValueRefusedError("quantity", f"{quantity:g} cannot be; accepted: more than 0")
    row = {"opening_id": opening_id, "role": role, "part": part, "quantity": quantity}
    with project.change("choose-part", f"Choose {part} as {role}", who, base=base) as change:
        at = _point(change, opening_id, point)
        row["lock_point_id"] = at.id
        change.summary = f"Choose {part} as {role} of {_said(change, opening_id, at)}"
        known = set(change.connection.execute(select(PART.c.number)).scalars())
        if part not in known:
            raise ValueRefusedError("part", f"the catalogue has no part '{part}'{nearest_words(part, known)}")
        held = _chosen(change, at.id, role)
        if len(held) == 1:
            change.update(CHOSEN_PART, [(held[0], row)])
        else:
            change.delete(CHOSEN_PART, held)
            change.insert(CHOSEN_PART, [row])
    return Changes.of(change)


def write_choices(change: Change, choices: Mapping[str, Sequence[Chosen]]) -> None:
    """Choose parts for roles at many lock points, in place of earlier choices of those roles.

    Raises ValueRefusedError for a part that the catalogue does not have, MissingRowError for a point that is gone.
    """
    known = set(change.connection.execute(select(PART.c.number)).scalars())
    opening_of = points_to_openings(change.connection, list(choices))
    held: dict[tuple[str, str], list[str]] = {}
    query = select(CHOSEN_PART.c.id, CHOSEN_PART.c.lock_point_id, CHOSEN_PART.c.role)
    for row in change.connection.execute(query):
        held.setdefault((row.lock_point_id, row.role), []).append(row.id)
    gone: list[str] = []
    rows = []
    for point, wanted in choices.items():
        for role in dict.fromkeys(choice.role for choice in wanted):
            gone += held.get((point, role), [])
        for choice in wanted:
            if choice.part not in known:
                near = nearest_words(choice.part, known)
                raise ValueRefusedError("part", f"the catalogue has no part '{choice.part}'{near}")
            chosen = {"role": choice.role, "part": choice.part, "quantity": choice.quantity}
            rows.append({"opening_id": opening_of[point], "lock_point_id": point, **chosen})
    change.delete(CHOSEN_PART, gone)
    change.insert(CHOSEN_PART, rows)


def release_part(
    project: Project, opening_id: str, role: str, *, who: str, point: str | None = None, base: int | None = None
) -> Changes:
    """Leave a role at a lock point to the fit again; raises ValueRefusedError, MissingRowError."""
    with project.change("release-part", f"Release {role}", who, base=base) as change:
        at = _point(change, opening_id, point)
        change.summary = f"Leave the {role} of {_said(change, opening_id, at)} to the fit"
        found = _chosen(change, at.id, role)
        if not found:
            # A choice that an earlier version stored may have a role that is none any more.
            _check_role(role)
        change.delete(CHOSEN_PART, found)
    return Changes.of(change)


def place_unit(
    project: Project,
    opening_id: str,
    *,
    leaf: str,
    face: str,
    pattern: str,
    x_mm: float,
    y_mm: float,
    who: str,
    point: str | None = None,
    base: int | None = None,
) -> Changes:
    """Place the control unit of a lock point by hand.

    Parameters
    ----------
    project : Project
        Open project.
    opening_id : str
        For which opening.
    leaf, face, pattern : str
        On which leaf and face (inside, key, edge, wall), and in which relation to the cylinder.
    x_mm, y_mm : float
        Lower left corner of its plate, from the lock edge and above the floor [mm].
    who : str
        For the journal.
    point : str, optional
        Lock point of the opening; its first one when left out.
    base : int, optional
        The newest change set that was seen; another place that others gave it since is a conflict.

    Raises
    ------
    ValueRefusedError, MissingRowError, ConflictError
        And nothing is changed.
    """
    if face not in _FACES:
        raise ValueRefusedError("face", f"'{face}' is no face; accepted: {', '.join(_FACES)}")
    for name, value in (("x_mm", x_mm), ("y_mm", y_mm)):
        if not isfinite(value):
            raise ValueRefusedError(name, f"{value} is no length")
    row = {"leaf": leaf, "face": face, "pattern": pattern, "x_mm": float(x_mm), "y_mm": float(y_mm)}
    with project.change("place-unit", "Place the unit", who, base=base) as change:
        at = _point(change, opening_id, point)
        change.summary = f"Place the unit of {_said(change, opening_id, at)}"
        held = _placed(change, at.id)
        if held:
            change.update(PLACED_UNIT, [(held[0], row)])
        else:
            change.insert(PLACED_UNIT, [{"opening_id": opening_id, "lock_point_id": at.id, **row}])
    return Changes.of(change)


def release_unit(
    project: Project, opening_id: str, *, who: str, point: str | None = None, base: int | None = None
) -> Changes:
    """Leave the place of a lock point's unit to the fit again; raises MissingRowError."""
    with project.change("release-unit", "Release the unit's place", who, base=base) as change:
        at = _point(change, opening_id, point)
        change.summary = f"Leave the unit's place of {_said(change, opening_id, at)} to the fit"
        change.delete(PLACED_UNIT, _placed(change, at.id))
    return Changes.of(change)


def _check_role(role: str) -> None:
    if role not in ROLES:
        raise ValueRefusedError("role", f"'{role}' is no role; accepted: {', '.join(ROLES)}")


def _point(change: Change, opening_id: str, point: str | None) -> LockPoint:
    """Return the lock point of an opening that is meant; raises MissingRowError."""
    mark_of(change, opening_id)
    for each in points_of_opening(change.connection, opening_id):
        if point in (None, each.id):
            return each
    raise MissingRowError("this place of the opening is not locked any more")


def _said(change: Change, opening_id: str, point: LockPoint) -> str:
    mark = mark_of(change, opening_id)
    return f"{mark}, {point.name}" if point.name else mark


def _chosen(change: Change, point: str, role: str) -> list[str]:
    query = select(CHOSEN_PART.c.id).where(CHOSEN_PART.c.lock_point_id == point, CHOSEN_PART.c.role == role)
    return list(change.connection.execute(query).scalars())


def _placed(change: Change, point: str) -> list[str]:
    query = select(PLACED_UNIT.c.id).where(PLACED_UNIT.c.lock_point_id == point)
    return list(change.connection.execute(query).scalars())
