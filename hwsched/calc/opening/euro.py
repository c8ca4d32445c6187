"""Euro-profile cylinders: which sizes of the two halves suit a leaf and its trims.

Here belongs the arithmetic from the fixing screw to each face. Threaded cylinders are in ``stack``.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil
from typing import Annotated

from hwsched.calc.calculator import (
    Calculator,
    FieldsOf,
    InputError,
    Said,
    Values,
    Within,
    check,
    check_arguments,
    check_number,
)
from hwsched.calc.limits import NotNegative, Positive

KEY_LIMIT_MM = 3.0
"""Projection past the outer fitting that is taken as safe [mm]; insurance practice, from a trade glossary."""
BLIND_MM = 10.0
"""Blind side of a half cylinder, from the fixing screw's centre [mm]; DIN 18252 and EN 1303 as quoted in trade."""

_TOUCH_MM = 1e-9
"""Lengths closer than this are equal."""


_Part = Annotated[str, Said("Catalogue number, or a name.")]
_KeySide = Annotated[Positive, Said("Key side.")]
_InsideOrBlind = Annotated[Positive, Said("Inside, or the blind side of a half cylinder.")]


@dataclass(frozen=True)
class EuroSize:
    """A cylinder by its two lengths from the fixing screw's centre."""

    part: _Part
    a_mm: _KeySide
    b_mm: _InsideOrBlind


@dataclass(frozen=True)
class EuroSteps:
    """Sizes in which either side is made."""

    shortest_mm: Annotated[Positive, Said("Shortest side.")]
    step_mm: Annotated[float, Within(at_least=0.01), Said("From one size to the next.")]
    longest_mm: Annotated[float, Said("Longest side.")]


@dataclass(frozen=True)
class EuroFit:
    """A size that suits."""

    part: _Part
    a_mm: _KeySide
    b_mm: _InsideOrBlind
    key_projection_mm: Annotated[float, Said("Past the key side's trim.")]
    inside_projection_mm: Annotated[
        float, Said("Past the inside trim; of a half cylinder past the leaf's face, where it is not above 0.")
    ]


@dataclass(frozen=True)
class EuroRefusal:
    """A size that does not suit, with what it is off by."""

    part: _Part
    side: Annotated[str, Said("The side that is further off.", choices=("key", "inside"))]
    off_mm: Annotated[float, Said("Too short (negative) or too long (positive) on that side.")]
    reason: Annotated[str, Said("A sentence on it.")]


@dataclass(frozen=True)
class EuroResult:
    """What is needed, what suits and what does not."""

    key_needed_mm: Annotated[float, Said("Fixing screw's centre to the key side's trim.")]
    inside_needed_mm: Annotated[
        float, Said("Fixing screw's centre to the inside trim; for a half cylinder to the leaf's face.")
    ]

    @property
    def best(self) -> Annotated[EuroFit | None, Said()]:
        """First of the fits."""
        return self.fits[0] if self.fits else None

    fits: Annotated[tuple[EuroFit, ...], Said("Sizes that suit, best first.")]
    refused: Annotated[tuple[EuroRefusal, ...], Said("Sizes that do not, nearest first.")]


def euro_halves(
    leaf_mm: Annotated[Positive, Said("Leaf thickness.")],
    key_trim_mm: Annotated[NotNegative, Said("What stands on the key face around the cylinder.")],
    inside_trim_mm: Annotated[
        NotNegative,
        Said("The same on the inside face.", default=0.0, unless="half", earlier="secured_trim_mm"),
    ],
    sizes: Sequence[EuroSize] | EuroSteps,
    *,
    screw_offset_mm: Annotated[
        float, Said("Fixing screw's centre from the leaf's middle, toward the key face; within the leaf.")
    ] = 0.0,
    key_limit_mm: Annotated[NotNegative, Said("Most projection past the key side's trim.")] = KEY_LIMIT_MM,
    inside_limit_mm: Annotated[
        NotNegative | None,
        Said("Most projection past the inside trim.", shown="no limit", earlier="secured_limit_mm"),
    ] = None,
    half: Annotated[bool, Said("Half cylinder that ends blind inside the leaf; its b is the blind side.")] = False,
    blind_mm: Annotated[Positive, Said("Blind side of a half cylinder made in steps.")] = BLIND_MM,
) -> EuroResult:
    """Choose the euro-profile size whose halves end at or just past their trims, with the cam central in the lock.

    Sizes are those in the catalogue, or the steps in which each side is made.

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
    check_arguments(euro_halves, locals())
    if not abs(screw_offset_mm) < leaf_mm / 2:
        raise InputError("screw_offset_mm", f"puts the fixing screw outside the leaf of {leaf_mm:g} mm")
    # From the fixing screw and not from the leaf's middle: sizes are counted from the screw (DIN 18252 as quoted in
    # trade), so that the cam stands central in the lock.
    key_needed = leaf_mm / 2 - screw_offset_mm + key_trim_mm
    # A half cylinder does not come out on the inside, so that the trim there is nothing to it.
    inside_needed = leaf_mm / 2 + screw_offset_mm + (0.0 if half else inside_trim_mm)
    if isinstance(sizes, EuroSteps):
        sizes = (_stepped(sizes, key_needed, inside_needed, blind_mm if half else None),)
    fits: list[EuroFit] = []
    refused: list[EuroRefusal] = []
    for i, size in enumerate(sizes):
        check(size, f"sizes[{i}]")
        key_gap, inside_gap = _clean(size.a_mm - key_needed), _clean(size.b_mm - inside_needed)
        key_off = _off(key_gap, key_limit_mm)
        # a blind end only has to stay within the leaf
        inside_off = max(0.0, inside_gap) if half else _off(inside_gap, inside_limit_mm)
        if key_off == 0 and inside_off == 0:
            fits.append(EuroFit(size.part, size.a_mm, size.b_mm, key_gap, inside_gap))
        else:
            refused.append(_refusal(size.part, key_off, inside_off))
    # The key side first: there insurance practice limits what stands proud. Rounded, since equals differ in their
    # last bits.
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
    # Less a touch, or 40.0000000001 mm by rounding would order the next size, 5 mm longer.
    up = ceil((needed_mm - steps.shortest_mm - _TOUCH_MM) / steps.step_mm)
    # A longest size that is no whole number of steps away is not made; the last step before it is.
    most = int((steps.longest_mm - steps.shortest_mm + _TOUCH_MM) // steps.step_mm)
    return float(steps.shortest_mm + min(max(up, 0), most) * steps.step_mm)


def _clean(value_mm: float) -> float:
    """Length with what rounding left of a zero removed."""
    return 0.0 if abs(value_mm) < _TOUCH_MM else value_mm


def _off(gap_mm: float, limit_mm: float | None) -> float:
    """How much too short (negative) or too long (positive) a side is."""
    # Too short counts on either side whatever the limit: a recessed end cannot be reached by its key, nor held by its
    # trim.
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
    check(steps, "steps")
    check_number(steps.longest_mm, "steps.longest_mm", at_least=steps.shortest_mm)
    a = half_length_mm(key_mm, steps)
    b = half_length_mm(inside_mm, steps) if blind_mm is None else blind_mm
    return EuroSize(f"{a:g}/{b:g}", a, b)


def _euro_halves(
    given: Annotated[Values, FieldsOf(euro_halves)],
    sizes: Annotated[Sequence[EuroSize] | None, Said("Sizes in the catalogue; or give steps.", unless="steps")],
    steps: Annotated[EuroSteps | None, Said("Sizes in which either side is made.")],
) -> EuroResult:
    if sizes is not None and steps is not None:
        raise InputError("steps", "is given beside sizes; give one of them")
    return euro_halves(sizes=sizes or steps or (), **given)


EURO_HALVES = Calculator(
    name="euro-halves",
    title="Euro-profile cylinder halves",
    basis="DIN 18252 / EN 1303 as quoted in trade; 3 mm projection by insurance practice",
    work=_euro_halves,
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
)
