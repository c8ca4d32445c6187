"""The family of places: one file each, one line below; rail, tabs, menus, find, back and forward follow.

Pages that are made of the desk alone have their line in `beside`.
"""

from typing import Final

from hwsched.desktop.place import Place
from hwsched.family import imported

# Their order is that of the rail, of the tabs and of the menus.
from hwsched.desktop.survey.survey_place import SURVEY
from hwsched.desktop.survey.openings_place import OPENINGS
from hwsched.desktop.power.power_place import POWER, SITING, LAYOUT
from hwsched.desktop.parts.parts_place import PARTS
from hwsched.desktop.release.release_place import RELEASE
from hwsched.desktop.beside import PAGES

PLACES: Final[tuple[Place, ...]] = imported(globals(), Place)
