"""The desktop: windows, forms and views over the operations. Qt stands here and nowhere else."""

from hwsched.desktop.plain_imports import import_plainly
from hwsched.operations.collector import collector_paused

import_plainly()
# What is loaded is kept: the garbage collector finds nothing in it, and looks through all of it again and again.
with collector_paused():
    from hwsched.desktop.application import run_desktop

__all__ = ["run_desktop"]
