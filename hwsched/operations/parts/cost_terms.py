"""What a project pays: its currency, discounts, exchange rates, price and hours of labour."""

from collections.abc import Mapping
from dataclasses import asdict

from sqlalchemy import select

from hwsched.calc.calculator import InputError
from hwsched.calc.parts.cost import Job, Terms, cost_of, exact
from hwsched.calc.project.labour import labour_table, unit_share
from hwsched.fitting.costing import hours_of
from hwsched.model.errors import ValueRefusedError
from hwsched.model.project import Project
from hwsched.model.queries import read_terms
from hwsched.model.tables import PROJECT
from hwsched.operations.changes import Changes
from hwsched.survey import LEAF
from hwsched.values.terms import CostTerms


def set_terms(
    project: Project,
    *,
    who: str,
    currency: str | None = None,
    labour_per_hour: str | None = None,
    learning_rate: str | None = None,
    discounts: Mapping[str, str | None] | None = None,
    rates: Mapping[str, str | None] | None = None,
    hours: Mapping[str, str | None] | None = None,
    base: int | None = None,
) -> Changes:
    """Change what the project pays; what is left out stays, and None takes an entry away.

    Parameters
    ----------
    project : Project
        Open project.
    who : str
        For the journal.
    currency : str, optional
        Three letters (ISO 4217); "" for that of the parts.
    labour_per_hour : str, optional
        As a decimal number; "" for unknown.
    learning_rate : str, optional
        0.5 to 1; 1: nothing is learnt.
    discounts : mapping, optional
        Supplier to the share that it takes off, 0 to 1.
    rates : mapping, optional
        Currency to what one unit of it is worth in the project's.
    hours : mapping, optional
        Task of the labour table, or ``task/leaf material``, to hours for one.
    base : int, optional
        The newest change set that was seen; what others changed since at the same terms is a conflict.

    Raises
    ------
    ValueRefusedError
        Names the number that cannot be; nothing is changed.
    ConflictError
        With what others changed since.
    """
    with project.change("set-terms", "Change what the project pays", who, base=base) as change:
        held = asdict(read_terms(change.connection))
        if currency is not None:
            held["currency"] = _currency(currency)
        if labour_per_hour is not None:
            held["labour_per_hour"] = labour_per_hour.strip() or None
        if learning_rate is not None:
            held["learning_rate"] = learning_rate.strip() or "1"
        of_currency = {_currency(key, "rate"): value for key, value in (rates or {}).items()}
        for name, stated in (("discounts", discounts), ("rates", of_currency), ("hours", hours)):
            merged = {**held[name], **(stated or {})}
            held[name] = {key: value for key, value in merged.items() if value is not None}
        _check(CostTerms(**held))
        row = change.connection.execute(select(PROJECT)).one()
        change.update(PROJECT, [(row.id, {"settings": {**row.settings, "terms": held}})])
    return Changes.of(change)


def _currency(text: str, of: str = "") -> str:
    code = text.strip().upper()
    if (code or of) and not (len(code) == 3 and code.isascii() and code.isalpha()):
        raise ValueRefusedError(of or "currency", f"'{text}' is none; accepted: three letters such as USD (ISO 4217)")
    return code


def _check(terms: CostTerms) -> None:
    try:
        for supplier, share in terms.discounts.items():
            exact(share, f"discount of {supplier}", at_most=1)
        for currency, rate in terms.rates.items():
            exact(rate, f"rate of {currency}", above=0)
        if terms.labour_per_hour is not None:
            exact(terms.labour_per_hour, "labour an hour")
        unit_share(2, float(exact(terms.learning_rate, "learning rate", above=0, at_most=1)))
        hours_of(terms)
        if terms.currency:
            cost_of(Job(), Terms(terms.currency, dict(terms.discounts), dict(terms.rates), terms.labour_per_hour))
    except InputError as error:
        raise ValueRefusedError(error.field, error.message) from error
    known = {task for task, _ in labour_table()}
    materials = {choice.value for choice in LEAF.attribute("material").choices}
    for name in terms.hours:
        task, slash, material = name.partition("/")
        if task not in known:
            raise ValueRefusedError("hours", f"there is no task '{task}'; accepted: {', '.join(sorted(known))}")
        if slash and material not in materials:
            raise ValueRefusedError(
                "hours", f"there is no leaf material '{material}'; accepted: {', '.join(sorted(materials))}"
            )
