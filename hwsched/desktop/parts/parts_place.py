"""The place for what openings are fitted with: its pages are sets, fewest different parts, and cost."""

from typing import Final

from hwsched.desktop.place import Place

PARTS: Final = Place("parts", "Parts", "parts", "What openings are fitted with, in sets, and at which cost", rail=True)
