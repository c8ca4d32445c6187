"""What is loaded when it is first called, so that a page to which nobody goes costs the start nothing."""

from collections.abc import Callable
from dataclasses import dataclass
from importlib import import_module
from operator import attrgetter
from typing import Any


@dataclass(frozen=True, slots=True)
class Later:
    """A call of what is not loaded yet."""

    place: str
    """``module:NAME``, the module below `hwsched.desktop`; of a class's method ``module:CLASS.METHOD``."""

    @property
    def module(self) -> str:
        """The whole name of its module."""
        return f"hwsched.desktop.{self.place.partition(':')[0]}"

    def load(self) -> Callable[..., Any]:
        """Return what will be called."""
        found: Callable[..., Any] = attrgetter(self.place.partition(":")[2])(import_module(self.module))
        return found

    def __call__(self, *given: Any) -> Any:
        """Load it and call it."""
        return self.load()(*given)


later = Later
