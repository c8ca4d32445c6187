"""Signals that wait for a moment in which being told to stop would be lost, or would break what a library sets up."""

from __future__ import annotations

import signal
from contextlib import contextmanager

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Iterator


@contextmanager
def signals_held() -> Iterator[None]:
    """Let signals that ask for the end come when the block has ended; where the system cannot, they come as ever."""
    if not hasattr(signal, "pthread_sigmask"):
        yield
        return
    before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT, signal.SIGTERM, signal.SIGHUP})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)
