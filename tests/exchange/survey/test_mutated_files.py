"""Files with damage drawn at random: read, or refused with a sentence that names the file; never anything else.

A bounded share in every run, another one each day; ``HWSCHED_FUZZ=5000`` draws as many as it says.
"""

import os
import random
import zipfile
from itertools import islice

import pytest

from hwsched.exchange.problems import InputRejected
from hwsched.exchange.survey.book import SurveyOptions, read_survey
from tests.exchange.old_files import ods, xls, xlsb
from tests.exchange.surveys import write
from tests.turns import SEED

COUNT = max(40, int(os.environ.get("HWSCHED_FUZZ", "0"))) // 5
ROWS = [
    ["Yard doors", "", "", "", ""],
    ["Mark", "Level", "Width", "Thickness", "Fire rating"],
    *([f"D-{n}", "1", "36", "1 3/4", "90 min"] for n in range(6)),
    ["Grand total: 6", "", "", "", ""],
]
CELLS = [(row, column, text) for row, line in enumerate(ROWS) for column, text in enumerate(line)]
ODD = (
    b"\x00", b"\xff", b'"', b"<", b"&a;", b"]]>", b"ZZZZZZ3", b"A1048577", b"-1", b"99999999999", b"e308",
    b"\xe2\x80\xae", b"<!DOCTYPE x>", b"4294967295", b"\r", b";", b"\t", b"=1+1", b"2(", b"nan",
)  # fmt: skip


ON_SIDE = [
    ["Opening", *(f"D-{n}" for n in range(6))],
    ["Level", "1", "", "2", "", "", "3"],
    ["Width", *(["36"] * 6)],
    ["FR", "FD60", "-", "90", "-", "45", "60"],
    ["Matl", "HM", "WD", "timbr", "HM", "HM", "HM"],
    ["Closer", "x", "x", "", "x", "no", ""],
]


def on_side(path):
    path.write_text("\n".join("\t".join(row) for row in ON_SIDE), encoding="utf-8")
    return path


def csv(path):
    path.write_text("\n".join(",".join(row) for row in ROWS), encoding="utf-8")
    return path


KINDS = {
    "a.xlsx": lambda path: write(path, {"Doors": ROWS}, merged=["A1:C1"]),
    "a.xls": lambda path: xls(path, CELLS),
    "a.xlsb": lambda path: xlsb(path, CELLS, span=(len(ROWS), 5)),
    "a.ods": lambda path: ods(path, ROWS),
    "a.csv": csv,
    "b.tsv": on_side,
}


def damaged(content, rng):
    """Return bytes with some cut out, doubled, overwritten or put in."""
    data = bytearray(content)
    for _ in range(rng.choice((1, 1, 2, 5, 20))):
        place = rng.randrange(len(data) + 1)
        size = rng.choice((1, 1, 2, 8, 64))
        what = rng.randrange(5)
        if what == 0:
            del data[place : place + size]
        elif what == 1:
            data[place:place] = data[place : place + size] * rng.choice((1, 3, 200))
        elif what == 2:
            data[place : place + size] = rng.randbytes(size)
        elif what == 3:
            data[place:place] = rng.choice(ODD)
        elif data:
            data[place % len(data)] ^= 1 << rng.randrange(8)
    return bytes(data)


def mutants(path, rng):
    """Yield contents: the file itself damaged, or one of the parts that it packs."""
    whole = path.read_bytes()
    parts = {}
    if zipfile.is_zipfile(path):
        with zipfile.ZipFile(path) as archive:
            parts = {name: archive.read(name) for name in archive.namelist()}
    while True:
        if not parts or rng.random() < 0.2:
            yield damaged(whole, rng)
            continue
        name = rng.choice(list(parts))
        with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as made:
            for each, content in parts.items():
                made.writestr(each, damaged(content, rng) if each == name else content)
        yield path.read_bytes()


@pytest.mark.parametrize("name", KINDS)
def test_damage_is_read_or_refused_in_a_sentence(tmp_path, name):
    rng = random.Random(f"{SEED} {name}")
    path = KINDS[name](tmp_path / name)
    (tmp_path / "mutants").mkdir()
    mutant = tmp_path / "mutants" / name
    for number, content in enumerate(islice(mutants(path, rng), COUNT)):
        mutant.write_bytes(content)
        try:
            found = read_survey(mutant, SurveyOptions(bare_unit="in"))
            said = "\n".join(problem.describe() for problem in found.problems)
        except InputRejected as refused:
            said = str(refused)
            assert said
        except BaseException as error:
            raise AssertionError(f"HWSCHED_SEED={SEED}, mutant {number} of {name}: {error!r}") from error
        assert all(line.startswith(name) for line in said.splitlines() if ": " in line), said
        assert mutant.read_bytes() == content


# Fields of a zip archive's central directory, by their place behind its mark (APPNOTE of the format, 4.3.12).
TOLD = {
    "is encrypted": (8, b"\x01\x00"),
    "has a name that is no text": (8, b"\x00\x08"),
    "is packed in an unknown way": (10, b"\x63\x00"),
    "begins before the file": (42, b"\xff\xff\xff\xff"),
}


@pytest.mark.parametrize("name", ["a.xlsx", "a.xlsb", "a.ods"])
@pytest.mark.parametrize(("place", "told"), TOLD.values(), ids=TOLD)
def test_what_an_archive_says_wrongly_of_a_part_is_refused_in_a_sentence(tmp_path, name, place, told):
    """Of every part at once, as no chance does it."""
    path = tmp_path / name
    KINDS[name](path)
    content, mark = bytearray(path.read_bytes()), b"PK\x01\x02"
    at = content.find(mark)
    while at >= 0:
        content[at + place : at + place + len(told)] = told
        if told == b"\x00\x08":
            content[at + 46] = 0x9A
        at = content.find(mark, at + 4)
    path.write_bytes(content)
    with pytest.raises(InputRejected) as error:
        read_survey(path, SurveyOptions(bare_unit="in"))
    assert name in str(error.value)
