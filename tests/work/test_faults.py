"""Fault finding: what is looked at in which order, and what is expected at the door in question."""

import csv
import string
from dataclasses import replace

import pytest

from hwsched.documents.release.fault_sheet import FAULT_SHEET
from hwsched.documents.release.packet_facts import situations
from hwsched.paths import RESOURCES
from hwsched.render.blocks import Table
from hwsched.values import Catalogue
from hwsched.work.faults import STAGES, symptoms
from tests.documents.reading import texts

SEVEN = ["silent", "held", "refused", "idle", "loose", "ajar", "spent"]
ORDER = ["cells", "contacts", "key", "second", "board"]


@pytest.fixture
def at(quay):
    found = {view.mark: view for view in quay.openings}
    return lambda mark: situations(found[mark])[0]


def said(situation):
    return {symptom.name: [look.text for look in symptom.looks] for symptom in symptoms(situation)}


def with_unit(situation, **attributes):
    """Return a situation whose unit has other attributes in the catalogue."""
    unit = situation.unit
    changed = replace(unit, attributes={**unit.attributes, **attributes})
    parts = {**situation.given.catalogue.parts, unit.number: changed}
    catalogue = Catalogue(parts, "test")
    return replace(situation, given=replace(situation.given, catalogue=catalogue))


def test_a_lock_with_cylinder_shows_seven_symptoms_each_from_cells_to_board(at):
    found = symptoms(at("WOOD"))
    assert [symptom.name for symptom in found] == SEVEN
    assert list(STAGES) == ORDER
    for symptom in found:
        stages = [ORDER.index(look.stage) for look in symptom.looks]
        assert stages == sorted(stages), symptom.title


@pytest.mark.parametrize(
    ("mark", "missing"),
    [("LIFT", {"idle", "loose", "ajar"}), ("CABINET", {"loose"}), ("GATE", {"loose"}), ("RIM", set())],
)
def test_what_cannot_happen_at_an_opening_is_not_asked(at, mark, missing):
    assert set(SEVEN) - set(said(at(mark))) == missing


def test_readings_and_signals_are_those_of_the_door(at):
    wood = at("WOOD")
    unknown = said(wood)
    # The catalogue of these openings says neither the lowest voltage nor the signals.
    assert "unknown: needs part UNIT, lowest and highest pack voltage" in unknown["silent"][0]
    assert "unknown: needs part UNIT, light and tone when it opens" in unknown["refused"][0]
    known = said(
        with_unit(
            wood, pack_low_v=5.4, pack_high_v=12.0, signal_opens="green, two short tones", signal_refuses="red",
            signal_weak="five tones",
        )
    )  # fmt: skip
    assert "5.4 to 12 V" in known["silent"][0]
    assert "green, two short tones; when it is refused: red" in known["refused"][0]
    assert "five tones" in known["held"][0]
    # 2500 mAh by 80 % over 6.44 a day and 3 % a year: 300 whole days.
    assert "300 days" in known["spent"][0]


def test_where_the_cam_stands_and_what_nobody_knows_is_said(at):
    """CYL goes in by 28 turns, its cam at the case's centre; by one more it would stand one turn beyond."""
    wood = at("WOOD")
    beyond = replace(wood, fit=replace(wood.fit, stack=replace(wood.fit.stack, turns=1)))
    for s, cam in ((wood, "at centre"), (beyond, "1 turn beyond centre")):
        assert any(cam in text for texts in said(s).values() for text in texts)
    bare = replace(wood, fit=replace(wood.fit, battery=None, stack=None))
    told = [text for texts in said(bare).values() for text in texts]
    assert any("unknown: needs the use of the opening" in text for text in told)
    assert any("unknown: needs the cylinder's length and thread" in text for text in told)
    standing = [text for texts in said(with_unit(wood, standing_ua=60.0)).values() for text in texts]
    assert any("60 µA" in text for text in standing)
    silent = [text for texts in said(with_unit(wood, standing_ua=None)).values() for text in texts]
    assert any("unknown: needs the unit's standing current" in text for text in silent)


def test_a_supply_is_measured_where_there_are_no_cells(at):
    wood = at("WOOD")
    supplied = replace(wood, fit=replace(wood.fit, power="supply", battery=None))
    found = said(supplied)
    assert "spent" not in found
    assert "terminals" in found["silent"][0]
    assert not any("fresh cells" in text for text in found["silent"])


def test_the_table_is_whole():
    with (RESOURCES / "service" / "faults.csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    assert {row["source"] for row in rows} <= {"common practice", "from memory"}
    assert {row["stage"] for row in rows} == set(ORDER)
    assert list(dict.fromkeys(row["symptom"] for row in rows)) == SEVEN
    assert len({(row["symptom"], row["title"]) for row in rows}) == len(SEVEN)
    fields = {name for row in rows for _, name, _, _ in string.Formatter().parse(row["look"]) if name}
    assert fields <= {"resting", "working", "opens", "refuses", "weak", "standing", "life", "turns", "cam"}


def test_the_sheet_says_what_is_from_memory_and_that_egress_comes_first(quay):
    wood = next(view for view in quay.openings if view.mark == "WOOD")
    document = FAULT_SHEET.build(quay, wood)
    tables = [block for section in document.sections for block in section.blocks if isinstance(block, Table)]
    assert len(tables) == len(SEVEN)
    lines = texts(document)
    from_memory = sum(
        look.source == "from memory" for symptom in symptoms(situations(wood)[0]) for look in symptom.looks
    )
    assert sum("(From memory, unverified.)" in line for line in lines) == from_memory > 0
    assert not any("Egress first" in line for line in lines), "WOOD is on no egress path"
    way_out = replace(wood.given, opening=replace(wood.given.opening, egress="egress"))
    asked = replace(wood, given=way_out, points=(replace(wood.points[0], given=way_out),))
    assert any("Egress first" in line for line in texts(FAULT_SHEET.build(quay, asked)))
    unseen = next(view for view in quay.openings if view.mark == "UNSEEN")
    assert "No fit of this opening counts" in " ".join(texts(FAULT_SHEET.build(quay, unseen)))
