"""Walls that fasteners are meant for; values equal to those of the survey."""

from typing import Final

from hwsched.attributes import Choice

WALLS: Final[tuple[Choice, ...]] = (
    Choice("masonry", "Masonry or concrete", ("brick", "block", "concrete", "stone", "solid wall")),
    Choice("hollow", "Board on studs", ("plasterboard", "drywall", "gypsum board", "stud wall", "partition")),
    Choice("steel", "Steel sheet or post", ("metal", "steel post", "post", "pillar", "sheet steel")),
    Choice("wood", "Wood", ("timber", "panelling", "wood panel")),
)
