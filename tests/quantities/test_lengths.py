"""Every spelling of the collected list, every one of common practice, and what must be refused."""

import csv
import datetime as dt
import json
import math
import time
from pathlib import Path
from typing import Any

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from hwsched.quantities import (
    LengthError,
    One,
    Pair,
    PairSize,
    Range,
    Size,
    lengths,
    parse_length,
    read_length,
)

# Collected from drawings, model files and surveys: what a person reads, and the unit of the column where the text
# carries none (header or neighbours, see the notes). A copy of the project's list of facts.
with Path(__file__).with_name("lengths.csv").open(encoding="utf-8", newline="") as _file:
    ROWS = list(csv.DictReader(_file))


def _numbers(text: str, separator: str) -> list[float]:
    return [float(part) for part in text.split(separator)]


@pytest.mark.parametrize("row", ROWS, ids=[row["spelling"] for row in ROWS])
def test_collected_spellings(row: dict[str, str]) -> None:
    text, expected, kind = row["spelling"], row["mm_a_person_reads"], row["kind"]
    unit: Any = row["bare_unit"] or None
    if kind in ("ambiguous", "not-a-length"):
        with pytest.raises(LengthError) as refused:
            read_length(text, unit)
        assert refused.value.suggestion
        assert text in refused.value.message
        return
    reading: Any = read_length(text, unit)
    if kind == "size":
        assert isinstance(reading, Size)
        assert [reading.width_mm, reading.height_mm] == pytest.approx(_numbers(expected, " x "), abs=0.01)
    elif kind == "range":
        assert isinstance(reading, Range)
        assert [reading.low_mm, reading.high_mm] == pytest.approx(_numbers(expected, " - "), abs=0.01)
    elif kind == "pair" and " x " in expected:
        assert isinstance(reading, PairSize)
        found = [reading.leaves, reading.width_mm, reading.height_mm]
        assert found == pytest.approx(_numbers(expected, " x "), abs=0.01)
    elif kind == "pair":
        assert isinstance(reading, Pair)
        assert reading.leaves == 2
        assert reading.leaf_mm * reading.leaves == pytest.approx(float(expected), abs=0.01)
    else:
        assert isinstance(reading, One)
        assert reading.mm == pytest.approx(float(expected), abs=0.01)
        assert reading.approximate == (kind == "approximate")
    assert (reading.assumed_unit is not None) == (bool(unit) or text in ("7-1/2", *SHORTHAND_ROWS))


SHORTHAND_ROWS = ("3068", "2/8 x 6/8", "3-0 x 6-8", "2-3068 DBL")


def test_the_list_is_whole() -> None:
    assert len(ROWS) == 58
    assert set(SHORTHAND_ROWS) <= {row["spelling"] for row in ROWS}


# Common practice of surveyors; values by arithmetic with 25.4 mm to the inch.
@pytest.mark.parametrize(
    ("text", "unit", "mm"),
    [
        ('36"', None, 914.4), ("3'-0\"", None, 914.4), ("3'0", None, 914.4), ("3 ft", None, 914.4),
        ("3' - 0 1/2\"", None, 927.1), ("1 3/4", None, 44.45), ("1 3/4", "in", 44.45),
        ("1-3/4\"", None, 44.45),
        ('1¾"', None, 44.45), ("1.75 in", None, 44.45), ("2 3/4in.", None, 69.85), ("70", "mm", 70.0),
        ("70", "in", 1778.0), ("70mm", None, 70.0), ("70 mm", "in", 70.0), ("7 cm", None, 70.0),
        ("0,91 m", None, 910.0), ('0.044"', None, 1.1176), ("94", "mm", 94.0),
        # fractions and their signs
        ("1 3/4", "mm", 44.45), ("3 1/2", "ft", 1066.8), ("⅝", "mm", 15.875), ("1 ³⁄₈\"", None, 34.925),
        ('3/4"', None, 19.05), ("3/4", "in", 19.05), ("5/16", None, 7.9375), ('7⁄8"', None, 22.225),
        ("3'-1/2\"", None, 927.1), ("3'-0-1/2\"", None, 927.1), ("2 ft and 3 in", None, 685.8),
        # marks, spaces, capitals
        ("6′ 8″", None, 2032.0), ("6’ 8”", None, 2032.0), ("6'8''", None, 2032.0), ("36 IN", None, 914.4),
        ("3\u202ft\u00a0", "in", None), ("2\u2009100\u202fmm", None, 2100.0), ("３６\uff02", None, 914.4),
        ("3 feet, 6 inches", None, 1066.8), ("1000 millimetres", None, 1000.0), ("1 metre", None, 1000.0),
        # numbers
        ("2,100 mm", None, 2100.0), ("2,100", "mm", 2100.0), ("0,915 m", None, 915.0),
        ("1.234,5 mm", None, 1234.5),
        (".5 in", None, 12.7), ("0", "in", 0.0), ("1e3", "mm", 1000.0), ("1015", "in", 25781.0),
        ("3068", "mm", 3068.0),
        ("ca. 3 m", None, 3000.0), ("0762", "mm", 762.0),
    ],
)  # fmt: skip
def test_one_length(text: str, unit: Any, mm: float | None) -> None:
    if mm is None:
        with pytest.raises(LengthError):
            parse_length(text, unit)
    else:
        assert parse_length(text, unit) == pytest.approx(mm, abs=1e-6)


@pytest.mark.parametrize(
    ("text", "unit", "reading"),
    [
        ("3'-0\" x 7'-0\"", None, (914.4, 2133.6)), ("3'-0\" W x 7'-0\" H", None, (914.4, 2133.6)),
        ("2134h x 914w", "mm", (914, 2134)), ("36 x 80\"", None, (914.4, 2032)),
        ('36" x 80', "mm", (914.4, 2032)),
        ("900 by 2100", "mm", (900, 2100)), ("900*2100 mm", None, (900, 2100)),
        ("3/0 x 7/0", "mm", (914.4, 2133.6)),
        ("3'-0\" x 6-8", None, (914.4, 2032)), ("3-0 1/2 x 6-8", None, (927.1, 2032)),
        ("2,100 x 900 mm", None, (2100, 900)),
        ("2868", "in", (863.6 - 50.8, 2032)), ("30610", None, (914.4, 2082.8)), (3068, None, (914.4, 2032)),
        ("3'-0\" x 80", "in", (914.4, 2032)), ("3/4\" x 1/2\"", None, (19.05, 12.7)),
        ("1 1/2 x 3/4", "in", (38.1, 19.05)),
    ],
)  # fmt: skip
def test_size(text: object, unit: Any, reading: tuple[float, float]) -> None:
    size = read_length(text, unit)
    assert isinstance(size, Size)
    assert (size.width_mm, size.height_mm) == pytest.approx(reading, abs=1e-6)


@pytest.mark.parametrize(
    ("text", "unit", "low_high"),
    [
        ('34" to 48"', None, (863.6, 1219.2)), ('34-48"', None, (863.6, 1219.2)),
        ("34-48", "in", (863.6, 1219.2)),
        ("865-1220 mm", None, (865, 1220)), ("8-10 mm", None, (8, 10)), ("2.1-2.3 m", None, (2100, 2300)),
        ("3'-0\" - 3'-4\"", None, (914.4, 1016)), ('1/2-3/4"', None, (12.7, 19.05)),
        ("3' to 4'", None, (914.4, 1219.2)), ("3' to 48\"", None, (914.4, 1219.2)),
        ('2 1/4 - 2 3/4"', None, (57.15, 69.85)), ("34”–48”", None, (863.6, 1219.2)),
    ],
)  # fmt: skip
def test_range(text: str, unit: Any, low_high: tuple[float, float]) -> None:
    reading = read_length(text, unit)
    assert isinstance(reading, Range)
    assert (reading.low_mm, reading.high_mm) == pytest.approx(low_high, abs=1e-6)


@pytest.mark.parametrize(
    ("text", "unit", "reading"),
    [
        ("(2) 3'-0\"", None, Pair(914.4)), ("2 @ 3'-0\"", None, Pair(914.4)),
        ("2-3'-0\" PR", None, Pair(914.4)),
        ("2(915)", "mm", Pair(915.0, 2, "mm")), ("2(3'-0\" x 7'-0\")", None, PairSize(914.4, 2133.6)),
        ("2-3068", "mm", PairSize(914.4, 2032.0, 2, "ft-in")),
        ("(2) 915 x 2110 mm", None, PairSize(915.0, 2110.0)),
    ],
)  # fmt: skip
def test_pair(text: str, unit: Any, reading: object) -> None:
    assert read_length(text, unit) == reading


# What must be refused, and what the message has to name.
@pytest.mark.parametrize(
    ("text", "unit", "named"),
    [
        ("6/8", None, ["6'-8\"", '6/8"']), ("6/8", "in", ["6'-8\"", '6/8"']),
        ("6/8", "mm", ["6'-8\"", '6/8"']),
        ("30/68", None, ["3'-0\" x 6'-8\"", '30/68"']), ("30/68", "in", ["3'-0\" x 6'-8\"", '30/68"']),
        ("3-4", None, ["3'-4\"", "range", "3/4"]), ("3-4", "in", ["3'-4\"", "range", "3/4"]),
        ('3-4"', None, ["3'-4\""]),
        ("3-0", None, ["3'-0\""]), ("3/0", "in", ["3'-0\""]), ("3/4", None, ["3'-4\"", '3/4"']),
        ("3/2", "mm", ["3'-2\"", '1.5"']), ("15/100", "in", ["15/100"]), ("36-23/4\"", None, ["2 3/4", "5.75"]),
        ("3' to 4\"", None, ["downward"]), ("1,750-1,800 in", None, ["1.800", "1800"]),
        ("70", None, ["no unit"]), ("1.75", None, ["no unit"]), ("34-48", None, ["no unit"]),
        ("2070", None, ["2070 mm", "2'-0\""]),
        ("23/4\"", None, ["2 3/4", "5.75"]), ("3'-21/2\"", None, ["2 1/2", "10.5"]),
        ("3'-48\"", None, ["7'-0\""]),
        ("1,750 in", None, ["1.750", "1750"]), ("2,100 m", None, ["2.100", "2100"]),
        ("1,000", None, ["1000"]),
        ("2 100", "in", ["two numbers"]), ("2'100 mm", None, []), ("1.5 1/2\"", None, ["decimals"]),
        ("5/0\"", None, ["no fraction"]),
        ("1/200\"", None, ["1/128"]), ("1 3/4 mm", None, ["fractions"]), ("3.5' 2\"", None, ["whole feet"]),
        ("PR 3068", None, ["2(3068)"]), ("3'-0\" pair", None, ["2(3'-0\")"]),
        ("3(3'-0\")", None, ["3 leaves"]),
        ("2 x 36\"", None, ["2(36\")"]), ("2 - 3'-0\"", "in", ["2(3'-0\")"]),
        ("3/4 x 1/2", "in", ["3'-4\" x 1'-2\"", '3/4" x 1/2"']),
        ("2/8 x 80", "in", ["2'-8\""]), ("3'-0\" x 80", "mm", ["no unit"]),
        ("3-0 x 7-0 x 1-3/4", None, ["3 measures"]),
        ("0 x 20 mm", None, ["zero"]), ("3'-0\" h x 7'-0\" h", None, ["same letter"]),
        ('48"-34"', None, ["downward"]),
        ("2(34\"-48\")", None, ["leaf"]), ("-3", "mm", ["negative"]), ("−3\"", None, ["negative"]),
        ("3..35", "m", []),
        ("height limit 1.5m", None, ["1.5m"]), ("1`", None, ["backtick"]), ("nan", "mm", []),
        ("inf", "mm", []),
        ("1e999", "mm", ["beyond"]), ("", "mm", ["no length"]), ("   ", "mm", ["no length"]),
        ("n/a", None, []), ("?", "in", []),
        ("36 in (914 mm)", None, []), ("9" * 90, "mm", ["too long"]), ("4-Mar", "in", ["4 March", "3-4"]),
        ("2024-03-04 00:00:00", "in", ["4 March"]), ("1 1/2 1/2", "in", []), ("3 furlongs", None, []),
        ("1-2-3", "in", []),
    ],
)  # fmt: skip
def test_refused(text: str, unit: Any, named: list[str]) -> None:
    with pytest.raises(LengthError) as refused:
        read_length(text, unit)
    assert text[:20] in refused.value.message
    for name in named:
        assert name in refused.value.message


@pytest.mark.parametrize(
    ("suggested", "mm"),
    [("6'-8\"", 2032.0), ('6/8"', 19.05), ("3'-4\"", 1016.0), ('3/4"', 19.05), ("2 3/4", 69.85), ("3'-0 1/2\"", 927.1)],
)
def test_what_messages_suggest_is_read(suggested: str, mm: float) -> None:
    assert parse_length(suggested, None) == pytest.approx(mm)


def test_one_length_is_wanted_and_more_is_named() -> None:
    for text, kind in [("3068", "size"), ('34"-48"', "range"), ("2(3'-0\")", "pair"), ("2-3068 DBL", "pair")]:
        with pytest.raises(LengthError, match=kind):
            parse_length(text, None)
    with pytest.raises(LengthError, match="write 3068 mm"):
        parse_length("3068", "in")


def test_cells_of_other_types() -> None:
    assert read_length(915, "mm") == One(915.0, "mm")
    assert read_length(36.0, "in") == One(914.4, "in")
    assert read_length(876.0000000000001, "mm") == One(876.0, "mm")
    assert math.copysign(1.0, parse_length("0", "mm")) == 1.0
    assert read_length(-0.0, "mm") == One(0.0, "mm")
    refused: list[object] = [True, False, None, math.nan, math.inf, -1, -0.5, 10**400, b"36", [36], {}]
    for value in refused:
        with pytest.raises(LengthError):
            read_length(value, "mm")
    with pytest.raises(LengthError, match="no unit"):
        read_length(70, None)


def test_text_of_a_library_of_its_own_class_is_text() -> None:
    class CellText(str):
        __slots__ = ()

    assert read_length(CellText("36 in"), None) == One(914.4)


def test_dates_and_times_are_explained() -> None:
    for value in (dt.datetime(2024, 3, 4), dt.date(2024, 3, 4)):
        with pytest.raises(LengthError, match=r"2024-03-04: .*3-4 or 3/4 .*4 March"):
            read_length(value, "in")
    with pytest.raises(LengthError, match="is a time"):
        read_length(dt.time(3, 4), "in")
    with pytest.raises(LengthError, match="is a time"):
        read_length(dt.timedelta(hours=3), "in")


@given(
    st.text(alphabet="0123456789.,-/'\" xmcinftPRdbl()@~e½⅟×′″\\", max_size=14),
    st.sampled_from([None, "in", "ft", "mm", "m"]),
)
@example("2(2(2(3'-0\")))", None)
@example("x", None)
def test_any_text_is_read_or_refused(text: str, unit: Any) -> None:
    try:
        reading = read_length(text, unit)
    except LengthError:
        return
    values = [value for value in _values(reading) if isinstance(value, float)]
    assert values
    assert all(math.isfinite(value) and value >= 0 for value in values)


def _values(reading: Any) -> list[object]:
    names: tuple[str, ...] = reading.__slots__
    return [getattr(reading, name) for name in names]


@given(
    st.integers(0, 40), st.integers(0, 11), st.integers(0, 63),
    st.sampled_from(["'", "′", " ft ", " feet ", "' - ", "'-"]),
    st.sampled_from(['"', "″", "''", " in", " in.", ""]),
)  # fmt: skip
def test_feet_and_inches_in_every_dress(feet: int, inches: int, ticks: int, foot: str, inch: str) -> None:
    fraction = f" {ticks}/64" if ticks else ""
    expected = (feet * 12 + inches + ticks / 64) * 25.4
    assert parse_length(f"{feet}{foot}{inches}{fraction}{inch}", None) == pytest.approx(expected, abs=1e-6)


def test_hostile_text_is_answered_at_once() -> None:
    texts = ["1 " * 39, "1-" * 39, "1/" * 39, "1," * 39, "(" * 80, "2(" * 40, "1x" * 40, "9" * 80, " " * 80, "1'" * 39]
    texts += ["pr " * 26, "1 to " * 16, "\\X2\\" * 20, "1." * 39 + "x", "a" * 78 + " w"]
    start = time.process_time()
    for text in texts:
        with pytest.raises(LengthError):
            read_length(text, None)
    hostile = time.process_time() - start
    start = time.process_time()
    for text in texts * 200:
        json.loads(json.dumps(text))
    # As a ratio, so that a slow machine changes nothing: a pattern that backtracks would cost a million times as much.
    assert hostile < 100 * (time.process_time() - start)


@pytest.mark.bench
def test_speed() -> None:
    """An import reads 300,000 cells: a new text costs a few JSON round trips of itself, a known one less than one."""
    texts = [f"{feet}'-{inches} {top}/16\"" for feet in range(10) for inches in range(12) for top in range(1, 16, 2)]

    def seconds(text_times: int) -> float:
        start = time.process_time()
        for _ in range(text_times):
            for text in texts:
                read_length(text, None)
        return (time.process_time() - start) / (text_times * len(texts))

    fresh, known = [], []
    for _ in range(5):
        lengths._read_text.cache_clear()
        fresh.append(seconds(1))
        known.append(seconds(50))
    start = time.process_time()
    for text in texts * 20:
        json.loads(json.dumps(text))
    bare = (time.process_time() - start) / (20 * len(texts))
    assert min(fresh) < 10 * bare
    assert min(known) < bare
