"""The list of texts that translators begin from is that of the program, and says nothing that cannot be filled in."""

import ast
import re
from string import Formatter

from hwsched.kept_sentences import LIST as SENTENCES
from tests.house import sentences
from tests.house.texts import LIST, ROOT, texts, written

NAME = re.compile(r"[a-z_][a-z0-9_]*")


def test_the_list_is_that_of_the_program():
    assert LIST.read_text(encoding="utf-8") == written(), "run python -m tests.house.texts"


def test_the_sentences_are_those_of_rules_and_steps():
    assert SENTENCES.read_text(encoding="utf-8") == sentences.written(), "run python -m tests.house.sentences"


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


COUNTED = re.compile(r"(?<! of )\{\w+(?::,)?\} (?:files|openings|rows|pages|steps|groups|parts|supplies|lines)\b")
# Said only where there are several, or of two numbers, of which either may be one.
SEVERAL = {
    "{count} openings",
    "{waiting} openings are",
    "{count} groups of openings without a set take the same parts, {openings} openings in all. "
    "Double-click a name to change it.",
    "{openings} openings: {count} different parts → {count_2}, {proven}. List price {prices} → {prices_2}. {count_3} "
    "openings would change.{left} Nothing is changed yet.",
    "{count} rows and values could not stay",
    "{count} pages of {openings} openings",
    "{count} on {count_2} pages",
    "{count} openings, {count_2} headings",
    "{count} openings: only {count_2} that are low are named.",
}


def test_one_of_a_thing_is_said_as_one():
    found = set()
    for path in sorted((ROOT / "hwsched").rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "phrase":
                found |= {text for text in plain_words(node.args[0]) if COUNTED.search(f" {text}")}
    assert found == SEVERAL, "say it by phrase_of_count"


def plain_words(node):
    """Return the words of an argument that stand in it as they are, whatever they depend on."""
    if isinstance(node, ast.Constant):
        return [node.value] if isinstance(node.value, str) and any(map(str.isalpha, node.value)) else []
    if isinstance(node, ast.IfExp):
        parts = [node.body, node.orelse]
    elif isinstance(node, (ast.BoolOp, ast.JoinedStr)):
        parts = node.values
    elif isinstance(node, ast.BinOp):
        parts = [node.left, node.right]
    else:
        parts = []
    return [word for each in parts for word in plain_words(each)]


def test_no_word_is_put_into_a_phrase_past_the_catalogue():
    found = []
    for path in sorted((ROOT / "hwsched").rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") in ("phrase", "phrase_of_count"):
                words = [word for each in node.keywords for word in plain_words(each.value)]
                found += [f"{path.relative_to(ROOT)}, line {node.lineno}: {word!r}" for word in words]
    assert not found, "\n".join(found)
