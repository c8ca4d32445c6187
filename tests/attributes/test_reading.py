"""One cell is read to the value that its attribute holds, or refused by saying what was read and what is accepted."""

import datetime as dt
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hwsched.attributes import Attribute, CellError, Choice, as_text, read_value, reader_of
from hwsched.attributes.values import choice_words
from hwsched.survey import ENTITIES, ITEM

TEXT = Attribute("mark", "Mark")
LENGTH = Attribute("thickness_mm", "Leaf thickness", "length", "mm", low=6, high=120)
SIGNED = Attribute("case_offset_mm", "Case off centre", "length", "mm", low=-30, high=30)
NUMBER = Attribute("operations_per_day", "Operations a day", "number", low=0, high=20000)
INTEGER = Attribute("cells", "Cells", "integer", low=1, high=24)
FLAG = Attribute("stair", "Stair door", "flag")
DATE = Attribute("visited", "Visited", "date")
RATING = Attribute(
    "rating",
    "Fire rating",
    "choice",
    choices=(
        Choice("none", "Not rated", ("no", "-", "0")),
        Choice("45", "45 min", ("c label", "3/4 h")),
        Choice("90", "90 min", ("b label", "1 1/2 h", "1-1/2 hr", "1.5 h")),
    ),
)
PRICE = Attribute("list_price", "List price", "money", low=0)
EVERY = (TEXT, LENGTH, SIGNED, NUMBER, INTEGER, FLAG, DATE, RATING, PRICE)


def value(attribute, cell, bare_unit=None):
    return read_value(attribute, cell, bare_unit=bare_unit).value


def refusal(attribute, cell, bare_unit=None):
    with pytest.raises(CellError) as caught:
        read_value(attribute, cell, bare_unit=bare_unit)
    return caught.value


@pytest.mark.parametrize("attribute", EVERY, ids=lambda attribute: attribute.kind)
@pytest.mark.parametrize("cell", [None, "", "  ", "\u00a0", "\ufeff", "?", "??", "unknown", "TBD", " Tbc "])
def test_unknown_is_none_for_every_kind(attribute, cell):
    assert value(attribute, cell, "mm" if attribute.kind == "length" else None) is None


@pytest.mark.parametrize("attribute", EVERY, ids=lambda attribute: attribute.kind)
@pytest.mark.parametrize("cell", ["#N/A", "#REF!", "#DIV/0!", "#name?"])
def test_errors_of_a_spreadsheet_are_refused_for_every_kind(attribute, cell):
    assert "error of the spreadsheet" in refusal(attribute, cell).message


@pytest.mark.parametrize("attribute", EVERY, ids=lambda attribute: attribute.kind)
@pytest.mark.parametrize("cell", [[], {}, object(), b"x"])
def test_what_no_reader_delivers_is_refused_or_text(attribute, cell):
    try:
        read = value(attribute, cell)
    except CellError:
        return
    assert attribute.kind == "text"
    assert isinstance(read, str)


class TestText:
    @pytest.mark.parametrize(
        ("cell", "expected"),
        [
            ("0012", "0012"),
            ("9E4", "9E4"),
            ("3-4", "3-4"),
            (12.0, "12"),
            (12, "12"),
            (12.5, "12.5"),
            (0.1, "0.1"),
            (True, "TRUE"),
            ("  A-1 ", "A-1"),
            ("\ufeffA-1", "A-1"),
            ("-", "-"),
            ("n/a", "n/a"),
            ("none", "none"),
            ("=1+1", "=1+1"),
            ("first\r\nsecond", "first\nsecond"),
            ("Café №1", "Café №1"),
            (1e15, "1000000000000000.0"),
            (-3.0, "-3"),
        ],
    )
    def test_text_stays_text(self, cell, expected):
        assert value(TEXT, cell) == expected

    def test_a_yes_is_not_taken_for_a_one_that_stood_before_it(self):
        mark = reader_of(TEXT)
        assert [mark(1.0), mark(True), mark(1), mark(False), mark(0.0)] == ["1", "TRUE", "1", "FALSE", "0"]

    @pytest.mark.parametrize("cell", [dt.date(2024, 3, 4), dt.datetime(2024, 3, 4)])
    def test_a_date_in_place_of_a_mark_is_reported_with_what_was_typed(self, cell):
        error = refusal(TEXT, cell)
        assert error.read == "2024-03-04"
        assert "3-4" in error.message
        assert "text" in error.accepted

    @pytest.mark.parametrize("cell", [dt.time(1, 30), dt.timedelta(hours=30)])
    def test_a_time_is_refused(self, cell):
        assert "is a time" in refusal(TEXT, cell).message

    @pytest.mark.parametrize("cell", ["A\x00B", "A\x07", "A\x9f", "A\ud800", "A\uffff"])
    def test_what_cannot_be_shown_is_refused(self, cell):
        error = refusal(TEXT, cell)
        assert "cannot be shown" in error.message
        error.read.encode()  # can be printed itself

    @pytest.mark.parametrize("cell", [float("inf"), float("nan")])
    def test_no_finite_number(self, cell):
        assert "finite" in refusal(TEXT, cell).message


class TestLength:
    # The inch is 25.4 mm exactly: international yard and pound agreement of 1959.
    @pytest.mark.parametrize(
        ("cell", "bare", "expected", "assumed"),
        [
            (1.75, "in", 44.45, "in"),
            ("1.75", "in", 44.45, "in"),
            ("1 3/4", "in", 44.45, "in"),
            ('1 3/4"', "mm", 44.45, None),
            ("1¾”", None, 44.45, None),
            (45, "mm", 45.0, "mm"),
            ("45 mm", "in", 45.0, None),
            ("4,5 cm", "in", 45.0, None),
            ("1 3/4", "mm", 44.45, "in"),
        ],
    )
    def test_lengths(self, cell, bare, expected, assumed):
        read = read_value(LENGTH, cell, bare_unit=bare)
        assert read.value == pytest.approx(expected, abs=1e-9)
        assert read.assumed_unit == assumed

    def test_about(self):
        assert read_value(LENGTH, "~45 mm").approximate
        assert not read_value(LENGTH, "45 mm").approximate

    def test_a_bare_number_without_a_unit_is_refused(self):
        assert "no unit" in refusal(LENGTH, 45).message

    @pytest.mark.parametrize(
        ("cell", "says"),
        [
            ("36 x 80", "a size"),
            ("2(3'-0\")", "a pair of leaves"),
            ('34"-48"', "a range"),
            ("thick", "not read as a length"),
            ("3..35", "not read"),
            (True, "yes or no"),
            (dt.date(2024, 3, 4), "a date"),
            ("6/8", "can be"),
        ],
    )
    def test_what_is_no_single_length(self, cell, says):
        error = refusal(LENGTH, cell, "mm")
        assert says in error.message
        assert error.read
        assert error.accepted

    @pytest.mark.parametrize(("cell", "says"), [(5.9, "less"), (120.1, "more"), ("20 in", "more"), (-45, "negative")])
    def test_limits(self, cell, says):
        assert says in refusal(LENGTH, cell, "mm").message

    @pytest.mark.parametrize("cell", [6, 120, "120 mm"])
    def test_limits_are_within(self, cell):
        assert value(LENGTH, cell, "mm") in (6.0, 120.0)

    @pytest.mark.parametrize(("cell", "expected"), [(-3, -3.0), ('-1/8"', -3.175), ("\u22123 mm", -3.0), (0, 0.0)])
    def test_signed_where_the_limits_say_so(self, cell, expected):
        assert value(SIGNED, cell, "mm") == pytest.approx(expected)

    @pytest.mark.parametrize("cell", ["n/a", "N/A", "-", "--", "—", "not applicable"])
    def test_not_applicable_is_unknown(self, cell):
        assert value(LENGTH, cell, "mm") is None

    @pytest.mark.parametrize("cell", ["none", "None", "nil"])
    def test_none_is_asked_about(self, cell):
        error = refusal(LENGTH, cell, "mm")
        assert "zero" in error.message
        assert error.accepted.startswith("0 for zero")

    def test_a_unit_that_measures_no_length_refuses_the_column(self):
        assert "measures no length" in refusal(LENGTH, 45, "V").message


class TestNumber:
    @pytest.mark.parametrize(
        ("cell", "expected"),
        [(50, 50.0), ("50", 50.0), ("12.5", 12.5), ("12,5", 12.5), ("1,234.5", 1234.5), ("1e3", 1000.0), ("n/a", None)],
    )
    def test_plain(self, cell, expected):
        assert value(NUMBER, cell) == expected

    def test_about(self):
        assert read_value(NUMBER, "about 50").approximate

    @pytest.mark.parametrize(
        "cell", ["1,000", "50 a day", "fifty", "5-6", True, dt.date(2024, 3, 4), -1, 20001, "none"]
    )
    def test_refused(self, cell):
        assert refusal(NUMBER, cell).accepted

    # 0 °F is -17.78 °C, 14 °F is -10 °C by definition of the scale; 1 ft is 0.3048 m.
    @pytest.mark.parametrize(
        ("unit", "cell", "bare", "expected"),
        [
            ("degC", "14 °F", None, -10.0),
            ("degC", 14, "degF", -10.0),
            ("degC", "-20 °C", "degF", -20.0),
            ("uA", "0.045 mA", None, 45.0),
            ("uA", 0.045, "mA", 45.0),
            ("mA", "0.12 A", None, 120.0),
            ("V", "12 V DC", None, 12.0),
            ("A", "350 mA", None, 0.35),
            ("mAh", "2.6 Ah", None, 2600.0),
            ("h", "30 min", None, 0.5),
            ("m", "40 ft", None, 12.192),
            ("m", 40, "ft", 12.192),
            ("m", "1200 cm", None, 12.0),
            ("share", "80 %", None, 0.8),
            ("share", 0.8, None, 0.8),
            ("share", 80, "%", 0.8),
            ("N", "600 lbf", None, 2668.93296),  # 4.448222 N, NIST SP 811 (2008) app. B.8
        ],
    )
    def test_units(self, unit, cell, bare, expected):
        attribute = Attribute("x", "X", "number", unit)
        assert value(attribute, cell, bare) == pytest.approx(expected, rel=1e-6)

    def test_the_unit_of_a_bare_number_is_said(self):
        attribute = Attribute("x", "X", "number", "degC")
        assert read_value(attribute, 14).assumed_unit == "degC"
        assert read_value(attribute, 14, bare_unit="degF").assumed_unit == "degF"
        assert read_value(attribute, "14 °F").assumed_unit is None
        assert read_value(NUMBER, 14).assumed_unit is None

    def test_a_share_under_per_cent_that_can_be_two_things(self):
        assert "80 %" in refusal(Attribute("x", "X", "number", "share"), 0.8, "%").message

    @pytest.mark.parametrize(("unit", "cell"), [("V", "12 A"), ("A", "5 mm"), ("m", "12 V"), ("share", "80 V")])
    def test_another_dimension(self, unit, cell):
        refusal(Attribute("x", "X", "number", unit), cell)

    @pytest.mark.parametrize("cell", [float("inf"), float("nan"), 10**400, "1e999"])
    def test_no_finite_number(self, cell):
        refusal(Attribute("x", "X", "number"), cell)

    @pytest.mark.parametrize(("cell", "expected"), [(4.0, 4), ("4", 4), (4, 4), ("n/a", None)])
    def test_integers(self, cell, expected):
        read = value(INTEGER, cell)
        assert read == expected
        assert not isinstance(read, float)

    @pytest.mark.parametrize("cell", [4.5, "4.5", 0, 25, "four", True])
    def test_integers_refused(self, cell):
        assert "whole number" in refusal(INTEGER, cell).accepted


class TestChoice:
    @pytest.mark.parametrize(
        ("cell", "expected"),
        [
            ("Not rated", "none"),
            ("NOT-RATED", "none"),
            ("none", "none"),
            ("-", "none"),
            (0.0, "none"),
            (45.0, "45"),
            ("45 MIN.", "45"),
            ("C Label", "45"),
            ("3/4 h", "45"),
            ("1 1/2 H", "90"),
            ("1½ h", "90"),
            ("1-1/2 hr", "90"),
            ("n/a", None),
        ],
    )
    def test_choices(self, cell, expected):
        assert value(RATING, cell) == expected

    @pytest.mark.parametrize("cell", [4.5, "4-5", "4 5", "20", "sixty", "11/2 h", True, dt.date(2024, 3, 4)])
    def test_refused_with_all_words(self, cell):
        assert refusal(RATING, cell).accepted.startswith("Not rated; 45 min; 90 min")

    def test_a_word_for_two_values_is_a_fault_of_the_declaration(self):
        doubled = Attribute("x", "X", "choice", choices=(Choice("a", "A", ("same",)), Choice("b", "B", ("Same.",))))
        with pytest.raises(ValueError, match="means a as well as b"):
            choice_words(doubled)

    @pytest.mark.parametrize("entity", ENTITIES, ids=lambda entity: entity.name)
    def test_the_survey_declares_no_word_twice(self, entity):
        for attribute in entity.attributes:
            words = choice_words(attribute)
            for choice in attribute.choices:
                assert value(attribute, choice.label) == choice.value
                assert value(attribute, choice.value) == choice.value
                assert choice.value in words.values()


class TestFlag:
    @pytest.mark.parametrize("cell", [True, 1, 1.0, "yes", "Y", "TRUE", "x", "X", "✓", "✔", "☑", "1", " Yes. "])
    def test_yes(self, cell):
        assert value(FLAG, cell) is True

    @pytest.mark.parametrize("cell", [False, 0, 0.0, "no", "N", "false", "0", "none", "☐"])
    def test_no(self, cell):
        assert value(FLAG, cell) is False

    @pytest.mark.parametrize("cell", ["n/a", "-"])
    def test_unknown(self, cell):
        assert value(FLAG, cell) is None

    @pytest.mark.parametrize("cell", ["maybe", "✗", 2, 0.5, dt.date(2024, 3, 4)])
    def test_refused(self, cell):
        assert "yes" in refusal(FLAG, cell).accepted


class TestDate:
    @pytest.mark.parametrize(
        "cell",
        [
            dt.date(2031, 3, 4),
            dt.datetime(2031, 3, 4, 10, 30),
            "2031-03-04",
            "2031-03-04 00:00:00",
            "4 Mar 2031",
            "4. March 2031",
            "March 4, 2031",
        ],
    )
    def test_dates(self, cell):
        assert value(DATE, cell) == "2031-03-04"

    def test_september_in_its_three_spellings(self):
        assert {value(DATE, f"4 {word} 2031") for word in ("Sep", "Sept", "September")} == {"2031-09-04"}

    @pytest.mark.parametrize("cell", ["3/4/31", "2031-02-30", "4 Marble 2031", "31 Feb 2031", 45355.0, True, "soon"])
    def test_refused(self, cell):
        assert "2031" in refusal(DATE, cell).accepted


class TestMoney:
    @pytest.mark.parametrize(
        ("cell", "amount"),
        [
            (12.1, "12.1"),
            (12, "12"),
            ("12.10", "12.1"),
            ("1,234.50", "1234.5"),
            ("98,5", "98.5"),
            ("0.12345678901234567890123", "0.12345678901234567890123"),
            ("+3", "3"),
            (-0.0, "0"),
        ],
    )
    def test_exact(self, cell, amount):
        read = value(PRICE, cell)
        assert (type(read), read) == (Decimal, Decimal(amount))

    @pytest.mark.parametrize("cell", ["none", "~12", "12 EUR", "1,000", "-1", -1, True, "1e13", 1e300, float("nan")])
    def test_refused(self, cell):
        assert refusal(PRICE, cell).accepted

    def test_a_header_with_a_unit_is_none_of_money(self):
        assert "no amount of money in mm" in refusal(PRICE, 12.1, "mm").message

    def test_not_applicable_is_unknown(self):
        assert value(PRICE, "n/a") is None


class TestReader:
    def test_it_remembers_and_stays_right(self):
        read = reader_of(LENGTH, "in")
        cells = [1.75, "1 3/4", None, 1.75, "", "45 mm", 1.75]
        assert [read(cell) for cell in cells] == [44.45, 44.45, None, 44.45, None, 45.0, 44.45]

    def test_a_refusal_is_repeated(self):
        read = reader_of(LENGTH, "in")
        messages = []
        for _ in range(3):
            with pytest.raises(CellError) as caught:
                read("thick")
            messages.append(str(caught.value))
        assert len(set(messages)) == 1

    @given(st.one_of(st.text(max_size=30), st.floats(), st.integers(), st.booleans(), st.dates(), st.none()))
    def test_nothing_but_a_value_or_a_refusal(self, cell):
        for attribute in EVERY:
            try:
                read = value(attribute, cell, "mm" if attribute.kind == "length" else None)
            except CellError:
                continue
            kinds = {"length": float, "number": float, "integer": int, "flag": bool, "money": Decimal}
            assert read is None or isinstance(read, kinds.get(attribute.kind, str))


@pytest.mark.parametrize(
    ("cell", "expected"),
    [(dt.datetime(2024, 3, 4), "2024-03-04"), (dt.datetime(2024, 3, 4, 5, 6), "2024-03-04 05:06:00"), (-0.0, "0")],
)
def test_cells_as_a_person_sees_them(cell, expected):
    assert as_text(cell) == expected


@pytest.mark.parametrize("word", ["std", "Standard", "std cam", "regular"])
def test_a_cam_as_usual_is_no_form_of_cam(word):
    """Each maker has another as the usual one (common practice): it is refused with the words that are, never read."""
    with pytest.raises(CellError, match="whatever cam the lock's maker usually fits"):
        read_value(ITEM.attribute("cam_form"), word)
    assert read_value(ITEM.attribute("cam_form"), "straight cam").value == "straight"
