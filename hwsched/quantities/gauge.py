"""Sizes of wire: American wire gauge and cross-section.

Only the size of one conductor. Resistance, stranding and the number of conductors in a cable stand elsewhere.
"""

import math
import re
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from hwsched.quantities.numerals import NUMERAL, read_numeral
from hwsched.quantities.readings import QuantityError, Refusal
from hwsched.quantities.typography import plain_text

_FINEST_AWG: Final = 40
_LONGEST_TEXT: Final = 40
_ACCEPTED: Final = "accepted are AWG and mm², such as 18 AWG or 1.0 mm²"
_SIZE = r"(?P<{0}>[1-4]/0|0{{1,4}}|[0-9]{{1,2}})"
_AWG = re.compile(
    rf"(?:#|no\.? ?|gauge |ga\.? ?)?{_SIZE.format('before')} ?(?:awg|gauge|ga\.?)"
    rf"|(?:awg ?#?|#|ga\.? |gauge ){_SIZE.format('after')}|(?P<aught>[1-4]/0)"
)
_AREA = re.compile(rf"(?P<number>{NUMERAL}) ?(?:mm ?(?:2|²|\^2)|sq\.? ?mm|qmm|mm sq\.?)")
_CABLE = re.compile(r"#?(?P<size>[0-9]{1,2}) ?(?:awg)? ?/ ?(?P<conductors>[1-9][0-9]?)(?:c)?(?: ?awg)?")
_SEVERAL = re.compile(rf"(?P<conductors>[0-9]{{1,2}}) ?(?:x|c|/c|g) ?(?P<size>{NUMERAL} ?(?:mm.*|awg|sq.*)?)")


@dataclass(frozen=True, slots=True)
class Gauge:
    """Size of one conductor."""

    awg: int | None
    """American wire gauge; 0, -1, -2, -3 for 1/0 to 4/0. None where the size was given as an area."""
    area_mm2: float

    @property
    def diameter_mm(self) -> float:
        """Diameter of a solid conductor of this area [mm]."""
        return math.sqrt(4.0 * self.area_mm2 / math.pi)

    def __str__(self) -> str:
        if self.awg is None:
            return f"{self.area_mm2:g} mm²"
        return f"{self.awg} AWG" if self.awg > 0 else f"{1 - self.awg}/0 AWG"


def awg_area_mm2(awg: int) -> float:
    """Cross-section of a wire of American wire gauge.

    Parameters
    ----------
    awg : int
        Gauge, -3 (4/0) to 40.

    Returns
    -------
    float
        Area [mm²].

    Raises
    ------
    ValueError
        Where there is no such gauge.

    Notes
    -----
    d = 0.127 mm · 92^((36 - n) / 39); area = π/4 · d². Source: ASTM B258 (No. 36 is 0.005 in, 4/0 is 0.46 in, and 39
    equal ratios lie between them), read in two copies.

    Examples
    --------
    >>> round(awg_area_mm2(18), 4)
    0.823
    """
    if not -3 <= awg <= _FINEST_AWG:
        raise ValueError(f"no wire gauge {awg}: gauges go from 4/0 (-3) to {_FINEST_AWG}")
    # ASTM B258: 39 equal ratios from No. 36 (0.005 in) to No. 0000 (0.46 in), so that any size follows without a
    # table.
    diameter_mm = 0.127 * math.pow(92.0, (36 - awg) / 39)
    return math.pi / 4.0 * diameter_mm**2


@lru_cache(maxsize=1024)
def parse_gauge(text: str) -> Gauge:
    """Read the size of a conductor.

    Parameters
    ----------
    text : str
        Such as ``18 AWG``, ``AWG 4/0``, ``0,5 mm²``.

    Returns
    -------
    Gauge
        Its gauge, if given, and its area.

    Raises
    ------
    QuantityError
        Where it is no size, has no unit, or is a cable of several conductors (18/2).

    Examples
    --------
    >>> parse_gauge("1.0 mm2")
    Gauge(awg=None, area_mm2=1.0)
    >>> parse_gauge("18 AWG").awg
    18
    """
    shown = f"“{text[:_LONGEST_TEXT]}”"
    # A text from a file may be of any length; the patterns below must not be run over a whole page.
    plain = plain_text(text).lower() if len(text) <= _LONGEST_TEXT else ""
    if match := _AWG.fullmatch(plain):
        awg = _awg(match["before"] or match["after"] or match["aught"])
        if awg > _FINEST_AWG:
            raise QuantityError(shown, f"there is no gauge {awg}; they end at {_FINEST_AWG}", _ACCEPTED)
        return Gauge(awg, awg_area_mm2(awg))
    if match := _AREA.fullmatch(plain):
        try:
            area_mm2 = read_numeral(match["number"])
        except Refusal as refusal:
            raise QuantityError(shown, refusal.problem, refusal.suggestion) from None
        if not 0 < area_mm2 < math.inf:
            raise QuantityError(shown, "a conductor has an area above zero", _ACCEPTED)
        return Gauge(None, area_mm2)
    if match := _CABLE.fullmatch(plain):
        raise QuantityError(
            shown,
            f"is a cable of {match['conductors']} conductors of {match['size']} AWG",
            f"write {match['size']} AWG, and the number of conductors apart",
        )
    if match := _SEVERAL.fullmatch(plain):
        raise QuantityError(
            shown,
            f"is a cable of {match['conductors']} conductors",
            "write the size of one conductor, and their number apart",
        )
    if plain.replace(".", "").replace(",", "").isdigit():
        # 16 is a wire of 1.3 mm² or one of 16 mm²: no guess is small enough to be harmless.
        raise QuantityError(shown, f"can be {plain} AWG or {plain} mm²", f"write {plain} AWG or {plain} mm²")
    raise QuantityError(shown, "is no wire size", _ACCEPTED)


def _awg(size: str) -> int:
    if size.endswith("/0"):
        return 1 - int(size[0])
    return 1 - len(size) if size.strip("0") == "" else int(size)
