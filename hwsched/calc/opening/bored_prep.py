"""Bored lever lock in a leaf that is bored already: what suits, what must be drilled, what cannot be cured.

Here belongs the comparison of the preparation found with the one wanted. Whether a rated leaf may be drilled is a
rule; single bores as solids are in ``bore``.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot, inf
from typing import Annotated

from hwsched.calc.calculator import Calculator, InputError, Said, check_arguments, check_number
from hwsched.calc.limits import NotNegative, Positive

TOLERANCE_MM = 25.4 / 16
"""Deviation that a preparation may have [mm]; SDI 111-24, linear tolerance unless noted."""

_MEASURE_MM = 0.1
"""A hole short by less than a survey can measure is large enough [mm]; our own."""


_NOT_KNOWN = "not known"


@dataclass(frozen=True)
class BoltHole:
    """A hole square through the leaf beside the cross bore."""

    x_mm: Annotated[float, Said("From the cross bore's centre, toward the hinge edge.")]
    y_mm: Annotated[float, Said("From it, upward.")]
    diameter_mm: Annotated[Positive, Said("Its diameter.")]


@dataclass(frozen=True)
class Latch:
    """A latch that the lock can have."""

    part: Annotated[str, Said("What it is called in the answer.")]
    backset_low_mm: Annotated[Positive, Said("Its backset, or the least of an adjustable one.")]
    backset_high_mm: Annotated[float, Said("The greatest backset of an adjustable one.", like="backset_low_mm")]
    length_mm: Annotated[Positive | None, Said("From the leaf's edge to its rear end.", shown=_NOT_KNOWN)] = None


@dataclass(frozen=True)
class PrepWanted:
    """What the new lock needs."""

    cross_bore_mm: Annotated[Positive, Said("Diameter of its cross bore.")]
    edge_bore_mm: Annotated[Positive, Said("Diameter of its edge bore.")]
    leaf_low_mm: Annotated[Positive, Said("Thinnest leaf that it takes.")]
    leaf_high_mm: Annotated[float, Said("Thickest leaf that it takes.")]
    latches: Annotated[tuple[Latch, ...], Said("Latches that it can have, at least one.")]
    bolt_holes: Annotated[tuple[BoltHole, ...], Said("Its through-bolt holes.")] = ()
    cross_bore_max_mm: Annotated[
        float | None, Said("Largest cross bore that its roses still cover and hold.", shown="with the tolerance")
    ] = None
    edge_bore_max_mm: Annotated[float | None, Said("The same for the edge bore.", shown="with the tolerance")] = None


@dataclass(frozen=True)
class PrepFound:
    """What the survey found; None is unknown, a bore of 0 is none."""

    leaf_mm: Annotated[Positive | None, Said("Leaf thickness.", shown=_NOT_KNOWN)]
    cross_bore_mm: Annotated[NotNegative | None, Said("Diameter of the cross bore; 0: none.", shown=_NOT_KNOWN)]
    edge_bore_mm: Annotated[NotNegative | None, Said("Diameter of the edge bore; 0: none.", shown=_NOT_KNOWN)]
    backset_mm: Annotated[Positive | None, Said("Edge to the cross bore's centre.", shown=_NOT_KNOWN)]
    bolt_holes: Annotated[
        tuple[BoltHole, ...] | None, Said("Through-bolt holes; an empty list: none.", shown=_NOT_KNOWN)
    ] = None


@dataclass(frozen=True)
class PrepWork:
    """Something to drill."""

    item: Annotated[str, Said("What it is.")]
    action: Annotated[str, Said("What is done.", choices=("drill", "enlarge", "deepen"))]
    from_mm: Annotated[float, Said("Diameter that is there; 0 where there is none.")]
    to_mm: Annotated[
        float, Said("Diameter that it gets; for deepen how far the edge bore goes on beyond the cross bore.")
    ]


@dataclass(frozen=True)
class PrepTrouble:
    """Something that drilling does not cure."""

    item: Annotated[str, Said("What it is.")]
    off_mm: Annotated[float, Said("By how much it is off.")]
    reason: Annotated[str, Said("A sentence on it.")]


@dataclass(frozen=True)
class PrepResult:
    """What is to be said of one leaf and one lock."""

    status: Annotated[
        str,
        Said(
            "What it comes to; no where something cannot be cured whatever is still unknown.",
            choices=("ready", "work", "no", "unknown"),
        ),
    ]
    latch: Annotated[str | None, Said("Latch that suits.")]
    backset_mm: Annotated[float | None, Said("Backset that the lock will have.")]
    work: Annotated[tuple[PrepWork, ...], Said("What is to be drilled.")]
    cannot: Annotated[tuple[PrepTrouble, ...], Said("What drilling does not cure.")]
    needs: Annotated[tuple[str, ...], Said("Facts that are missing.")]
    left_over: Annotated[tuple[int, ...], Said("Indices of holes found that the new lock neither uses nor bores away.")]
    edge_to_bore_mm: Annotated[float | None, Said("Material from the edge to the finished cross bore.")]
    edge_wall_mm: Annotated[float | None, Said("Wall on each side of the finished edge bore, centred in the leaf.")]


def bored_prep(
    wanted: Annotated[PrepWanted, Said("The new lock.")],
    found: Annotated[PrepFound, Said("The leaf as it is.")],
    *,
    tolerance_mm: Annotated[
        NotNegative,
        Said("How far a bore may be too large, a backset off, or an old hole stand out of a new one."),
    ] = TOLERANCE_MM,
    min_edge_wall_mm: Annotated[NotNegative, Said("Wall wanted on each side of the edge bore.")] = 0.0,
) -> PrepResult:
    """Compare the bores, backset and through-bolt holes found with those that a bored lock needs.

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
    check_arguments(bored_prep, locals())
    _check_wanted(wanted)
    _check_found(found)
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
    # Where nothing is bored the backset is ours to choose, and nobody need go back to measure it.
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
    # What cannot be cured stays so whatever is measured later: a return visit for it would be in vain.
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
    # A leaf of 44.45 mm is written down as 44.4 or 44.5: less than a survey can measure refuses no lock.
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
    # Material cannot be put back: a bore too large needs a lock whose roses cover it, or another leaf.
    if found_mm > most + _MEASURE_MM:
        over = found_mm - most
        cannot.append(PrepTrouble(item, over, f"the {item} is {over:.2f} mm larger than the lock covers"))
    elif found_mm < wanted_mm - _MEASURE_MM:
        work.append(PrepWork(item, "enlarge" if found_mm else "drill", found_mm, wanted_mm))
    # The old bore stays where it is the larger: walls are those that will stand, and not those of the drawing.
    return max(found_mm, wanted_mm)


def _latch(
    latches: Sequence[Latch], found: PrepFound, tolerance_mm: float, cannot: list[PrepTrouble]
) -> tuple[Latch | None, float | None]:
    """Latch nearest to the backset found, and the backset; where nothing is bored yet, the first latch and its."""
    # Nothing is bored yet: the first latch, as the catalogue lists them, decides where the bore goes.
    if found.cross_bore_mm == 0:
        return latches[0], found.backset_mm if _has(latches[0], found.backset_mm) else latches[0].backset_low_mm
    if found.backset_mm is None:
        return None, None
    backset = found.backset_mm
    # The bore that is there decides the latch, not the other way round: it cannot be moved.
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
    # To the near side of the bore: a latch that ends before it cannot be coupled to the lock's body.
    short = backset_mm - cross_mm / 2 - latch.length_mm
    beyond = latch.length_mm - (backset_mm + cross_mm / 2)
    if short > _MEASURE_MM:
        cannot.append(PrepTrouble("latch", short, f"ends {short:.2f} mm before it reaches the cross bore"))
    # A latch that passes through needs the edge bore continued on the bore's far side.
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
        # Wholly within the cross bore there is nothing left to drill.
        if hypot(hole.x_mm, hole.y_mm) + hole.diameter_mm / 2 <= cross_mm / 2 + _MEASURE_MM:
            continue
        state, start, worst = "drill", 0.0, 0.0
        for j, old in enumerate(found):
            apart = hypot(hole.x_mm - old.x_mm, hole.y_mm - old.y_mm)
            # Apart, the old hole neither guides the new bit nor is bored away.
            if apart >= (hole.diameter_mm + old.diameter_mm) / 2:
                continue
            used.add(j)
            worst = max(worst, apart + (old.diameter_mm - hole.diameter_mm) / 2)
            start = max(start, old.diameter_mm)
            if apart + hole.diameter_mm / 2 <= old.diameter_mm / 2 + _MEASURE_MM:
                state = "there"
            elif state == "drill":
                state = "enlarge"
        # Material cannot be put back: what of an old hole stands out of the new one stays open.
        if worst > tolerance_mm + _MEASURE_MM:
            cannot.append(PrepTrouble(item, worst, f"an old hole stands {worst:.2f} mm out of {item}"))
        elif state != "there":
            work.append(PrepWork(item, state, start, hole.diameter_mm))
    return tuple(
        j
        for j, old in enumerate(found)
        if j not in used and hypot(old.x_mm, old.y_mm) + old.diameter_mm / 2 > cross_mm / 2 + _MEASURE_MM
    )


def _check_wanted(wanted: PrepWanted) -> None:
    """Refuse what contradicts another size of the lock."""
    check_number(wanted.leaf_high_mm, "wanted.leaf_high_mm", at_least=wanted.leaf_low_mm)
    if wanted.cross_bore_max_mm is not None:
        check_number(wanted.cross_bore_max_mm, "wanted.cross_bore_max_mm", at_least=wanted.cross_bore_mm)
    if wanted.edge_bore_max_mm is not None:
        check_number(wanted.edge_bore_max_mm, "wanted.edge_bore_max_mm", at_least=wanted.edge_bore_mm)
    if not wanted.latches:
        raise InputError("wanted.latches", "is empty; a bored lock has at least one latch")
    for i, latch in enumerate(wanted.latches):
        check_number(latch.backset_high_mm, f"wanted.latches[{i}].backset_high_mm", at_least=latch.backset_low_mm)


def _check_found(found: PrepFound) -> None:
    """Refuse sizes that contradict each other."""
    if found.edge_bore_mm is not None and found.edge_bore_mm >= (inf if found.leaf_mm is None else found.leaf_mm):
        raise InputError("found.edge_bore_mm", f"is as wide as the leaf of {found.leaf_mm:g} mm is thick")
    if found.backset_mm is not None and found.backset_mm <= (found.cross_bore_mm or 0) / 2:
        raise InputError("found.backset_mm", "puts the cross bore through the leaf's edge")


BORED_PREP = Calculator(
    name="bored-prep",
    title="Bored lock in a leaf that is bored already",
    basis="locksmiths' dictionary (LIST/ALOA), 160 and 161 preparations; tolerance SDI 111-24",
    work=bored_prep,
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
)
