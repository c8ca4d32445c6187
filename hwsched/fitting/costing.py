"""What openings cost by their fits: parts at list price less discount, and labour with difficulty and learning."""

from collections.abc import Collection, Iterable
from dataclasses import replace

from hwsched.calc.parts.cost import LABOUR, Cost, Job, Line, Terms, Unknown, combined, cost_of, exact
from hwsched.calc.project.labour import LabourTable, labour, labour_table, unit_share
from hwsched.fitting.order_units import held_by, lacking, order_units, price_of_one
from hwsched.fitting.tasks import tasks_of
from hwsched.quantities.money import ZERO, Exact, product
from hwsched.values import Catalogue, Fit, OpeningInput, Role
from hwsched.values.input_key import survey_key
from hwsched.values.terms import CostTerms


def terms_of(terms: CostTerms, catalogue: Catalogue) -> Terms:
    """Return the terms in which lines are priced: without a currency of its own a project takes that of its parts.

    Where parts have several, or none, the currency stays empty: unknown.

    Raises
    ------
    InputError
        For a number that cannot be.
    """
    currencies = {part.currency for part in catalogue.parts.values() if part.currency}
    # With parts in several currencies nobody but the project can say in which it pays.
    currency = terms.currency or (currencies.pop() if len(currencies) == 1 else "")
    return Terms(currency, dict(terms.discounts), dict(terms.rates), terms.labour_per_hour)


def hours_of(terms: CostTerms) -> LabourTable:
    """Return the labour table with a project's own hours in it; raises InputError."""
    own: dict[str | tuple[str, str], str] = {}
    for name, hours in terms.hours.items():
        task, _, material = name.partition("/")
        own[(task, material) if material else task] = hours
    return labour_table(dict(own))


def price_openings(
    openings: Iterable[tuple[OpeningInput, Fit | None]],
    catalogue: Catalogue,
    terms: CostTerms,
    without: Collection[Role] = (),
) -> dict[str, Cost]:
    """Price openings in the order of their work.

    Parameters
    ----------
    openings : iterable of (OpeningInput, Fit or None)
        One a lock point. Those that are not fitted have no price and are left out.
    catalogue : Catalogue
        List prices, suppliers, currencies.
    terms : CostTerms
        What the project pays.
    without : collection of Role
        What is priced elsewhere, such as wire that is cut with that of its building.

    Returns
    -------
    dict
        Opening to its cost, its lock points together, all of them fitted; nothing is rounded. Tools are not used up, so
        not counted. The n-th of openings alike takes the share of the learning curve.

    Raises
    ------
    InputError
        For a number of the terms that cannot be.
    """
    priced, table, rate = (
        terms_of(terms, catalogue),
        hours_of(terms),
        float(exact(terms.learning_rate, "learning rate")),
    )
    done: dict[str, int] = {}
    found: dict[str, list[Cost]] = {}
    left_out: set[str] = set()
    for given, fit in openings:
        if fit is None or fit.status != "fits":
            # One lock point without a fit leaves out the whole opening: half a price would be taken for all of it.
            left_out.add(given.opening.id)
            continue
        work = labour(tasks_of(given, fit), table, given.opening.difficulty or 1)
        # What stands at other points does not change the work at this one: learning counts it as alike.
        alike = survey_key(replace(given, beside=()) if given.beside else given)
        done[alike] = number = done.get(alike, 0) + 1
        # In the order of the work, since it is the n-th of a kind that goes quicker (the unit curve).
        hours = work.hours if rate == 1.0 else product(work.hours, exact(unit_share(number, rate), "share"))
        own = [each for each in fit.parts if each.role != "tool" and each.role not in without]
        lines = [line_of(each.part, each.quantity, catalogue) for each in own]
        found.setdefault(given.opening.id, []).append(cost_in(Job(lines, hours, work.needs), priced))
    whole = ((opening, costs) for opening, costs in found.items() if opening not in left_out)
    return {opening: costs[0] if len(costs) == 1 else combined(costs) for opening, costs in whole}


def cost_in(job: Job, terms: Terms) -> Cost:
    """Price a job; while it is not known in which currency, everything of it is unknown. Raises InputError."""
    if terms.currency:
        return cost_of(job, terms)
    needs = ("currency of the project",)
    hours = exact(job.hours, "hours")
    unknown = [
        Unknown(line.number, exact(line.quantity, f"quantity of {line.number}"), (*line.needs, *needs))
        for line in job.lines
    ]
    if hours:
        unknown.append(Unknown(LABOUR, hours, needs))
    if job.needs:
        unknown.append(Unknown(LABOUR, ZERO, job.needs))
    # Combined, so that equal unknowns become one line, as they do with a currency.
    return combined([Cost(hours=hours, unknown=tuple(unknown))])


def line_of(number: str, quantity: Exact, catalogue: Catalogue) -> Line:
    """Return a part as a line to be priced."""
    part = catalogue.get(number)
    if part is None:
        return Line(number, quantity, None, None, None)
    held = held_by(part)
    currency, supplier = part.currency or None, part.supplier or None
    if held is None:
        # The price of a box is no price of a screw.
        return Line(number, quantity, part.list_price, currency, supplier, (lacking(part),))
    return Line(number, quantity, price_of_one(part, held), currency, supplier)


def order_of(number: str, quantity: Exact, catalogue: Catalogue, units: int | None = None) -> Line:
    """Return a part as it is ordered: in whole boxes, reels or feet where it comes in such; units: how many."""
    part = catalogue.get(number)
    held = None if part is None else held_by(part)
    if part is None or held is None or held == 1:
        return line_of(number, quantity, catalogue)
    ordered = order_units(quantity, held) if units is None else units
    return Line(number, ordered, part.list_price, part.currency or None, part.supplier or None)
