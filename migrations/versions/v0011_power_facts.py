"""Facts of the survey that decide whether an opening can be powered

Revision: 0011, after 0010 (0010 is made apart from it and goes between). Leaf: its core, and whether a way for a wire
leads across it. Existing item: what its label says it draws; free conductors and resistance of a power transfer.
"""

import sqlalchemy as sa
from alembic import op

revision = "0011"
down_revision = "0010"
branch_labels = None
depends_on = None


def upgrade() -> None:
    # Each may be unknown, so that nothing is written into the rows that are there.
    op.add_column("leaf", sa.Column("core", sa.Text(), nullable=True))
    op.add_column("leaf", sa.Column("raceway", sa.Boolean(), nullable=True))
    op.add_column("existing_item", sa.Column("rated_v", sa.Float(), nullable=True))
    op.add_column("existing_item", sa.Column("rated_a", sa.Float(), nullable=True))
    op.add_column("existing_item", sa.Column("current_form", sa.Text(), nullable=True))
    op.add_column("existing_item", sa.Column("conductors", sa.Integer(), nullable=True))
    op.add_column("existing_item", sa.Column("loop_ohm", sa.Float(), nullable=True))
