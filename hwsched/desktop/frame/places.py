"""The family of places: their table of contents; rail, tabs, menus, find, back and forward follow.

What a place says of itself stands here and not in its file, which is loaded when somebody first goes to it. Pages
that are made of the desk alone stand in `beside`.
"""

from typing import Final

from hwsched.desktop.frame.beside import PAGES
from hwsched.desktop.frame.later import later
from hwsched.desktop.frame.place import Place
from hwsched.language import to_phrase

# Their order is that of the rail, of the tabs and of the menus.
PLACES: Final[tuple[Place, ...]] = (
    Place(
        "today",
        to_phrase("Today"),
        "today",
        to_phrase("What is to be done next, how far each level is, what has changed"),
        rail=True,
        make=later("project.today_page:made"),
    ),
    Place(
        "survey",
        to_phrase("Survey"),
        "survey",
        to_phrase("What came from the building, what is asked, what is missing"),
        rail=True,
    ),
    Place(
        "openings",
        to_phrase("Openings"),
        "openings",
        to_phrase("The register of openings, with what is chosen beside it"),
        rail=True,
        make=later("survey.openings_place:OpeningsPlace"),
        show=later("survey.openings_place:OpeningsPlace.choose"),
        inspector=True,
    ),
    Place(
        "power",
        to_phrase("Power"),
        "power",
        to_phrase("Supplies and circuits: lay them, see volts, site supplies"),
        rail=True,
        make=later("power.power_place:power_page"),
        show=later("power.power_window:PowerWindow.tell"),
        keys="Ctrl+Shift+P",
    ),
    Place(
        "siting",
        to_phrase("Site supplies"),
        "",
        to_phrase("Siting: fewest supplies, then least wire"),
        make=later("power.power_place:siting_page"),
        within="power",
    ),
    Place(
        "layout",
        to_phrase("Plan runs"),
        "",
        to_phrase("Supplies, wires and runs of a building, or of the chosen circuit"),
        make=later("power.power_place:layout_page"),
        within="power",
    ),
    Place(
        "parts",
        to_phrase("Parts"),
        "parts",
        to_phrase("What openings are fitted with, in sets, and at which cost"),
        rail=True,
    ),
    Place(
        "release",
        to_phrase("Release"),
        "release",
        to_phrase("Revisions, what differs, and what is ready to go out"),
        rail=True,
    ),
    *PAGES,
    Place(
        "calculators",
        to_phrase("Calculators"),
        "",
        to_phrase("Work out one number by itself, from the chosen opening or from what is typed"),
        needs="nothing",
        make=later("project.calculators:CalculatorsPage"),
        show=later("project.calculators:CalculatorsPage.come"),
        keys="F9",
    ),
    Place(
        "preferences",
        to_phrase("Your settings"),
        "person",
        to_phrase("Preferences of the person at this machine: name, theme (light or dark), text size"),
        needs="nothing",
        make=later("project.preferences_page:PreferencesPage"),
    ),
    Place(
        "keys",
        to_phrase("Keys"),
        "keys",
        to_phrase("Every command with its keys"),
        needs="nothing",
        make=later("project.keys_page:KeysPage"),
    ),
    Place(
        "help",
        to_phrase("Help"),
        "help",
        to_phrase("A page for each place and rule, and the handbook; without a network"),
        needs="nothing",
        make=later("project.help_page:HelpPage"),
        show=later("project.help_page:HelpPage.show_topic"),
    ),
)
