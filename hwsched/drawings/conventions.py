"""Drawing conventions in paper millimetres: letter heights, arrows, distances of dimension lines.

Values only. Colours and line widths belong to `hwsched.render`.
"""

from collections.abc import Mapping
from typing import Final

from hwsched.drawings.drawing import TextRole

LETTER_HEIGHT_MM: Final[Mapping[TextRole, float]] = {
    "small": 1.8,
    "label": 2.5,
    "dimension": 2.5,
    "title": 3.5,
    "warning": 3.5,
}
"""Heights of capitals from the series 1.8, 2.5, 3.5, 5 (ISO 3098-0)."""

LINE_SPACING: Final = 1.7
"""From base line to base line over letter height; rows stand at least half a height apart (ASME Y14.2-2008)."""

ARROW_LENGTH_MM: Final = 2.4
ARROW_WIDTH_MM: Final = 0.8
"""Length to width 3:1 (ASME Y14.2-2008)."""

EXTENSION_GAP_MM: Final = 1.0
EXTENSION_OVERRUN_MM: Final = 1.5
FIRST_DIMENSION_MM: Final = 8.0
"""From the outline to the nearest dimension line (common practice)."""
NEXT_DIMENSION_MM: Final = 6.5
"""From one dimension line to the next: a 2.5 mm text and air (common practice)."""
