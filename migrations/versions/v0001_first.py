"""The first schema

Revision: 0001, after None
"""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None


def upgrade() -> None:

    op.create_table(
        "building",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_building")),
        sa.UniqueConstraint("name", name=op.f("uq_building_name")),
    )
    op.create_table(
        "change_set",
        sa.Column("number", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("at", sa.Text(), nullable=False),
        sa.Column("who", sa.Text(), nullable=False),
        sa.Column("verb", sa.Text(), nullable=False),
        sa.Column("summary", sa.Text(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("target", sa.Integer(), nullable=True),
        sa.Column("entries", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(["target"], ["change_set.number"], name=op.f("fk_change_set_target")),
        sa.PrimaryKeyConstraint("number", name=op.f("pk_change_set")),
    )
    op.create_table(
        "fit_content",
        sa.Column("key", sa.Text(), nullable=False),
        sa.Column("status", sa.Text(), nullable=False),
        sa.Column("content", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("key", name=op.f("pk_fit_content")),
    )
    op.create_table(
        "import_mapping",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("fingerprint", sa.Text(), nullable=False),
        sa.Column("name", sa.Text(), nullable=True),
        sa.Column("mapping", sa.Text(), server_default=sa.text("'{}'"), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_import_mapping")),
        sa.UniqueConstraint("fingerprint", name=op.f("uq_import_mapping_fingerprint")),
    )
    op.create_table(
        "own_field",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("entity", sa.Text(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("label", sa.Text(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("unit", sa.Text(), server_default=sa.text("''"), nullable=False),
        sa.Column("choices", sa.Text(), server_default=sa.text("'[]'"), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_own_field")),
        sa.UniqueConstraint("entity", "name", name=op.f("uq_own_field_entity_name")),
    )
    op.create_table(
        "part",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("number", sa.Text(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("description", sa.Text(), nullable=True),
        sa.Column("supplier", sa.Text(), nullable=True),
        sa.Column("finish", sa.Text(), nullable=True),
        sa.Column("unit", sa.Text(), nullable=True),
        sa.Column("list_price", sa.Float(), nullable=True),
        sa.Column("currency", sa.Text(), nullable=True),
        sa.Column("superseded_by", sa.Text(), nullable=True),
        sa.Column("attributes", sa.Text(), server_default=sa.text("'{}'"), nullable=False),
        sa.Column("extra", sa.Text(), server_default=sa.text("'{}'"), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_part")),
        sa.UniqueConstraint("number", name=op.f("uq_part_number")),
    )
    op.create_table(
        "project",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("created_at", sa.Text(), nullable=False),
        sa.Column("length_style", sa.Text(), nullable=False),
        sa.Column("bare_unit", sa.Text(), nullable=True),
        sa.Column("settings", sa.Text(), server_default=sa.text("'{}'"), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_project")),
    )
    op.create_table(
        "change_entry",
        sa.Column("change_set", sa.Integer(), nullable=False),
        sa.Column("sequence", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("entity", sa.Text(), nullable=False),
        sa.Column("row_id", sa.Text(), nullable=False),
        sa.Column("opening_id", sa.Text(), nullable=True),
        sa.Column("action", sa.Text(), nullable=False),
        sa.Column("before", sa.Text(), nullable=True),
        sa.Column("after", sa.Text(), nullable=True),
        sa.Column("origin", sa.Text(), nullable=True),
        sa.ForeignKeyConstraint(["change_set"], ["change_set.number"], name=op.f("fk_change_entry_change_set")),
        sa.PrimaryKeyConstraint("change_set", "sequence", name=op.f("pk_change_entry")),
    )
    with op.batch_alter_table("change_entry", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_change_entry_opening_id"), ["opening_id"], unique=False)
        batch_op.create_index(batch_op.f("ix_change_entry_row_id"), ["row_id"], unique=False)

    op.create_table(
        "kit_content",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("part_id", sa.Text(), nullable=False),
        sa.Column("number", sa.Text(), nullable=False),
        sa.Column("quantity", sa.Float(), nullable=False),
        sa.ForeignKeyConstraint(["part_id"], ["part.id"], name=op.f("fk_kit_content_part_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_kit_content")),
        sa.UniqueConstraint("part_id", "number", name=op.f("uq_kit_content_part_id_number")),
    )
    op.create_table(
        "level",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("building_id", sa.Text(), nullable=True),
        sa.Column("name", sa.Text(), nullable=True),
        sa.Column("sort", sa.Integer(), server_default=sa.text("0"), nullable=False),
        sa.ForeignKeyConstraint(["building_id"], ["building.id"], name=op.f("fk_level_building_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_level")),
        sa.UniqueConstraint("building_id", "name", name=op.f("uq_level_building_id_name")),
    )
    with op.batch_alter_table("level", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_level_building_id"), ["building_id"], unique=False)

    op.create_table(
        "opening",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("level_id", sa.Text(), nullable=True),
        sa.Column("mark", sa.Text(), nullable=False),
        sa.Column("room_from", sa.Text(), nullable=True),
        sa.Column("room_to", sa.Text(), nullable=True),
        sa.Column("form", sa.Text(), nullable=True),
        sa.Column("hand", sa.Text(), nullable=True),
        sa.Column("rating", sa.Text(), nullable=True),
        sa.Column("stair", sa.Boolean(), nullable=True),
        sa.Column("egress", sa.Text(), nullable=True),
        sa.Column("accessible", sa.Boolean(), nullable=True),
        sa.Column("exposure", sa.Text(), nullable=True),
        sa.Column("temperature_low_c", sa.Float(), nullable=True),
        sa.Column("operations_per_day", sa.Float(), nullable=True),
        sa.Column("power_wish", sa.Text(), nullable=True),
        sa.Column("supply_distance_m", sa.Float(), nullable=True),
        sa.Column("frame_material", sa.Text(), nullable=True),
        sa.Column("frame_stop_mm", sa.Float(), nullable=True),
        sa.Column("wave", sa.Text(), nullable=True),
        sa.Column("priority", sa.Integer(), nullable=True),
        sa.Column("notes", sa.Text(), nullable=True),
        sa.Column("extra", sa.Text(), server_default=sa.text("'{}'"), nullable=False),
        sa.ForeignKeyConstraint(["level_id"], ["level.id"], name=op.f("fk_opening_level_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_opening")),
        sa.UniqueConstraint("mark", name=op.f("uq_opening_mark")),
    )
    with op.batch_alter_table("opening", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_opening_level_id"), ["level_id"], unique=False)

    op.create_table(
        "chosen_part",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("opening_id", sa.Text(), nullable=False),
        sa.Column("role", sa.Text(), nullable=False),
        sa.Column("part", sa.Text(), nullable=False),
        sa.Column("quantity", sa.Float(), nullable=False),
        sa.ForeignKeyConstraint(["opening_id"], ["opening.id"], name=op.f("fk_chosen_part_opening_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_chosen_part")),
        sa.UniqueConstraint("opening_id", "role", "part", name=op.f("uq_chosen_part_opening_id_role_part")),
    )
    op.create_table(
        "existing_item",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("opening_id", sa.Text(), nullable=False),
        sa.Column("ordinal", sa.Integer(), server_default=sa.text("0"), nullable=False),
        sa.Column("kind", sa.Text(), nullable=True),
        sa.Column("leaf", sa.Text(), nullable=True),
        sa.Column("face", sa.Text(), nullable=True),
        sa.Column("x_mm", sa.Float(), nullable=True),
        sa.Column("y_mm", sa.Float(), nullable=True),
        sa.Column("width_mm", sa.Float(), nullable=True),
        sa.Column("height_mm", sa.Float(), nullable=True),
        sa.Column("projection_mm", sa.Float(), nullable=True),
        sa.Column("disposition", sa.Text(), nullable=True),
        sa.Column("lock_form", sa.Text(), nullable=True),
        sa.Column("function", sa.Text(), nullable=True),
        sa.Column("backset_mm", sa.Float(), nullable=True),
        sa.Column("cylinder_height_mm", sa.Float(), nullable=True),
        sa.Column("case_height_mm", sa.Float(), nullable=True),
        sa.Column("case_depth_mm", sa.Float(), nullable=True),
        sa.Column("case_width_mm", sa.Float(), nullable=True),
        sa.Column("case_above_mm", sa.Float(), nullable=True),
        sa.Column("case_offset_mm", sa.Float(), nullable=True),
        sa.Column("trim_key_mm", sa.Float(), nullable=True),
        sa.Column("trim_secured_mm", sa.Float(), nullable=True),
        sa.Column("thumb_turn", sa.Boolean(), nullable=True),
        sa.Column("cross_bore_mm", sa.Float(), nullable=True),
        sa.Column("edge_bore_mm", sa.Float(), nullable=True),
        sa.Column("cam_form", sa.Text(), nullable=True),
        sa.Column("item_notes", sa.Text(), nullable=True),
        sa.Column("extra", sa.Text(), server_default=sa.text("'{}'"), nullable=False),
        sa.ForeignKeyConstraint(["opening_id"], ["opening.id"], name=op.f("fk_existing_item_opening_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_existing_item")),
    )
    with op.batch_alter_table("existing_item", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_existing_item_opening_id"), ["opening_id"], unique=False)

    op.create_table(
        "leaf",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("opening_id", sa.Text(), nullable=False),
        sa.Column("ordinal", sa.Integer(), server_default=sa.text("0"), nullable=False),
        sa.Column("position", sa.Text(), nullable=True),
        sa.Column("width_mm", sa.Float(), nullable=True),
        sa.Column("height_mm", sa.Float(), nullable=True),
        sa.Column("thickness_mm", sa.Float(), nullable=True),
        sa.Column("material", sa.Text(), nullable=True),
        sa.Column("construction", sa.Text(), nullable=True),
        sa.Column("stile_mm", sa.Float(), nullable=True),
        sa.Column("undercut_mm", sa.Float(), nullable=True),
        sa.ForeignKeyConstraint(["opening_id"], ["opening.id"], name=op.f("fk_leaf_opening_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_leaf")),
    )
    with op.batch_alter_table("leaf", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_leaf_opening_id"), ["opening_id"], unique=False)

    op.create_table(
        "opening_fit",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("case_key", sa.Text(), nullable=False),
        sa.Column("fit_key", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["fit_key"], ["fit_content.key"], name=op.f("fk_opening_fit_fit_key")),
        sa.ForeignKeyConstraint(["id"], ["opening.id"], name=op.f("fk_opening_fit_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_opening_fit")),
    )
    op.create_table(
        "placed_unit",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("opening_id", sa.Text(), nullable=False),
        sa.Column("leaf", sa.Text(), nullable=False),
        sa.Column("face", sa.Text(), nullable=False),
        sa.Column("pattern", sa.Text(), nullable=False),
        sa.Column("x_mm", sa.Float(), nullable=False),
        sa.Column("y_mm", sa.Float(), nullable=False),
        sa.ForeignKeyConstraint(["opening_id"], ["opening.id"], name=op.f("fk_placed_unit_opening_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_placed_unit")),
        sa.UniqueConstraint("opening_id", name=op.f("uq_placed_unit_opening_id")),
    )
