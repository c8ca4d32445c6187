"""A view that says in words why it is not drawn: nothing of what judges openings is loaded for it."""

from collections.abc import Sequence
from typing import Final

from hwsched.drawings.conventions import LETTER_HEIGHT_MM, LINE_SPACING
from hwsched.drawings.drawing import Drawing, Shape, Text
from hwsched.language import phrase

WIDTH: Final = 46
"""Letters a line; the words shall stand beside another view."""


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
