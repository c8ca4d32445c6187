"""What is drawn while a fact is missing or contradicts another: words, never a shape that may be wrong."""

import math
from collections.abc import Sequence
from typing import Final, TypeGuard

from hwsched.drawings.conventions import LETTER_HEIGHT_MM, LINE_SPACING
from hwsched.drawings.drawing import Drawing, Shape, Text
from hwsched.language import phrase
from hwsched.rules.saying import label_said

WIDTH: Final = 46
"""Letters a line; the words shall stand beside another view."""


def known(value: float | None) -> TypeGuard[float]:
    """Tell whether a number was surveyed and is one: None, NaN and infinity are not.

    Examples
    --------
    >>> known(12.5), known(None), known(float("nan"))
    (True, False, False)
    """
    return value is not None and math.isfinite(value)


def positive(value: float | None) -> TypeGuard[float]:
    """Tell whether a number is known and can be a size."""
    return known(value) and value > 0


def size_problem(fact: str, value: float | None) -> str | None:
    """Say what is wrong with a size: missing, or no size at all; None when it can be drawn.

    Examples
    --------
    >>> size_problem("leaf.width_mm", None)
    'unknown: needs leaf: Leaf width'
    >>> size_problem("leaf.width_mm", -3.0)
    'leaf: Leaf width of -3 mm is no size'
    """
    if not known(value):
        return phrase("unknown: needs {label_of}", label_of=label_said(fact))
    return (
        None if value > 0 else phrase("{label_of} of {value:g} mm is no size", label_of=label_said(fact), value=value)
    )


def unknown_drawing(title: str, problems: Sequence[str], letters: int = WIDTH) -> Drawing:
    """Return a drawing that only says why nothing is drawn.

    Parameters
    ----------
    title : str
        Of the view that could not be drawn.
    problems : sequence of str
        Sentences such as "unknown: needs leaf: Leaf height".
    letters : int
        So many a line; only a longer word has a line for itself.
    """
    spacing = LETTER_HEIGHT_MM["label"] * LINE_SPACING
    rows = [phrase("Not drawn."), *(line for problem in problems for line in _lines(problem, letters))]
    shapes: list[Shape] = []
    for number, row in enumerate(rows):
        shapes.append(Text(0.0, 0.0, row, "warning" if number == 0 else "label", "left", dy=-number * spacing - 4.0))
    return Drawing(title, tuple(shapes), (0.0, 0.0, 0.0, 0.0), to_scale=False, unknown=tuple(problems))


def _lines(text: str, letters: int) -> list[str]:
    lines = [""]
    for word in text.split():
        if lines[-1] and len(lines[-1]) + 1 + len(word) > letters:
            lines.append("")
        lines[-1] = f"{lines[-1]} {word}".strip()
    return lines
