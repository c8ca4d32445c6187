"""Euro-profile cylinders: which sizes of the two halves suit a leaf and its trims.

Here belongs the arithmetic from the fixing screw to each face. Threaded cylinders are in ``stack``.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import ceil
from typing import Any

from hwsched.calc.calculator import Calculator, Field, InputError, Reader, check_number

KEY_LIMIT_MM = 3.0
"""Projection past the outer fitting that is taken as safe [mm]; insurance practice, from a trade glossary."""
BLIND_MM = 10.0
"""Blind side of a half cylinder, from the fixing screw's centre [mm]; DIN 18252 and EN 1303 as quoted in trade."""

_TOUCH_MM = 1e-9
"""Lengths closer than this are equal."""


@dataclass(frozen=True)
class EuroSize:
    """A cylinder by its two lengths from the fixing screw's centre."""

    part: str
    a_mm: float
    """Key side [mm]."""
    b_mm: float
    """Inside, or the blind side of a half cylinder [mm]."""


@dataclass(frozen=True)
class EuroSteps:
    """Sizes in which either side is made."""

    shortest_mm: float
    step_mm: float
    longest_mm: float


@dataclass(frozen=True)
class EuroFit:
    """A size that suits."""

    part: str
    a_mm: float
    b_mm: float
    key_projection_mm: float
    """Past the key side's trim [mm]."""
    inside_projection_mm: float
    """Past the inside trim [mm]; of a half cylinder past the leaf's face, where it is not above 0."""


@dataclass(frozen=True)
class EuroRefusal:
    """A size that does not suit, with what it is off by."""

    part: str
    side: str
    """"key" or "inside": the side that is further off."""
    off_mm: float
    """Too short (negative) or too long (positive) on that side [mm]."""
    reason: str


@dataclass(frozen=True)
class EuroResult:
    """What is needed, what suits and what does not."""

    key_needed_mm: float
    """From the fixing screw's centre to the key side's trim [mm]."""
    inside_needed_mm: float
    """From it to the inside trim; for a half cylinder to the leaf's face [mm]."""
    fits: tuple[EuroFit, ...]
    """Best first."""
    refused: tuple[EuroRefusal, ...]
    """Nearest first."""


def euro_halves(
    leaf_mm: float,
    key_trim_mm: float,
    inside_trim_mm: float,
    sizes: Sequence[EuroSize] | EuroSteps,
    *,
    screw_offset_mm: float = 0.0,
    key_limit_mm: float = KEY_LIMIT_MM,
    inside_limit_mm: float | None = None,
    half: bool = False,
    blind_mm: float = BLIND_MM,
) -> EuroResult:
    """Choose the euro-profile size whose halves end at or just past their trims, with the cam central in the lock.

    Parameters
    ----------
    leaf_mm : float
        Leaf thickness [mm], more than 0.
    key_trim_mm, inside_trim_mm : float
        What stands on each face around the cylinder [mm], 0 or more.
    sizes : sequence of EuroSize, or EuroSteps
        Sizes in the catalogue, or the steps in which each side is made.
    screw_offset_mm : float
        Fixing screw's centre from the leaf's middle, toward the key face [mm], within half the leaf.
    key_limit_mm : float
        Most projection past the key side's trim [mm], 0 or more.
    inside_limit_mm : float, optional
        The same on the inside [mm]; None is no limit.
    half : bool
        The cylinder ends blind inside the leaf; its b is the blind side.
    blind_mm : float
        Blind side of halves made in steps [mm].

    Returns
    -------
    EuroResult
        Fits by least projection on the key side, then on the inside.

    Raises
    ------
    InputError
        Names the value that cannot be taken.

    Notes
    -----
    ``0 <= a - (leaf/2 - offset + key trim) <= limit``, the inside likewise with plus offset. Source: sizes from
    the fixing screw's centre, DIN 18252 / EN 1303 as quoted in trade; 3 mm projection, insurance practice.

    Examples
    --------
    >>> got = euro_halves(40, 8, 20, EuroSteps(30, 5, 90))
    >>> got.key_needed_mm, got.inside_needed_mm, got.fits[0].part
    (28.0, 40.0, '30/40')
    """
    _check(leaf_mm, key_trim_mm, inside_trim_mm, screw_offset_mm, key_limit_mm, inside_limit_mm, blind_mm)
    key_needed = leaf_mm / 2 - screw_offset_mm + key_trim_mm
    inside_needed = leaf_mm / 2 + screw_offset_mm + (0.0 if half else inside_trim_mm)
    if isinstance(sizes, EuroSteps):
        sizes = (_stepped(sizes, key_needed, inside_needed, blind_mm if half else None),)
    fits: list[EuroFit] = []
    refused: list[EuroRefusal] = []
    for i, size in enumerate(sizes):
        check_number(size.a_mm, f"sizes[{i}].a_mm", above=0)
        check_number(size.b_mm, f"sizes[{i}].b_mm", above=0)
        key_gap, inside_gap = _clean(size.a_mm - key_needed), _clean(size.b_mm - inside_needed)
        key_off = _off(key_gap, key_limit_mm)
        # a blind end only has to stay within the leaf
        inside_off = max(0.0, inside_gap) if half else _off(inside_gap, inside_limit_mm)
        if key_off == 0 and inside_off == 0:
            fits.append(EuroFit(size.part, size.a_mm, size.b_mm, key_gap, inside_gap))
        else:
            refused.append(_refusal(size.part, key_off, inside_off))
    fits.sort(key=lambda fit: (round(fit.key_projection_mm, 9), round(fit.inside_projection_mm, 9)))
    refused.sort(key=lambda refusal: abs(refusal.off_mm))
    return EuroResult(key_needed, inside_needed, tuple(fits), tuple(refused))


def half_length_mm(needed_mm: float, steps: EuroSteps) -> float:
    """Round the length needed on one side up to the next size made; the longest where none is long enough.

    Parameters
    ----------
    needed_mm : float
        From the fixing screw's centre to the trim [mm].
    steps : EuroSteps
        Sizes in which it is made.

    Returns
    -------
    float
        Length of that side [mm].

    Examples
    --------
    >>> half_length_mm(28, EuroSteps(30, 5, 90)), half_length_mm(40, EuroSteps(30, 5, 90))
    (30.0, 40.0)
    """
    up = ceil((needed_mm - steps.shortest_mm - _TOUCH_MM) / steps.step_mm)
    most = int((steps.longest_mm - steps.shortest_mm + _TOUCH_MM) // steps.step_mm)
    return float(steps.shortest_mm + min(max(up, 0), most) * steps.step_mm)


def _clean(value_mm: float) -> float:
    """Length with what rounding left of a zero removed."""
    return 0.0 if abs(value_mm) < _TOUCH_MM else value_mm


def _off(gap_mm: float, limit_mm: float | None) -> float:
    """How much too short (negative) or too long (positive) a side is."""
    if gap_mm < 0:
        return gap_mm
    return max(0.0, _clean(gap_mm - limit_mm)) if limit_mm is not None else 0.0


def _refusal(part: str, key_off: float, inside_off: float) -> EuroRefusal:
    parts = [
        f"{abs(off):.2f} mm too {'short' if off < 0 else 'long'} on the {side}"
        for side, off in (("key side", key_off), ("inside", inside_off))
        if off
    ]
    side, off = ("key", key_off) if abs(key_off) >= abs(inside_off) else ("inside", inside_off)
    return EuroRefusal(part, side, off, " and ".join(parts))


def _stepped(steps: EuroSteps, key_mm: float, inside_mm: float, blind_mm: float | None) -> EuroSize:
    """Nearest size made to what is needed."""
    check_number(steps.shortest_mm, "steps.shortest_mm", above=0)
    check_number(steps.step_mm, "steps.step_mm", at_least=0.01)
    check_number(steps.longest_mm, "steps.longest_mm", at_least=steps.shortest_mm)
    a = half_length_mm(key_mm, steps)
    b = half_length_mm(inside_mm, steps) if blind_mm is None else blind_mm
    return EuroSize(f"{a:g}/{b:g}", a, b)


def _check(
    leaf_mm: float,
    key_trim_mm: float,
    inside_trim_mm: float,
    screw_offset_mm: float,
    key_limit_mm: float,
    inside_limit_mm: float | None,
    blind_mm: float,
) -> None:
    check_number(leaf_mm, "leaf_mm", above=0)
    check_number(key_trim_mm, "key_trim_mm", at_least=0)
    check_number(inside_trim_mm, "inside_trim_mm", at_least=0)
    check_number(screw_offset_mm, "screw_offset_mm")
    if not abs(screw_offset_mm) < leaf_mm / 2:
        raise InputError("screw_offset_mm", f"puts the fixing screw outside the leaf of {leaf_mm:g} mm")
    check_number(key_limit_mm, "key_limit_mm", at_least=0)
    if inside_limit_mm is not None:
        check_number(inside_limit_mm, "inside_limit_mm", at_least=0)
    check_number(blind_mm, "blind_mm", above=0)


def _run(data: Mapping[str, Any]) -> dict[str, Any]:
    reader = Reader(data)
    half = reader.flag("half", False)
    sizes: Sequence[EuroSize] | EuroSteps
    if reader.raw("steps", None) is None:
        sizes = [EuroSize(r.text("part"), r.number("a_mm"), r.number("b_mm")) for r in reader.objects("sizes")]
    elif reader.raw("sizes", None) is None:
        steps = reader.object("steps")
        sizes = EuroSteps(steps.number("shortest_mm"), steps.number("step_mm"), steps.number("longest_mm"))
    else:
        raise InputError("steps", "is given beside sizes; give one of them")
    result = euro_halves(
        reader.number("leaf_mm"),
        reader.number("key_trim_mm"),
        reader.number("inside_trim_mm", 0.0) if half else reader.number("inside_trim_mm"),
        sizes,
        screw_offset_mm=reader.number("screw_offset_mm", 0.0),
        key_limit_mm=reader.number("key_limit_mm", KEY_LIMIT_MM),
        inside_limit_mm=reader.optional_number("inside_limit_mm"),
        half=half,
        blind_mm=reader.number("blind_mm", BLIND_MM),
    )
    fits = [
        {
            "part": fit.part,
            "a_mm": fit.a_mm,
            "b_mm": fit.b_mm,
            "key_projection_mm": fit.key_projection_mm,
            "inside_projection_mm": fit.inside_projection_mm,
        }
        for fit in result.fits
    ]
    return {
        "key_needed_mm": result.key_needed_mm,
        "inside_needed_mm": result.inside_needed_mm,
        "best": fits[0] if fits else None,
        "fits": fits,
        "refused": [{"part": r.part, "side": r.side, "off_mm": r.off_mm, "reason": r.reason} for r in result.refused],
    }


EURO_HALVES = Calculator(
    name="euro-halves",
    title="Euro-profile cylinder halves",
    basis="DIN 18252 / EN 1303 as quoted in trade; 3 mm projection by insurance practice",
    inputs=(
        Field("leaf_mm", "number", "Leaf thickness."),
        Field("screw_offset_mm", "number", "Fixing screw from the leaf's middle, toward the key face.", "0"),
        Field("key_trim_mm", "number", "What stands on the key face around the cylinder."),
        Field("inside_trim_mm", "number", "The same on the inside face; not needed for a half cylinder."),
        Field("sizes", "list", "Objects of part, a_mm (key side), b_mm (inside or blind side); or give steps."),
        Field("steps", "object", "Sizes made: shortest_mm, step_mm, longest_mm of either side.", "none"),
        Field("key_limit_mm", "number", "Most projection past the key side's trim.", "3"),
        Field("inside_limit_mm", "number", "Most projection past the inside trim.", "no limit"),
        Field("half", "flag", "Half cylinder that ends blind inside the leaf.", "false"),
        Field("blind_mm", "number", "Blind side of a half cylinder made in steps.", "10"),
    ),
    outputs=(
        Field("key_needed_mm", "number", "Fixing screw's centre to the key side's trim."),
        Field("inside_needed_mm", "number", "Fixing screw's centre to the inside trim (half: leaf face)."),
        Field("best", "object", "First of the fits, or null."),
        Field("fits", "list", "Objects of part, a_mm, b_mm, key_projection_mm, inside_projection_mm, best first."),
        Field("refused", "list", "Objects of part, side, off_mm (negative: too short), reason; nearest first."),
    ),
    example={
        "leaf_mm": 40,
        "key_trim_mm": 8,
        "inside_trim_mm": 20,
        "sizes": [
            {"part": "30/40", "a_mm": 30, "b_mm": 40},
            {"part": "35/40", "a_mm": 35, "b_mm": 40},
            {"part": "30/35", "a_mm": 30, "b_mm": 35},
        ],
    },
    run=_run,
)
