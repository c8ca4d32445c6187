"""Default cells, their self-discharge and their charge in the cold: editable defaults, each with its source.

Here belongs what the tables of cells say. What it means for an opening stands in `battery`.
"""

from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from hwsched.calc.calculator import InputError, check_number
from hwsched.calc.tables import row, rows

WARM_C: Final = 20.0
"""Temperature for which capacities are stated [°C]."""


@dataclass(frozen=True, slots=True)
class Cell:
    """Default of one kind of primary cell; a data sheet overrides it."""

    name: str
    designation: str
    """By IEC 60086."""
    chemistry: str
    nominal_v: float
    capacity_mah: float
    """Cautious default [mAh]."""
    low_mah: float
    high_mah: float
    end_v: float | None
    """To which the capacity is stated [V a cell]; None where that is not known."""
    text: str
    source: str
    verified: bool
    """False: from memory, to be printed as unverified."""


def default_cells() -> tuple[Cell, ...]:
    """List the default cells.

    Examples
    --------
    >>> [c.name for c in default_cells() if c.verified]
    ['aa-alkaline', 'aaa-alkaline', '9v-alkaline']
    """
    return tuple(
        Cell(
            r.text("cell"),
            r.text("designation"),
            r.text("chemistry"),
            r.number("nominal_v"),
            r.number("capacity_mah"),
            r.number("low_mah"),
            r.number("high_mah"),
            r.optional_number("end_v"),
            r.text("text"),
            r.source,
            r.verified,
        )
        for r in rows("cells")
    )


def default_self_discharge(chemistry: str) -> tuple[float, bool]:
    """Share of nominal that a chemistry loses in a year by the table of defaults, and whether it is verified.

    Raises KeyError where the table has no such chemistry.

    Examples
    --------
    >>> default_self_discharge("lithium-manganese-dioxide")
    (0.015, True)
    """
    found = row("self_discharge", "chemistry", chemistry)
    return found.number("share_per_year"), found.verified


def capacity_share(chemistry: str, temperature_c: float) -> tuple[float, bool] | None:
    """Share of a cell's capacity that is left in the cold, by the table of defaults.

    Parameters
    ----------
    chemistry : str
        As in the table `cold_capacity`.
    temperature_c : float
        Of the place [°C].

    Returns
    -------
    (float, bool) or None
        The cautious end of the range, on straight lines between the table's temperatures, and whether every value
        behind it is verified; 1 from 20 °C up. None where the table has no such chemistry or ends at a higher
        temperature.

    Examples
    --------
    >>> capacity_share("alkaline", 10)
    (0.8, False)
    >>> capacity_share("alkaline", -30) is None
    True
    """
    points = sorted(
        # The lower share of the range: data books differ, and a battery that is changed too early still opens the
        # door.
        (r.number("temperature_c"), r.number("low_share"), r.verified)
        for r in rows("cold_capacity")
        if r.text("chemistry") == chemistry
    )
    # Colder than the table goes it is not known: a line drawn on would promise charge that nobody measured.
    if not points or temperature_c < points[0][0]:
        return None
    # Warmer than the table a cell gives no more than it is rated for.
    if temperature_c >= points[-1][0]:
        return points[-1][1], points[-1][2]
    for (cold_c, cold, cold_ok), (warm_c, warm, warm_ok) in pairwise(points):
        if temperature_c <= warm_c:
            share = cold + (warm - cold) * (temperature_c - cold_c) / (warm_c - cold_c)
            # Between a read value and one from memory the result is no better than the worse of the two.
            return share, cold_ok and warm_ok
    return None


def fresh_cell_v(chemistry: str, nominal_v: float) -> float | None:
    """Open-circuit voltage of a cell fresh from the pack, by the table of defaults [V].

    Parameters
    ----------
    chemistry : str
        As in the table `fresh_cells`.
    nominal_v : float
        Of one cell [V]; a battery of several cells in one case gives as many times more.

    Returns
    -------
    float or None
        The upper end of what data books say (from memory, unverified); None where the table has no such chemistry.

    Examples
    --------
    >>> fresh_cell_v("alkaline", 1.5), fresh_cell_v("alkaline", 9)
    (1.65, 9.9)
    >>> fresh_cell_v("zinc-air", 1.4) is None
    True
    """
    for each in rows("fresh_cells"):
        if each.text("chemistry") == chemistry:
            return round(each.number("open_v") * nominal_v / each.number("nominal_v"), 6)
    return None


def freshest_v(nominal_v: float) -> float:
    """Most that a fresh cell of this nominal voltage gives, whatever its chemistry [V].

    Examples
    --------
    >>> freshest_v(1.5)
    1.83
    """
    return max(round(each.number("open_v") * nominal_v / each.number("nominal_v"), 6) for each in rows("fresh_cells"))


def end_voltage_per_cell_v(unit_minimum_v: float, cells_in_series: int) -> float:
    """End voltage a cell to which the data sheet's capacity must be read.

    Parameters
    ----------
    unit_minimum_v : float
        Lowest voltage at which the control unit works [V], above 0.
    cells_in_series : int
        1 or more.

    Returns
    -------
    float
        [V a cell]. A capacity stated to a lower end voltage is more than the unit can use.

    Examples
    --------
    >>> end_voltage_per_cell_v(4.0, 4)
    1.0
    """
    if cells_in_series < 1:
        raise InputError("cells_in_series", f"must be at least 1, got {cells_in_series}")
    return check_number(unit_minimum_v, "unit_minimum_v", above=0) / cells_in_series
