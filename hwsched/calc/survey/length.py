"""Calculator: a length as people type it and spreadsheets hold it, in millimetres.

The reading itself stands in `hwsched.quantities`; here only its input and output as plain objects.
"""

from collections.abc import Mapping
from typing import Any, cast

from hwsched.calc.calculator import Calculator, Field, InputError, Reader
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


def _run(data: Mapping[str, Any]) -> dict[str, Any]:
    reader = Reader(data)
    value = reader.raw("text")
    if not isinstance(value, str | int | float) or isinstance(value, bool):
        raise InputError(reader.at("text"), f"must be text or a number, got {value!r}")
    unit = reader.raw("bare_unit", None)
    if unit is not None:
        unit = reader.choice("bare_unit", BARE_UNITS)
    try:
        return _as_object(read_length(value, cast(BareUnit | None, unit)))
    except LengthError as error:
        raise InputError(reader.at("text"), error.message) from None


def _as_object(reading: Reading) -> dict[str, Any]:
    match reading:
        case One(mm=mm):
            return {"mm": mm}
        case Size(width_mm=width, height_mm=height):
            return {"width_mm": width, "height_mm": height}
        case Pair(leaf_mm=leaf, leaves=leaves):
            return {"mm": leaf, "leaves": leaves}
        case PairSize(width_mm=width, height_mm=height, leaves=leaves):
            return {"width_mm": width, "height_mm": height, "leaves": leaves}
        case Range(low_mm=low, high_mm=high):
            return {"low_mm": low, "high_mm": high}


LENGTH = Calculator(
    name="length",
    title="Length, size or range as typed",
    basis="inch of 25.4 mm (international agreement of 1959); spellings of door schedules by common practice",
    inputs=(
        Field("text", "text", "Length as typed, such as 3'-0\", 1 3/4, 0,91 m, 3'-0\" x 7'-0\", or a number."),
        Field(
            "bare_unit",
            "choice",
            "Unit of a number that carries none; without it such a number is refused.",
            default="null",
            choices=BARE_UNITS,
        ),
    ),
    outputs=(
        Field("mm", "number", "The length; of one leaf where leaves is given [mm]."),
        Field("width_mm", "number", "Width of a size; of one leaf where leaves is given [mm]."),
        Field("height_mm", "number", "Height of a size [mm]."),
        Field("leaves", "integer", "Number of leaves, for a pair."),
        Field("low_mm", "number", "Lower end of a range [mm]."),
        Field("high_mm", "number", "Upper end of a range [mm]."),
    ),
    example={"text": "3'-0 1/2\"", "bare_unit": None},
    run=_run,
)
