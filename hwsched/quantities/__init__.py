"""Lengths and other quantities at the border: what people type and spreadsheets hold, and how values are shown.

Here belong parsing and formatting. Inside the program lengths are millimetres, angles degrees, electrical values SI,
all plain floats; the unit of every other kind stands in `DIMENSIONS`.
"""

from hwsched.quantities.columns import suspicious_in_column
from hwsched.quantities.dimensions import DIMENSIONS, Dimension, DimensionFacts
from hwsched.quantities.gauge import Gauge, awg_area_mm2, parse_gauge
from hwsched.quantities.length_format import (
    LENGTH_STYLES,
    LengthStyle,
    format_feet_inches,
    format_length,
    shown_steps,
)
from hwsched.quantities.lengths import ACCEPTED_LENGTHS, parse_length, read_length
from hwsched.quantities.physical import (
    Supply,
    Voltage,
    convert_quantity,
    format_quantity,
    parse_quantity,
    parse_voltage,
)
from hwsched.quantities.readings import (
    BARE_UNITS,
    MM_PER_FOOT,
    MM_PER_INCH,
    SHORTHAND,
    BareUnit,
    LengthError,
    One,
    Pair,
    PairSize,
    QuantityError,
    Range,
    Reading,
    ReadingError,
    Size,
)
from hwsched.quantities.run_lengths import METRES_PER_FOOT, in_run_unit, run_unit
from hwsched.quantities.shorthand import side_in_digits
from hwsched.quantities.typography import plain_text

__all__ = [
    "ACCEPTED_LENGTHS",
    "BARE_UNITS",
    "DIMENSIONS",
    "LENGTH_STYLES",
    "METRES_PER_FOOT",
    "MM_PER_FOOT",
    "MM_PER_INCH",
    "SHORTHAND",
    "BareUnit",
    "Dimension",
    "DimensionFacts",
    "Gauge",
    "LengthError",
    "LengthStyle",
    "One",
    "Pair",
    "PairSize",
    "QuantityError",
    "Range",
    "Reading",
    "ReadingError",
    "Size",
    "Supply",
    "Voltage",
    "awg_area_mm2",
    "convert_quantity",
    "format_feet_inches",
    "format_length",
    "format_quantity",
    "in_run_unit",
    "parse_gauge",
    "parse_length",
    "parse_quantity",
    "parse_voltage",
    "plain_text",
    "read_length",
    "run_unit",
    "shown_steps",
    "side_in_digits",
    "suspicious_in_column",
]
