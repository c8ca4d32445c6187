"""What supplies cost with their batteries, wire and the work of laying them, by building."""

from hwsched.calc.parts.cost import Cost, Job, Line, exact
from hwsched.calc.power.supply_practice import wire_waste
from hwsched.calc.project.labour import Task, labour
from hwsched.fitting.costing import cost_in, hours_of, line_of, order_of, terms_of
from hwsched.quantities.money import product
from hwsched.values import Catalogue
from hwsched.values.power import SupplyResult
from hwsched.values.terms import CostTerms
from hwsched.wiring.take_off import wire_lines


def price_supplies(supplies: tuple[SupplyResult, ...], catalogue: Catalogue, terms: CostTerms) -> dict[str, Cost]:
    """Return building to the cost of its supplies and wire; raises InputError for a number that cannot be."""
    priced, table = terms_of(terms, catalogue), hours_of(terms)
    # A supply that feeds nothing yet is a candidate place, not a purchase.
    used = tuple(supply for supply in supplies if supply.circuits and supply.openings)
    found = {}
    for building in dict.fromkeys(supply.supply.building or "" for supply in used):
        here = tuple(supply for supply in used if (supply.supply.building or "") == building)
        lines, tasks = [], [Task("mount-supply", len(here))]
        for supply in here:
            if supply.supply.part:
                lines.append(line_of(supply.supply.part, 1, catalogue))
            if supply.supply.battery:
                lines.append(line_of(supply.supply.battery, supply.supply.batteries or 1, catalogue))
        for wire in wire_lines(here, catalogue):
            # To the millimetre: a sum of metres in binary has digits that nobody laid.
            length_m = round(wire.length_m, 3)
            needed = product(exact(length_m, "length of wire"), exact(wire_waste(), "waste"))
            lines.append(order_of(wire.part or wire.gauge, needed, catalogue, wire.reels))
            # The length as laid: what is bought over it for ends and slack takes no time to lay.
            tasks.append(Task("lay-wire", length_m))
        work = labour(tasks, table)
        lacking = _lacking(here)
        if lacking:
            # No number can stand for it; that it is missing is said all the same.
            lines.append(Line("wire", 0, None, priced.currency or None, None, lacking))
        found[building] = cost_in(Job(lines, work.hours, (*work.needs, *lacking)), priced)
    return found


def _lacking(supplies: tuple[SupplyResult, ...]) -> tuple[str, ...]:
    """Return what is missing to know how much wire is laid."""
    told = (problem for each in supplies for circuit in each.circuits for problem in circuit.problems)
    needs = (need for problem in told if problem.kind == "unknown" for need in problem.needs)
    return tuple(dict.fromkeys(need for need in needs if need in ("run.length_m", "run.wire", "run.stranding")))
