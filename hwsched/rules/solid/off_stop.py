"""How far a unit keeps off the frame's stop, which comes nearer at its corner as the leaf opens."""

from hwsched.attributes.of_parts import DEPTH_MM
from hwsched.calc.opening.placement import Rect
from hwsched.calc.opening.swing import nears_frame_mm
from hwsched.rules.rule import Limits
from hwsched.values import Leaf, Part


def off_stop_mm(leaf: Leaf, unit: Part, band: Rect, x_mm: float, limits: Limits) -> float:
    """Return how far a unit keeps off one band of the stop, its side toward the lock edge at some distance from it.

    At the lock edge its front corner comes nearer to the stop as the leaf opens; how much more is needed there than
    elsewhere follows from how far the unit stands proud.
    """
    least, proud = limits["clearance_mm"], unit.number_of(DEPTH_MM)
    width, thick = leaf.width_mm, leaf.thickness_mm
    upright = band.y1 - band.y0 > band.x1 - band.x0
    if band.x0 > 0 or not upright or proud is None or thick is None or width is None or width <= x_mm:
        return least
    return max(least, nears_frame_mm(width - x_mm, proud, thick, limits["pin_mm"]))
