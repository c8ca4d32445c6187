"""A column plan as an open text file (TOML): what the columns, units, words and dashes of a kind of list mean.

A plan is made once and laid beside every later list of the kind, column by column, in any project. Reading and writing
the text belongs here; laying it beside a header stands in `memory`.
"""

import json
import tomllib
from collections.abc import Collection, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any, Final

from hwsched.exchange.problems import FileProblem, InputRejected
from hwsched.exchange.survey.facts import SurveyOptions
from hwsched.exchange.survey.mapping import RememberedMapping, SheetMapping, header_keys, plain_word, target_of
from hwsched.exchange.survey.memory import NO_CURES, kept_cures
from hwsched.exchange.survey.pairs import PAIRS
from hwsched.exchange.survey.plausibility import BY_ID
from hwsched.exchange.survey.said_of_marks import CURES
from hwsched.exchange.survey.spelt_alike import ALIKE
from hwsched.exchange.survey.turning import OPENINGS_IN
from hwsched.exchange.survey.two_tables import TABLES
from hwsched.quantities import BARE_UNITS

ENDING: Final = ".toml"
_LARGEST: Final = 1_000_000
_CHOICES: Final = {"decimal": ("comma", "point"), "pairs": PAIRS, "tables": TABLES, "openings_in": OPENINGS_IN}
"""What is said by one of a few words."""
_TEXTS: Final = ("mark", "counts", *_CHOICES)
_TOP: Final = frozenset({"plan", "unit", "sheet", "encoding", "header_row", "last_row", *_TEXTS, "cures", "column"})
CURABLE: Final = (*(kind.id for kind in BY_ID.values() if kind.cure), *CURES, ALIKE)
"""Oddities of which a plan can say that they are to be mended."""
_OF_COLUMN: Final = frozenset({"header", "fact", "unit", "dash", "words"})


@dataclass(frozen=True, slots=True)
class ColumnPlan:
    """What a plan says."""

    name: str
    columns: RememberedMapping
    headings: Mapping[str, str] = field(default_factory=dict)
    """Heading as people see it, by its key."""
    sheet: str | None = None
    header_row: int | None = None
    last_row: int | None = None
    encoding: str | None = None
    """Of a file that is a text."""

    def lines(self) -> list[str]:
        """Return the columns in words, one a line.

        Examples
        --------
        >>> ColumnPlan("yard", RememberedMapping({"wd": "leaf.width_mm"}, units={"wd": "mm"}), {"wd": "Wd."}).lines()
        ['Wd.: leaf.width_mm, in mm']
        """
        told = self.columns
        lines = []
        for key, fact in told.columns.items():
            more = [f"in {told.units[key]}"] if key in told.units else []
            more += [f"a dash means {told.dashes[key]}"] if key in told.dashes else []
            more += [f"{word} means {meaning}" for word, meaning in told.words.get(key, {}).items()]
            lines.append(f"{_heading(self, key)}: {', '.join([fact or 'not read', *more])}")
        return lines

    def changed(
        self,
        facts: Mapping[str, str] | None = None,
        units: Mapping[str, str] | None = None,
        dashes: Mapping[str, str] | None = None,
        words: Mapping[str, Mapping[str, str]] | None = None,
        drop: Collection[str] = (),
        **whole: Any,
    ) -> "ColumnPlan":
        """Return the plan with other answers.

        Parameters
        ----------
        facts, units, dashes, words : mapping, optional
            By heading; a heading that the plan lacks is added where a fact is given for it, and an empty unit or dash
            is taken away.
        drop : collection of str
            Headings of columns that it shall say nothing of any more.
        **whole
            Of the whole: ``name``, ``sheet``, ``header_row``, ``last_row``, ``encoding``, ``unit``, ``mark``,
            ``counts``, ``decimal``, ``pairs``, ``tables``, ``openings_in``, ``cures``.

        Raises
        ------
        ValueError
            Where a heading is none of the plan's, or a text no fact.
        """
        told = self.columns
        columns, headings, order = dict(told.columns), dict(self.headings), list(told.headers)
        for heading, fact in (facts or {}).items():
            if fact:
                target_of(fact)
            if plain_word(heading) not in columns:
                headings[plain_word(heading)] = heading
                order.append(plain_word(heading))
            columns[plain_word(heading)] = fact
        for heading in (*(units or {}), *(dashes or {}), *(words or {}), *drop):
            if plain_word(heading) not in columns:
                raise ValueError(f"the plan has no column {heading}; it has {', '.join(headings.values())}")
        for heading in drop:
            del columns[plain_word(heading)]
            order = [key for key in order if key != plain_word(heading)]
        kept_words = {key: dict(meanings) for key, meanings in told.words.items() if key in columns}
        for heading, meanings in (words or {}).items():
            kept_words[plain_word(heading)] = {**kept_words.get(plain_word(heading), {}), **meanings}
        cures = whole.pop("cures", ())
        if odd := [name for name in cures if name not in (*CURABLE, NO_CURES)]:
            raise ValueError(f"{odd[0]} is none of the cures {', '.join(CURABLE)}")
        unit = whole.pop("unit", None) or told.bare_unit
        if unit and unit not in BARE_UNITS:
            raise ValueError(f"{unit} is none of the units {', '.join(BARE_UNITS)}")
        remembered = replace(
            told,
            columns=columns,
            bare_unit=unit,
            units=_with(told.units, units, columns),
            dashes=_with(told.dashes, dashes, columns),
            words=kept_words,
            headers=tuple(order),
            cures=kept_cures(cures or told.cures, ()),
            **{name: whole.pop(name, None) or getattr(told, name) for name in _TEXTS},
        )
        return replace(self, columns=remembered, headings=headings, **{k: v for k, v in whole.items() if v is not None})

    def onto(self, options: SurveyOptions) -> SurveyOptions:
        """Return options that follow the plan where they say nothing themselves."""
        unit = next((known for known in BARE_UNITS if known == self.columns.bare_unit), None)
        return replace(
            options,
            plan=self.columns,
            sheet=options.sheet or self.sheet,
            encoding=options.encoding or self.encoding,
            header_row=options.header_row or self.header_row,
            last_row=options.last_row or self.last_row,
            bare_unit=options.bare_unit or unit,
        )


def _with(held: Mapping[str, str], told: Mapping[str, str] | None, columns: Mapping[str, str]) -> dict[str, str]:
    merged = {**held, **{plain_word(heading): word for heading, word in (told or {}).items()}}
    return {key: word for key, word in merged.items() if word and key in columns}


def plan_of(name: str, mapping: SheetMapping, options: SurveyOptions) -> ColumnPlan:
    """Return the plan that reads such a sheet as it was read."""
    kept = mapping.remembered(options.bare_unit or "")
    keys = header_keys(mapping.headers)
    headings = {key: header for key, header in zip(keys, mapping.headers, strict=True) if key in kept.columns}
    return ColumnPlan(name, kept, headings, options.sheet, options.header_row, options.last_row, options.encoding)


def written(plan: ColumnPlan) -> str:
    """Return the text of a plan.

    Examples
    --------
    >>> print(written(ColumnPlan("yard", RememberedMapping({"wd": "leaf.width_mm"}, "in"), {"wd": "Wd."})))
    # Column plan of hwsched: what the columns of such a list mean. Lines may be changed, added, removed.
    plan = "yard"
    unit = "in"
    <BLANKLINE>
    [[column]]
    header = "Wd."
    fact = "leaf.width_mm"
    <BLANKLINE>
    """
    lines = ["# Column plan of hwsched: what the columns of such a list mean. Lines may be changed, added, removed."]
    lines.append(f"plan = {_quoted(plan.name)}")
    if plan.columns.bare_unit:
        lines.append(f"unit = {_quoted(plan.columns.bare_unit)}")
    if plan.sheet:
        lines.append(f"sheet = {_quoted(plan.sheet)}")
    for name, text in (("encoding", plan.encoding), *((name, getattr(plan.columns, name)) for name in _TEXTS)):
        if text:
            lines.append(f"{name} = {_quoted(text)}")
    if plan.columns.cures:
        lines.append(f"cures = [{', '.join(map(_quoted, plan.columns.cures))}]")
    lines += [f"{name} = {row}" for name in ("header_row", "last_row") if (row := getattr(plan, name))]
    for key, fact in plan.columns.columns.items():
        lines += ["", "[[column]]", f"header = {_quoted(_heading(plan, key))}", f"fact = {_quoted(fact)}"]
        for name, told in (("unit", plan.columns.units), ("dash", plan.columns.dashes)):
            if key in told:
                lines.append(f"{name} = {_quoted(told[key])}")
        if words := plan.columns.words.get(key):
            inner = ", ".join(f"{_quoted(word)} = {_quoted(meaning)}" for word, meaning in words.items())
            lines.append(f"words = {{ {inner} }}")
    return "\n".join(lines) + "\n"


def _heading(plan: ColumnPlan, key: str) -> str:
    return plan.headings.get(key, key.partition("#")[0])


def _quoted(text: str) -> str:
    # TOML's basic strings are JSON's, but for the deletion mark.
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")


def read_plan(path: Path) -> ColumnPlan:
    """Read a plan.

    Raises
    ------
    InputRejected
        Where it is not there, no such text, or says what no plan can; the message says which entry.
    """
    try:
        with path.open("rb") as stream:
            content = stream.read(_LARGEST + 1)
    except (OSError, ValueError) as error:
        reason = error.strerror if isinstance(error, OSError) and error.strerror else str(error)
        raise _refused(path, f"cannot be opened: {reason}", "a column plan") from None
    if len(content) > _LARGEST:
        raise _refused(path, "is larger than any column plan", "a column plan")
    try:
        told = tomllib.loads(content.decode("utf-8-sig"))
    except (tomllib.TOMLDecodeError, UnicodeDecodeError, RecursionError) as error:
        raise _refused(path, f"is no column plan: {error}", "a plan as --save-plan writes it") from None
    return _plan(path, told)


def _refused(path: Path, message: str, accepted: str) -> InputRejected:
    return InputRejected([FileProblem(path.name, message, accepted=accepted)])


def _plan(path: Path, told: Mapping[str, Any]) -> ColumnPlan:
    _check_names(path, "the plan", told, _TOP)
    entries = told.get("column", [])
    if not isinstance(entries, list) or not all(isinstance(entry, dict) for entry in entries):
        raise _refused(path, "has columns that are no entries [[column]]", "[[column]] with header and fact")
    headings = [_text(path, entry, "header", f"column {n}") for n, entry in enumerate(entries, 1)]
    keys = header_keys(headings)
    columns: dict[str, str] = {}
    units: dict[str, str] = {}
    dashes: dict[str, str] = {}
    words: dict[str, dict[str, str]] = {}
    for key, heading, entry in zip(keys, headings, entries, strict=True):
        where = f"column {heading}"
        _check_names(path, where, entry, _OF_COLUMN)
        if not key:
            raise _refused(path, f"has a column without a header ({where})", 'header = "Width"')
        columns[key] = _fact(path, _text(path, entry, "fact", where), where)
        if "unit" in entry:
            units[key] = _text(path, entry, "unit", where)
        if "dash" in entry:
            dashes[key] = _text(path, entry, "dash", where)
        meanings = entry.get("words", {})
        if not isinstance(meanings, dict) or not all(isinstance(meaning, str) for meaning in meanings.values()):
            raise _refused(path, f"has words that are no texts ({where})", 'words = { "STL" = "hollow metal" }')
        if meanings:
            words[key] = dict(meanings)
    unit = _text(path, told, "unit", "the plan") if "unit" in told else ""
    if unit and unit not in BARE_UNITS:
        raise _refused(path, f"has the unit {unit}", ", ".join(BARE_UNITS))
    for name, choices in _CHOICES.items():
        if name in told and told[name] not in choices:
            raise _refused(path, f"has {name} {told[name]}", ", ".join(choices))
    cures = told.get("cures", [])
    if not isinstance(cures, list) or any(cure not in CURABLE for cure in cures):
        raise _refused(path, f"has cures {cures!r}, of which one is none", ", ".join(CURABLE))
    texts = {name: _text(path, told, name, "the plan") if name in told else "" for name in _TEXTS}
    return ColumnPlan(
        _text(path, told, "plan", "the plan") if "plan" in told else path.stem,
        RememberedMapping(
            columns,
            unit,
            units,
            dashes,
            words,
            tuple(plain_word(heading) for heading in headings),
            mark=texts["mark"],
            counts=texts["counts"],
            decimal=texts["decimal"],
            pairs=texts["pairs"],
            tables=texts["tables"],
            openings_in=texts["openings_in"],
            cures=kept_cures(cures, ()),
        ),
        dict(zip(keys, headings, strict=True)),
        _text(path, told, "sheet", "the plan") if "sheet" in told else None,
        _row(path, told, "header_row"),
        _row(path, told, "last_row"),
        _text(path, told, "encoding", "the plan") if "encoding" in told else None,
    )


def _check_names(path: Path, where: str, told: Mapping[str, Any], known: frozenset[str]) -> None:
    unknown = sorted(told.keys() - known)
    if unknown:
        raise _refused(path, f"says {unknown[0]} of {where}, which no plan says", ", ".join(sorted(known)))


def _text(path: Path, told: Mapping[str, Any], name: str, where: str) -> str:
    value = told.get(name)
    if not isinstance(value, str):
        raise _refused(path, f"has no text {name} for {where}", f'{name} = "..."')
    return value


def _row(path: Path, told: Mapping[str, Any], name: str) -> int | None:
    value = told.get(name)
    if value is not None and (not isinstance(value, int) or isinstance(value, bool) or value < 1):
        raise _refused(path, f"has no row {name}", f"{name} = 3")
    return value


def _fact(path: Path, fact: str, where: str) -> str:
    if fact:
        try:
            target_of(fact)
        except ValueError as error:
            raise _refused(path, f"{error} ({where})", 'fact = "leaf.width_mm", or "" where it is not read') from None
    return fact
