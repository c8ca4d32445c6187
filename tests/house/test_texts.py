"""The list of texts that translators begin from is that of the program, and says nothing that cannot be filled in."""

import re
from string import Formatter

from tests.house.texts import LIST, texts, written

NAME = re.compile(r"[a-z_][a-z0-9_]*")


def test_the_list_is_that_of_the_program():
    assert LIST.read_text(encoding="utf-8") == written(), "run python -m tests.house.texts"


def test_what_is_filled_in_has_a_name():
    for each in texts():
        for text in each:
            # What stands alone is never filled in: braces in it are its own.
            if re.search(r"(?<!\{)\{[a-z_]", text):
                names = [name for _, name, _, _ in Formatter().parse(text) if name is not None]
                assert all(NAME.fullmatch(name) for name in names), text


def test_both_forms_of_a_number_have_the_same_names():
    for one, *many in texts():
        for other in many:
            named = [{name for _, name, _, _ in Formatter().parse(text) if name} for text in (one, other)]
            assert named[0] | {"count"} == named[1] | {"count"}, one
