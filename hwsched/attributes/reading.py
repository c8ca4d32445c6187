"""Reading one cell of a sheet or a form into the value that its attribute holds.

Here belongs what is equal for all kinds: what counts as empty or unknown, the errors of spreadsheets, and the reader
that remembers what it has read. How each kind of value is read stands in `values`.

Empty, ``?``, ``unknown``, ``tbd``, ``null`` are unknown (None) for every kind; ``verify in field``, ``varies``,
``existing`` for every kind but text. ``n/a``, ``-`` and other marks of emptiness are
unknown too, and for text they stay text; ``0`` and ``x`` are so for a choice. Only a choice of a project's own may
declare such a mark as a word. ``none`` is a choice's value where declared, no
for a flag, text for text; for a length or number it is refused, since it can mean zero as well as not measured.
"""

from collections.abc import Callable
from typing import Final, NamedTuple

from hwsched.attributes.attribute import Attribute, AttributeKind
from hwsched.attributes.cell_error import CellError
from hwsched.attributes.limits import Value, as_text
from hwsched.attributes.values import value_reader

_UNKNOWN: Final = frozenset(
    {
        "", "unknown", "unk", "unk.", "not known", "tbd", "t.b.d.", "tbc", "tba", "null", "(null)", "<null>", "[null]",
        "nan", "(blank)", "<blank>", "[blank]", "not recorded", "not surveyed", "no data", "to be determined",
    }
)  # fmt: skip
"""For every fact; those of databases are no words of a person."""
_TO_MEASURE: Final = frozenset(
    {
        "vif", "v.i.f.", "v.i.f", "verify in field", "verify on site", "field verify", "f.v.", "verify",
        "to be verified", "site verify", "to be measured", "not measured", "measure", "to suit", "to match",
        "to match existing", "match existing", "match exist.", "match exist", "match ex.", "varies", "vary",
        "see elevation", "see elev.",
        "see elev", "see plan", "see drawing", "see dwg", "see drawings", "see notes", "see note", "see remarks",
        "per elevation", "as noted",
    }
)  # fmt: skip
"""Words of drawings that leave a fact to the site: of a text they are its words, of anything else it is unknown."""
_STANDS_ALREADY: Final = frozenset(
    {
        "existing",
        "exist",
        "exist.",
        "exstg",
        "exstg.",
        "ex",
        "ex.",
        "(e)",
        "(ex)",
        "etr",
        "e.t.r.",
        "existing to remain",
    }
)
"""It stands already and stays: what it is they do not say. Where a choice has such a word it says that."""
_SHEET_ERRORS: Final = frozenset(
    {"#N/A", "#REF!", "#VALUE!", "#DIV/0!", "#NAME?", "#NULL!", "#NUM!", "#SPILL!", "#CALC!", "#GETTING_DATA"}
)


class Read(NamedTuple):
    """What a cell says."""

    value: Value
    """In the form and unit that the attribute holds; None where unknown."""
    assumed_unit: str | None = None
    """Unit taken for a number that carried none; None where the cell said it, or none is needed."""
    approximate: bool = False
    """The cell said "about"."""


_NOTHING: Final = Read(None)


class CellReader:
    """Reader of one column; it remembers what it has read, since columns repeat themselves.

    Parameters
    ----------
    attribute : Attribute
        The declared fact.
    bare_unit : str or None
        As in `read_value`.
    """

    __slots__ = ("_memo", "_read_value", "attribute", "bare_unit")

    def __init__(self, attribute: Attribute, bare_unit: str | None) -> None:
        self.attribute = attribute
        self.bare_unit = bare_unit
        self._read_value: Callable[[object], tuple[Value, str | None, bool]] = value_reader(attribute, bare_unit)
        self._memo: dict[object, Read] = {None: _NOTHING, "": _NOTHING}

    def __call__(self, cell: object) -> Value:
        """Return the value of a cell; raises CellError."""
        return self.read(cell).value

    def read(self, cell: object) -> Read:
        """Return what a cell says; raises CellError."""
        # True equals 1 as a key, but TRUE is another text than 1.
        key = cell if cell.__class__ is not bool else (cell,)
        try:
            read = self._memo.get(key)
        except TypeError:
            raise CellError(as_text(cell), "is neither text nor a number") from None
        if read is None:
            self._memo[key] = read = self._first(cell)
        return read

    def _first(self, cell: object) -> Read:
        if isinstance(cell, str):
            # Blanks of every width, and marks without width that come along when text is pasted.
            cell = cell.strip().strip("\u200b\u2060\ufeff").strip()
            if cell.startswith("#") and cell.upper() in _SHEET_ERRORS:
                raise CellError(cell, "is an error of the spreadsheet, not a value")
            word, kind = cell.casefold(), self.attribute.kind
            if _is_unknown(word, kind):
                return _NOTHING
            if word in _STANDS_ALREADY and kind not in ("text", "flag"):
                return self._standing(cell)
        return Read(*self._read_value(cell))

    def _standing(self, cell: str) -> Read:
        try:
            return Read(*self._read_value(cell))
        except CellError:
            return _NOTHING


def says_unknown(attribute: Attribute, cell: object) -> bool:
    """Tell whether a cell says in words that a fact is not known.

    Examples
    --------
    >>> width, notes = Attribute("width_mm", "Leaf width", "length", "mm"), Attribute("notes", "Notes")
    >>> [says_unknown(width, "V.I.F."), says_unknown(notes, "V.I.F."), says_unknown(notes, "NULL")]
    [True, False, True]
    """
    return isinstance(cell, str) and _is_unknown(cell.strip().casefold(), attribute.kind)


def _is_unknown(word: str, kind: AttributeKind) -> bool:
    return word in _UNKNOWN or not word.strip("?¿") or (kind != "text" and word in _TO_MEASURE)


def reader_of(attribute: Attribute, bare_unit: str | None = None) -> CellReader:
    """Return the reader of a column, to be called with each of its cells.

    Parameters
    ----------
    attribute : Attribute
        The declared fact.
    bare_unit : str or None
        As in `read_value`.

    Returns
    -------
    CellReader
        Called with a cell it returns the value; its ``read`` returns the value with the unit that was assumed.

    Examples
    --------
    >>> thickness = reader_of(Attribute("thickness_mm", "Leaf thickness", "length", "mm", low=6, high=120), "in")
    >>> thickness(1.75), thickness("45 mm"), thickness.read(1.75).assumed_unit
    (44.45, 45.0, 'in')
    """
    return CellReader(attribute, bare_unit)


def read_value(attribute: Attribute, cell: object, *, bare_unit: str | None = None) -> Read:
    """Read one cell.

    Parameters
    ----------
    attribute : Attribute
        The declared fact.
    cell : object
        Text, number, date, time, or yes-or-no as a spreadsheet reader delivers it; None where empty.
    bare_unit : str or None
        Unit of a number that carries none. For lengths None refuses such a number; for other numbers None means the
        attribute's own unit.

    Returns
    -------
    Read
        The value, None where unknown, and the unit that was assumed.

    Raises
    ------
    CellError
        Where the cell says nothing certain, or what cannot be true.

    Examples
    --------
    >>> read_value(Attribute("mark", "Mark"), 12.0)
    Read(value='12', assumed_unit=None, approximate=False)
    >>> read_value(Attribute("stair", "Stair door", "flag"), "x").value
    True
    """
    return CellReader(attribute, bare_unit).read(cell)
