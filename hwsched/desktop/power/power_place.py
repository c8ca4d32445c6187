"""The place for power: supplies and circuits, and its pages, siting and planning."""

from typing import Final

from PySide6.QtWidgets import QWidget

from hwsched.desktop.frame import Frame
from hwsched.desktop.place import Place
from hwsched.desktop.power.power_window import PowerWindow
from hwsched.language import to_phrase


def _power(frame: Frame) -> PowerWindow:
    made = frame.pages.page("power")
    assert isinstance(made, PowerWindow)
    return made


def _made(frame: Frame) -> QWidget:
    return PowerWindow(frame.pages.need_desk())


def _siting(frame: Frame) -> QWidget:
    return _power(frame).siting_page()


def _layout(frame: Frame) -> QWidget:
    return _power(frame).layout_page()


POWER: Final = Place(
    "power",
    to_phrase("Power"),
    "power",
    to_phrase("Supplies and circuits: lay them, see volts, site supplies"),
    rail=True,
    make=_made,
    show=PowerWindow.tell,
    keys="Ctrl+Shift+P",
)
SITING: Final = Place(
    "siting",
    to_phrase("Site supplies"),
    "",
    to_phrase("Fewest supplies, then least wire"),
    make=_siting,
    within="power",
)
LAYOUT: Final = Place(
    "layout",
    to_phrase("Plan runs"),
    "",
    to_phrase("Supplies, wires and runs of a building, or of the chosen circuit"),
    make=_layout,
    within="power",
)
