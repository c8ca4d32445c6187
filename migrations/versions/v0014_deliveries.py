"""Survey files that were taken in, what they left to be decided, and openings that the building has no more

Revision: 0014, after 0013. Openings of earlier versions are all there; what was taken in before has no delivery.
"""

import sqlalchemy as sa
from alembic import op

revision = "0014"
down_revision = "0013"
branch_labels = None
depends_on = None


def upgrade() -> None:
    # Both databases know it, and nothing is copied.
    op.add_column("opening", sa.Column("retired", sa.Text(), nullable=True))
    op.create_table(
        "delivery",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("file", sa.Text(), nullable=False),
        sa.Column("key", sa.Text(), nullable=False),
        sa.Column("at", sa.Text(), nullable=False),
        sa.Column("person", sa.Text(), nullable=False),
        sa.Column("told", sa.Text(), server_default=sa.text("'{}'"), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_delivery")),
        sa.UniqueConstraint("number", name=op.f("uq_delivery_number")),
    )
    op.create_table(
        "open_question",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("delivery_id", sa.Text(), nullable=False),
        sa.Column("opening_id", sa.Text(), nullable=True),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("mark", sa.Text(), nullable=False),
        sa.Column("fact", sa.Text(), nullable=True),
        sa.Column("answer", sa.Text(), nullable=True),
        sa.Column("content", sa.Text(), server_default=sa.text("'{}'"), nullable=False),
        sa.ForeignKeyConstraint(["delivery_id"], ["delivery.id"], name=op.f("fk_open_question_delivery_id")),
        sa.ForeignKeyConstraint(["opening_id"], ["opening.id"], name=op.f("fk_open_question_opening_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_open_question")),
    )
    op.create_index(op.f("ix_open_question_delivery_id"), "open_question", ["delivery_id"], unique=False)
    op.create_index(op.f("ix_open_question_opening_id"), "open_question", ["opening_id"], unique=False)
