"""Which supply feeds which opening, and where the supplies go: fewest supplies, then least wire.

Here belong what is asked, what is refused and how the answer is told. The integer program stands in `siting_plan`,
estimated distances in `cable_distance`.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from time import monotonic
from typing import Annotated, Final

import numpy as np

from hwsched.calc.calculator import INLINE, Calculator, InputError, Said, Within, check_arguments, check_number
from hwsched.calc.limits import NotNegative, Positive
from hwsched.calc.power.siting_model import Pairs, Plan, shortage
from hwsched.calc.power.siting_plan import NoPlan, plan
from hwsched.calc.solver import Cancelled, Limits, Progress

_TOUCH: Final = 1e-9
_SHORT_A: Final = 1e-5
_LARGEST: Final = 1e6
_SMALL_PAIRS: Final = 2000
LARGE_GAP: Final = 0.01
DEFAULT_TIME_S: Final = 300.0
_MOST_NAMED: Final = 20
_Amps = Annotated[float, Within(at_least=0, at_most=_LARGEST)]


@dataclass(frozen=True, slots=True)
class CandidateSupply:
    """A place where a supply may stand."""

    id: Annotated[str, Said("What it is called in the answer.")]
    amps: Annotated[_Amps, Said("Current that it can give to openings [A].")]


@dataclass(frozen=True, slots=True)
class Demand:
    """An opening that needs a supply."""

    id: Annotated[str, Said("What it is called in the answer.")]
    amps: Annotated[_Amps, Said("Current that it draws [A].")]
    maximum_m: Annotated[
        NotNegative | None, Said("Longest run at which its voltage suffices [m].", shown="only the common limit")
    ] = None


@dataclass(frozen=True, slots=True)
class Problem:
    """Places, openings and the lengths of the cable routes between them."""

    supplies: Annotated[tuple[CandidateSupply, ...], Said("Places where a supply may stand.")]
    openings: Annotated[tuple[Demand, ...], Said("Openings that need one; each is fed whole by one supply.")]
    distances_m: Annotated[
        Sequence[Sequence[float | None]],
        Said("A list an opening with the route's length to each supply [m]; null where there is none.",
             as_it_stands=True),
    ]  # fmt: skip
    maximum_m: Annotated[NotNegative | None, Said("Longest run for all [m].")] = None
    fixed_supplies: Annotated[tuple[str, ...], Said("Supplies (id) that must be used.", shown="none")] = ()
    fixed_pairs: Annotated[
        Mapping[str, str],
        Said("Openings that a certain supply must feed {opening: supply}.", shown="none",
             form="{opening: supply}"),
    ] = field(default_factory=dict)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Siting:
    """The answer and what is proven of it."""

    open: Annotated[tuple[str, ...], Said("Supplies (id) that are used.")]
    pairs: Annotated[Mapping[str, str], Said("Supply of each opening.")]
    wire_m: Annotated[float, Said("Sum of the routes [m].")]
    gap: float
    """Share of the wire, or of the supplies if that is more, that a better answer might save; 0 when proven best."""

    @property
    def optimal(self) -> bool:
        """Whether the answer is proven best."""
        return self.gap == 0.0

    @property
    def optimal_or_gap(
        self,
    ) -> Annotated[
        bool | float,
        Said(at="optimal", yes="It is proven that there is no better answer.", no="There may be a better answer."),
    ]:
        """Share that a better answer might save; true when proven best."""
        return True if self.optimal else self.gap

    fewest_proven: Annotated[
        bool,
        Said(
            "Whether fewer supplies are proven not to do.",
            yes="It is proven that fewer supplies do not do.",
            no="It is not proven that fewer supplies do not do.",
        ),
    ]


class NoSitingError(InputError):
    """There is no siting.

    Parameters
    ----------
    field, message : str
        As of InputError.
    openings : tuple of str
        Those that no supply can reach or feed, or among which current is short.
    short_a : float
        Current that is short [A]; None where it is reach that is wanting.
    """

    def __init__(self, field: str, message: str, openings: tuple[str, ...], short_a: float | None) -> None:
        super().__init__(field, message)
        self.openings = openings
        self.short_a = short_a


class SitingNotFinishedError(InputError):
    """No siting was found before the time was up or the person cancelled; there may be one."""


def place_supplies(
    problem: Annotated[Problem, INLINE],
    gap: Annotated[
        float | None,
        Within(at_least=0, below=1),
        Said("Share of the wire that may stay unproven.",
             shown=f"0 up to {_SMALL_PAIRS:,} possible pairs, else {LARGE_GAP}"),
    ] = None,
    time_limit_s: Annotated[Positive, Said("After which the best answer found is given [s].")] = DEFAULT_TIME_S,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> Siting:  # fmt: skip
    """Choose the places of the supplies and put every opening on one.

    Parameters
    ----------
    progress : callable
        Told the step in words and the gap left, from the solver's thread.
    cancelled : callable
        Once it answers True the best answer found is given. Asked between the solver's steps: mostly within a tenth of
        a second, in large models now and then only after some seconds.

    Returns
    -------
    Siting
        Fewest supplies first, then least total wire.

    Raises
    ------
    NoSitingError
        Names the openings that no supply can reach or feed, or the current that is short.
    SitingNotFinishedError
        Where nothing was found in time.
    InputError
        Names the value that cannot be taken.

    Notes
    -----
    Exact by integer programming (HiGHS).

    Examples
    --------
    >>> places = (CandidateSupply("closet-1", 4), CandidateSupply("closet-2", 4))
    >>> openings = (Demand("101", 1), Demand("102", 1), Demand("103", 1))
    >>> found = place_supplies(Problem(places, openings, [[5, 40], [20, 30], [60, 10]], 50))
    >>> found.open, dict(found.pairs), found.wire_m, found.optimal
    (('closet-2',), {'101': 'closet-2', '102': 'closet-2', '103': 'closet-2'}, 80.0, True)
    """
    check_arguments(place_supplies, locals())
    pairs = _pairs(problem)
    if gap is None:
        gap = LARGE_GAP if len(pairs.opening) > _SMALL_PAIRS else 0.0
    limits = Limits(gap, monotonic() + time_limit_s, None, cancelled, progress)
    found = plan(pairs, limits)
    if isinstance(found, NoPlan):
        raise _why_not(problem, pairs, found, Limits(until=monotonic() + 20.0, cancelled=cancelled))
    return _told(problem, found)


def _told(problem: Problem, found: Plan) -> Siting:
    names = [s.id for s in problem.supplies]
    pairs = {o.id: names[s] for o, s in zip(problem.openings, found.supply_of, strict=True)}
    wire_gap = (found.wire_m - found.least_wire_m) / found.wire_m if found.wire_m > 0.0 else 0.0
    count = len(found.opened)
    count_gap = (count - found.least_supplies) / count if count else 0.0
    gap = max(wire_gap, count_gap)
    return Siting(
        tuple(names[s] for s in found.opened),
        pairs,
        found.wire_m,
        gap if gap > 1e-7 else 0.0,
        count == found.least_supplies,
    )


def _pairs(problem: Problem) -> Pairs:
    """Pairs that reach and capacity allow; raises where the input is wrong or an opening has none."""
    supplies, openings = problem.supplies, problem.openings
    place = _places([s.id for s in supplies], "supplies")
    _places([o.id for o in openings], "openings")
    for i, name in enumerate(problem.fixed_supplies):
        if name not in place:
            raise InputError(f"fixed_supplies[{i}]", f"there is no supply {name!r}")
    common_m = float("inf") if problem.maximum_m is None else problem.maximum_m
    distance = _distances(problem)
    limit = np.array([common_m if o.maximum_m is None else min(common_m, o.maximum_m) for o in openings])
    amps = np.array([o.amps for o in openings], dtype=float)
    capacity = np.array([s.amps for s in supplies], dtype=float)
    near = (distance <= limit[:, None] + _TOUCH) & np.isfinite(distance)
    fits = near & (amps[:, None] <= capacity[None, :] + _TOUCH)
    must = np.zeros(len(supplies))
    must[[place[name] for name in problem.fixed_supplies]] = 1.0
    _fix_pairs(problem, place, near, fits, must)
    _refuse_unreached(problem, near, fits)
    total_a, given_a = float(amps.sum()), float(capacity.sum())
    if total_a > given_a + _SHORT_A:
        raise NoSitingError(
            "supplies",
            f"current is short by {total_a - given_a:.6g} A: the openings draw {total_a:.6g} A, all supplies together "
            f"give {given_a:.6g} A",
            tuple(o.id for o in openings),
            total_a - given_a,
        )
    opening, supply = np.nonzero(fits)
    return Pairs(amps, capacity, opening.astype(np.int32), supply.astype(np.int32), distance[opening, supply], must)


def _places(names: Sequence[str], where: str) -> dict[str, int]:
    place: dict[str, int] = {}
    for i, name in enumerate(names):
        if name in place:
            raise InputError(f"{where}[{i}].id", f"{name!r} stands there twice")
        place[name] = i
    return place


def _distances(problem: Problem) -> np.ndarray:
    lines, width = problem.distances_m, len(problem.supplies)
    if len(lines) != len(problem.openings):
        raise InputError("distances_m", f"needs a line an opening: {len(problem.openings)}, got {len(lines)}")
    distance = np.empty((len(lines), width))
    for i, line in enumerate(lines):
        if not isinstance(line, list | tuple) or len(line) != width:
            raise InputError(f"distances_m[{i}]", f"must be a list with a number a supply: {width}")
        for j, metres in enumerate(line):
            if metres is None:
                distance[i, j] = np.inf
            else:
                distance[i, j] = check_number(metres, f"distances_m[{i}][{j}]", at_least=0, at_most=_LARGEST)
    return distance


def _fix_pairs(
    problem: Problem, place: Mapping[str, int], near: np.ndarray, fits: np.ndarray, must: np.ndarray
) -> None:
    """Leave a fixed opening only its own supply."""
    row = {o.id: i for i, o in enumerate(problem.openings)}
    for opening, supply in problem.fixed_pairs.items():
        at = f"fixed_pairs.{opening}"
        if opening not in row:
            raise InputError(at, f"there is no opening {opening!r}")
        if supply not in place:
            raise InputError(at, f"there is no supply {supply!r}")
        i, j = row[opening], place[supply]
        if not near[i, j]:
            raise NoSitingError(
                at, f"supply {supply!r} does not reach opening {opening!r} within the limit", (opening,), None
            )
        if not fits[i, j]:
            short_a = problem.openings[i].amps - problem.supplies[j].amps
            raise NoSitingError(at, f"supply {supply!r} is short by {short_a:.6g} A for it", (opening,), short_a)
        fits[i, :] = False
        fits[i, j] = True
        must[j] = 1.0


def _refuse_unreached(problem: Problem, near: np.ndarray, fits: np.ndarray) -> None:
    unreached = tuple(o.id for i, o in enumerate(problem.openings) if not near[i].any())
    if unreached:
        raise NoSitingError("openings", f"no supply can reach: {_listed(unreached)}", unreached, None)
    for i, o in enumerate(problem.openings):
        if not fits[i].any():
            most_a = max(s.amps for j, s in enumerate(problem.supplies) if near[i, j])
            raise NoSitingError(
                f"openings[{i}].amps",
                f"{o.id!r} draws {o.amps:.6g} A, the supplies in its reach give at most {most_a:.6g} A each: short by "
                f"{o.amps - most_a:.6g} A",
                (o.id,),
                o.amps - most_a,
            )


def _why_not(problem: Problem, pairs: Pairs, found: NoPlan, limits: Limits) -> InputError:
    short = shortage(pairs, limits, whole=False)
    if short is not None and short[0] > _SHORT_A:
        amount_a, openings, supplies = short
        ids = tuple(problem.openings[i].id for i in openings)
        drawn_a = sum(problem.openings[i].amps for i in openings)
        given_a = sum(problem.supplies[j].amps for j in supplies)
        return NoSitingError(
            "supplies",
            f"current is short by {amount_a:.6g} A: {_listed(ids)} draw {drawn_a:.6g} A together, and the supplies in "
            f"their reach ({_listed(tuple(problem.supplies[j].id for j in supplies))}) give {given_a:.6g} A",
            ids,
            amount_a,
        )
    if not found.proven:
        return SitingNotFinishedError("time_limit_s", "no siting was found in that time; there may be one")
    short = shortage(pairs, limits, whole=True)
    amount = "" if short is None or short[0] <= _SHORT_A else f": short by {short[0]:.6g} A"
    return NoSitingError(
        "supplies",
        "current is short though not in sum: each opening is fed whole by one supply, and no division keeps every "
        f"supply within its current{amount}",
        tuple(o.id for o in problem.openings),
        None if short is None else short[0],
    )


def _listed(names: Sequence[str]) -> str:
    if len(names) <= _MOST_NAMED:
        return ", ".join(names)
    return ", ".join(names[:_MOST_NAMED]) + f" and {len(names) - _MOST_NAMED} more"


SITING = Calculator(
    name="siting",
    title="Places of supplies, and which openings each feeds",
    basis="exact integer programming: fewest supplies first, then least total wire",
    work=place_supplies,
    example={
        "supplies": [{"id": "closet-1", "amps": 4}, {"id": "closet-2", "amps": 4}],
        "openings": [{"id": "101", "amps": 1.5}, {"id": "102", "amps": 1.5}, {"id": "103", "amps": 1.5}],
        "distances_m": [[8, 40], [20, 30], [45, 10]],
        "maximum_m": 50,
    },
)
