"""Whether the project is as its journal left it, and saying that it shall stand as it is."""

from hwsched.model.journal.verifying import Foreign
from hwsched.model.journal.verifying import accept as accept_found
from hwsched.model.journal.verifying import verify as verify_all
from hwsched.model.project import Project
from hwsched.operations.changes import Changes
from hwsched.operations.snapshot import of_one_state

__all__ = ["Foreign", "accept", "verify"]


@of_one_state
def verify(project: Project) -> Foreign:
    """Compare all tables, the journal and all contents with what the change sets left there."""
    with project.reading() as connection:
        return verify_all(connection)


def accept(project: Project, *, who: str) -> tuple[Foreign, Changes]:
    """Take what was changed past the journal as it is, in one change set that tells it and that an undo takes back.

    Returns
    -------
    tuple of Foreign and Changes
        What was found; without anything no change set is written.

    Raises
    ------
    NotAllowedError
        Where the person's role does not do this.
    """
    with project.change("accept-present-state", "Take the present state as it is", who) as change:
        found = verify_all(change.connection)
        if found:
            accept_found(change, found)
    return found, Changes.of(change)
