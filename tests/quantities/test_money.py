"""Money: taken as written, added exactly, never across currencies; what is lacking is named."""

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hwsched.quantities.money import (
    CurrencyError,
    Exchange,
    Money,
    MoneyError,
    decimal_text,
    exact_decimal,
    less,
    rounded,
    summed,
)

AMOUNTS = st.decimals(-(10**12), 10**12, places=12)


@pytest.mark.parametrize(
    ("written", "number"),
    [
        (12.1, "12.1"),  # the double nearest to 12.1 is 12.0999999999999996447
        (0.1 + 0.2, "0.30000000000000004"),  # shortest text of that double
        (1e-7, "0.0000001"),
        (12, "12"),
        ("12.10", "12.10"),
        ("0.123456789012345678901234567890", "0.123456789012345678901234567890"),
        (Decimal("1E+3"), "1000"),
    ],
)
def test_a_number_is_taken_as_it_is_written(written, number):
    assert exact_decimal(written) == Decimal(number)


@pytest.mark.parametrize(
    "wrong", [True, None, "", "dear", "12,50", "$12", float("inf"), float("nan"), "1e13", "1e-101", "9" * 5000, b"1"]
)
def test_what_is_no_amount_is_refused(wrong):
    with pytest.raises(MoneyError):
        exact_decimal(wrong)


@given(AMOUNTS)
def test_the_text_that_is_held_is_read_back_the_same(amount):
    text = decimal_text(amount)
    assert Decimal(text) == amount
    assert decimal_text(Decimal(text)) == text
    assert "E" not in text
    assert "." not in text or text[-1] not in ".0"


@given(st.lists(AMOUNTS, max_size=20))
def test_sums_are_those_of_fractions_in_any_order(amounts):
    assert Fraction(summed(amounts)) == sum(map(Fraction, amounts), Fraction(0))
    assert summed(amounts) == summed(reversed(amounts))


def test_less_is_exact():
    assert less(Decimal(1), Decimal("0.00000000000000000000000000000001")) == Decimal("0." + "9" * 32)


def test_amounts_of_two_currencies_are_never_added_or_compared():
    dollars, euros, untold = (Money(Decimal(10), currency) for currency in ("USD", "EUR", ""))
    for other in (euros, untold):
        with pytest.raises(CurrencyError, match="convert them first"):
            dollars + other
        with pytest.raises(CurrencyError, match="USD"):
            assert dollars < other
    assert dollars + dollars == Money(Decimal(20), "USD")
    assert dollars < dollars.times("1.5")
    with pytest.raises(MoneyError, match="another one only"):
        dollars + 1


def test_worth_by_the_declared_rates():
    exchange = Exchange("USD", {"EUR": Decimal("1.08")})
    assert exchange.worth(Money(Decimal("149.90"), "EUR")) == Money(Decimal("161.892"), "USD")
    assert exchange.worth(Money(Decimal("149.90"), "USD")) == Money(Decimal("149.90"), "USD")
    assert exchange.missing("EUR") == exchange.missing("USD") == ""


@pytest.mark.parametrize(
    ("exchange", "currency", "lacking"),
    [
        (Exchange("USD", {"EUR": Decimal(1)}), "SEK", "exchange rate SEK to USD"),
        (Exchange("USD"), "", "currency"),
        (Exchange(None, {"EUR": Decimal(1)}), "EUR", "currency of the project"),
        (Exchange(None), "", "currency"),
        (Exchange(""), "EUR", "currency of the project"),
    ],
)
def test_what_is_lacking_is_named_and_nothing_is_guessed(exchange, currency, lacking):
    assert exchange.missing(currency) == lacking
    assert exchange.factor(currency) is None
    assert exchange.worth(Money(Decimal(1), currency)) is None


def test_where_no_part_tells_a_currency_amounts_are_of_one():
    assert Exchange("").worth(Money(Decimal(3), "")) == Money(Decimal(3), "")


def test_rounding_is_for_print_only():
    assert Money(Decimal("2.675"), "USD").shown() == "2.68 USD"
    assert Money(Decimal("1234567.005"), "EUR").shown() == "1,234,567.01 EUR"
    assert rounded(Decimal("0.5"), 0) == 1
