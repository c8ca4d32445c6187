"""What a row below the header is, where it is no opening: a total, a note under the table, a section, a title.

Here belongs what a row says of itself by its words and by standing alone. What openings say stands in `rows`.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final, Literal

from hwsched.attributes import as_text

Kind = Literal["total", "note", "level", "building", "title", "rule"]

_TOTAL: Final = re.compile(
    r"(?:(?:grand|sub|overall|over-all|report|page|section|building|level|floor|schedule|door|doors)[\s-]*)*totals?\b"
    r"|(?:total|number|no\.?|count|sum|qty)\s+(?:of|number|count|doors|openings)\b|totals?\b|(?:count|sum|qty|quantity)\s*(?::|$)"
    # As databases end what they print.
    r"|\(?\d+\s+(?:rows?|records?)(?:\(s\))?\s*(?:affected|selected|returned|in\s+set|listed|found|printed|\)|$)",
    re.IGNORECASE,
)
_NOTE: Final = re.compile(
    r"(?:general\s+)?(?:notes?|remarks?|legend|key|abbreviations?|comments?)\s*(?:[:.]|\s[-\u2013]|\d+\s*[:.)]|$)"
    r"|(?:prepared|drawn|checked|approved|issued|printed|revised|surveyed|compiled|exported|generated|created)\s+"
    r"(?:by|on|at|for|with|from)\b"
    r"|(?:page|sheet)\s+\d+\s*(?:of|/)\s*\d+|end\s+of\s+(?:schedule|list|table|report)|continued\b|revisions?\s*[:.]"
    r"|\d{1,2}[.)]\s+\w+\s+\w+|\*+\)?\s*\w+\s+\w+|see\s+(?:also\s+)?(?:sheet|drawing|detail|plan|spec)",
    re.IGNORECASE,
)
_ORDINAL: Final = (
    r"(?:ground|first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|lower|upper|main|top"
    r"|\d+(?:st|nd|rd|th))"
)
_LEVEL: Final = re.compile(
    rf"(?:level|floor|storey|story|lvl\.?|flr\.?)\s*[:#\-]?\s*[\w.\-]+\b.*|{_ORDINAL}\s+(?:level|floor|storey|story)\b.*"
    r"|(?:sub-?)?basement\b.*|mezzanine\b.*|penthouse\b.*|roof(?:\s+level)?|cellar",
    re.IGNORECASE,
)
_SECTION: Final = re.compile(
    r"(?:(?:hw|hdw|hdwr|hdwe|hwd|hardware|finish\s+hardware)\b\.?\s*)?(?:set|group|grp|heading|hdg)\b\.?\s*"
    r"(?:(?:no|number|nr)\b\.?\s*)?[:#-]?\s*#?\s*[\w.-]+\s*(?:[:(-].*)?|(?:phase|area|zone|section|part|division)\s+[\w.-]+\b.*",
    re.IGNORECASE,
)
"""Over the openings that share a hardware set, a phase or an area."""
_BUILDING: Final = re.compile(r"(?:building|bldg\.?|block|tower|house)\s*[:#\-]?\s*[\w.\-]+\b.*", re.IGNORECASE)
_COUNTED: Final = re.compile(r"^(.*?)\s*(?::\s*\d+|\(\s*\d+(?:\s+(?:doors?|openings?|pcs?))?\s*\))$", re.IGNORECASE)
_RULE: Final = re.compile(r"[-=_*~+|\u2013\u2014\u2500\u2550]{2,}")
"""Drawn under headings and between groups, as databases and typewriters do."""
_WORDY: Final = re.compile(r"[^\W\d_]{3}|\s|:")
_DIGIT: Final = re.compile(r"\d")
_LONG: Final = 40
"""Characters in one cell alone in its row, which no mark has."""
_WORDS_OF_TITLE: Final = 3
"""Words alone in their row that are a title where marks are numbers."""
_FEW: Final = 2
"""Filled cells of a row of notes."""


@dataclass(frozen=True, slots=True)
class Line:
    """A row that is no opening."""

    kind: Kind
    text: str


def line_kind(line: Sequence[object], mark: int | None, *, below: bool, digits: bool) -> Line | None:
    """Return what a row is, where it is no opening.

    Parameters
    ----------
    line : sequence
        The cells of the row.
    mark : int or None
        Column of the marks, from 0.
    below : bool
        Whether a total or a note stood above: the table has ended, and what stands alone is a note.
    digits : bool
        Whether nearly all marks of the sheet have digits: then a row of words alone is a title.

    Examples
    --------
    >>> line_kind(["Grand total: 26", "", ""], 0, below=False, digits=True)
    Line(kind='total', text='Grand total: 26')
    >>> line_kind(["LEVEL 2"], 0, below=False, digits=True), line_kind(["101", "LH"], 0, below=False, digits=True)
    (Line(kind='level', text='LEVEL 2'), None)
    """
    cell = line[mark] if mark is not None and mark < len(line) else ""
    if isinstance(cell, str):
        stripped = cell.strip()
        if is_rule(stripped) and all(is_rule(text) for each in line if (text := as_text(each).strip())):
            return Line("rule", stripped)
        # Nearly every row answers here: its mark is a number or a short code.
        if stripped and not _WORDY.search(stripped):
            return None
    elif cell is not None:
        return None
    filled = [(index, as_text(each).strip()) for index, each in enumerate(line) if as_text(each).strip()]
    if not filled:
        return None
    index, text = filled[0]
    others = [other for _, other in filled[1:]]
    text = " ".join(text.split())
    if _TOTAL.match(text) and not _is_sentence_of_door(others):
        return Line("total", text)
    alone = not others
    if len(filled) <= _FEW and _NOTE.match(text) and (mark is None or index <= mark or alone):
        return Line("note", " ".join([text, *others]))
    if not alone:
        return None
    at_mark = index in (0, mark)
    counted = _COUNTED.match(text)
    if at_mark and counted and (_LEVEL.fullmatch(counted[1]) or _BUILDING.fullmatch(counted[1])):
        return Line("total", text)
    if at_mark and _LEVEL.fullmatch(text):
        return Line("level", text.rstrip(" :-"))
    if at_mark and _BUILDING.fullmatch(text):
        return Line("building", text.rstrip(" :-"))
    if below:
        return Line("note", text) if index != mark or not _is_code(text) else None
    if at_mark and (
        _SECTION.fullmatch(text) or text.endswith(":") or (digits and len(text.split()) >= _WORDS_OF_TITLE)
    ):
        return Line("title", text)
    if (at_mark and len(text) > _LONG) or (digits and not _DIGIT.search(text) and index == mark):
        return Line("title", text)
    return None


def is_rule(text: str) -> bool:
    """Tell whether a cell holds a drawn line and nothing else.

    Examples
    --------
    >>> is_rule("-----"), is_rule("=="), is_rule("-"), is_rule("A-1")
    (True, True, False, False)
    """
    return _RULE.fullmatch(text.strip()) is not None


def mostly_digits(marks: Sequence[object]) -> bool:
    """Tell whether nearly all marks of a sheet have digits.

    Examples
    --------
    >>> mostly_digits(["101", 102.0, "A-3", "103"]), mostly_digits(["North", "South", "1"])
    (True, False)
    """
    known = [as_text(mark) for mark in marks if mark not in ("", None)]
    return len(known) > 2 and sum(1 for mark in known if _DIGIT.search(mark)) >= 0.75 * len(known)


def _is_code(text: str) -> bool:
    return len(text) <= 12 and " " not in text and _DIGIT.search(text) is not None


def _is_sentence_of_door(others: Sequence[str]) -> bool:
    """Tell whether the rest of the row speaks of an opening: words, and not numbers alone."""
    return sum(1 for other in others if not re.fullmatch(r"[\d.,%$€£\s]+", other)) > 1
