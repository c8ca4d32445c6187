"""What the wall is built of that carries reader and unit where there is no leaf

Revision: 0012, after 0011. It may be null, which means unknown.
"""

import sqlalchemy as sa
from alembic import op

revision = "0012"
down_revision = "0011"
branch_labels = None
depends_on = None


def upgrade() -> None:
    # Both databases know it, and nothing is copied.
    op.add_column("opening", sa.Column("wall_build", sa.Text(), nullable=True))
