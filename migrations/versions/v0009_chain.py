"""The journal as a chain, and a digest per table

Revision: 0009, after 0008. The hashes are worked out once the newest schema is reached, see
`hwsched.model.file.migrating`: a later migration changes rows too.
"""

import sqlalchemy as sa
from alembic import op

revision = "0009"
down_revision = "0008"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "table_digest",
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("digest", sa.Text(), nullable=False),
        sa.Column("rows", sa.Integer(), nullable=False),
        sa.Column("change_set", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("name", name=op.f("pk_table_digest")),
    )
    # Both databases know it, and nothing is copied.
    op.add_column("change_set", sa.Column("own_hash", sa.Text(), nullable=True))
    op.add_column("change_set", sa.Column("chain_hash", sa.Text(), nullable=True))
