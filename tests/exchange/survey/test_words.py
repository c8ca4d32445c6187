"""What headers mean."""

import pytest

from hwsched.attributes import Attribute
from hwsched.exchange.survey.mapping import Target, fingerprint_of, header_keys, target_of
from hwsched.exchange.survey.words import Vocabulary, split_unit
from hwsched.survey import ENTITIES

WORDS = Vocabulary()


@pytest.mark.parametrize(
    ("header", "target", "unit"),
    [
        ("DOOR #", "opening.mark", ""),
        ("Door No.", "opening.mark", ""),
        ("Int / Ext", "opening.exposure", ""),
        ("Thickness (in)", "leaf.thickness_mm", "in"),
        ("Width [mm]", "leaf.width_mm", "mm"),
        ("Width, mm", "leaf.width_mm", "mm"),
        ('Height (")', "leaf.height_mm", "in"),
        ("Leaf\nwidth\n(in.)", "leaf.width_mm", "in"),
        ("Cyl height in inches", "existing_item.cylinder_height_mm", "in"),
        ("Hand (LH/RH)", "opening.hand", ""),
        ("Lowest temperature (°F)", "opening.temperature_low_c", "degF"),
        ("Distance to supply (ft)", "opening.supply_distance_m", "ft"),
        ("Inactive leaf width", "leaf.width_mm@inactive", ""),
        ("Active thickness", "leaf.thickness_mm@active", ""),
        ("Lite width", "existing_item.width_mm@lite", ""),
        ("Closer above floor", "existing_item.y_mm@closer", ""),
        ("Size", "leaf.size", ""),
    ],
)
def test_headers_are_understood(header, target, unit):
    meaning = WORDS.meaning(header)
    assert meaning.target is not None
    assert (meaning.target.text(), meaning.unit) == (target, unit)


@pytest.mark.parametrize("header", ["", "Colour", "Closer height", "Trim in", "Photo no of the closer", "12"])
def test_headers_without_a_sure_meaning_have_none(header):
    assert WORDS.meaning(header).target is None


@pytest.mark.parametrize(
    ("parent", "child", "target"),
    [
        ("Leaf", "Width", "leaf.width_mm"),
        ("Door", "Material", "leaf.material"),
        ("Frame", "Material", "opening.frame_material"),
        ("Dimensions", "Height", "leaf.height_mm"),
        ("Inactive leaf", "Width", "leaf.width_mm@inactive"),
        ("Existing item", "Width", "existing_item.width_mm"),
        ("Hardware", "Notes", "existing_item.item_notes"),
        ("Lock", "Backset", "existing_item.backset_mm"),
        ("Lock", "Height", "existing_item.cylinder_height_mm"),
        ("Closer", "Face", "existing_item.face@closer"),
        ("Lite", "Width", "existing_item.width_mm@lite"),
        ("Mark", "", "opening.mark"),
    ],
)
def test_a_heading_above_decides(parent, child, target):
    meaning = WORDS.meaning(child, parent)
    assert meaning.target is not None
    assert meaning.target.text() == target


@pytest.mark.parametrize(("parent", "child"), [("Frame", "Width"), ("Rough opening", "Height"), ("Glass", "Thickness")])
def test_what_another_thing_measures_is_not_the_leafs(parent, child):
    assert WORDS.meaning(child, parent).target is None


def test_the_unit_of_a_heading_reaches_its_columns():
    assert WORDS.meaning("Width", "Leaf (mm)").unit == "mm"
    assert WORDS.meaning("Width (in)", "Leaf (mm)").unit == "in"


def test_every_declared_label_and_synonym_means_its_own_fact():
    for entity in ENTITIES:
        for attribute in entity.attributes:
            for word in (attribute.label, *attribute.synonyms):
                target = WORDS.meaning(word).target
                assert target is not None
                assert (target.entity, target.attribute) == (entity.name, attribute.name), word


def test_fields_of_the_projects_own_stand_between_labels_and_synonyms():
    own = Vocabulary({"opening": (Attribute("key_group", "Key group"), Attribute("where_is", "Location"))})
    assert own.meaning("KEY GROUP").target == Target("opening", "key_group")
    assert own.meaning("Location").target == Target("opening", "where_is")
    assert Vocabulary({"opening": (Attribute("mine", "Mark"),)}).meaning("Mark").target == Target("opening", "mark")


def test_units_are_split_off():
    assert split_unit("Thickness (in)") == ("Thickness", "in")
    assert split_unit("Trim in") == ("Trim in", "")
    assert split_unit("Rating (label)") == ("Rating (label)", "")


def test_targets_are_written_and_read():
    for text in ("opening.mark", "leaf.width_mm@inactive"):
        assert target_of(text).text() == text
    for text in ("mark", "opening.", ""):
        with pytest.raises(ValueError, match="is no target"):
            target_of(text)


def test_a_header_is_known_again_whatever_its_case_and_blanks():
    assert fingerprint_of(["Mark", "Leaf  Width"]) == fingerprint_of(["MARK", "leaf width "])
    assert fingerprint_of(["Mark", "Width"]) != fingerprint_of(["Width", "Mark"])
    assert header_keys(["Notes", "Mark", "notes"]) == ["notes", "mark", "notes#2"]
