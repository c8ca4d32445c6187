"""Finds what overlaps on paper, measured as it is printed."""

import math
from itertools import pairwise

from hwsched.render.fonts import DESCENT_SHARE, size_of_letters_mm, text_width_mm
from hwsched.render.lower import Letters, Stroke, lower
from hwsched.render.screen import LIGHT

LETTER_MM = (250.0, 180.0)
"""Usable on a landscape letter page."""


def rooms(drawing, scale=1.0):
    """Return text and rectangle of all letters at a scale; upright and 90 degree texts only."""
    return rooms_on_paper(lower(drawing, scale))


def rooms_on_paper(view):
    """Return the same of a drawing that was brought to paper."""
    found = []
    for shape in view.primitives:
        if not isinstance(shape, Letters):
            continue
        width = text_width_mm(shape.text, shape.height_mm, shape.role in LIGHT.bold, shape.narrow)
        depth = size_of_letters_mm(shape.height_mm, shape.narrow) * DESCENT_SHARE
        left = {"left": 0.0, "centre": -width / 2, "right": -width}[shape.anchor]
        if shape.angle_deg == 0.0:
            room = (shape.x + left, shape.y - depth, shape.x + left + width, shape.y + shape.height_mm)
        else:
            assert math.isclose(abs(shape.angle_deg), 90.0)
            room = (shape.x - shape.height_mm, shape.y + left, shape.x + depth, shape.y + left + width)
        found.append((shape.text, room))
    return found


def overlaps(drawing, scale=1.0):
    """Return the pairs of texts that cover one another."""
    held = rooms(drawing, scale)
    return [
        (one, other)
        for number, (one, a) in enumerate(held)
        for other, b in held[number + 1 :]
        if a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]
    ]


def struck(drawing, scale=1.0):
    """Return the texts through which a level or upright line goes."""
    segments = []
    for shape in lower(drawing, scale).primitives:
        if isinstance(shape, Stroke):
            points = [*shape.points, shape.points[0]] if shape.closed else list(shape.points)
            segments += [(a, b, shape.name) for a, b in pairwise(points)]
    found = []
    for text, (x0, y0, x1, y1) in rooms(drawing, scale):
        for (ax, ay), (bx, by), name in segments:
            level = ay == by and y0 < ay < y1 and min(ax, bx) < x1 and max(ax, bx) > x0
            upright = ax == bx and x0 < ax < x1 and min(ay, by) < y1 and max(ay, by) > y0
            if level or upright:
                found.append((text, name))
    return found


def wide_and_tall(drawing):
    x0, y0, x1, y1 = lower(drawing, 1.0).extent
    return x1 - x0, y1 - y0
