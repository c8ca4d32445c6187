"""Pages that are read at the door: columns, what is run in, and how close they are set."""

import io
from dataclasses import replace

import pytest
from PIL import Image
from pypdf import PdfReader

from hwsched.render import print_style
from hwsched.render.blocks import (
    TICK,
    Column,
    Columns,
    Document,
    Facts,
    Heading,
    Paragraph,
    Picture,
    Section,
    SignOff,
    StepLine,
    Steps,
    Table,
)
from hwsched.render.fonts import width_per_size
from hwsched.render.pdf import render_pdf
from tests.render.pages_read import all_text, sizes, written

STEP = "Push the pull wire in at the access hole until it shows at the cylinder's hole, and draw the lead through."


def rendered(path, *blocks, **changes):
    section = replace(Section(blocks, "0012", at_door=True), **changes)
    render_pdf(Document("Packet", "Yard", "B", "2031-05-01", (section,)), path / "a.pdf")
    return path / "a.pdf"


def pages(path):
    return len(PdfReader(path).pages)


def steps(count):
    return Steps(tuple(StepLine(n, "inside", STEP) for n in range(1, count + 1)))


def places(path):
    """Return where each text begins on the first page [pt], by the text."""
    found = {}

    def take(text, matrix, text_matrix, _font, _size):
        if text.strip():
            found[text.strip()] = (text_matrix[4] + matrix[4], text_matrix[5] + matrix[5])

    PdfReader(path).pages[0].extract_text(visitor_text=take)
    return found


def path_lines(path):
    """Return the words of the first page line by line, as they stand."""
    by_height = {}

    def take(text, matrix, text_matrix, _font, _size):
        if text.strip():
            by_height.setdefault(round(text_matrix[5] + matrix[5]), []).append(text.strip())

    PdfReader(path).pages[0].extract_text(visitor_text=take)
    return [" ".join(words) for words in by_height.values()]


def leading(path):
    """Return how far the second step stands under the first [pt]."""
    found = places(path)
    return found["1 Inside."][1] - found["2 Inside."][1]


def test_columns_are_read_down_the_left_one_first(tmp_path):
    path = rendered(tmp_path, Columns(2), *(Paragraph(f"line {n}") for n in range(60)))
    assert pages(path) == 1
    found = places(path)
    across = [found[f"line {n}"][0] for n in range(60)]
    down = [found[f"line {n}"][1] for n in range(60)]
    turn = next(n for n in range(1, 60) if across[n] != across[0])
    assert set(across[:turn]) == {across[0]}
    assert set(across[turn:]) == {across[turn]}
    assert across[turn] > 306.0, "the right column begins right of the middle"
    assert down[:turn] == sorted(down[:turn], reverse=True)
    assert down[turn] == pytest.approx(down[0])


def test_what_goes_across_the_page_stands_under_all_columns(tmp_path):
    path = rendered(
        tmp_path, Columns(2), *(Paragraph(f"line {n}") for n in range(50)), Columns(1), Paragraph("under all")
    )
    found = places(path)
    assert found["under all"][1] < min(down for text, (_, down) in found.items() if text.startswith("line"))


def test_what_would_begin_a_sheet_for_its_last_lines_is_set_closer(tmp_path, monkeypatch):
    """As loosely as the fewest sheets allow, and no letter smaller for it."""
    closer = print_style.TIGHTER

    def sheets(count, kinds):
        monkeypatch.setattr(print_style, "TIGHTER", kinds)
        path = rendered(tmp_path, Columns(2), steps(count))
        return pages(path), min(sizes(path)), leading(path)

    loose = [sheets(count, closer[:1])[0] for count in (44, 56, 62)]
    close = [sheets(count, closer[-1:])[0] for count in (44, 56, 62)]
    chosen = [sheets(count, closer) for count in (44, 56, 62)]
    assert loose != close, "nothing to choose"
    assert [number for number, _, _ in chosen] == close
    assert min(least for _, least, _ in chosen) >= 11.0
    # Where room is left nothing is set closer.
    assert chosen[0][2] == pytest.approx(sheets(44, closer[:1])[2])
    assert min(lead for _, _, lead in chosen) < chosen[0][2]


def test_numbers_stand_in_their_row_and_words_across_under_it(tmp_path):
    table = Table(
        (
            Column("", 0.3), Column("No."), Column("Hole", below=True), Column("Across", large=True),
            Column("Tool", below=True),
        ),
        ((TICK, 1, "access hole", '2 3/4"', "step drill"), (TICK, 2, "pilots", "through the part as template", "-")),
        title="Holes",
    )  # fmt: skip
    path = rendered(tmp_path, Columns(2), Heading("Holes", 2), table)
    text = all_text(path)
    assert "access hole · step drill" in text
    assert "pilots · through the part as template" in text
    assert [size for word, size in written(path) if word == '2 3/4"'] == [14.0]
    assert "Tool" not in text


def test_what_is_expected_stands_behind_what_is_tried(tmp_path):
    table = Table((Column("Test"), Column("Expected", run_in=True)), (("A key", "refused"), ("A label", "")))
    text = all_text(rendered(tmp_path, table))
    assert "Test: Expected" in text
    assert "A key: refused" in text
    assert "A label:" not in text


def test_facts_are_run_in(tmp_path):
    path = rendered(tmp_path, Facts((("Leaf", "Wood, solid core"), ("Backset", '2 3/4"'))))
    found = places(path)
    assert found["Leaf"][1] == found["Wood, solid core"][1]
    assert found["Wood, solid core"][0] == pytest.approx(
        found["Leaf"][0] + width_per_size("Leaf ", True, True) * 11.0, abs=0.1
    )


@pytest.mark.parametrize("word", ["Φλεγμα", "Дверь 7", "A → B", "門 3", "Größe"])
def test_letters_that_the_narrow_font_lacks_are_set_in_the_wide_one(tmp_path, word):
    path = rendered(tmp_path, Paragraph(f"Mark {word} here"))
    text = all_text(path)
    if "門" not in word:
        assert word in text
    assert "here" in text
    # No letter lies on its neighbour: what is wider than the narrow font says would.
    assert width_per_size(word, False, True) > 0


def test_a_box_of_a_caution_begins_with_its_word(tmp_path):
    path = rendered(tmp_path, Columns(2), Paragraph("No kink.", "caution"), Paragraph("DO NOT INSTALL.", "stop"))
    found = places(path)
    assert found["CAUTION"][1] == found["No kink."][1]
    assert "STOP" in all_text(path)


def test_a_caution_stands_on_the_sheet_of_its_step(tmp_path):
    """Whatever stands before: where the step has no room left, its caution goes with it."""
    for before in range(34, 46):
        lines = (*steps(before).lines, StepLine(before + 1, "inside", STEP, ("no kink, no edge",)))
        path = rendered(tmp_path, Steps(lines))
        texts = [page.extract_text() for page in PdfReader(path).pages]
        (caution,) = (n for n, text in enumerate(texts) if "no kink" in text)
        (step,) = (n for n, text in enumerate(texts) if f"{before + 1} Inside." in text)
        assert caution == step


def test_what_is_added_to_a_large_number_stands_under_its_row(tmp_path):
    table = Table(
        (Column("No."), Column("Face", below=True), Column("From cylinder", large=True), Column("Depth", large=True)),
        ((1, "inside", '2 1/2" above, 1/4" toward edge', '3/8", begins 1/4" below the face'),),
        title="Holes",
    )
    path = rendered(tmp_path, table)
    # The numbers stand large in their row; what is added across under it, with from what it is counted.
    assert " ".join(word for word, size in written(path) if size == 14.0) == '2 1/2" 3/8"'
    assert "1 above" in [word.strip() for word, size in written(path) if size == 11.0]
    assert 'inside · from cylinder 1/4" toward edge · begins 1/4" below the face' in all_text(path)


def test_a_short_paragraph_does_not_begin_the_next_sheet_with_its_last_line(tmp_path):
    words = " ".join(["driver"] * 60)
    for before in range(44, 52):
        path = rendered(tmp_path, *(Paragraph(f"line {n}") for n in range(before)), Paragraph(words))
        told = [page.extract_text().count("driver") for page in PdfReader(path).pages]
        assert [count for count in told if count] == [60]


def test_a_number_that_is_drilled_is_large_also_in_a_narrow_column(tmp_path):
    """Its words go under it and one side of a pocket under the other; no heading is broken within a word."""
    large = [Column(title, large=True) for title in ("From lock edge", "From cylinder", "Dia.", "Pilot", "Depth")]
    row = (1, '7/8" from the inside face', '8 27/32" above', '45/64" × 12 43/64"', '1/16"', '1 39/64"')
    table = Table((Column("No."), *large), (row,), title="Holes")
    path = rendered(tmp_path, Columns(2), table)
    found = " ".join(word for word, size in written(path) if size == 14.0)
    assert found.split() == ['7/8"', "8", '27/32"', '45/64"', "×", "12", '43/64"', '1/16"', "1", '39/64"']
    said = " ".join(all_text(path).split())
    assert "above" in said
    assert "Pilot" in said
    assert "inside face" in said


def test_a_role_that_signs_is_not_broken(tmp_path):
    path = rendered(tmp_path, SignOff(("Installer", "Checked by", "For the owner"), abreast=3))
    (low,) = [line for line in path_lines(path) if "owner" in line]
    assert "For the owner" in low


@pytest.mark.parametrize("before", [n / 10 for n in range(0, 12, 2)])
def test_a_heading_is_not_parted_from_its_table_wherever_the_column_ends(tmp_path, before):
    """What stands before it is a picture whose height goes through a line and a half in small steps."""
    held = io.BytesIO()
    Image.new("RGB", (20, 200)).save(held, "PNG")
    filled = Picture(held.getvalue(), height_mm=218.0 + before)
    table = Table((Column("Qty"), Column("Part", 4.0)), ((1, "cylinder"), (1, "unit")), title="In the box")
    found = places(rendered(tmp_path, Columns(2), filled, Heading("In the box", 2), table))
    heading, head = (next(at for text, at in found.items() if text.startswith(said)) for said in ("In the", "Qty"))
    assert heading[0] == pytest.approx(head[0], abs=20.0)
    assert heading[1] > head[1]


def test_a_long_fact_takes_more_of_its_row(tmp_path):
    """A third of a page would break it, two thirds do not; what follows still stands in the order of the facts."""
    long = "Landing of the north stair to Instrument store"
    pairs = (("Location", long), ("Hand", "LH"), ("Rating", "none"), ("Leaf", "Wood"))
    path = rendered(tmp_path, Facts(pairs, columns=3))
    found = places(path)
    assert found["Location"][1] == found["Hand"][1] == found[long][1], "on one line"
    assert found["Rating"][1] == found["Leaf"][1] < found["Hand"][1]
    assert found["Rating"][0] < found["Leaf"][0]


def test_facts_of_one_line_each_stand_in_even_columns(tmp_path):
    pairs = tuple((f"Fact{n}", "yes") for n in range(6))
    found = places(rendered(tmp_path, Facts(pairs, columns=3)))
    across = [found[f"Fact{n}"][0] for n in range(6)]
    assert across[:3] == across[3:]
    assert across[1] - across[0] == pytest.approx(across[2] - across[1])


def test_a_column_that_says_none_in_every_row_is_left_out(tmp_path):
    """Of pilots, say; an empty one stays, since it may be there to be written in."""

    def heads(pilot):
        columns = (Column("Hole", below=True), Column("No."), Column("Pilot", large=True), Column("Found"))
        table = Table(columns, (("access", 1, "-", ""), ("pilots", 2, pilot, "")))
        return all_text(rendered(tmp_path, table))

    assert "Pilot" not in heads("-")
    assert "Found" in heads("-")
    assert "Pilot" in heads('1/8"')


def test_a_number_drill_is_as_large_as_every_size(tmp_path):
    table = Table((Column("No."), Column("Hole", below=True), Column("Dia.", large=True)), ((3, "pilots", "No. 32"),))
    assert [word for word, size in written(rendered(tmp_path, table)) if size == 14.0] == ["No. 32"]


def test_a_second_column_that_is_run_in_stands_behind_a_semicolon(tmp_path):
    table = Table(
        (Column("Test"), Column("Expected", run_in=True), Column("Reading", run_in=True)),
        (("Volts", "9 to 12 V", "read ......"), ("Bolt", "out and back", "")),
    )
    text = all_text(rendered(tmp_path, table))
    assert "Test: Expected; Reading" in text
    assert "Volts: 9 to 12 V; read ......" in text
    assert "out and back;" not in text


def test_lines_to_sign_are_named_once_where_several_stand_one_under_another(tmp_path):
    roles = ("Installer", "Checked by", "For the owner")
    assert all_text(rendered(tmp_path, SignOff(roles))).count("Signature") == 1
    assert all_text(rendered(tmp_path, SignOff(roles, abreast=3))).count("Signature") == 3
    assert all_text(rendered(tmp_path, SignOff(roles), at_door=False)).count("Signature") == 3


def test_closest_of_all_are_only_sections_that_would_take_more_sheets_than_they_may(tmp_path):
    """Where they may take one sheet more they are set with more air."""
    # So many steps that one line more is too much for what is set close, and not for what is set closest.
    count = next(n for n in range(60, 90) if pages(rendered(tmp_path, Columns(2), steps(n))) == 2)
    path = rendered(tmp_path, Columns(2), steps(count), sheets=1)
    closest = pages(path), leading(path)
    assert min(sizes(path)) >= 11.0
    usual = rendered(tmp_path, Columns(2), steps(count), sheets=2)
    assert (closest[0], pages(usual)) == (1, 2)
    assert closest[1] < leading(usual)
