"""Single views as PDF: each on a page of its own size, as SVG shows it."""

from collections.abc import Sequence
from pathlib import Path
from typing import Final

from hwsched.drawings.drawing import Drawing
from hwsched.render.fonts import POINT_MM
from hwsched.render.lower import lower
from hwsched.render.paint import Painter
from hwsched.render.pdf import new_canvas
from hwsched.render.screen import LIGHT, Look
from hwsched.render.typeset import shown
from hwsched.writing import replacing

_MARGIN_MM: Final = 2.0


def render_view_pdf(drawings: Sequence[Drawing], path: Path, scale: float = 1 / 20, look: Look = LIGHT) -> None:
    """Write views as PDF, a page each; the file appears whole or not at all.

    Parameters
    ----------
    drawings : sequence of Drawing
        One or several.
    path : Path
        Where.
    scale : float
        Paper mm per mm of the thing drawn.
    look : Look
        `hwsched.render.screen.LIGHT` or ``DARK``.

    Raises
    ------
    UnwritableError
        Where it cannot be written.
    """
    with replacing(path) as beside:
        canvas = new_canvas(beside)
        canvas.setTitle(shown(drawings[0].title))
        canvas.setCreator("hwsched")
        canvas.setAuthor("")
        painter = Painter(canvas, look)
        for drawing in drawings:
            view = lower(drawing, scale)
            x0, y0, x1, y1 = view.extent
            wide, tall = (x1 - x0 + 2 * _MARGIN_MM) / POINT_MM, (y1 - y0 + 2 * _MARGIN_MM) / POINT_MM
            canvas.setPageSize((wide, tall))
            painter.forget()
            painter.set_fill(look.ground)
            canvas.rect(0.0, 0.0, wide, tall, stroke=0, fill=1)
            painter.paint(view, _MARGIN_MM - x0, _MARGIN_MM - y0)
            canvas.showPage()
        canvas.save()
