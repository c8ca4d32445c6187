"""Moving a project's schema to the newest revision, and saying which revision one has.

The steps themselves stand under `migrations/`.
"""

from typing import TYPE_CHECKING

from sqlalchemy import Connection, inspect, select
from sqlalchemy.sql import column, table

from hwsched.model.file.schema import HEAD
from hwsched.model.journal.chain import seal_chain
from hwsched.model.journal.digests import seal_tables
from hwsched.model.journal.history import newest
from hwsched.model.tables import CHANGE_SET, PROJECT
from hwsched.paths import MIGRATIONS

if TYPE_CHECKING:
    from alembic.config import Config

_ALEMBIC_VERSION = table("alembic_version", column("version_num"))


def revision_of(connection: Connection) -> str | None:
    """Read the revision of a database's schema; None where it holds no project."""
    if not {"alembic_version", PROJECT.name, CHANGE_SET.name} <= set(inspect(connection).get_table_names()):
        return None
    return connection.scalar(select(_ALEMBIC_VERSION.c.version_num))


def stamp(connection: Connection) -> None:
    """Write the newest revision into a database whose tables were just made from the declarations."""
    connection.exec_driver_sql(
        "CREATE TABLE alembic_version "
        "(version_num VARCHAR(32) NOT NULL, CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num))"
    )
    connection.execute(_ALEMBIC_VERSION.insert().values(version_num=HEAD))


def upgrade(connection: Connection, revision: str | None = None) -> None:
    """Run the migrations up to a revision within the caller's transaction.

    Parameters
    ----------
    connection : Connection
        In a writing transaction; on SQLite with foreign keys off, since tables are made anew.
    revision : str, optional
        Where to stop; the newest when left out, and then what the tables hold is what they should hold from then on.
    """
    # alembic takes a quarter of a second to load and is needed once in the life of a project's schema.
    from alembic import command  # noqa: PLC0415

    config = configuration()
    config.attributes["connection"] = connection
    command.upgrade(config, revision or HEAD)
    if revision is None:
        # Migrations change rows and the journal past both.
        number = newest(connection)
        seal_tables(connection, number)
        seal_chain(connection)


def configuration() -> "Config":
    """Return alembic's configuration for our migrations; there is no file of its own."""
    from alembic.config import Config  # noqa: PLC0415

    config = Config()
    config.set_main_option("script_location", str(MIGRATIONS).replace("%", "%%"))
    return config
