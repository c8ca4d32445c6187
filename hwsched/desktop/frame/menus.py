"""The menus: made from the commands, each with its keys; a command whose place here nobody said stands at the end."""

from typing import Final

from PySide6.QtWidgets import QMenu, QMenuBar

from hwsched.desktop.frame.commands import Command, Commands
from hwsched.desktop.frame.pages import Pages
from hwsched.language import phrase, to_phrase

TITLES: Final = {
    "Project": to_phrase("&Project"),
    "Edit": to_phrase("&Edit"),
    "Survey": to_phrase("&Survey"),
    "Openings": to_phrase("&Openings"),
    "Findings": to_phrase("&Findings"),
    "Parts": to_phrase("P&arts"),
    "Power": to_phrase("Po&wer"),
    "Release": to_phrase("&Release"),
    "Go": to_phrase("&Go"),
    "View": to_phrase("&View"),
    "Help": to_phrase("&Help"),
}
"""Menus in their order, by the title that commands name."""
_ROOMS: Final = {
    "survey": to_phrase("Survey"),
    "openings": to_phrase("Openings"),
    "parts": to_phrase("Parts"),
    "power": to_phrase("Power"),
    "release": to_phrase("Release"),
}
"""Room of a page, and the menu that leads to it."""
_PAGES: Final = {"help": to_phrase("Help"), "keys": to_phrase("Help"), "preferences": to_phrase("View")}
"""Pages of no room, and where they stand; others stand under Project."""
_FIRST: Final = {
    "Project": (
        ("new-project", "open-project", "close-project", "save-what-can-be-read-of-a-damaged-project"),
        ("settings-and-rules",),
    ),
    "Edit": (("undo", "redo", "history"),),
    "Openings": (("fit", "check"), ("add-opening", "add-existing-item", "retire-openings", "remove-openings")),
    "Go": (("back", "forward"), ("find",)),
}
"""Groups at the top of a menu; lines part them."""
_LAST: Final = {"Project": ("quit",)}


class Menus:
    """Menus of a bar that follow the commands.

    Parameters
    ----------
    bar : QMenuBar
        Where they stand.
    commands : Commands
        All of them, and those that come later.
    pages : Pages
        Tells to which room a page belongs.
    """

    def __init__(self, bar: QMenuBar, commands: Commands, pages: Pages) -> None:
        self._commands, self._pages = commands, pages
        self._inserted: dict[str, tuple[str, QMenu]] = {}
        self.menus: dict[str, QMenu] = {title: bar.addMenu(phrase(words)) for title, words in TITLES.items()}
        for title in self.menus:
            self._fill(title)
        commands.added.connect(self._on_added)

    def menu_of(self, command: Command) -> str:
        """Return the title of the menu in which a command stands."""
        if command.identifier.startswith("go-"):
            place = self._pages.places.get(command.identifier.removeprefix("go-"))
            if place is not None and not place.rail:
                return _PAGES.get(place.name) or _ROOMS.get(place.within, "Project")
        return command.menu if command.menu in self.menus else "Project"

    def insert(self, title: str, after: str, menu: QMenu) -> None:
        """Put a menu into another one, behind a command."""
        self._inserted[title] = after, menu
        self._fill(title)

    def _fill(self, title: str) -> None:
        menu = self.menus[title]
        held = {each.identifier: each for each in self._commands if self.menu_of(each) == title}
        last = [name for name in _LAST.get(title, ()) if name in held]
        groups = [[name for name in group if name in held] for group in _FIRST.get(title, ())]
        named = {name for group in groups for name in group} | set(last)
        others = [name for name in held if name not in named]
        groups.append([name for name in others if not name.startswith("go-")])
        groups.append([name for name in others if name.startswith("go-")])
        groups.append(last)
        menu.clear()
        for group in groups:
            if group and not menu.isEmpty():
                menu.addSeparator()
            for name in group:
                menu.addAction(held[name].act)
                if name == self._inserted.get(title, ("",))[0]:
                    menu.addMenu(self._inserted[title][1])
        menu.menuAction().setVisible(not menu.isEmpty())

    def _on_added(self, command: Command) -> None:
        self._fill(self.menu_of(command))
