"""What verbs load as they run, loaded: a process that is forked from one that has it loads nothing any more."""

import gc

import openpyxl
import python_calamine

from hwsched.cli import ENTRIES
from hwsched.operations import collector
from hwsched.operations.project import demonstration

for _entry in ENTRIES:
    _entry.load()

# Every child would look through all of this, and by that copy it.
gc.collect()
gc.freeze()
collector.SET_ASIDE = True

__all__ = ["demonstration", "openpyxl", "python_calamine"]
