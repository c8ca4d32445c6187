"""What a survey workbook says, as plain values: openings with their leaves and items, and how they were read.

Here belong the values that reading hands to the preview and the preview to the operation. How they are found stands in
the other `survey_` modules.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from math import isclose
from typing import Final, Literal

from hwsched.attributes import Attribute
from hwsched.exchange.problems import CellProblem, FileProblem, column_said, heading_said
from hwsched.exchange.survey.mapping import RememberedMapping, SheetMapping
from hwsched.kept_sentences import kept_error
from hwsched.language import english, phrase, phrase_of_count, to_phrase
from hwsched.quantities.readings import BareUnit

Value = str | float | int | bool
"""A known fact; what is unknown is left out."""
Facts = Mapping[str, Value]
"""Facts by attribute name; facts of a project's own by their field's name."""


HELP_SHEET: Final = "How to fill in"
"""Name of the sheet by which a surveyor's form is known."""
_NAMED: Final = 8
"""Openings that a line names."""
_NANOMETRE: Final = 1e-6
_SPELLING_MM: Final = 0.5
"""1 3/4 in and 44.5 mm are one measure in two spellings."""


def is_same(one: object, other: object) -> bool:
    """Tell whether two values are the same but for what computers leave behind the twelfth digit or the nanometre.

    Examples
    --------
    >>> is_same(876.0, 876.0000000000001), is_same(876.0, 876.1), is_same("1", 1)
    (True, False, False)
    """
    if isinstance(one, float) and isinstance(other, float | int):
        return isclose(one, other, rel_tol=1e-12, abs_tol=_NANOMETRE)
    return one == other


def agree(name: str, one: object, other: object) -> bool:
    """Tell whether two cells of one file say the same of a fact; lengths may be rounded as their units are.

    Examples
    --------
    >>> agree("thickness_mm", 44.45, 44.5), agree("thickness_mm", 44.45, 45.0), agree("hand", "LH", "RH")
    (True, False, False)
    """
    if name.endswith("_mm") and isinstance(one, float) and isinstance(other, float):
        return abs(one - other) <= _SPELLING_MM
    return is_same(one, other)


ProposalKind = Literal["spelling", "renamed", "divided", "joined"]
_LIKENESS: Final[Mapping[ProposalKind, str]] = {
    "spelling": to_phrase("spelling"),
    "renamed": to_phrase("renamed"),
    "divided": to_phrase("divided"),
    "joined": to_phrase("joined"),
}


@dataclass(frozen=True, slots=True)
class Proposal:
    """A mark of the file that may be an opening which the project knows under another mark."""

    mark: str
    """In the file."""
    known: str
    """In the project."""
    kind: ProposalKind
    evidence: str

    def describe(self) -> str:
        """Return the proposal in one line.

        Examples
        --------
        >>> Proposal("d-1", "D-1", "spelling", "the same but for case").describe()
        'd-1 may be D-1 of the project (spelling): the same but for case; left out until somebody says'
        """
        return english(self.said)

    def said(self) -> str:
        """Return it in one line for people."""
        return phrase(
            "{mark} may be {known} of the project ({kind}): {evidence}; left out until somebody says",
            mark=self.mark,
            known=self.known,
            kind=phrase(_LIKENESS[self.kind]),
            evidence=kept_error(self.evidence),
        )


Answer = Literal["file", "held", "ask", "apart", "renamed"]
"""What is said of a difference: the file goes before, the project stays as it is, it is left open; see `decisions`."""
AnswerKey = tuple[str, str, str]
"""Kind of difference, mark, fact; empty: of all."""
ANY: Final = "any"
"""Of all kinds."""


@dataclass(frozen=True, slots=True)
class Decisions:
    """What a person decided of the differences between a file and the project."""

    same: Mapping[str, str] = field(default_factory=dict)
    """Mark in the project by mark in the file, of openings that keep the project's mark."""
    renamed: Mapping[str, str] = field(default_factory=dict)
    """Mark in the project by mark in the file, of openings that take the file's mark."""
    apart: frozenset[str] = frozenset()
    """Marks in the file that are openings of their own, however like they are to others."""
    proposals: Literal["ask", "take", "apart"] = "ask"
    """What happens with all other proposals: left out, taken (a spelling is the same, the rest are renamed; of a mark
    that became several the first carries on), or new."""
    emptied: frozenset[str] = frozenset()
    """Facts, such as ``hand`` or ``thickness_mm``, that a blank cell makes unknown where a file gave them; ``all``."""
    over_hand: frozenset[str] = frozenset()
    """Facts in which the file goes before what was set by hand; ``all``."""
    answers: Mapping[AnswerKey, Answer] = field(default_factory=dict)
    """What was said of kinds of differences, facts, openings, cells; the narrowest holds."""


@dataclass(frozen=True, slots=True)
class SurveyOptions:
    """How a survey file is to be read, where the file itself does not say."""

    sheet: str | None = None
    """Name of the sheet; None takes the sheet whose header fits best, and others like it."""
    encoding: str | None = None
    """Of a file that is a text; None finds it."""
    decimal: Literal["", "comma", "point"] = ""
    """Mark before the decimals of numbers that are texts; empty: asked where 1,000 may be one or a thousand."""
    header_row: int | None = None
    """Lowest row of the header, as the spreadsheet counts; None finds it."""
    last_row: int | None = None
    """Last row of the table; None takes all rows but totals and notes."""
    bare_unit: BareUnit | None = None
    """Unit of lengths without one, in columns whose header names none; None: as at the last import, else the usual."""
    usual_unit: BareUnit | None = None
    """The project's unit for such lengths; None refuses them."""
    mark: str = ""
    """Pattern of the mark where it stands in several columns, by their headers, such as ``{Level}-{No}``."""
    counts: str = ""
    """How rows are read that stand for several doors: ``one`` opening a row, a ``type``, or a pattern of the marks that
    are made of it, such as ``{mark}-{n}``; empty: one a row, and asked."""
    pairs: Literal["", "leaf", "both"] = ""
    """What a width of a pair is that does not say it (PR 762): of each leaf, or of both together; empty: asked."""
    tables: Literal["", "left-out", "types"] = ""
    """What becomes of a table that stands in the sheet of the openings and names their types."""
    openings_in: Literal["", "rows", "columns"] = ""
    """Where an opening stands: a row each, or a column each in a table on its side; empty: found."""
    columns: Mapping[str, str] = field(default_factory=dict)
    """Target by header (or ``column F``), such as ``leaf.width_mm``; empty text leaves the column out."""
    own_fields: Mapping[str, tuple[Attribute, ...]] = field(default_factory=dict)
    """Fields of the project's own by entity: opening, existing_item."""
    units: Mapping[str, str] = field(default_factory=dict)
    """Unit of numbers without one by header (or ``column F``); it goes before the one that the header names."""
    dashes: Mapping[str, str] = field(default_factory=dict)
    """What marks of emptiness (-, 0, x, n/a) mean by header (or ``column F``), such as ``unknown`` or ``none``."""
    words: Mapping[str, Mapping[str, str]] = field(default_factory=dict)
    """Meaning by word by header (or ``column F``): a word that the fact has, or ``unknown``."""
    remembered: Mapping[str, RememberedMapping] = field(default_factory=dict)
    """Mappings of earlier imports by fingerprint of the header."""
    plan: RememberedMapping | None = None
    """What a column plan says; it goes before earlier imports, and is laid beside any header."""
    corrections: Mapping[str, str] = field(default_factory=dict)
    """What cells are read as in place of what they hold, by ``Sheet!C7``; the file is not written."""
    as_typed: bool = False
    """Take values that stand apart from their column as typed, without asking about them."""
    cures: frozenset[str] = frozenset()
    """Identifiers of oddities of which the cure is wanted, such as ``wider-than-high``."""
    decisions: Decisions = field(default_factory=Decisions)
    """What was decided of the differences."""


@dataclass(frozen=True, slots=True)
class SurveyedItem:
    """An existing item that the file describes."""

    facts: Facts
    deduced: Facts
    """Facts that follow from others (the leaf of a single door's lock): they fill gaps, never change what is known."""
    origin: str
    """File, sheet and row."""


@dataclass(frozen=True, slots=True)
class SurveyedLeaf:
    """A leaf that the file describes, or that the opening's form implies."""

    position: str
    facts: Facts
    """With the position."""
    origin: str


@dataclass(frozen=True, slots=True)
class SurveyedOpening:
    """An opening that the file describes."""

    mark: str
    facts: Facts
    """With the mark."""
    leaves: tuple[SurveyedLeaf, ...]
    items: tuple[SurveyedItem, ...]
    origin: str


@dataclass(frozen=True, slots=True)
class Assumption:
    """What was assumed in reading, and for how many cells or openings."""

    sheet: str
    column: str
    """Letters; empty where it concerns rows."""
    header: str
    text: str
    count: int

    def describe(self) -> str:
        """Return the assumption in one line.

        Examples
        --------
        >>> Assumption("Doors", "F", "Thickness", "numbers without a unit taken as inches", 12).describe()
        'sheet Doors, column F (Thickness): numbers without a unit taken as inches (12)'
        """
        return english(self.said)

    def said(self) -> str:
        """Return it in one line for people."""
        return phrase(
            "sheet {sheet}{column}: {text} ({count})",
            sheet=self.sheet,
            column=column_said(self.column, self.header) if self.column else "",
            text=kept_error(self.text),
            count=self.count,
        )


QuestionKind = Literal["dash", "word", "count", "mark", "pair", "table", "column"]


_ASKED: Final[Mapping[QuestionKind, str]] = {
    "dash": to_phrase("what does {read} mean?"),
    "word": to_phrase("what does {read} mean?"),
    "count": to_phrase("what becomes of rows that count {read}?"),
    "mark": to_phrase("is the mark all of it in {read}?"),
    "pair": to_phrase("is the width that of each leaf or of both in {read}?"),
    "column": to_phrase("what does the heading mean over {read}?"),
    "table": to_phrase("are the rows of the table {read} types of the openings in the other one?"),
}


@dataclass(frozen=True, slots=True)
class Question:
    """What only a person can say of a column, asked once however many cells raise it."""

    sheet: str
    column: str
    header: str
    read: str
    """What stands in the cells, each with its count."""
    rows: tuple[int, ...]
    """As the spreadsheet counts."""
    answers: tuple[str, ...]
    """What it may mean; the first is taken until somebody answers."""
    kind: QuestionKind = "dash"
    """Of what it is asked: marks of emptiness, a word of several readings, rows that stand for several doors, marks
    that stand there again, widths of pairs, a second table in the sheet, a heading of several readings."""
    word: str = ""
    """The word as it stands, where one is asked about."""
    facts: tuple[str, ...] = ()
    """Of a heading of several readings: the fact that each answer makes of its column; empty where it is not read."""
    by_letter: bool = False
    """Whether its heading stands over another column too, so that the column is named by its letter."""

    def describe(self) -> str:
        """Return the question in one line.

        Examples
        --------
        >>> Question("Doors", "H", "Rating", '"-" (2)', (4, 9), ("unknown", "none")).describe()
        'sheet Doors, column H (Rating): what does "-" (2) mean? taken as unknown; it may mean none'
        """
        return english(self.said)

    def said(self) -> str:
        """Return it in one line for people."""
        return phrase(
            "sheet {sheet}{column}: {asked} taken as {taken}; it may mean {others}",
            sheet=self.sheet,
            column=column_said(self.column, self.header) if self.column else "",
            asked=self.asked(),
            taken=answer_said(self.answers[0]),
            others=phrase(" or ").join(map(answer_said, self.answers[1:])),
        )

    def asked(self, *, with_column: bool = False) -> str:
        """Return for people what is asked, without the sheet in which one looks at it."""
        # Cells are quoted as they stand; only of a table it is told in words what stands in it.
        read = self.read if self.column else kept_error(self.read)
        asked = phrase(_ASKED[self.kind], read=read)
        if not with_column or not self.column:
            return asked
        return phrase(
            "column {column}{heading}: {asked}", column=self.column, heading=heading_said(self.header), asked=asked
        )


def answer_said(answer: str) -> str:
    """Return an answer to a question for people; a pattern of marks stays as it is.

    Examples
    --------
    >>> answer_said("unknown"), answer_said("{Level}-{No}")
    ('unknown', '{Level}-{No}')
    """
    return answer if "{" in answer else phrase(answer)


@dataclass(frozen=True, slots=True)
class Oddity:
    """Measures that can hardly be so, asked once over all openings that raise it."""

    id: str
    question: str
    """With ``{count}`` for how many openings."""
    cure: str
    """What the cure does; empty where only the person at the door can mend it."""
    marks: tuple[str, ...]

    def describe(self) -> str:
        """Return the oddity in one line.

        Examples
        --------
        >>> Oddity("swapped", "are they swapped in {count}?", "they change places", ("1", "2")).describe()
        'swapped: are they swapped in 2 openings? (1, 2); taken as written; the cure: they change places'
        """
        return english(self.said)

    def said(self) -> str:
        """Return it in one line for people."""
        cure = phrase("; the cure: {cure}", cure=phrase(self.cure)) if self.cure else ""
        return phrase("{id}: {asked}; taken as written{cure}", id=self.id, asked=self.asked(), cure=cure)

    def asked(self) -> str:
        """Return for people what is asked, and of which openings."""
        count = phrase_of_count("{count} opening", "{count} openings", len(self.marks))
        named = ", ".join(self.marks[:_NAMED]) + (" ..." if len(self.marks) > _NAMED else "")
        return f"{phrase(self.question, count=count)} ({named})"


@dataclass(frozen=True, slots=True)
class UnmappedColumn:
    """A column that is not taken in."""

    sheet: str
    column: str
    header: str
    filled: int
    """Cells in it that hold something."""
    left_out: bool = False
    """Left out on purpose, now or at an earlier import."""
    likely: str = ""
    """Label of the fact of which its cells are words; empty where they are of none, or of several."""


@dataclass(frozen=True, slots=True)
class SurveyRead:
    """All that was read from a survey file."""

    file: str
    openings: tuple[SurveyedOpening, ...]
    """In the order of the file; without those that a problem concerns."""
    rejected: tuple[str, ...]
    """Marks of openings that a problem keeps out."""
    mapping: tuple[SheetMapping, ...]
    assumptions: tuple[Assumption, ...]
    problems: tuple[CellProblem | FileProblem, ...]
    unmapped: tuple[UnmappedColumn, ...]
    passed_over: tuple[str, ...]
    """Rows, and sheets that look like openings, that were not read, each with the reason."""
    other_sheets: tuple[str, ...] = ()
    """Names of the sheets without anything like openings."""
    questions: tuple[Question, ...] = ()
    """What was taken in the safest way and only a person can say."""
    oddities: tuple[Oddity, ...] = ()
    """Measures that can hardly be so."""
    corrections: tuple[tuple[str, str, str, str, str], ...] = ()
    """Cells that were mended: sheet, cell, what it holds, what it is read as, by whom at an earlier import."""
