"""Threaded cylinder in a mortise lock: which shell length, collar and blocking rings bring head and cam right.

Here belongs the arithmetic of one leaf, one case position and a list of parts. Which of the fits is wanted
(price, stock, finish) is decided above; euro-profile halves and rim cylinders have a module each.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property, lru_cache
from itertools import islice
from math import ceil, floor, fsum
from typing import Annotated, Any, Final

from hwsched.calc.calculator import Calculator, InputError, Said, Within, check_arguments
from hwsched.calc.limits import NotNegative, Positive

THREAD_PITCH_MM = 25.4 / 32
"""Pitch of the 32 threads an inch of a mortise cylinder [mm]; trade practice, from memory, unverified."""
MAX_RINGS = 3
"""Rings on one cylinder unless said otherwise; our own default."""
MAX_FITS = 1000
"""Fits listed unless said otherwise; our own default."""

_Most = Annotated[int, Within(at_least=0, at_most=100)]
_TOUCH_MM = 1e-9
"""Lengths closer than this are equal: a flush head is flush."""
_UNITS_PER_MM = 1_000_000
"""Ring heights are added as whole nanometres, so that equal heights meet in one table entry."""
_MAX_SUMS = 2_000_000
"""Sums of ring heights that are formed before the question is refused as too large."""
_STEP_MM = 12.5
"""How far up tables of rings go: in steps, so that cylinders of several lengths share one."""
_TABLES = 64
"""Tables that are kept, of the few rings that a cylinder takes."""
_KEPT = 8
"""Ways to make up one height that are kept with a table."""
_REMEMBERED = 4096
"""Questions whose answers are kept: the doors of a project have few thicknesses and trims, and share one catalogue."""


_Part = Annotated[str, Said("What it is called in the answer.")]
_Way = tuple[float, tuple[str, ...]]
"""Height of some rings as given, and their parts."""


@dataclass(frozen=True)
class StackCylinder:
    """One threaded cylinder of the catalogue."""

    part: _Part
    length_mm: Annotated[Positive, Said("Shell length.")]
    cam_offset_mm: Annotated[float, Said("Cam plane from the shell's rear, toward the case.")]


@dataclass(frozen=True)
class StackCollar:
    """One collar of the catalogue."""

    part: _Part
    height_mm: Annotated[NotNegative, Said("Height under the cylinder's head.")]


@dataclass(frozen=True)
class StackRing:
    """One blocking ring of the catalogue."""

    part: _Part
    height_mm: Annotated[Positive, Said("Height.")]
    available: Annotated[int | None, Within(at_least=0), Said("How many may be used.", shown="no limit")] = None


@dataclass(frozen=True)
class _Stacked:
    """A cylinder, its collar and rings."""

    cylinder: Annotated[str, Said("Its part.")]
    collar: Annotated[str | None, Said("Its part.")]
    rings: Annotated[tuple[str, ...], Said("Part of every ring, repeated as often as it is used.")]
    turns: Annotated[int, Said("Whole turns that the cam plane lies beyond the case's centre plane.")]


@dataclass(frozen=True)
class StackFit(_Stacked):
    """A cylinder, its collar and rings that stand right."""

    projection_mm: Annotated[float, Said("How far the head stands proud of the trim.")]
    gap_mm: Annotated[float, Said("How far it stands proud of collar and rings, from 0 to the tolerance.")]


@dataclass(frozen=True)
class StackMiss(_Stacked):
    """The combination that comes nearest when nothing fits."""

    projection_mm: float
    gap_mm: Annotated[float, Said("Head above collar and rings; negative when it would be recessed.")]
    distance_mm: float
    """How far the gap is from the allowed band [mm]."""


@dataclass(frozen=True)
class StackResult:
    """What fits, or how near it comes."""

    fits: Annotated[tuple[StackFit, ...], Said("What fits: fewest rings, then least projection, then least gap.")]
    more: Annotated[bool, Said("Fits were left out because their number reached the limit.", no="No fit was left out.")]
    nearest_miss: Annotated[StackMiss | None, Said("When nothing fits: what comes nearest to the allowed band.")]


_Stand = tuple[float, str, int]
"""Projection [mm], cylinder, turns."""


def projection_mm(
    leaf_mm: float,
    trim_mm: float,
    length_mm: float,
    cam_offset_mm: float,
    turns: int,
    *,
    case_offset_mm: float = 0.0,
    pitch_mm: float = THREAD_PITCH_MM,
) -> float:
    """How far a cylinder's head stands proud of the trim with its cam so many turns past the case's centre.

    Parameters
    ----------
    leaf_mm, trim_mm, length_mm : float
        Leaf thickness, outer trim thickness, shell length [mm].
    cam_offset_mm : float
        Cam plane from the shell's rear, toward the case [mm].
    turns : int
        Whole turns beyond the case's centre plane, 0 or more.
    case_offset_mm : float
        Case centre from the leaf's middle, toward the key face [mm].
    pitch_mm : float
        Thread pitch [mm].

    Returns
    -------
    float
        ``L + o - trim - (leaf/2 - case_offset) - k * pitch`` [mm]; negative when it is recessed.

    Notes
    -----
    Source: geometry; the stop at whole turns is common practice (the keyway stands upright).

    Examples
    --------
    >>> [round(projection_mm(44.45, 0, 28.575, 0, k), 4) for k in (0, 1, 2)]
    [6.35, 5.5562, 4.7625]
    """
    return length_mm + cam_offset_mm - trim_mm - (leaf_mm / 2 - case_offset_mm) - turns * pitch_mm


def cylinder_stack(
    leaf_mm: Annotated[Positive, Said("Leaf thickness.")],
    trim_mm: Annotated[NotNegative, Said("Thickness of the outer trim; 0 when there is none.")],
    cylinders: Annotated[Sequence[StackCylinder], Said("Cylinders to choose from.")],
    collars: Annotated[Sequence[StackCollar], Said("Collars to choose from; an empty list is no collar.", default=())],
    rings: Annotated[Sequence[StackRing], Said("Blocking rings to choose from.", default=())],
    *,
    case_offset_mm: Annotated[
        float, Said("Lock case's centre from the leaf's middle, toward the key face; within the leaf.")
    ] = 0.0,
    pitch_mm: Annotated[Positive, Said("Thread pitch of the cylinder.")] = THREAD_PITCH_MM,
    max_turns_beyond: Annotated[_Most, Said("Turns that the cam may lie beyond the case's centre plane.")] = 2,
    tolerance_mm: Annotated[
        NotNegative | None, Said("How far the head may stand proud of collar and rings.", shown="one pitch")
    ] = None,
    max_rings: Annotated[_Most, Said("Most blocking rings on one cylinder.")] = MAX_RINGS,
    max_fits: Annotated[int, Within(at_least=1), Said("Most fits that are listed.")] = MAX_FITS,
    measure_mm: Annotated[
        NotNegative, Said("How far leaf and trim may have been measured wrong: by so much a head may seem recessed.")
    ] = 0.0,
) -> StackResult:
    """Choose shell length, collar and the fewest blocking rings so that the head is flush and the cam lies right.

    Every cylinder, every number of turns from 0 to `max_turns_beyond`, every collar (none when the list is empty)
    and every multiset of up to `max_rings` rings within what is available is considered, and all that suit are
    listed, best first, up to `max_fits`.

    Returns
    -------
    StackResult
        Fits by fewest rings, then least projection, then least gap; without any, the nearest miss.

    Raises
    ------
    InputError
        Names the value that cannot be taken, or `max_rings` when the rings have too many distinct sums.

    Notes
    -----
    A collar and rings of total height c suit a projection h when ``0 <= h - c <= tolerance``: never recessed. What
    cannot be measured widens the band on both sides.
    Source: common practice for threaded mortise cylinders.

    Examples
    --------
    >>> got = cylinder_stack(44.45, 0, [StackCylinder("C", 28.575, 0)], [StackCollar("K", 3.175)],
    ...                      [StackRing("R", 1.5875)])
    >>> got.fits[0].rings, got.fits[0].turns, got.fits[0].gap_mm
    (('R',), 2, 0.0)
    """
    search, raised_mm = _asked(locals())
    return search.result(raised_mm)


def stacks_by_rings(
    leaf_mm: float,
    trim_mm: float,
    cylinders: Sequence[StackCylinder],
    collars: Sequence[StackCollar] = (),
    rings: Sequence[StackRing] = (),
    *,
    case_offset_mm: float = 0.0,
    pitch_mm: float = THREAD_PITCH_MM,
    max_turns_beyond: int = 2,
    tolerance_mm: float | None = None,
    max_rings: int = MAX_RINGS,
    max_fits: int = MAX_FITS,
    measure_mm: float = 0.0,
) -> Iterator[tuple[StackFit, ...] | StackMiss]:
    """Do as `cylinder_stack` for somebody who may need the first fits only: each number of rings by itself.

    Yields
    ------
    tuple of StackFit or StackMiss
        For none, one, two rings and so on the fits with so many, each worked out when it is asked for; where nothing
        fits, the nearest miss at last.

    Raises
    ------
    InputError
        As `cylinder_stack`, before anything is yielded.
    """
    search, raised_mm = _asked(locals())
    yield from search.told(raised_mm)


def _asked(given: dict[str, Any]) -> tuple["_Search", float]:
    """Look at what was given to `cylinder_stack`; return the search, and by how much heads are raised in it."""
    check_arguments(cylinder_stack, given)
    leaf_mm, case_offset_mm, pitch_mm = given["leaf_mm"], given["case_offset_mm"], given["pitch_mm"]
    # Equal would put the case's centre on a face, where no case can be.
    if not abs(case_offset_mm) < leaf_mm / 2:
        raise InputError("case_offset_mm", f"puts the case's centre outside the leaf of {leaf_mm:g} mm")
    _refuse_twice(given["rings"])
    # A cylinder is turned in whole turns, so that its head can be set no finer than one pitch.
    tolerance = pitch_mm if given["tolerance_mm"] is None else given["tolerance_mm"]
    # Heads taken as standing out by so much more, in a band that is wider by twice as much: the band widened both ways.
    raised = given["measure_mm"]
    stands = tuple(
        (projection_mm(leaf_mm, given["trim_mm"], c.length_mm, c.cam_offset_mm, k,
                       case_offset_mm=case_offset_mm, pitch_mm=pitch_mm) + raised, c.part, k)
        for c in given["cylinders"]
        # Whole turns only, since the keyway must stand upright; from the case's centre plane on, by common practice.
        for k in range(given["max_turns_beyond"] + 1)
    )  # fmt: skip
    parts = tuple(given["collars"]), tuple(given["rings"])
    return _search(stands, *parts, tolerance + 2 * raised, given["max_rings"], given["max_fits"]), raised


class _Search:
    """Answers for heads that stand so far proud, with inputs that were looked at; worked out as far as it is asked."""

    def __init__(
        self,
        stands: tuple[_Stand, ...],
        collars: tuple[StackCollar, ...],
        rings: tuple[StackRing, ...],
        tolerance: float,
        max_rings: int,
        max_fits: int,
    ) -> None:
        self._stands, self._tolerance, self._max_fits = stands, tolerance, max_fits
        self._bases: list[tuple[str | None, float]] = [(c.part, c.height_mm) for c in collars] or [(None, 0.0)]
        # With no ring at all some distance to the band is reached; a stack taller than this cannot come nearer.
        bare = min((_beyond(h - base, tolerance) for h, _, _ in stands for _, base in self._bases), default=0.0)
        # The farthest that can be of use bounds the sums; without a bound their number grows with every ring.
        top = max((h for h, _, _ in stands), default=0.0) + bare + 2 * _TOUCH_MM
        # A table of many rings is large, and nobody asks for it twice.
        self._table = (
            _RingTable(rings, max_rings, top)
            if max_rings > MAX_RINGS
            else _table(rings, max_rings, ceil(top / _STEP_MM) * _STEP_MM)
        )
        self._groups = self._grouped()
        self._listed: dict[int, tuple[StackFit, ...]] = {}
        """By number of rings; with one fit more than is listed, to know whether any was left out."""

    def _grouped(self) -> list[list[_Stand]]:
        """Put together the heads of one projection, least first, of which some collar comes near."""
        groups: dict[float, list[_Stand]] = {}
        # Rounded, because two ways to the same projection differ in their last bits; they are equal to whoever
        # measures.
        for stand in sorted(self._stands, key=lambda s: round(s[0], 9)):
            groups.setdefault(round(stand[0], 9), []).append(stand)
        if not groups:
            return []
        # As `_group_fits` has it for each number of rings: most cylinders are far too short or too long.
        slack = 2 * (self._table.most + 1) / _UNITS_PER_MM
        highest = max((sums[-1] for sums in self._table.sums if sums), default=0) / _UNITS_PER_MM
        lowest = min(base for _, base in self._bases) - slack
        highest += max(base for _, base in self._bases) + self._tolerance + slack
        return [group for group in groups.values() if any(lowest <= stand[0] <= highest for stand in group)]

    def told(self, raised_mm: float) -> Iterator[tuple[StackFit, ...] | StackMiss]:
        """Yield the fits of each number of rings, where nothing fits the nearest miss; heads back where they stand."""
        before = 0
        for count in range(self._table.most + 1):
            found = self._of(count, before)
            yield _lowered(found[: self._max_fits - before], raised_mm)
            before += len(found)
            if before > self._max_fits:
                return
        if not before and (miss := self._miss) is not None:
            yield _lowered_miss(miss, raised_mm)

    def result(self, raised_mm: float) -> StackResult:
        """Return all of it."""
        told = list(self.told(raised_mm))
        fits = tuple(fit for each in told if not isinstance(each, StackMiss) for fit in each)
        miss = next((each for each in told if isinstance(each, StackMiss)), None)
        return StackResult(fits, sum(map(len, self._listed.values())) > self._max_fits, miss)

    def _of(self, count: int, before: int) -> tuple[StackFit, ...]:
        """Fits with so many rings, in order; before: how many have fewer."""
        found = self._listed.get(count)
        if found is None:
            fits: list[StackFit] = []
            for group in self._groups:
                fits += sorted(
                    _group_fits(
                        group, self._bases, self._table, count, self._tolerance,
                        self._max_fits + 1 - before - len(fits),
                    ),
                    key=lambda fit: round(fit.gap_mm, 9),
                )  # fmt: skip
                if before + len(fits) > self._max_fits:
                    break
            found = self._listed[count] = tuple(fits)
        return found

    @cached_property
    def _miss(self) -> StackMiss | None:
        return _nearest(self._stands, self._bases, self._table, self._tolerance)


_search: Final = lru_cache(_REMEMBERED)(_Search)


def _lowered(fits: tuple[StackFit, ...], by_mm: float) -> tuple[StackFit, ...]:
    """Put heads that were raised for the search back to where they stand."""
    if not by_mm:
        return fits
    lowered = [
        StackFit(
            *(fit.cylinder, fit.collar, fit.rings, fit.turns),
            *(_clean(fit.projection_mm - by_mm), _clean(fit.gap_mm - by_mm)),
        )
        for fit in fits
    ]
    # Least gap is now nearest to flush, on whichever side.
    lowered.sort(key=lambda fit: (round(fit.projection_mm, 9), round(abs(fit.gap_mm), 9)))
    return tuple(lowered)


def _lowered_miss(miss: StackMiss, by_mm: float) -> StackMiss:
    if not by_mm:
        return miss
    return replace(miss, projection_mm=miss.projection_mm - by_mm, gap_mm=miss.gap_mm - by_mm)


@lru_cache(_TABLES)
def _table(rings: tuple[StackRing, ...], max_rings: int, ceiling_mm: float) -> "_RingTable":
    return _RingTable(rings, max_rings, ceiling_mm)


class _RingTable:
    """Which total heights so many rings can have, and which rings make them."""

    def __init__(self, rings: Sequence[StackRing], max_rings: int, ceiling_mm: float) -> None:
        self.rings = rings
        # Whole units, because sums of floats that should be equal are not, and equal sums are what keeps the table
        # small.
        self.heights = [round(r.height_mm * _UNITS_PER_MM) for r in rings]
        limits = [max_rings if r.available is None else min(r.available, max_rings) for r in rings]
        self.most = max_rings if any(r.available is None for r in rings) else min(max_rings, sum(limits))
        # Each ring's height may have been rounded up by half a unit; one unit a ring is more than that.
        ceiling = ceil(max(0.0, ceiling_mm) * _UNITS_PER_MM) + max_rings
        # tails[i][n]: the sums that n rings of the parts from i on can make
        tails: list[list[set[int]]] = [[{0}, *(set[int]() for _ in range(self.most))]]
        work = 0
        for height, limit in zip(reversed(self.heights), reversed(limits), strict=True):
            below = tails[-1]
            here: list[set[int]] = []
            for n in range(self.most + 1):
                sums = set(below[n])
                # Without a limit of its own a ring may be added to what already holds it: one step in place of one
                # for each number used.
                if n and limit >= self.most:
                    sums.update(s + height for s in here[n - 1] if s + height <= ceiling)
                else:
                    for used in range(1, min(n, limit) + 1):
                        step = used * height
                        work += len(below[n - used])
                        sums.update(s + step for s in below[n - used] if s + step <= ceiling)
                work += len(sums)
                if work > _MAX_SUMS:
                    raise InputError("max_rings", "too many different ring heights to add up; allow fewer rings")
                here.append(sums)
            tails.append(here)
        self.tails = tails[::-1]
        self.limits = limits
        self.sums = [sorted(s) for s in self.tails[0]]
        self._ways: dict[tuple[int, int], tuple[tuple[_Way, ...], bool]] = {}

    def ways(self, count: int, total: int) -> Iterator[_Way]:
        """Every multiset of `count` rings whose heights add up to `total`."""
        known = self._ways.get((count, total))
        if known is None:
            # The first few are kept: the same rings are asked for by every cylinder.
            several = [*islice(self.choices(count, total), _KEPT + 1)]
            known = tuple(self._way(each) for each in several[:_KEPT]), len(several) > _KEPT
            self._ways[count, total] = known
        first, more = known
        yield from first
        if more:
            yield from (self._way(each) for each in islice(self.choices(count, total), _KEPT, None))

    def _way(self, choice: tuple[int, ...]) -> _Way:
        # Added without rounding between, so that the order in which rings are named cannot decide whether they fit.
        return fsum(self.rings[i].height_mm for i in choice), tuple(self.rings[i].part for i in choice)

    def choices(self, count: int, total: int, first: int = 0) -> Iterator[tuple[int, ...]]:
        """Every multiset of `count` rings, as indices from `first` on, whose heights add up to `total`."""
        if first == len(self.heights):
            yield ()
            return
        height = self.heights[first]
        for used in range(min(count, self.limits[first]), -1, -1):
            if total - used * height in self.tails[first + 1][count - used]:
                for rest in self.choices(count - used, total - used * height, first + 1):
                    yield (first,) * used + rest


def _beyond(gap_mm: float, tolerance_mm: float) -> float:
    """Distance of a gap from the allowed band; 0 inside it."""
    return max(0.0, -gap_mm, gap_mm - tolerance_mm)


def _clean(value_mm: float) -> float:
    """Length with what rounding left of a zero removed."""
    return 0.0 if abs(value_mm) < _TOUCH_MM else value_mm


def _group_fits(
    group: list[_Stand],
    bases: list[tuple[str | None, float]],
    table: _RingTable,
    count: int,
    tolerance_mm: float,
    limit: int,
) -> list[StackFit]:
    """Fits of one projection with so many rings, least gap first, up to a limit."""
    sums = table.sums[count]
    if not sums:
        return []
    # As below, but for the rounding to whole units: most groups end here.
    least, most = sums[0] - 2 * (count + 1), sums[-1] + 2 * (count + 1)
    wide = tolerance_mm * _UNITS_PER_MM
    found: list[tuple[float, _Stand, str | None, float, int]] = []
    for stand in group:
        for collar, base in bases:
            room = stand[0] - base
            if not least <= room * _UNITS_PER_MM <= most + wide:
                continue
            # Wider by one unit a ring than what suits: sums are of rounded heights, and the heights as given decide
            # below.
            low = floor((room - tolerance_mm - _TOUCH_MM) * _UNITS_PER_MM) - count
            high = ceil((room + _TOUCH_MM) * _UNITS_PER_MM) + count
            # the tallest sums leave the least gap
            for total in sums[bisect_left(sums, low) : bisect_right(sums, high)]:
                found.append((room * _UNITS_PER_MM - total, stand, collar, base, total))
    found.sort(key=lambda item: item[0])
    fits: list[StackFit] = []
    for _, (h, cylinder, turns), collar, base, total in found:
        for height, parts in table.ways(count, total):
            gap = h - base - height
            # Never recessed, by common practice; the sums were of rounded heights, and only the heights as given can
            # tell.
            if _beyond(gap, tolerance_mm) > _TOUCH_MM:
                continue
            fits.append(StackFit(cylinder, collar, parts, turns, _clean(h), _clean(gap)))
            if len(fits) >= limit:
                return fits
    return fits


def _nearest(
    stands: Sequence[_Stand],
    bases: list[tuple[str | None, float]],
    table: _RingTable,
    tolerance_mm: float,
) -> StackMiss | None:
    """Find the combination nearest to the allowed band; of equals the one of fewest rings, then least projection."""
    best: tuple[tuple[float, int, float], tuple[Any, ...]] | None = None
    for h, cylinder, turns in stands:
        for collar, base in bases:
            room = h - base
            for count, sums in enumerate(table.sums):
                # As below, for all sums of so many rings: most collars are far off.
                if best and sums:
                    least, most = room - sums[-1] / _UNITS_PER_MM, room - sums[0] / _UNITS_PER_MM
                    if max(-most, least - tolerance_mm) > best[0][0] + 1e-4:
                        continue
                below = bisect_left(sums, floor((room - tolerance_mm) * _UNITS_PER_MM))
                above = bisect_right(sums, ceil(room * _UNITS_PER_MM))
                # One on either side: the nearest sum may lie just outside the band that rounding drew.
                for total in sums[max(0, below - 1) : above + 1]:
                    # whole nanometres tell who cannot win; the heights as given decide
                    if best and _beyond(room - total / _UNITS_PER_MM, tolerance_mm) > best[0][0] + 1e-4:
                        continue
                    height, parts = next(table.ways(count, total))
                    gap = room - height
                    distance = _beyond(gap, tolerance_mm)
                    # Rounded, so that equals are decided by rings and projection, and not by the last bit of a sum.
                    key = (round(distance, 9), count, round(h, 9))
                    if best is None or key < best[0]:
                        best = (key, (cylinder, collar, parts, turns, h, gap, distance))
    return StackMiss(*best[1]) if best else None


def _refuse_twice(rings: Sequence[StackRing]) -> None:
    seen: set[str] = set()
    for i, ring in enumerate(rings):
        # Two lines of one ring would each bring its number, and more would be put in than there are.
        if ring.part in seen:
            raise InputError(f"rings[{i}].part", f"{ring.part!r} stands twice; give its height and number once")
        seen.add(ring.part)


CYLINDER_STACK = Calculator(
    name="cylinder-stack",
    title="Threaded cylinder, collar and blocking rings",
    basis="common practice; thread pitch from memory, unverified",
    work=cylinder_stack,
    example={
        "leaf_mm": 44.45,
        "trim_mm": 0,
        "pitch_mm": 0.79375,
        "max_rings": 2,
        "cylinders": [
            {"part": "shell 1-1/8", "length_mm": 28.575, "cam_offset_mm": 0},
            {"part": "shell 1-1/4", "length_mm": 31.75, "cam_offset_mm": 0},
        ],
        "collars": [{"part": "collar 3/16", "height_mm": 4.7625}],
        "rings": [{"part": "ring 1/16", "height_mm": 1.5875, "available": 4}],
    },
)
