"""Power in the main window: the way to the place for it."""

from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.frame.subject import Subject


class PowerActions(Subject):
    """Supplies, circuits and what is connected there."""

    def __init__(self, frame: Frame) -> None:
        super().__init__(frame)
        self.act_power = self.way_to("power")
