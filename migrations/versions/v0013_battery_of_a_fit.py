"""How long a lock point's pack lasts stands beside the fit that it shares with openings alike

Revision: 0013, after 0012. It may be null: there is no pack, or the content says it, as earlier versions wrote it.
"""

import sqlalchemy as sa
from alembic import op

revision = "0013"
down_revision = "0012"
branch_labels = None
depends_on = None


def upgrade() -> None:
    # Both databases know it, and nothing is copied.
    op.add_column("opening_fit", sa.Column("battery", sa.Text(), nullable=True))
