"""Codes for a camera, painted as squares: QR codes (ISO/IEC 18004) of short texts in capitals and digits."""

from functools import lru_cache
from typing import Any, Final

from reportlab.graphics.barcode import qrencoder

from hwsched.render import print_style as style

QUIET: Final = 4
"""Modules left white all round (ISO/IEC 18004)."""
_MODULE_MM: Final = 0.4
"""At hand distance a telephone wants 0.4 to 0.5 mm (guides, read in three)."""
_MOST: Final = 14
"""Bytes that version 1 holds with a quarter of it restored (ISO/IEC 18004)."""
_SIDE: Final = 21
"""Modules of version 1: 17 + 4 a version."""
QR_PT: Final = (_SIDE + 2 * QUIET) * _MODULE_MM * style.MM
"""Side of a code with its quiet zone [pt]."""


@lru_cache(maxsize=256)
def modules(text: str) -> tuple[tuple[bool, ...], ...]:
    """Return the dark modules of a code, row by row from above.

    Parameters
    ----------
    text : str
        Up to 14 bytes.

    Raises
    ------
    ValueError
        For a longer text.
    """
    if len(text.encode()) > _MOST:
        raise ValueError(f"too long for this code: {text}")
    code = qrencoder.QRCode(1, qrencoder.QRErrorCorrectLevel.M)
    code.addData(text)
    code.make()
    return tuple(tuple(bool(dark) for dark in row) for row in code.modules)


def paint_qr(canvas: Any, text: str, x: float, y: float) -> None:
    """Paint a code, its quiet zone included, with its lower left corner at a place [pt]."""
    side = _MODULE_MM * style.MM
    canvas.saveState()
    canvas.setFillColorRGB(0, 0, 0)
    for number, row in enumerate(modules(text)):
        low = y + (QUIET + _SIDE - 1 - number) * side
        start = None
        for at, dark in enumerate((*row, False)):
            if dark and start is None:
                start = at
            elif not dark and start is not None:
                # A run of dark modules is one rectangle: between two of them a viewer shows a hair of white.
                canvas.rect(x + (QUIET + start) * side, low, (at - start) * side, side, stroke=0, fill=1)
                start = None
    canvas.restoreState()
