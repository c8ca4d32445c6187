"""A drawing as SVG text, in the light or the dark look; sizes in paper millimetres."""

import math
from xml.sax.saxutils import escape, quoteattr

from hwsched.drawings.drawing import Drawing
from hwsched.render.fonts import size_of_letters_mm
from hwsched.render.lower import Bow, Disc, Letters, OnPaper, Primitive, Stroke, lower
from hwsched.render.screen import LIGHT, Colour, Look, PenLook
from hwsched.render.wrap import printable

_MARGIN_MM = 2.0
_ANCHORS = {"left": "start", "centre": "middle", "right": "end"}


def render_svg(drawing: Drawing, scale: float = 1 / 20, look: Look = LIGHT) -> str:
    """Write a drawing as SVG.

    Parameters
    ----------
    drawing : Drawing
        Any view.
    scale : float
        Paper mm per mm of the thing drawn.
    look : Look
        `hwsched.render.screen.LIGHT` or ``DARK``.

    Returns
    -------
    str
        A complete document; names of what is shown stand in ``title`` elements.
    """
    return svg_of(lower(drawing, scale), drawing.title, look)


def svg_of(view: OnPaper, title: str, look: Look = LIGHT) -> str:
    """Write what was brought to paper as SVG."""
    x0, y0, x1, y1 = view.extent
    wide, tall = x1 - x0 + 2 * _MARGIN_MM, y1 - y0 + 2 * _MARGIN_MM
    left, top = x0 - _MARGIN_MM, -y1 - _MARGIN_MM
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide:.2f}mm" height="{tall:.2f}mm" '
        f'viewBox="{left:.3f} {top:.3f} {wide:.3f} {tall:.3f}" font-family="DejaVu Sans, sans-serif">',
        f"<title>{escape(printable(title))}</title>",
        f'<rect x="{left:.3f}" y="{top:.3f}" width="{wide:.3f}" height="{tall:.3f}" fill="{_hex(look.ground)}"/>',
        *_shapes(view, look),
        "</svg>",
    ]
    return "\n".join(parts) + "\n"


def _shapes(view: OnPaper, look: Look) -> list[str]:
    return [_shape(shape, look) for shape in view.primitives]


def _hex(colour: Colour) -> str:
    return "#" + "".join(f"{round(part * 255):02x}" for part in colour)


def _line(pen: PenLook) -> str:
    dash = f' stroke-dasharray="{" ".join(f"{part:g}" for part in pen.dash_mm)}"' if pen.dash_mm else ""
    return f'stroke="{_hex(pen.colour)}" stroke-width="{pen.width_mm:g}"{dash}'


def _named(tag: str, attributes: str, name: str) -> str:
    return f"<{tag} {attributes}><title>{escape(printable(name))}</title></{tag}>" if name else f"<{tag} {attributes}/>"


def _shape(shape: Primitive, look: Look) -> str:
    if isinstance(shape, Letters):
        weight = ' font-weight="bold"' if shape.role in look.bold else ""
        turn = f' transform="rotate({-shape.angle_deg:g} {shape.x:.3f} {-shape.y:.3f})"' if shape.angle_deg else ""
        return (
            f'<text x="{shape.x:.3f}" y="{-shape.y:.3f}" font-size="{size_of_letters_mm(shape.height_mm):.3f}"{weight} '
            f'text-anchor={quoteattr(_ANCHORS[shape.anchor])} fill="{_hex(look.letters[shape.role])}"{turn}>'
            f"{escape(shape.text)}</text>"
        )
    pen = look.pens[shape.pen]
    if isinstance(shape, Bow):
        a, b = math.radians(shape.start_deg), math.radians(shape.end_deg)
        r = shape.radius
        long_way = 1 if abs(shape.end_deg - shape.start_deg) > 180 else 0
        path = (
            f"M {shape.x + r * math.cos(a):.3f} {-(shape.y + r * math.sin(a)):.3f} A {r:.3f} {r:.3f} 0 {long_way} "
            f"{0 if shape.end_deg > shape.start_deg else 1} "
            f"{shape.x + r * math.cos(b):.3f} {-(shape.y + r * math.sin(b)):.3f}"
        )
        return _named("path", f'd="{path}" fill="none" {_line(pen)}', shape.name)
    colour = pen.colour if shape.fill == "ink" else look.fills[shape.fill]
    line = 'stroke="none"' if shape.fill == "ink" else _line(pen)
    fill = _hex(colour) if colour is not None else "none"
    if isinstance(shape, Disc):
        where = f'cx="{shape.x:.3f}" cy="{-shape.y:.3f}" r="{shape.diameter / 2:.3f}"'
        return _named("circle", f'{where} fill="{fill}" {line}', shape.name)
    return _polygon(shape, fill, line)


def _polygon(shape: Stroke, fill: str, line: str) -> str:
    points = " ".join(f"{x:.3f},{-y:.3f}" for x, y in shape.points)
    if shape.closed:
        return _named("polygon", f'points="{points}" fill="{fill}" {line}', shape.name)
    return _named("polyline", f'points="{points}" fill="none" {line}', shape.name)
