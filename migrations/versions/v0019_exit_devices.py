"""What kind of exit device stands there, where its rods run, and where what stands on a leaf is fixed in it

Revision: 0019, after 0018. All may be null, which means unknown.
"""

import sqlalchemy as sa
from alembic import op

revision = "0019"
down_revision = "0018"
branch_labels = None
depends_on = None


def upgrade() -> None:
    # Both databases know it, and nothing is copied.
    op.add_column("existing_item", sa.Column("device_form", sa.Text(), nullable=True))
    op.add_column("existing_item", sa.Column("rod_x_mm", sa.Float(), nullable=True))
    op.add_column("existing_item", sa.Column("rod_ends", sa.Text(), nullable=True))
    op.add_column("existing_item", sa.Column("bolt_inset_mm", sa.Float(), nullable=True))
