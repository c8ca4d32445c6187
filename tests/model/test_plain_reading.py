"""Stored rows as they are told: columns of tables left out, maps as such, in the order in which they were read."""

import pytest

from hwsched.model.file.plain_reading import told


@pytest.mark.parametrize(
    ("rows", "expected"),
    [
        ([], []),
        ([{"id": 1}, {"id": 2}], [{}, {}]),
        ([{"id": 1, "name": "a"}, {"id": 2, "name": "b"}], [{"name": "a"}, {"name": "b"}]),
        ([{"a": 1, "extra": '{"x": 1}', "z": None, "_s": 3}], [{"a": 1, "own": {"x": 1}, "z": None}]),
        ([{"mark": "1", "extra": "{}"}], [{"mark": "1", "own": {}}]),
    ],
)
def test_what_only_tables_know_is_left_out(rows, expected):
    found = told(rows)
    assert found == expected
    assert [list(row) for row in found] == [list(row) for row in expected]
