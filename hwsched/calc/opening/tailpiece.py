"""Tailpiece of a rim cylinder: is it long enough to reach into the case, and what is to be cut off.

Here belongs the length through the leaf. Whether form, throw and hand of a tailpiece match the case is a rule.
"""

from dataclasses import dataclass
from math import floor
from typing import Annotated

from hwsched.calc.calculator import Calculator, InputError, Said, Within, check_arguments, check_number
from hwsched.calc.limits import NotNegative, Positive

BREAK_OFF_MM = 25.4 / 8
"""Distance of the notches at which a tailpiece is snapped off [mm]; from memory, unverified."""

_TOUCH_MM = 1e-9
"""Lengths closer than this are equal."""


@dataclass(frozen=True)
class TailpieceResult:
    """Whether a tailpiece reaches, and what is to be cut off it."""

    fits: Annotated[
        bool,
        Said(
            "It reaches, and may be cut so that it does not bottom.",
            no="It does not reach, or cannot be cut so that it does not bottom.",
        ),
    ]
    needed_mm: Annotated[float, Said("Shortest tailpiece that engages as much as it must.")]
    longest_mm: Annotated[
        float | None, Said("Longest that does not bottom in the case; null where its depth is not given.")
    ]
    method: Annotated[
        str | None,
        Said("What is done to it, none for as supplied; null where it is too short.", choices=("none", "snap", "saw")),
    ]
    pieces_off: Annotated[int, Said("Pieces to snap off.")]
    cut_off_mm: Annotated[float, Said("Length cut off.")]
    left_mm: Annotated[float, Said("Length left.")]
    engagement_mm: Annotated[
        float, Said("How far what is left reaches into the case; negative when it ends in the leaf.")
    ]
    short_mm: Annotated[float, Said("What it lacks, 0 where it fits.")]
    note: Annotated[str, Said("What to do.")]


def tailpiece(
    leaf_mm: Annotated[Positive, Said("Leaf thickness.")],
    cylinder_back_mm: Annotated[
        float, Said("Cylinder's back from the key face, inward; negative when it stands outside.")
    ],
    tailpiece_mm: Annotated[Positive, Said("Tailpiece as supplied, from the cylinder's back.")],
    minimum_engagement_mm: Annotated[Positive, Said("How far it must reach into the case.")],
    *,
    maximum_engagement_mm: Annotated[
        float | None, Said("How far it may reach before it bottoms.", shown="not known")
    ] = None,
    case_gap_mm: Annotated[
        NotNegative, Said("Mounting plate or spacer between the leaf's inside face and the case.")
    ] = 0.0,
    break_off_mm: Annotated[
        float | None,
        Within(at_least=0.01),
        Said("Distance of the notches, counted from the tailpiece's end; null for one that is sawn."),
    ] = BREAK_OFF_MM,
) -> TailpieceResult:
    """Say whether a rim cylinder's tailpiece reaches through the leaf into the case, and what to cut off.

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
    check_arguments(tailpiece, locals())
    if cylinder_back_mm > leaf_mm + case_gap_mm + _TOUCH_MM:
        raise InputError(
            "cylinder_back_mm", f"reaches through the leaf into the case: more than {leaf_mm + case_gap_mm:g}"
        )
    if maximum_engagement_mm is not None:
        check_number(maximum_engagement_mm, "maximum_engagement_mm", at_least=minimum_engagement_mm - _TOUCH_MM)
    reach = leaf_mm + case_gap_mm - cylinder_back_mm
    needed = reach + minimum_engagement_mm
    longest = None if maximum_engagement_mm is None else reach + maximum_engagement_mm
    # It cannot be lengthened: nothing that is cut off cures this one.
    if tailpiece_mm < needed - _TOUCH_MM:
        short = needed - tailpiece_mm
        return TailpieceResult(
            False, needed, longest, None, 0, 0.0, tailpiece_mm, tailpiece_mm - reach, short,
            f"The tailpiece is {short:.2f} mm too short.",
        )  # fmt: skip
    # Down, never to the nearest: one notch too many and the tailpiece is scrap.
    pieces = floor((tailpiece_mm - needed + _TOUCH_MM) / break_off_mm) if break_off_mm else 0
    off = pieces * break_off_mm if break_off_mm else 0.0
    method, note = "none", "Use as supplied."
    if pieces:
        method, note = "snap", f"Snap off {pieces} at the notches."
    # No notch lies between what reaches and what bottoms, so that it is sawn.
    if longest is not None and tailpiece_mm - off > longest + _TOUCH_MM:
        # The middle leaves the saw cut the same room on either side.
        pieces, off, method = 0, tailpiece_mm - (needed + longest) / 2, "saw"
        note = f"Saw off to between {needed:.2f} and {longest:.2f} mm."
    elif longest is None and break_off_mm is None and tailpiece_mm > needed + _TOUCH_MM:
        off, method, note = tailpiece_mm - needed, "saw", f"Saw off to {needed:.2f} mm."
    left = tailpiece_mm - off
    return TailpieceResult(True, needed, longest, method, pieces, off, left, left - reach, 0.0, note)


TAILPIECE = Calculator(
    name="tailpiece",
    title="Tailpiece of a rim cylinder",
    basis="trade practice, from memory, unverified",
    work=tailpiece,
    example={
        "leaf_mm": 44.45,
        "cylinder_back_mm": 6.35,
        "tailpiece_mm": 63.5,
        "minimum_engagement_mm": 9.525,
        "maximum_engagement_mm": 15,
    },
)
