"""Faces, and where something is on them, as people read it on screen and paper."""

from typing import Final

from hwsched.language import phrase, to_phrase
from hwsched.quantities import LengthStyle, format_length

_ACROSS: Final = {
    "lock-edge": to_phrase("from the inside face"),
    "hinge-edge": to_phrase("from the inside face"),
    "edge": to_phrase("from the inside face"),
    "wall": to_phrase("from the reader's centre"),
}
"""From what the first measure counts on faces that are none of the leaf's two."""


def across_words(face: str, across_mm: float, style: LengthStyle) -> str:
    """Say where something is across its face: on the leaf's faces from the lock edge, in an edge from the inside face.

    Examples
    --------
    >>> across_words("inside", 69.85, "mm"), across_words("lock-edge", 22.2, "mm")
    ('69.9 mm from the lock edge', '22.2 mm from the inside face')
    """
    return f"{format_length(across_mm, style)} {phrase(_ACROSS.get(face, to_phrase('from the lock edge')))}"


FACE_WORDS: Final = {
    "inside": to_phrase("inside face"),
    "key": to_phrase("key face"),
    "lock-edge": to_phrase("lock edge"),
    "hinge-edge": to_phrase("hinge edge"),
    "edge": to_phrase("lock edge"),
    "top": to_phrase("top edge"),
    "bottom": to_phrase("bottom edge"),
    "wall": to_phrase("wall"),
}
"""Faces of a leaf, as people read them."""
PATTERNS: Final = {
    "straight": to_phrase("straight"),
    "above": to_phrase("above"),
    "below": to_phrase("below"),
    "in-edge": to_phrase("in the edge"),
    "beside": to_phrase("beside"),
}


def face_words(face: str) -> str:
    """Name a face.

    Examples
    --------
    >>> face_words("inside"), face_words("lock-edge")
    ('inside face', 'lock edge')
    """
    return phrase(FACE_WORDS.get(face, face))


def pattern_words(pattern: str) -> str:
    """Say how a unit stands to the cylinder.

    Examples
    --------
    >>> pattern_words("in-edge")
    'in the edge'
    """
    return phrase(PATTERNS.get(pattern, pattern))
