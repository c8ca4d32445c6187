"""Completing a command line that a shell has in hand; its words come through the environment, as argcomplete has it."""

import os
from typing import Final

import argcomplete
from argcomplete.shell_integration import shellcode

from hwsched.cli.parsing import tree

SHELLS: Final = ("bash", "zsh", "fish")


def complete() -> None:
    """Tell the shell what may stand next, and end the process."""
    line = os.environ.get("COMP_LINE", "")[: int(os.environ.get("COMP_POINT", "0") or 0)]
    # Only the verb that is being typed is loaded: a person waits at the key.
    typed = line.split()[1:3]
    argcomplete.autocomplete(tree(lambda entry: [entry.room, entry.name] == typed))


def shell_code(shell: str) -> str:
    """Return the lines by which a shell learns to ask the program."""
    return str(shellcode(["hwsched"], shell=shell))
