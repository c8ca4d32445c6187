"""Numbers as people type them: decimal point or comma, thousands grouped by comma, point or space, exponents.

Only the number itself; its unit and everything around it is read elsewhere.
"""

import re
from typing import Final, Literal

from hwsched.quantities.readings import Refusal

ThreeDigits = Literal["thousands", "decimal", "ask"]
"""What three digits behind a single comma are, as in 1,000."""

NUMERAL: Final = r"(?:[0-9]+(?:[.,][0-9]+)*\.?|[.,][0-9]+)(?:e[+-]?[0-9]{1,3})?"
"""Pattern of a number token, to be given to `read_numeral`; expects lower case."""

_SIMPLE = re.compile(r"(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:e[+-]?[0-9]{1,3})?")
_ONE_COMMA = re.compile(r"([0-9]*),([0-9]+)")
_COMMA_GROUPS = re.compile(r"[0-9]{1,3}(?:,[0-9]{3})+(?:\.[0-9]*)?")
_POINT_GROUPS = re.compile(r"[0-9]{1,3}(?:\.[0-9]{3})+,[0-9]+|[0-9]{1,3}(?:\.[0-9]{3}){2,}")


def read_numeral(token: str, three_digits: ThreeDigits = "ask") -> float:
    """Value of a number token.

    Parameters
    ----------
    token : str
        Digits with points, commas and perhaps an exponent, in lower case, without sign or space.
    three_digits : ThreeDigits
        What 1,000 means here: a thousand, one, or a question.

    Returns
    -------
    float
        The number; it may be infinite where the exponent is absurd, so callers check.

    Raises
    ------
    Refusal
        Where points and commas make no number, or make two.

    Examples
    --------
    >>> read_numeral("98,5"), read_numeral("0,915"), read_numeral("1,234.5"), read_numeral("1.234,5")
    (98.5, 0.915, 1234.5, 1234.5)
    >>> read_numeral("1,000", "thousands")
    1000.0
    """
    return float(plain_numeral(token, three_digits))


def plain_numeral(token: str, three_digits: ThreeDigits = "ask") -> str:
    """Write a number token with a decimal point and nothing else, so that no digit is lost; as `read_numeral`.

    Examples
    --------
    >>> plain_numeral("1,234.50"), plain_numeral("98,5")
    ('1234.50', '98.5')
    """
    if _SIMPLE.fullmatch(token):
        return token
    one_comma = _ONE_COMMA.fullmatch(token)
    if one_comma:
        whole, rest = one_comma[1], one_comma[2]
        # 0,914 is never a thousand: nobody groups behind a leading zero.
        grouped = len(rest) == 3 and 1 <= len(whole) <= 3 and whole[0] != "0"
        if grouped and three_digits == "thousands":
            return whole + rest
        if grouped and three_digits == "ask":
            raise Refusal(
                f"the comma can be a decimal comma ({whole}.{rest}) or mark thousands ({whole}{rest})",
                f"write {whole}.{rest} or {whole}{rest}",
            )
        return f"{whole or '0'}.{rest}"
    if _COMMA_GROUPS.fullmatch(token):
        return token.replace(",", "")
    if _POINT_GROUPS.fullmatch(token):
        return token.replace(".", "").replace(",", ".")
    raise Refusal("points and commas in it make no number", "write one decimal point or comma, such as 98.5")
