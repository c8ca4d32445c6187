"""Money: exact decimal amounts, each in its currency, and what one currency is worth in another.

Here belongs all that is exact: taking a number as it is written, adding and multiplying without rounding, rounding for
print, writing an amount so that it is read back the same. Terms, discounts, labour: `hwsched.calc.parts.cost`.

How nothing is rounded: every number is taken as the decimal number that is written (a float by its shortest text, so
0.1 is one tenth) and is added and multiplied as `Decimal` in a context that raises an error rather than round.
Nothing is divided. Only `rounded` rounds, for print.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from decimal import ROUND_HALF_UP, Clamped, Context, Decimal, FloatOperation, Inexact, InvalidOperation, Overflow
from typing import Final

Exact = Decimal | int | str | float
"""A number as it is written."""

ZERO: Final = Decimal(0)
ONE: Final = Decimal(1)
LARGEST: Final = Decimal(10) ** 12
MOST_PLACES: Final = 100
"""Decimal places that a number may have: a product of all factors still fits the context without rounding."""
_EXACTLY: Final = Context(prec=1000, traps=[Inexact, InvalidOperation, Overflow, Clamped, FloatOperation])


class MoneyError(ValueError):
    """A number that is no amount, or amounts that cannot be added."""


class CurrencyError(MoneyError):
    """Amounts of different currencies were to be added or compared; convert them first, see `Exchange`."""


def exact_decimal(value: object) -> Decimal:
    """Take a number as it is written.

    Parameters
    ----------
    value : Decimal, int, str or float
        A float is taken by its shortest text.

    Returns
    -------
    Decimal
        Finite, at most 1e12 either way, at most 100 decimal places.

    Raises
    ------
    MoneyError
        For anything else; says what is wrong, after "must be" or "is".

    Examples
    --------
    >>> exact_decimal(12.1), exact_decimal("12.10"), exact_decimal(3)
    (Decimal('12.1'), Decimal('12.10'), Decimal('3'))
    """
    # A yes would be taken as a price of 1.
    if isinstance(value, bool) or not isinstance(value, Decimal | int | str | float):
        raise MoneyError(f"must be a number, got {value!r}")
    try:
        # By its shortest text: Decimal of a float itself would hold what binary digits make of 0.1.
        number = value if isinstance(value, Decimal) else Decimal(str(value))
    except (InvalidOperation, ValueError):
        raise MoneyError(f"must be a number, got {value!r}") from None
    if not number.is_finite():
        raise MoneyError(f"must be a finite number, got {value}")
    places = number.as_tuple().exponent
    if abs(number) > LARGEST or (isinstance(places, int) and -places > MOST_PLACES):
        raise MoneyError(f"is too large or has too many decimal places: {value}")
    return number


def decimal_text(number: Decimal) -> str:
    """Write an amount in the one way in which it is held: no exponent, no trailing zeros.

    Examples
    --------
    >>> decimal_text(Decimal("12.10")), decimal_text(Decimal("1E+2")), decimal_text(Decimal("-0.00"))
    ('12.1', '100', '0')
    """
    text = f"{number:f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    # Decimal knows a negative zero, whose text would differ from that of the same amount.
    return "0" if text == "-0" else text


def product(*factors: Decimal) -> Decimal:
    """Multiply without rounding; raises `decimal.Inexact` where that cannot be.

    Examples
    --------
    >>> product(Decimal("1.00000000000000000001"), Decimal("1.00000000000000000001"))
    Decimal('1.0000000000000000000200000000000000000001')
    """
    result = ONE
    for factor in factors:
        result = _EXACTLY.multiply(result, factor)
    return result


def summed(amounts: Iterable[Decimal]) -> Decimal:
    """Add without rounding; raises `decimal.Inexact` where that cannot be.

    Examples
    --------
    >>> summed([Decimal("1e12"), Decimal("1e-30")])
    Decimal('1000000000000.000000000000000000000000000001')
    """
    result = ZERO
    for amount in amounts:
        # Not by `sum`: that adds in the context of the thread, which rounds to 28 digits without a word.
        result = _EXACTLY.add(result, amount)
    return result


def less(amount: Decimal, other: Decimal) -> Decimal:
    """Subtract without rounding; raises `decimal.Inexact` where that cannot be."""
    return _EXACTLY.subtract(amount, other)


def rounded(amount: Decimal, places: int = 2) -> Decimal:
    """Round an amount for print, halves up (common practice of invoices).

    Rounded parts need not add up to the rounded total: a page that shows both says so.

    Parameters
    ----------
    amount : Decimal
        In any currency.
    places : int
        Decimal places, 0 to 10.

    Examples
    --------
    >>> rounded(Decimal("12.345"))
    Decimal('12.35')
    """
    if not 0 <= places <= 10:
        raise MoneyError(f"places must be 0 to 10, got {places}")
    # A context of its own, since the usual 28 digits refuse a long exact sum.
    return amount.quantize(ONE.scaleb(-places), rounding=ROUND_HALF_UP, context=Context(prec=1000))


@dataclass(frozen=True, slots=True)
class Money:
    """An amount of a currency. Amounts add and compare in one currency only.

    Examples
    --------
    >>> Money(Decimal("0.1"), "USD") + Money(Decimal("0.2"), "USD")
    Money(amount=Decimal('0.3'), currency='USD')
    """

    amount: Decimal
    currency: str
    """Three letters (ISO 4217); empty where nobody has told."""

    def __add__(self, other: "Money") -> "Money":
        return Money(_EXACTLY.add(self.amount, self._alike(other)), self.currency)

    def __lt__(self, other: "Money") -> bool:
        return self.amount < self._alike(other)

    def times(self, quantity: Exact) -> "Money":
        """Return what so many cost."""
        return Money(product(self.amount, exact_decimal(quantity)), self.currency)

    def shown(self, places: int = 2) -> str:
        """Write it for people, rounded.

        Examples
        --------
        >>> Money(Decimal("1234.505"), "EUR").shown(), Money(Decimal(2), "").shown()
        ('1,234.51 EUR', '2.00')
        """
        return f"{rounded(self.amount, places):,} {self.currency}".rstrip()

    def _alike(self, other: "Money") -> Decimal:
        if not isinstance(other, Money):
            raise MoneyError(f"an amount of money goes with another one only, got {other!r}")
        if other.currency != self.currency:
            mine, theirs = (each or "no currency" for each in (self.currency, other.currency))
            raise CurrencyError(f"amounts in {mine} and in {theirs} are added or compared; convert them first")
        return other.amount


@dataclass(frozen=True, slots=True)
class Exchange:
    """What amounts are worth in one currency, by the rates that a project declares."""

    currency: str | None
    """In which worth is told; empty where no part tells a currency, None while it is not known which."""
    rates: Mapping[str, Decimal] = field(default_factory=dict)
    """Currency to what one unit of it is worth in that one, above 0."""

    def factor(self, currency: str) -> Decimal | None:
        """Return what one unit of a currency is worth; None where that is not known."""
        if currency == self.currency:
            return ONE
        return self.rates.get(currency) if self.currency and currency else None

    def worth(self, money: Money) -> Money | None:
        """Return what an amount is worth; None where `missing` says what is lacking.

        Examples
        --------
        >>> exchange = Exchange("USD", {"EUR": Decimal("1.08")})
        >>> exchange.worth(Money(Decimal(100), "EUR"))
        Money(amount=Decimal('108.00'), currency='USD')
        >>> exchange.worth(Money(Decimal(100), "SEK")), exchange.missing("SEK")
        (None, 'exchange rate SEK to USD')
        """
        factor = self.factor(money.currency)
        if factor is None or self.currency is None:
            return None
        return Money(money.amount if factor is ONE else _EXACTLY.multiply(money.amount, factor), self.currency)

    def missing(self, currency: str) -> str:
        """Say what is lacking to tell the worth of amounts of a currency; empty where nothing is."""
        if self.factor(currency) is not None:
            return ""
        if not currency:
            return "currency"
        return f"exchange rate {currency} to {self.currency}" if self.currency else "currency of the project"
