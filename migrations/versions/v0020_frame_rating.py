"""The label on a frame, where it is another one than the leaf's

Revision: 0020, after 0019. It may be null, which means that nobody told it.
"""

import sqlalchemy as sa
from alembic import op

revision = "0020"
down_revision = "0019"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.add_column("opening", sa.Column("frame_rating", sa.Text(), nullable=True))
