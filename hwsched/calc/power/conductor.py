"""Resistance of copper conductors, and the voltage that a two-wire run costs.

Here belong one conductor and one run. Circuits of many runs stand in `circuit`; reading a wire size in `quantities`.
"""

from dataclasses import dataclass
from functools import lru_cache
from typing import Annotated, Final

from hwsched.calc.calculator import Calculator, InputError, Said, Within, check_arguments, check_number
from hwsched.calc.tables import row, rows
from hwsched.quantities import Gauge, QuantityError, parse_gauge

STRANDINGS: Final = ("solid", "stranded")
COLDEST_C: Final = -100.0
HOTTEST_C: Final = 250.0
"""Conductor temperatures for which the straight line of the resistance is used [°C]."""
Temperature = Annotated[
    float, Within(at_least=COLDEST_C, at_most=HOTTEST_C), Said("Temperature of the conductors [°C].")
]
GaugeText = Annotated[str, Said("Size of one conductor, such as 18 AWG (40 to 4/0) or 1.0 mm2.")]
Stranding = Annotated[str, Said("One solid wire, or several strands.", choices=STRANDINGS)]
THINNEST_MM2: Final = 0.001
THICKEST_MM2: Final = 2500.0
"""Areas beyond these are slips of the pen."""
M_PER_FOOT: Final = 0.3048


@dataclass(frozen=True, slots=True)
class Conductor:
    """One conductor at one temperature."""

    area_mm2: Annotated[float, Said("Cross-section [mm²].")]
    resistance_ohm_per_km: Annotated[float, Said("Direct-current resistance of one conductor [ohm/km].")]
    temperature_c: float


def gauge_of(text: str) -> Gauge:
    """Size of a conductor as typed; raises InputError for what is none."""
    try:
        return parse_gauge(text)
    except QuantityError as error:
        raise InputError("gauge", error.message) from None


@lru_cache(maxsize=4096)
def conductor(gauge: GaugeText, stranding: Stranding, temperature_c: Temperature) -> Conductor:
    """Direct-current resistance of a copper conductor from its size.

    Raises
    ------
    InputError
        Where the gauge is unknown, the stranding is another word, or the temperature is outside its limits.

    Notes
    -----
    R' = rho / A · (1 + alpha · (t - 20)) · s, with rho = 1/58 ohm·mm²/m at 20 °C and alpha = 0.00393 (IEC 60028), s =
    1.02 for stranded wire (common practice; NFPA 70 Chapter 9 Table 8 has 1.020 to 1.023). Within 0.6 % of that table.

    Examples
    --------
    >>> c = conductor("18 AWG", "solid", 20)
    >>> round(c.area_mm2, 4), round(c.resistance_ohm_per_km, 2)
    (0.823, 20.95)
    """
    check_arguments(conductor, locals())
    area_mm2 = gauge_of(gauge).area_mm2
    if not THINNEST_MM2 <= area_mm2 <= THICKEST_MM2:
        raise InputError("gauge", f"must be from {THINNEST_MM2:g} to {THICKEST_MM2:g} mm², got {area_mm2:g}")
    # From the formula and not from NEC Chapter 9 Table 8: that begins at 18 AWG, so that 20, 22 and 24 AWG are not in
    # it.
    cold_ohm_per_km = 1000.0 * _constant("resistivity_20c") / area_mm2
    # A resistance without its temperature says nothing: published tables differ by 20 °C, 25 °C and 75 °C.
    warm = 1.0 + _constant("temperature_coefficient") * (temperature_c - 20.0)
    # Strands are laid round each other and so are longer than the cable; 2 % by common practice, as Table 8 has it.
    lay = _constant("stranding_factor") if stranding == "stranded" else 1.0
    return Conductor(area_mm2, cold_ohm_per_km * warm * lay, temperature_c)


def loop_ohm(length_m: float, ohm_per_km: float, conductors_in_parallel: int = 1) -> float:
    """Resistance of a two-wire run, out and back.

    Parameters
    ----------
    length_m : float
        One way [m], above 0.
    ohm_per_km : float
        Of one conductor [ohm/km].
    conductors_in_parallel : int
        Of each of the two wires, 1 or more.

    Examples
    --------
    >>> round(loop_ohm(150 * 0.3048, 7.95 / 0.3048), 3)
    2.385
    """
    # Out and back: the current returns by the second wire.
    return 2.0 * length_m * ohm_per_km / 1000.0 / conductors_in_parallel


def drop_v(length_m: float, current_a: float, ohm_per_km: float, conductors_in_parallel: int = 1) -> float:
    """Voltage that a constant current costs on a two-wire run.

    Parameters
    ----------
    length_m : float
        One way [m].
    current_a : float
        Peak rather than holding current where the load draws more when it starts [A].
    ohm_per_km : float
        Of one conductor at its highest temperature [ohm/km].
    conductors_in_parallel : int
        Of each of the two wires.

    Returns
    -------
    float
        Vd = 2 · L · I · R' [V].

    Examples
    --------
    >>> round(drop_v(30, 0.35, 36.0), 3)
    0.756
    """
    return current_a * loop_ohm(length_m, ohm_per_km, conductors_in_parallel)


def longest_run_m(source_v: float, minimum_v: float, current_a: float, ohm_per_km: float) -> float:
    """Longest two-wire run, one way, at whose end a constant current still finds its minimum voltage.

    Parameters
    ----------
    source_v : float
        Lowest voltage of the source [V].
    minimum_v : float
        Of the load, below source_v [V].
    current_a : float
        Above 0 [A].
    ohm_per_km : float
        Of one conductor at its highest temperature [ohm/km].

    Returns
    -------
    float
        L = (Vs - Vmin) / (2 · I · R') [m].

    Raises
    ------
    InputError
        Where nothing is left to drop, or nothing is drawn.

    Examples
    --------
    >>> round(longest_run_m(20.0, 16.0, 2.0, 2.0 / 0.3048) / 0.3048, 6)
    500.0
    """
    check_number(current_a, "current_a", above=0)
    check_number(ohm_per_km, "ohm_per_km", above=0)
    if minimum_v >= source_v:
        raise InputError("minimum_v", f"must be below the source's {source_v:g} V, got {minimum_v:g}")
    return (source_v - minimum_v) / (2.0 * current_a * ohm_per_km / 1000.0)


def published_ohm_per_km(gauge: str, stranding: str, coated: bool = False) -> float | None:
    """Resistance at 75 °C by NFPA 70 Chapter 9 Table 8, or None where the copy we have does not hold the size.

    The table begins at 18 AWG: smaller wire has no value in it.

    Examples
    --------
    >>> round(published_ohm_per_km("18 AWG", "stranded"), 2)
    26.08
    >>> published_ohm_per_km("22 AWG", "solid") is None
    True
    """
    size = gauge_of(gauge)
    for each in rows("nec_table_8"):
        if (
            each.text("gauge") == str(size)
            and (each.text("strands") == "1") == (stranding == "solid")
            and (each.text("coating") == "coated") == coated
        ):
            return each.number("ohm_per_kft") / M_PER_FOOT
    return None


def highest_allowed_ohm_per_km(area_mm2: float, flexible: bool = False, coated: bool = False) -> float | None:
    """Highest resistance at 20 °C that IEC 60228 allows a copper conductor, or None where the size is not listed.

    Parameters
    ----------
    area_mm2 : float
        Nominal area [mm²].
    flexible : bool
        Class 5; otherwise classes 1 and 2.
    coated : bool
        Metal-coated wires of class 1 or 2.

    Raises
    ------
    InputError
        Coated flexible conductors are not in the table we have.

    Examples
    --------
    >>> highest_allowed_ohm_per_km(0.75, flexible=True)
    26.0
    """
    if flexible and coated:
        raise InputError("coated", "coated conductors of class 5 are not in the table")
    column = "class_5" if flexible else "coated_class_1_2" if coated else "class_1_2"
    for each in rows("iec_60228"):
        # Sizes typed with and without a trailing zero, or taken over from another unit, differ in their last bit.
        if abs(each.number("area_mm2") - area_mm2) < 1e-9:
            return each.number(f"{column}_ohm_per_km")
    return None


@lru_cache(maxsize=16)
def _constant(name: str) -> float:
    return row("conductor_constants", "name", name).number("value")


CONDUCTOR = Calculator(
    name="conductor",
    title="Resistance of a copper conductor",
    basis="IEC 60028 (1/58 ohm mm²/m and 0.00393 at 20 °C); gauges ASTM B258; stranding 1.02 by common practice",
    work=conductor,
    example={"gauge": "18 AWG", "stranding": "stranded", "temperature_c": 50},
)
