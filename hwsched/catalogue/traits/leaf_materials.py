"""Leaf materials that fasteners, tools and consumables are meant for; values equal to those of the survey."""

from typing import Final

from hwsched.attributes import Choice

LEAF_MATERIALS: Final[tuple[Choice, ...]] = (
    Choice("wood", "Wood, solid core", ("wd", "solid core", "scw", "scwd", "solid wood", "timber", "sc wood")),
    Choice("mineral-core", "Wood, mineral core", ("mineral core", "mc", "wd mineral", "fire core")),
    Choice("hollow-metal", "Hollow metal", ("hm", "steel", "hollow metal door")),
    Choice("aluminium", "Aluminium", ("al", "alum", "aluminum", "storefront")),
    Choice("glass", "Glass", ("gl", "all glass", "tempered glass", "frameless glass")),
    Choice("composite", "Composite", ("frp", "fibreglass", "fiberglass")),
    Choice("steel-gate", "Steel gate", ("gate steel", "steel tube", "bar gate")),
)
