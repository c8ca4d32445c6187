"""Run by alembic: uses the connection that the caller opened."""

from alembic import context

from hwsched.model.tables import METADATA

connection = context.config.attributes["connection"]
context.configure(connection=connection, target_metadata=METADATA, render_as_batch=True, compare_type=True)
with context.begin_transaction():
    context.run_migrations()
