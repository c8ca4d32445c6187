"""Every calculator declares its fields once: all are read, each refusal names its field, old names are still read."""

import copy
import re
from collections.abc import Mapping

import pytest

from hwsched.calc.calculator import InputError
from hwsched.calc.calculators import CALCULATORS

BOX = {"min": [100, 0, 1], "max": [200, 10, 20]}
ROD = {"from": [300, 1, 1], "to": [400, 2, 2], "diameter_mm": 3}
# What an example leaves out: with it every field is given, so that every one can be made wrong.
MORE = {
    "length": [{"bare_unit": "mm"}],
    "cylinder-stack": [
        {"case_offset_mm": 1, "tolerance_mm": 0.5, "max_turns_beyond": 1, "max_fits": 3, "measure_mm": 0.05},
    ],
    "placement": [
        {
            "keepouts": [
                {
                    "name": "case", "x0": 0, "y0": 0, "x1": 10, "y1": 10, "clearance_mm": 1,
                    "part": {"x0": 4, "y0": 4, "x1": 8, "y1": 8},
                }
            ]
        }
    ],
    "euro-halves": [
        {"screw_offset_mm": 1, "key_limit_mm": 4, "inside_limit_mm": 10, "half": False, "blind_mm": 10},
        {"sizes": None, "steps": {"shortest_mm": 30, "step_mm": 5, "longest_mm": 90}},
    ],
    "tailpiece": [{"case_gap_mm": 1, "break_off_mm": 3}],
    "bored-prep": [
        {
            "tolerance_mm": 1,
            "min_edge_wall_mm": 5,
            "wanted": {
                "cross_bore_mm": 53.975, "edge_bore_mm": 25.4, "leaf_low_mm": 41, "leaf_high_mm": 48,
                "latches": [{"part": "a", "backset_low_mm": 60, "backset_high_mm": 70, "length_mm": 90}],
                "bolt_holes": [{"x_mm": 0, "y_mm": 34.925, "diameter_mm": 7.9375}],
                "cross_bore_max_mm": 60, "edge_bore_max_mm": 30,
            },
            "found": {
                "leaf_mm": 44.45, "cross_bore_mm": 53.975, "edge_bore_mm": 22.225, "backset_mm": 69.85,
                "bolt_holes": [{"x_mm": 0, "y_mm": 34.925, "diameter_mm": 7.9375}],
            },
        }
    ],
    "bore": [
        {"through": False, "avoid": [ROD, BOX]},
        {"up_deg": None, "edge_deg": None, "direction": [0, 0, 1]},
    ],
    "channel": [
        {
            "hole_x_mm": 72, "lean_deg": 3, "square_diameter_mm": 8, "connector": [50, 1000, 20], "avoid": [BOX, ROD],
            "case": {"height_mm": 150, "top_above_mm": 44.45, "width_mm": 25.4, "depth_mm": 100, "offset_mm": 1},
        }
    ],
    "pocket": [{"lead_before_mm": 3, "connector_mm": 4, "offset_mm": 1, "edge_margin_mm": 2}],
    "circuit": [
        {
            "runs": [
                {"from": "supply", "to": "101", "length_m": 30, "gauge": "16 AWG", "stranding": "solid",
                 "conductors_in_parallel": 2, "extra_ohm": 0.1}
            ],
            "loads": [{"node": "101", "kind": "current", "value": 0.35, "minimum_v": 10.2, "maximum_v": 14}],
        }
    ],
    "battery-life": [
        {"temperature_factor": 0.9, "installed_on": "2025-03-01", "shelf_life_years": 3},
        {"operations_per_day": None, "operations_by_weekday": [1, 1, 1, 1, 1, 0, 0]},
    ],
    "standby": [
        {
            "ageing_factor": 1.25, "temperature_c": 10,
            "peukert": {"form": "stated-hours", "rated_hours": 20, "exponent": 1.2},
        }
    ],
    "siting": [
        {
            "openings": [{"id": name, "amps": 1.5, "maximum_m": 50} for name in ("101", "102", "103")],
            "fixed_supplies": ["closet-1"], "fixed_pairs": {"101": "closet-1"}, "gap": 0.0, "time_limit_s": 20,
        }
    ],
}  # fmt: skip
WRONG = {
    "number": "x", "integer": "x", "text": 3, "choice": "nonsense", "flag": "yes", "object": 3, "list": 3, "point": 3,
    "box": 3,
}  # fmt: skip
each_calculator = pytest.mark.parametrize("calculator", CALCULATORS, ids=lambda each: each.name)


def whole(calculator):
    """Inputs that work and together give every field."""
    data = dict(calculator.example)
    found = [data]
    for more in MORE.get(calculator.name, ()):
        found.append({**found[-1], **more})
    return found


def places(fields, data, way=(), path=""):
    """Where each declared field stands in an input: its field, its object, the way and the path to it."""
    for field in fields:
        at = f"{path}.{field.name}" if path else field.name
        value = data.get(field.name)
        if value is None:
            continue
        yield field, data, (*way, field.name), at
        if field.kind == "list" and field.fields:
            for i, item in enumerate(value):
                yield from places(field.fields, item, (*way, field.name, i), f"{at}[{i}]")
        elif field.fields:
            yield from places(field.fields, value, (*way, field.name), at)


def declared(fields, path=""):
    for field in fields:
        at = f"{path}.{field.name}" if path else field.name
        yield at
        yield from declared(field.fields, f"{at}[]" if field.kind == "list" else at)


def plain(path):
    """Path without the places in lists."""
    return re.sub(r"\[\d+\]", "[]", path)


def put(data, way, value):
    data = copy.deepcopy(data)
    held = data
    for key in way[:-1]:
        held = held[key]
    held[way[-1]] = value
    return data


def refused(calculator, data, field, *words):
    with pytest.raises(InputError) as caught:
        calculator.run(data)
    assert caught.value.field == field
    assert all(word in caught.value.message for word in words)


@each_calculator
def test_the_inputs_tried_here_work_and_give_every_field(calculator):
    given = set()
    for data in whole(calculator):
        calculator.run(data)
        given |= {plain(path) for *_, path in places(calculator.inputs, data)}
    assert given == set(declared(calculator.inputs))


@each_calculator
def test_a_name_is_declared_once(calculator):
    for fields in (calculator.inputs, calculator.outputs):
        names = list(declared(fields))
        assert len(names) == len(set(names))


class Noting(Mapping):
    """An object that notes what is asked of it."""

    def __init__(self, data, path, asked):
        self.data, self.path, self.asked = data, path, asked

    def __getitem__(self, key):
        at = f"{self.path}.{key}" if self.path else key
        self.asked.append(plain(at))
        return self._noting(self.data[key], at)

    def _noting(self, value, at):
        if isinstance(value, dict):
            return Noting(value, at, self.asked)
        if isinstance(value, list):
            return [self._noting(item, f"{at}[{i}]") for i, item in enumerate(value)]
        return value

    def __iter__(self):
        return iter(self.data)

    def __len__(self):
        return len(self.data)


@each_calculator
def test_what_is_declared_is_read_and_nothing_else(calculator):
    asked = []
    for data in whole(calculator):
        calculator.run(Noting(data, "", asked))
    names = set(declared(calculator.inputs))
    earlier = {field.earlier for field in calculator.inputs if field.earlier}
    texts_by_name = {"fixed_pairs.101"}
    assert set(asked) - texts_by_name == names | earlier


@each_calculator
def test_a_value_of_another_type_is_refused_by_its_path(calculator):
    for data in whole(calculator):
        for field, _, way, path in places(calculator.inputs, data):
            wrong = [3] if calculator.name == "length" and field.name == "text" else WRONG[field.kind]
            refused(calculator, put(data, way, wrong), path)


@each_calculator
def test_a_value_past_a_limit_is_refused_by_its_path(calculator):
    for data in whole(calculator):
        for field, held, way, path in places(calculator.inputs, data):
            within = field.within
            past = [
                (within.above, 0, "must be more than"),
                (within.at_least, -1, "must be at least"),
                (within.at_most, 1, "must be at most"),
                (within.below, 0, "must be"),
            ]
            for limit, step, words in past:
                if limit is None:
                    continue
                if isinstance(held[field.name], list):
                    refused(calculator, put(data, (*way, 0), limit + step), f"{path}[0]", words)
                else:
                    refused(calculator, put(data, way, limit + step), path, words)


@each_calculator
def test_a_field_that_must_be_given_is_missed_by_its_path(calculator):
    for data in whole(calculator):
        for field, held, way, path in places(calculator.inputs, data):
            if field.default or held.get(field.unless):
                continue
            refused(calculator, put(data, way, None), path, "is missing")
            less = copy.deepcopy(data)
            within = less
            for key in way[:-1]:
                within = within[key]
            del within[way[-1]]
            refused(calculator, less, path, "is missing")


def missed(calculator, data):
    """Field that is missing, if it is that."""
    try:
        calculator.run(data)
    except InputError as error:
        return error.field if error.message == "is missing" else None
    return None


@each_calculator
def test_a_field_with_a_default_may_be_left_out(calculator):
    for data in whole(calculator):
        for field in calculator.inputs:
            if not field.default or field.name not in data:
                continue
            less = {name: value for name, value in data.items() if name != field.name}
            # without this one another may be needed
            assert missed(calculator, less) != field.name


@each_calculator
def test_the_input_with_its_defaults_says_the_same(calculator):
    for data in whole(calculator):
        assert calculator.run(calculator.completed(data)) == calculator.run(data)


@each_calculator
def test_every_field_has_a_text(calculator):
    for fields in (calculator.inputs, calculator.outputs):
        assert all(field.text.endswith(".") for field in fields)


def named(name):
    return next(each for each in CALCULATORS if each.name == name)


@pytest.mark.parametrize(
    ("earlier", "present"), [("secured_trim_mm", "inside_trim_mm"), ("secured_limit_mm", "inside_limit_mm")]
)
def test_names_of_the_version_before_are_read(earlier, present):
    euro = named("euro-halves")
    data = {**euro.example, "inside_limit_mm": 4.0, "half": False}
    old = {earlier if name == present else name: value for name, value in data.items()}
    assert earlier in old
    assert euro.run(old) == euro.run(data)
    assert euro.completed(old) == euro.completed(data)
    refused(euro, {**data, earlier: data[present]}, present, earlier)
    refused(euro, {**old, earlier: -1}, earlier, "must be at least 0")


@pytest.mark.parametrize("name", ["bore", "channel"])
def test_the_face_of_the_version_before_is_read(name):
    calculator = named(name)
    data = {**calculator.example, "face": "inside"}
    assert calculator.run({**data, "face": "secured"}) == calculator.run(data)
    assert calculator.completed({**data, "face": "secured"})["face"] == "inside"


def test_only_these_have_earlier_names():
    found = {
        (calculator.name, field.name, field.earlier, field.earlier_words)
        for calculator in CALCULATORS
        for field in calculator.inputs
        if field.earlier or field.earlier_words
    }
    assert found == {
        ("euro-halves", "inside_trim_mm", "secured_trim_mm", ()),
        ("euro-halves", "inside_limit_mm", "secured_limit_mm", ()),
        ("bore", "face", "", (("secured", "inside"),)),
        ("channel", "face", "", (("secured", "inside"),)),
    }
