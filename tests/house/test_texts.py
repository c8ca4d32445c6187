"""The list of texts that translators begin from is that of the program, and says nothing that cannot be filled in."""

import ast
import itertools
import re
from string import Formatter

from hwsched.kept_sentences import LIST as SENTENCES
from tests.house import sentences
from tests.house.texts import LIST, ROOT, calls, texts, written

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


COUNTED = re.compile(r"(?<! of )\{\w+(?::[^}]*)?\}((?: [a-z]+){1,4})")
"""A value with the words behind it, up to the next sign; of two numbers the second has its noun for itself."""
VERBS = {
    "as", "bears", "does", "goes", "has", "holds", "is", "its", "keeps", "lets", "needs", "puts", "stands", "starts",
    "takes", "this", "was", "works",
}  # fmt: skip
"""Words in s behind a value that are no thing of which there are several."""
PREPOSITIONS = {"at", "in", "of", "on", "until"}
# Said only where there are several, or of what is counted elsewhere in the sentence.
SEVERAL = {
    ", about {turns} turns",
    "about {turns} turns in",
    "{count} openings",
    "{count} rows and values could not stay",
    "{count} openings: only {count_2} that are low are named.",
    "{count} selected openings are not in this view, and commands leave them alone: {named}.",
    "Mend: {count} cures…",
    "openings with cells due within {days} days",
    # What stands there is no number.
    "Remove {what} with all {part} facts?",
    "are the rows of the table {read} types of the openings in the other one?",
    "{minutes:.0f} min {seconds:.0f} s",
}


def several(text):
    """Return the value and the words behind it that speak of several things, in whatever number they are."""
    for found in COUNTED.finditer(text):
        # What follows a preposition is another thing: "{count} of these openings", "{count} opening on batteries".
        own = itertools.takewhile(lambda word: word not in PREPOSITIONS, found[1].split())
        things = [each for each in own if each.endswith("s") and not each.endswith("ss")]
        if things and things[0] not in VERBS:
            yield found[0]


def test_one_of_a_thing_is_said_as_one():
    """Not "1 runs": a text with a number beside a word in the plural has another for one, by phrase_of_count."""
    found = set()
    for _, by, call in calls():
        # Of a text in two forms the one for one speaks of several where it holds another number.
        own = "{count" if by == "phrase_of_count" else "{}"
        words = plain_words(call.args[0])
        found |= {text for text in words if not all(each.startswith(own) for each in several(text))}
    assert found == SEVERAL, "say it by phrase_of_count"


def test_a_number_beside_several_is_seen_and_a_verb_is_none():
    assert list(several(" {count} runs that are laid")) == ["{count} runs that are laid"]
    assert list(several("Make {count:,} new sets.")) == ["{count:,} new sets"]
    assert not list(several("{mark} stands in rows, {n} of {m} lines"))


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
    for path, by, call in calls():
        if by != "to_phrase":
            words = [word for each in call.keywords for word in plain_words(each.value)]
            found += [f"{path.relative_to(ROOT)}, line {call.lineno}: {word!r}" for word in words]
    assert not found, "\n".join(found)


SAYS = {"phrase", "to_phrase", "phrase_of_count", "kept_phrase", "kept_error", "role_said"}
# Names of things by which the program knows them, of files, lines of the log, and units.
NAMES = {
    "many ", "building ", "column ", "needs ", "no job", " MB", " kB", " was stopped", "the desktop",
    " did not come to its end: ", " failed inside the program", "Mend them: ",
    " drawing.pdf", " rescued.hwsched",
}  # fmt: skip
# Words of which one is chosen, that a person is never shown: roles of colours, kinds, names of icons and of files.
CODES = {
    "fact", "try", "opening", "book", "survey", "Project", "refused", "soft", "stopped", "failed", "done", "disabled",
    "held", "inside", "parts", "number", "length", "true", "false", "tint", "hover", "text", "server", "openings",
    "all", "Earlier version", "Not worked out yet", "other", "mm",
}  # fmt: skip


def worded(text):
    """Tell whether words stand in a piece of a text, and not a name that runs on."""
    return re.search(r"(?:^|\s)[A-Za-z]{2,}(?:\s|[:,.;]|$)", text) is not None and " " in text


def past_the_catalogue(node):
    """Yield line and words of what is put together or chosen in a piece of code without being said."""
    if isinstance(node, (ast.Raise, ast.Compare, ast.Subscript)):
        return
    if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
        return
    parts = list(ast.iter_child_nodes(node))
    if isinstance(node, ast.Call) and getattr(node.func, "id", getattr(node.func, "attr", "")) in SAYS:
        parts = [each.value for each in node.keywords]
    elif isinstance(node, ast.JoinedStr):
        pieces = [each.value for each in node.values if isinstance(each, ast.Constant)]
        yield from ((node.lineno, each) for each in pieces if worded(each) and each not in NAMES)
    elif isinstance(node, (ast.IfExp, ast.BoolOp)):
        chosen = [node.body, node.orelse] if isinstance(node, ast.IfExp) else node.values[1:]
        words = [word for each in chosen if isinstance(each, ast.Constant) for word in plain_words(each)]
        plain = [each for each in words if re.fullmatch(r"[A-Za-z][a-z]+(?: [a-z]+)*", each)]
        yield from ((node.lineno, each) for each in plain if each not in CODES | NAMES)
    for each in parts:
        yield from past_the_catalogue(each)


def desktop():
    """Yield each module of the desktop, with its code."""
    for path in sorted((ROOT / "hwsched" / "desktop").rglob("*.py")):
        yield path.relative_to(ROOT), ast.parse(path.read_text(encoding="utf-8"))


def test_no_word_of_the_desktop_is_put_together_past_the_catalogue():
    found = [f"{path}, line {line}: {text!r}" for path, tree in desktop() for line, text in past_the_catalogue(tree)]
    assert not found, "say it by phrase:\n" + "\n".join(found)


# What is kept in English on the floors below, and how it is said: nothing shows it as it is.
KEPT = {
    "describe": "said",
    "show_value": "said_value",
}
# What a field holds to be typed over, read back in the words of the survey.
TYPED = {"hwsched/desktop/project/calculator_fields.py", "hwsched/desktop/project/calculator_answers.py"}


def test_the_desktop_shows_nothing_that_is_kept_in_english():
    found = []
    for path, tree in desktop():
        for node in ast.walk(tree):
            name = getattr(node.func, "id", getattr(node.func, "attr", "")) if isinstance(node, ast.Call) else ""
            # The English of a question is the key by which its buttons are known.
            keyed = str(path).endswith("survey/sheet_page.py") and name == "describe"
            if name in KEPT and str(path) not in TYPED and not keyed:
                found.append(f"{path}, line {node.lineno}: {name}; {KEPT[name]} says it")
    assert not found, "\n".join(found)
