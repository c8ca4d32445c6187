"""What a surface unit covers on its face."""

from hwsched.attributes.of_parts import WINDOW_X0_MM, WINDOW_X1_MM, WINDOW_Y0_MM, WINDOW_Y1_MM
from hwsched.calc.opening.placement import Rect
from hwsched.values import Part, Placement


def window_of(unit: Part) -> Rect | None:
    """Return where on a surface unit's plate its access hole may be; None while an attribute is missing."""
    numbers = [unit.number_of(name) for name in (WINDOW_X0_MM, WINDOW_Y0_MM, WINDOW_X1_MM, WINDOW_Y1_MM)]
    x0, y0, x1, y1 = numbers
    if x0 is None or y0 is None or x1 is None or y1 is None:
        return None
    return Rect(x0, y0, x1, y1)


def housing_rect(place: Placement, unit: Part | None) -> Rect:
    """Return what a unit covers on its face: its plate, and its window where that reaches past the plate."""
    x, y = place.x_mm, place.y_mm
    window = (unit and window_of(unit)) or Rect(0, 0, 0, 0)
    return Rect(
        x + min(0.0, window.x0),
        y + min(0.0, window.y0),
        x + max(place.width_mm, window.x1),
        y + max(place.height_mm, window.y1),
    )
