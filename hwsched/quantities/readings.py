"""What a reading of a length can be, and what is said when there is none.

Here belong the units, the results and the refusals. How text becomes a result stands in `lengths` and below it.
"""

from dataclasses import dataclass
from typing import Final, Literal, get_args

BareUnit = Literal["in", "ft", "mm", "cm", "m"]
"""Unit that a number without one takes: the column's, as the header or the user says."""

BARE_UNITS: Final[tuple[BareUnit, ...]] = get_args(BareUnit)
MM_PER_INCH: Final = 25.4
MM_PER_FOOT: Final = 304.8
# Inch and foot: international yard and pound agreement of 1959, exact.
MM_PER_UNIT: Final[dict[str, float]] = {"in": MM_PER_INCH, "ft": MM_PER_FOOT, "mm": 1.0, "cm": 10.0, "m": 1000.0}

LEAST_LEAF_MM: Final = 300.0
"""From here on a length may be a leaf's width, so that a 2 before it may count leaves."""

SHORTHAND: Final = "ft-in"
"""Said as assumed unit where digits were read as the door trade's feet and inches (3068, 2/8, 3-0)."""


@dataclass(frozen=True, slots=True)
class One:
    """One length."""

    mm: float
    assumed_unit: str | None = None
    """Unit taken for a number that carried none; None where the text said it."""
    approximate: bool = False
    """The text said "about"."""


@dataclass(frozen=True, slots=True)
class Size:
    """Width by height."""

    width_mm: float
    height_mm: float
    assumed_unit: str | None = None
    approximate: bool = False


@dataclass(frozen=True, slots=True)
class Pair:
    """Leaves of equal width: the width of one leaf, and how many there are."""

    leaf_mm: float
    leaves: int = 2
    assumed_unit: str | None = None
    approximate: bool = False


@dataclass(frozen=True, slots=True)
class PairSize:
    """Leaves of equal size: width and height of one leaf, and how many there are."""

    width_mm: float
    height_mm: float
    leaves: int = 2
    assumed_unit: str | None = None
    approximate: bool = False


@dataclass(frozen=True, slots=True)
class Range:
    """From a lower to an upper length."""

    low_mm: float
    high_mm: float
    assumed_unit: str | None = None
    approximate: bool = False


Reading = One | Size | Pair | PairSize | Range


class ReadingError(ValueError):
    """A text or cell that is not what is wanted, or that can be read in more than one way.

    Parameters
    ----------
    read : str
        What was read, as it stood.
    problem : str
        Why it is refused; where it can be read in several ways, all of them.
    suggestion : str
        What to write instead; may be empty.
    """

    def __init__(self, read: str, problem: str, suggestion: str = "") -> None:
        self.read = read
        self.problem = problem
        self.suggestion = suggestion
        self.message = f"{read}: {problem}" + (f"; {suggestion}" if suggestion else "")
        super().__init__(self.message)


class LengthError(ReadingError):
    """Raised where a text or cell is no length, or can be read as two."""


class QuantityError(ReadingError):
    """Raised where a text or cell is no quantity of the kind that is wanted."""


class Refusal(Exception):  # noqa: N818 (not an error of the caller: a step inside the reading)
    """Refusal from within the grammar, before the text as it stood is put in front of it."""

    def __init__(self, problem: str, suggestion: str = "") -> None:
        super().__init__(problem)
        self.problem = problem
        self.suggestion = suggestion
