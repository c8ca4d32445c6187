"""When batteries are due: every opening on batteries with its life and the day of the next change."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from hwsched.attributes.of_parts import (
    CAPACITY_MAH,
    CHEMISTRY,
    DESIGNATION,
    OPERATION_MA,
    OPERATION_S,
    SELF_DISCHARGE_SHARE,
    STANDING_UA,
    USABLE_SHARE,
)
from hwsched.calc.calculator import InputError
from hwsched.calc.power.battery import Battery, Drain, change_on, life_by_weekday
from hwsched.calc.power.cells import WARM_C, capacity_share
from hwsched.calc.tables import rows
from hwsched.rules.network.cold import cold_needs, cold_share_of
from hwsched.rules.reading import in_role, unit_part
from hwsched.values import Fit, OpeningInput


@dataclass(frozen=True, slots=True)
class Due:
    """Batteries of one unit."""

    opening_id: str
    mark: str
    """With the lock point's name where the opening has several."""
    place: tuple[str | None, str | None]
    """Building and level."""
    cell: str
    designation: str
    count: float
    operations: float | None
    """A day, on a working day."""
    days: float | None
    """Life by charge; None while a fact is missing."""
    mah_per_day: float | None
    cold_share: float
    installed_on: date | None
    due_on: date | None
    """None while the installation date or the life is unknown."""
    limited_by: str
    """charge, or shelf life."""
    needs: tuple[str, ...]
    unverified: bool
    """Whether a value behind it comes from memory."""
    key: str = ""
    """The lock point's identifier; that of the opening for its first one."""


def dues(openings: Iterable[tuple[OpeningInput, Fit | None]]) -> tuple[Due, ...]:
    """Return the batteries of lock points, those that last least first; unknown lives stand at the end.

    Notes
    -----
    Day by day from the installation date, working days and days off apart; the shelf life of the cell's chemistry ends
    it where that comes first. Source of each value: `hwsched.calc.power.battery` and the tables that it reads.
    """
    found = [due for given, fit in openings if fit is not None and fit.power == "battery" and (due := _due(given, fit))]
    # Unknown lives last and never as zero: as zero they would head the calendar as already due.
    return tuple(sorted(found, key=lambda due: (due.days is None, due.days or 0.0, due.mark)))


def _due(given: OpeningInput, fit: Fit) -> Due | None:
    fit_part, cell, unit = fit.part("battery"), in_role(given, fit, "battery"), unit_part(given, fit)
    if fit_part is None or cell is None or unit is None:
        return None
    opening = given.opening
    said = f"{opening.mark}, {given.point.name}" if given.point.name else opening.mark
    facts = {
        f"part {cell.number}.{name}": cell.number_of(name)
        for name in (CAPACITY_MAH, USABLE_SHARE, SELF_DISCHARGE_SHARE)
    }
    facts |= {f"part {unit.number}.{name}": unit.number_of(name) for name in (STANDING_UA, OPERATION_MA, OPERATION_S)}
    facts["opening.operations_per_day"] = opening.operations_per_day
    needs = [name for name, value in facts.items() if value is None]
    installed = date.fromisoformat(opening.installed_on) if opening.installed_on else None
    chemistry, unverified, shelf = cell.text_of(CHEMISTRY), False, None
    for row in rows("self_discharge"):
        if row.text("chemistry") == chemistry:
            shelf, unverified = row.optional_number("shelf_life_years"), not row.verified
    lowest_c = opening.temperature_low_c
    share = cold_share_of(cell, lowest_c)
    # A life as if it were warm would be too long.
    needs += cold_needs(cell, lowest_c)
    cold = 1.0 if share is None else share
    if share is not None and lowest_c is not None and lowest_c < WARM_C:
        stated = capacity_share(chemistry, lowest_c) if chemistry is not None else None
        # One value from memory makes the whole date unverified; the data sheet's own does not.
        unverified = unverified or (stated is not None and stated[0] == share and not stated[1])
    days = mah = due_on = None
    limited_by = ""
    if not needs:
        capacity, usable, lost, standing, drawn, seconds, day = (value or 0.0 for value in facts.values())
        # Nobody said that the place is quiet at the week's end: every day as a working day gives the earlier date.
        off = day if opening.operations_day_off is None else opening.operations_day_off
        try:
            life = life_by_weekday(
                Battery(capacity, usable, lost, cold),
                Drain(standing, drawn, seconds),
                (day,) * 5 + (off,) * 2,
                installed,
            )
            days, mah = life.days, life.mah_per_day
            # The life is told without a date, but no day can be named before somebody says when the cells went in.
            if installed is None:
                needs.append("opening.installed_on")
            else:
                change = change_on(installed, life.days, shelf)
                due_on, limited_by = (change.on, change.limited_by) if change is not None else (None, "")
        except InputError as error:
            needs.append(error.field)
    return Due(
        opening.id, said, (opening.building, opening.level), cell.number, cell.text_of(DESIGNATION) or "",
        fit_part.quantity, opening.operations_per_day, days, mah, cold, installed, due_on, limited_by, tuple(needs),
        unverified, opening.id if given.point.number == 1 else given.point.id,
    )  # fmt: skip
