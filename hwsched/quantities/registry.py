"""The one unit registry. Nothing else in the program imports pint.

Its parser is given names of units only, never numbers: it reads 6'-8" as -2 and 1 3/4 in as 0.75 in without a word. It
makes no cache folder: the 0.1 s saved once a run are not worth files that another program may have left there.
"""

from functools import lru_cache
from typing import Any, Final

import pint

_MEASURES: Final = {
    "meter": "a length",
    "meter ** 2": "an area",
    "meter ** 3": "a volume",
    "kilogram": "a mass",
    "second": "a time",
    "hertz": "a frequency",
    "ampere": "a current",
    "coulomb": "a charge",
    "kelvin": "a temperature",
    "volt": "a voltage",
    "ohm": "a resistance",
    "watt": "a power",
    "joule": "an energy or a torque",
    "newton": "a force",
    "pascal": "a pressure",
    "radian": "an angle or a plain number",
}
"""What a unit of each kind measures, for messages."""


class UnknownUnitError(ValueError):
    """The registry has no such unit."""


class OtherDimensionError(ValueError):
    """The unit measures something else; the text says what, with its article."""


@lru_cache(maxsize=1)
def _registry() -> pint.UnitRegistry[Any]:
    # Made when first asked for: it takes longer to build than this package to load, and most starts convert nothing.
    return pint.UnitRegistry()


@lru_cache(maxsize=1024)
def conversion(unit: str, target: str) -> tuple[float, float]:
    """Factor and offset that take a number in one unit to another: target = factor · number + offset.

    Parameters
    ----------
    unit, target : str
        Names of units.

    Returns
    -------
    tuple of float
        Factor and offset; the offset is 0 for all but temperatures.

    Raises
    ------
    UnknownUnitError
        Where the registry knows no such unit.
    OtherDimensionError
        Where the two measure different things.
    """
    registry = _registry()
    try:
        source = registry.parse_units(unit)
        wanted = registry.parse_units(target)
    # The parser evaluates what people type and falls over it in many ways; all of them mean that it is no unit.
    except (pint.errors.PintError, AttributeError, AssertionError, ValueError, TypeError, SyntaxError) as error:
        raise UnknownUnitError(str(error)) from None
    if source.dimensionality != wanted.dimensionality:
        same = (words for name, words in _MEASURES.items() if registry.parse_units(name).is_compatible_with(source))
        raise OtherDimensionError(next(same, f"a quantity of {source.dimensionality}"))
    # Two points give factor and offset, which degrees Fahrenheit need; a factor alone would be wrong for
    # temperatures.
    zero = float(registry.Quantity(0.0, source).to(wanted).magnitude)
    one = float(registry.Quantity(1.0, source).to(wanted).magnitude)
    return one - zero, zero
