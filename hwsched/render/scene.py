"""Several views on one sheet, side by side on a common floor line, and what of them is seen."""

import math
from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace
from typing import Final

from hwsched.drawings.drawing import Anchor, Callout, Dimension, Drawing, Text, View
from hwsched.drawings.layers import LAYERS, Layer, on_layers
from hwsched.drawings.not_drawn import WIDTH, unknown_drawing
from hwsched.language import phrase
from hwsched.render.fonts import text_width_mm
from hwsched.render.lower import Letters, OnPaper, Primitive, Stroke, lower

Region = tuple[float, float, float, float]
"""x0, y0, x1, y1 [mm of the thing drawn, as it stands in the scene]."""

_GAP_MM: Final = 8.0
"""Between views, where they are laid out [paper mm]."""
_NAME_MM: Final = 4.0
"""From a view up to its name [paper mm]."""
_TITLE_MM: Final = 2.5
_LEAST_WORDS_MM: Final = 20.0
"""A view narrower than that has no words: they would cover it [paper mm]."""
_COLUMN_MM: Final = 34.0
"""Words beside a view take so much [paper mm]."""
_WORTH: Final = 0.6
"""Words may make the views so much smaller."""
_TRIES: Final = 8
_LINES: Final = (WIDTH, 34, 26, 20, 15)
"""Letters a line of what only says why it is not drawn, from where there is much room to where there is little."""


@dataclass(frozen=True, slots=True)
class Standing:
    """One view where it stands: its own x and y and how far they are moved [mm]."""

    view: View
    dx_mm: float
    dy_mm: float


@dataclass(frozen=True, slots=True)
class Scene:
    """Views beside one another on a common floor line at y = 0."""

    standings: tuple[Standing, ...]
    scale: float
    """At which all of it is seen at once [paper mm per mm]."""
    ends: Region
    """Of all that is drawn at this scale."""
    words_from: float = 0.0
    """From this scale on there are words and dimensions."""
    floor_to_mm: float = math.inf
    """So far to the right goes the common floor line; no farther than what is drawn."""

    def standing(self, name: str) -> Standing | None:
        """Return a view by its name."""
        return next((each for each in self.standings if each.view.name == name), None)

    def at(self, x_mm: float, y_mm: float) -> Standing | None:
        """Return the view nearest to a place in the scene."""

        def off(each: Standing) -> float:
            x0, y0, x1, y1 = each.view.drawing.bounds
            return max(x0 + each.dx_mm - x_mm, x_mm - x1 - each.dx_mm, 0.0) + max(
                y0 + each.dy_mm - y_mm, y_mm - y1 - each.dy_mm, 0.0
            )

        return min(self.standings, key=off, default=None)


_NOTHING: Final = Scene((), 1.0, (0.0, 0.0, 0.0, 0.0))


def stand(views: Sequence[View], wide_mm: float, tall_mm: float) -> Scene:
    """Put views beside one another so that all of them are seen on paper of a size.

    Where words would take so much of a small paper that the views themselves could hardly be seen, there are none until
    one looks nearer.

    Parameters
    ----------
    views : sequence of View
        From left to right.
    wide_mm, tall_mm : float
        Room for all of them [paper mm].
    """
    drawn = [each for each in views if not each.drawing.unknown]
    if len(drawn) == len(views):
        return _stood_in(drawn, wide_mm, tall_mm)
    scene = _stood_in(drawn, wide_mm, tall_mm) if drawn else _NOTHING
    across, up = _paper_size(scene) if drawn else (1.0, 1.0)

    def share(way: tuple[int, bool]) -> float:
        """Return how large the others can be beside or above lines of so many letters, of what they could be."""
        wide, tall = _left(views, way, wide_mm, tall_mm)
        return min(wide / across, tall / up, 1.0)

    # Where there is room for all the first, whose lines are the longest, is as good as any.
    ways = [max(((letters, below) for letters in _LINES), key=share) for below in (False, True)]
    found = []
    for way in ways:
        room = _left(views, way, wide_mm, tall_mm)
        if drawn and min(room) > 0.0:
            found.append(_with_words(_stood_in(drawn, *room), views, *way))
    # Words of the drawn ones may go for want of room, so that what is left is larger than it was reckoned.
    return max(found, key=lambda each: each.scale) if found else _with_words(scene, views, *max(ways, key=share))


def _paper_size(scene: Scene) -> tuple[float, float]:
    x0, y0, x1, y1 = (value * scene.scale for value in scene.ends)
    return x1 - x0, y1 - y0


def _left(views: Sequence[View], way: tuple[int, bool], wide_mm: float, tall_mm: float) -> tuple[float, float]:
    """Return the room that words leave to the views that are drawn; less than nothing where they have none."""
    letters, below = way
    wide, tall = _paper_size(_with_words(_NOTHING, views, letters, below))
    if wide > wide_mm or tall > tall_mm:
        return min(wide_mm - wide, 0.0), min(tall_mm - tall, 0.0)
    return (wide_mm, tall_mm - tall - _GAP_MM) if below else (wide_mm - wide - _GAP_MM, tall_mm)


def _stood_in(views: Sequence[View], wide_mm: float, tall_mm: float) -> Scene:
    worded = _scaled(views, wide_mm, tall_mm, 0.0)
    bare = _scaled(views, wide_mm, tall_mm, math.inf)
    if worded.scale >= _WORTH * bare.scale:
        return worded
    # Nearer by that factor there is room for words between the views.
    return replace(bare, words_from=bare.scale * _COLUMN_MM / _GAP_MM)


def _scaled(views: Sequence[View], wide_mm: float, tall_mm: float, words_from: float) -> Scene:
    drawings = [each.drawing for each in views]
    across = sum(max(d.bounds[2] - d.bounds[0], 1.0) for d in drawings) or 1.0
    up = max((max(d.bounds[3] - d.bounds[1], 1.0) for d in drawings), default=1.0)
    scale = max(min(wide_mm / across, tall_mm / up), 1e-4)
    for _ in range(_TRIES):
        scene = _beside_one_another(views, scale, words_from)
        x0, y0, x1, y1 = (value * scale for value in scene.ends)
        if x1 - x0 <= wide_mm and y1 - y0 <= tall_mm:
            break
        scale *= max(0.5, 0.97 * min(wide_mm / (x1 - x0), tall_mm / (y1 - y0)))
    return scene


def stood(views: Sequence[View], scale: float) -> Scene:
    """Put views beside one another as they need room at a scale; what is seen from above stands under the edge.

    Those that only say why they are not drawn stand below one another behind the others.
    """
    drawn = [each for each in views if not each.drawing.unknown]
    return _with_words(_beside_one_another(drawn, scale), views, WIDTH, below=False)


def _beside_one_another(views: Sequence[View], scale: float, words_from: float = 0.0) -> Scene:
    x, low, high = 0.0, 0.0, 0.0
    standings: list[Standing] = []
    last: tuple[float, float, float] | None = None
    for view in views:
        drawing = view.drawing
        x0, y0, x1, y1 = lower(_worded(drawing, scale, words_from), scale).extent
        half = text_width_mm(phrase(drawing.title), _TITLE_MM, True) / 2
        middle = (drawing.bounds[0] + drawing.bounds[2]) / 2 * scale
        x0, x1 = min(x0, middle - half), max(x1, middle + half)
        up = 0.0 if view.on_floor else -(drawing.bounds[1] * scale if drawing.to_scale else y0)
        # There is room under a view that shows no more of the leaf than what is about the lock.
        under = last is not None and not view.on_floor and y1 + up + 3 * _NAME_MM < last[2]
        if under and last is not None:
            left, right, _ = last
            centre = (left + right) / 2 - (x0 + x1) / 2
            standings.append(Standing(view, centre / scale, up / scale))
            out = max(x1 + centre, right)
            in_ = min(x0 + centre, left)
            if in_ < left:
                standings[-2:] = [replace(each, dx_mm=each.dx_mm + (left - in_) / scale) for each in standings[-2:]]
                out += left - in_
            x = out + _GAP_MM
        else:
            standings.append(Standing(view, (x - x0) / scale, up / scale))
            last = (x, x + x1 - x0, y0 + up)
            x += x1 - x0 + _GAP_MM
        low, high = min(low, y0 + up), max(high, y1 + up + 2 * _NAME_MM)
    ends = (0.0, low / scale, max(x - _GAP_MM, 1.0) / scale, high / scale)
    return Scene(tuple(standings), scale, ends, words_from)


def _with_words(scene: Scene, views: Sequence[View], letters: int, below: bool) -> Scene:
    """Stand what only says why it is not drawn in a column: from the top behind the others, or under them."""
    x0, y0, x1, y1 = (value * scene.scale for value in scene.ends)
    left, top = (x0, y0 - _GAP_MM) if below else (x1 + _GAP_MM, y1)
    if not scene.standings:
        left, top = 0.0, 0.0
    standings: list[Standing] = []
    for view in views:
        drawing = view.drawing
        if not drawing.unknown:
            continue
        drawing = unknown_drawing(drawing.title, drawing.unknown, letters)
        _, low, right, high = lower(drawing, scene.scale).extent
        up = top - 2 * _NAME_MM - high
        standings.append(Standing(replace(view, drawing=drawing), left / scene.scale, up / scene.scale))
        x1 = max(x1, left + right, left + text_width_mm(phrase(drawing.title), _TITLE_MM, True))
        y0, top = min(y0, up + low), up + low - _TITLE_MM
    if not standings:
        return scene
    ends = (x0 / scene.scale, y0 / scene.scale, x1 / scene.scale, y1 / scene.scale)
    return replace(scene, standings=(*scene.standings, *standings), ends=ends, floor_to_mm=scene.ends[2])


def _worded(drawing: Drawing, scale: float, words_from: float) -> Drawing:
    """Return a drawing without its words and dimensions where there is no room for them."""
    enough = scale >= words_from and (drawing.bounds[2] - drawing.bounds[0]) * scale >= _LEAST_WORDS_MM
    if not drawing.to_scale or enough:
        return drawing
    shapes = tuple(each for each in drawing.shapes if not isinstance(each, Callout | Text | Dimension))
    return replace(drawing, shapes=shapes)


def on_paper(
    scene: Scene, scale: float, layers: Collection[Layer] = tuple(LAYERS), within: Region | None = None
) -> OnPaper:
    """Bring a scene to paper.

    Parameters
    ----------
    scene : Scene
        Views as they stand.
    scale : float
        Paper mm per mm of the thing drawn.
    layers : collection of Layer
        What of them is seen.
    within : Region, optional
        What is in sight: words about things in it stand beside them in it.
    """
    found: list[Primitive] = []
    ends = [value * scale for value in scene.ends]
    if any(each.view.on_floor and not each.view.drawing.unknown for each in scene.standings):
        line = ((ends[0], 0.0), (min(ends[2], scene.floor_to_mm * scale), 0.0))
        found.append(Stroke(line, "thin", name="common floor line"))
    for each in scene.standings:
        own = None if within is None else _moved_region(within, -each.dx_mm, -each.dy_mm)
        drawing = _worded(on_layers(each.view.drawing, layers), scale, scene.words_from)
        page = lower(drawing, scale, within=own)
        dx, dy = each.dx_mm * scale, each.dy_mm * scale
        found += [moved(shape, dx, dy) for shape in page.primitives]
        x0, _, x1, y1 = each.view.drawing.bounds
        top = max(y1 * scale, page.extent[3]) + dy + _NAME_MM
        anchor: Anchor = "left" if drawing.unknown else "centre"
        found.append(Letters((x0 + x1) / 2 * scale + dx, top, phrase(drawing.title), _TITLE_MM, anchor, 0.0, "title"))
    return OnPaper(tuple(found), (ends[0], ends[1], ends[2], ends[3]), scale)


def _moved_region(region: Region, dx: float, dy: float) -> Region:
    return region[0] + dx, region[1] + dy, region[2] + dx, region[3] + dy


def moved(shape: Primitive, dx: float, dy: float) -> Primitive:
    """Return a primitive moved on the paper."""
    if isinstance(shape, Stroke):
        return shape._replace(points=tuple([(x + dx, y + dy) for x, y in shape.points]))
    return shape._replace(x=shape.x + dx, y=shape.y + dy)
