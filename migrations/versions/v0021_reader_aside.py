"""Where a reader at a lift or turnstile stands sideways

Revision: 0021, after 0020. It may be null, which means that nobody told it.
"""

import sqlalchemy as sa
from alembic import op

revision = "0021"
down_revision = "0020"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.add_column("opening", sa.Column("reader_aside_mm", sa.Float(), nullable=True))
