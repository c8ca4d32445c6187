"""Python's garbage collector, put off while very many plain values are made at once: none of them is garbage."""

import gc
from collections.abc import Iterator
from contextlib import contextmanager

SET_ASIDE = False
"""Whether somebody has set things aside for good (``gc.freeze``), which then stay there. Told, not asked of Python: it
would count all of them one by one, which takes longer than what is done here."""
_held = False
"""Whether it is what somebody works in that is set aside."""


def set_aside() -> None:
    """Let the collector look no more through what there is, until `take_back`.

    For who works in an open project all day: to look through its values once, two million at 10,000 openings, holds
    every thread for half a second, at any moment. What nobody holds any more is still let go of; only rings of values
    that hold one another wait for `take_back`.
    """
    global SET_ASIDE, _held
    if _held or not SET_ASIDE:
        gc.freeze()
        SET_ASIDE = _held = True


def take_back() -> None:
    """Let the collector look through everything again that was set aside here."""
    global SET_ASIDE, _held
    if _held:
        gc.unfreeze()
        SET_ASIDE = _held = False


@contextmanager
def collector_paused() -> Iterator[None]:
    """Hold the collector: of values that are made and kept it finds nothing, and costs a quarter of the time."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            # What was made goes to the old ones without being looked through: else the first thing made hereafter would
            # have all of it looked through at once.
            if _held:
                gc.freeze()
            elif not SET_ASIDE:
                gc.freeze()
                gc.unfreeze()
            gc.enable()
