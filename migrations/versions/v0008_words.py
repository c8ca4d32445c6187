"""Words: inside for the secured side, worked out for fitted, keys named for what they are

Revision: 0008, after 0003. Contents that are known by their hash keep the words in which they were written; they are
read in those of today.
"""

import sqlalchemy as sa
from alembic import op

revision = "0008"
down_revision = "0003"
branch_labels = None
depends_on = None

_COLUMNS = (
    ("existing_item", "trim_secured_mm", "trim_inside_mm"),
    ("opening_fit", "case_key", "input_key"),
    ("issued_packet", "case_key", "shown_key"),
)
_FACE = ('"face":"secured"', '"face":"inside"')
_RULE = ('"unit-on-secured-side"', '"unit-on-inside"')
_LIMIT = ("secured_limit_mm", "inside_limit_mm")
_HALF = ("secured_half_mm", "inside_half_mm")
_TRIM = ("trim_secured_mm", "trim_inside_mm")
# What the journal holds of a table: JSON without blanks, in which a quotation mark within a text is escaped.
_JOURNAL = {
    "existing_item": (('"trim_secured_mm":', '"trim_inside_mm":'), _FACE),
    "placed_unit": (_FACE,),
    "part": (('"secured_half_mm":', '"inside_half_mm":'),),
    "project": (_RULE, ('"unit-on-secured-side.', '"unit-on-inside.'), ('.secured_limit_mm"', '.inside_limit_mm"')),
    "waiver": (_RULE, _TRIM, _HALF),
    "opening_fit": (('"case_key":', '"input_key":'),),
    "issued_packet": (('"case_key":', '"shown_key":'),),
    "assigned_part": (('"source":"fitted"', '"source":"worked-out"'),),
    "import_mapping": (_TRIM, _HALF),
}
_ROWS = (
    ("existing_item", "face", (("secured", "inside"),)),
    ("placed_unit", "face", (("secured", "inside"),)),
    ("assigned_part", "source", (("fitted", "worked-out"),)),
    ("waiver", "rule", (("unit-on-secured-side", "unit-on-inside"),)),
    ("fit_content", "status", (("fitted", "fits"), ("not-fitted", "does-not-fit"), ("unknown", "to-measure"))),
)
# Texts in which the words stand among others.
_WITHIN = (
    ("part", "id", "attributes", _JOURNAL["part"]),
    ("project", "id", "settings", _JOURNAL["project"]),
    ("import_mapping", "id", "mapping", _JOURNAL["import_mapping"]),
    ("waiver", "id", "about", (_TRIM, _HALF, _LIMIT)),
)


def upgrade() -> None:
    for table, old, new in _COLUMNS:
        # Both databases know it, and nothing is copied.
        op.execute(f"ALTER TABLE {table} RENAME COLUMN {old} TO {new}")
    bind = op.get_bind()
    for name, column, words in _ROWS:
        table = sa.table(name, sa.column(column))
        for old, new in words:
            bind.execute(sa.update(table).where(table.c[column] == old).values({column: new}))
    for name, key, column, words in _WITHIN:
        _rewrite(sa.table(name, sa.column(key), sa.column(column)), (key,), (column,), words)
    entries = sa.table("change_entry", *map(sa.column, ("change_set", "sequence", "entity", "before", "after")))
    for entity, words in _JOURNAL.items():
        _rewrite(entries, ("change_set", "sequence"), ("before", "after"), words, entries.c.entity == entity)


def _rewrite(table, keys, columns, words, where=None) -> None:
    """Replace words in columns of text, where one of them stands."""
    bind = op.get_bind()
    met = sa.or_(*(table.c[column].like(f"%{old}%") for column in columns for old, _ in words))
    query = sa.select(*(table.c[each] for each in (*keys, *columns))).where(met)
    rows = bind.execute(query if where is None else query.where(where)).mappings().all()
    changed = []
    for row in rows:
        now = {column: _replaced(row[column], words) for column in columns}
        if any(now[column] != row[column] for column in columns):
            changed.append({**{f"_{key}": row[key] for key in keys}, **{f"_{c}": now[c] for c in columns}})
    if changed:
        update = sa.update(table).where(*(table.c[key] == sa.bindparam(f"_{key}") for key in keys))
        bind.execute(update.values({column: sa.bindparam(f"_{column}") for column in columns}), changed)


def _replaced(text, words):
    for old, new in words if text is not None else ():
        text = text.replace(old, new)
    return text
