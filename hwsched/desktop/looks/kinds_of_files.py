"""Projects are known to the toolkit by their names, so that its dialogs for files do not look into them.

A dialog that lists a folder opens each file whose name it does not know. Whoever closes a file lets go of all locks
that the same process has on it: those of the open project with it. The next process that leaves the project would
then take itself for the last one and clear away what is still being written into, and what is edited here afterwards
would be lost.
"""

import os
from typing import Final

from hwsched.paths import RESOURCES

_WHERE: Final = "XDG_DATA_DIRS"
_USUAL: Final = "/usr/local/share/:/usr/share/"
"""What the toolkit takes where the environment names no folders."""


def know_projects_by_name() -> None:
    """Let the toolkit know the kinds of a project's files; to be called before it is asked about any file."""
    own = str(RESOURCES / "kinds_of_files")
    known = os.environ.get(_WHERE) or _USUAL
    if own not in known.split(":"):
        os.environ[_WHERE] = f"{own}:{known}"
