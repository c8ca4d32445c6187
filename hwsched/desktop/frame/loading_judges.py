"""Loads what judges and draws openings once they are seen: rules, fitting and calculations take longer than reading.

Here belongs what the check of a project and the sheet of its first opening need; what other pages need is loaded after
that, by `loading_ahead`. Nothing here may know the toolkit: it is loaded beside the screen's thread.
"""

from importlib import import_module
from typing import Final

from hwsched.operations.collector import collector_paused

JUDGES: Final = (
    "hwsched.operations.findings.checking",
    "hwsched.rules.saying",
    "hwsched.operations.parts.hardware_sets",
    "hwsched.operations.opening.trial_placement",
    "hwsched.drawings.opening.scene",
    "hwsched.work.tools",
)
"""Each with all that it imports. A test tells what is missing."""


def load_judges() -> None:
    """Load them, off the screen's thread; what is there already costs nothing."""
    # The collector finds nothing in what is loaded, and would look through all openings meanwhile.
    with collector_paused():
        for each in JUDGES:
            import_module(each)
