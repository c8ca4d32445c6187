"""What can be listed for machines and for the terminal: the tuple below is its table of contents, room by room.

A list is told by its query, where its rows are what is stored: it is read with the database's driver alone, without
the layers that a list of stored facts does not need. Or by a function, where its rows are worked out; it is loaded when
it is used, as the formats of `imports` are. Nothing here writes.
"""

from __future__ import annotations

from importlib import import_module

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Collection, Iterable
    from typing import Any

    from hwsched.model.project import Project

OPENING_ID = "_opening_id"
"""Column of a query that says whose row it is; it is not shown."""
SORTED = "_sort"
"""Column by which rows are ordered before their marks; it is not shown."""


class ListKind:
    """One list.

    Parameters
    ----------
    room : str
        Whose verb ``list`` shows it.
    name : str
        As it is asked for.
    about : str
        What a row is.
    key : str
        Column by which one row is named.
    query : str
        SQL that every database takes; empty for a list that is worked out.
    rows : str
        ``module:function`` for such a one: from the project and the openings that are asked (None: all) to its rows.
    first : tuple of str
        Columns that a table at the terminal shows; empty: all.
    takes_openings : bool
        A list that is worked out can be asked of some openings.
    """

    __slots__ = ("about", "first", "key", "name", "query", "room", "rows", "takes_openings")

    def __init__(
        self,
        room: str,
        name: str,
        about: str,
        key: str,
        *,
        query: str = "",
        rows: str = "",
        first: tuple[str, ...] = (),
        takes_openings: bool = False,
    ) -> None:
        self.room, self.name, self.about, self.key = room, name, about, key
        self.query, self.rows, self.first = query, rows, first
        self.takes_openings = takes_openings

    @property
    def by_opening(self) -> bool:
        """Whether its rows belong to openings, so that some of these can be asked for."""
        return OPENING_ID in self.query if self.query else self.takes_openings

    def computed(self, project: Project, openings: Collection[str] | None) -> Iterable[dict[str, Any]]:
        """Return the rows of a list that is worked out."""
        module, _, function = self.rows.partition(":")
        found: Iterable[dict[str, Any]] = getattr(import_module(module), function)(project, openings)
        return found


FROM_PLACE = (
    *("code", "code_edition", "occupancy_group", "occupant_load", "storeys_served", "sprinkler", "fire_alarm"),
    "access_policy",
)
"""Facts that an opening takes from its level or building; named here, since help must not wait for the survey's."""
OF_LEVEL, OF_BUILDING = "_level_", "_building_"
"""Before their names, what level and building say of them: taken where the row itself says nothing, and not told."""


def _of_place(table: str, before: str) -> str:
    return ", ".join(f"{table}.{name} AS {before}{name}" for name in FROM_PLACE)


LISTS: tuple[ListKind, ...] = (
    ListKind(
        "survey", "openings", "an opening with its facts", "mark",
        query=(
            "SELECT o.id AS _opening_id, b.name AS building, l.name AS level, "  # noqa: S608 names of ours
            f"{_of_place('l', OF_LEVEL)}, "
            f"{_of_place('b', OF_BUILDING)}, o.* "
            "FROM opening o LEFT JOIN level l ON l.id = o.level_id LEFT JOIN building b ON b.id = l.building_id "
            "WHERE o.retired IS NULL"
        ),
        first=("mark", "building", "level", "form", "hand", "rating"),
    ),
    ListKind(
        "survey", "leaves", "a leaf with its facts", "mark",
        query=(
            "SELECT o.id AS _opening_id, o.mark, e.* FROM leaf e JOIN opening o ON o.id = e.opening_id "
            "AND o.retired IS NULL"
        ),
        first=("mark", "position", "width_mm", "height_mm", "thickness_mm", "material", "construction"),
    ),
    ListKind(
        "survey", "existing-items", "an existing item with its facts", "mark",
        query=(
            "SELECT o.id AS _opening_id, o.mark, e.* FROM existing_item e JOIN opening o ON o.id = e.opening_id "
            "AND o.retired IS NULL"
        ),
        first=("mark", "kind", "leaf", "lock_form", "disposition", "backset_mm"),
    ),
    ListKind(
        "survey", "buildings", "a level of a building, with how many openings are on it", "building",
        query=(
            "SELECT b.name AS building, l.name AS level, l.height_m, l.sort AS _sort, "  # noqa: S608 names of ours
            f"COUNT(o.id) AS opening_count, {_of_place('l', '')}, {_of_place('b', OF_BUILDING)} FROM level l "
            "LEFT JOIN building b ON b.id = l.building_id LEFT JOIN opening o ON o.level_id = l.id "
            "AND o.retired IS NULL "
            "GROUP BY l.id, b.id"
        ),
        first=("building", "level", "height_m", "opening_count", "code", "occupancy_group", "occupant_load"),
    ),
    ListKind(
        "survey", "retired", "an opening that the building has no more, with the reason", "mark",
        query=(
            "SELECT o.id AS _opening_id, o.mark, b.name AS building, l.name AS level, o.room_from, o.room_to, "
            "o.retired AS reason FROM opening o LEFT JOIN level l ON l.id = o.level_id "
            "LEFT JOIN building b ON b.id = l.building_id WHERE o.retired IS NOT NULL"
        ),
    ),
    ListKind(
        "survey", "facts", "a fact that a survey can hold", "fact", rows="hwsched.operations.survey.lists:facts",
        first=("fact", "label", "unit", "kind"),
    ),
    ListKind(
        "survey", "fields", "a field of the project's own", "name",
        query="SELECT f.entity, f.name, f.label, f.kind, f.unit, f.choices FROM own_field f",
    ),
    ListKind(
        "opening", "fits", "an opening with what was worked out for it", "mark",
        rows="hwsched.operations.opening.lists:fits", takes_openings=True,
        first=("mark", "status", "standing", "lock", "unit", "error_count", "reason"),
    ),
    ListKind(
        "opening", "parts", "a part of an opening, in its role", "mark",
        rows="hwsched.operations.opening.lists:parts", takes_openings=True,
        first=("mark", "lock_point", "role", "part", "quantity", "source"),
    ),
    ListKind(
        "opening", "places", "where the control unit of an opening stands", "mark",
        rows="hwsched.operations.opening.lists:places", takes_openings=True,
    ),
    ListKind(
        "opening", "holes", "a hole to be made at an opening, in the order of the work", "mark",
        rows="hwsched.operations.opening.lists:holes", takes_openings=True,
        first=("mark", "lock_point", "order", "name", "face", "x_mm", "y_mm", "diameter_mm", "depth_mm"),
    ),
    ListKind(
        "opening", "pieces", "a piece or counted lot of which more is known than the fit says", "mark",
        query=(
            "SELECT o.id AS _opening_id, o.mark, p.role, p.part, p.piece, p.quantity, p.source, p.serial, p.lot, "
            "p.state FROM assigned_part p JOIN opening o ON o.id = p.opening_id "
            "AND o.retired IS NULL"
        ),
    ),
    ListKind(
        "power", "supplies", "a supply, or a place for one", "name",
        query=(
            "SELECT b.name AS building, l.name AS level, s.* "
            "FROM supply s LEFT JOIN level l ON l.id = s.level_id LEFT JOIN building b ON b.id = l.building_id"
        ),
    ),
    ListKind(
        "power", "circuits", "a circuit of a supply", "name",
        query="SELECT s.name AS supply, c.* FROM circuit c JOIN supply s ON s.id = c.supply_id",
    ),
    ListKind(
        "power", "loads", "an opening on a circuit, with its volts", "mark",
        rows="hwsched.operations.power.lists:loads", takes_openings=True,
    ),
    ListKind(
        "power", "facts", "what can be said of a supply, a circuit, a run", "fact",
        rows="hwsched.operations.survey.lists:power_facts", first=("fact", "label", "unit", "kind"),
    ),
    ListKind(
        "power", "routes", "a measured cable route, or a pinned pair", "mark",
        query=(
            "SELECT o.id AS _opening_id, o.mark, s.name AS supply, r.length_m, r.pinned FROM route r "
            "JOIN opening o ON o.id = r.opening_id AND o.retired IS NULL JOIN supply s ON s.id = r.supply_id"
        ),
    ),
    ListKind(
        "parts", "parts", "a line of the catalogue", "number", query="SELECT p.* FROM part p",
        first=("number", "kind", "description", "supplier", "list_price", "currency", "stock"),
    ),
    ListKind(
        "parts", "kinds", "an attribute of a kind of parts", "kind", rows="hwsched.operations.parts.lists:kinds"
    ),
    ListKind(
        "parts", "sets", "a line of a hardware set", "name",
        query=(
            "SELECT h.name, s.role, s.part, s.quantity, h.notes FROM hardware_set h "
            "LEFT JOIN set_line s ON s.set_id = h.id"
        ),
    ),
    ListKind(
        "findings", "findings", "what a rule says of an opening", "mark",
        rows="hwsched.operations.findings.lists:findings", takes_openings=True,
        first=("mark", "severity", "rule", "waived", "message"),
    ),
    ListKind(
        "findings", "waivers", "an accepted finding", "rule",
        rows="hwsched.operations.findings.lists:waivers", takes_openings=True,
    ),
    ListKind(
        "findings", "rules", "a rule with its limits", "rule", rows="hwsched.operations.findings.lists:rules",
        first=("rule", "discipline", "severity", "off", "title"),
    ),
    ListKind(
        "release", "pick-lines", "a part to be picked at a building and level", "part",
        rows="hwsched.operations.release.lists:pick_lines", takes_openings=True,
    ),
    ListKind(
        "release", "schedule-rows", "an item line of a heading of the schedule", "heading",
        rows="hwsched.operations.release.lists:schedule_rows", takes_openings=True,
    ),
    ListKind(
        "release", "revisions", "a frozen state", "letter",
        query="SELECT r.letter, r.at, r.person, r.purpose, r.scope FROM revision r",
    ),
    ListKind(
        "release", "packets", "the last packet that went out for an opening", "mark",
        query=(
            'SELECT o.id AS _opening_id, o.mark, p.at, p."by" AS person FROM issued_packet p '
            "JOIN opening o ON o.id = p.opening_id AND o.retired IS NULL"
        ),
    ),
    ListKind(
        "project", "change-sets", "a step of the project's history", "number",
        query=(
            "SELECT c.number AS _sort, c.number, c.at, c.who, c.verb, c.summary, c.kind, c.target, c.entries AS "
            "entry_count, c.device FROM change_set c"
        ),
        first=("number", "at", "who", "verb", "summary"),
    ),
    ListKind(
        "project", "settings", "a setting with its present value", "setting",
        rows="hwsched.operations.project.lists:settings",
    ),
    ListKind("project", "people", "who works on the project", "name", query="SELECT p.name, p.role FROM person p"),
)  # fmt: skip


def lists_of(room: str) -> dict[str, ListKind]:
    """Return the lists of a room by their names."""
    return {each.name: each for each in LISTS if each.room == room}
