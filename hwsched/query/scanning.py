"""The characters of a query cut into words, values in quotes, signs and brackets, each with its place."""

from dataclasses import dataclass
from typing import Final, Literal

from hwsched.query.asking import STOPS
from hwsched.query.refusal import Fault, QueryError

Kind = Literal["word", "quoted", "sign", "(", ")", ",", "end"]
_SIGNS: Final = {
    "=": "=", "==": "=", "!=": "!=", "<>": "!=", "<": "<", "<=": "<=", ">": ">", ">=": ">=",
    "≤": "<=", "≥": ">=", "≠": "!=",
}  # fmt: skip
_CLOSED_BY: Final = {'"': '"', "'": "'", "“": "”", "”": "”"}


@dataclass(frozen=True, slots=True)
class Token:
    """A piece of a query."""

    kind: Kind
    text: str
    """Of what stood in quotes: without them. Of a sign: as it is written by us."""
    start: int
    end: int


def tokens(text: str) -> list[Token]:
    r"""Cut a query into its pieces; the last one is its end.

    A quote opens only where a word begins: in ``3'-0"`` the marks are feet and inches.

    Raises
    ------
    QueryError
        For a quote that is not closed.

    Examples
    --------
    >>> [token.text for token in tokens('width<=3\'-0" and "fire door"')]
    ['width', '<=', '3\'-0"', 'and', 'fire door', '']
    """
    found: list[Token] = []
    at = 0
    while at < len(text):
        character = text[at]
        if character.isspace():
            at += 1
            continue
        if character in _CLOSED_BY:
            token = _quoted(text, at)
        elif character in "(),":
            token = Token("(" if character == "(" else ")" if character == ")" else ",", character, at, at + 1)
        else:
            sign = next((text[at : at + length] for length in (2, 1) if text[at : at + length] in _SIGNS), "")
            token = Token("sign", _SIGNS[sign], at, at + len(sign)) if sign else _word(text, at)
        found.append(token)
        at = token.end
    return [*found, Token("end", "", len(text), len(text))]


def _word(text: str, start: int) -> Token:
    at = start + 1
    while at < len(text) and not text[at].isspace() and text[at] not in STOPS and text[at : at + 2] != "!=":
        at += 1
    return Token("word", text[start:at], start, at)


def _quoted(text: str, start: int) -> Token:
    close = _CLOSED_BY[text[start]]
    said = ""
    at = start + 1
    while True:
        end = text.find(close, at)
        if end < 0:
            message = f"the quote {text[start]} is not closed"
            raise QueryError(text, Fault(start, len(text), text[start:], message, (close,)))
        said += text[at:end]
        if text[end : end + 1] != close or text[end + 1 : end + 2] != close:
            return Token("quoted", said, start, end + 1)
        # Written twice it stands for itself.
        said += close
        at = end + 2
