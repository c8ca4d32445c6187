"""A project with something in every table, saved at each schema.

`python -m tests.model.saved_projects` adds the newest, and writes down of what its tables consist, against which a file
is held as it is opened. Run it once when a migration is added, and keep the saved project for ever: upgrading from it
is tested from then on.
"""

import json
import sqlite3
import tempfile
from contextlib import closing
from datetime import date
from decimal import Decimal
from pathlib import Path

from hwsched.fingerprint import Engine
from hwsched.model.blobs import hold_blob
from hwsched.model.catalogue_writing import write_parts
from hwsched.model.file.schema import APPLICATION_ID, HEAD
from hwsched.model.file.sound_schema import NEWEST, read_shape
from hwsched.model.file.value_kinds import value_checks
from hwsched.model.project import Project, create_project
from hwsched.model.queries import StoredFit, read_places
from hwsched.model.tables import (
    ASSIGNED_PART,
    CIRCUIT_TABLE,
    DELIVERY,
    HARDWARE_SET,
    IMPORT_MAPPING,
    ISSUED_PACKET,
    OFFICE,
    OPEN_QUESTION,
    OPENING_TABLE,
    ROUTE,
    RUN_TABLE,
    SET_LINE,
    SUPPLY_TABLE,
    TRANSMITTAL,
    WAIVER,
)
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.opening.hand_choices import choose_part, place_unit
from hwsched.operations.opening.storing_fits import store_fits
from hwsched.operations.project.history import undo, undo_one
from hwsched.operations.project.people import add_person
from hwsched.operations.release.attachments import attach_content
from hwsched.operations.release.freezing import freeze
from hwsched.operations.survey.editing import add_item, add_opening, edit_facts
from hwsched.operations.survey.own_fields import define_field, set_own_value
from hwsched.operations.survey.retiring import retire_openings
from hwsched.values import Fit, Part
from hwsched.values.facts_read import FactsRead

SAVED = Path(__file__).parent / "saved"
WHO = "keeper"


def fill(project: Project) -> None:
    """Put something into every table."""
    cylinder = Part("C-1", "mortise-cylinder", list_price=Decimal("12.10"), currency="USD", kit=(("S-1", 2.0),))
    with project.change("import-catalogue", "Catalogue", WHO) as change:
        write_parts(change, [cylinder, Part("U-1", "surface-unit")], "test")
    _, opening = add_opening(
        project, {"mark": "0012", "building": "Mill", "level": "1", "stair": True}, who=WHO, leaves=2
    )
    _, other = add_opening(project, {"mark": "9E4", "level": "roof"}, who=WHO)
    _, item = add_item(project, opening, {"kind": "lock", "backset_mm": 69.85}, who=WHO)
    choose_part(project, opening, "cylinder", "C-1", who=WHO)
    place_unit(project, opening, leaf="active", face="inside", pattern="above", x_mm=20.0, y_mm=1100.0, who=WHO)
    define_field(project, "existing_item", "key_group", "Key group", "choice", choices=("AA", "BB"), who=WHO)
    set_own_value(project, "existing_item", item, "key_group", "AA", who=WHO)
    with project.change("import-survey", "Mapping", WHO) as change:
        change.insert(IMPORT_MAPPING, [{"fingerprint": "f", "name": "Doors", "mapping": {"Mark": "opening.mark"}}])
    with project.change("fit", "Fit", WHO) as change:
        engine, read = Engine("program", "0.1.0", {"fitting": "code"}), FactsRead(opening=("form", "hand"))
        store_fits(change, {opening: StoredFit("case", Fit("to-measure"), engine, read)})
    fill_power_and_sets(project, opening)
    fill_pieces(project, opening)
    fill_deliveries(project, opening)
    fill_transmittals(project)
    say_of_places(project, opening)
    add_person(project, WHO, "specifier", who=WHO)
    attach_content(project, "opening", opening, "inside.txt", b"seen from inside", who=WHO, title="Inside")
    fit_openings(project, [other], who=WHO)
    freeze(project, who=WHO, purpose="kept", today=date(2026, 1, 2))
    edit_facts(project, "opening", opening, {"hand": "LHR"}, who=WHO)
    edit_facts(project, "opening", opening, {"hand": "RH"}, who=WHO)
    undo(project, who=WHO)
    undo_two(project, other)


def undo_two(project: Project, opening: str) -> None:
    """Put something into what came with revision 0017: two steps that were taken back as one."""
    steps = [edit_facts(project, "opening", opening, {"hand": hand}, who=WHO).number for hand in ("LH", "RH")]
    first, second = [step for step in steps if step is not None]
    undo_one(project, first, second, who=WHO)


def fill_power_and_sets(project: Project, opening: str) -> None:
    """Put something into every table that came with revision 0002."""
    with project.change("lay-supply", "Power", WHO) as change:
        supply = change.insert(SUPPLY_TABLE, [{"name": "Closet", "use": "laid", "x_m": 2.5}])[0]
        circuit = change.insert(CIRCUIT_TABLE, [{"supply_id": supply, "name": "A", "alarm": "drops"}])[0]
        ends = {"from_node": "J1", "to_node": opening, "opening_id": opening, "length_m": 4.0}
        change.insert(RUN_TABLE, [{"circuit_id": circuit, "from_node": "supply", "to_node": "J1"}])
        change.insert(RUN_TABLE, [{"circuit_id": circuit, **ends, "gauge": "18 AWG", "stranding": "solid"}])
        change.insert(ROUTE, [{"opening_id": opening, "supply_id": supply, "length_m": 6.0, "pinned": True}])
    with project.change("make-set", "Sets, waivers, packets", WHO) as change:
        kept = change.insert(HARDWARE_SET, [{"name": "HS-1"}])[0]
        change.insert(SET_LINE, [{"set_id": kept, "role": "unit", "part": "U-1", "quantity": 1.0}])
        change.update(OPENING_TABLE, [(opening, {"set_id": kept})])
        stated = {"scope": "opening", "facts": "f", "person": WHO, "reason": "seen", "given_on": "2026-01-02"}
        change.insert(WAIVER, [{"opening_id": opening, "rule": "hand-known", **stated}])
        change.insert(ISSUED_PACKET, [{"opening_id": opening, "at": "2026-01-02", "by": WHO, "shown_key": "case"}])


def say_of_places(project: Project, opening: str) -> None:
    """Say something of what revision 0010 brought: of building, level, opening, leaf and item."""
    with project.reading() as connection:
        level, building = read_places(connection, [opening])[opening]
    edit_facts(project, "building", building.row_id, {"occupancy_group": "B", "sprinkler": False}, who=WHO)
    edit_facts(project, "level", level.row_id, {"occupant_load": 40}, who=WHO)
    edit_facts(project, "opening", opening, {"egress_toward": "key", "code_edition": 2021}, who=WHO)


def fill_pieces(project: Project, opening: str) -> None:
    """Put something into the table that came with revision 0004; lock points come by themselves."""
    piece = {"role": "cylinder", "part": "C-1", "piece": 1, "quantity": 1.0, "source": "by-hand", "state": "planned"}
    with project.change("record-piece", "Pieces", WHO) as change:
        change.insert(ASSIGNED_PART, [{"opening_id": opening, "lock_point_id": opening, **piece, "serial": "SN-1"}])


def fill_deliveries(project: Project, opening: str) -> None:
    """Put something into what came with revision 0014: a delivery, what it asks, an opening that is retired."""
    _, gone = add_opening(project, {"mark": "W7", "level": "roof"}, who=WHO)
    retire_openings(project, [gone], why="walled up", who=WHO)
    with project.change("import-survey", "Delivery", WHO) as change:
        made = {"number": 1, "file": "doors.csv", "key": "f", "at": "2026-01-02", "person": WHO, "told": {"new": 2}}
        delivery = change.insert(DELIVERY, [made])[0]
        asked = {"kind": "blank", "mark": "0012", "fact": "hand", "content": {"before": "LH"}}
        change.insert(OPEN_QUESTION, [{"delivery_id": delivery, "opening_id": opening, **asked}])


def fill_transmittals(project: Project) -> None:
    """Put something into what came with revision 0016: what went to whom, how the office's documents look."""
    with project.change("transmit", "Transmittal", WHO) as change:
        key = hold_blob(change.connection, b"as it went out", "text/plain")
        sent = {"number": 1, "at": "2026-01-02", "person": WHO, "recipient": "Architect", "purpose": "for approval"}
        files = {"schedule.pdf": {"hash": key, "size": 14, "revision": ""}}
        change.insert(TRANSMITTAL, [{**sent, "files": files}])
    with project.change("set-office", "Office", WHO) as change:
        change.insert(OFFICE, [{"name": "office", "text": 'format = 1\npaper = "a4"\n', "files": {}}])


def restore(dump: Path, target: Path) -> None:
    """Make a project file of a saved dump."""
    with closing(sqlite3.connect(target)) as database:
        database.executescript(dump.read_text())
        database.execute(f"PRAGMA application_id = {APPLICATION_ID}")


def save(dump: Path) -> None:
    """Write the filled project as SQL."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "saved.hwsched"
        with create_project(path, "Saved yard", length_style="mm", bare_unit="mm") as project:
            fill(project)
        with closing(sqlite3.connect(path)) as database:
            dump.write_text("\n".join(database.iterdump()) + "\n")


def newest_shape() -> str:
    """Return of what the newest schema consists, as it is kept in the package."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "new.hwsched"
        create_project(path, "New").close()
        with closing(sqlite3.connect(path)) as database:
            tables = {name: sorted(phrases) for name, phrases in sorted(read_shape(database).items())}
    return json.dumps({"revision": HEAD, "tables": tables, "values": value_checks()}, indent=1) + "\n"


if __name__ == "__main__":
    NEWEST.write_text(newest_shape(), encoding="utf-8")
    newest = SAVED / f"{HEAD}.sql"
    if newest.exists():
        raise SystemExit(f"{newest} is there already and must not change")
    save(newest)
