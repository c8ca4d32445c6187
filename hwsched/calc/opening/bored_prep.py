"""Bored lever lock in a leaf that is bored already: what suits, what must be drilled, what cannot be cured.

Here belongs the comparison of the preparation found with the one wanted. Whether a rated leaf may be drilled is a
rule; single bores as solids are in ``bore``.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import hypot, inf
from typing import Any

from hwsched.calc.calculator import Calculator, Field, InputError, Reader, check_number

TOLERANCE_MM = 25.4 / 16
"""Deviation that a preparation may have [mm]; SDI 111-24, linear tolerance unless noted."""

_MEASURE_MM = 0.1
"""A hole short by less than a survey can measure is large enough [mm]; our own."""


@dataclass(frozen=True)
class BoltHole:
    """A hole square through the leaf beside the cross bore."""

    x_mm: float
    """From the cross bore's centre, toward the hinge edge [mm]."""
    y_mm: float
    """From it, upward [mm]."""
    diameter_mm: float


@dataclass(frozen=True)
class Latch:
    """A latch that the lock can have."""

    part: str
    backset_low_mm: float
    backset_high_mm: float
    """Equal to the low one unless it is adjustable [mm]."""
    length_mm: float | None = None
    """From the leaf's edge to its rear end [mm]; None where it is not known."""


@dataclass(frozen=True)
class PrepWanted:
    """What the new lock needs."""

    cross_bore_mm: float
    edge_bore_mm: float
    leaf_low_mm: float
    leaf_high_mm: float
    latches: tuple[Latch, ...]
    bolt_holes: tuple[BoltHole, ...] = ()
    cross_bore_max_mm: float | None = None
    """Largest cross bore that its roses still cover and hold [mm]; None is the wanted one with the tolerance."""
    edge_bore_max_mm: float | None = None
    """The same for the edge bore [mm]."""


@dataclass(frozen=True)
class PrepFound:
    """What the survey found; None is unknown, a bore of 0 is none."""

    leaf_mm: float | None
    cross_bore_mm: float | None
    edge_bore_mm: float | None
    backset_mm: float | None
    bolt_holes: tuple[BoltHole, ...] | None = None


@dataclass(frozen=True)
class PrepWork:
    """Something to drill."""

    item: str
    action: str
    """"drill", "enlarge" or "deepen"."""
    from_mm: float
    to_mm: float
    """Diameters; for "deepen" how far the edge bore goes on beyond the cross bore [mm]."""


@dataclass(frozen=True)
class PrepTrouble:
    """Something that drilling does not cure."""

    item: str
    off_mm: float
    reason: str


@dataclass(frozen=True)
class PrepResult:
    """What is to be said of one leaf and one lock."""

    status: str
    """"ready", "work", "no" or "unknown"; "no" where something cannot be cured whatever is still unknown."""
    latch: str | None
    backset_mm: float | None
    """Backset that the lock will have [mm]."""
    work: tuple[PrepWork, ...]
    cannot: tuple[PrepTrouble, ...]
    needs: tuple[str, ...]
    """Facts that are missing."""
    left_over: tuple[int, ...]
    """Holes found that the new lock neither uses nor bores away."""
    edge_to_bore_mm: float | None
    """Material from the edge to the finished cross bore [mm]."""
    edge_wall_mm: float | None
    """Wall on each side of the finished edge bore, centred in the leaf [mm]."""


def bored_prep(
    wanted: PrepWanted,
    found: PrepFound,
    *,
    tolerance_mm: float = TOLERANCE_MM,
    min_edge_wall_mm: float = 0.0,
) -> PrepResult:
    """Compare the bores, backset and through-bolt holes found with those that a bored lock needs.

    Parameters
    ----------
    wanted : PrepWanted
        Preparation of the new lock.
    found : PrepFound
        Preparation that is there.
    tolerance_mm : float
        How far a bore may be too large, a backset off, or an old hole stand out of a new one [mm], 0 or more.
    min_edge_wall_mm : float
        Wall wanted on each side of the edge bore [mm], 0 or more.

    Returns
    -------
    PrepResult
        A bore that is too small is enlarged about its centre, one that is missing drilled; one that is too large, a
        backset that no latch has and a leaf outside the lock's range cannot be cured.

    Raises
    ------
    InputError
        Names the value that cannot be taken, or that contradicts another.

    Notes
    -----
    ``edge to bore = backset - bore/2``, ``edge wall = (leaf - edge bore)/2``. Source: 160 and 161 preparations as in
    the locksmiths' dictionary (LIST/ALOA); tolerance SDI 111-24.

    Examples
    --------
    >>> lock = PrepWanted(53.975, 25.4, 34.925, 44.45, (Latch("latch 2-3/4", 69.85, 69.85),))
    >>> got = bored_prep(lock, PrepFound(44.45, 53.975, 22.225, 69.85))
    >>> got.status, got.work[0].action, got.work[0].to_mm, got.edge_wall_mm
    ('work', 'enlarge', 25.4, 9.525000000000002)
    """
    _check(wanted, found, tolerance_mm, min_edge_wall_mm)
    work: list[PrepWork] = []
    cannot: list[PrepTrouble] = []
    needs = [
        name
        for name, value in (
            ("leaf_mm", found.leaf_mm),
            ("cross_bore_mm", found.cross_bore_mm),
            ("edge_bore_mm", found.edge_bore_mm),
        )
        if value is None
    ]
    if found.backset_mm is None and found.cross_bore_mm != 0:
        needs.append("backset_mm")
    if found.bolt_holes is None and wanted.bolt_holes:
        needs.append("bolt_holes")
    cannot += _thickness(wanted, found.leaf_mm)
    cross = _bore(
        "cross bore", found.cross_bore_mm, wanted.cross_bore_mm, wanted.cross_bore_max_mm, tolerance_mm, work, cannot
    )  # fmt: skip
    edge = _bore(
        "edge bore", found.edge_bore_mm, wanted.edge_bore_mm, wanted.edge_bore_max_mm, tolerance_mm, work, cannot
    )  # fmt: skip
    latch, backset = _latch(wanted.latches, found, tolerance_mm, cannot)
    _latch_length(latch, backset, cross, work, cannot)
    left_over: tuple[int, ...] = ()
    if found.bolt_holes is not None and cross is not None:
        left_over = _bolts(wanted.bolt_holes, found.bolt_holes, cross, tolerance_mm, work, cannot)
    to_bore = None if backset is None or cross is None else backset - cross / 2
    wall = None if found.leaf_mm is None or edge is None else (found.leaf_mm - edge) / 2
    if to_bore is not None and to_bore <= 0:
        cannot.append(PrepTrouble("cross bore", -to_bore, f"breaks out of the edge by {-to_bore:.2f} mm"))
    if wall is not None and wall < min_edge_wall_mm - _MEASURE_MM:
        short = min_edge_wall_mm - wall
        cannot.append(PrepTrouble("edge bore", short, f"leaves a wall that is {short:.2f} mm too thin"))
    status = "no" if cannot else "unknown" if needs else "work" if work else "ready"
    return PrepResult(
        status,
        latch.part if latch else None,
        backset,
        tuple(work),
        tuple(cannot),
        tuple(needs),
        left_over,
        to_bore,
        wall,
    )


def _thickness(wanted: PrepWanted, leaf_mm: float | None) -> list[PrepTrouble]:
    if leaf_mm is None:
        return []
    low, high = wanted.leaf_low_mm - leaf_mm, leaf_mm - wanted.leaf_high_mm
    if low > _MEASURE_MM:
        return [PrepTrouble("leaf thickness", low, f"the leaf is {low:.2f} mm too thin for the lock")]
    if high > _MEASURE_MM:
        return [PrepTrouble("leaf thickness", high, f"the leaf is {high:.2f} mm too thick for the lock")]
    return []


def _bore(
    item: str,
    found_mm: float | None,
    wanted_mm: float,
    most_mm: float | None,
    tolerance_mm: float,
    work: list[PrepWork],
    cannot: list[PrepTrouble],
) -> float | None:
    """Finished diameter; None where the bore found is not known."""
    if found_mm is None:
        return None
    most = wanted_mm + tolerance_mm if most_mm is None else most_mm
    if found_mm > most + _MEASURE_MM:
        over = found_mm - most
        cannot.append(PrepTrouble(item, over, f"the {item} is {over:.2f} mm larger than the lock covers"))
    elif found_mm < wanted_mm - _MEASURE_MM:
        work.append(PrepWork(item, "enlarge" if found_mm else "drill", found_mm, wanted_mm))
    return max(found_mm, wanted_mm)


def _latch(
    latches: Sequence[Latch], found: PrepFound, tolerance_mm: float, cannot: list[PrepTrouble]
) -> tuple[Latch | None, float | None]:
    """Latch nearest to the backset found, and the backset; where nothing is bored yet, the first latch and its."""
    if found.cross_bore_mm == 0:
        return latches[0], found.backset_mm if _has(latches[0], found.backset_mm) else latches[0].backset_low_mm
    if found.backset_mm is None:
        return None, None
    backset = found.backset_mm
    best = min(latches, key=lambda latch: _backset_off(latch, backset))
    off = _backset_off(best, backset)
    if off > tolerance_mm + _MEASURE_MM:
        cannot.append(
            PrepTrouble("backset", off, f"the nearest latch, {best.part}, is {off:.2f} mm off the backset found")
        )
        return None, backset
    return best, backset


def _has(latch: Latch, backset_mm: float | None) -> bool:
    return backset_mm is not None and _backset_off(latch, backset_mm) == 0


def _backset_off(latch: Latch, backset_mm: float) -> float:
    return max(0.0, latch.backset_low_mm - backset_mm, backset_mm - latch.backset_high_mm)


def _latch_length(
    latch: Latch | None,
    backset_mm: float | None,
    cross_mm: float | None,
    work: list[PrepWork],
    cannot: list[PrepTrouble],
) -> None:
    """Compare the latch's length with the way from the edge to the cross bore and through it."""
    if latch is None or latch.length_mm is None or backset_mm is None or cross_mm is None:
        return
    short = backset_mm - cross_mm / 2 - latch.length_mm
    beyond = latch.length_mm - (backset_mm + cross_mm / 2)
    if short > _MEASURE_MM:
        cannot.append(PrepTrouble("latch", short, f"ends {short:.2f} mm before it reaches the cross bore"))
    elif beyond > _MEASURE_MM:
        work.append(PrepWork("edge bore", "deepen", 0.0, beyond))


def _bolts(
    wanted: Sequence[BoltHole],
    found: Sequence[BoltHole],
    cross_mm: float,
    tolerance_mm: float,
    work: list[PrepWork],
    cannot: list[PrepTrouble],
) -> tuple[int, ...]:
    """Match through-bolt holes; gives the holes found that are of no use and stay."""
    used: set[int] = set()
    for i, hole in enumerate(wanted):
        item = f"bolt hole {i + 1}"
        if hypot(hole.x_mm, hole.y_mm) + hole.diameter_mm / 2 <= cross_mm / 2 + _MEASURE_MM:
            continue
        state, start, worst = "drill", 0.0, 0.0
        for j, old in enumerate(found):
            apart = hypot(hole.x_mm - old.x_mm, hole.y_mm - old.y_mm)
            if apart >= (hole.diameter_mm + old.diameter_mm) / 2:
                continue
            used.add(j)
            worst = max(worst, apart + (old.diameter_mm - hole.diameter_mm) / 2)
            start = max(start, old.diameter_mm)
            if apart + hole.diameter_mm / 2 <= old.diameter_mm / 2 + _MEASURE_MM:
                state = "there"
            elif state == "drill":
                state = "enlarge"
        if worst > tolerance_mm + _MEASURE_MM:
            cannot.append(PrepTrouble(item, worst, f"an old hole stands {worst:.2f} mm out of {item}"))
        elif state != "there":
            work.append(PrepWork(item, state, start, hole.diameter_mm))
    return tuple(
        j
        for j, old in enumerate(found)
        if j not in used and hypot(old.x_mm, old.y_mm) + old.diameter_mm / 2 > cross_mm / 2 + _MEASURE_MM
    )


def _check(wanted: PrepWanted, found: PrepFound, tolerance_mm: float, min_edge_wall_mm: float) -> None:
    check_number(tolerance_mm, "tolerance_mm", at_least=0)
    check_number(min_edge_wall_mm, "min_edge_wall_mm", at_least=0)
    check_number(wanted.cross_bore_mm, "wanted.cross_bore_mm", above=0)
    check_number(wanted.edge_bore_mm, "wanted.edge_bore_mm", above=0)
    check_number(wanted.leaf_low_mm, "wanted.leaf_low_mm", above=0)
    check_number(wanted.leaf_high_mm, "wanted.leaf_high_mm", at_least=wanted.leaf_low_mm)
    if wanted.cross_bore_max_mm is not None:
        check_number(wanted.cross_bore_max_mm, "wanted.cross_bore_max_mm", at_least=wanted.cross_bore_mm)
    if wanted.edge_bore_max_mm is not None:
        check_number(wanted.edge_bore_max_mm, "wanted.edge_bore_max_mm", at_least=wanted.edge_bore_mm)
    if not wanted.latches:
        raise InputError("wanted.latches", "is empty; a bored lock has at least one latch")
    for i, latch in enumerate(wanted.latches):
        path = f"wanted.latches[{i}]"
        check_number(latch.backset_low_mm, f"{path}.backset_low_mm", above=0)
        check_number(latch.backset_high_mm, f"{path}.backset_high_mm", at_least=latch.backset_low_mm)
        if latch.length_mm is not None:
            check_number(latch.length_mm, f"{path}.length_mm", above=0)
    _check_holes(wanted.bolt_holes, "wanted.bolt_holes")
    _check_holes(found.bolt_holes or (), "found.bolt_holes")
    _check_found(found)


def _check_found(found: PrepFound) -> None:
    """Refuse sizes that cannot be, and that contradict each other."""
    if found.leaf_mm is not None:
        check_number(found.leaf_mm, "found.leaf_mm", above=0)
    if found.cross_bore_mm is not None:
        check_number(found.cross_bore_mm, "found.cross_bore_mm", at_least=0)
    if found.edge_bore_mm is not None:
        check_number(found.edge_bore_mm, "found.edge_bore_mm", at_least=0)
        if found.edge_bore_mm >= (inf if found.leaf_mm is None else found.leaf_mm):
            raise InputError("found.edge_bore_mm", f"is as wide as the leaf of {found.leaf_mm:g} mm is thick")
    if found.backset_mm is not None:
        check_number(found.backset_mm, "found.backset_mm", above=0)
        if found.backset_mm <= (found.cross_bore_mm or 0) / 2:
            raise InputError("found.backset_mm", "puts the cross bore through the leaf's edge")


def _check_holes(holes: Sequence[BoltHole], path: str) -> None:
    for i, hole in enumerate(holes):
        check_number(hole.x_mm, f"{path}[{i}].x_mm")
        check_number(hole.y_mm, f"{path}[{i}].y_mm")
        check_number(hole.diameter_mm, f"{path}[{i}].diameter_mm", above=0)


def _read_holes(reader: Reader) -> tuple[BoltHole, ...]:
    return tuple(
        BoltHole(r.number("x_mm"), r.number("y_mm"), r.number("diameter_mm")) for r in reader.objects("bolt_holes", [])
    )


def _read_latch(reader: Reader) -> Latch:
    low = reader.number("backset_low_mm")
    high = reader.number("backset_high_mm", low)
    return Latch(reader.text("part"), low, high, reader.optional_number("length_mm"))


def _run(data: Mapping[str, Any]) -> dict[str, Any]:
    reader = Reader(data)
    new, old = reader.object("wanted"), reader.object("found")
    result = bored_prep(
        PrepWanted(
            new.number("cross_bore_mm"),
            new.number("edge_bore_mm"),
            new.number("leaf_low_mm"),
            new.number("leaf_high_mm"),
            tuple(_read_latch(r) for r in new.objects("latches")),
            _read_holes(new),
            new.optional_number("cross_bore_max_mm"),
            new.optional_number("edge_bore_max_mm"),
        ),
        PrepFound(
            old.optional_number("leaf_mm"),
            old.optional_number("cross_bore_mm"),
            old.optional_number("edge_bore_mm"),
            old.optional_number("backset_mm"),
            None if old.raw("bolt_holes", None) is None else _read_holes(old),
        ),
        tolerance_mm=reader.number("tolerance_mm", TOLERANCE_MM),
        min_edge_wall_mm=reader.number("min_edge_wall_mm", 0.0),
    )
    return {
        "status": result.status,
        "latch": result.latch,
        "backset_mm": result.backset_mm,
        "work": [{"item": w.item, "action": w.action, "from_mm": w.from_mm, "to_mm": w.to_mm} for w in result.work],
        "cannot": [{"item": t.item, "off_mm": t.off_mm, "reason": t.reason} for t in result.cannot],
        "needs": list(result.needs),
        "left_over": list(result.left_over),
        "edge_to_bore_mm": result.edge_to_bore_mm,
        "edge_wall_mm": result.edge_wall_mm,
    }


BORED_PREP = Calculator(
    name="bored-prep",
    title="Bored lock in a leaf that is bored already",
    basis="locksmiths' dictionary (LIST/ALOA), 160 and 161 preparations; tolerance SDI 111-24",
    inputs=(
        Field(
            "wanted",
            "object",
            "The new lock: cross_bore_mm, edge_bore_mm, leaf_low_mm, leaf_high_mm, latches (part, backset_low_mm, "
            "backset_high_mm, length_mm), bolt_holes (x_mm toward the hinge edge, y_mm up, diameter_mm), "
            "cross_bore_max_mm and edge_bore_max_mm (largest that it covers).",
        ),
        Field(
            "found",
            "object",
            "The leaf: leaf_mm, cross_bore_mm, edge_bore_mm (0: none, null: unknown), backset_mm, bolt_holes.",
        ),
        Field("tolerance_mm", "number", "How far a size found may be off.", "1.5875"),
        Field("min_edge_wall_mm", "number", "Wall wanted on each side of the edge bore.", "0"),
    ),
    outputs=(
        Field("status", "choice", "What it comes to.", "", ("ready", "work", "no", "unknown")),
        Field("latch", "text", "Latch that suits, or null."),
        Field("backset_mm", "number", "Backset that the lock will have, or null."),
        Field("work", "list", "Objects of item, action (drill, enlarge, deepen), from_mm, to_mm."),
        Field("cannot", "list", "Objects of item, off_mm, reason that drilling does not cure."),
        Field("needs", "list", "Facts that are missing."),
        Field("left_over", "list", "Indices of holes found that stay and are of no use."),
        Field("edge_to_bore_mm", "number", "Material from the edge to the finished cross bore, or null."),
        Field("edge_wall_mm", "number", "Wall on each side of the finished edge bore, or null."),
    ),
    example={
        "wanted": {
            "cross_bore_mm": 53.975,
            "edge_bore_mm": 25.4,
            "leaf_low_mm": 41,
            "leaf_high_mm": 48,
            "latches": [
                {"part": "latch 60", "backset_low_mm": 60.325},
                {"part": "latch 70", "backset_low_mm": 69.85},
            ],
            "bolt_holes": [
                {"x_mm": 0, "y_mm": 34.925, "diameter_mm": 7.9375},
                {"x_mm": 0, "y_mm": -34.925, "diameter_mm": 7.9375},
            ],
        },
        "found": {
            "leaf_mm": 44.45,
            "cross_bore_mm": 53.975,
            "edge_bore_mm": 22.225,
            "backset_mm": 69.85,
            "bolt_holes": [],
        },
    },
    run=_run,
)
