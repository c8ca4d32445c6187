"""Dimension lines stacked beside a view: the shortest nearest to it, none on top of another.

Shortest nearest the object, none twice: practice of ASME Y14.5 (read in a study set).
"""

from hwsched.drawings.conventions import FIRST_DIMENSION_MM, NEXT_DIMENSION_MM
from hwsched.drawings.drawing import Dimension


def stack_vertical(x: float, side: float, spans: list[tuple[float, float, str]]) -> list[Dimension]:
    """Stack vertical dimensions beside a vertical edge.

    Parameters
    ----------
    x : float
        The edge from which they start [mm].
    side : float
        -1 to the left of it, 1 to the right.
    spans : list of (float, float, str)
        Lower and upper end [mm] and text; spans without length are left out, equal ones once.
    """
    dimensions = []
    for row, (low, high, text) in enumerate(_ordered(spans)):
        offset = (FIRST_DIMENSION_MM + row * NEXT_DIMENSION_MM) * -side
        dimensions.append(Dimension(x, low, x, high, offset, text, "vertical"))
    return dimensions


def stack_horizontal(y: float, side: float, spans: list[tuple[float, float, str]]) -> list[Dimension]:
    """Stack horizontal dimensions above (1) or below (-1) a level.

    Spans run from the end at which text stands that has no room (outside ``start``) to the other end.
    """
    dimensions = []
    for row, (start, end, text) in enumerate(_ordered(spans)):
        offset = (FIRST_DIMENSION_MM + row * NEXT_DIMENSION_MM) * side
        offset = offset if end > start else -offset
        dimensions.append(Dimension(start, y, end, y, offset, text, "horizontal", "start"))
    return dimensions


def _ordered(spans: list[tuple[float, float, str]]) -> list[tuple[float, float, str]]:
    unique = {(round(a, 3), round(b, 3), text): (a, b, text) for a, b, text in spans if abs(b - a) > 0.05}
    return sorted(unique.values(), key=lambda span: (abs(span[1] - span[0]), span))
