"""People, and what a change set needs to be known by elsewhere

Revision: 0005, after 0002
"""

import json
import uuid

import sqlalchemy as sa
from alembic import op

revision = "0005"
down_revision = "0006"
branch_labels = None
depends_on = None

LINKS = {
    "level": ("building_id",),
    "set_line": ("set_id",),
    "opening": ("level_id", "set_id"),
    "kit_content": ("part_id",),
    "supply": ("level_id",),
    "circuit": ("supply_id",),
    "run": ("circuit_id",),
    "route": ("supply_id",),
}
"""Columns that point to rows other than openings, as the tables stood at this revision."""


def upgrade() -> None:
    op.create_table(
        "person",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("role", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_person")),
        sa.UniqueConstraint("name", name=op.f("uq_person_name")),
    )
    op.create_table(
        "change_reference",
        sa.Column("row_id", sa.Text(), nullable=False),
        sa.Column("change_set", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(["change_set"], ["change_set.number"], name=op.f("fk_change_reference_change_set")),
        sa.PrimaryKeyConstraint("row_id", "change_set", name=op.f("pk_change_reference")),
    )
    with op.batch_alter_table("change_entry", schema=None) as batch_op:
        batch_op.drop_index(batch_op.f("ix_change_entry_row_id"))
        batch_op.drop_index(batch_op.f("ix_change_entry_opening_id"))
        batch_op.create_index(batch_op.f("ix_change_entry_row_id_change_set"), ["row_id", "change_set"], unique=False)
        batch_op.create_index(
            batch_op.f("ix_change_entry_opening_id_change_set"), ["opening_id", "change_set"], unique=False
        )

    with op.batch_alter_table("change_set", schema=None) as batch_op:
        batch_op.add_column(sa.Column("uuid", sa.Text(), nullable=True))
        batch_op.add_column(sa.Column("base", sa.Integer(), nullable=True))
        batch_op.add_column(sa.Column("device", sa.Text(), nullable=True))
        batch_op.add_column(sa.Column("session", sa.Text(), nullable=True))

    _name_change_sets()
    _note_references()

    with op.batch_alter_table("change_set", schema=None) as batch_op:
        batch_op.alter_column("uuid", existing_type=sa.Text(), nullable=False)
        batch_op.create_unique_constraint(batch_op.f("uq_change_set_uuid"), ["uuid"])
        batch_op.create_index(batch_op.f("ix_change_set_target"), ["target"], unique=False)
        batch_op.create_index(batch_op.f("ix_change_set_who_number"), ["who", "number"], unique=False)


def _name_change_sets() -> None:
    """Give every change set its identifier: the same one in every copy of the project that is brought up to date."""
    connection = op.get_bind()
    project = connection.execute(sa.text("SELECT id FROM project")).scalar()
    numbers = connection.execute(sa.text("SELECT number FROM change_set")).scalars().all()
    if not numbers:
        return
    space = uuid.UUID(project)
    rows = [{"number": number, "uuid": uuid.uuid5(space, str(number)).hex} for number in numbers]
    connection.execute(sa.text("UPDATE change_set SET uuid = :uuid WHERE number = :number"), rows)


def _note_references() -> None:
    """Write down which change sets made rows stand on others, or ended that."""
    connection = op.get_bind()
    entry = sa.table("change_entry", *(sa.column(name) for name in ("change_set", "entity", "before", "after")))
    query = sa.select(entry).where(entry.c.entity.in_(LINKS))
    found = {
        (values[column], change_set)
        for change_set, entity, before, after in connection.execute(query)
        for values in (json.loads(text) for text in (before, after) if text is not None)
        for column in LINKS[entity]
        if values.get(column) is not None
    }
    if found:
        reference = sa.table("change_reference", sa.column("row_id"), sa.column("change_set"))
        rows = [{"row_id": row_id, "change_set": change_set} for row_id, change_set in sorted(found)]
        connection.execute(sa.insert(reference), rows)
