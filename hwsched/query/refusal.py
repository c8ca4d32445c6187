"""What is said of a query that cannot be read, with the place at which it stands; or that names what is not there.

A screen underlines `Fault.start` to `Fault.end`; a terminal shows `QueryError.pointed`.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Fault:
    """Why a query cannot be read."""

    start: int
    """Where what is wrong begins: characters from the beginning of the text; its length where something is missing."""
    end: int
    found: str
    """What stands there; empty at the end of the text."""
    message: str
    """In words, for people."""
    expected: tuple[str, ...] = ()
    """What could stand there instead."""
    near: tuple[str, ...] = ()
    """Names that are nearly the same, the nearest first."""


@dataclass(frozen=True, slots=True)
class Remark:
    """Something in a query that can be read, but names what the project does not have."""

    start: int
    end: int
    message: str
    near: tuple[str, ...] = ()

    def __str__(self) -> str:
        return self.message + (f"; nearest: {', '.join(self.near)}" if self.near else "")


class QueryError(ValueError):
    """A query that cannot be read.

    Parameters
    ----------
    text : str
        The whole query.
    fault : Fault
        What is wrong, and where.
    """

    def __init__(self, text: str, fault: Fault) -> None:
        self.text = text
        self.fault = fault
        said = [fault.message]
        if fault.near:
            said.append(f"nearest: {', '.join(fault.near)}")
        elif fault.expected:
            said.append(f"possible here: {', '.join(fault.expected)}")
        super().__init__("; ".join(said))

    @property
    def pointed(self) -> str:
        """The message, with the query and a mark under the place below it."""
        before = "".join(" " if character != "\t" else "\t" for character in self.text[: self.fault.start])
        marked = "^" * max(1, self.fault.end - self.fault.start)
        line = self.text.replace("\n", " ").replace("\r", " ")
        return f"{self} (at character {self.fault.start + 1})\n  {line}\n  {before}{marked}"
