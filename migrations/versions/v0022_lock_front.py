"""The front of a lock in the lock edge

Revision: 0022, after 0021. Both may be null, which means that nobody told them.
"""

import sqlalchemy as sa
from alembic import op

revision = "0022"
down_revision = "0021"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.add_column("existing_item", sa.Column("front_height_mm", sa.Float(), nullable=True))
    op.add_column("existing_item", sa.Column("front_width_mm", sa.Float(), nullable=True))
