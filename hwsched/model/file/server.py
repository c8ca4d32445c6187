"""What the errors of a database server mean for the project, said for people; files have `sqlite_file`."""

from typing import Final

from sqlalchemy import URL
from sqlalchemy.exc import DatabaseError, OperationalError

from hwsched.model.errors import BusyProjectError, ForbiddenProjectError, ProjectError, UnreachableProjectError
from hwsched.model.file.address import shown_address, without_secrets

# PostgreSQL, appendix A, error codes.
_HELD: Final = frozenset({"55P03", "40001", "40P01"})  # lock_not_available, serialization_failure, deadlock_detected
_FORBIDDEN: Final = frozenset({"42501", "25006"})  # insufficient_privilege, read_only_sql_transaction
_FULL: Final = "53100"  # disk_full


def refusal_of_server(address: URL, error: DatabaseError) -> ProjectError | None:
    """Say what a server's or its driver's error means; None where it speaks of a mistake of this program.

    Parameters
    ----------
    address : URL
        Of the database; its password is kept out of the message.
    error : DatabaseError
        As SQLAlchemy raised it.
    """
    cause = error.orig or error
    state = getattr(cause, "sqlstate", None)
    place = shown_address(address)
    said = without_secrets(str(cause).strip().split("\n", 1)[0] if state else str(cause).strip(), address)
    if state in _HELD:
        return BusyProjectError(f"somebody else is writing to {place}; try again")
    if state in _FORBIDDEN:
        return ForbiddenProjectError(
            f"{place}: {said}; this role may not do that: ask the database's keeper to let it, or use another one"
        )
    if state == _FULL:
        return ProjectError(f"the disk of {place} is full: {said}")
    # Without a statement it failed as the connection was made: an option that there is not, a service without entry.
    if isinstance(error, OperationalError) or error.statement is None:
        return UnreachableProjectError(f"{place}: {said}")
    return None
