"""Lock points and assigned parts

Revision: 0004, after 0002

Every opening gets its lock points, and the journal is written as though they had always been there: undo and redo of
earlier steps must find them. What was chosen, placed and fitted for an opening belongs to its first point, which has
the opening's identifier.
"""

import json
import uuid
from collections import defaultdict
from itertools import groupby

import sqlalchemy as sa
from alembic import op

revision = "0004"
down_revision = "0002"
branch_labels = None
depends_on = None

OWN = uuid.UUID("6d0d6c4e-1f5b-4c53-9d0a-6a5f0f0a7c11")
LOCK_KINDS = {"lock": 0, "exit-device": 1, "deadbolt": 2}
ENTRY = sa.table(
    "change_entry",
    *(sa.column(name) for name in ("change_set", "sequence", "entity", "row_id", "opening_id", "action")),
    *(sa.column(name) for name in ("before", "after", "origin")),
)


def upgrade() -> None:
    op.create_table(
        "lock_point",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("opening_id", sa.Text(), nullable=False),
        sa.Column("item_id", sa.Text(), nullable=True),
        sa.ForeignKeyConstraint(
            ["item_id"],
            ["existing_item.id"],
            name=op.f("fk_lock_point_item_id"),
            deferrable=True,
            initially="DEFERRED",
        ),
        sa.ForeignKeyConstraint(["opening_id"], ["opening.id"], name=op.f("fk_lock_point_opening_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_lock_point")),
    )
    with op.batch_alter_table("lock_point", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_lock_point_item_id"), ["item_id"], unique=False)
        batch_op.create_index(batch_op.f("ix_lock_point_opening_id"), ["opening_id"], unique=False)

    op.create_table(
        "assigned_part",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), server_default=sa.text("1"), nullable=False),
        sa.Column("opening_id", sa.Text(), nullable=False),
        sa.Column("lock_point_id", sa.Text(), nullable=True),
        sa.Column("role", sa.Text(), nullable=False),
        sa.Column("part", sa.Text(), nullable=False),
        sa.Column("piece", sa.Integer(), nullable=False),
        sa.Column("quantity", sa.Float(), nullable=False),
        sa.Column("source", sa.Text(), nullable=False),
        sa.Column("serial", sa.Text(), nullable=True),
        sa.Column("lot", sa.Text(), nullable=True),
        sa.Column("state", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["lock_point_id"], ["lock_point.id"], name=op.f("fk_assigned_part_lock_point_id")),
        sa.ForeignKeyConstraint(["opening_id"], ["opening.id"], name=op.f("fk_assigned_part_opening_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_assigned_part")),
    )
    with op.batch_alter_table("assigned_part", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_assigned_part_lock_point_id"), ["lock_point_id"], unique=False)
        batch_op.create_index(batch_op.f("ix_assigned_part_opening_id"), ["opening_id"], unique=False)

    connection = op.get_bind()
    insert_points(connection)
    for table in ("chosen_part", "placed_unit"):
        op.add_column(table, sa.Column("lock_point_id", sa.Text(), nullable=True))
    op.add_column("opening_fit", sa.Column("opening_id", sa.Text(), nullable=True))
    connection.execute(sa.text("UPDATE chosen_part SET lock_point_id = opening_id"))
    connection.execute(sa.text("UPDATE placed_unit SET lock_point_id = opening_id"))
    connection.execute(sa.text("UPDATE opening_fit SET opening_id = id"))

    with op.batch_alter_table("chosen_part", schema=None) as batch_op:
        batch_op.alter_column("lock_point_id", nullable=False)
        batch_op.drop_constraint(batch_op.f("uq_chosen_part_opening_id_role_part"), type_="unique")
        batch_op.create_unique_constraint(
            batch_op.f("uq_chosen_part_lock_point_id_role_part"), ["lock_point_id", "role", "part"]
        )
        batch_op.create_foreign_key(batch_op.f("fk_chosen_part_lock_point_id"), "lock_point", ["lock_point_id"], ["id"])
        batch_op.create_index(batch_op.f("ix_chosen_part_opening_id"), ["opening_id"], unique=False)

    with op.batch_alter_table("placed_unit", schema=None) as batch_op:
        batch_op.alter_column("lock_point_id", nullable=False)
        batch_op.drop_constraint(batch_op.f("uq_placed_unit_opening_id"), type_="unique")
        batch_op.create_unique_constraint(batch_op.f("uq_placed_unit_lock_point_id"), ["lock_point_id"])
        batch_op.create_foreign_key(batch_op.f("fk_placed_unit_lock_point_id"), "lock_point", ["lock_point_id"], ["id"])
        batch_op.create_index(batch_op.f("ix_placed_unit_opening_id"), ["opening_id"], unique=False)

    with op.batch_alter_table("opening_fit", schema=None) as batch_op:
        batch_op.alter_column("opening_id", nullable=False)
        batch_op.drop_constraint(batch_op.f("fk_opening_fit_id"), type_="foreignkey")
        batch_op.create_foreign_key(batch_op.f("fk_opening_fit_id"), "lock_point", ["id"], ["id"])
        batch_op.create_foreign_key(batch_op.f("fk_opening_fit_opening_id"), "opening", ["opening_id"], ["id"])
        batch_op.create_index(batch_op.f("ix_opening_fit_opening_id"), ["opening_id"], unique=False)

    weave(connection)


# --- which places are locked: as this revision has it, whatever later ones say ----------------------------------------


def locks(leaves, items):
    """Identifiers of the existing locks that are converted, the first of an opening in front."""
    active = next((leaf for leaf in leaves if leaf["position"] != "inactive"), None)
    active_name = (active["position"] or "single") if active is not None else ""

    def on_active(item):
        said = item["leaf"]
        return (
            active is None or said is None or said == active_name or (said == "single" and active["position"] is None)
        )

    best, best_rank = None, (99, 99, 99)
    for item in items:
        if item["kind"] not in LOCK_KINDS and item["lock_form"] is None:
            continue
        if item["disposition"] == "remove" or not on_active(item):
            continue
        rank = (item["lock_form"] is None, LOCK_KINDS.get(item["kind"], 3), item["disposition"] != "replace")
        if rank < best_rank:
            best, best_rank = item, rank
    if best is None:
        return []
    names = {leaf["position"] or "single" for leaf in leaves}
    found = [best]
    for item in items:
        if item is best or (item["kind"] not in LOCK_KINDS and item["lock_form"] is None):
            continue
        here = item["leaf"] or active_name
        taken = [each for each in found if (each["leaf"] or active_name) == here]
        if item["disposition"] is None:
            another = item["lock_form"] is not None and not taken and here in names
        else:
            another = item["disposition"] == "replace" and not any(one_device(item, each) for each in taken)
        if another:
            found.append(item)
    return [item["id"] for item in found]


def one_device(one, other):
    if "exit-device" not in (one["kind"], other["kind"]):
        return False
    return one["lock_form"] == other["lock_form"] or one["lock_form"] is None or other["lock_form"] is None


def points(opening_id, wanted):
    """Rows of an opening's lock points: identifier to existing lock."""
    rows = {opening_id: wanted[0] if wanted else None}
    rows |= {uuid.uuid5(OWN, f"{opening_id}/{item}").hex: item for item in wanted[1:]}
    return rows


LEAF = ("id", "opening_id", "ordinal", "position")
ITEM = ("id", "opening_id", "ordinal", "kind", "leaf", "disposition", "lock_form")


def ordered(rows):
    return sorted(rows, key=lambda row: (row["ordinal"] or 0, row["id"]))


def insert_points(connection):
    grouped = {}
    for name, columns in (("leaf", LEAF), ("existing_item", ITEM)):
        found = grouped[name] = defaultdict(list)
        for row in connection.execute(sa.select(*(sa.column(c) for c in columns)).select_from(sa.table(name))):
            found[row.opening_id].append(dict(row._mapping))
    made = []
    for (opening_id,) in connection.execute(sa.text("SELECT id FROM opening")):
        leaves = ordered(grouped["leaf"].get(opening_id, ()))
        wanted = locks(leaves, ordered(grouped["existing_item"].get(opening_id, ())))
        made += [
            {"id": point, "version": 1, "opening_id": opening_id, "item_id": item}
            for point, item in points(opening_id, wanted).items()
        ]
    if made:
        table = sa.table("lock_point", *(sa.column(name) for name in ("id", "version", "opening_id", "item_id")))
        connection.execute(sa.insert(table), made)


# --- the journal ------------------------------------------------------------------------------------------------------

POINTED = {"chosen_part": "lock_point_id", "placed_unit": "lock_point_id", "opening_fit": "opening_id"}
"""What belongs to the first lock point, with the column that says so."""


def text(values):
    return json.dumps(values, ensure_ascii=False, separators=(",", ":"), sort_keys=True)


class Past:
    """Openings with their leaves, items and lock points at a step of the journal."""

    def __init__(self):
        self.rows = {"leaf": {}, "existing_item": {}}
        self.of = {"leaf": defaultdict(dict), "existing_item": defaultdict(dict)}
        self.points = {}

    def take(self, entry, before, after):
        rows, of = self.rows[entry.entity], self.of[entry.entity]
        columns = LEAF if entry.entity == "leaf" else ITEM
        if entry.action == "delete":
            row = rows.pop(entry.row_id)
            of[row["opening_id"]].pop(entry.row_id)
            return row["opening_id"]
        if entry.action == "insert":
            row = rows[entry.row_id] = {name: after.get(name) for name in columns}
            of[row["opening_id"]][entry.row_id] = row
            return row["opening_id"]
        row = rows[entry.row_id]
        row.update({name: value for name, value in after.items() if name in columns})
        return row["opening_id"]

    def follow(self, opening_id):
        """Return what changes at the lock points of an opening: identifier, values before, values after."""
        leaves, items = (ordered(self.of[name].get(opening_id, {}).values()) for name in ("leaf", "existing_item"))
        now = points(opening_id, locks(leaves, items))
        was = self.points.get(opening_id, {})
        self.points[opening_id] = now
        for point in [*was, *(each for each in now if each not in was)]:
            if was.get(point, "none") != now.get(point, "none"):
                yield point, was.get(point, "none"), now.get(point, "none")


def whole(point, opening_id, item):
    row = {"id": point, "opening_id": opening_id, "version": 1}
    return text(row if item is None else {**row, "item_id": item})


def weave(connection):
    """Write lock points into the journal, where they would have come and gone."""
    query = (
        sa.select(ENTRY)
        .where(ENTRY.c.entity.in_(["opening", "leaf", "existing_item", *POINTED]))
        .order_by(ENTRY.c.change_set, ENTRY.c.sequence)
    )
    past = Past()
    rewritten, before_gone, made = [], defaultdict(list), defaultdict(list)
    for number, group in groupby(connection.execute(query).all(), key=lambda entry: entry.change_set):
        touched = {}
        for entry in group:
            before = json.loads(entry.before) if entry.before else None
            after = json.loads(entry.after) if entry.after else None
            if entry.entity in POINTED:
                name = POINTED[entry.entity]
                said = {
                    key: text({**values, name: values["id"] if name == "opening_id" else values["opening_id"]})
                    for key, values in (("before", before), ("after", after))
                    if values is not None and entry.action != "update"
                }
                if said:
                    rewritten.append(
                        {"n": number, "s": entry.sequence, "b": said.get("before"), "a": said.get("after")}
                    )
            elif entry.entity != "opening":
                touched[past.take(entry, before, after)] = None
            elif entry.action == "insert":
                touched[entry.row_id] = None
                past.points[entry.row_id] = {}
            elif entry.action == "delete":
                gone = past.points.pop(entry.row_id)
                before_gone[number].append(
                    (entry.sequence, [(point, entry.row_id, item) for point, item in gone.items()])
                )
                touched.pop(entry.row_id, None)
        for opening_id in touched:
            if opening_id not in past.points:
                continue
            for point, was, now in past.follow(opening_id):
                made[number].append((point, opening_id, was, now))
    if rewritten:
        connection.execute(
            sa.text('UPDATE change_entry SET "before" = :b, "after" = :a WHERE change_set = :n AND sequence = :s'),
            rewritten,
        )
    entries = []
    for number in sorted({*before_gone, *made}):
        entries += woven(connection, number, before_gone.get(number, []), made.get(number, []))
    if entries:
        connection.execute(sa.insert(ENTRY), entries)


def woven(connection, number, before_gone, made):
    """Make room in a change set for points that went with their openings; return all its entries of lock points."""
    query = sa.select(ENTRY.c.sequence).where(ENTRY.c.change_set == number).order_by(ENTRY.c.sequence)
    sequences = list(connection.execute(query).scalars())
    entries, moved, shift = [], [], 0
    due = dict(before_gone)
    for sequence in sequences:
        for point, opening_id, item in due.get(sequence, ()):
            row = whole(point, opening_id, item)
            entries.append(entry_of(number, sequence + shift, point, opening_id, "delete", row, None))
            shift += 1
        if shift:
            moved.append({"n": number, "old": sequence, "new": sequence + shift})
    if moved:
        # From behind, so that none lands on another.
        connection.execute(
            sa.text("UPDATE change_entry SET sequence = :new WHERE change_set = :n AND sequence = :old"), moved[::-1]
        )
    end = sequences[-1] + shift + 1
    for place, (point, opening_id, was, now) in enumerate(made):
        if was == "none":
            said = ("insert", None, whole(point, opening_id, now))
        elif now == "none":
            said = ("delete", whole(point, opening_id, was), None)
        else:
            said = ("update", text({"item_id": was}), text({"item_id": now}))
        entries.append(entry_of(number, end + place, point, opening_id, *said))
    connection.execute(
        sa.text("UPDATE change_set SET entries = entries + :more WHERE number = :n"),
        {"more": len(entries), "n": number},
    )
    return entries


def entry_of(number, sequence, point, opening_id, action, before, after):
    return {
        "change_set": number,
        "sequence": sequence,
        "entity": "lock_point",
        "row_id": point,
        "opening_id": opening_id,
        "action": action,
        "before": before,
        "after": after,
        "origin": None,
    }
