"""Fewest kinds: one alternative for every opening, trading its cost against the number of different parts in use.

Here belong the question, what is refused and how the answer is told; which alternatives an opening has, and what they
cost, is for whoever fits it. The integer program stands in `part_numbers_model`. Money is whole numbers of its smallest
decimal place, so that answers are added and compared exactly; only the solver sees floating numbers. It decides which
parts are in use; each opening then takes the cheapest alternative that is made of those.
"""

from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from math import ceil
from time import monotonic
from typing import Final

from hwsched.calc.calculator import InputError, check_number
from hwsched.calc.parts.cost import exact
from hwsched.calc.parts.part_numbers_model import WHOLE, Pool, first_offers, rank, reduced, solve
from hwsched.calc.solver import Limits
from hwsched.quantities.money import Exact, product

_UNTIL_PROVEN: Final = Limits()
_NO_GAP: Final = 1e-9
"""Share of the value that is no gap: what the solver's numbers leave of a proven answer."""
_COUNT_SHARE: Final = 0.5
"""Of the time left for the fewest kinds, where their least cost is asked after it."""


@dataclass(frozen=True, slots=True)
class Alternative:
    """One way to equip an opening."""

    cost: Exact
    """Of one opening, 0 or more [currency]."""
    kinds: Collection[str]
    """The different parts that it uses, by catalogue number or by whatever is counted; none is allowed."""


@dataclass(frozen=True, slots=True)
class Group:
    """Openings alike in all that matters, with the ways to equip them."""

    id: str
    count: int
    """Openings, 1 or more."""
    alternatives: Sequence[Alternative]
    """One or more."""


@dataclass(frozen=True, slots=True)
class Choice:
    """The answer and what is proven of it."""

    chosen: tuple[int, ...]
    """Place of the chosen alternative of each group, in the order of the groups."""
    kinds: tuple[str, ...]
    """The different parts in use, sorted."""
    cost: Decimal
    """Of all openings [currency]."""
    value: Decimal
    """What was made least: the cost, with the price of the different parts where one was given [currency]."""
    least_value: float
    """No choice that was allowed has less [currency]; after `fewest`, none with as few different parts as this."""
    least_kinds: int | None
    """No choice has fewer different parts; None where that was not asked."""

    @property
    def gap(self) -> float:
        """Share of the value that a better answer might save; 0 when proven best."""
        gap = (float(self.value) - self.least_value) / float(self.value) if self.value else 0.0
        return gap if gap > _NO_GAP else 0.0

    @property
    def optimal(self) -> bool:
        """Whether the value is proven least."""
        return self.gap == 0.0


class NoChoiceError(InputError):
    """Proven: no choice has as few different parts.

    Parameters
    ----------
    field, message : str
        As of InputError.
    least_kinds : int
        That are needed at least.
    group : str
        The one that alone needs more than are allowed; empty where it is all of them together.
    """

    def __init__(self, field: str, message: str, least_kinds: int, group: str = "") -> None:
        super().__init__(field, message)
        self.least_kinds = least_kinds
        self.group = group


class ChoiceNotFinishedError(InputError):
    """No choice with so few different parts was found before the time was up or the person cancelled; one may exist."""


def choose(groups: Sequence[Group], price_per_kind: Exact, limits: Limits = _UNTIL_PROVEN) -> Choice:
    """Choose for least cost, where every different part in use costs something by itself.

    Parameters
    ----------
    groups : sequence of Group
        Each opening in one.
    price_per_kind : number
        What one more different part in stock is worth avoiding, 0 or more [currency]. At 0 every opening gets its
        cheapest, and of equally cheap ones those that make the fewest different parts together.
    limits : Limits
        When to stop, and whom to tell; `gap` is the share of what can still be saved over the cheapest of each opening.
        By default the answer is proven.

    Returns
    -------
    Choice
        Least sum of count · cost, and price · number of different parts. Stopped, the best found with its gap.

    Raises
    ------
    InputError
        Names the group or value that cannot be taken.

    Examples
    --------
    >>> either = [Alternative(10, ["x"]), Alternative(11, ["y"])]
    >>> groups = [Group("A", 5, either), Group("B", 9, [Alternative(20, ["y"])])]
    >>> choose(groups, 4).kinds, choose(groups, 6).kinds, choose(groups, 6).value
    (('x', 'y'), ('y',), Decimal('241'))
    """
    problem = _read(groups, price_per_kind)
    limits = replace(limits, target=None)
    # Without a price on kinds every opening is at its cheapest; the fewest kinds among those is the better answer of
    # equals.
    if problem.price == 0:
        cheapest = [Pool(p.count, tuple(o for o in p.offers if o[0] == p.offers[0][0])) for p in problem.pools]
        mask, _ = _fewest_count(replace(problem, pools=cheapest), None, limits)
        return _told(problem, mask, problem.base, None)
    pools, needed = reduced(problem.pools, problem.price)
    start = first_offers(pools)
    # The solver may stop at its time with less than the start has: the better of the two is told.
    mask, bound = solve(pools, problem.price, None, replace(limits, step="cost against different parts"), start)
    best = min((mask, start), key=lambda found: _told(problem, needed | found, 0.0, None).value)
    return _told(problem, needed | best, problem.base + problem.price * needed.bit_count() + bound, None)


def fewest(groups: Sequence[Group], limits: Limits = _UNTIL_PROVEN) -> Choice:
    """Choose for the fewest different parts, and among such choices for least cost.

    Parameters
    ----------
    groups, limits
        As of `choose`. Up to half of the time is for the number of parts.

    Returns
    -------
    Choice
        `least_kinds` says what is proven of the number, `least_value` what is proven of the cost with that number.

    Raises
    ------
    InputError
        Names the group or value that cannot be taken.

    Examples
    --------
    >>> either = [Alternative(10, ["x"]), Alternative(11, ["y"])]
    >>> groups = [Group("A", 5, either), Group("B", 9, [Alternative(20, ["y"])])]
    >>> found = fewest(groups)
    >>> found.kinds, found.chosen, found.cost
    (('y',), (1, 0), Decimal('235'))
    """
    problem = _read(groups, 0)
    mask, least = _fewest_count(problem, None, _part(limits))
    return _least_cost(problem, mask.bit_count(), mask, least, limits)


def at_most(groups: Sequence[Group], most: int, limits: Limits = _UNTIL_PROVEN) -> Choice:
    """Choose for least cost with no more different parts than allowed.

    Parameters
    ----------
    groups, limits
        As of `choose`. Up to half of the time is for the question whether there is a choice at all.
    most : int
        Different parts allowed, 0 or more.

    Raises
    ------
    NoChoiceError
        Proven that there is none; says how many are needed, and which group alone needs too many.
    ChoiceNotFinishedError
        None was found in time.
    InputError
        Names the group or value that cannot be taken.

    Examples
    --------
    >>> at_most([Group("A", 1, [Alternative(1, ("x", "y"))])], 1)
    Traceback (most recent call last):
    hwsched.calc.parts.fewest_part_numbers.NoChoiceError: most: group 'A' alone needs 2 different parts, 1 allowed
    """
    if isinstance(most, bool) or not isinstance(most, int) or most < 0:
        raise InputError("most", f"must be a whole number of 0 or more, got {most!r}")
    problem = _read(groups, 0)
    for group, pool in zip(groups, problem.pools, strict=True):
        alone = min(mask.bit_count() for _, mask in pool.offers)
        if alone > most:
            message = f"group {group.id!r} alone needs {alone} different parts, {most} allowed"
            raise NoChoiceError("most", message, alone, group.id)
    mask, least = _fewest_count(problem, most, _part(limits))
    if least > most:
        raise NoChoiceError("most", f"at least {least} different parts are needed, {most} allowed", least)
    if mask.bit_count() > most:
        message = f"stopped with {mask.bit_count()} different parts; whether {most} suffice is not settled"
        raise ChoiceNotFinishedError("most", message)
    return _least_cost(problem, most, mask, least, limits)


@dataclass(frozen=True, slots=True)
class _Problem:
    names: list[str]
    """Of the parts, by bit."""
    unit: Decimal
    """Money of which all costs are whole multiples."""
    stated: list[list[tuple[int, int]]]
    """Cost of one opening and parts of each alternative, by group."""
    counts: list[int]
    pools: list[Pool]
    """One a group."""
    base: int
    """Cost with every opening at its cheapest."""
    price: int


def _read(groups: Sequence[Group], price_per_kind: Exact) -> _Problem:
    price = exact(price_per_kind, "price_per_kind")
    costs: list[list[Decimal]] = []
    seen: set[str] = set()
    for group in groups:
        where = f"group {group.id!r}"
        if group.id in seen:
            raise InputError(where, "is given twice")
        seen.add(group.id)
        if isinstance(group.count, bool) or not isinstance(group.count, int):
            raise InputError(where, f"count must be a whole number, got {group.count!r}")
        check_number(group.count, f"{where} count", at_least=1)
        if not group.alternatives:
            raise InputError(where, "has no alternative")
        # A text is a collection too, of its letters: every letter would count as a part.
        if any(isinstance(a.kinds, str) for a in group.alternatives):
            raise InputError(where, "kinds of an alternative must be several names, not one text")
        costs.append([exact(a.cost, f"{where} alternative {i} cost") for i, a in enumerate(group.alternatives)])
    # Whole units of the smallest coin that occurs: the search compares sums exactly, and never by floats.
    places = max((_places(cost) for cost in [price, *(c for row in costs for c in row)]), default=0)
    scale = Decimal(f"1e{places}")
    # Sorted, since the order of a set changes from run to run, and with it which of two equal answers is found.
    names = sorted({kind for group in groups for a in group.alternatives for kind in a.kinds})
    bit = {name: 1 << i for i, name in enumerate(names)}
    stated = [
        [(int(product(c, scale)), sum(bit[k] for k in set(a.kinds))) for c, a in zip(row, g.alternatives, strict=True)]
        for row, g in zip(costs, groups, strict=True)
    ]
    counts = [group.count for group in groups]
    # Only what is above the cheapest is searched over: small numbers leave the solver its digits.
    cheapest = [min(cost for cost, _ in row) for row in stated]
    pools = [
        Pool(count, tuple(sorted(((cost - low, mask) for cost, mask in row), key=rank)))
        for count, low, row in zip(counts, cheapest, stated, strict=True)
    ]
    base = sum(count * low for count, low in zip(counts, cheapest, strict=True))
    return _Problem(names, Decimal(f"1e-{places}"), stated, counts, pools, base, int(product(price, scale)))


def _places(number: Decimal) -> int:
    exponent = number.as_tuple().exponent
    return max(0, -exponent) if isinstance(exponent, int) else 0


def _fewest_count(problem: _Problem, enough: int | None, limits: Limits) -> tuple[int, int]:
    """Parts of a choice with the fewest of them, or with no more than suffice; and what is proven of the number."""
    by_parts = [Pool(p.count, tuple((0, mask) for _, mask in p.offers)) for p in problem.pools]
    pools, needed = reduced(by_parts, None)
    start = 0
    for pool in sorted(pools, key=lambda p: -min(mask.bit_count() for _, mask in p.offers)):
        start |= min((mask for _, mask in pool.offers), key=lambda mask: ((mask & ~start).bit_count(), mask))
    held = needed.bit_count()
    if enough is not None and held + start.bit_count() <= enough:
        return needed | start, held
    target = None if enough is None else float(enough - held)
    mask, bound = solve(pools, 1, None, replace(limits, gap=0.0, target=target, step="fewest different parts"), start)
    best = min(mask, start, key=lambda found: found.bit_count())
    # A number of parts is whole: a bound of 3.2 proves 4, less what is the solver's rounding.
    return needed | best, min(held + max(0, ceil(bound - WHOLE)), held + best.bit_count())


def _least_cost(problem: _Problem, most: int, start: int, least: int, limits: Limits) -> Choice:
    """Solve for the cost with no more parts than that, from a choice in hand."""
    pools, needed = reduced(problem.pools, None)
    limits = replace(limits, target=None, step=f"least cost with {most} different parts")
    mask, bound = solve(pools, 0, most - needed.bit_count(), limits, start & ~needed)
    best = min((mask | needed, start), key=lambda found: _told(problem, found, 0.0, least).cost)
    return _told(problem, best, problem.base + bound, least)


def _part(limits: Limits) -> Limits:
    # Half of the time, or a hard count would leave none for the cost.
    return replace(limits, until=monotonic() + _COUNT_SHARE * (limits.until - monotonic()))


def _told(problem: _Problem, mask: int, least: float, least_kinds: int | None) -> Choice:
    """Every opening takes the cheapest of what the parts in use allow; told in money."""
    chosen, cost, used = [], 0, 0
    for count, offers in zip(problem.counts, problem.stated, strict=True):
        # The solver's answer is taken for the parts in use alone; which alternative goes with them is worked out
        # exactly.
        allowed = [(*rank(offer), i) for i, offer in enumerate(offers) if not offer[1] & ~mask]
        if not allowed:
            raise RuntimeError("the solver's answer does not hold: openings without alternative")
        low, _, parts, at = min(allowed)
        chosen.append(at)
        cost += count * low
        used |= parts
    value = cost + problem.price * used.bit_count()
    return Choice(
        tuple(chosen),
        tuple(name for i, name in enumerate(problem.names) if used >> i & 1),
        product(Decimal(cost), problem.unit),
        product(Decimal(value), problem.unit),
        min(float(least), float(value)) * float(problem.unit),
        least_kinds,
    )
