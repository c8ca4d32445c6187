"""Tailpiece of a rim cylinder: is it long enough to reach into the case, and what is to be cut off.

Here belongs the length through the leaf. Whether form, throw and hand of a tailpiece match the case is a rule.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from math import floor
from typing import Any

from hwsched.calc.calculator import Calculator, Field, InputError, Reader, check_number

BREAK_OFF_MM = 25.4 / 8
"""Distance of the notches at which a tailpiece is snapped off [mm]; from memory, unverified."""

_TOUCH_MM = 1e-9
"""Lengths closer than this are equal."""


@dataclass(frozen=True)
class TailpieceResult:
    """Whether a tailpiece reaches, and what is to be cut off it."""

    fits: bool
    needed_mm: float
    """Shortest tailpiece that engages as much as it must [mm]."""
    longest_mm: float | None
    """Longest that does not bottom in the case [mm]; None where its depth is not given."""
    method: str | None
    """"none" (as supplied), "snap", "saw", or None where it is too short."""
    pieces_off: int
    """Pieces to snap off."""
    cut_off_mm: float
    left_mm: float
    engagement_mm: float
    """How far what is left reaches into the case [mm]; negative when it ends in the leaf."""
    short_mm: float
    """What it lacks [mm], 0 where it fits."""
    note: str


def tailpiece(
    leaf_mm: float,
    cylinder_back_mm: float,
    tailpiece_mm: float,
    minimum_engagement_mm: float,
    *,
    maximum_engagement_mm: float | None = None,
    case_gap_mm: float = 0.0,
    break_off_mm: float | None = BREAK_OFF_MM,
) -> TailpieceResult:
    """Say whether a rim cylinder's tailpiece reaches through the leaf into the case, and what to cut off.

    Parameters
    ----------
    leaf_mm : float
        Leaf thickness [mm], more than 0.
    cylinder_back_mm : float
        Cylinder's back from the key face, inward [mm]; negative when it stands outside.
    tailpiece_mm : float
        Tailpiece as supplied, from the cylinder's back [mm], more than 0.
    minimum_engagement_mm : float
        How far it must reach into the case [mm], more than 0.
    maximum_engagement_mm : float, optional
        How far it may reach before it bottoms [mm]; None where the case's depth is not known.
    case_gap_mm : float
        Mounting plate or spacer between the leaf's inside face and the case [mm], 0 or more.
    break_off_mm : float, optional
        Distance of the notches [mm], counted from the tailpiece's end; None for a tailpiece that is sawn.

    Returns
    -------
    TailpieceResult
        Snapped as far as the least engagement allows. Sawn where the notches cannot keep it from bottoming (to the
        middle of what is allowed), and where it has none and the case's depth is not known (to the least).

    Raises
    ------
    InputError
        Names the value that cannot be taken.

    Notes
    -----
    ``needed = leaf + gap - cylinder back + engagement``. Source: trade practice, from memory, unverified.

    Examples
    --------
    >>> inch = 25.4
    >>> got = tailpiece(1.75 * inch, 0.25 * inch, 2.5 * inch, 0.375 * inch)
    >>> round(got.needed_mm / inch, 6), got.pieces_off, round(got.left_mm / inch, 6)
    (1.875, 5, 1.875)
    """
    _check(
        leaf_mm, cylinder_back_mm, tailpiece_mm, minimum_engagement_mm,
        maximum_engagement_mm, case_gap_mm, break_off_mm,
    )  # fmt: skip
    reach = leaf_mm + case_gap_mm - cylinder_back_mm
    needed = reach + minimum_engagement_mm
    longest = None if maximum_engagement_mm is None else reach + maximum_engagement_mm
    if tailpiece_mm < needed - _TOUCH_MM:
        short = needed - tailpiece_mm
        return TailpieceResult(
            False, needed, longest, None, 0, 0.0, tailpiece_mm, tailpiece_mm - reach, short,
            f"The tailpiece is {short:.2f} mm too short.",
        )  # fmt: skip
    pieces = floor((tailpiece_mm - needed + _TOUCH_MM) / break_off_mm) if break_off_mm else 0
    off = pieces * break_off_mm if break_off_mm else 0.0
    method, note = "none", "Use as supplied."
    if pieces:
        method, note = "snap", f"Snap off {pieces} at the notches."
    if longest is not None and tailpiece_mm - off > longest + _TOUCH_MM:
        pieces, off, method = 0, tailpiece_mm - (needed + longest) / 2, "saw"
        note = f"Saw off to between {needed:.2f} and {longest:.2f} mm."
    elif longest is None and break_off_mm is None and tailpiece_mm > needed + _TOUCH_MM:
        off, method, note = tailpiece_mm - needed, "saw", f"Saw off to {needed:.2f} mm."
    left = tailpiece_mm - off
    return TailpieceResult(True, needed, longest, method, pieces, off, left, left - reach, 0.0, note)


def _check(
    leaf_mm: float,
    cylinder_back_mm: float,
    tailpiece_mm: float,
    minimum_engagement_mm: float,
    maximum_engagement_mm: float | None,
    case_gap_mm: float,
    break_off_mm: float | None,
) -> None:
    check_number(leaf_mm, "leaf_mm", above=0)
    check_number(case_gap_mm, "case_gap_mm", at_least=0)
    check_number(cylinder_back_mm, "cylinder_back_mm")
    if cylinder_back_mm > leaf_mm + case_gap_mm + _TOUCH_MM:
        raise InputError(
            "cylinder_back_mm", f"reaches through the leaf into the case: more than {leaf_mm + case_gap_mm:g}"
        )
    check_number(tailpiece_mm, "tailpiece_mm", above=0)
    check_number(minimum_engagement_mm, "minimum_engagement_mm", above=0)
    if maximum_engagement_mm is not None:
        check_number(maximum_engagement_mm, "maximum_engagement_mm", at_least=minimum_engagement_mm - _TOUCH_MM)
    if break_off_mm is not None:
        check_number(break_off_mm, "break_off_mm", at_least=0.01)


def _run(data: Mapping[str, Any]) -> dict[str, Any]:
    reader = Reader(data)
    # a break-off step of null is a tailpiece without notches; absent, it is the usual step
    step = reader.optional_number("break_off_mm") if "break_off_mm" in data else BREAK_OFF_MM
    result = tailpiece(
        reader.number("leaf_mm"),
        reader.number("cylinder_back_mm"),
        reader.number("tailpiece_mm"),
        reader.number("minimum_engagement_mm"),
        maximum_engagement_mm=reader.optional_number("maximum_engagement_mm"),
        case_gap_mm=reader.number("case_gap_mm", 0.0),
        break_off_mm=step,
    )
    return {
        "fits": result.fits,
        "needed_mm": result.needed_mm,
        "longest_mm": result.longest_mm,
        "method": result.method,
        "pieces_off": result.pieces_off,
        "cut_off_mm": result.cut_off_mm,
        "left_mm": result.left_mm,
        "engagement_mm": result.engagement_mm,
        "short_mm": result.short_mm,
        "note": result.note,
    }


TAILPIECE = Calculator(
    name="tailpiece",
    title="Tailpiece of a rim cylinder",
    basis="trade practice, from memory, unverified",
    inputs=(
        Field("leaf_mm", "number", "Leaf thickness."),
        Field("cylinder_back_mm", "number", "Cylinder's back from the key face, inward."),
        Field("tailpiece_mm", "number", "Tailpiece as supplied, from the cylinder's back."),
        Field("minimum_engagement_mm", "number", "How far it must reach into the case."),
        Field("maximum_engagement_mm", "number", "How far it may reach before it bottoms.", "not known"),
        Field("case_gap_mm", "number", "Plate or spacer between the leaf and the case.", "0"),
        Field("break_off_mm", "number", "Distance of the notches from the end; null without notches.", "3.175"),
    ),
    outputs=(
        Field("fits", "flag", "It reaches, and may be cut so that it does not bottom."),
        Field("needed_mm", "number", "Shortest tailpiece that does."),
        Field("longest_mm", "number", "Longest that does not bottom, or null."),
        Field("method", "choice", "What is done to it; null when it is too short.", "", ("none", "snap", "saw")),
        Field("pieces_off", "integer", "Pieces to snap off."),
        Field("cut_off_mm", "number", "Length cut off."),
        Field("left_mm", "number", "Length left."),
        Field("engagement_mm", "number", "How far that reaches into the case."),
        Field("short_mm", "number", "What it lacks."),
        Field("note", "text", "What to do."),
    ),
    example={
        "leaf_mm": 44.45,
        "cylinder_back_mm": 6.35,
        "tailpiece_mm": 63.5,
        "minimum_engagement_mm": 9.525,
        "maximum_engagement_mm": 15,
    },
    run=_run,
)
