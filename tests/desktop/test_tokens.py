"""Text is read on every surface in both themes; lines and focus are seen; states differ by more than their colour."""

import re
from itertools import product
from pathlib import Path
from typing import get_args

import pytest
from PySide6.QtGui import QFont, QPalette

from hwsched import desktop
from hwsched.desktop.looks.tokens import (
    COLOURS,
    ROW,
    SPACE,
    STATES,
    SURFACES,
    TARGET,
    TEXTS,
    TYPE,
    Line,
    colour,
    dark_now,
    font,
    scaled,
    wash,
)
from hwsched.desktop.parts.cost_table import CostTable
from hwsched.desktop.widgets.lines import Lines

DESKTOP = Path(desktop.__file__).parent
READ = 4.5
"""Least contrast of text: WCAG 2.2, success criterion 1.4.3, level AA."""
SEEN = 3.0
"""Least contrast of edges of what is used, and of the focus: WCAG 2.2, success criterion 1.4.11."""


def luminance(code):
    """Relative luminance of a colour in sRGB, as WCAG 2.2 defines it."""
    channels = [int(code[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    red, green, blue = (each / 12.92 if each <= 0.04045 else ((each + 0.055) / 1.055) ** 2.4 for each in channels)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one, other):
    """Contrast ratio of two colours, as WCAG 2.2 defines it: from 1 to 21."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_the_formula_is_that_of_the_publication():
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#336699", "#336699") == 1
    # The grey that just passes on white is known from the publication's own tools.
    assert contrast("#767676", "#ffffff") >= READ > contrast("#777777", "#ffffff")


@pytest.mark.parametrize("dark", [False, True])
def test_every_text_is_read_on_every_surface(dark):
    assert len(TEXTS) >= 9
    assert len(SURFACES) >= 8
    pairs = [*product(TEXTS, SURFACES), ("on-accent", "accent")]
    found = {pair: contrast(*(COLOURS[role][dark] for role in pair)) for pair in pairs}
    assert not {pair: round(ratio, 2) for pair, ratio in found.items() if ratio < READ}


@pytest.mark.parametrize("dark", [False, True])
def test_every_text_is_read_on_a_breath_of_its_own_colour(dark):
    found = {role: contrast(COLOURS[role][dark], wash(role, dark=dark).name()) for role in TEXTS}
    assert not {role: round(ratio, 2) for role, ratio in found.items() if ratio < READ}
    assert len({wash(look.role, dark=dark).name() for look in STATES.values()}) == len(STATES)


@pytest.mark.parametrize("dark", [False, True])
def test_edges_and_focus_are_seen_on_what_they_stand_on(dark):
    pairs = product(("edge", "focus"), ("window", "pane", "field"))
    found = {pair: contrast(*(COLOURS[role][dark] for role in pair)) for pair in pairs}
    assert not {pair: round(ratio, 2) for pair, ratio in found.items() if ratio < SEEN}
    assert {"edge", "focus"} < set(get_args(Line))


@pytest.mark.parametrize("dark", [False, True])
def test_surfaces_are_three_steps_that_differ(dark):
    steps = [luminance(COLOURS[role][dark]) for role in ("window", "pane", "field")]
    assert steps == sorted(steps)
    assert len(set(steps)) == 3
    assert all((each > 0.5) != dark for each in steps)


def test_states_differ_by_word_shape_and_colour():
    assert len(STATES) == 5
    for said in ("word", "shape", "role"):
        assert len({getattr(look, said) for look in STATES.values()}) == 5


def test_steps_of_spacing_and_rows_are_those_of_the_design():
    assert (SPACE.hair, SPACE.small, SPACE.middle, SPACE.large, SPACE.wide) == (4, 8, 12, 16, 24)
    assert (TYPE.small, TYPE.normal, TYPE.large, TYPE.title) == (12, 13, 15, 20)
    assert (ROW.grid, ROW.form) == (28, 32)
    # A target of 24 px: WCAG 2.2, success criterion 2.5.8.
    assert min(TARGET, ROW.grid, ROW.form) >= 24


def test_a_colour_is_that_of_the_present_theme(qapp):
    before = QPalette(qapp.palette())
    try:
        for dark, base in ((True, "#101010"), (False, "#fafafa")):
            palette = QPalette(before)
            palette.setColor(QPalette.ColorRole.Base, base)
            qapp.setPalette(palette)
            assert dark_now() is dark
            assert colour("soft").name() == COLOURS["soft"][dark]
            assert colour("soft", dark=not dark).name() == COLOURS["soft"][not dark]
    finally:
        qapp.setPalette(before)


def test_sizes_follow_the_text_size(qapp):
    before = qapp.font()
    try:
        for percent, letters, row in ((100, 13, 28), (200, 26, 56), (80, 10, 22)):
            chosen = QFont(before)
            chosen.setPixelSize(round(13 * percent / 100))
            qapp.setFont(chosen)
            assert font().pixelSize() == letters
            assert scaled(ROW.grid) == row
        assert font("title", bold=True).bold()
        assert font("title").pixelSize() == 15
    finally:
        qapp.setFont(before)


def test_columns_are_as_wide_as_the_chosen_text_needs(qapp):
    """At 200 % amounts would be cut off in columns that stay as wide as at 100 %."""
    before = qapp.font()
    found = {}
    for percent in (100, 200):
        font = QFont(before)
        font.setPixelSize(round(TYPE.normal * percent / 100))
        qapp.setFont(font)
        lines, amounts = (
            Lines(("Severity", "Finding"), 1, {0: 76}),
            CostTable("building", "Building").grid.table,
        )
        found[percent] = lines.columnWidth(0), amounts.columnWidth(0), amounts.columnWidth(1)
    qapp.setFont(before)
    assert found == {100: (76, 256, 120), 200: (152, 512, 240)}


def test_no_widget_is_held_to_a_number_of_pixels():
    """Letters that are larger, and words that are longer, would be cut off in it."""
    held = re.compile(r"\.set(?:Minimum|Maximum|Fixed)(?:Width|Height|Size)\((?!0\))\d")
    found = [
        f"{path.relative_to(DESKTOP)}: {line.strip()}"
        for path in sorted(DESKTOP.rglob("*.py"))
        for line in path.read_text(encoding="utf-8").splitlines()
        if held.search(line)
    ]
    assert not found, "\n".join(found)
