"""Pictures on pages, an office's own and photos of doors: looked at before they are taken, set in their proportions.

What is broken, huge or of no kind that is printed is refused with words: once, when an office's is taken in, and where
a photo is to be printed.
"""

import io
import warnings
from functools import lru_cache
from typing import Any, Final

from PIL import Image, ImageOps, UnidentifiedImageError
from reportlab.lib.utils import ImageReader

MOST_BYTES: Final = 20 * 1024 * 1024
MOST_PIXELS: Final = 40_000_000
"""A page at 600 dots an inch has 33 million."""
MOST_SLENDER: Final = 20.0
"""Longer side over the shorter one: beyond, nothing is seen of it at the height of a letterhead."""
_KINDS: Final = ("PNG", "JPEG")
_PRINTED: Final = 2400
"""Longer side that is printed [pixels]: 300 dots an inch over 8 in."""
_PHOTO: Final = 560
"""Longer side of a photo at the door [pixels]: 300 dots an inch over 47 mm."""
_PHOTO_QUALITY: Final = 80


class PictureRefusedError(ValueError):
    """A picture cannot be printed; the text says why, and what would be taken."""


def checked_picture(content: bytes) -> bytes:
    """Return a picture as it will be printed: without transparency, no larger than can be seen, a PNG.

    Parameters
    ----------
    content : bytes
        A PNG or JPEG file.

    Raises
    ------
    PictureRefusedError
        For one that is broken, no such file, too large or too slender.
    """
    picture = _flat(_read(content))
    if max(picture.size) > _PRINTED:
        picture.thumbnail((_PRINTED, _PRINTED))
    held = io.BytesIO()
    picture.save(held, "PNG")
    return held.getvalue()


def printed_photo(content: bytes) -> bytes:
    """Return a photo of a door as it will be printed on a packet: upright as its camera was held, a small JPEG.

    Parameters
    ----------
    content : bytes
        A PNG or JPEG file.

    Raises
    ------
    PictureRefusedError
        As `checked_picture` raises it.
    """
    picture = _flat(_read(content, upright=True))
    picture.thumbnail((_PHOTO, _PHOTO))
    held = io.BytesIO()
    picture.save(held, "JPEG", quality=_PHOTO_QUALITY)
    return held.getvalue()


def _read(content: bytes, *, upright: bool = False) -> Any:
    """Return the pixels of a file; raises PictureRefusedError."""
    if len(content) > MOST_BYTES:
        raise PictureRefusedError(f"holds {len(content) / 1e6:,.0f} MB; accepted: at most {MOST_BYTES // 2**20} MB")
    try:
        with warnings.catch_warnings():
            # The library warns of pictures that unfold to gigabytes; their size is asked below, before they unfold.
            warnings.simplefilter("ignore")
            with Image.open(io.BytesIO(content), formats=_KINDS) as opened:
                wide, tall = opened.size
                _check_size(wide, tall)
                opened.load()
                return ImageOps.exif_transpose(opened) if upright else opened.copy()
    except PictureRefusedError:
        raise
    except Image.DecompressionBombError as error:
        raise PictureRefusedError(f"unfolds to more than {MOST_PIXELS:,} pixels, which is the most accepted") from error
    except UnidentifiedImageError as error:
        raise PictureRefusedError("is no picture that can be printed; accepted: PNG, JPEG") from error
    except (OSError, SyntaxError, ValueError, MemoryError, EOFError, ArithmeticError) as error:
        raise PictureRefusedError(f"is broken: {error}; accepted: a PNG or JPEG that a viewer opens") from error


def _check_size(wide: int, tall: int) -> None:
    if wide < 1 or tall < 1 or wide * tall > MOST_PIXELS:
        raise PictureRefusedError(f"is {wide} x {tall} pixels; accepted: at most {MOST_PIXELS:,}")
    if max(wide, tall) > MOST_SLENDER * min(wide, tall):
        raise PictureRefusedError(f"is {wide} x {tall} pixels; accepted: at most {MOST_SLENDER:g} to 1")


def _flat(picture: Any) -> Any:
    """Lay a picture on white: paper has no transparency."""
    clear = picture.convert("RGBA")
    ground = Image.new("RGBA", clear.size, (255, 255, 255, 255))
    return Image.alpha_composite(ground, clear).convert("RGB")


@lru_cache(maxsize=32)
def _reader(content: bytes) -> ImageReader:
    return ImageReader(io.BytesIO(content))


def size_of(content: bytes) -> tuple[int, int]:
    """Return width and height [pixels] of a picture that was taken."""
    wide, tall = _reader(content).getSize()
    return int(wide), int(tall)


def size_within(content: bytes, width: float, height: float) -> tuple[float, float]:
    """Return how wide and tall a picture is set in a room, in its proportions."""
    wide, tall = size_of(content)
    scale = min(width / wide, height / tall)
    return wide * scale, tall * scale


def paint_picture(canvas: Any, content: bytes, x: float, y: float, width: float, height: float) -> None:
    """Paint a picture with its lower left corner at a place [pt]."""
    canvas.drawImage(_reader(content), x, y, width, height)
