"""What to fit across an inductive load, and what it does to its release.

Here belong coils and their suppressors. Supplies and circuits stand elsewhere.
"""

from dataclasses import dataclass
from math import log

from hwsched.calc.calculator import check_number
from hwsched.calc.tables import rows


@dataclass(frozen=True, slots=True)
class Suppression:
    """What to fit across an inductive load."""

    load: str
    suppressor: str
    plain_diode_allowed: bool
    text: str
    source: str
    verified: bool


def suppressor_for(load: str) -> Suppression | None:
    """Look up what to fit across an inductive load; None where the table has no such load.

    Examples
    --------
    >>> suppressor_for("electromagnetic-lock").plain_diode_allowed
    False
    """
    for each in rows("suppression"):
        if each.text("load") == load:
            return Suppression(
                load,
                each.text("suppressor"),
                each.text("plain_diode_allowed") == "yes",
                each.text("text"),
                each.source,
                each.verified,
            )
    return None


def coil_energy_j(inductance_h: float, current_a: float) -> float:
    """Energy that a coil gives back when it is switched off: L · I² / 2 [J].

    Examples
    --------
    >>> round(coil_energy_j(0.1, 0.5), 4)
    0.0125
    """
    return 0.5 * inductance_h * current_a**2


def diode_release_s(inductance_h: float, resistance_ohm: float, current_a: float, release_a: float) -> float:
    """Time for which a plain diode keeps a coil's current above what releases it.

    Parameters
    ----------
    inductance_h, resistance_ohm : float
        Of the coil [H, ohm], above 0.
    current_a, release_a : float
        When switched off, and at which it lets go [A], above 0.

    Returns
    -------
    float
        (L / R) · ln(I / I_release) [s]; the diode's own voltage shortens it and is left out.

    Examples
    --------
    >>> from math import exp
    >>> round(diode_release_s(0.1, 24.0, 0.5, 0.5 * exp(-1)) * 1000, 2)
    4.17
    """
    check_number(resistance_ohm, "resistance_ohm", above=0)
    check_number(release_a, "release_a", above=0)
    # Already below what holds it: the logarithm would give a time before the switching.
    if current_a <= release_a:
        return 0.0
    return inductance_h / resistance_ohm * log(current_a / release_a)
