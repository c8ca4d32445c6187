"""A scene as a page of PDF as it is seen on the screen: its layers, what is in sight, at a standard scale."""

from collections.abc import Collection
from pathlib import Path
from typing import Final

from hwsched.drawings.layers import LAYERS, Layer
from hwsched.language import phrase
from hwsched.quantities import LengthStyle
from hwsched.render import print_style as style
from hwsched.render.lower import Letters, OnPaper, Primitive, Stroke
from hwsched.render.paint import Painter
from hwsched.render.pdf import new_canvas
from hwsched.render.scale import DENOMINATORS, scale_words
from hwsched.render.scene import Region, Scene, on_paper, stood
from hwsched.render.screen import LIGHT, Look
from hwsched.render.typeset import shown
from hwsched.writing import replacing

_MARGIN_MM: Final = 12.0
_FOOT_MM: Final = 14.0
_BARS: Final = {"mm": (1.0, "mm"), "fraction": (25.4, "in"), "decimal-inch": (25.4, "in")}
"""Unit of the scale bar and what it is called."""


def render_scene_pdf(
    scene: Scene,
    path: Path,
    title: str,
    *,
    layers: Collection[Layer] = tuple(LAYERS),
    within: Region | None = None,
    paper: str = "letter",
    lengths: LengthStyle = "fraction",
    look: Look = LIGHT,
) -> float:
    """Write what is seen of a scene on one page of paper laid across; it appears whole or not at all.

    Parameters
    ----------
    scene : Scene
        Views as they stand.
    path : Path
        Where.
    title : str
        For the foot of the page.
    layers : collection of Layer
        What of them is seen.
    within : Region, optional
        What is in sight; all of it when left out.
    paper : {"letter", "a4"}
    lengths : LengthStyle
        Whose units the scale bar has.
    look : Look
        Colours.

    Returns
    -------
    float
        The scale's denominator: the largest standard scale at which it fits.

    Raises
    ------
    UnwritableError
        Where it cannot be written.
    """
    short, long = (side / style.MM for side in style.PAPERS[paper])
    wide, tall = long - 2 * _MARGIN_MM, short - 2 * _MARGIN_MM - _FOOT_MM
    denominator, page, region = _scaled(scene, layers, within, wide, tall)
    with replacing(path) as beside:
        canvas = new_canvas(beside)
        canvas.setTitle(shown(title))
        canvas.setCreator("hwsched")
        canvas.setAuthor("")
        canvas.setPageSize((long * style.MM, short * style.MM))
        painter = Painter(canvas, look)
        painter.set_fill(look.ground)
        canvas.rect(0.0, 0.0, long * style.MM, short * style.MM, stroke=0, fill=1)
        canvas.saveState()
        if within is not None:
            box = canvas.beginPath()
            box.rect(*(each * style.MM for each in (_MARGIN_MM, _MARGIN_MM + _FOOT_MM, wide, tall)))
            canvas.clipPath(box, stroke=0, fill=0)
        x0, y0, x1, y1 = (value / denominator for value in region)
        right = _MARGIN_MM + (wide - (x1 - x0)) / 2 - x0
        up = _MARGIN_MM + _FOOT_MM + (tall - (y1 - y0)) / 2 - y0
        painter.paint(page, right, up)
        canvas.restoreState()
        painter.forget()
        painter.paint(_foot(title, denominator, lengths, wide), _MARGIN_MM, _MARGIN_MM)
        canvas.showPage()
        canvas.save()
    return denominator


def _scaled(
    scene: Scene, layers: Collection[Layer], within: Region | None, wide: float, tall: float
) -> tuple[float, OnPaper, Region]:
    """Find the largest standard scale; where nothing fits the smallest is taken."""
    views = [each.view for each in scene.standings]
    for denominator in DENOMINATORS:
        # Words keep their size: where all is shown, views are put anew at each scale.
        scene = scene if within is not None else stood(views, 1.0 / denominator)
        region = scene.ends if within is None else within
        if (region[2] - region[0]) / denominator <= wide and (region[3] - region[1]) / denominator <= tall:
            break
    return denominator, on_paper(scene, 1.0 / denominator, layers, within), region


def _foot(title: str, denominator: float, lengths: LengthStyle, wide: float) -> OnPaper:
    unit_mm, unit = _BARS[lengths]
    # The longest of 1, 2, 5, 10 ... units that takes no more than a quarter of the page.
    steps = [number * 10**power for power in range(4) for number in (1, 2, 5)]
    units = max((each for each in steps if each * unit_mm / denominator <= wide / 4), default=1)
    long = units * unit_mm / denominator
    found: list[Primitive] = [
        Letters(
            0.0,
            0.0,
            phrase("{title}, scale {scale_words}", title=title, scale_words=scale_words(denominator)),
            2.5,
            "left",
            0.0,
            "label",
        ),
        Stroke(((wide - long, 2.0), (wide, 2.0)), "outline", name="scale bar"),
        Letters(wide, 4.0, f"{units:g} {unit}", 2.5, "right", 0.0, "label"),
        *(Stroke(((x, 1.0), (x, 3.0)), "outline") for x in (wide - long, wide - long / 2, wide)),
    ]
    return OnPaper(tuple(found), (0.0, 0.0, wide, 8.0), 1.0)
