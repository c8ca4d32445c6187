"""The file in which an office declares how documents look: read whole, or refused with every slip named."""

import pytest

from hwsched.documents import LINES
from hwsched.exchange.problems import InputRejected
from hwsched.exchange.release.office_file import EXAMPLE, read_office
from hwsched.values.office import Office

DOCUMENTS = [line.name for line in LINES]


def read(text):
    return read_office(text, "office.toml", DOCUMENTS)


def problems(text):
    with pytest.raises(InputRejected) as caught:
        read(text)
    return [each.describe() for each in caught.value.problems]


def test_the_example_is_taken_and_so_is_all_that_it_shows():
    office = read(EXAMPLE)
    assert office.letterhead == ("Quay Door Works", "12 Harbour Road")
    # Each line that is switched off is one that may be switched on: what shows a value is one.
    lines = EXAMPLE.splitlines()
    whole = "\n".join(line.removeprefix("# ") if line.startswith("# ") and ("=" in line or "[[" in line) else line
                      for line in lines)  # fmt: skip
    office = read(whole)
    assert (office.logo, office.logo_mm) == ("logo.png", 12.0)
    assert office.words == {"Sign-off": "Signatures"}
    assert office.notes_of("schedule") == ("All dimensions are to be verified at the opening.",)
    assert office.order["schedule"][0] == "Summary"
    (page,) = office.pages
    assert (page.place, page.documents, page.title, page.picture) == ("before", ("schedule",), "Terms", "plan.png")
    assert office.named_pictures == ("logo.png", "plan.png")


def test_what_says_nothing_changes_nothing():
    assert read("format = 1") == Office()


def test_papers_of_the_desk_and_of_the_door():
    office = read('format = 1\npaper = "a4"\ndoor_paper = "a5"')
    assert {name: office.paper_of(name) for name in ("schedule", "packets", "box-sheets")} == {
        "schedule": "a4", "packets": "a5", "box-sheets": "a4",
    }  # fmt: skip
    assert read('format = 1\npaper = "a4"').paper_of("packets") == "a4"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "format is None; accepted: format = 1"),
        ("format = 2", "format is 2; accepted: format = 1"),
        ('format = 1\npaper = "a3"', "paper is 'a3'; accepted: letter, a4, a5"),
        ('format = 1\npapre = "a4"', "papre is not known; accepted: paper"),
        ("format = 1\nletterhead = 3", "letterhead is 3; accepted: a table [letterhead]"),
        ("format = 1\n[letterhead]\nlines = [1]", "letterhead.lines is [1]"),
        ('format = 1\n[letterhead]\nlogo = "../secret.png"', "letterhead.logo is '../secret.png'"),
        ('format = 1\n[letterhead]\nlogo = "C:x.png"', "letterhead.logo is 'C:x.png'"),
        ("format = 1\n[letterhead]\nlogo_mm = 400", "letterhead.logo_mm is 400; accepted: 5 to 40"),
        ("format = 1\n[letterhead]\nlogo_mm = nan", "letterhead.logo_mm is nan; accepted: 5 to 40"),
        ('format = 1\n[files]\nopenings = "{building}"', "files.openings is '{building}'; accepted: a text with {m"),
        ('format = 1\n[files]\nname = "{document.x}"', "files.name is '{document.x}'"),
        ('format = 1\n[files]\nname = "{document:9999999}"', "files.name is '{document:9999999}'"),
        ('format = 1\n[files]\nname = "{document"', "files.name is '{document'"),
        ('format = 1\nlanguage = "en/../x"', "language is 'en/../x'"),
        ('format = 1\n[notes]\nschedul = ["x"]', "notes.schedul is 'schedul'; accepted: schedule"),
        ('format = 1\n[words]\n"Steps" = 3', 'words."Steps" is 3; accepted: a text'),
        ('format = 1\n[[page]]\nplace = "over"\ndocuments = ["all"]\ntitle = "T"', "page 1.place is 'over'"),
        ('format = 1\n[[page]]\nplace = "after"\ndocuments = ["all"]', "page 1 is 'empty'"),
        ('format = 1\n[[page]]\nplace = "after"\ntitle = "T"', "page 1.documents is None"),
        ("format = 1\npage = 3", "page is 3; accepted: tables [[page]]"),
        ("format = ", "is no TOML"),
        ("a" * 300_000, "is too long"),
        ("format = 1\nx = " + "[" * 5000, "is no TOML"),
    ],
)  # fmt: skip
def test_every_slip_is_named(text, said):
    assert any(said in line for line in problems(text)), problems(text)


def test_all_slips_are_told_at_once():
    assert len(problems('format = 3\npaper = "a3"\nlanguage = 4')) == 3
