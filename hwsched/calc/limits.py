"""Which numbers a calculation takes, and the refusal that names the field of one it cannot take."""

import math
from dataclasses import dataclass
from typing import Annotated, Final

_LARGEST: Final = 1e12
"""No size, count or electrical value of a door is larger; sums and squares up to here stay finite."""


class InputError(ValueError):
    """A value that a calculator cannot take.

    Parameters
    ----------
    field : str
        Path of the field in the input object, such as ``keepouts[2].clearance_mm``.
    message : str
        What is wrong and what would be accepted.
    """

    def __init__(self, field: str, message: str) -> None:
        super().__init__(f"{field}: {message}")
        self.field = field
        self.message = message


@dataclass(frozen=True, slots=True)
class Within:
    """Limits of a number; declared once, for what is read and for what comes from Python."""

    above: float | None = None
    at_least: float | None = None
    at_most: float | None = None
    below: float | None = None

    def check(self, value: object, path: str) -> float:
        """Return the value as a finite float within the limits, or raise InputError naming the field."""
        if self.below is None:
            return check_number(value, path, above=self.above, at_least=self.at_least, at_most=self.at_most)
        # Where there is an upper bound that is itself refused, both bounds stand in one sentence: a person who is
        # told one of them would run into the other next.
        number = check_number(value, path, at_least=self.at_least)
        if self.above is not None and not self.above < number < self.below:
            raise InputError(path, f"must be more than {self.above:g} and less than {self.below:g}, got {number:g}")
        if not number < self.below:
            share = "is a share and " if (self.at_least, self.below) == (0, 1) else ""
            raise InputError(path, f"{share}must be below {self.below:g}, got {number:g}")
        return number

    def bounds(self) -> tuple[float, float]:
        """Least and greatest float that is taken."""
        low, high = -_LARGEST, _LARGEST
        if self.above is not None:
            # A bound that is itself refused becomes the next float: a form's field knows only closed ranges.
            low = math.nextafter(self.above, math.inf)
        if self.at_least is not None:
            low = max(low, self.at_least)
        if self.at_most is not None:
            high = min(high, self.at_most)
        if self.below is not None:
            high = min(high, math.nextafter(self.below, -math.inf))
        return low, high

    @property
    def text(self) -> str:
        """As help shows it, such as "above 0 to 1"; empty without limits."""
        low = "" if self.above is None else f"above {_shown(self.above)}"
        if self.at_least is not None:
            low = _shown(self.at_least)
        high = "" if self.at_most is None else _shown(self.at_most)
        if self.below is not None:
            high = f"below {_shown(self.below)}"
        if low and high:
            return f"{low} to {high}"
        if self.at_least is not None:
            return f"{low} or more"
        return low or (f"{high} or less" if self.at_most is not None else high)


ANY: Final = Within()
Positive = Annotated[float, Within(above=0)]
"""A number above 0."""
NotNegative = Annotated[float, Within(at_least=0)]
"""A number of 0 or more."""
Angle = Annotated[float, Within(above=-90, below=90)]
"""An angle that leads away from a face [deg]."""


def _shown(number: float) -> str:
    return f"{int(number):,}" if number == int(number) else f"{number:g}"


def check_number(
    value: object,
    field: str,
    *,
    above: float | None = None,
    at_least: float | None = None,
    at_most: float | None = None,
) -> float:
    """Return the value as a finite float within limits, or raise InputError naming the field."""
    # In Python true is an int: a yes taken for a length would pass as 1 mm.
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise InputError(field, f"must be a number, got {value!r}")
    try:
        number = float(value)
    # JSON has whole numbers of any length, of which Python makes an int that no float can hold.
    except OverflowError:
        raise InputError(field, "is too large") from None
    if not math.isfinite(number):
        raise InputError(field, f"must be a finite number, got {value}")
    if abs(number) > _LARGEST:
        raise InputError(field, f"is too large: {number:g}")
    if above is not None and not number > above:
        raise InputError(field, f"must be more than {above:g}, got {number:g}")
    if at_least is not None and number < at_least:
        raise InputError(field, f"must be at least {at_least:g}, got {number:g}")
    if at_most is not None and number > at_most:
        raise InputError(field, f"must be at most {at_most:g}, got {number:g}")
    return number


def check_point(value: object, field: str, size: int) -> tuple[float, ...]:
    """Return a point of `size` finite numbers, or raise InputError naming the field."""
    if not isinstance(value, list | tuple) or len(value) != size:
        raise InputError(field, f"must be a list of {size} numbers")
    return tuple(check_number(v, f"{field}[{i}]") for i, v in enumerate(value))
