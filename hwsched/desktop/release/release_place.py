"""The place for what leaves the house: its pages are revisions and the gate."""

from typing import Final

from hwsched.desktop.place import Place
from hwsched.language import to_phrase

RELEASE: Final = Place(
    "release",
    to_phrase("Release"),
    "release",
    to_phrase("Revisions, what differs, and what is ready to go out"),
    rail=True,
)
