"""The place for power, and its pages, siting and planning, which are made by it."""

from PySide6.QtWidgets import QWidget

from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.power.power_window import PowerWindow


def _power(frame: Frame) -> PowerWindow:
    made = frame.pages.page("power")
    assert isinstance(made, PowerWindow)
    return made


def power_page(frame: Frame) -> QWidget:
    """Make the page of supplies and circuits."""
    return PowerWindow(frame.pages.need_desk())


def siting_page(frame: Frame) -> QWidget:
    """Make the page on which supplies are sited."""
    return _power(frame).siting_page()


def layout_page(frame: Frame) -> QWidget:
    """Make the page on which runs are planned."""
    return _power(frame).layout_page()
