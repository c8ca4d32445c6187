"""What the cold leaves of a cell's charge: by its own data sheet, else by the table of its chemistry.

Here belongs how a part of the catalogue is read for it; the table stands in `hwsched.calc.power.cells`.
"""

from hwsched.attributes.of_parts import CHEMISTRY, COLD_C, COLD_SHARE
from hwsched.calc.power.cells import WARM_C, capacity_share
from hwsched.values import Part


def cold_share_of(cell: Part, lowest_c: float | None) -> float | None:
    """Share of a cell's charge that is counted on at the lowest temperature of its place.

    Returns
    -------
    float or None
        1 where the place is never under the temperature for which capacities are stated; None where the temperature is
        unknown, or neither data sheet nor table says how much is left.
    """
    if lowest_c is None:
        return None
    if lowest_c >= WARM_C:
        return 1.0
    stated_c, stated = cell.number_of(COLD_C), cell.number_of(COLD_SHARE)
    # What is left at a colder temperature is left here at the least.
    if stated_c is not None and stated is not None and lowest_c >= stated_c:
        return stated
    chemistry = cell.text_of(CHEMISTRY)
    found = capacity_share(chemistry, lowest_c) if chemistry is not None else None
    return None if found is None else found[0]


def cold_needs(cell: Part, lowest_c: float | None) -> tuple[str, ...]:
    """Name what is missing to tell it; empty where it can be told."""
    if cold_share_of(cell, lowest_c) is not None:
        return ()
    if lowest_c is None:
        return ("opening.temperature_low_c",)
    if cell.text_of(CHEMISTRY) is None:
        return (f"part {cell.number}.chemistry",)
    # Its chemistry is known, but the table does not go so far: the data sheet has to say it.
    return (f"part {cell.number}.cold_c", f"part {cell.number}.cold_share")
