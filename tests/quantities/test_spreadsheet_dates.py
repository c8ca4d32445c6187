"""Dates traced back to what was typed."""

import datetime as dt

import pytest

from hwsched.quantities.spreadsheet_dates import date_in_text, explain_date


def test_day_and_month_are_both_offered() -> None:
    problem, cure = explain_date(dt.date(2024, 3, 4))
    assert "3-4 or 3/4 (or 4-3 or 4/3" in problem
    assert "4 March" in problem
    assert "as text" in cure


def test_equal_day_and_month_have_one_reading() -> None:
    assert "where the day" not in explain_date(dt.date(2024, 6, 6))[0]


def test_first_of_a_month_may_hold_a_year() -> None:
    assert "3-68 or 3/68 into March 1968" in explain_date(dt.datetime(1968, 3, 1))[0]


@pytest.mark.parametrize(
    "text", ["4-mar", "04-mar-24", "4. march", "mar-04", "march 4, 2024", "2024-03-04", "2024-03-04t00:00:00"]
)
def test_text_that_was_a_date(text: str) -> None:
    found = date_in_text(text)
    assert found is not None
    assert "4 March" in found[0]


@pytest.mark.parametrize("text", ["31-feb", "mar-68", "2024-13-40"])
def test_text_that_looks_like_one(text: str) -> None:
    found = date_in_text(text)
    assert found is not None
    assert "looks like a date" in found[0]


@pytest.mark.parametrize("text", ["", "3-4", "march", "mark 4", "decor-10", "dec", "36", "2024-03"])
def test_text_that_was_none(text: str) -> None:
    assert date_in_text(text) is None
