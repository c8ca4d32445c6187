"""What made a fit: the program, and the facts that were read

Revision: 0003, after 0007. Fits that are stored already keep their place; no program is known of them.
"""

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0007"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "engine",
        sa.Column("key", sa.Text(), nullable=False),
        sa.Column("program", sa.Text(), nullable=False),
        sa.Column("parts", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("key", name=op.f("pk_engine")),
    )
    op.create_table(
        "facts_read",
        sa.Column("key", sa.Text(), nullable=False),
        sa.Column("names", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("key", name=op.f("pk_facts_read")),
    )
    with op.batch_alter_table("opening_fit", schema=None) as batch_op:
        batch_op.add_column(sa.Column("engine", sa.Text(), nullable=True))
        batch_op.add_column(sa.Column("facts_read", sa.Text(), nullable=True))
        batch_op.create_foreign_key(batch_op.f("fk_opening_fit_engine"), "engine", ["engine"], ["key"])
        batch_op.create_foreign_key(batch_op.f("fk_opening_fit_facts_read"), "facts_read", ["facts_read"], ["key"])
