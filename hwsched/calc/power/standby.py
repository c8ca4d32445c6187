"""Capacity of a standby battery: hours asked, margin, ageing, temperature, Peukert's law in its two forms.

Here belong the batteries of supplies. Batteries that feed an opening on their own stand in `battery`.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final

from hwsched.calc.calculator import Calculator, Field, InputError, Reader, check_number

COLDEST_C: Final = -4.0
HOTTEST_C: Final = 50.0
"""Temperatures for which the fit of the temperature factor is used [°C]."""
STATED_HOURS_FORM: Final = "stated-hours"
_LARGEST: Final = 1e6
_TOUCH_AH: Final = 1e-9


@dataclass(frozen=True, slots=True)
class Phase:
    """One stretch of a standby duty."""

    amps: float
    """Drawn from the battery [A], 0 or more."""
    hours: float
    """[h], 0 or more."""


@dataclass(frozen=True, slots=True)
class Peukert:
    """Peukert's law in its stated-hours form: the rating holds for a discharge over so many hours."""

    rated_hours: float
    """Hours for which the sizes are stated, usually 20 [h]."""
    exponent: float
    """1 or more; lead-acid 1.1 to 1.4."""


@dataclass(frozen=True, slots=True)
class Sizing:
    """What a standby duty needs, and the size that gives it."""

    needed_ah: float
    size_ah: float | None
    """Smallest size that suffices; None where none does."""


def needed_ah(
    phases: Sequence[Phase], margin: float, ageing_factor: float = 1.0, temperature_c: float | None = None
) -> float:
    """Capacity that a standby duty needs.

    Parameters
    ----------
    phases : sequence of Phase
        At least one.
    margin : float
        Factor, 1 or more: 1.20 by older practice, 1.25 by recent editions (fire alarm).
    ageing_factor : float
        1 or more; 1.25 for a battery that is used until 80 % of its rating. 1 takes no account of it.
    temperature_c : float
        Lowest of the battery [°C], -4 to 50; None takes no account of it. Above 25 °C nothing is taken off.

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
    if not phases:
        raise InputError("loads", "needs at least one load")
    total = 0.0
    for i, phase in enumerate(phases):
        amps = check_number(phase.amps, f"loads[{i}].amps", at_least=0, at_most=_LARGEST)
        total += amps * check_number(phase.hours, f"loads[{i}].hours", at_least=0, at_most=_LARGEST)
    return total * _factors(margin, ageing_factor, temperature_c)


def size_ah(needed: float, sizes_ah: Sequence[float]) -> float | None:
    """Smallest size that suffices, or None where none does.

    Examples
    --------
    >>> size_ah(12.476, [7, 12, 18, 26])
    18
    """
    return min((size for size in sizes_ah if size >= needed - _TOUCH_AH), default=None)


def sizing(
    phases: Sequence[Phase],
    margin: float,
    sizes_ah: Sequence[float],
    ageing_factor: float = 1.0,
    temperature_c: float | None = None,
    peukert: Peukert | None = None,
) -> Sizing:
    """Capacity that a standby duty needs, and the next standard size.

    Parameters
    ----------
    phases, margin, ageing_factor, temperature_c
        As in `needed_ah`.
    sizes_ah : sequence of float
        Sizes that may be had [Ah], each above 0.
    peukert : Peukert
        Where asked: each size is charged with more than I · t for currents above the one it is rated at, by the
        stated-hours form; currents below that get no credit. The needed capacity is then that for the size
        chosen, or for the largest one where none does.

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
    for i, size in enumerate(sizes_ah):
        check_number(size, f"sizes_ah[{i}]", above=0, at_most=_LARGEST)
    plain = needed_ah(phases, margin, ageing_factor, temperature_c)
    if peukert is None or not sizes_ah:
        return Sizing(plain, size_ah(plain, sizes_ah))
    factors = _factors(margin, ageing_factor, temperature_c)
    needed = plain
    for size in sorted(sizes_ah):
        needed = factors * sum(p.hours * equivalent_a(p.amps, size, peukert) for p in phases)
        if needed <= size + _TOUCH_AH:
            return Sizing(needed, size)
    return Sizing(needed, None)


def temperature_factor(temperature_c: float) -> float:
    """Factor by which a lead-acid battery must be larger at a temperature than at 25 °C.

    Parameters
    ----------
    temperature_c : float
        Of the battery [°C], -4 to 50.

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
    x = check_number(temperature_c, "temperature_c", at_least=COLDEST_C, at_most=HOTTEST_C) / 100.0
    return -2.8117 * x**3 + 4.1916 * x**2 - 2.4941 * x + 1.405


def peukert_stated_hours_h(capacity_ah: float, rated_hours: float, amps: float, exponent: float) -> float:
    """Time until a battery is empty, by the stated-hours form of Peukert's law.

    Parameters
    ----------
    capacity_ah : float
        Rated for a discharge over `rated_hours` [Ah], above 0.
    rated_hours : float
        Usually 20 [h], above 0.
    amps : float
        Drawn [A], above 0.
    exponent : float
        1 or more.

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
    check_number(capacity_ah, "capacity_ah", above=0, at_most=_LARGEST)
    check_number(rated_hours, "rated_hours", above=0, at_most=_LARGEST)
    check_number(amps, "amps", above=0, at_most=_LARGEST)
    check_number(exponent, "exponent", at_least=1, at_most=2)
    return float(rated_hours * (capacity_ah / (amps * rated_hours)) ** exponent)


def peukert_one_ampere_h(one_ampere_ah: float, amps: float, exponent: float) -> float:
    """Time until a battery is empty, by the one-ampere form of Peukert's law.

    Parameters
    ----------
    one_ampere_ah : float
        Peukert capacity: what the battery gives at one ampere [Ah], above 0; not its rated capacity.
    amps : float
        Drawn [A], above 0.
    exponent : float
        1 or more.

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
    check_number(one_ampere_ah, "one_ampere_ah", above=0, at_most=_LARGEST)
    check_number(amps, "amps", above=0, at_most=_LARGEST)
    check_number(exponent, "exponent", at_least=1, at_most=2)
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


def equivalent_a(amps: float, size_ah: float, peukert: Peukert) -> float:
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
    check_number(peukert.rated_hours, "peukert.rated_hours", above=0, at_most=_LARGEST)
    check_number(peukert.exponent, "peukert.exponent", at_least=1, at_most=2)
    return float(amps * max(1.0, amps * peukert.rated_hours / size_ah) ** (peukert.exponent - 1.0))


def _factors(margin: float, ageing_factor: float, temperature_c: float | None) -> float:
    check_number(margin, "margin", at_least=1, at_most=10)
    check_number(ageing_factor, "ageing_factor", at_least=1, at_most=10)
    # No credit for warmth: the battery must also serve on a cooler day.
    cold = 1.0 if temperature_c is None else max(1.0, temperature_factor(temperature_c))
    return margin * ageing_factor * cold


def _run(data: Mapping[str, Any]) -> dict[str, Any]:
    reader = Reader(data)
    phases = [Phase(load.number("amps"), load.number("hours")) for load in reader.objects("loads")]
    sizes = [check_number(size, f"sizes_ah[{i}]", above=0) for i, size in enumerate(reader.items("sizes_ah"))]
    peukert = None
    if reader.raw("peukert", None) is not None:
        law = reader.object("peukert")
        law.choice("form", (STATED_HOURS_FORM,))
        peukert = Peukert(law.number("rated_hours"), law.number("exponent"))
    found = sizing(
        phases,
        reader.number("margin"),
        sizes,
        reader.number("ageing_factor", 1.0),
        reader.optional_number("temperature_c"),
        peukert,
    )
    answer: dict[str, Any] = {"needed_ah": found.needed_ah, "size_ah": found.size_ah}
    if peukert is not None:
        answer["peukert_form"] = STATED_HOURS_FORM
    return answer


STANDBY = Calculator(
    name="standby",
    title="Capacity of a standby battery",
    basis="the form used with NFPA 72; temperature by a fit quoted beside IEEE 485 Table 1; ageing from memory",
    inputs=(
        Field("loads", "list", "Stretches of the duty {amps, hours}."),
        Field("margin", "number", "Factor of 1 or more, such as 1.2 or 1.25."),
        Field("sizes_ah", "list", "Sizes that may be had [Ah]."),
        Field(
            "ageing_factor", "number", "Such as 1.25 for use until 80 % of the rating; 1 takes no account of it.", "1"
        ),
        Field("temperature_c", "number", "Lowest of the battery, -4 to 50 °C; no account without it.", "none"),
        Field(
            "peukert",
            "object",
            'Peukert\'s law {form: "stated-hours", rated_hours, exponent} where high currents matter.',
            "none",
        ),
    ),
    outputs=(
        Field("needed_ah", "number", "Capacity that the duty needs [Ah]."),
        Field("size_ah", "number", "Smallest size that suffices [Ah], or null."),
        Field("peukert_form", "text", "Which form of Peukert's law was used; with peukert."),
    ),
    example={
        "loads": [{"amps": 0.42, "hours": 24}, {"amps": 3.8, "hours": 0.083333}],
        "margin": 1.2,
        "sizes_ah": [7, 12, 18, 26],
    },
    run=_run,
)
