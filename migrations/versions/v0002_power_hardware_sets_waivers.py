"""Power, hardware sets, waivers

Revision: 0002, after 0001
"""

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "hardware_set",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("notes", sa.Text(), nullable=True),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_hardware_set")),
        sa.UniqueConstraint("name", name=op.f("uq_hardware_set_name")),
    )
    op.create_table(
        "set_line",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("set_id", sa.Text(), nullable=False),
        sa.Column("role", sa.Text(), nullable=False),
        sa.Column("part", sa.Text(), nullable=False),
        sa.Column("quantity", sa.Float(), nullable=False),
        sa.ForeignKeyConstraint(["set_id"], ["hardware_set.id"], name=op.f("fk_set_line_set_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_set_line")),
        sa.UniqueConstraint("set_id", "role", "part", name=op.f("uq_set_line_set_id_role_part")),
    )
    op.create_table(
        "supply",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("level_id", sa.Text(), nullable=True),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("place", sa.Text(), nullable=True),
        sa.Column("x_m", sa.Float(), nullable=True),
        sa.Column("y_m", sa.Float(), nullable=True),
        sa.Column("rise_m", sa.Float(), nullable=True),
        sa.Column("part", sa.Text(), nullable=True),
        sa.Column("use", sa.Text(), nullable=True),
        sa.Column("battery", sa.Text(), nullable=True),
        sa.Column("batteries", sa.Integer(), nullable=True),
        sa.Column("standby_hours", sa.Float(), nullable=True),
        sa.Column("temperature_c", sa.Float(), nullable=True),
        sa.Column("notes", sa.Text(), nullable=True),
        sa.ForeignKeyConstraint(["level_id"], ["level.id"], name=op.f("fk_supply_level_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_supply")),
        sa.UniqueConstraint("name", name=op.f("uq_supply_name")),
    )
    with op.batch_alter_table("supply", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_supply_level_id"), ["level_id"], unique=False)

    op.create_table(
        "circuit",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("supply_id", sa.Text(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("wire", sa.Text(), nullable=True),
        sa.Column("temperature_c", sa.Float(), nullable=True),
        sa.Column("at_once", sa.Integer(), nullable=True),
        sa.Column("limiter_a", sa.Float(), nullable=True),
        sa.Column("alarm", sa.Text(), nullable=True),
        sa.Column("notes", sa.Text(), nullable=True),
        sa.ForeignKeyConstraint(["supply_id"], ["supply.id"], name=op.f("fk_circuit_supply_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_circuit")),
        sa.UniqueConstraint("supply_id", "name", name=op.f("uq_circuit_supply_id_name")),
    )
    op.create_table(
        "issued_packet",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("opening_id", sa.Text(), nullable=False),
        sa.Column("at", sa.Text(), nullable=False),
        sa.Column("by", sa.Text(), nullable=False),
        sa.Column("case_key", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["opening_id"], ["opening.id"], name=op.f("fk_issued_packet_opening_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_issued_packet")),
        sa.UniqueConstraint("opening_id", name=op.f("uq_issued_packet_opening_id")),
    )
    op.create_table(
        "route",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("opening_id", sa.Text(), nullable=False),
        sa.Column("supply_id", sa.Text(), nullable=False),
        sa.Column("length_m", sa.Float(), nullable=True),
        sa.Column("pinned", sa.Boolean(), server_default=sa.text("false"), nullable=False),
        sa.ForeignKeyConstraint(["opening_id"], ["opening.id"], name=op.f("fk_route_opening_id")),
        sa.ForeignKeyConstraint(["supply_id"], ["supply.id"], name=op.f("fk_route_supply_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_route")),
        sa.UniqueConstraint("opening_id", "supply_id", name=op.f("uq_route_opening_id_supply_id")),
    )
    op.create_table(
        "waiver",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("opening_id", sa.Text(), nullable=True),
        sa.Column("rule", sa.Text(), nullable=False),
        sa.Column("about", sa.Text(), server_default=sa.text("''"), nullable=False),
        sa.Column("scope", sa.Text(), nullable=False),
        sa.Column("facts", sa.Text(), nullable=False),
        sa.Column("person", sa.Text(), nullable=False),
        sa.Column("reason", sa.Text(), nullable=False),
        sa.Column("given_on", sa.Text(), nullable=False),
        sa.Column("until", sa.Text(), nullable=True),
        sa.ForeignKeyConstraint(["opening_id"], ["opening.id"], name=op.f("fk_waiver_opening_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_waiver")),
    )
    with op.batch_alter_table("waiver", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_waiver_opening_id"), ["opening_id"], unique=False)

    op.create_table(
        "run",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("circuit_id", sa.Text(), nullable=False),
        sa.Column("opening_id", sa.Text(), nullable=True),
        sa.Column("from_node", sa.Text(), nullable=False),
        sa.Column("to_node", sa.Text(), nullable=False),
        sa.Column("length_m", sa.Float(), nullable=True),
        sa.Column("wire", sa.Text(), nullable=True),
        sa.Column("gauge", sa.Text(), nullable=True),
        sa.Column("stranding", sa.Text(), nullable=True),
        sa.Column("parallel", sa.Integer(), nullable=True),
        sa.Column("extra_ohm", sa.Float(), nullable=True),
        sa.ForeignKeyConstraint(["circuit_id"], ["circuit.id"], name=op.f("fk_run_circuit_id")),
        sa.ForeignKeyConstraint(["opening_id"], ["opening.id"], name=op.f("fk_run_opening_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_run")),
    )
    with op.batch_alter_table("run", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_run_circuit_id"), ["circuit_id"], unique=False)
        batch_op.create_index(batch_op.f("ix_run_opening_id"), ["opening_id"], unique=False)

    with op.batch_alter_table("existing_item", schema=None) as batch_op:
        batch_op.add_column(sa.Column("fail", sa.Text(), nullable=True))

    with op.batch_alter_table("level", schema=None) as batch_op:
        batch_op.add_column(sa.Column("height_m", sa.Float(), nullable=True))

    with op.batch_alter_table("opening", schema=None) as batch_op:
        batch_op.add_column(sa.Column("set_id", sa.Text(), nullable=True))
        batch_op.add_column(sa.Column("operations_day_off", sa.Float(), nullable=True))
        batch_op.add_column(sa.Column("plan_x_m", sa.Float(), nullable=True))
        batch_op.add_column(sa.Column("plan_y_m", sa.Float(), nullable=True))
        batch_op.add_column(sa.Column("rise_m", sa.Float(), nullable=True))
        batch_op.add_column(sa.Column("difficulty", sa.Float(), nullable=True))
        batch_op.add_column(sa.Column("installed_on", sa.Text(), nullable=True))
        batch_op.create_index(batch_op.f("ix_opening_set_id"), ["set_id"], unique=False)
        batch_op.create_foreign_key(batch_op.f("fk_opening_set_id"), "hardware_set", ["set_id"], ["id"])

    with op.batch_alter_table("part", schema=None) as batch_op:
        batch_op.add_column(sa.Column("stock", sa.Float(), nullable=True))
        batch_op.add_column(sa.Column("preferred", sa.Integer(), nullable=True))
