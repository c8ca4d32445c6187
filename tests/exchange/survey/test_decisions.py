"""Words of a person on differences, and their text: read as they are said, refused where they are none."""

import pytest

from hwsched.exchange.problems import InputRejected
from hwsched.exchange.survey.decisions import Line, answered, read_decisions, read_word, with_lines, written
from hwsched.exchange.survey.facts import Decisions


@pytest.mark.parametrize("word", ["gone", "lost=file", "gone=yes", "renamed=held", "=file"])
def test_a_word_that_is_none(word):
    with pytest.raises(ValueError, match=r"accepted|write KIND"):
        read_word(word)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("decision = 3", "holds something else than entries"),
        ('plan = "x"', "holds something else than entries"),
        ('[[decision]]\nkind = "gone"\nanswer = "yes"', "decision 1: 'yes' is no answer on gone; accepted: file, held"),
        ('[[decision]]\nkind = "gone"\nwhat = "yes"', "decision 1 says what, which no decision says"),
        ("[[decision]]\nkind = 3", "decision 1 is no entry of texts"),
        ("[[", "is no text of decisions"),
        ("\x00", "is no text of decisions"),
    ],
)
def test_a_text_that_is_none_is_refused_with_its_entry(tmp_path, text, said):
    path = tmp_path / "bad.toml"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(InputRejected) as refused:
        read_decisions(path, Decisions())
    assert said in refused.value.problems[0].message


def test_what_is_written_is_read_and_options_go_before_it(tmp_path):
    lines = [
        Line("renamed", "S-2", known="102", answer="file", note="the same rooms"),
        Line("spelling", "d\u2013103", known="D-103", answer="file"),
        Line("renamed", "T-1", known="104", answer="apart"),
        Line("by-hand", 'M "7"', "Opening.hand", answer="held"),
        Line("blank", "", "hand", answer="file"),
    ]
    path = tmp_path / "decisions.toml"
    path.write_text(written(lines, "doors.csv"), encoding="utf-8")
    read = read_decisions(path, Decisions(answers=dict([read_word("blank=held")])))
    assert (read.renamed, read.same, read.apart) == ({"S-2": "102"}, {"d\u2013103": "D-103"}, {"T-1"})
    assert answered(read, "by-hand", 'M "7"', "hand", "Opening") == "held"
    assert answered(read, "blank", "1", "hand") == "held"
    assert with_lines(Decisions(), lines).answers["blank", "", "hand"] == "file"
