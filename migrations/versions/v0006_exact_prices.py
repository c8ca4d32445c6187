"""List prices as exact decimals

Revision: 0006, after 0004
"""

from decimal import Decimal

import sqlalchemy as sa
from alembic import op

revision = "0006"
down_revision = "0004"
branch_labels = None
depends_on = None


def upgrade() -> None:
    # Taken by their shortest text, which is what was typed; the database's own cast would cut it at 15 digits (SQLite).
    part = sa.table("part", sa.column("id", sa.Text), sa.column("list_price", sa.Float))
    held = op.get_bind().execute(sa.select(part.c.id, part.c.list_price).where(part.c.list_price.is_not(None))).all()
    with op.batch_alter_table("part", schema=None) as batch_op:
        batch_op.alter_column(
            "list_price", existing_type=sa.Float(), type_=sa.Text(), existing_nullable=True, postgresql_using="NULL"
        )
    exact = sa.table("part", sa.column("id", sa.Text), sa.column("list_price", sa.Text))
    written = sa.update(exact).where(exact.c.id == sa.bindparam("row")).values(list_price=sa.bindparam("price"))
    rows = [{"row": row_id, "price": _text(price)} for row_id, price in held]
    if rows:
        op.get_bind().execute(written, rows)


def _text(price: float) -> str:
    text = f"{Decimal(repr(float(price))):f}"
    return text.rstrip("0").rstrip(".") if "." in text else text
