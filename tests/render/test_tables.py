import pytest
from hypothesis import given
from hypothesis import strategies as st

from hwsched.render.blocks import Column, Table
from hwsched.render.fonts import width_per_size
from hwsched.render.tables import cell_text, column_widths


@given(
    st.lists(st.tuples(st.text(max_size=20), st.floats(0, 10), st.text(max_size=60)), min_size=1, max_size=14),
    st.floats(100, 900),
)
def test_widths_fill_the_table_and_none_vanishes(columns, total):
    table = Table(tuple(Column(title, share) for title, share, _ in columns), (tuple(text for _, _, text in columns),))
    widths = column_widths(table, [[text for _, _, text in columns]], total)
    assert sum(widths) == pytest.approx(total)
    assert min(widths) > 0


def test_a_narrow_column_gets_room_for_its_longest_word():
    table = Table((Column("No.", 0.01), Column("Catalogue number", 1.0), Column("Text", 9.0)), (("1", "TC-125", "x"),))
    widths = column_widths(table, [["1", "TC-125", "x"]], 500.0)
    assert widths[0] >= width_per_size("No.", True) * 7.5
    assert widths[1] >= width_per_size("Catalogue", True) * 7.5


def test_a_hostile_word_does_not_starve_the_others():
    texts = [["x" * 300, "y" * 300, "plain words that need room " * 3]]
    table = Table((Column("A", 1.0), Column("B", 1.0), Column("Words", 4.0)), (tuple(texts[0]),))
    assert column_widths(table, texts, 500.0)[2] >= 100.0


def test_numbers_show_no_zeros_that_say_nothing():
    assert [cell_text(v) for v in (1, 1.0, 2.5, 0.1 + 0.2, None, "", float("nan"), -0.25)] == [
        "1", "1", "2.5", "0.3", "", "", "nan", "-0.25",
    ]  # fmt: skip
