"""The place for what openings are fitted with: its pages are sets, fewest different parts, and cost."""

from typing import Final

from hwsched.desktop.place import Place
from hwsched.language import to_phrase

PARTS: Final = Place(
    "parts",
    to_phrase("Parts"),
    "parts",
    to_phrase("What openings are fitted with, in sets, and at which cost"),
    rail=True,
)
