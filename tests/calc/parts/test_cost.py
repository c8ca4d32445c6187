"""Cost: nothing rounded, nothing missing counted as 0, groups that add up; worked by hand."""

import doctest
from decimal import Decimal, Inexact
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hwsched.calc.calculator import InputError
from hwsched.calc.parts import cost as module
from hwsched.calc.parts.cost import (
    LABOUR,
    Cost,
    Job,
    Line,
    Terms,
    Unknown,
    by_key,
    combined,
    cost_of,
    exact,
)
from hwsched.quantities.money import MoneyError, product, rounded, summed

TERMS = Terms("USD", {"North": "0.35", "South": 0}, {"EUR": "1.08", "GBP": 1.27}, 85)


def test_docs():
    assert doctest.testmod(module).failed == 0


def test_worked_by_hand():
    lines = [
        Line("C-1", 2, "149.90", "EUR", "North"),  # 2 · 149.90 · 0.65 · 1.08 = 210.4596
        Line("U-7", 1, 412.5, "USD", "South"),  # 412.50
        Line("W-2", 12.5, 0.42, "GBP", "South"),  # 12.5 · 0.42 · 1.27 = 6.6675
    ]
    cost = cost_of(Job(lines, "1.375"), TERMS)
    assert cost.parts == Decimal("629.6271")
    assert cost.labour == Decimal("116.875")  # 1.375 · 85
    assert cost.total == Decimal("746.5021")
    assert cost.hours == Decimal("1.375")
    assert cost.complete
    assert cost.at_list == ()


@pytest.mark.parametrize(
    ("line", "needs"),
    [
        (Line("A", 3, None, "USD", "North"), ("list price",)),
        (Line("A", 3, 10, None, "North"), ("currency",)),
        (Line("A", 3, None, None, "North"), ("list price", "currency")),
        (Line("A", 3, 10, "SEK", "North"), ("exchange rate SEK to USD",)),
        (Line("A", 3, None, "SEK", "North"), ("list price", "exchange rate SEK to USD")),
    ],
)
def test_what_is_missing_is_unknown_and_never_nought(line, needs):
    cost = cost_of(Job([line, Line("B", 1, 5, "USD", "South")]), TERMS)
    assert cost.unknown == (Unknown("A", Decimal(3), needs),)
    assert cost.parts == 5
    assert not cost.complete
    assert cost.unknown[0].text == f"unknown: needs {', '.join(needs)} (A)"


def test_nothing_known_at_all():
    assert cost_of(Job(), TERMS) == Cost()
    assert combined([]) == Cost()
    assert by_key([]) == {}


def test_a_price_of_nought_is_known():
    assert cost_of(Job([Line("A", 3, 0, "USD", "South")]), TERMS) == Cost()
    assert cost_of(Job([Line("A", 3, 10, "USD", "South")]), Terms("USD", {"South": 1})) == Cost()


def test_labour_without_a_price_or_hours():
    priceless = cost_of(Job((), 2), Terms("USD"))
    assert priceless.labour == 0
    assert priceless.hours == 2
    assert priceless.unknown == (Unknown(LABOUR, Decimal(2), ("labour price per hour",)),)
    assert cost_of(Job((), 0), Terms("USD")).complete
    half = cost_of(Job((), 2, ("hours of fit-rim (any)",)), TERMS)
    assert half.labour == 170
    assert half.unknown == (Unknown(LABOUR, Decimal(0), ("hours of fit-rim (any)",)),)


def test_no_discount_given_is_said():
    lines = [Line("A", 1, 10, "USD", "East"), Line("B", 1, 10, "USD", None), Line("A", 1, 10, "USD", "East")]
    cost = cost_of(Job(lines), TERMS)
    assert cost.parts == 30
    assert cost.at_list == ("A", "B")
    assert cost_of(Job([Line("A", 1, 10, "USD", "South")]), TERMS).at_list == ()  # its discount is known: none


def test_unknown_lines_alike_are_one():
    lines = [Line("A", 1, None, "USD", None), Line("A", "0.5", None, "USD", None), Line("A", 4, 2, "SEK", None)]
    cost = combined([cost_of(Job(lines), TERMS)] * 2)
    assert [(u.about, u.quantity, u.needs) for u in cost.unknown] == [
        ("A", 3, ("list price",)),
        ("A", 8, ("exchange rate SEK to USD",)),
    ]


@pytest.mark.parametrize(
    ("job", "terms", "words"),
    [
        (Job([Line("A", -1, 1, "USD", None)]), TERMS, "quantity of A: must be at least 0"),
        (Job([Line("A", "few", 1, "USD", None)]), TERMS, "quantity of A: must be a number"),
        (Job([Line("A", True, 1, "USD", None)]), TERMS, "quantity of A: must be a number"),
        (Job([Line("A", 1, -0.01, "USD", None)]), TERMS, "list price of A: must be at least 0"),
        (Job([Line("A", 1, float("inf"), "USD", None)]), TERMS, "list price of A: must be a finite"),
        (Job([Line("A", 1, "1e13", "USD", None)]), TERMS, "list price of A: is too large"),
        (Job([Line("A", 1, "1e-101", "USD", None)]), TERMS, "too many decimal places"),
        (Job([Line("A", 1, 1, "USD", "N")]), Terms("USD", {"N": "1.01"}), "discount of N: must be at most 1"),
        (Job([Line("A", 1, 1, "USD", "N")]), Terms("USD", {"N": 35}), "discount of N: must be at most 1"),
        (Job([Line("A", 1, 1, "EUR", None)]), Terms("USD", {}, {"EUR": 0}), "rate of EUR: must be more than 0"),
        (Job(), Terms("USD", {}, {"USD": "1.1"}), "rate of USD: is the project's own"),
        (Job(), Terms(""), "currency: is missing"),
        (Job((), -1), TERMS, "hours: must be at least 0"),
        (Job((), 1), Terms("USD", labour_per_hour=-5), "labour_per_hour: must be at least 0"),
    ],
)
def test_bad_values_are_named(job, terms, words):
    with pytest.raises(InputError, match=words):
        cost_of(job, terms)


def test_numbers_are_taken_as_written():
    assert exact(0.1, "x") == Decimal("0.1")
    assert exact(1e-7, "x") == Decimal("0.0000001")
    assert exact(Decimal("0.30"), "x") == exact("0.3", "x")
    # A thousand tenths: floats add up to 99.9999999999986.
    assert summed([exact(0.1, "x")] * 1000) == 100
    with pytest.raises(Inexact):
        product(*[Decimal("1.0000000001")] * 200)
    with pytest.raises(Inexact):
        summed([Decimal(1), Decimal("1e-1001")])


def test_rounding_is_for_print():
    assert [str(rounded(Decimal(text))) for text in ("0.005", "2.675", "2.6749999", "10")] == [
        "0.01",
        "2.68",
        "2.67",
        "10.00",
    ]
    assert rounded(Decimal("1234.5"), 0) == 1235
    assert rounded(Decimal("1e30")) == Decimal("1e30")
    with pytest.raises(MoneyError, match="places"):
        rounded(Decimal(1), -1)


def floats(most):
    """Of all their digits, but none so small that it has more decimal places than are taken."""
    return st.one_of(st.just(0.0), st.floats(1e-9, most))


amounts = st.decimals(min_value=0, max_value=10**6, places=4)
lines = st.builds(
    Line,
    st.sampled_from(["A", "B", "C"]),
    st.one_of(st.integers(0, 500), st.decimals(min_value=0, max_value=100, places=3)),
    st.one_of(st.none(), amounts, floats(1e6)),
    st.sampled_from([None, "USD", "EUR", "SEK"]),
    st.sampled_from([None, "North", "South", "East"]),
)
jobs = st.builds(Job, st.lists(lines, max_size=4), floats(100))
places = st.tuples(st.sampled_from("ab"), st.sampled_from("st"), st.integers(0, 3))
terms = st.builds(
    Terms,
    st.just("USD"),
    st.fixed_dictionaries({"North": floats(1)}, optional={"South": st.decimals(0, 1, places=6)}),
    st.fixed_dictionaries({"EUR": st.floats(0.001, 1000)}),
    st.one_of(st.none(), amounts),
)


@given(st.lists(st.tuples(places, jobs), max_size=12), terms)
def test_groups_add_up_exactly(work, terms):
    costs = [(key, cost_of(job, terms)) for key, job in work]
    whole = combined(cost for _, cost in costs)
    for grouping in (lambda k: k[0], lambda k: k[1], lambda k: k[2], lambda k: k, lambda k: None):
        groups = by_key((grouping(key), cost) for key, cost in costs)
        again = combined(groups.values())
        assert (again.parts, again.labour, again.hours, again.total) == (
            whole.parts,
            whole.labour,
            whole.hours,
            whole.total,
        )
        assert {(u.about, u.needs): u.quantity for u in again.unknown} == {
            (u.about, u.needs): u.quantity for u in whole.unknown
        }
        assert set(again.at_list) == set(whole.at_list)
    # Opening to building in one step, or by way of the set.
    by_set = by_key((key[:2], cost) for key, cost in costs)
    assert {key: cost.total for key, cost in by_key((k[0], c) for k, c in by_set.items()).items()} == {
        key: cost.total for key, cost in by_key((k[0], c) for k, c in costs).items()
    }


@given(st.lists(lines, max_size=6), terms)
def test_against_fractions(lines, terms):
    """The same sum in fractions, from the numbers as they are written."""
    known = Fraction(0)
    for line in lines:
        rate = {"USD": 1, "EUR": terms.rates["EUR"]}.get(line.currency)
        if line.list_price is None or rate is None:
            continue
        off = terms.discounts.get(line.supplier, 0)
        price, share, worth = (Fraction(str(number)) for number in (line.list_price, off, rate))
        known += Fraction(str(line.quantity)) * price * (1 - share) * worth
    cost = cost_of(Job(lines), terms)
    assert Fraction(cost.parts) == known
    unpriced = [li for li in lines if li.list_price is None or li.currency not in ("USD", "EUR")]
    assert sum(u.quantity for u in cost.unknown) == sum(Decimal(str(li.quantity)) for li in unpriced)
    assert cost.complete == (not unpriced)
