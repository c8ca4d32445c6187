"""Limits of power-limited supplies: Class 2 and limited power source, and the cautions beside them.

Here belong the published numbers against which a supply is held. They advise; the listing, the code in force and the
authority having jurisdiction decide. The trade's practice for loading a supply stands in `supply_practice`.
"""

from dataclasses import dataclass
from typing import Final

from hwsched.calc.calculator import InputError, check_number
from hwsched.calc.tables import Row, row, rows

LIMITINGS: Final = ("inherent", "overcurrent-device")
"""Limited by its own design, or by a fuse or breaker as well."""
DRY_CELL_HIGHEST_V: Final = 30.0
CLASS_2_HIGHEST_V: Final = 60.0
_LARGEST: Final = 1e6
_TOUCH: Final = 1e-9


@dataclass(frozen=True, slots=True)
class PowerLimit:
    """Limits of a power-limited direct-current source at one voltage; None where the row sets none."""

    output_a: float
    """Most that may flow under any load [A]."""
    output_va: float | None
    """Most that may be delivered under any load [VA]."""
    nameplate_a: float | None
    nameplate_va: float | None
    overcurrent_a: float | None
    """Largest overcurrent device [A]."""
    source: str
    verified: bool
    """False: in part from memory, to be printed as unverified."""


@dataclass(frozen=True, slots=True)
class Excess:
    """A limit that a source exceeds."""

    quantity: str
    """nameplate-a, nameplate-va, output-a, output-va or overcurrent-a."""
    value: float
    limit: float
    source: str
    verified: bool


def class_2_limit(maximum_v: float, limiting: str) -> PowerLimit | None:
    """Limits of a Class 2 direct-current source.

    Parameters
    ----------
    maximum_v : float
        Highest voltage of the source [V], above 0.
    limiting : str
        ``inherent`` or ``overcurrent-device``.

    Returns
    -------
    PowerLimit or None
        None above 60 V: no Class 2 source.

    Raises
    ------
    InputError
        Names the value that cannot be taken.

    Notes
    -----
    NEC Chapter 9 Tables 11(A) and 11(B), read in copies and commentary, the direct-current column in part from memory:
    the result says so. "100/Vmax" means: divided by the source's maximum voltage.

    Examples
    --------
    >>> limit = class_2_limit(24, "inherent")
    >>> limit.nameplate_va, round(limit.nameplate_a, 2), limit.verified
    (100.0, 4.17, False)
    """
    found = _row_for("class_2", maximum_v, limiting)
    if found is None:
        return None
    per_volt_va = found.optional_number("nameplate_va_per_v")
    return PowerLimit(
        _either(found, "output_a", "output_a_v", maximum_v) or 0.0,
        found.optional_number("output_va"),
        _either(found, "nameplate_a", "nameplate_a_v", maximum_v),
        # Some rows of the tables state a figure, others so much per volt; the voltage is the source's maximum.
        per_volt_va * maximum_v if per_volt_va is not None else found.optional_number("nameplate_va"),
        _either(found, "overcurrent_a", "overcurrent_a_v", maximum_v),
        found.source,
        found.verified,
    )


def limited_power_source_limit(maximum_v: float, limiting: str) -> PowerLimit | None:
    """Limits of a limited power source, direct current, by IEC 60950-1 Tables 2B and 2C.

    Parameters
    ----------
    maximum_v : float
        Open-circuit voltage [V], above 0.
    limiting : str
        ``inherent`` or ``overcurrent-device``.

    Returns
    -------
    PowerLimit or None
        None above 60 V.

    Examples
    --------
    >>> limited_power_source_limit(48, "inherent").output_a
    3.125
    """
    found = _row_for("limited_power_source", maximum_v, limiting)
    if found is None:
        return None
    per_volt_va = found.optional_number("output_va_per_v")
    return PowerLimit(
        _either(found, "output_a", "output_a_v", maximum_v) or 0.0,
        per_volt_va * maximum_v if per_volt_va is not None else found.optional_number("output_va"),
        None,
        None,
        _either(found, "overcurrent_a", "overcurrent_a_v", maximum_v),
        found.source,
        found.verified,
    )


def excesses(
    limit: PowerLimit, rated_v: float, rated_a: float, most_a: float | None = None, overcurrent_a: float | None = None
) -> tuple[Excess, ...]:
    """Limits that a source exceeds.

    Parameters
    ----------
    limit : PowerLimit
        At the source's maximum voltage.
    rated_v, rated_a : float
        Of its nameplate [V, A].
    most_a : float
        Most that it can deliver under any load [A]; None where it is not known, and then it is not checked.
    overcurrent_a : float
        Its overcurrent device [A]; None where there is none.

    Returns
    -------
    tuple of Excess
        Empty where the source keeps all limits that could be checked.

    Examples
    --------
    >>> [e.quantity for e in excesses(class_2_limit(24, "inherent"), 24, 4)]
    []
    >>> [e.quantity for e in excesses(class_2_limit(24, "inherent"), 24, 5)]
    ['nameplate-a', 'nameplate-va']
    """
    check_number(rated_v, "rated_v", above=0)
    check_number(rated_a, "rated_a", at_least=0)
    held = (
        ("nameplate-a", rated_a, limit.nameplate_a),
        ("nameplate-va", rated_v * rated_a, limit.nameplate_va),
        ("output-a", most_a, limit.output_a),
        # Without a figure for what may flow under any load nothing is said: the nameplate is not that figure.
        ("output-va", None if most_a is None else most_a * rated_v, limit.output_va),
        ("overcurrent-a", overcurrent_a, limit.overcurrent_a),
    )
    return tuple(
        Excess(name, value, most, limit.source, limit.verified)
        for name, value, most in held
        if value is not None and most is not None and value > most + _TOUCH
    )


def battery_counts_as_class_2(dry_cell: bool, nominal_v: float) -> bool:
    """Whether a battery alone counts as a Class 2 source: dry cells of at most 30 V (NEC 725.121(A)).

    A lead-acid or lithium-ion pack does not by that item; its listing may say otherwise.

    Examples
    --------
    >>> battery_counts_as_class_2(True, 6.0), battery_counts_as_class_2(False, 12.0)
    (True, False)
    """
    return dry_cell and nominal_v <= DRY_CELL_HIGHEST_V


def caution(name: str) -> str:
    """Text of a caution of the table `cautions`; raises KeyError for a name that it does not have.

    Examples
    --------
    >>> caution("mains-on-leaf").startswith("Never bring mains onto the leaf.")
    True
    """
    return row("cautions", "id", name).text("text")


def _row_for(table: str, maximum_v: float, limiting: str) -> Row | None:
    check_number(maximum_v, "maximum_v", above=0, at_most=_LARGEST)
    if limiting not in LIMITINGS:
        raise InputError("limiting", f"must be one of {', '.join(LIMITINGS)}; got {limiting!r}")
    for each in rows(table):
        # The upper bound belongs to its row, as the published tables have it: up to 20 V, over 20 V to 30 V.
        if each.text("limiting") == limiting and each.number("above_v") < maximum_v <= each.number("up_to_v"):
            return each
    return None


def _either(found: Row, amps: str, amp_volts: str, maximum_v: float) -> float | None:
    """Limit in amperes, stated as such or as amperes times the maximum voltage."""
    by_voltage = found.optional_number(amp_volts)
    # "100/Vmax" in a cell: divided by the maximum voltage of the source, not by its nominal one.
    return found.optional_number(amps) if by_voltage is None else by_voltage / maximum_v
