"""Working out the lock points of an opening one after the other: each meets what the earlier ones put there.

Here belongs which fit counts for a point, and finding the point that a person names.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from hwsched.cases import Case, Fit, LockPoint, PointFit
from hwsched.cases.case_key import case_key
from hwsched.cases.lock_points import with_beside
from hwsched.model.errors import MissingRowError, ValueRefusedError
from hwsched.model.project import Project
from hwsched.model.queries import StoredFit, points_of_opening


@dataclass(frozen=True, slots=True)
class Worked:
    """A lock point with the fit that counts, and the key of its case."""

    at: PointFit
    key: str
    stored: bool
    """False where its fit was worked out on the spot, or where it has none."""


def worked(
    cases: Sequence[Case], stored: Mapping[str, StoredFit], make: Callable[[Case], Fit] | None = None
) -> tuple[Worked, ...]:
    """Return the lock points of an opening with the fits that count.

    Parameters
    ----------
    cases : sequence of Case
        Of the opening's points, in their order.
    stored : mapping
        Stored fits by lock point; one counts where it belongs to the facts as they stand.
    make : callable, optional
        Works out what is not stored; without it such a point has no fit.
    """
    done: list[Worked] = []
    for case in cases:
        here = with_beside(case, [each.at for each in done])
        key, held = case_key(here), stored.get(here.point.id)
        if held is not None and held.case_key == key:
            done.append(Worked(PointFit(here, held.fit), key, True))
        else:
            done.append(Worked(PointFit(here, make(here) if make is not None else None), key, False))
    return tuple(done)


def afresh(cases: Sequence[Case], make: Callable[[Case], Fit]) -> tuple[PointFit, ...]:
    """Work out the lock points of an opening, whatever is stored for them."""
    return tuple(each.at for each in worked(cases, {}, make))


def point_named(project: Project, opening_id: str, name: str | None) -> str | None:
    """Return the lock point of an opening that a person names, by its name or number; None for none named.

    Raises
    ------
    MissingRowError
        Where the opening is gone.
    ValueRefusedError
        For a point that it does not have; says which it has.
    """
    if name is None:
        return None
    with project.reading() as connection:
        found = points_of_opening(connection, opening_id)
    if not found:
        raise MissingRowError("this opening is not in the project any more")
    wanted = " ".join(name.split()).casefold()
    for point in found:
        if wanted in (point.name.casefold(), str(point.number)) and wanted:
            return point.id
    raise ValueRefusedError("lock point", f"there is no '{name}'; accepted: {', '.join(map(said_point, found))}")


def said_point(point: LockPoint) -> str:
    """Return how a person names a lock point."""
    return f"{point.name} ({point.number})" if point.name else str(point.number)
