"""Calculator: a length as people type it and spreadsheets hold it, in millimetres.

The reading itself stands in `hwsched.quantities`; here only its input and output as plain objects.
"""

from dataclasses import dataclass
from typing import Annotated, cast

from msgspec import UNSET, UnsetType

from hwsched.calc.calculator import Calculator, InputError, Said
from hwsched.quantities import (
    BARE_UNITS,
    BareUnit,
    LengthError,
    One,
    Pair,
    PairSize,
    Range,
    Reading,
    Size,
    read_length,
)


@dataclass(frozen=True)
class _Answer:
    mm: Annotated[float | UnsetType, Said("The length; of one leaf where leaves is given [mm].")] = UNSET
    width_mm: Annotated[float | UnsetType, Said("Width of a size; of one leaf where leaves is given [mm].")] = UNSET
    height_mm: Annotated[float | UnsetType, Said("Height of a size [mm].")] = UNSET
    leaves: Annotated[int | UnsetType, Said("Number of leaves, for a pair.")] = UNSET
    low_mm: Annotated[float | UnsetType, Said("Lower end of a range [mm].")] = UNSET
    high_mm: Annotated[float | UnsetType, Said("Upper end of a range [mm].")] = UNSET


def _length(
    text: Annotated[str | float, Said("Length as typed, such as 3'-0\", 1 3/4, 0,91 m, 3'-0\" x 7'-0\", or a number.")],
    bare_unit: Annotated[
        str | None,
        Said("Unit of a number that carries none; without it such a number is refused.", choices=BARE_UNITS),
    ],
) -> _Answer:
    try:
        return _as_answer(read_length(text, cast(BareUnit | None, bare_unit)))
    except LengthError as error:
        raise InputError("text", error.message) from None


def _as_answer(reading: Reading) -> _Answer:
    match reading:
        case One(mm=mm):
            return _Answer(mm)
        case Size(width_mm=width, height_mm=height):
            return _Answer(width_mm=width, height_mm=height)
        case Pair(leaf_mm=leaf, leaves=leaves):
            return _Answer(leaf, leaves=leaves)
        case PairSize(width_mm=width, height_mm=height, leaves=leaves):
            return _Answer(width_mm=width, height_mm=height, leaves=leaves)
        case Range(low_mm=low, high_mm=high):
            return _Answer(low_mm=low, high_mm=high)


LENGTH = Calculator(
    name="length",
    title="Length, size or range as typed",
    basis="inch of 25.4 mm (international agreement of 1959); spellings of door schedules by common practice",
    work=_length,
    example={"text": "3'-0 1/2\"", "bare_unit": None},
)
