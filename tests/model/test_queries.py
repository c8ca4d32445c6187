"""Reading a project into plain values."""

import contextlib
import json
from dataclasses import replace
from decimal import Decimal

import pytest
from sqlalchemy import delete, select

from hwsched.fingerprint import Engine
from hwsched.model.catalogue_memory import CatalogueMemory
from hwsched.model.catalogue_writing import write_parts
from hwsched.model.errors import DamagedProjectError
from hwsched.model.levels import levels_for
from hwsched.model.project import open_project
from hwsched.model.queries import (
    StoredFit,
    latest_change,
    opening_ids,
    read_catalogue,
    read_extra,
    read_fits,
    read_inputs,
    read_levels,
    read_mapping,
    read_own_fields,
    read_settings,
    read_versions,
)
from hwsched.model.tables import (
    BUILDING,
    CHOSEN_PART,
    FIT_CONTENT,
    IMPORT_MAPPING,
    ITEM_TABLE,
    LEAF_TABLE,
    LEVEL,
    OPENING_TABLE,
    OWN_FIELD,
    PLACED_UNIT,
    PROJECT,
)
from hwsched.operations.opening.storing_fits import pointers, store_fits
from hwsched.telling.natural import natural
from hwsched.values import BatteryLife, Chosen, Fit, FitPart, HandPlacement, Leaf, Part, Placement, Settings
from hwsched.values.facts_read import FactsRead


def change(project):
    return project.change("test", "A test", "ann")


@pytest.fixture
def filled(project):
    """Five openings on three places; returns their identifiers by mark."""
    with change(project) as made:
        places = [("Mill", "2"), ("Mill", "10"), (None, None), ("Mill", None), (None, "roof")]
        levels = levels_for(made, set(places))
        marks = ["M10", "M2", "9E4", "0012", "x/y"]
        ids = made.insert(
            OPENING_TABLE,
            [
                {"mark": mark, "level_id": levels[place], "hand": "LH"}
                for mark, place in zip(marks, places, strict=True)
            ],
        )
        made.insert(
            LEAF_TABLE,
            [
                {"opening_id": ids[0], "ordinal": 1, "position": "inactive", "width_mm": 600.0},
                {"opening_id": ids[0], "ordinal": 0, "position": "active", "width_mm": 914.4},
            ],
        )
        made.insert(
            ITEM_TABLE,
            [
                {"opening_id": ids[1], "ordinal": 2 - n, "kind": kind}
                for n, kind in enumerate(["lock", "closer", "lite"])
            ],
        )
    with change(project) as made:
        at = {"opening_id": ids[1], "lock_point_id": ids[1]}
        made.insert(CHOSEN_PART, [{**at, "role": "unit", "part": "U-1", "quantity": 2.0}])
        place = {"leaf": "single", "face": "key", "pattern": "above", "x_mm": 1.5, "y_mm": 2.5}
        made.insert(PLACED_UNIT, [{**at, **place}])
    return dict(zip(marks, ids, strict=True))


def test_cases_hold_every_fact(project, filled):
    with project.reading() as connection:
        inputs = {given.opening.mark: given for given in read_inputs(connection)}
    pair, single = inputs["M10"], inputs["M2"]
    assert (pair.opening.id, pair.opening.building, pair.opening.level, pair.opening.hand) == (
        filled["M10"],
        "Mill",
        "2",
        "LH",
    )
    assert [leaf.width_mm for leaf in pair.leaves] == [914.4, 600.0]
    assert isinstance(pair.leaves[0], Leaf)
    assert [item.kind for item in single.items] == ["lite", "closer", "lock"]
    assert single.chosen == (Chosen("unit", "U-1", 2.0),)
    assert single.placed == HandPlacement("single", "key", "above", 1.5, 2.5)
    assert (inputs["9E4"].opening.building, inputs["9E4"].opening.level) == (None, None)
    assert (inputs["x/y"].opening.building, inputs["x/y"].opening.level) == (None, "roof")
    assert (inputs["0012"].leaves, inputs["0012"].items, inputs["0012"].placed) == ((), (), None)


def test_cases_stand_in_the_order_of_places_and_marks(project, filled):
    with project.reading() as connection:
        assert [given.opening.mark for given in read_inputs(connection)] == ["9E4", "x/y", "0012", "M10", "M2"]


def test_levels_come_as_one_walks_up_where_their_heights_are_known(project):
    """By its name the ground floor would come after the third; a level of unknown height comes last."""
    with change(project) as made:
        heights = {"Ground": 0.0, "1": 4.2, "2": 8.0, "Loft": None}
        levels = levels_for(made, {("Mill", name) for name in heights})
        made.update(LEVEL, [(levels["Mill", name], {"height_m": high}) for name, high in heights.items()])
        rows = [{"mark": f"M-{name}", "level_id": levels["Mill", name]} for name in ("Loft", "2", "1", "Ground")]
        made.insert(OPENING_TABLE, rows)
    with project.reading() as connection:
        found = [given.opening.mark for given in read_inputs(connection)]
    assert found == ["M-Ground", "M-1", "M-2", "M-Loft"]


def test_some_cases_only(project, filled):
    with project.reading() as connection:
        inputs = list(read_inputs(connection, [filled["M2"], filled["M10"], "gone"]))
        assert [given.opening.mark for given in inputs] == ["M10", "M2"]
        assert len(inputs[1].items) == 3
        assert list(read_inputs(connection, [])) == []


@pytest.mark.parametrize(
    ("marks", "expected"),
    [
        (["M10", "M2", "M1a", "M1"], ["M1", "M1a", "M2", "M10"]),
        (["12", "0012", "9"], ["9", "0012", "12"]),
        (["b", "A", "a1", ""], ["", "A", "a1", "b"]),
        (["2" * 5000, "1" * 5000, "٣"], ["1" * 5000, "2" * 5000, "٣"]),
    ],
)
def test_marks_sort_as_people_count(marks, expected):
    assert sorted(marks, key=natural) == expected


def test_places_are_made_once(project):
    places = {("Mill", "2"), ("Mill", None), ("Store", "2"), (None, "roof"), (None, None)}
    with change(project) as made:
        first = levels_for(made, places)
    with change(project) as made:
        assert levels_for(made, places) == first
    assert made.number is None
    assert first[None, None] is None
    assert len(set(first.values())) == 5
    with project.reading() as connection:
        assert read_levels(connection) == {place: row_id for place, row_id in first.items() if row_id}
        assert connection.execute(select(BUILDING.c.name).order_by(BUILDING.c.name)).scalars().all() == [
            "Mill",
            "Store",
        ]
        assert sorted(connection.execute(select(LEVEL.c.sort)).scalars()) == [0, 1, 2, 3]


PARTS = [
    Part("C-1", "mortise-cylinder", "Cylinder", "Own", "626", "EA", Decimal("10.5"), "EUR", "C-2",
         {"length_mm": 28.575}, (("S", 2.0),)),
    Part("C-2", "mortise-cylinder", attributes={"fire_listed": True, "cam_fixing": "two-screw"}),
]  # fmt: skip


def test_a_catalogue_comes_back_whole(project):
    with change(project) as made:
        assert write_parts(made, PARTS, "catalogue.xlsx") == (2, 0)
    with project.reading() as connection:
        catalogue = read_catalogue(connection)
    assert list(catalogue.parts.values()) == PARTS


def test_a_catalogue_written_again_is_no_step(project):
    with change(project) as made:
        write_parts(made, PARTS, "catalogue.xlsx")
    with change(project) as made:
        assert write_parts(made, PARTS, "catalogue.xlsx") == (0, 0)
    assert made.number is None


def test_a_catalogue_changes_by_part_and_by_kit(project):
    with change(project) as made:
        write_parts(made, PARTS, "catalogue.xlsx")
    keys = []
    for other in (
        Part("C-2", "mortise-cylinder", attributes={"fire_listed": False, "cam_fixing": "two-screw"}),
        Part("C-2", "mortise-cylinder", kit=(("S", 1.0), ("T", 1.0))),
        Part("C-2", "mortise-cylinder", kit=(("T", 2.0),)),
    ):
        with change(project) as made:
            assert write_parts(made, [other], "other.xlsx") == (0, 1)
        assert made.parts == {"C-2"}
        with project.reading() as connection:
            catalogue = read_catalogue(connection)
        assert catalogue.parts["C-2"] == other
        keys.append(catalogue.key)
    assert len(set(keys)) == 3


def test_the_catalogue_in_memory_is_read_again_after_a_change_only(project, address):
    with change(project) as made:
        write_parts(made, PARTS, "catalogue.xlsx")
    memory = CatalogueMemory()
    with project.reading() as connection:
        first = memory.read(connection)
        assert memory.read(connection) is first
    with change(project) as made:
        made.insert(OPENING_TABLE, [{"mark": "1"}])
    with project.reading() as earlier:
        assert memory.read(earlier) is first
        with change(project) as made:
            write_parts(made, [Part("C-3", "cam")], "more.xlsx")
        with open_project(address) as other, other.reading() as connection:
            second = memory.read(connection)
            assert "C-3" in second.parts
        # The earlier transaction goes on seeing what it saw, and spoils nothing for others.
        assert "C-3" not in memory.read(earlier).parts
    with project.reading() as connection:
        assert memory.read(connection) is second
        assert project.catalogue.read(connection).key == second.key


def test_the_catalogue_in_memory_knows_a_kit_that_changed_alone(project):
    memory = CatalogueMemory()

    def kit_now():
        with project.reading() as connection:
            return memory.read(connection).parts["C-9"].kit

    plain = Part("C-9", "cam", "Cam")
    # Put in, more of it, something else, taken out: each time nothing but the kit changes.
    for kit in ((), (("S", 1.0),), (("S", 4.0),), (("T", 4.0),), ()):
        with change(project) as made:
            write_parts(made, [replace(plain, kit=kit)], "kits.xlsx")
        assert kit_now() == kit


def test_what_a_change_set_in_the_making_sees_of_the_catalogue_is_not_remembered(project, address):
    with change(project) as made:
        write_parts(made, PARTS, "catalogue.xlsx")
    memory = CatalogueMemory()
    with contextlib.suppress(ZeroDivisionError), change(project) as made:
        write_parts(made, [Part("C-3", "cam")], "more.xlsx")
        assert "C-3" in memory.read(made.connection).parts
        raise ZeroDivisionError
    # The number of the change set that was rolled back goes to the next one.
    with open_project(address) as other, change(other) as made:
        write_parts(made, [Part("C-4", "cam")], "other.xlsx")
    with project.reading() as connection:
        assert set(memory.read(connection).parts) == {*(part.number for part in PARTS), "C-4"}


def test_settings(project):
    with project.reading() as connection:
        assert read_settings(connection) == Settings()
    with change(project) as made:
        held = {"limits": {"reach.low_mm": 864.0}, "rules_off": ["reach"], "prefer": "holes"}
        made.update(PROJECT, [(project.id, {"length_style": "mm", "settings": held})])
    with project.reading() as connection:
        assert read_settings(connection) == Settings("mm", {"reach.low_mm": 864.0}, frozenset({"reach"}), "holes")


ENGINE = Engine("e1", "0.1.0", {"fitting": "f", "keys": "k"})
READ = FactsRead(opening=("form", "hand"), kinds=("cam",))


def test_fits_are_stored_once_each(project, filled):
    ids = list(filled.values())
    one, two = Fit("fits", cost=12.5), Fit("to-measure")
    with change(project) as made:
        alike = StoredFit("k1", Fit("fits", cost=12.5), ENGINE, READ)
        store_fits(made, {ids[0]: StoredFit("k1", one, ENGINE, READ), ids[1]: alike, ids[2]: StoredFit("k2", two)})
    assert made.openings == set(ids[:3])
    with project.reading() as connection:
        fits = read_fits(connection)
        assert {opening: (stored.input_key, stored.fit) for opening, stored in fits.items()} == {
            ids[0]: ("k1", one),
            ids[1]: ("k1", one),
            ids[2]: ("k2", two),
        }
        assert fits[ids[0]].fit is fits[ids[1]].fit
        assert [fits[each].engine for each in ids[:3]] == [ENGINE, ENGINE, None]
        assert [each and (each.text, each.key) for each in (fits[i].read for i in ids[:3])] == [
            (READ.text, READ.key), (READ.text, READ.key), None,
        ]  # fmt: skip
        assert pointers(connection, ids) == {each: fits[each].pointer for each in ids[:3]}
        assert set(read_fits(connection, [ids[2], ids[4]])) == {ids[2]}
        assert connection.exec_driver_sql("SELECT count(*) FROM fit_content").scalar() == 2
        contents = connection.exec_driver_sql("SELECT status, content FROM fit_content").all()
    assert all(json.loads(content)["status"] == status for status, content in contents)
    with change(project) as made:
        store_fits(made, {ids[0]: StoredFit("k1", one, ENGINE, READ), ids[2]: StoredFit("k3", two)})
    assert made.openings == {ids[2]}
    with change(project) as made:
        store_fits(made, {})
    assert made.number is None


def test_small_things(project, filled):
    with change(project) as made:
        made.insert(OWN_FIELD, [{"entity": "part", "name": "bin", "label": "Bin", "kind": "text"}])
        made.insert(IMPORT_MAPPING, [{"fingerprint": "f", "mapping": {"A": "opening.mark"}}])
        made.update(OPENING_TABLE, [(filled["M2"], {"extra": {"seal": "red"}})])
    with project.reading() as connection:
        assert latest_change(connection) == 3
        assert opening_ids(connection) == filled
        assert [(field.name, field.unit, field.choices) for field in read_own_fields(connection)] == [("bin", "", ())]
        assert read_mapping(connection, "f") == {"A": "opening.mark"}
        assert read_mapping(connection, "g") is None
        assert read_extra(connection, OPENING_TABLE) == {filled["M2"]: {"seal": "red"}}
        assert read_versions(connection, OPENING_TABLE, [filled["M2"], filled["M10"]]) == {
            filled["M2"]: 2,
            filled["M10"]: 1,
        }


def test_a_new_project_has_no_change(project):
    with project.reading() as connection:
        assert latest_change(connection) == 0
        assert list(read_inputs(connection)) == []


def test_fits_that_differ_in_their_battery_only_share_one_content(project, filled):
    ids = list(filled.values())[:3]
    one = Fit("fits", cost=Decimal("12.5"), battery=BatteryLife(100.0, 2.0, 500.0, 0.5))
    other = replace(one, battery=BatteryLife(50.0, 4.0, 500.0, 0.5))
    without = replace(one, battery=None)
    with change(project) as made:
        store_fits(made, {ids[0]: StoredFit("a", one), ids[1]: StoredFit("a", other), ids[2]: StoredFit("a", without)})
    with project.reading() as connection:
        stored = read_fits(connection)
        assert connection.exec_driver_sql("SELECT count(*) FROM fit_content").scalar() == 1
        assert pointers(connection, ids) == {each: stored[each].pointer for each in ids}
    assert [stored[each].fit for each in ids] == [one, other, without]
    assert stored[ids[0]].shared is stored[ids[1]].shared is stored[ids[2]].fit
    assert len({each.pointer for each in stored.values()}) == 3


def test_fits_that_differ_in_their_place_only_share_all_else(project, filled):
    ids = list(filled.values())[:3]
    parts = (FitPart("cylinder", "C-1", "mortise-cylinder", 1.0, "why"),)
    place = Placement("single", "inside", "above", 20.0, 1100.0, 100.0, 200.0, 70.0, 1150.0)
    low = Fit("fits", parts, placement=place, battery=BatteryLife(100.0, 2.0, 500.0, 0.5))
    high, bare = replace(low, placement=replace(place, y_mm=1200.0)), Fit("fits", parts)
    with change(project) as made:
        store_fits(made, {each: StoredFit("k", fit) for each, fit in zip(ids, (low, high, bare), strict=True)})
    with project.reading() as connection:
        held = read_fits(connection)
        stored = [held[each] for each in ids]
        # Two places, what they share, and the one without a place: it says just that.
        assert connection.exec_driver_sql("SELECT count(*) FROM fit_content").scalar() == 3
    assert [each.fit for each in stored] == [low, high, bare]
    assert stored[0].fit.parts is stored[1].fit.parts
    assert len({each.fit_key for each in stored}) == 3
    assert {each.common_key for each in stored} == {stored[2].fit_key}


def test_a_fit_whose_common_content_is_gone_is_named(project, filled):
    place = Placement("single", "inside", "above", 20.0, 1100.0, 100.0, 200.0, 70.0, 1150.0)
    with change(project) as made:
        store_fits(made, {filled["M2"]: StoredFit("k", Fit("fits", placement=place))})
    with project.reading() as connection:
        key = read_fits(connection)[filled["M2"]].fit_key
    with project.change("damage", "Damage", who="t") as made:
        made.connection.execute(delete(FIT_CONTENT).where(FIT_CONTENT.c.key != key))
    with project.reading() as connection, pytest.raises(DamagedProjectError, match=f"table fit_content, row {key}"):
        read_fits(connection)
