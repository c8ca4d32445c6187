"""The cautions of the work, each with the condition under which it holds; a step names those of its own place.

The texts are common practice in our own words. They defer to the label, the code in force, the authority that has
jurisdiction and licensed practice.
"""

from typing import Final

from hwsched.work.step import Caution

FIRE: Final = Caution(
    "fire",
    "Fire door",
    "Fire door. Read the label on leaf and frame before any tool is taken out. Drill only what the adopted edition "
    "of NFPA 80 lists as job-site preparation: round, not over 1 in unless it is a cylinder hole or both listings "
    "say more. Anything else waits for written permission from the listing laboratory. Keep the label readable and "
    "write down every hole.",
    lambda s: s.rated,
)
FILL: Final = Caution(
    "fill",
    "Old holes filled",
    "Unused fastener holes in a rated leaf or frame are filled by a method that the standard names, not covered.",
    lambda s: s.rated,
)
EGRESS: Final = Caution(
    "egress",
    "Egress",
    "Egress. From inside one ordinary movement must open the door: no key, code, card or second action, with power on, "
    "off, and battery dead. Test it before you leave.",
    lambda s: s.egress,
)
DUST: Final = Caution(
    "dust",
    "Silica dust",
    "Mineral core and masonry make respirable silica dust: extraction at the drill, and a respirator as the employer "
    "asks.",
    lambda s: s.material == "mineral-core" or (s.leaf is None and s.given.opening.wall_build == "masonry"),
)
GLASS: Final = Caution(
    "glass",
    "Glass",
    "Do not drill glass. Tempered glass bursts when it is cut or drilled.",
    lambda s: s.material == "glass",
)
DRILL: Final = Caution(
    "drill",
    "Drilling",
    "Eye protection on, jigs clamped, no hand in the line of the bit; unplug to change a bit.",
    lambda s: s.drills,
)
LOW_VOLTAGE: Final = Caution(
    "low-voltage",
    "Low voltage",
    "Low-voltage wiring only, by people allowed to do it at this place. No supply is ever mounted on a leaf; "
    "its mains connection is licensed work. Keep it apart from mains.",
    lambda s: s.fit.power == "supply" or s.has("supply", "standby-battery"),
)
CELLS: Final = Caution(
    "cells",
    "Cells",
    "Mix no old and new cells, short none, charge no primary ones; take spent ones back as the place requires.",
    lambda s: s.has("battery", "coin-cell"),
)
COIN: Final = Caution(
    "coin",
    "No key yet",
    "No key until cells or supply feed the unit: its coin cell would have to answer, and is soon spent.",
    lambda s: s.has("coin-cell") and s.unit is not None,
)
STATIC: Final = Caution(
    "static",
    "Electronics",
    "Hold electronics by their plate, off metal and chips; no unit hangs on its lead.",
    lambda s: s.has("unit"),
)
LEAD: Final = Caution(
    "lead",
    "Lead",
    "No kink, no sharp edge; pull the lead, never its plug.",
    lambda s: s.fit.cable is not None,
)

CAUTIONS: Final = (FIRE, FILL, EGRESS, DUST, GLASS, DRILL, LOW_VOLTAGE, CELLS, COIN, STATIC, LEAD)
"""In the order in which they are listed where they stand together: fire and egress first."""
RECALLED: Final = (DUST, LOW_VOLTAGE, EGRESS)
"""Those that are recalled by their title at every later step that they hold at."""
