"""Several steps that are taken back, or done again, as one

Revision: 0017, after 0014. Each undo and redo of earlier versions speaks of one step, which stands in its header.
"""

import sqlalchemy as sa
from alembic import op

revision = "0017"
down_revision = "0016"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "change_target",
        sa.Column("change_set", sa.Integer(), nullable=False),
        sa.Column("target", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(["change_set"], ["change_set.number"], name=op.f("fk_change_target_change_set")),
        sa.ForeignKeyConstraint(["target"], ["change_set.number"], name=op.f("fk_change_target_target")),
        sa.PrimaryKeyConstraint("change_set", "target", name=op.f("pk_change_target")),
    )
    op.create_index(op.f("ix_change_target_target_change_set"), "change_target", ["target", "change_set"], unique=False)
