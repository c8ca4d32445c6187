"""Capacity of a standby battery: hours asked, margin, ageing, temperature, Peukert's law in its two forms.

Here belong the batteries of supplies. Batteries that feed an opening on their own stand in `battery`.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Annotated, Final

from msgspec import UNSET, UnsetType

from hwsched.calc.calculator import Calculator, InputError, Said, Within, check_arguments
from hwsched.quantities.adding import added

COLDEST_C: Final = -4.0
HOTTEST_C: Final = 50.0
"""Temperatures for which the fit of the temperature factor is used [°C]."""
STATED_HOURS_FORM: Final = "stated-hours"
_LARGEST: Final = 1e6
_TOUCH_AH: Final = 1e-9
_Amount = Annotated[float, Within(at_least=0, at_most=_LARGEST)]
_Above0 = Annotated[float, Within(above=0, at_most=_LARGEST)]
_Factor = Annotated[float, Within(at_least=1, at_most=10)]
_Exponent = Annotated[float, Within(at_least=1, at_most=2), Said("Lead-acid 1.1 to 1.4.")]


@dataclass(frozen=True, slots=True)
class Phase:
    """One stretch of a standby duty."""

    amps: Annotated[_Amount, Said("Drawn from the battery [A].")]
    hours: Annotated[_Amount, Said("Its length [h].")]


@dataclass(frozen=True, slots=True)
class Peukert:
    """Peukert's law in its stated-hours form: the rating holds for a discharge over so many hours."""

    rated_hours: Annotated[_Above0, Said("Hours for which the sizes are stated, usually 20 [h].")]
    exponent: _Exponent
    form: Annotated[
        str,
        Said("Form of the law; its capacity is another one in the one-ampere form.", choices=(STATED_HOURS_FORM,),
             needed=True),
    ] = STATED_HOURS_FORM  # fmt: skip


@dataclass(frozen=True, slots=True)
class Sizing:
    """What a standby duty needs, and the size that gives it."""

    needed_ah: Annotated[float, Said("Capacity that the duty needs [Ah].")]
    size_ah: Annotated[float | None, Said("Smallest size that suffices [Ah].")]
    peukert_form: Annotated[str | UnsetType, Said("Form of Peukert's law that was used; with peukert.")] = UNSET


_Phases = Annotated[Sequence[Phase], Said("Stretches of the duty, at least one.", at="loads")]
_Margin = Annotated[_Factor, Said("Factor: 1.2 by older practice, 1.25 by recent editions (fire alarm).")]
_Ageing = Annotated[_Factor, Said("Such as 1.25 for use until 80 % of the rating; 1 takes no account of it.")]
_Degrees = Annotated[float, Within(at_least=COLDEST_C, at_most=HOTTEST_C)]
_Lowest = Annotated[
    _Degrees | None,
    Said("Lowest of the battery [°C]; without it no account is taken, above 25 °C nothing is taken off."),
]
_Law = Annotated[Peukert, Said("Peukert's law where high currents matter.")]


def needed_ah(phases: _Phases, margin: _Margin, ageing_factor: _Ageing = 1.0, temperature_c: _Lowest = None) -> float:
    """Capacity that a standby duty needs.

    Returns
    -------
    float
        sum of I · t, times the factors [Ah].

    Raises
    ------
    InputError
        Names the value that cannot be taken.

    Notes
    -----
    Source: the form used with NFPA 72 (read in three copies); ageing 1.25 from memory beside IEEE 485.

    Examples
    --------
    >>> round(needed_ah([Phase(0.42, 24), Phase(3.8, 5 / 60)], 1.2), 3)
    12.476
    """
    check_arguments(needed_ah, locals())
    if not phases:
        raise InputError("loads", "needs at least one load")
    return added(phase.amps * phase.hours for phase in phases) * _factors(margin, ageing_factor, temperature_c)


def size_ah(needed: float, sizes_ah: Sequence[float]) -> float | None:
    """Smallest size that suffices, or None where none does.

    Examples
    --------
    >>> size_ah(12.476, [7, 12, 18, 26])
    18
    """
    return min((size for size in sizes_ah if size >= needed - _TOUCH_AH), default=None)


def sizing(
    phases: _Phases,
    margin: _Margin,
    sizes_ah: Annotated[Sequence[_Above0], Said("Sizes that may be had [Ah].")],
    ageing_factor: _Ageing = 1.0,
    temperature_c: _Lowest = None,
    peukert: _Law | None = None,
) -> Sizing:
    """Capacity that a standby duty needs, and the next standard size.

    With Peukert's law each size is charged with more than I · t for currents above the one it is rated at, by the
    stated-hours form; currents below that get no credit. The needed capacity is then that for the size chosen, or for
    the largest one where none does.

    Returns
    -------
    Sizing
        Needed capacity and size.

    Raises
    ------
    InputError
        Names the value that cannot be taken.

    Examples
    --------
    >>> sizing([Phase(1.4, 4)], 1.0, [7, 12], peukert=Peukert(20, 1.25)).size_ah
    12
    """
    check_arguments(sizing, locals())
    plain = needed_ah(phases, margin, ageing_factor, temperature_c)
    if peukert is None:
        return Sizing(plain, size_ah(plain, sizes_ah))
    if not sizes_ah:
        return Sizing(plain, None, peukert.form)
    factors = _factors(margin, ageing_factor, temperature_c)
    needed = plain
    # By size, because Peukert's law needs the rating to tell the need: a larger battery is discharged less hard.
    for size in sorted(sizes_ah):
        needed = factors * added(p.hours * equivalent_a(p.amps, size, peukert) for p in phases)
        if needed <= size + _TOUCH_AH:
            return Sizing(needed, size, peukert.form)
    return Sizing(needed, None, peukert.form)


def temperature_factor(temperature_c: _Degrees) -> float:
    """Factor by which a lead-acid battery must be larger at a temperature than at 25 °C.

    Returns
    -------
    float
        y = -2.8117 x³ + 4.1916 x² - 2.4941 x + 1.405, with x the temperature in hundreds of °C.

    Raises
    ------
    InputError
        Outside those temperatures.

    Notes
    -----
    Fit quoted beside IEEE 485 Table 1 (formula read; its unit of x inferred from 1.000 at 25 °C; table values in
    `lead_acid_temperature` from memory, unverified). Agrees with them within 1 %.

    Examples
    --------
    >>> round(temperature_factor(10), 4)
    1.1947
    """
    check_arguments(temperature_factor, locals())
    x = temperature_c / 100.0
    return -2.8117 * x**3 + 4.1916 * x**2 - 2.4941 * x + 1.405


def peukert_stated_hours_h(capacity_ah: _Above0, rated_hours: _Above0, amps: _Above0, exponent: _Exponent) -> float:
    """Time until a battery is empty, by the stated-hours form of Peukert's law.

    Parameters
    ----------
    capacity_ah : float
        Rated for a discharge over `rated_hours` [Ah].
    rated_hours : float
        Usually 20 [h].
    amps : float
        Drawn [A].
    exponent : float
        Of the battery.

    Returns
    -------
    float
        t = H · (C / (I · H))^k [h].

    Raises
    ------
    InputError
        Names the value that cannot be taken.

    Notes
    -----
    Not to be mixed with the one-ampere form, whose C is another capacity. Source: worked examples in texts.

    Examples
    --------
    >>> round(peukert_stated_hours_h(120, 20, 120, 1.4), 4)
    0.3017
    """
    check_arguments(peukert_stated_hours_h, locals())
    # The capacity is the one at the rated hours; put into the one-ampere form it would give another time.
    return float(rated_hours * (capacity_ah / (amps * rated_hours)) ** exponent)


def peukert_one_ampere_h(one_ampere_ah: _Above0, amps: _Above0, exponent: _Exponent) -> float:
    """Time until a battery is empty, by the one-ampere form of Peukert's law.

    Parameters
    ----------
    one_ampere_ah : float
        Peukert capacity: what the battery gives at one ampere [Ah]; not its rated capacity.
    amps : float
        Drawn [A].
    exponent : float
        Of the battery.

    Returns
    -------
    float
        t = Cp / I^k [h].

    Raises
    ------
    InputError
        Names the value that cannot be taken.

    Examples
    --------
    >>> round(peukert_one_ampere_h(250, 20, 1.3), 5)
    5.08863
    """
    check_arguments(peukert_one_ampere_h, locals())
    return float(one_ampere_ah / amps**exponent)


def one_ampere_capacity_ah(capacity_ah: float, rated_hours: float, exponent: float) -> float:
    """Peukert capacity, for the one-ampere form, of a battery rated over some hours.

    Returns
    -------
    float
        Cp = H · (C / H)^k [Ah].

    Examples
    --------
    >>> cp = one_ampere_capacity_ah(100, 20, 1.2)
    >>> round(peukert_one_ampere_h(cp, 10, 1.2), 4) == round(peukert_stated_hours_h(100, 20, 10, 1.2), 4)
    True
    """
    return peukert_stated_hours_h(capacity_ah, rated_hours, 1.0, exponent)


def equivalent_a(amps: float, size_ah: float, peukert: _Law) -> float:
    """Count a current at what it takes from a battery's rating, by the stated-hours form.

    Parameters
    ----------
    amps : float
        Drawn [A], 0 or more.
    size_ah : float
        Rated over the form's hours [Ah], above 0.
    peukert : Peukert
        Hours and exponent.

    Returns
    -------
    float
        I · (I · H / C)^(k - 1) above the rated current C / H, else I [A].

    Examples
    --------
    >>> round(7 / equivalent_a(1.4, 7, Peukert(20, 1.25)), 4)
    3.5355
    """
    check_arguments(equivalent_a, locals())
    # No credit for a slower discharge than the rated one: more than the rated capacity is not counted on.
    return float(amps * max(1.0, amps * peukert.rated_hours / size_ah) ** (peukert.exponent - 1.0))


def _factors(margin: float, ageing_factor: float, temperature_c: float | None) -> float:
    # No credit for warmth: the battery must also serve on a cooler day.
    cold = 1.0 if temperature_c is None else max(1.0, temperature_factor(temperature_c))
    return margin * ageing_factor * cold


STANDBY = Calculator(
    name="standby",
    title="Capacity of a standby battery",
    basis="the form used with NFPA 72; temperature by a fit quoted beside IEEE 485 Table 1; ageing from memory",
    work=sizing,
    example={
        "loads": [{"amps": 0.42, "hours": 24}, {"amps": 3.8, "hours": 0.083333}],
        "margin": 1.2,
        "sizes_ah": [7, 12, 18, 26],
    },
)
