"""Every part kind: registered under its file's name, declared without contradiction, in the words of the notes."""

import importlib
import pkgutil
import re

import pytest

import hwsched.catalogue as package
from hwsched.attributes import normal
from hwsched.attributes.values import choice_words
from hwsched.catalogue import KINDS, PartKind, kind_of
from hwsched.catalogue.traits.entry import ENTRY, ON_HAND
from hwsched.survey.item import CAM_FORMS
from hwsched.survey.leaf import MATERIALS
from hwsched.survey.opening import OPENING
from hwsched.values import Part

NOT_KINDS = {"kind", "traits", "validation"}
SUFFIX = {
    "_mm": ("length", "mm"), "_ma": ("number", "mA"), "_ua": ("number", "uA"), "_v": ("number", "V"),
    "_a": ("number", "A"), "_mah": ("number", "mAh"), "_ah": ("number", "Ah"), "_s": ("number", "s"),
    "_n": ("number", "N"), "_share": ("number", "share"), "_m": ("number", "m"), "_c": ("number", "degC"),
}  # fmt: skip

# What fitting, rules and documents rely on: names that must be filled in, kind by kind.
REQUIRED = {
    "mortise-cylinder": "length_mm cam_offset_mm thread_pitch_mm cam_fixing lead_mm connector",
    "rim-cylinder": "tail_form tail_length_mm lead_mm connector",
    "euro-cylinder": "key_half_mm inside_half_mm cam_form lead_mm connector",
    "cabinet-lock": "thread_diameter_mm grip_mm lead_mm connector",
    "fixed-reader": "hole_mm face_width_mm face_height_mm lead_mm connector",
    "bored-lever-lock": "backset_mm cross_bore_mm edge_bore_mm leaf_low_mm leaf_high_mm function lead_mm connector",
    "gate-lock": "mounting case_width_mm case_height_mm",
    "surface-unit": (
        "housing plate_width_mm plate_height_mm depth_mm window_x0_mm window_y0_mm window_x1_mm window_y1_mm "
        "connector_x_mm connector_y_mm mates_with slack_mm standing_ua operation_ma operation_s"
    ),
    "edge-unit": (
        "pocket_length_mm pocket_depth_mm pocket_width_mm connector_y_mm mates_with service_mm standing_ua "
        "operation_ma operation_s"
    ),
    "cam": "fits cam_form",
    "tailpiece": "fits tail_form length_mm",
    "collar": "height_mm",
    "ring": "height_mm",
    "lead-extension": "length_mm connector mates_with",
    "power-supply": "output_v output_a",
    "standby-battery": "voltage_v capacity_ah",
    "primary-battery": "designation voltage_v capacity_mah usable_share self_discharge_share",
    "coin-cell": "designation voltage_v capacity_mah",
    "power-transfer": "form conductors gauge",
    "wire": "gauge conductors stranding",
    "electric-strike": "supply_v holding_a fail",
    "electromagnetic-lock": "supply_v holding_a",
    "electrified-lock": "form supply_v holding_a fail",
    "mounting": "form",
    "fastener": "form size",
    "tool": "form",
    "consumable": "form",
    "credential": "form",
}


def test_every_file_is_registered_under_its_name():
    found = {}
    for module in pkgutil.iter_modules(package.__path__):
        if module.name not in NOT_KINDS:
            content = importlib.import_module(f"hwsched.catalogue.{module.name}")
            found[module.name] = getattr(content, module.name.upper())
    assert {name.replace("_", "-"): kind for name, kind in found.items()} == {kind.name: kind for kind in KINDS}
    assert {kind.name for kind in KINDS} >= REQUIRED.keys()


def test_kinds_are_found_by_name():
    assert all(kind_of(kind.name) is kind for kind in KINDS)
    assert kind_of("trapdoor") is None
    assert kind_of("cam").attribute("fits").required
    with pytest.raises(KeyError):
        kind_of("cam").attribute("length_mm")


def test_sheets_can_be_told_apart_and_be_named():
    labels = [word for kind in KINDS for word in {normal(kind.label), normal(kind.name)}]
    assert len(labels) == len(set(labels))
    for kind in KINDS:
        assert 0 < len(kind.label) <= 31
        assert not re.search(r"[\[\]:*?/\\']", kind.label)


def test_the_columns_of_every_sheet_are_the_fields_of_a_part():
    fields = set(Part.__slots__) - {"kind", "attributes", "kit"}
    assert {attribute.name for attribute in (*ENTRY, *ON_HAND)} == fields


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
class TestEveryKind:
    def test_what_must_be_filled_in(self, kind: PartKind):
        required = {a.name for a in kind.attributes if a.required}
        # Of a kind that nothing relies on yet it is enough that something must be filled in.
        assert required == set(REQUIRED[kind.name].split()) if kind.name in REQUIRED else required

    def test_it_says_what_it_is(self, kind):
        assert kind.note.endswith(".")

    def test_headers_are_understood_in_one_way(self, kind):
        labels = [normal(a.label) for a in (*ENTRY, *kind.attributes, *ON_HAND)]
        assert len(labels) == len(set(labels))
        names = [a.name for a in (*ENTRY, *kind.attributes, *ON_HAND)]
        assert len(names) == len(set(names))
        # A synonym or name may be another's label, which wins; no two attributes may claim it otherwise.
        claims = {}
        for attribute in (*ENTRY, *kind.attributes, *ON_HAND):
            for word in {normal(w) for w in (attribute.name, *attribute.synonyms)} - set(labels):
                assert claims.setdefault(word, attribute.name) == attribute.name

    def test_names_carry_the_unit_that_is_declared(self, kind):
        for attribute in kind.attributes:
            suffix = next((s for s in sorted(SUFFIX, key=len, reverse=True) if attribute.name.endswith(s)), None)
            if attribute.kind == "length":
                assert attribute.name.endswith("_mm")
            if suffix:
                assert (attribute.kind, attribute.unit) == SUFFIX[suffix], attribute.name

    def test_numbers_have_limits(self, kind):
        for attribute in kind.attributes:
            if attribute.kind in ("length", "number", "integer") and attribute.unit != "degC":
                assert attribute.low is not None, attribute.name
            if attribute.low is not None and attribute.high is not None:
                assert attribute.low < attribute.high, attribute.name

    def test_choices_have_words_of_their_own(self, kind):
        for attribute in kind.attributes:
            assert bool(attribute.choices) == (attribute.kind == "choice"), attribute.name
            values = set(choice_words(attribute).values())
            assert values == {choice.value for choice in attribute.choices}
            assert all(re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", value) for value in values)


def test_leaf_materials_are_those_of_the_survey():
    for name in ("fastener", "tool", "consumable"):
        choices = kind_of(name).attribute("leaf_material").choices
        assert [c.value for c in choices] == [c.value for c in MATERIALS], name


def test_walls_are_those_of_the_survey_word_for_word():
    """A wall that the survey has as brick finds the plugs that the catalogue has for brick."""
    wall = next(attribute for attribute in OPENING.attributes if attribute.name == "wall_build")
    assert kind_of("fastener").attribute("wall_build").choices == wall.choices
    assert choice_words(wall)["brick"] == "masonry"


def test_cam_and_tail_forms_are_those_of_the_survey():
    declared = [
        *kind_of("cam").attribute("cam_form").choices,
        *kind_of("euro-cylinder").attribute("cam_form").choices,
        *kind_of("tailpiece").attribute("tail_form").choices,
    ]
    assert [c.value for c in declared] == [c.value for c in CAM_FORMS]
    assert kind_of("rim-cylinder").attribute("tail_form") == kind_of("tailpiece").attribute("tail_form")
