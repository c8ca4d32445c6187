"""The tables of a project, built from the declared facts.

Every journalled row has an identifier that survives export, import and merging, and a version counter. Null means
unknown. Adding a fact costs its declaration and a migration; the columns below follow by themselves.
"""

from collections.abc import Mapping
from typing import Any, Final

from sqlalchemy import (
    Boolean,
    Column,
    Float,
    ForeignKey,
    Index,
    Integer,
    LargeBinary,
    MetaData,
    Table,
    Text,
    UniqueConstraint,
    text,
)

from hwsched.model.columns import ExactText, JsonText, fact_columns
from hwsched.survey import BUILDING_PLACE, CIRCUIT, ITEM, LEAF, LEVEL_PLACE, OPENING, RUN, SUPPLY

METADATA: Final = MetaData(
    # Fixed names, so that a later migration can name what it drops on every database.
    naming_convention={
        "ix": "ix_%(table_name)s_%(column_0_N_name)s",
        "uq": "uq_%(table_name)s_%(column_0_N_name)s",
        "fk": "fk_%(table_name)s_%(column_0_name)s",
        "pk": "pk_%(table_name)s",
    }
)


def _journalled(name: str, *columns: Any) -> Table:
    return Table(name, METADATA, Column("id", Text, primary_key=True), _version(), *columns)


def _version() -> Column[Any]:
    return Column("version", Integer, nullable=False, server_default=text("1"), info={"blank": 1})


def _owner(name: str, target: str, *, primary_key: bool = False) -> Column[Any]:
    # Owned rows go with their owner, by the journal: the database itself must not remove what nobody wrote down.
    return Column(
        name, Text, ForeignKey(f"{target}.id"), nullable=False, primary_key=primary_key, info={"owner": target}
    )


def _mapping(name: str) -> Column[Any]:
    return Column(name, JsonText, nullable=False, server_default=text("'{}'"), info={"blank": {}})


PROJECT: Final = _journalled(
    "project",
    Column("name", Text, nullable=False),
    Column("created_at", Text, nullable=False),
    Column("length_style", Text, nullable=False),
    Column("bare_unit", Text),
    _mapping("settings"),
)
"""One row. Settings: limits {rule-id.limit: value}, rules_off [rule-id], prefer."""

BUILDING: Final = _journalled(
    "building", Column("name", Text, nullable=False), *fact_columns(BUILDING_PLACE.attributes), UniqueConstraint("name")
)

LEVEL: Final = _journalled(
    "level",
    Column("building_id", Text, ForeignKey("building.id"), index=True),
    Column("name", Text),
    Column("sort", Integer, nullable=False, server_default=text("0"), info={"blank": 0}),
    Column("height_m", Float),
    *fact_columns(LEVEL_PLACE.attributes),
    UniqueConstraint("building_id", "name"),
)
"""A level of a building; name null: the level is not known yet; building null: only the level's name is. Height: of its
floor over a common zero of the building. What it says of egress goes before what its building says."""

HARDWARE_SET: Final = _journalled(
    "hardware_set", Column("name", Text, nullable=False), Column("notes", Text), UniqueConstraint("name")
)
"""A named list of parts that a group of openings shares."""

SET_LINE: Final = _journalled(
    "set_line",
    _owner("set_id", "hardware_set"),
    Column("role", Text, nullable=False),
    Column("part", Text, nullable=False),
    Column("quantity", Float, nullable=False),
    UniqueConstraint("set_id", "role", "part"),
)
"""Parts of a set by role. Part is a catalogue number, as in a choice by hand."""

OPENING_TABLE: Final = _journalled(
    "opening",
    Column("level_id", Text, ForeignKey("level.id"), index=True),
    Column("set_id", Text, ForeignKey("hardware_set.id"), index=True),
    *fact_columns(OPENING.attributes, without=("building", "level")),
    _mapping("extra"),
    Column("retired", Text),
    UniqueConstraint("mark"),
)
"""Building and level follow from the level's row; extra holds the project's own fields. Retired: why the building has
the opening no more; it is kept for its history, and nothing that works on openings sees it. Null: it is there."""

IN_USE: Final = OPENING_TABLE.c.retired.is_(None)
"""What holds of the openings that the building has."""


def _ordinal() -> Column[Any]:
    return Column("ordinal", Integer, nullable=False, server_default=text("0"), info={"blank": 0})


LEAF_TABLE: Final = _journalled(
    "leaf", _owner("opening_id", "opening"), _ordinal(), *fact_columns(LEAF.attributes), Index(None, "opening_id")
)
"""Ordinal keeps the order in which they were surveyed."""

ITEM_TABLE: Final = _journalled(
    "existing_item",
    _owner("opening_id", "opening"),
    _ordinal(),
    *fact_columns(ITEM.attributes),
    _mapping("extra"),
    Index(None, "opening_id"),
)

LOCK_POINT: Final = _journalled(
    "lock_point",
    _owner("opening_id", "opening"),
    # Judged at the end only: in the change set in which an item goes the point is settled after it.
    Column("item_id", Text, ForeignKey("existing_item.id", deferrable=True, initially="DEFERRED"), index=True),
    Index(None, "opening_id"),
)
"""A place on a leaf that is locked; an opening has one or several. Rows follow from leaves and existing items, see
`hwsched.model.lock_points`; the first of an opening has the opening's identifier. Item: the existing lock that is
converted there, null while the survey shows none."""

PART: Final = _journalled(
    "part",
    Column("number", Text, nullable=False),
    Column("kind", Text, nullable=False),
    Column("description", Text),
    Column("supplier", Text),
    Column("finish", Text),
    Column("unit", Text),
    Column("list_price", ExactText),
    Column("currency", Text),
    Column("superseded_by", Text),
    Column("stock", Float),
    Column("preferred", Integer),
    _mapping("attributes"),
    _mapping("extra"),
    UniqueConstraint("number"),
)

KIT_CONTENT: Final = _journalled(
    "kit_content",
    _owner("part_id", "part"),
    Column("number", Text, nullable=False),
    Column("quantity", Float, nullable=False),
    UniqueConstraint("part_id", "number"),
)
"""What is in a part's box: catalogue numbers, since a box may hold what the catalogue does not list yet."""

CHOSEN_PART: Final = _journalled(
    "chosen_part",
    _owner("opening_id", "opening"),
    _owner("lock_point_id", "lock_point"),
    Column("role", Text, nullable=False),
    Column("part", Text, nullable=False),
    Column("quantity", Float, nullable=False),
    Index(None, "opening_id"),
    UniqueConstraint("lock_point_id", "role", "part"),
)
"""Choices by hand. Part is a catalogue number: the choice outlives the entry, and a rule then speaks of it."""

PLACED_UNIT: Final = _journalled(
    "placed_unit",
    _owner("opening_id", "opening"),
    _owner("lock_point_id", "lock_point"),
    Column("leaf", Text, nullable=False),
    Column("face", Text, nullable=False),
    Column("pattern", Text, nullable=False),
    Column("x_mm", Float, nullable=False),
    Column("y_mm", Float, nullable=False),
    Index(None, "opening_id"),
    UniqueConstraint("lock_point_id"),
)

ASSIGNED_PART: Final = _journalled(
    "assigned_part",
    _owner("opening_id", "opening"),
    Column("lock_point_id", Text, ForeignKey("lock_point.id"), info={"owner": "lock_point"}, index=True),
    Column("role", Text, nullable=False),
    Column("part", Text, nullable=False),
    Column("piece", Integer, nullable=False),
    Column("quantity", Float, nullable=False),
    Column("source", Text, nullable=False),
    Column("serial", Text),
    Column("lot", Text),
    Column("state", Text, nullable=False),
    Index(None, "opening_id"),
)
"""A piece, or a counted lot, at a lock point, from the moment that anything is known of it beyond the fit: its serial
number, its lot, that it went out. Piece: counted from 1 among equal ones. Source: worked-out, set, by-hand. State:
planned or issued, and behind it what was done at the bench: built, programmed, tested. Lock point null: it is locked no
more."""

OWN_FIELD: Final = _journalled(
    "own_field",
    Column("entity", Text, nullable=False),
    Column("name", Text, nullable=False),
    Column("label", Text, nullable=False),
    Column("kind", Text, nullable=False),
    Column("unit", Text, nullable=False, server_default=text("''"), info={"blank": ""}),
    Column("choices", JsonText, nullable=False, server_default=text("'[]'"), info={"blank": []}),
    UniqueConstraint("entity", "name"),
)
"""Fields of the project's own on opening, existing_item and part; choices is a list of words."""

IMPORT_MAPPING: Final = _journalled(
    "import_mapping",
    Column("fingerprint", Text, nullable=False),
    Column("name", Text),
    _mapping("mapping"),
    UniqueConstraint("fingerprint"),
)
"""How a header row was read the last time, by the fingerprint of that row."""

DELIVERY: Final = _journalled(
    "delivery",
    Column("number", Integer, nullable=False),
    Column("file", Text, nullable=False),
    Column("key", Text, nullable=False),
    Column("at", Text, nullable=False),
    Column("person", Text, nullable=False),
    _mapping("told"),
    UniqueConstraint("number"),
)
"""Files of a survey that were taken in, counted from 1. Key: hash of the content; told: how many openings were new,
changed, unchanged, gone, and by sheet which column told which fact."""

OPEN_QUESTION: Final = _journalled(
    "open_question",
    _owner("delivery_id", "delivery"),
    Column("opening_id", Text, ForeignKey("opening.id"), info={"owner": "opening"}, index=True),
    Column("kind", Text, nullable=False),
    Column("mark", Text, nullable=False),
    Column("fact", Text),
    Column("answer", Text),
    _mapping("content"),
    Index(None, "delivery_id"),
)
"""What a delivery left for a person to decide. Kind: as in `hwsched.exchange.survey.decisions`; mark: in the file, of
what is gone the project's; answer: null while it is open, else what holds of later deliveries that say the same;
content: what the file says and what speaks for it."""

SUPPLY_TABLE: Final = _journalled(
    "supply",
    Column("level_id", Text, ForeignKey("level.id"), index=True),
    *fact_columns(SUPPLY.attributes, without=("building", "level")),
    UniqueConstraint("name"),
)
"""Supplies that are laid, and places where one may stand."""

CIRCUIT_TABLE: Final = _journalled(
    "circuit",
    _owner("supply_id", "supply"),
    *fact_columns(CIRCUIT.attributes),
    UniqueConstraint("supply_id", "name"),
)

RUN_TABLE: Final = _journalled(
    "run",
    _owner("circuit_id", "circuit"),
    Column("opening_id", Text, ForeignKey("opening.id"), info={"owner": "opening"}, index=True),
    *fact_columns(RUN.attributes),
    Index(None, "circuit_id"),
)
"""Runs of a circuit. Nodes: "supply", a junction's name, or an opening's identifier; the opening at the far end stands
in a column of its own too, so that its run goes with it."""

ROUTE: Final = _journalled(
    "route",
    _owner("opening_id", "opening"),
    _owner("supply_id", "supply"),
    Column("length_m", Float),
    Column("pinned", Boolean, nullable=False, server_default=text("false"), info={"blank": False}),
    UniqueConstraint("opening_id", "supply_id"),
)
"""Measured cable routes between openings and supplies, and pairs that the siting must keep."""

WAIVER: Final = _journalled(
    "waiver",
    Column("opening_id", Text, ForeignKey("opening.id"), info={"owner": "opening"}, index=True),
    Column("rule", Text, nullable=False),
    Column("about", Text, nullable=False, server_default=text("''"), info={"blank": ""}),
    Column("scope", Text, nullable=False),
    Column("facts", Text, nullable=False),
    Column("person", Text, nullable=False),
    Column("reason", Text, nullable=False),
    Column("given_on", Text, nullable=False, info={"holds": "date"}),
    Column("until", Text, info={"holds": "date"}),
)
"""Accepted findings. Scope: opening, alike, project; opening: the one it was given at, null for the project; facts:
hash of what it was given for."""

ISSUED_PACKET: Final = _journalled(
    "issued_packet",
    _owner("opening_id", "opening"),
    Column("at", Text, nullable=False),
    Column("by", Text, nullable=False),
    Column("shown_key", Text, nullable=False),
    UniqueConstraint("opening_id"),
)
"""The last packet that went out for an opening; shown_key: hash of what it showed."""

BLOB: Final = Table(
    "blob",
    METADATA,
    Column("hash", Text, primary_key=True),
    Column("size", Integer, nullable=False),
    Column("media_type", Text, nullable=False),
    Column("content", LargeBinary, nullable=False),
)
"""Contents of files by their SHA-256: held once, immutable, so not journalled; one that nothing points to any more is
kept, so that an undo finds it. Size in bytes."""

ATTACHMENT: Final = _journalled(
    "attachment",
    Column("entity", Text, nullable=False),
    Column("row_id", Text, nullable=False, index=True),
    Column("opening_id", Text, ForeignKey("opening.id"), info={"owner": "opening"}, index=True),
    Column("blob", Text, ForeignKey("blob.hash"), nullable=False),
    Column("name", Text, nullable=False),
    Column("title", Text),
    Column("note", Text),
    _ordinal(),
)
"""Files at anything: entity and row_id name it, so no key of the database's keeps it; the journal does. Opening: the
one that it belongs to, for its history; name: of the file as it was taken in."""

FROZEN: Final = Table(
    "frozen",
    METADATA,
    Column("hash", Text, primary_key=True),
    Column("kind", Text, nullable=False),
    Column("content", LargeBinary, nullable=False),
)
"""What revisions consist of, by the SHA-256 of kind and content: immutable and shared between revisions, so not
journalled. Content is JSON in UTF-8, a long one compressed by zlib."""

TRANSMITTAL: Final = _journalled(
    "transmittal",
    Column("number", Integer, nullable=False),
    Column("at", Text, nullable=False),
    Column("person", Text, nullable=False),
    Column("recipient", Text, nullable=False),
    Column("purpose", Text),
    Column("note", Text),
    _mapping("files"),
    UniqueConstraint("number"),
)
"""What went to whom, counted from 1. Files: by name the hash of the content, its size, the revision that it shows."""

OFFICE: Final = _journalled(
    "office",
    Column("name", Text, nullable=False),
    Column("text", Text, nullable=False),
    _mapping("files"),
    UniqueConstraint("name"),
)
"""How the office's documents look, as somebody declared it: the text as it was taken in, and the hashes of the pictures
that it names."""

REVISION: Final = _journalled(
    "revision",
    Column("letter", Text, nullable=False),
    Column("at", Text, nullable=False),
    Column("person", Text, nullable=False),
    Column("purpose", Text),
    _mapping("scope"),
    Column("root", Text, ForeignKey("frozen.hash"), nullable=False),
    UniqueConstraint("letter"),
)
"""States of the project frozen under a letter. Scope: what of it, such as {"building": "Mill"}, nothing: all of it;
root: the content from which all others are found."""

FIT_CONTENT: Final = Table(
    "fit_content",
    METADATA,
    Column("key", Text, primary_key=True),
    Column("status", Text, nullable=False),
    Column("content", Text, nullable=False, info={"holds": "json"}),
)
"""Fits by the hash of their text: immutable, so not journalled; one that nothing points to any more does no harm. A fit
with a place holds that alone, and names by ``common`` the row that holds all else, which fits in other places share."""

ENGINE: Final = Table(
    "engine",
    METADATA,
    Column("key", Text, primary_key=True),
    Column("program", Text, nullable=False),
    Column("parts", Text, nullable=False, info={"holds": "json"}),
)
"""Programs that have worked something out, by their fingerprint: version for people, hash of each subsystem as JSON.
Immutable, so not journalled."""

FACTS_READ: Final = Table(
    "facts_read",
    METADATA,
    Column("key", Text, primary_key=True),
    Column("names", Text, nullable=False, info={"holds": "json"}),
)
"""Which facts were read for fits, as JSON, by the hash of it: immutable, so not journalled."""

OPENING_FIT: Final = Table(
    "opening_fit",
    METADATA,
    _owner("id", "lock_point", primary_key=True),
    _version(),
    _owner("opening_id", "opening"),
    Column("input_key", Text, nullable=False),
    Column("fit_key", Text, ForeignKey("fit_content.key"), nullable=False),
    Column("engine", Text, ForeignKey("engine.key")),
    Column("facts_read", Text, ForeignKey("facts_read.key")),
    Column("battery", Text, info={"holds": "json"}),
    Index(None, "opening_id"),
)
"""Which fit a lock point has; id is the lock point's. Engine: the program that worked it out, null for one that did not
write itself down; facts_read: what was read for it; input_key: hash of what those facts held; battery: how long its
pack lasts, which hangs on how busy this one opening is, where the fit's content does not say it."""

PERSON: Final = _journalled(
    "person", Column("name", Text, nullable=False), Column("role", Text, nullable=False), UniqueConstraint("name")
)
"""Who works on the project, and as what; while nobody is listed, it is open to all. Roles stand in `roles`."""

CHANGE_SET: Final = Table(
    "change_set",
    METADATA,
    Column("number", Integer, primary_key=True, autoincrement=False),
    Column("uuid", Text, nullable=False),
    Column("base", Integer),
    Column("at", Text, nullable=False),
    Column("who", Text, nullable=False),
    Column("device", Text),
    Column("session", Text),
    Column("verb", Text, nullable=False),
    Column("summary", Text, nullable=False),
    Column("kind", Text, nullable=False),
    Column("target", Integer, ForeignKey("change_set.number")),
    Column("entries", Integer, nullable=False),
    Column("own_hash", Text),
    Column("chain_hash", Text),
    UniqueConstraint("uuid"),
    Index(None, "who", "number"),
    Index(None, "target"),
)
"""Headers of the journal. Kind: edit, undo, redo; target: the edit that an undo or redo speaks of. Number: its place in
this project; uuid: what it is known by in every copy; base: the newest change set that its maker had seen; device: name
of the machine; session: one opening of the project by one process or window. Null: written before these were kept.
Hashes: of the set itself, and of its place behind the one before, see `hwsched.model.journal.chain`."""

CHANGE_TARGET: Final = Table(
    "change_target",
    METADATA,
    Column("change_set", Integer, ForeignKey("change_set.number"), primary_key=True),
    Column("target", Integer, ForeignKey("change_set.number"), primary_key=True),
    Index(None, "target", "change_set"),
)
"""The further edits of which an undo or redo of several speaks; its first stands in its header."""

CHANGE_ENTRY: Final = Table(
    "change_entry",
    METADATA,
    Column("change_set", Integer, ForeignKey("change_set.number"), primary_key=True),
    Column("sequence", Integer, primary_key=True, autoincrement=False),
    Column("entity", Text, nullable=False),
    Column("row_id", Text, nullable=False),
    Column("opening_id", Text),
    Column("action", Text, nullable=False),
    Column("before", Text),
    Column("after", Text),
    Column("origin", Text),
    Index(None, "row_id", "change_set"),
    Index(None, "opening_id", "change_set"),
)
"""What happened to one row. Action: insert, update, delete; before and after: JSON, of an update only what differs;
opening_id: whose history it belongs to; origin: where the value came from, such as a file's sheet and row."""

CHANGE_REFERENCE: Final = Table(
    "change_reference",
    METADATA,
    Column("row_id", Text, primary_key=True),
    Column("change_set", Integer, ForeignKey("change_set.number"), primary_key=True),
)
"""Which change sets made a row stand on another one, or ended that: by the row that is stood on, such as a level.
Openings are not in it: entries name theirs."""

TABLE_DIGEST: Final = Table(
    "table_digest",
    METADATA,
    Column("name", Text, primary_key=True),
    Column("digest", Text, nullable=False),
    Column("rows", Integer, nullable=False),
    Column("change_set", Integer, nullable=False),
)
"""What each journalled table should hold, see `hwsched.model.journal.digests`, and since which change set."""

JOURNALLED: Final[Mapping[str, Table]] = {
    table.name: table
    for table in (
        PROJECT,
        BUILDING,
        LEVEL,
        HARDWARE_SET,
        SET_LINE,
        OPENING_TABLE,
        LEAF_TABLE,
        ITEM_TABLE,
        LOCK_POINT,
        PART,
        KIT_CONTENT,
        CHOSEN_PART,
        PLACED_UNIT,
        ASSIGNED_PART,
        OWN_FIELD,
        IMPORT_MAPPING,
        DELIVERY,
        OPEN_QUESTION,
        OPENING_FIT,
        SUPPLY_TABLE,
        CIRCUIT_TABLE,
        RUN_TABLE,
        ROUTE,
        WAIVER,
        ISSUED_PACKET,
        PERSON,
        ATTACHMENT,
        REVISION,
        TRANSMITTAL,
        OFFICE,
    )
}
"""Tables that change through the journal only; owners stand before what they own."""

OWNED: Final[Mapping[str, tuple[tuple[Table, Column[Any]], ...]]] = {
    name: tuple(
        (child, column) for child in JOURNALLED.values() for column in child.columns if column.info.get("owner") == name
    )
    for name in JOURNALLED
}
"""Per table, the tables whose rows go when its row goes, with the column that points to it."""

REFERENCES: Final[Mapping[str, Mapping[str, str]]] = {
    name: {
        column.name: key.column.table.name
        for column in table.columns
        for key in column.foreign_keys
        if key.column.table.name in JOURNALLED
    }
    for name, table in JOURNALLED.items()
}
"""Per table, its columns that point to another journalled row, with that row's table."""

NAMED: Final[Mapping[str, tuple[str, str]]] = {ATTACHMENT.name: ("entity", "row_id")}
"""Tables whose rows stand on a row of any table: the columns that hold its table and its identifier."""

LINKS: Final[Mapping[str, tuple[str, ...]]] = {
    name: (
        *(column for column, target in columns.items() if target != OPENING_TABLE.name),
        *NAMED.get(name, ())[1:],
    )
    for name, columns in REFERENCES.items()
}
"""Per table, its columns whose rows `CHANGE_REFERENCE` names."""

UNIQUE: Final[Mapping[str, tuple[tuple[str, ...], ...]]] = {
    name: tuple(
        tuple(column.name for column in constraint.columns)
        for constraint in sorted(table.constraints, key=lambda c: str(c.name))
        if isinstance(constraint, UniqueConstraint)
    )
    for name, table in JOURNALLED.items()
}
"""Per table, the groups of columns that no two rows may share."""

BLANK: Final[Mapping[str, Mapping[str, Any]]] = {
    name: {column.name: column.info.get("blank") for column in table.columns} for name, table in JOURNALLED.items()
}
"""Per table, a row of which nothing is known yet."""

EXACT: Final[Mapping[str, tuple[str, ...]]] = {
    name: columns
    for name, table in JOURNALLED.items()
    if (columns := tuple(column.name for column in table.columns if isinstance(column.type, ExactText)))
}
"""Per table that has any, its columns of exact decimals, which the journal holds as text."""
