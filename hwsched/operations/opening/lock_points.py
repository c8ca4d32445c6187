"""Working out the lock points of an opening one after the other: each meets what the earlier ones put there.

Here belongs which fit counts for a point, and finding the point that a person names.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from hwsched.fitting import fit
from hwsched.model.errors import MissingRowError, ValueRefusedError
from hwsched.model.project import Project
from hwsched.model.queries import StoredFit, points_of_opening
from hwsched.operations.opening.standings import Standings
from hwsched.values import Fit, LockPoint, OpeningInput, PointFit
from hwsched.values.input_key import input_key
from hwsched.values.lock_points import with_beside
from hwsched.values.standing import Standing

Make = Callable[[OpeningInput, str], Fit]
"""Works out the fit of a case, which has that `input_key`."""


@dataclass(frozen=True, slots=True)
class PointResult:
    """A lock point with the fit that counts, and the key of its input."""

    at: PointFit
    key: str
    stored: bool
    """False where its fit was worked out on the spot, or where it has none."""
    standing: Standing
    """Of what is stored for it."""
    held: StoredFit | None
    """What is stored for it, whether it counts or not."""


def point_results(
    inputs: Sequence[OpeningInput],
    stored: Mapping[str, StoredFit],
    make: Make | None = None,
    standings: Standings | None = None,
    *,
    earlier: bool = True,
) -> tuple[PointResult, ...]:
    """Return the lock points of an opening with the fits that count.

    Parameters
    ----------
    inputs : sequence of OpeningInput
        Of the opening's points, in their order.
    stored : mapping
        Stored fits by lock point; one counts where it is this program's and belongs to the facts as they stand.
    make : callable, optional
        Works out what does not count; without it such a point has no fit.
    standings : Standings, optional
        Tells what counts; to be shared by many openings.
    earlier : bool
        Whether what an earlier version has worked out is worked out too.
    """
    tell = standings or Standings()
    done: list[PointResult] = []
    was: list[PointFit] = []
    before: Standing = "current"
    """How the earlier points stand: what stands on one that does not count does not count either."""
    for given in inputs:
        held = stored.get(given.point.id)
        here = with_beside(given, [each.at for each in done])
        key = input_key(here)
        standing = tell.of(here, key, held)
        if before != "current" and standing != "current":
            # Whether its own facts have changed is told beside what it was worked out beside.
            as_it_was = with_beside(given, was)
            standing = tell.of(as_it_was, input_key(as_it_was), held)
            standing = before if standing == "current" else standing
        was.append(PointFit(given, held.fit if held is not None else None))
        counts = standing == "current" and (make is not None or before == "current")
        if counts and held is not None:
            done.append(PointResult(PointFit(here, held.fit), key, True, standing, held))
            continue
        if standing == "current":
            standing = before
        fresh = make(here, key) if make is not None and (earlier or standing != "earlier-version") else None
        done.append(PointResult(PointFit(here, fresh), key, False, standing, held))
        before = standing
    return tuple(done)


def standing_of(points: Sequence[PointResult]) -> Standing:
    """Tell how an opening stands by its lock points: changed facts are told before what an earlier version left."""
    found = {each.standing for each in points}
    order: tuple[Standing, ...] = ("facts-changed", "not-worked-out", "earlier-version")
    return next((each for each in order if each in found), "current")


def afresh(inputs: Sequence[OpeningInput], make: Make) -> tuple[PointFit, ...]:
    """Work out the lock points of an opening, whatever is stored for them."""
    return tuple(each.at for each in point_results(inputs, {}, make))


def outright(given: OpeningInput, _key: str) -> Fit:
    """Work out a fit, whatever is known of openings alike."""
    return fit(given)


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
