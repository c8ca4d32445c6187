"""The file in which an office declares how its documents look: a small TOML text, read with every slip named.

What it may say stands in `EXAMPLE`, which is also what a person gets to begin with.
"""

import string
import tomllib
from collections.abc import Collection, Mapping
from dataclasses import replace
from typing import Any, Final

from hwsched.exchange.problems import FileProblem, InputRejected
from hwsched.telling.nearest import nearest
from hwsched.values.office import ALL, PAPERS, Office, OwnPage

FORMAT: Final = 1
MOST_CHARACTERS: Final = 200_000
FIELDS: Final = ("document", "title", "project", "revision", "date")
"""What names of files may be put together from."""
OPENING_FIELDS: Final = (*FIELDS, "mark", "building", "level")
_KEYS: Final = (
    *("format", "paper", "door_paper", "language", "letterhead", "files"),
    *("words", "contacts", "notes", "order", "page"),
)
_LOGO_MM: Final = (5.0, 40.0)

EXAMPLE: Final = """\
# How the documents of this office look. What is left out stays as it is.
format = 1
paper = "letter"            # letter, a4, a5
door_paper = "letter"       # of packets, type sheets and fault sheets
language = "en"             # that pages say they are written in

[letterhead]
lines = ["Quay Door Works", "12 Harbour Road"]
# logo = "logo.png"         # PNG or JPEG beside this file
# logo_mm = 12              # its height

[files]
name = "{document}"         # document, title, project, revision, date
openings = "{mark}"         # the same and mark, building, level

[words]                     # headings, labels and columns under another name
# "Sign-off" = "Signatures"

[contacts]                  # on the schedule
# "Architect" = "A. Mason, 12 Mill Lane"

[notes]                     # by document, or for all
# schedule = ["All dimensions are to be verified at the opening."]

[order]                     # by document: headings of its sections
# schedule = ["Summary", "Headings", "Opening index"]

# [[page]]                  # pages of your own
# place = "before"          # before, after
# documents = ["schedule"]  # or ["all"]
# title = "Terms"
# text = ["First paragraph.", "Second paragraph."]
# picture = "plan.png"
"""
"""A file that changes nothing save the letterhead."""


def read_office(text: str, name: str, documents: Collection[str]) -> Office:
    """Read what an office declares.

    Parameters
    ----------
    text : str
        The whole file.
    name : str
        What the file is called, for problems.
    documents : collection of str
        Documents that there are.

    Returns
    -------
    Office
        Without pictures: their names only.

    Raises
    ------
    InputRejected
        With all problems at once.
    """
    if len(text) > MOST_CHARACTERS:
        raise InputRejected([FileProblem(name, "is too long", accepted=f"at most {MOST_CHARACTERS:,} characters")])
    try:
        told = tomllib.loads(text)
    except (tomllib.TOMLDecodeError, RecursionError) as error:
        problem = FileProblem(name, f"is no TOML: {error}", accepted="what hwsched release office --example prints")
        raise InputRejected([problem]) from error
    reader = _Reader(name, documents)
    office = reader.office(told)
    if reader.problems:
        raise InputRejected(reader.problems)
    return office


class _Reader:
    """Reads key by key and keeps what is wrong."""

    def __init__(self, name: str, documents: Collection[str]) -> None:
        self.problems: list[FileProblem] = []
        self._name = name
        self._documents = documents

    def office(self, told: Mapping[str, Any]) -> Office:
        self._known("", told, _KEYS)
        if told.get("format") != FORMAT:
            self._wrong("format", told.get("format"), f"format = {FORMAT}")
        office = Office()
        head, files = self._table(told, "letterhead"), self._table(told, "files")
        self._known("letterhead", head, ("lines", "logo", "logo_mm"))
        self._known("files", files, ("name", "openings"))
        return replace(
            office,
            paper=self._one_of(told, "paper", PAPERS),
            door_paper=self._one_of(told, "door_paper", PAPERS),
            language=self._language(told.get("language", office.language)),
            letterhead=self._lines("letterhead.lines", head.get("lines", [])),
            logo=self._picture("letterhead.logo", head.get("logo", "")),
            logo_mm=self._logo_mm(head.get("logo_mm", office.logo_mm)),
            file_name=self._pattern("files.name", files.get("name", office.file_name), FIELDS, "document"),
            opening_file_name=self._pattern(
                "files.openings", files.get("openings", office.opening_file_name), OPENING_FIELDS, "mark"
            ),
            words=self._words("words", self._table(told, "words")),
            contacts=self._words("contacts", self._table(told, "contacts")),
            notes=self._by_document("notes", self._table(told, "notes"), all_too=True),
            order=self._by_document("order", self._table(told, "order"), all_too=False),
            pages=self._pages(told.get("page", [])),
        )

    def _wrong(self, where: str, value: object, accepted: str) -> None:
        shown = repr(value)
        shown = shown if len(shown) <= 60 else f"{shown[:57]}..."
        self.problems.append(FileProblem(self._name, f"{where} is {shown}", accepted=accepted))

    def _known(self, where: str, told: Mapping[str, Any], names: tuple[str, ...]) -> None:
        for key in told:
            if key not in names:
                near = nearest(key, names, 1)
                self.problems.append(
                    FileProblem(
                        self._name,
                        f"{where}.{key} is not known" if where else f"{key} is not known",
                        accepted=near[0] if near else ", ".join(names),
                    )
                )

    def _table(self, told: Mapping[str, Any], key: str) -> Mapping[str, Any]:
        found = told.get(key, {})
        if isinstance(found, dict):
            return found
        self._wrong(key, found, f"a table [{key}]")
        return {}

    def _one_of(self, told: Mapping[str, Any], key: str, words: tuple[str, ...]) -> str:
        value = told.get(key, "")
        if value == "" or value in words:
            return str(value)
        self._wrong(key, value, ", ".join(words))
        return ""

    def _language(self, value: object) -> str:
        parts = value.split("-") if isinstance(value, str) else []
        if parts and all(part.isascii() and part.isalnum() and 1 <= len(part) <= 8 for part in parts):
            return "-".join(parts)
        self._wrong("language", value, 'a language tag such as "en" or "pt-BR"')
        return ""

    def _lines(self, where: str, value: object) -> tuple[str, ...]:
        if isinstance(value, list) and all(isinstance(each, str) for each in value):
            return tuple(each.strip() for each in value if each.strip())
        self._wrong(where, value, 'a list of texts, such as ["first", "second"]')
        return ()

    def _picture(self, where: str, value: object) -> str:
        if value == "":
            return ""
        # A name and no path: what a project holds must be found beside the file wherever that lies.
        if isinstance(value, str) and value not in (".", "..") and not any(c in value for c in "/\\\0:"):
            return value
        self._wrong(where, value, "the name of a PNG or JPEG beside the file, without a folder")
        return ""

    def _logo_mm(self, value: object) -> float:
        low, high = _LOGO_MM
        if isinstance(value, int | float) and not isinstance(value, bool) and low <= value <= high:
            return float(value)
        self._wrong("letterhead.logo_mm", value, f"{low:g} to {high:g}")
        return low

    def _pattern(self, where: str, value: object, fields: tuple[str, ...], needed: str) -> str:
        accepted = f"a text with {{{needed}}}, of {', '.join(f'{{{each}}}' for each in fields)}"
        try:
            parts = list(string.Formatter().parse(value)) if isinstance(value, str) else []
        except ValueError:
            parts = []
        used = [name for _, name, _, _ in parts if name is not None]
        plain = all(not form and not turned for _, name, form, turned in parts if name is not None)
        if isinstance(value, str) and plain and needed in used and all(name in fields for name in used):
            return value
        self._wrong(where, value, accepted)
        return f"{{{needed}}}"

    def _words(self, where: str, told: Mapping[str, Any]) -> dict[str, str]:
        for key, value in told.items():
            if not isinstance(value, str) or not value.strip():
                self._wrong(f'{where}."{key}"', value, "a text")
        return {key: value for key, value in told.items() if isinstance(value, str)}

    def _by_document(self, where: str, told: Mapping[str, Any], *, all_too: bool) -> dict[str, tuple[str, ...]]:
        for key in told:
            self._document(f"{where}.{key}", key, all_too=all_too)
        return {key: self._lines(f"{where}.{key}", value) for key, value in told.items()}

    def _document(self, where: str, name: object, *, all_too: bool) -> str:
        names = (*self._documents, *([ALL] if all_too else []))
        if name not in names:
            near = nearest(str(name), names, 1)
            self._wrong(where, name, near[0] if near else ", ".join(names))
        return str(name)

    def _pages(self, told: object) -> tuple[OwnPage, ...]:
        if not isinstance(told, list) or not all(isinstance(each, dict) for each in told):
            self._wrong("page", told, "tables [[page]]")
            return ()
        return tuple(self._page(f"page {number}", each) for number, each in enumerate(told, start=1))

    def _page(self, where: str, told: Mapping[str, Any]) -> OwnPage:
        self._known(where, told, ("place", "documents", "title", "text", "picture"))
        place = told.get("place")
        if place not in ("before", "after"):
            self._wrong(f"{where}.place", place, "before, after")
        title = told.get("title", "")
        if not isinstance(title, str):
            self._wrong(f"{where}.title", title, "a text")
        documents = self._lines(f"{where}.documents", told.get("documents", []))
        if not documents:
            self._wrong(f"{where}.documents", told.get("documents"), 'a list of documents, or ["all"]')
        for each in documents:
            self._document(f"{where}.documents", each, all_too=True)
        page = OwnPage(
            "after" if place == "after" else "before",
            documents,
            str(title),
            self._lines(f"{where}.text", told.get("text", [])),
            self._picture(f"{where}.picture", told.get("picture", "")),
        )
        if not page.title and not page.text and not page.picture:
            self._wrong(where, "empty", "a title, a text or a picture")
        return page
