"""What a person answers to a question of a survey file, as options by which the file is read again.

The desktop and the command line give the same options from the same answers: here belongs how an answer becomes one.
"""

from collections.abc import Iterable, Mapping
from dataclasses import replace

from hwsched.exchange.survey.facts import Question, SurveyOptions
from hwsched.exchange.survey.mapping import plain_word
from hwsched.exchange.survey.pairs import PAIRS
from hwsched.exchange.survey.repeated_marks import AS_IT_STANDS
from hwsched.exchange.survey.two_tables import TABLES


def column_key(question: Question) -> str:
    """Return the name of a question's column in options: its heading, or its letters where it has none of its own."""
    return f"column {question.column}" if question.by_letter or not question.header else question.header


def column_name(header: str, column: str, headers: Iterable[str]) -> str:
    """Return the name of a column in options: its heading, or its letters where that is no column's or another's too.

    Examples
    --------
    >>> column_name("Matl", "D", ["Mark", "Matl"]), column_name("Matl", "D", ["Matl", "MATL."])
    ('Matl', 'column D')
    """
    again = sum(plain_word(each) == plain_word(header) for each in headers) > 1
    return f"column {column}" if again or not header else header


def answered(options: SurveyOptions, question: Question, answer: str) -> SurveyOptions:
    """Return the options by which a file is read after an answer.

    Parameters
    ----------
    options : SurveyOptions
        As it was read.
    question : Question
        Of that reading.
    answer : str
        One of its answers, or another that its kind takes.

    Examples
    --------
    >>> asked = Question("Doors", "H", "Rating", '"-" (2)', (4, 9), ("unknown", "none"))
    >>> answered(SurveyOptions(), asked, "none").dashes
    {'Rating': 'none'}
    """
    key = column_key(question)
    if question.kind == "dash":
        return replace(options, dashes={**options.dashes, key: answer})
    if question.kind == "word":
        return replace(options, words=with_word(options.words, key, question.word, answer))
    if question.kind == "column":
        return replace(options, columns={**options.columns, key: fact_of(question, answer)})
    if question.kind == "count":
        return replace(options, counts=answer)
    if question.kind == "mark":
        return replace(options, mark="" if answer == AS_IT_STANDS else answer)
    if question.kind == "table":
        return replace(options, tables=next((known for known in TABLES if known == answer), ""))
    return replace(options, pairs=next((known for known in PAIRS if known == answer), ""))


def fact_of(question: Question, answer: str) -> str:
    """Return the fact that an answer makes of a column; one that is no answer of the question is a fact itself.

    Examples
    --------
    >>> asked = Question("Doors", "H", "FR", "", (), ("not read", "Fire rating"), "column", "", ("", "opening.rating"))
    >>> fact_of(asked, "Fire rating"), fact_of(asked, "leaf.core")
    ('opening.rating', 'leaf.core')
    """
    return dict(zip(question.answers, question.facts, strict=False)).get(answer, answer)


def with_word(
    words: Mapping[str, Mapping[str, str]], key: str, word: str, meaning: str | None
) -> dict[str, dict[str, str]]:
    """Return words with the meaning of one more in a column, or without it where there is none.

    Examples
    --------
    >>> with_word({"Core": {"HC": "empty"}}, "Core", "HC", None)
    {}
    """
    held = {column: dict(meanings) for column, meanings in words.items()}
    if meaning is None:
        held.get(key, {}).pop(word, None)
    else:
        held.setdefault(key, {})[word] = meaning
    return {column: meanings for column, meanings in held.items() if meanings}
