"""The family of places: one file each, one line below; rail, tabs, menus, find, back and forward follow.

Pages that are made of the desk alone have their line in `beside`.
"""

from typing import Final

from hwsched.desktop.place import Place
from hwsched.family import imported

# Their order is that of the rail, of the tabs and of the menus.
from hwsched.desktop.project.today_page import TODAY
from hwsched.desktop.survey.survey_place import SURVEY
from hwsched.desktop.survey.openings_place import OPENINGS
from hwsched.desktop.power.power_place import POWER, SITING, LAYOUT
from hwsched.desktop.parts.parts_place import PARTS
from hwsched.desktop.release.release_place import RELEASE
from hwsched.desktop.beside import PAGES
from hwsched.desktop.project.calculators import CALCULATORS_PLACE
from hwsched.desktop.project.preferences_page import PREFERENCES
from hwsched.desktop.project.keys_page import KEYS
from hwsched.desktop.project.help_page import HELP

PLACES: Final[tuple[Place, ...]] = imported(globals(), Place)
