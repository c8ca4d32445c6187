"""The kinds of quantity besides length: their unit inside the program, and how people spell their units.

Here belongs the trade's spelling of units, which is freer with capitals than the standard's. Conversion factors stand
in the unit registry alone.
"""

from dataclasses import dataclass
from typing import Final, Literal

Dimension = Literal[
    "mass", "voltage", "current", "charge", "power", "resistance", "temperature", "time", "force", "angle"
]


@dataclass(frozen=True, slots=True)
class DimensionFacts:
    """One kind of quantity."""

    unit: str
    """Unit inside the program, in which values are returned."""
    registry_unit: str
    """The same by its name in the unit registry."""
    accepted: str
    """Units for messages, the usual ones first."""
    example: str
    spellings: dict[str, str]
    """Spelling in lower case to name in the registry."""
    least: float | None = 0.0
    """Least value that can be, in `unit`; None where there is none."""
    only_listed: bool = False
    """No unit but the spellings listed: the registry takes an angle for a plain number."""


def _spelled(**names: str) -> dict[str, str]:
    return {spelling: name for name, spellings in names.items() for spelling in spellings.split()}


DIMENSIONS: Final[dict[Dimension, DimensionFacts]] = {
    "mass": DimensionFacts(
        "kg", "kilogram", "kg, g, lb, oz", "45 kg",
        _spelled(kilogram="kg kgs kilo kilos", gram="g", pound="lb lbs lb. lbs. #", ounce="oz oz."),
    ),
    "voltage": DimensionFacts(
        "V", "volt", "V, mV, VDC, VAC", "12 V DC",
        # MV is typed for mV; megavolts are on no door. Likewise below.
        _spelled(volt="v volt volts", millivolt="mv millivolt millivolts", kilovolt="kv"),
        least=None,
    ),
    "current": DimensionFacts(
        "A", "ampere", "A, mA, µA", "350 mA",
        _spelled(
            ampere="a amp amps ampere amperes",
            milliampere="ma milliamp milliamps milliampere milliamperes",
            microampere="µa ua microamp microamps",
        ),
    ),
    # Battery makers and the trade count in ampere hours; the coulomb of the SI is read, but never shown.
    "charge": DimensionFacts(
        "Ah", "ampere_hour", "Ah, mAh, C", "2600 mAh",
        {**_spelled(ampere_hour="ah a·h amp-hour amp-hours", coulomb="c coulomb coulombs"), "mah": "milliampere_hour"},
    ),
    "power": DimensionFacts(
        "W", "watt", "W, mW, kW, VA", "96 W",
        _spelled(watt="w watt watts", milliwatt="mw", kilowatt="kw", volt_ampere="va"),
    ),
    "resistance": DimensionFacts(
        "Ω", "ohm", "Ω, mΩ, kΩ", "24 Ω",
        _spelled(ohm="ω ohm ohms", kiloohm="kω kohm kohms"),
    ),
    "temperature": DimensionFacts(
        "°C", "degree_Celsius", "°C, °F, K", "20 °C",
        {
            **_spelled(
                degree_Celsius="°c c celsius degc deg.c",
                degree_Fahrenheit="°f f fahrenheit degf deg.f",
                kelvin="k kelvin",
            ),
            "deg c": "degree_Celsius", "deg f": "degree_Fahrenheit", "degrees c": "degree_Celsius",
            "degrees f": "degree_Fahrenheit", "° c": "degree_Celsius", "° f": "degree_Fahrenheit",
        },
        least=-273.15,
    ),
    "time": DimensionFacts(
        "s", "second", "s, ms, min, h, d, years", "5 s",
        _spelled(
            second="s sec secs sec. second seconds", millisecond="ms msec", minute="min mins min. minute minutes",
            hour="h hr hrs hr. hrs. hour hours", day="d day days", week="wk wks week weeks",
            year="yr yrs yr. year years",
        ),
    ),
    # Holding force is spoken of in pounds: 1200 lb of a magnetic lock is a force.
    "force": DimensionFacts(
        "N", "newton", "N, kN, lbf", "50 N",
        _spelled(newton="n newton newtons", kilonewton="kn", pound_force="lbf lbsf lb lbs lb. lbs. pound pounds"),
    ),
    "angle": DimensionFacts(
        "°", "degree", "°, deg, rad", "45°",
        _spelled(degree="° deg deg. degs degree degrees", radian="rad radian radians"),
        least=None, only_listed=True,
    ),
}  # fmt: skip
