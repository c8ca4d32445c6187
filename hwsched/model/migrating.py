"""Bringing a database to the newest schema with the migrations of the project."""

from alembic import command
from alembic.config import Config
from sqlalchemy import Engine

from hwsched.paths import MIGRATIONS


def configuration() -> Config:
    """Return alembic's configuration for our migrations, without a file of its own."""
    config = Config()
    config.set_main_option("script_location", str(MIGRATIONS).replace("%", "%%"))
    return config


def upgrade(engine: Engine) -> None:
    """Upgrade to the newest revision in one transaction."""
    config = configuration()
    with engine.begin() as connection:
        config.attributes["connection"] = connection
        command.upgrade(config, "head")
