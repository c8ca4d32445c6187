"""The place for what leaves the house: its pages are revisions and the gate."""

from typing import Final

from hwsched.desktop.place import Place

RELEASE: Final = Place(
    "release", "Release", "release", "Revisions, what differs, and what is ready to go out", rail=True
)
