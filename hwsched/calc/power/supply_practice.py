"""How the trade loads a low-voltage supply: share, margin, duty, inrush, limiter, operating window.

Here belongs common practice, with defaults from the table `supply_practice`. Published limits stand in `power_limits`,
voltages along a circuit in `circuit`.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from math import fsum
from typing import Final

from hwsched.calc.calculator import InputError, check_number
from hwsched.calc.tables import row, rows

_TOUCH: Final = 1e-9


@cache
def wire_waste() -> float:
    """Wire that is bought over the length of its runs, for ends and slack.

    Common practice, from the table `supply_practice`; fits, take-off and costs reckon with it alike.

    Examples
    --------
    >>> wire_waste()
    1.1
    """
    return row("supply_practice", "name", "wire_waste").number("value")


@cache
def raceway_kerf_mm() -> float:
    """Length that each cut of a raceway takes [mm].

    Common practice, from the table `supply_practice`.

    Examples
    --------
    >>> raceway_kerf_mm()
    3.0
    """
    return row("supply_practice", "name", "raceway_kerf_mm").number("value")


@dataclass(frozen=True, slots=True)
class Share:
    """How much of a supply is used."""

    share: float
    advised_a: float
    """What the advised share of its rating amounts to [A]."""
    within_advice: bool
    within_rating: bool


def supply_share(current_a: float, rated_a: float, advised_share: float | None = None) -> Share:
    """How much of a supply's rating is used, against the advised share.

    Parameters
    ----------
    current_a : float
        Continuous current of all its circuits, charger included where it is not stated apart [A].
    rated_a : float
        Of the supply [A], above 0.
    advised_share : float
        By default that of the table `supply_practice`: 0.80 (trade articles).

    Examples
    --------
    >>> found = supply_share(2.1, 2.5)
    >>> round(found.share, 2), found.advised_a, found.within_advice, found.within_rating
    (0.84, 2.0, False, True)
    """
    check_number(current_a, "current_a", at_least=0)
    check_number(rated_a, "rated_a", above=0)
    if advised_share is None:
        advised_share = row("supply_practice", "name", "advised_share").number("value")
    check_number(advised_share, "advised_share", above=0, at_most=1)
    advised_a = advised_share * rated_a
    return Share(current_a / rated_a, advised_a, current_a <= advised_a + _TOUCH, current_a <= rated_a + _TOUCH)


def with_margin_a(currents_a: Sequence[float], margin: float | None = None) -> float:
    """Sum of currents with the trade's margin.

    Parameters
    ----------
    currents_a : sequence of float
        [A].
    margin : float
        Factor; by default that of the table `supply_practice`: 1.25 (trade practice).

    Examples
    --------
    >>> round(with_margin_a([0.110] * 3 + [0.280] + [0.038] * 4), 4)
    0.9525
    """
    if margin is None:
        margin = row("supply_practice", "name", "current_margin").number("value")
    check_number(margin, "margin", at_least=1)
    return margin * fsum(currents_a)


def duty_equivalent_a(current_a: float, on_s: float, times_per_hour: float) -> float:
    """Continuous current equal in charge to a pulsed one.

    Parameters
    ----------
    current_a : float
        While on [A], 0 or more.
    on_s : float
        Each time [s], 0 or more.
    times_per_hour : float
        0 or more; together at most the whole hour.

    Returns
    -------
    float
        I · t · N / 3600 [A].

    Raises
    ------
    InputError
        Where the pulses would fill more than an hour.

    Notes
    -----
    For the charge of batteries and the warmth of supplies, never for a voltage drop. Source: a controller's
    installation guide (2003).

    Examples
    --------
    >>> round(duty_equivalent_a(0.5, 5, 50), 4)
    0.0347
    """
    check_number(current_a, "current_a", at_least=0)
    check_number(on_s, "on_s", at_least=0)
    check_number(times_per_hour, "times_per_hour", at_least=0)
    # More pulses than an hour holds would count a current twice.
    if on_s * times_per_hour > 3600.0 + _TOUCH:
        raise InputError("times_per_hour", f"{times_per_hour:g} times {on_s:g} s are more than an hour")
    return current_a * on_s * times_per_hour / 3600.0


def worst_inrush_a(holding_a: Sequence[float], inrush_a: Sequence[float], at_once: int) -> float:
    """Sum the current of a supply when the devices that add most start together and the others hold.

    Parameters
    ----------
    holding_a, inrush_a : sequences of float
        Of each device [A].
    at_once : int
        How many start at one time, 0 or more.

    Examples
    --------
    >>> round(worst_inrush_a([0.1, 0.1, 0.5], [1.0, 1.2, 0.6], 2), 3)
    2.7
    """
    if at_once < 0:
        raise InputError("at_once", f"must be 0 or more, got {at_once}")
    # Some devices draw less as they start than they hold; starting them is not the worst then.
    added = sorted((max(0.0, i - h) for h, i in zip(holding_a, inrush_a, strict=True)), reverse=True)
    return fsum(holding_a) + fsum(added[:at_once])


def limiter_a(
    holding_a: float, most_a: float, ratings_a: Sequence[float] = (), margin: float | None = None
) -> float | None:
    """Smallest fuse or limiter of a circuit that its continuous current does not trip.

    Parameters
    ----------
    holding_a : float
        Continuous current of the circuit [A].
    most_a : float
        Largest rating that the conductor and the source's class allow [A].
    ratings_a : sequence of float
        That may be had; by default the table `limiter_ratings`.
    margin : float
        Over the continuous current; by default the table's 1.25 (trade practice).

    Returns
    -------
    float or None
        None where the smallest that holds is larger than what is allowed. A slow one is wanted where the inrush exceeds
        it: the limiter's own curve decides.

    Examples
    --------
    >>> limiter_a(1.4, 4.17), limiter_a(3.9, 4.17)
    (2.0, None)
    """
    wanted_a = with_margin_a([check_number(holding_a, "holding_a", at_least=0)], margin)
    offered = ratings_a or [r.number("rating_a") for r in rows("limiter_ratings")]
    held = min((a for a in offered if a >= wanted_a - _TOUCH), default=None)
    # A limiter above the most that is allowed is no protection, so that none is named rather than that one.
    return held if held is not None and held <= most_a + _TOUCH else None


def operating_window_v(nominal_v: float) -> tuple[float, float]:
    """Lowest and highest voltage at a device's terminals where its data sheet says nothing: 85 to 110 % of nominal.

    Source: NFPA 72 (fire alarm), read in a secondary copy; a default that a data sheet overrides.

    Examples
    --------
    >>> [round(v, 3) for v in operating_window_v(24)]
    [20.4, 26.4]
    """
    check_number(nominal_v, "nominal_v", above=0)
    low, high = (row("supply_practice", "name", name).number("value") for name in ("window_low", "window_high"))
    return low * nominal_v, high * nominal_v


def mismatch(
    supply_v: float, supply_current: str, load_low_v: float, load_high_v: float, load_current: str
) -> str | None:
    """Say why a load cannot be fed by a supply, or None where voltage and kind of current suit.

    Parameters
    ----------
    supply_v : float
        Nominal output [V].
    supply_current, load_current : str
        ``dc`` or ``ac``; a load may take ``either``.
    load_low_v, load_high_v : float
        Its operating window [V].

    Examples
    --------
    >>> mismatch(24, "dc", 10.2, 13.2, "dc")
    '24 V is over the highest 13.2 V of the load'
    >>> mismatch(12, "ac", 10.2, 13.2, "dc")
    'the supply gives AC, the load takes DC'
    """
    if supply_current not in ("dc", "ac"):
        raise InputError("supply_current", f"must be dc or ac; got {supply_current!r}")
    if load_current not in ("dc", "ac", "either"):
        raise InputError("load_current", f"must be dc, ac or either; got {load_current!r}")
    if load_current not in ("either", supply_current):
        return f"the supply gives {supply_current.upper()}, the load takes {load_current.upper()}"
    if supply_v > load_high_v + _TOUCH:
        return f"{supply_v:g} V is over the highest {load_high_v:g} V of the load"
    if supply_v < load_low_v - _TOUCH:
        return f"{supply_v:g} V is under the lowest {load_low_v:g} V of the load"
    return None
