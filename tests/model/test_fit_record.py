"""Fits as text and back: nothing lost, nothing strange let in."""

import dataclasses
import json
from decimal import Decimal
from types import MappingProxyType

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hwsched.model.fit_record import (
    COMMON,
    FitRecordError,
    fit_of,
    fit_text,
    fit_texts,
    in_place,
    text_key,
    with_battery,
)
from hwsched.values import (
    Alternative,
    BatteryLife,
    CablePath,
    Fit,
    FitPart,
    Hole,
    Need,
    Placement,
    Refusal,
    RunnerUp,
    Stack,
)
from hwsched.values.earlier_words import in_present_words

NUMBERS = st.floats(allow_nan=False, allow_infinity=False)
st.register_type_strategy(float, NUMBERS)
st.register_type_strategy(Decimal, st.decimals(0, 10**9, places=6).map(lambda d: d.normalize()))

RICH = Fit(
    "fits",
    parts=(
        FitPart("cylinder", "C-1", "mortise-cylinder", 1.0, "leaf of 44.45 mm, “quoted” ½″", "Cylinder"),
        FitPart("fastener", "S-6", "fastener", 4.0, "plate", source="by-hand"),
    ),
    stack=Stack("threaded", 4.7625, 0.1, 2, ("R-1", "R-2"), 0.0, 30.0, 35.0),
    placement=Placement(
        "active", "inside", "above", 20.0, 1100.5, 100.0, 200.0, 69.85, 1150.0,
        alternatives=(Alternative("below", 1.0, 2.0, 300.5, 2.0),), clearances=(("lever", 4.7625), ("edge", 20.0)),
    ),
    cable=CablePath(((0.0, 0.1, 0.2), (1e-9, 1e300, -5.5)), 210.25, 228.6, 18.35, (("case", 80.0),)),
    holes=(
        Hole("cable", "active", "inside", 69.85, 1150.0, 12.7, 6.35, None, 10.0, -15.0, (0.0, 63.5), "spade bit",
             order=1),
        Hole("screw", "active", "inside", 30.0, 1120.0, 2.8, depth_mm=25.0, count=4),
    ),
    power="battery",
    battery=BatteryLife(400.5, 2.5, 1500.0, 0.7),
    refused=(Refusal("C-2", "cylinder", "stack-recessed", "short", MappingProxyType({"short_mm": 3.2, "k": 2.0})),),
    needs=(Need("leaf.thickness_mm", "Leaf thickness", "the cylinder"),),
    cost=Decimal("123.45"), currency="USD", cost_needs=("list price (X)",),
    runners_up=(RunnerUp(("C-9",), "above", "battery", Decimal("0.1"), 2, ("exchange rate EUR to USD",)),),
)  # fmt: skip


def test_a_rich_fit_comes_back_whole():
    assert fit_of(json.loads(fit_text(RICH))) == RICH


@settings(max_examples=60, deadline=None)
@given(st.from_type(Fit))
def test_any_fit_comes_back_whole(fit):
    assert fit_of(json.loads(fit_text(fit))) == fit
    assert put_together(fit_texts(fit)) == fit


def put_together(texts):
    """As who reads the three texts of a fit does."""
    content = json.loads(texts.content)
    common = content.pop(COMMON, None)
    assert common == (None if texts.common is None else text_key(texts.common))
    fit = fit_of(content) if common is None else in_place(fit_of(json.loads(texts.common)), fit_of(content))
    return fit if texts.battery is None else with_battery(fit, json.loads(texts.battery))


def test_what_is_elsewhere_only_shares_all_but_its_place():
    texts = fit_texts(RICH)
    assert put_together(texts) == RICH
    higher = dataclasses.replace(RICH, placement=dataclasses.replace(RICH.placement, y_mm=1200.0), holes=RICH.holes[:1])
    other = fit_texts(dataclasses.replace(higher, cable=None))
    assert (other.common, other.battery) == (texts.common, texts.battery)
    assert other.content != texts.content
    assert set(json.loads(texts.content)) == {"status", COMMON, "placement", "cable", "holes"}
    assert fit_texts(dataclasses.replace(RICH, placement=None)).common is None


def test_its_text_is_the_same_for_the_same_fit_and_says_no_default():
    assert fit_text(dataclasses.replace(RICH)) == fit_text(RICH)
    assert fit_text(Fit("to-measure")) == '{"status":"to-measure"}'
    assert fit_text(Fit("fits", cost=Decimal("2.50"))) == '{"status":"fits","cost":"2.5"}'


def test_a_cost_that_an_earlier_version_wrote_as_a_float_is_taken_as_it_is_written():
    assert fit_of({"status": "fits", "cost": 12.1}).cost == Decimal("12.1")
    assert fit_of({"status": "fits", "cost": 300}).cost == Decimal(300)


def test_a_stored_text_keeps_its_meaning():
    """As the first version wrote it; where this fails, the case's key needs another version."""
    text = (
        '{"status":"fitted","parts":[{"role":"unit","part":"U-1","kind":"surface-unit","quantity":1.0,"reason":"r"}],'
        '"holes":[{"name":"cable","leaf":"single","face":"secured","x_mm":70.0,"y_mm":1000.0,"diameter_mm":12.7}]}'
    )
    assert fit_of(json.loads(in_present_words(text))) == Fit(
        "fits",
        (FitPart("unit", "U-1", "surface-unit", 1.0, "r", "", "worked-out"),),
        holes=(
            Hole(
                "cable", "single", "inside", 70.0, 1000.0, 12.7, None, None, 0.0, 0.0, None, "", "", 0, None, 1
            ),
        ),
    )  # fmt: skip


HOLE = {"name": "cable", "leaf": "single", "face": "key", "x_mm": 70.0, "y_mm": 1000.0, "diameter_mm": 12.7}


@pytest.mark.parametrize(
    ("content", "word"),
    [
        ({}, "status"),
        ([], "Fit"),
        (None, "Fit"),
        ({"status": "perhaps"}, "perhaps"),
        ({"status": "fits", "colour": "red"}, "colour"),
        ({"status": "fits", "cost": "dear"}, "dear"),
        ({"status": "fits", "cost": True}, "True"),
        ({"status": "fits", "parts": {}}, "tuple"),
        ({"status": "fits", "parts": [7]}, "7"),
        ({"status": "fits", "holes": [{**HOLE, "count": 1.5}]}, "1.5"),
        ({"status": "fits", "holes": [{**HOLE, "from_cylinder_mm": [1.0]}]}, "tuple"),
        ({"status": "fits", "holes": [{**HOLE, "face": 7}]}, "7"),
        ({"status": "fits", "holes": [{"name": "cable"}]}, "leaf"),
        ({"status": "fits", "refused": [{"part": "C", "role": "butler", "rule": "r", "reason": "r"}]}, "butler"),
    ],
)
def test_what_is_no_fit_is_refused(content, word):
    with pytest.raises(FitRecordError, match=word):
        fit_of(content)


def test_what_is_no_number_is_not_written():
    with pytest.raises(ValueError, match="finite"):
        fit_text(Fit("fits", cost=Decimal("Infinity")))
    with pytest.raises(ValueError, match="JSON"):
        fit_text(Fit("fits", battery=BatteryLife(float("inf"), 1.0, 1.0, 1.0)))
