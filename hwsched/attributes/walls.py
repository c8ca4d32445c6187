"""Walls: on which the survey finds a unit, and for which the catalogue has fasteners. One list of words for both."""

from typing import Final

from hwsched.attributes.attribute import Choice

WALLS: Final[tuple[Choice, ...]] = (
    Choice("masonry", "Masonry or concrete", ("brick", "block", "concrete", "stone", "solid wall")),
    Choice("hollow", "Board on studs", ("plasterboard", "drywall", "gypsum board", "stud wall", "partition")),
    Choice("steel", "Steel sheet or post", ("metal", "steel post", "post", "pillar", "sheet steel")),
    Choice("wood", "Wood", ("timber", "panelling", "wood panel")),
)
