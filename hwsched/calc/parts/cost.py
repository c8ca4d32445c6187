"""What openings cost: list price, discount by supplier, currency, labour; nothing rounded before the end.

Here belong terms and jobs priced by them. Exact numbers and currencies stand in `hwsched.quantities.money`, hours of
work in `labour`, quantities of parts with whoever counts them. A price, currency or rate that is missing makes a line
"unknown: needs ..."; it never counts as 0 without being said.
"""

from collections.abc import Hashable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Final, TypeVar

from hwsched.calc.calculator import InputError
from hwsched.quantities.money import ONE, ZERO, Exact, Exchange, MoneyError, exact_decimal, less, product, summed

Key = TypeVar("Key", bound=Hashable)

LABOUR: Final = "labour"
"""What an unknown is about where it is no part."""


def exact(value: Exact, field: str, *, above: Exact | None = None, at_most: Exact | None = None) -> Decimal:
    """Take a number as it is written, or raise InputError naming the field.

    Parameters
    ----------
    value : Decimal, int, str or float
        Finite, at least 0 (and above `above`), at most 1e12 or `at_most`, at most 100 decimal places. A float is taken
        by its shortest text.
    field : str
        Named in errors.

    Examples
    --------
    >>> exact(0.1, "price") + exact("0.2", "price")
    Decimal('0.3')
    """
    try:
        number = exact_decimal(value)
    except MoneyError as error:
        raise InputError(field, str(error)) from None
    if number < 0:
        raise InputError(field, f"must be at least 0, got {value}")
    if above is not None and not number > Decimal(str(above)):
        raise InputError(field, f"must be more than {above}, got {value}")
    if at_most is not None and number > Decimal(str(at_most)):
        raise InputError(field, f"must be at most {at_most}, got {value}")
    return number


@dataclass(frozen=True, slots=True)
class Line:
    """Some of one part."""

    number: str
    """Catalogue number."""
    quantity: Exact
    """0 or more; metres of wire and the like may be broken."""
    list_price: Exact | None
    """Of one [currency of the line]; None where it is not known."""
    currency: str | None
    supplier: str | None
    needs: tuple[str, ...] = ()
    """What else is missing to put a price to it."""


@dataclass(frozen=True, slots=True)
class Terms:
    """What a project pays: its currency, discounts, exchange rates and price of labour."""

    currency: str
    """Of the project."""
    discounts: Mapping[str, Exact] = field(default_factory=dict)
    """Share of the list price that each supplier takes off, 0 to 1."""
    rates: Mapping[str, Exact] = field(default_factory=dict)
    """What one unit of another currency is worth in the project's currency, above 0."""
    labour_per_hour: Exact | None = None
    """[project's currency]; None where it is not known."""


@dataclass(frozen=True, slots=True)
class Job:
    """Parts and hours of one opening, or of anything else that is priced whole."""

    lines: Sequence[Line] = ()
    hours: Exact = 0
    """Of labour, 0 or more [h]."""
    needs: tuple[str, ...] = ()
    """What is missing to know all its hours."""


@dataclass(frozen=True, slots=True)
class Unknown:
    """A line that no price could be put to."""

    about: str
    """Catalogue number, or `LABOUR`."""
    quantity: Decimal
    """Of the part; of labour the hours without a price, 0 where it is hours that are missing."""
    needs: tuple[str, ...]

    @property
    def text(self) -> str:
        """As it is printed.

        Examples
        --------
        >>> Unknown("C-1", Decimal(2), ("list price",)).text
        'unknown: needs list price (C-1)'
        """
        return f"unknown: needs {', '.join(self.needs)} ({self.about})"


@dataclass(frozen=True, slots=True)
class Cost:
    """Exact cost of what is known, and what is not known."""

    parts: Decimal = ZERO
    """[project's currency]."""
    labour: Decimal = ZERO
    """[project's currency]."""
    hours: Decimal = ZERO
    """Of labour, priced or not [h]."""
    unknown: tuple[Unknown, ...] = ()
    """In order of first meeting; alike lines are one, with their quantities added."""
    at_list: tuple[str, ...] = ()
    """Numbers of the parts that stand at list price because no discount is given for their supplier."""

    @property
    def total(self) -> Decimal:
        """Parts and labour [project's currency]; of what is known."""
        return summed((self.parts, self.labour))

    @property
    def complete(self) -> bool:
        """Whether nothing is unknown."""
        return not self.unknown


def cost_of(job: Job, terms: Terms) -> Cost:
    """Price the parts and the hours of a job.

    Parameters
    ----------
    job : Job
        Its lines in any order; a part may stand on several.
    terms : Terms
        The project's.

    Returns
    -------
    Cost
        Parts: sum of quantity · list price · (1 - discount) · rate. Labour: hours · price of an hour. A line without
        price, currency or rate is in `unknown` and adds nothing.

    Raises
    ------
    InputError
        Names the value that cannot be taken, by the part's number.

    Notes
    -----
    Basis: common practice. A supplier for which no discount is given sells at list price, which `at_list` says.

    Examples
    --------
    >>> terms = Terms("USD", {"North": "0.35"}, {"EUR": "1.08"}, 85)
    >>> lines = [Line("C-1", 2, "149.90", "EUR", "North"), Line("U-7", 1, None, "USD", "North")]
    >>> cost = cost_of(Job(lines, "1.4"), terms)
    >>> cost.parts, cost.labour, cost.total
    (Decimal('210.459600'), Decimal('119.0'), Decimal('329.459600'))
    >>> [unknown.text for unknown in cost.unknown]
    ['unknown: needs list price (U-7)']
    """
    _check_terms(terms)
    parts, unknown, at_list = [], [], []
    for line in job.lines:
        quantity = exact(line.quantity, f"quantity of {line.number}")
        price = _price(line, terms)
        if isinstance(price, tuple):
            unknown.append(Unknown(line.number, quantity, price))
            continue
        parts.append(product(quantity, price))
        if line.supplier is None or line.supplier not in terms.discounts:
            at_list.append(line.number)
    # Hours are told though their price is not: a plan of the work needs them all the same.
    hours, labour = exact(job.hours, "hours"), ZERO
    if terms.labour_per_hour is not None:
        labour = product(hours, exact(terms.labour_per_hour, "labour_per_hour"))
    elif hours:
        unknown.append(Unknown(LABOUR, hours, ("labour price per hour",)))
    # Hours that are missing have no number; the line says that there is something all the same.
    if job.needs:
        unknown.append(Unknown(LABOUR, ZERO, job.needs))
    return Cost(summed(parts), labour, hours, _merged(unknown), tuple(dict.fromkeys(at_list)))


def combined(costs: Iterable[Cost]) -> Cost:
    """Add costs exactly: of openings to a building, of buildings to a project.

    In whatever groups the same costs are added, the groups' totals add up to the same whole.

    Examples
    --------
    >>> combined([Cost(Decimal("0.1")), Cost(Decimal("0.2"), Decimal(1))]).total
    Decimal('1.3')
    """
    held = list(costs)
    return Cost(
        summed(cost.parts for cost in held),
        summed(cost.labour for cost in held),
        summed(cost.hours for cost in held),
        _merged(unknown for cost in held for unknown in cost.unknown),
        tuple(dict.fromkeys(number for cost in held for number in cost.at_list)),
    )


def by_key(costs: Iterable[tuple[Key, Cost]]) -> dict[Key, Cost]:
    """Add costs by a key, such as building or set, in order of first meeting.

    Parameters
    ----------
    costs : iterable of (key, Cost)
        Each cost once, so that `combined` of the answer is `combined` of what was given.

    Examples
    --------
    >>> found = by_key([("A", Cost(Decimal(1))), ("B", Cost(Decimal(2))), ("A", Cost(Decimal(4)))])
    >>> {key: str(cost.total) for key, cost in found.items()}
    {'A': '5', 'B': '2'}
    """
    held: dict[Key, list[Cost]] = {}
    for key, cost in costs:
        held.setdefault(key, []).append(cost)
    return {key: combined(group) for key, group in held.items()}


def _check_terms(terms: Terms) -> None:
    if not terms.currency:
        raise InputError("currency", "is missing")
    own = terms.rates.get(terms.currency)
    # Another rate than 1 contradicts itself: the rates may be meant for another currency of the project.
    if own is not None and exact(own, f"rate of {terms.currency}") != 1:
        raise InputError(f"rate of {terms.currency}", f"is the project's own currency and must be 1, got {own}")


def _price(line: Line, terms: Terms) -> Decimal | tuple[str, ...]:
    """Price of one in the project's currency, or what is missing for it."""
    exchange = _exchange(line, terms)
    factor = exchange.factor(line.currency or "")
    needs = line.needs if factor is not None else (*line.needs, exchange.missing(line.currency or ""))
    if line.list_price is None or needs or factor is None:
        return ("list price", *needs) if line.list_price is None and not line.needs else needs
    price = exact(line.list_price, f"list price of {line.number}")
    if line.supplier is not None and line.supplier in terms.discounts:
        discount = exact(terms.discounts[line.supplier], f"discount of {line.supplier}", at_most=1)
        # Money is never taken through floats: a discount of 0.15 has no exact one, and a sum of thousands would be
        # off by cents.
        price = product(price, less(ONE, discount))
    return product(price, factor)


def _exchange(line: Line, terms: Terms) -> Exchange:
    # Only the rate that this line needs is looked at: a wrong rate of another currency must not stop it.
    if line.currency is None or line.currency == terms.currency or line.currency not in terms.rates:
        return Exchange(terms.currency)
    return Exchange(
        terms.currency, {line.currency: exact(terms.rates[line.currency], f"rate of {line.currency}", above=0)}
    )


def _merged(unknown: Iterable[Unknown]) -> tuple[Unknown, ...]:
    held: dict[tuple[str, tuple[str, ...]], list[Decimal]] = {}
    for each in unknown:
        held.setdefault((each.about, each.needs), []).append(each.quantity)
    return tuple(Unknown(about, summed(held[about, needs]), needs) for about, needs in held)
