"""The place for what comes from the building: its pages are deliveries with their questions, and what is missing."""

from typing import Final

from hwsched.desktop.place import Place
from hwsched.language import to_phrase

SURVEY: Final = Place(
    "survey",
    to_phrase("Survey"),
    "survey",
    to_phrase("What came from the building, what is asked, what is missing"),
    rail=True,
)
