"""Every icon is drawn, lies inside its square, and takes the colours of the theme in which it is painted."""

from xml.etree import ElementTree

import pytest
from PySide6.QtCore import QSize
from PySide6.QtGui import QColor, QIcon, QPalette
from PySide6.QtWidgets import QPushButton

from hwsched.desktop.looks.icons import UnknownIconError, icon, state_icon
from hwsched.desktop.looks.tokens import COLOURS, STATES
from hwsched.paths import RESOURCES

FILES = sorted((RESOURCES / "icons").glob("*.svg"))
SIDE = 48


def inked(shown):
    """Points of a picture that are not bare, with what they are coloured in."""
    image = shown.toImage()
    points = ((x, y) for x in range(image.width()) for y in range(image.height()))
    return {point: image.pixelColor(*point) for point in points if image.pixelColor(*point).alpha() > 127}


def near(one, other):
    return all(abs(a - b) <= 3 for a, b in zip(one.getRgb()[:3], QColor(other).getRgb()[:3], strict=True))


@pytest.fixture
def theme(qapp):
    before = QPalette(qapp.palette())

    def choose(*, dark):
        palette = QPalette(before)
        palette.setColor(QPalette.ColorRole.Base, "#101010" if dark else "#fafafa")
        qapp.setPalette(palette)

    yield choose
    qapp.setPalette(before)


def test_every_file_is_a_drawing_without_a_colour_of_its_own():
    assert len(FILES) > 70
    for path in FILES:
        root = ElementTree.fromstring(path.read_text(encoding="utf-8"))
        assert root.get("viewBox") == "0 0 24 24", path.name
        colours = {each.get(key) for each in root.iter() for key in ("stroke", "fill")}
        assert colours <= {"currentColor", "none", None}, path.name
        assert "currentColor" in colours, path.name
    assert (RESOURCES / "icons" / "LICENSE.txt").exists()


def test_every_icon_leaves_ink_inside_its_square(qapp):
    for path in FILES:
        ink = inked(icon(path.stem).pixmap(QSize(24, 24)))
        assert len(ink) >= 12, path.stem
        # Nothing touches the rim: it would look cut off.
        assert not {(x, y) for x, y in ink if {x, y} & {0, 23}}, path.stem


def test_an_icon_is_painted_in_the_colours_of_the_theme(theme):
    for dark in (False, True):
        theme(dark=dark)
        for mode, role in ((QIcon.Mode.Normal, "text"), (QIcon.Mode.Disabled, "disabled")):
            ink = inked(icon("disc").pixmap(QSize(SIDE, SIDE), mode))
            assert near(ink[SIDE // 2, SIDE // 2], COLOURS[role][dark])


def test_an_icon_that_stands_somewhere_follows_the_theme(theme, qtbot):
    theme(dark=False)
    button = QPushButton()
    qtbot.addWidget(button)
    button.setIcon(icon("disc", "fits"))
    theme(dark=True)
    assert near(inked(button.icon().pixmap(QSize(SIDE, SIDE)))[SIDE // 2, SIDE // 2], COLOURS["fits"][1])


def test_states_are_told_apart_without_their_colour(qapp):
    shapes = [frozenset(inked(state_icon(state).pixmap(QSize(SIDE, SIDE)))) for state in STATES]
    for at, one in enumerate(shapes):
        for other in shapes[at + 1 :]:
            # A quarter of what either of the two inks is inked by one of them only.
            assert len(one ^ other) > len(one | other) / 4


def test_an_icon_that_is_not_there_is_said_at_once(qapp):
    with pytest.raises(UnknownIconError, match="no icon quay-wagon"):
        icon("quay-wagon")
    assert icon("").isNull()
