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
