"""Looks: every pen and fill has one, letters can be read, new and existing are told apart without colour."""

from typing import get_args

import pytest

from hwsched.drawings.drawing import Fill, Pen, TextRole
from hwsched.render.screen import DARK, LIGHT

WIDTHS = {0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1.0, 1.4, 2.0}  # ISO 128, from memory (facts 6.4)


def luminance(colour):
    """Relative luminance of sRGB (WCAG 2)."""
    parts = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in colour]
    return 0.2126 * parts[0] + 0.7152 * parts[1] + 0.0722 * parts[2]


def contrast(a, b):
    low, high = sorted((luminance(a), luminance(b)))
    return (high + 0.05) / (low + 0.05)


@pytest.mark.parametrize("look", [LIGHT, DARK])
def test_looks_are_complete_and_widths_come_from_the_series(look):
    assert set(look.pens) == set(get_args(Pen))
    assert set(look.fills) == set(get_args(Fill))
    assert set(look.letters) == set(get_args(TextRole))
    assert {pen.width_mm for pen in look.pens.values()} <= WIDTHS


@pytest.mark.parametrize("look", [LIGHT, DARK])
def test_letters_and_lines_stand_out_from_the_ground_and_from_fills(look):
    grounds = [look.ground, *(fill for fill in look.fills.values() if fill)]
    for colour in look.letters.values():
        assert contrast(colour, look.ground) >= 4.5
    for ground in grounds:
        assert contrast(look.letters["small"], ground) >= 4.5
    for pen in look.pens.values():
        assert contrast(pen.colour, look.ground) >= 3.0


@pytest.mark.parametrize("look", [LIGHT, DARK])
def test_new_and_existing_differ_without_colour(look):
    assert look.pens["new"].width_mm >= 2 * look.pens["existing"].width_mm
    assert look.pens["warning"].width_mm > look.pens["new"].width_mm
    assert abs(luminance(look.fills["new"]) - luminance(look.fills["existing"])) > 0.003
