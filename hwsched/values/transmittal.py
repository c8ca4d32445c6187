"""What went to whom: a transmittal with its files, as written down; plain values."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class SentFile:
    """A file that went out."""

    name: str
    hash: str
    """SHA-256 of the content, under which the project holds it."""
    size: int
    """Bytes."""
    revision: str = ""
    """Letter of the revision that it shows; empty where it shows the project as it stood."""


@dataclass(frozen=True, slots=True)
class Transmittal:
    """Files that went to somebody at one time."""

    number: int
    """Counted from 1."""
    at: str
    """ISO 8601, in the project's zone."""
    person: str
    """Who sent it."""
    recipient: str
    purpose: str
    note: str
    files: tuple[SentFile, ...]
