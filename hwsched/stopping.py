"""Stopping work that nobody wants any more: whoever has it done says how that is known, and every long loop asks.

Here belongs how loops ask. What was written before a loop is stopped stands; what is in a transaction is rolled back by
the exception, as by any other.
"""

from __future__ import annotations

from contextlib import contextmanager
from contextvars import ContextVar
from itertools import islice
from typing import TYPE_CHECKING, Final, TypeVar

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator

Item = TypeVar("Item")

_ASKED: Final[ContextVar[Callable[[], bool] | None]] = ContextVar("asked", default=None)


class StopAskedError(Exception):
    """The work was asked to stop, and stopped."""


@contextmanager
def stoppable(stop: Callable[[], bool]) -> Iterator[None]:
    """Let loops inside ask whether to stop, in this thread.

    Parameters
    ----------
    stop : callable
        Tells whether to stop; called often, so it must be quick.
    """
    token = _ASKED.set(stop)
    try:
        yield
    finally:
        _ASKED.reset(token)


def ask_stop() -> None:
    """Go on, unless the work was asked to stop.

    Raises
    ------
    StopAskedError
        Where it was.

    Examples
    --------
    >>> ask_stop()
    >>> with stoppable(lambda: True):
    ...     ask_stop()
    Traceback (most recent call last):
    ...
    hwsched.stopping.StopAskedError: stopped as it was asked to
    """
    stop = _ASKED.get()
    if stop is not None and stop():
        raise StopAskedError("stopped as it was asked to")


def asking(items: Iterable[Item], every: int = 1) -> Iterator[Item]:
    """Go through items, asking before each.

    Parameters
    ----------
    items : iterable
        What is worked through.
    every : int
        Before each of how many it is asked; more than one where the work at each is a matter of microseconds.
    """
    if _ASKED.get() is None:
        # Nobody can have it stopped, and loops of tens of thousands are many.
        yield from items
        return
    if every > 1:
        whole = iter(items)
        while portion := tuple(islice(whole, every)):
            ask_stop()
            yield from portion
        return
    for item in items:
        ask_stop()
        yield item


class Asking(tuple[Item, ...]):
    """Items that ask whenever somebody goes through them.

    Examples
    --------
    >>> with stoppable(lambda: True):
    ...     [each for each in Asking("ab")]
    Traceback (most recent call last):
    ...
    hwsched.stopping.StopAskedError: stopped as it was asked to
    """

    __slots__ = ()

    def __iter__(self) -> Iterator[Item]:
        return asking(super().__iter__())
