"""What a command-line verb is. Verbs themselves stand one a file in this folder."""

import argparse
from collections.abc import Callable
from dataclasses import dataclass

DONE = 0
FINDINGS = 1
WRONG_USAGE = 2
REJECTED = 3
CANNOT_OPEN = 4


@dataclass(frozen=True, slots=True)
class Verb:
    """One command. `arguments` and `run` load what they need when they are called, so that help stays quick."""

    name: str
    """One word, or two for a verb with an object, such as ``import survey``."""
    summary: str
    arguments: Callable[[argparse.ArgumentParser], None]
    run: Callable[[argparse.Namespace], int]
    """Returns the exit status."""
    own_help: bool = False
    """The verb answers --help itself."""
