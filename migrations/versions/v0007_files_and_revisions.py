"""Files by content and at anything; frozen contents and revisions

Revision: 0007, after 0005
"""

import sqlalchemy as sa
from alembic import op

revision = "0007"
down_revision = "0005"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "blob",
        sa.Column("hash", sa.Text(), nullable=False),
        sa.Column("size", sa.Integer(), nullable=False),
        sa.Column("media_type", sa.Text(), nullable=False),
        sa.Column("content", sa.LargeBinary(), nullable=False),
        sa.PrimaryKeyConstraint("hash", name=op.f("pk_blob")),
    )
    op.create_table(
        "frozen",
        sa.Column("hash", sa.Text(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("content", sa.LargeBinary(), nullable=False),
        sa.PrimaryKeyConstraint("hash", name=op.f("pk_frozen")),
    )
    op.create_table(
        "attachment",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("entity", sa.Text(), nullable=False),
        sa.Column("row_id", sa.Text(), nullable=False),
        sa.Column("opening_id", sa.Text(), nullable=True),
        sa.Column("blob", sa.Text(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("title", sa.Text(), nullable=True),
        sa.Column("note", sa.Text(), nullable=True),
        sa.Column("ordinal", sa.Integer(), server_default=sa.text("0"), nullable=False),
        sa.ForeignKeyConstraint(["blob"], ["blob.hash"], name=op.f("fk_attachment_blob")),
        sa.ForeignKeyConstraint(["opening_id"], ["opening.id"], name=op.f("fk_attachment_opening_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_attachment")),
    )
    with op.batch_alter_table("attachment", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_attachment_opening_id"), ["opening_id"], unique=False)
        batch_op.create_index(batch_op.f("ix_attachment_row_id"), ["row_id"], unique=False)
    op.create_table(
        "revision",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("letter", sa.Text(), nullable=False),
        sa.Column("at", sa.Text(), nullable=False),
        sa.Column("person", sa.Text(), nullable=False),
        sa.Column("purpose", sa.Text(), nullable=True),
        sa.Column("scope", sa.Text(), server_default=sa.text("'{}'"), nullable=False),
        sa.Column("root", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["root"], ["frozen.hash"], name=op.f("fk_revision_root")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_revision")),
        sa.UniqueConstraint("letter", name=op.f("uq_revision_letter")),
    )
