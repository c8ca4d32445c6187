"""What supplies cost with all that is laid for them and the work of laying it, by building; wire in whole reels."""

from collections.abc import Iterable, Sequence
from typing import Final

from hwsched.calc.parts.cost import Cost, Job, Line
from hwsched.calc.project.labour import Task, labour
from hwsched.fitting.costing import cost_in, hours_of, line_of, terms_of
from hwsched.values import Catalogue, PointFit, Role
from hwsched.values.power import SupplyResult
from hwsched.values.terms import CostTerms
from hwsched.wiring.goods import ROLES, Bill, Goods, bill_of, laid

WITH_OPENING: Final = ("supply", "standby-battery", "power-transfer")
"""What an opening brings by the piece is priced with the opening."""
WITH_BUILDING: Final[tuple[Role, ...]] = ("wire", "raceway")
"""Roles of a fit that are priced with their building, in whole reels, and not with the opening."""


def price_supplies(
    supplies: tuple[SupplyResult, ...],
    catalogue: Catalogue,
    terms: CostTerms,
    openings: Iterable[Sequence[PointFit]] = (),
) -> dict[str, Cost]:
    """Return building to the cost of what is laid there; raises InputError for a number that cannot be.

    Parameters
    ----------
    supplies, catalogue, terms
        As worked out, and what the project pays.
    openings : iterable of sequence of PointFit
        Lock points of the openings whose wire and raceway are cut with those of their building.
    """
    return price_bill(bill_of(supplies, openings, catalogue), supplies, catalogue, terms)


def price_bill(bill: Bill, supplies: Iterable[SupplyResult], catalogue: Catalogue, terms: CostTerms) -> dict[str, Cost]:
    """Return building to the cost of a bill, what openings bring by the piece left out: that is priced with them."""
    priced, table = terms_of(terms, catalogue), hours_of(terms)
    # A supply that feeds nothing yet is a candidate place, not a purchase.
    put_up = [supply.supply.building or "" for supply in supplies if laid(supply)]
    found = {}
    for building in dict.fromkeys((*put_up, *(each.building for each in bill.goods))):
        here = [each for each in bill.goods if each.building == building]
        lines: list[Line] = []
        needs: list[str] = []
        tasks = [Task("mount-supply", put_up.count(building))] if building in put_up else []
        for each in here:
            if each.role in WITH_OPENING and not each.supply_id:
                continue
            lines.append(_line(each, catalogue, priced.currency))
            if each.line is not None and each.line.length_m:
                # The length as laid, to the millimetre: what is bought over it for ends and slack takes no time to lay.
                tasks.append(Task("lay-wire", round(each.line.length_m, 3)))
            elif each.role == "wire":
                # No number can stand for it; that it is missing is said all the same.
                needs += each.needs
        if not lines and not tasks:
            continue
        work = labour(tasks, table)
        found[building] = cost_in(Job(lines, work.hours, (*work.needs, *needs)), priced)
    return found


def _line(goods: Goods, catalogue: Catalogue, currency: str) -> Line:
    if goods.line is not None:
        part = catalogue.get(goods.part)
        if part is None or goods.needs:
            number = goods.part or f"{goods.line.gauge} {goods.line.stranding}".strip()
            return Line(number, goods.quantity, None, currency or None, None, goods.needs)
        return Line(part.number, goods.quantity, part.list_price, part.currency or None, part.supplier or None)
    if goods.needs or not goods.part:
        return Line(goods.part or ROLES[goods.role], goods.quantity, None, currency or None, None, goods.needs)
    return line_of(goods.part, goods.quantity, catalogue)
