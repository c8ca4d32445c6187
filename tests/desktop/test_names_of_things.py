"""What machines call rules, differences, roles, kinds of parts and facts is not read by people: each has its words."""

import re
from typing import get_args

import pytest
from PySide6.QtWidgets import QWidget

from hwsched.catalogue import KINDS
from hwsched.desktop.frame.places import PLACES
from hwsched.desktop.window import Window
from hwsched.exchange.survey import decisions
from hwsched.rules import RULEBOOK
from hwsched.survey import ENTITIES, POWER_ENTITIES
from hwsched.values.fit import Role, Status
from tests.desktop.conftest import idle
from tests.desktop.pictures import used
from tests.desktop.seen_texts import cells, headings, texts_of
from tests.desktop.test_texts_of_places import pages_of

SAID_AS_THEY_STAND = {"surface-unit", "edge-unit"}
"""Names that are words of the trade."""
ENTITY_NAMES = [each.name for each in (*ENTITIES, *POWER_ENTITIES)]
NAMES = {
    *(rule.id for rule in RULEBOOK), *(kind.name for kind in decisions.KINDS), *(kind.name for kind in KINDS),
    *get_args(Role), *get_args(Status),
    *(each.name for entity in (*ENTITIES, *POWER_ENTITIES) for each in entity.attributes),
} - SAID_AS_THEY_STAND  # fmt: skip
MARKED = sorted((each for each in NAMES if "-" in each or "_" in each), key=len, reverse=True)
"""Those that are no words: by a hyphen or an underscore in them."""
OF_MACHINES = re.compile(
    rf"(?<![\w.'/-])({'|'.join(MARKED)})(?![\w.'/-])|(?<![\w.])(?:{'|'.join(ENTITY_NAMES)})\.[a-z_]+\b"
)


def found_in(texts):
    """Return the texts in which a name of machines stands."""
    return {text for text in texts if OF_MACHINES.search(text)}


@pytest.fixture
def lived(qtbot, corner_file, tmp_path):
    """A window on a project on which people have worked."""
    shown = Window("tester")
    qtbot.addWidget(shown)
    shown.resize(1366, 768)
    shown.show()
    shown.project.open_project(str(used(corner_file, tmp_path)))
    idle(qtbot, shown)
    return shown


def shown_in(part):
    """Every text that a part of the window shows or tells."""
    for each in [part, *part.findChildren(QWidget)]:
        if each.isVisibleTo(part.window()):
            yield from texts_of(each)
    yield from cells(part)
    yield from headings(part)


def test_no_place_shows_what_machines_call_things(lived, qtbot):
    found, seen = {}, 0
    for place in PLACES:
        # There a rule's identifier stands beside its title, for those who also work at the command line.
        if place.name == "rulebook":
            continue
        lived.frame.go(place.name)
        idle(qtbot, lived)
        for _ in pages_of(lived.centre):
            idle(qtbot, lived)
            seen += 1
            for text in found_in(shown_in(lived.centre)):
                found.setdefault(text, place.name)
    lived.frame.go("openings")
    for chosen in (slice(15, 16), slice(4, 5), slice(15, 19), slice(22, 24)):
        ids = list(lived.frame.state.workspace.checked)[chosen]
        lived.openings.select_openings(ids)
        idle(qtbot, lived)
        for _ in pages_of(lived.inspector):
            idle(qtbot, lived)
            seen += 1
            for text in found_in(shown_in(lived.inspector)):
                found.setdefault(text, "inspector")
    assert seen > 50
    assert not found, "\n".join(f"{where}: {text}" for text, where in found.items())
