"""A cabinet and a limiter that a person has chosen

Revision: 0018, after 0017. Supply: the cabinet in which it stands. Circuit: its fuse or limiter by number. Empty, as
all are after this, the bill takes the cheapest that suits.
"""

import sqlalchemy as sa
from alembic import op

revision = "0018"
down_revision = "0017"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.add_column("supply", sa.Column("cabinet", sa.Text(), nullable=True))
    op.add_column("circuit", sa.Column("limiter", sa.Text(), nullable=True))
