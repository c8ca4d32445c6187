"""What can be asked, how it is refused, what is offered next, and how it is said."""

import pytest

from hwsched.attributes import Attribute, Choice
from hwsched.query import Askable, Compare, QueryError, Words, completions, parse, said_in_words
from hwsched.query.facts import KEYWORDS, RESULTS
from hwsched.query.parsing import signs
from hwsched.survey import ENTITIES
from tests.query.plain import ASKABLE


def fault(text, askable=ASKABLE):
    with pytest.raises(QueryError) as caught:
        parse(text, askable)
    return caught.value.fault


def quoted(text):
    return '"' + text.replace('"', '""') + '"'


@pytest.mark.parametrize("fact", [*Askable().facts], ids=lambda fact: fact.name)
def test_every_declared_fact_is_asked_for_by_its_name_its_label_and_its_column(fact):
    attribute = fact.attribute
    names = [fact.name, quoted(attribute.label)]
    if fact not in RESULTS:
        head = {"existing_item": "item"}.get(fact.entity, fact.entity)
        names += [f"{head}.{attribute.name}", f"{fact.entity}.{attribute.name}"]
    for name in names:
        assert Askable().fact(name.strip('"')) == fact
        asked = "is known" if "known" in signs(fact) else "= fits" if attribute.name == "status" else "= error"
        found = parse(f"{name} {asked}", Askable())
        assert isinstance(found.root, Compare)
        assert found.root.fact == fact
    assert not fact.name.endswith(("_mm", "_m", "_c"))


@pytest.mark.parametrize(
    ("entity", "attribute"),
    [(e.name, a) for e in ENTITIES for a in e.attributes if a.choices],
    ids=lambda each: getattr(each, "name", each),
)
def test_every_spelling_of_a_choice_reads_as_it_does_in_a_survey(entity, attribute):
    name = f"{entity}.{attribute.name}"
    for choice in attribute.choices:
        for word in (choice.value, choice.label):
            (asked,) = parse(f"{name} = {quoted(word)}", Askable()).root.values
            assert asked.value == choice.value


def test_lengths_take_the_unit_of_the_project_and_any_that_is_typed():
    for text, mm in {"1 3/4": 44.45, "45 mm": 45.0, "3'-0\"": 914.4, "0.9 m": 900.0}.items():
        (asked,) = parse(f"clear width = {text}", ASKABLE).root.values
        assert asked.value == pytest.approx(mm)
    (asked,) = parse("leaf.width = 900", Askable(bare_unit="mm")).root.values
    assert asked.value == 900.0
    assert "unit" in fault("leaf.width = 900", Askable()).message


OWN = Askable(
    own=(
        ("opening", Attribute("fire_rating", "Rating of the insurer")),
        ("opening", Attribute("uses", "Uses of the room")),
        ("opening", Attribute("in", "In")),
        ("opening", Attribute("width", "Width of the opening", "length", "mm")),
        ("opening", Attribute("mark2", "Mark")),
        ("existing_item", Attribute("wide_mm", "Leaf width", "length", "mm")),
    )
)


def test_a_field_of_the_projects_own_is_always_reached_by_the_name_as_which_it_is_written():
    for fact in OWN.facts:
        assert OWN.fact(fact.name) == fact, fact.name
        if "known" in signs(fact):
            assert parse(f"{fact.name} is known", OWN).root.fact == fact, fact.name
    # A survey's columns read it so: the declared label wins over a field of the same label.
    assert OWN.fact("Mark").attribute.name == "mark"
    assert OWN.fact("leaf width").entity == "leaf"
    assert OWN.fact("Width").entity == "opening"
    assert OWN.fact("leaf.width").entity == "leaf"


FAULTS = {
    "leaf.thicknes > 2": (0, 13, "leaf.thickness", "no fact"),
    "stair = yes and rating = 91": (25, 27, "20 min", "none of the words"),
    "finding = frame-stop-claer": (10, 26, "frame-stop-clear", "no rule"),
    "hand > LH": (5, 6, "is known", "cannot be asked for with >"),
    "stair contains y": (6, 14, "is known", "cannot be asked for with contains"),
    "finding > error": (8, 9, "in", "cannot be asked for with >"),
    "status is known": (10, 15, "in", "cannot be asked for with is"),
    "leaf.thickness > 1 3/4 1 3/4": (17, 28, "length", "1 3/4 1 3/4"),
    "(a or b": (7, 7, ")", "not closed"),
    "a or b)": (6, 7, "and", "does not belong here"),
    "rating =": (8, 8, "20 min", "a value is missing"),
    "uses": (4, 4, "text", "a value is missing"),
    "rating = and x": (9, 12, "20 min", "does not belong"),
    "a and": (5, 5, "a fact", "missing at the end"),
    "and a": (0, 3, "a fact", "missing before"),
    "level = 1, 2": (9, 10, "in", "several values"),
    "level in 1,": (11, 11, "text", "a value is missing"),
    "mark = 'A": (7, 9, "'", "not closed"),
    "room to = Hall (east)": (15, 16, "and", "in quotes"),
    'room to = the "old" hall': (14, 19, "and", "beside a value in quotes"),
    "mill house leaf.thickness > 1": (11, 25, "and", "is missing before 'leaf.thickness'"),
    "leaf.width is 3": (14, 15, "known", "after is stands"),
    "leaf.width > unknown": (13, 20, "length", "unknown cannot be asked"),
    "leaf.width between 30": (21, 21, "and", "two values"),
    "leaf.width between 40 and 30": (11, 28, "", "the lower value goes first"),
    "every rating = 20": (6, 12, "", "every goes with"),
    "every leaf.width": (16, 16, "between", "after every"),
    "mill not house": (5, 8, "and", "does not belong here"),
    "known": (0, 5, "a fact", "in quotes it is looked for"),
}


@pytest.mark.parametrize("text", FAULTS)
def test_an_error_points_at_its_place_and_says_what_could_stand_there(text):
    start, end, instead, message = FAULTS[text]
    found = fault(text)
    assert (found.start, found.end) == (start, end)
    assert message in found.message
    assert not instead or instead in " ".join((*found.expected, *found.near))


def test_the_error_shows_the_place_under_the_text():
    with pytest.raises(QueryError) as caught:
        parse("stair = yes and rating = 91", ASKABLE)
    *_, line, mark = caught.value.pointed.splitlines()
    assert line[mark.index("^") : mark.rindex("^") + 1] == "91"


def test_names_that_the_project_lacks_are_remarked_on_and_found_by_nothing():
    query = parse("building = mil house and level = 3 and uses ARC-M81 and building = ANNEX", ASKABLE)
    assert [(query.text[r.start : r.end], r.near[:1]) for r in query.remarks] == [
        ("mil house", ("Mill House",)), ("3", ()), ("ARC-M81", ("ARC-M18",)),
    ]  # fmt: skip
    assert str(query.remarks[0]) == "the project has no building mil house; nearest: Mill House"


def test_words_alone_are_words_and_words_of_the_language_are_looked_for_in_quotes():
    assert parse("mill leaf", ASKABLE).root == Words(("mill", "leaf"))
    for word in KEYWORDS:
        assert parse(f'"{word}"', ASKABLE).root == Words((word,))
    assert parse("“fire door”", ASKABLE).root == Words(("fire door",))
    assert parse("  ", ASKABLE).root is None


SAID = {
    "thk > 1 3/4 and rating is known and level = 2": 'leaf thickness over 1 3/4", fire rating known, level 2',
    "rating in 20, 45, unknown": "fire rating 20 min, 45 min or unknown",
    "not (status = stale or uses ARC-M18)": "not: (stale or uses ARC-M18)",
    "finding = error and waived = note": "finding error, waived note",
    "every leaf.width between 30 and 36 in": 'leaf width of every leaf from 30" to 36"',
    "room to contains hall": "“hall” in room to",
    "mill b": "“mill” and “b” in mark, building or a room",
    "stair != yes": "stair door other than yes",
    "rating != 'Not rated'": "fire rating other than not rated",
    "temperature_low <= -5": "lowest temperature at most -5 °C",
    "": "all openings",
}


@pytest.mark.parametrize("text", SAID)
def test_what_is_asked_is_said_in_words(text):
    assert said_in_words(parse(text, ASKABLE)) == SAID[text]


def test_lengths_are_said_as_the_project_shows_them():
    assert said_in_words(parse("leaf.width = 36", ASKABLE), "mm") == "leaf width 914.4 mm"


OFFERED = {
    "": {"mark", "leaf.thickness", "status", "finding", "not", "every", "("},
    "leaf.thi": {"leaf.thickness"},
    "thick": {"leaf.thickness"},
    "every ": {"leaf.thickness", "item.kind"},
    "leaf.thickness ": {"=", ">", "between", "is known"},
    "rating = ": {"20", "45", "none", "unknown"},
    "rating = 20 or rating = n": {"none"},
    "building = ": {'"Mill House"', '"Boat Shed"'},
    "uses ": {"ARC-M18", '"TAB 7"'},
    "finding = fr": {"frame-stop-clear"},
    "status in fits, ": {"fits", "stale", "not-judged"},
    "leaf.width is ": {"known", "unknown"},
    "level = 2 ": {"and", "or"},
    "(level = 2 ": {"and", "or", ")"},
    "(a)": {"and", "or"},
    "stair = ": {"yes", "no", "unknown"},
    "key co": {"key_code"},
}


@pytest.mark.parametrize("text", OFFERED)
def test_what_may_stand_next_is_offered(text):
    offered = {offer.text for offer in completions(text, len(text), ASKABLE).offers}
    assert offered >= OFFERED[text]


@pytest.mark.parametrize("text", [text for text in OFFERED if text])
def test_what_is_offered_can_be_read(text):
    """Each offer, put where it belongs, leads to a text that is whole or that breaks off, not to one that is wrong."""
    found = completions(text, len(text), ASKABLE)
    assert found.offers
    for offer in found.offers:
        then = text[: found.start] + offer.text
        assert breaks_off(then), then


def test_a_fact_is_offered_by_any_word_of_its_label_behind_those_that_begin_so():
    assert "accessible" in [offer.text for offer in completions("rout", 4, ASKABLE).offers], "Accessible route"
    offers = [offer.text for offer in completions("frame", 5, ASKABLE).offers]
    assert offers.index("frame_material") < offers.index("header_depth"), "Depth under the frame's head"


def breaks_off(text):
    """Whether a text is whole, or wrong only in that something is missing at its end."""
    try:
        parse(text, ASKABLE)
    except QueryError as error:
        return error.fault.start >= len(text)
    return True


def test_nothing_is_offered_where_the_text_before_is_wrong():
    assert completions("leaf.thicknes > 2 and ", 22, ASKABLE).offers == ()
    assert completions("mark = 'A", 9, ASKABLE).offers == ()


def test_the_place_of_the_cursor_decides():
    text = "rating = 4 and stair = yes"
    found = completions(text, 10, ASKABLE)
    assert (found.start, found.end, [offer.text for offer in found.offers]) == (9, 10, ["45"])


def test_choices_of_ones_own_are_read_by_their_words():
    own = Askable(own=(("opening", Attribute("zone", "Zone", "choice", choices=(Choice("North", "North"),))),))
    (asked,) = parse("zone = north", own).root.values
    assert asked.value == "North"
