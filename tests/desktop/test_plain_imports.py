"""What is loaded after the toolkit is loaded as Python does it: its source is not read once more."""

import os
import subprocess
import sys

LOADED = """
import linecache
from PySide6.QtWidgets import QApplication
{then}
from PySide6.QtSvg import QSvgRenderer
# A module of the library that nobody else needs, after one of Qt that is loaded late.
import colorsys
print(colorsys.__file__ in linecache.cache)
"""


def source_is_read(then):
    ran = subprocess.run(
        [sys.executable, "-c", LOADED.format(then=then)],
        env={**os.environ, "QT_QPA_PLATFORM": "offscreen"}, capture_output=True, text=True, timeout=120,
    )  # fmt: skip
    assert ran.returncode == 0, ran.stderr
    return ran.stdout.split() == ["True"]


def test_the_source_of_what_is_loaded_is_not_read_for_the_toolkit():
    # Were the toolkit to leave imports alone one day, there would be nothing to put back.
    assert source_is_read("pass")
    assert not source_is_read("import hwsched.desktop")
