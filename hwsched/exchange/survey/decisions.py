"""What a person can say of the differences between a survey file and the project, and the open text that holds it.

A difference is of a kind; a word on it is said of all of a kind, of a fact, of an opening or of one cell, and the
narrowest word holds. Here belong the kinds, the words and their text (TOML); what follows from them stands in
`deciding`.
"""

import json
import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any, Final

from hwsched.exchange.problems import FileProblem, InputRejected
from hwsched.exchange.survey.facts import ANY, Answer, AnswerKey, Decisions

_LARGEST: Final = 20_000_000
_NAMES: Final = frozenset({"kind", "mark", "known", "fact", "answer"})


@dataclass(frozen=True, slots=True)
class DifferenceKind:
    """One way in which a file and the project can differ."""

    name: str
    title: str
    """For people, of several."""
    answers: Mapping[Answer, str]
    """What each answer does; ``ask`` leaves the project as it is and keeps the question."""
    usual: Answer
    """Taken where nothing is said."""


def _either(file: str, held: str) -> Mapping[Answer, str]:
    return {"file": file, "held": held, "ask": "left open"}


def _proposed(file: str) -> Mapping[Answer, str]:
    return {"file": file, "apart": "it is an opening of its own", "ask": "left open"}


KINDS: Final[tuple[DifferenceKind, ...]] = (
    DifferenceKind("renamed", "Renamed", _proposed("the known opening takes the file's mark"), "ask"),
    DifferenceKind(
        "spelling", "Spelt otherwise", {**_proposed("it is the known opening, which keeps its mark"),
                                        "renamed": "the known opening takes the file's spelling"}, "ask",
    ),
    DifferenceKind(
        "divided", "One mark, now several", _proposed("the known opening carries on under it, the others are new"),
        "ask",
    ),
    DifferenceKind(
        "joined", "Several marks, now one",
        {"file": "it carries on under the file's mark, the others are retired", "apart": "it is none of them",
         "ask": "left open"}, "ask",
    ),
    DifferenceKind("gone", "Not in the file", _either("the opening is retired", "the opening stays"), "ask"),
    DifferenceKind("again", "Retired, and in the file", _either("it is brought back", "it stays retired"), "ask"),
    DifferenceKind("by-hand", "Set by hand", _either("the file's value is taken", "what was set by hand stays"), "ask"),
    DifferenceKind("blank", "Blank in the file", _either("the fact becomes unknown", "the fact stays"), "ask"),
    DifferenceKind("merged", "Pairs that are single", _either("the leaf goes, with what is on it", "it stays"), "ask"),
    DifferenceKind("split", "Single, now a pair", _either("it becomes a pair", "it stays single"), "file"),
    DifferenceKind("moved", "Moved", _either("it goes to the file's level", "it stays where it is"), "file"),
    DifferenceKind("changed", "Changed", _either("the file's value is taken", "the project's value stays"), "file"),
    DifferenceKind("new", "New", _either("the opening comes in", "it is left out"), "file"),
)  # fmt: skip
"""In the order in which people are asked."""
BY_NAME: Final = {kind.name: kind for kind in KINDS}


def kind_title(name: str) -> str:
    """Return what people call a kind of difference; its name where this version has no such kind.

    Examples
    --------
    >>> kind_title("by-hand")
    'Set by hand'
    """
    return BY_NAME[name].title if name in BY_NAME else name


def answered(decisions: Decisions, kind: str, mark: str = "", fact: str = "", where: str = "") -> Answer | None:
    """Return what was said of a difference: of the cell, else of the opening, of the fact, of all of the kind.

    Examples
    --------
    >>> told = Decisions(answers={("changed", "", "hand"): "held", ("changed", "7", ""): "file"})
    >>> answered(told, "changed", "7", "hand"), answered(told, "changed", "8", "hand"), answered(told, "gone", "8")
    ('file', 'held', None)
    """
    told = decisions.answers
    if not told:
        return None
    cells = [(mark, f"{where}.{fact}"), (mark, fact)] if mark and fact else []
    for place in (*cells, (mark, ""), ("", fact), ("", "")):
        for of in (kind, ANY):
            if (of, *place) in told:
                return told[of, *place]
    return None


def read_word(text: str) -> tuple[AnswerKey, Answer]:
    """Read a word as the command line takes it: ``KIND[:FACT][@MARK]=ANSWER``; raises ValueError with what is accepted.

    Examples
    --------
    >>> read_word("by-hand:hand@105=file"), read_word("gone=held")
    ((('by-hand', '105', 'hand'), 'file'), (('gone', '', ''), 'held'))
    """
    said, equals, answer = text.rpartition("=")
    head, _, mark = said.partition("@")
    kind, _, fact = head.partition(":")
    if not equals:
        raise ValueError(f"{text!r} says no answer; write KIND[:FACT][@MARK]=ANSWER, such as gone@104=file")
    return checked(kind.strip(), mark.strip(), fact.strip(), answer.strip())


def checked(kind: str, mark: str, fact: str, answer: str) -> tuple[AnswerKey, Answer]:
    """Return a word on differences; raises ValueError for a kind or an answer that there is not."""
    if kind != ANY and kind not in BY_NAME:
        raise ValueError(f"there is no kind {kind!r} of difference; accepted: {', '.join((*BY_NAME, ANY))}")
    allowed = _EITHER if kind == ANY else tuple(BY_NAME[kind].answers)
    found = next((each for each in allowed if each == answer), None)
    if found is None:
        raise ValueError(f"{answer!r} is no answer on {kind}; accepted: {', '.join(allowed)}")
    return (kind, mark, fact), found


_EITHER: Final[tuple[Answer, ...]] = ("file", "held", "ask")


@dataclass(frozen=True, slots=True)
class Line:
    """One word of a text of decisions."""

    kind: str
    mark: str = ""
    fact: str = ""
    known: str = ""
    answer: Answer = "ask"
    note: str = ""
    """What speaks for it, as a comment."""


def written(lines: Iterable[Line], heading: str) -> str:
    """Return the text of decisions.

    Examples
    --------
    >>> print(written([Line("gone", "104", note="in the project, not in the file")], "doors.csv"))
    # Decisions on doors.csv. Answers: file, held, ask; of marks that may be known: file, apart, ask.
    # An entry without a mark is said of all openings, one without a fact of all facts; the narrowest holds.
    <BLANKLINE>
    [[decision]]
    # in the project, not in the file
    kind = "gone"
    mark = "104"
    answer = "ask"
    <BLANKLINE>
    """
    told = [
        f"# Decisions on {heading}. Answers: file, held, ask; of marks that may be known: file, apart, ask.",
        "# An entry without a mark is said of all openings, one without a fact of all facts; the narrowest holds.",
    ]
    for line in lines:
        told += ["", "[[decision]]"]
        if line.note:
            told.append(f"# {' '.join(line.note.split())}")
        for name in ("kind", "mark", "known", "fact", "answer"):
            if value := getattr(line, name):
                told.append(f"{name} = {_quoted(value)}")
    return "\n".join(told) + "\n"


def _quoted(text: str) -> str:
    # TOML's basic strings are JSON's, but for the deletion mark.
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")


def read_decisions(path: Path, onto: Decisions) -> Decisions:
    """Read a text of decisions onto those that were said already, which go before it.

    Raises
    ------
    InputRejected
        Where it is not there, no such text, or says what cannot be; the message says which entry.
    """
    try:
        with path.open("rb") as stream:
            content = stream.read(_LARGEST + 1)
    except (OSError, ValueError) as error:
        reason = error.strerror if isinstance(error, OSError) and error.strerror else str(error)
        raise _refused(path, f"cannot be opened: {reason}") from None
    if len(content) > _LARGEST:
        raise _refused(path, "is larger than any text of decisions")
    try:
        told = tomllib.loads(content.decode("utf-8-sig"))
    except (tomllib.TOMLDecodeError, UnicodeDecodeError, RecursionError) as error:
        raise _refused(path, f"is no text of decisions: {error}") from None
    entries = told.get("decision", [])
    if told.keys() - {"decision"} or not isinstance(entries, list):
        raise _refused(path, "holds something else than entries [[decision]]")
    lines = [_line(path, number, entry) for number, entry in enumerate(entries, 1)]
    return with_lines(onto, lines)


def _line(path: Path, number: int, entry: Any) -> Line:
    where = f"decision {number}"
    if not isinstance(entry, dict) or not all(isinstance(value, str) for value in entry.values()):
        raise _refused(path, f"{where} is no entry of texts")
    if unknown := sorted(entry.keys() - _NAMES):
        raise _refused(path, f"{where} says {unknown[0]}, which no decision says")
    try:
        (kind, mark, fact), answer = checked(
            entry.get("kind", ""), entry.get("mark", ""), entry.get("fact", ""), entry.get("answer", "")
        )
    except ValueError as error:
        raise _refused(path, f"{where}: {error}") from None
    return Line(kind, mark, fact, entry.get("known", ""), answer)


def _refused(path: Path, message: str) -> InputRejected:
    accepted = "[[decision]] with kind, answer, and as wanted mark, fact, known; --write-decisions writes one"
    return InputRejected([FileProblem(path.name, message, accepted=accepted)])


def with_lines(decisions: Decisions, lines: Iterable[Line]) -> Decisions:
    """Return decisions with more of them; what was said already goes before, however wide it is said."""
    answers: dict[AnswerKey, Answer] = {}
    same: dict[str, str] = {}
    renamed: dict[str, str] = {}
    apart: set[str] = set()
    for line in lines:
        where, _, fact = line.fact.rpartition(".")
        if answered(decisions, line.kind, line.mark, fact, where) is not None:
            continue
        if line.kind in ("renamed", "spelling") and line.mark and line.answer in ("file", "renamed", "apart"):
            if line.answer == "apart":
                apart.add(line.mark)
            elif line.known:
                taken = same if line.kind == "spelling" and line.answer == "file" else renamed
                taken[line.mark] = line.known
        answers[line.kind, line.mark, line.fact] = line.answer
    return replace(
        decisions,
        answers={**answers, **decisions.answers},
        same={**same, **decisions.same},
        renamed={**renamed, **decisions.renamed},
        apart=decisions.apart | apart,
    )
