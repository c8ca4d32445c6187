"""Whether this version of the program knows a schema. Nothing else is loaded for it: it is asked at every opening."""

from hwsched.model.errors import NewerProjectError
from hwsched.model.file.schema import HEAD, REVISIONS


def is_current(revision: str, name: str) -> bool:
    """Tell whether a schema is the newest.

    Parameters
    ----------
    revision : str
        Of the project.
    name : str
        Of the project, for the message.

    Raises
    ------
    NewerProjectError
        Where this version of the program does not know the revision.
    """
    if revision not in REVISIONS:
        raise NewerProjectError(
            f"{name} was written by a newer version of hwsched (schema {revision}, this version knows up to {HEAD}); "
            "it was left alone: use the newer version"
        )
    return revision == HEAD
