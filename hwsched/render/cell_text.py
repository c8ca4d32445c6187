"""Text for a spreadsheet's cell: what a spreadsheet would take for a formula stays text, what XML cannot hold goes."""

import re
from typing import Final

_FORBIDDEN: Final = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\ud800-\udfff\ufffe\uffff]")
_LONGEST: Final = 32767
"""Characters that a cell can hold."""
FORMULA_STARTS: Final = ("=", "+", "-", "@", "\t", "\r")


def safe_text(text: str) -> str:
    r"""Return text without characters that a workbook cannot hold, cut at a cell's limit.

    Examples
    --------
    >>> safe_text("a\x00b")
    'ab'
    """
    return _FORBIDDEN.sub("", text)[:_LONGEST]


def needs_quoting(text: str) -> bool:
    """Tell whether a spreadsheet might take text for a formula.

    Examples
    --------
    >>> needs_quoting("=1+1"), needs_quoting("M-12")
    (True, False)
    """
    return text.startswith(FORMULA_STARTS)
