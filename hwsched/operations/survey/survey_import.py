"""Taking in a survey: preview as differences, then one change set with every row's origin."""

from collections.abc import Callable, Collection, Iterable, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path

from sqlalchemy import Connection, select

from hwsched.attributes import Attribute
from hwsched.exchange.file_key import read_with_key
from hwsched.exchange.problems import CellProblem, FileProblem, InputRejected
from hwsched.exchange.survey.book import SurveyOptions, SurveyRead, read_survey
from hwsched.exchange.survey.deciding import decide
from hwsched.exchange.survey.difference import LeafGone, OpeningChange, Preview, difference
from hwsched.exchange.survey.facts import SurveyedOpening
from hwsched.exchange.survey.mapping import RememberedMapping, SheetMapping
from hwsched.exchange.survey.outline import SheetOutline, outline
from hwsched.exchange.survey.plan import plan_of
from hwsched.model.journal.journal import Change
from hwsched.model.journal.touched import Touched, touched_since
from hwsched.model.project import Project
from hwsched.model.queries import (
    latest_change,
    opening_ids,
    read_extra,
    read_inputs,
    read_own_fields,
    retired_openings,
)
from hwsched.model.tables import IMPORT_MAPPING, ITEM_TABLE, OPENING_TABLE
from hwsched.operations.changes import Changes
from hwsched.operations.collector import collector_paused
from hwsched.operations.imports import TakenIn
from hwsched.operations.opening.fits_within import change_and_fit
from hwsched.operations.prepared import NotReadyError, change_prepared
from hwsched.operations.shown import ShownOtherwiseError, changed_meanwhile, check_file
from hwsched.operations.survey.deliveries import keep_delivery, read_settled, summary_of
from hwsched.operations.survey.hand_edits import settle_by_hand
from hwsched.operations.survey.own_fields import attribute_of
from hwsched.operations.survey.plans import keep_plan, plan_path
from hwsched.operations.survey.survey_writing import write_preview
from hwsched.quantities import BARE_UNITS

Problem = CellProblem | FileProblem


@dataclass(slots=True)
class Basis:
    """What a preview stands on."""

    state: int
    """Change set at which it held last."""
    key: str
    """Of the file's content."""
    asked: SurveyOptions
    """How it was read: with the project's own fields, unit and remembered columns."""
    read: SurveyRead
    marks: Mapping[str, str]
    """Identifiers of the project's openings."""


@dataclass(frozen=True, slots=True)
class PreviewResult:
    """What a file would change, and what is wrong with it."""

    preview: Preview
    problems: tuple[Problem, ...]
    basis: Basis = field(compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class ImportResult:
    """What a file did change."""

    changes: Changes
    preview: Preview
    problems: tuple[Problem, ...]


def preview_survey(project: Project, path: Path, options: SurveyOptions) -> PreviewResult:
    """Read a survey and say what it would change; nothing is written.

    Raises
    ------
    InputRejected
        When the file as a whole cannot be read.
    """
    with collector_paused():
        return _look(project, path, options)


@dataclass(frozen=True, slots=True)
class LaidOpen:
    """A survey file as a person sees it before it is taken in."""

    sheets: tuple[SheetOutline, ...]
    seen: PreviewResult | None
    """What it would change; None where it cannot be read yet."""
    problems: tuple[Problem, ...]
    """What is refused of it, also where it cannot be read yet."""


def lay_open(project: Project, path: Path, options: SurveyOptions, before: LaidOpen | None = None) -> LaidOpen:
    """Lay a survey file open: its sheets and columns, and what it would change where it can be read already.

    Parameters
    ----------
    project : Project
        Open project; it is only read.
    path : Path
        The file.
    options : SurveyOptions
        What the file does not say.
    before : LaidOpen, optional
        As it was laid open before: where only decisions are other ones since, the file is not read again.

    Raises
    ------
    InputRejected
        When it is no file of a kind that is read.
    """
    with collector_paused():
        return _laid_open(project, path, options, before)


def _laid_open(project: Project, path: Path, options: SurveyOptions, before: LaidOpen | None) -> LaidOpen:
    with project.reading() as connection:
        asked = _asked(project, connection, options)
    if before is not None and before.seen is not None:
        held = before.seen.basis
        if replace(asked, decisions=held.asked.decisions) == held.asked:
            seen = _look(project, path, options, before.seen)
            return LaidOpen(before.sheets, seen, seen.problems)
    # Without the sheet that was chosen: a person who chose a wrong one has to see the others.
    sheets = outline(path, asked)
    try:
        seen = preview_survey(project, path, options)
    except InputRejected as refused:
        return LaidOpen(sheets, None, refused.problems)
    return LaidOpen(sheets, seen, seen.problems)


def save_plan(project: Project, path: Path, options: SurveyOptions, named: str) -> Path:
    """Keep how a survey file is read as a column plan, under a name or as a file; returns where.

    Raises
    ------
    InputRejected
        When the file as a whole cannot be read.
    """
    with project.reading() as connection:
        asked = _asked(project, connection, options)
    (mapping, *_) = read_survey(path, asked).mapping
    return keep_plan(named, plan_of(plan_path(named).stem, mapping, asked))


def take_in(project: Project, path: Path, *, who: str, accept: str) -> TakenIn:
    """Take in a survey as its file stands, as `IMPORTS` has it; a person's answers go to `import_survey`."""
    done = import_survey(project, path, SurveyOptions(), who=who, accept=accept)
    counts = {name: len(getattr(done.preview, name)) for name in ("new", "changed", "unchanged")}
    said = ", ".join(f"{count} {name}" for name, count in counts.items())
    told = {f"{name}_count": count for name, count in counts.items()}
    return TakenIn(done.changes, f"Openings: {said}", told, tuple(done.problems))


def import_survey(
    project: Project,
    path: Path,
    options: SurveyOptions,
    *,
    who: str,
    accept: str = "all",
    seen: PreviewResult | None = None,
    fit_too: bool = False,
    progress: Callable[[int, int], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> ImportResult:
    """Take in a survey as one change set; the same file twice changes nothing.

    Parameters
    ----------
    project : Project
        Open project.
    path : Path
        .xlsx, .xls, .ods or .csv.
    options : SurveyOptions
        What the file does not say.
    who : str
        For the journal.
    accept : {"all", "good-rows"}
        With "all" one refused cell refuses the file; with "good-rows" its opening is left out.
    seen : PreviewResult, optional
        What a person was shown of it, and nothing else is taken in.
    fit_too : bool
        Whether the openings that it touches are fitted in the same step.
    progress, cancelled : callable, optional
        Told how far it is; asked whether to stop: then nothing is changed.

    Raises
    ------
    InputRejected
        And nothing is changed.
    ValueRefusedError
        Where the file is not the one that was shown any more.
    ShownOtherwiseError
        Where others changed what the preview compared, so that it reads otherwise; with the new preview.
    """
    told = progress or (lambda _done, _total: None)
    if seen is not None:
        # Before anything is read again: what was accepted was the content that was shown, not whatever lies there
        # now.
        check_file(path, seen.basis.key)
    held: list[PreviewResult] = [seen] if seen is not None else []

    def look() -> None:
        with collector_paused():
            now = _look(project, path, options, held[0] if held else None)
        if seen is not None and _differs(seen, now):
            raise ShownOtherwiseError(changed_meanwhile(_differs(seen, now)), now)
        held[:] = [now]

    def write(change: Change, last: bool) -> Collection[str]:
        if touched_since(change.connection, held[0].basis.state):
            if not last:
                raise NotReadyError(look)
            look()
        preview = held[0].preview
        with collector_paused():
            write_preview(change, preview, path.name)
            told(2, 3)
            for mapping in held[0].basis.read.mapping:
                _remember(change, mapping, options, held[0].basis.read.corrections)
            touched = sorted(change.openings)
            keep_delivery(change, path.name, held[0].basis.key, preview, held[0].basis.read, held[0].basis.marks)
        change.summary = f"Take in survey {path.name}: {summary_of(preview)}"
        made = held[0].basis.read.corrections
        own = [f'{sheet} {cell} "{was}" as "{now}"' for sheet, cell, was, now, by in made if not by]
        if own:
            change.summary += f"; cells mended: {', '.join(own)}"
        if fit_too and touched:
            change.summary += f"; fit {len(touched)} openings" if len(touched) != 1 else "; fit 1 opening"
        return touched

    if not held:
        look()
    told(1, 3)
    if held[0].problems and (accept == "all" or not held[0].basis.read.openings):
        raise InputRejected(held[0].problems)
    verb, summary = "import-survey", f"Take in survey {path.name}"
    if fit_too:
        changes = change_and_fit(project, verb, summary, who, write, progress=progress, cancelled=cancelled)
    else:
        with collector_paused():
            changes = Changes.of(change_prepared(project, verb, summary, who, write)[0])
        told(3, 3)
    return ImportResult(changes, held[0].preview, held[0].problems)


def _look(project: Project, path: Path, options: SurveyOptions, held: PreviewResult | None = None) -> PreviewResult:
    """Read a file and compare it; of what is held already only what others changed is read and compared again."""
    with project.reading() as connection:
        asked = _asked(project, connection, options)
        state, marks = latest_change(connection), opening_ids(connection)
        if held is not None and replace(asked, decisions=held.basis.asked.decisions) == held.basis.asked:
            check_file(path, held.basis.key)
            read, key = held.basis.read, held.basis.key
            if asked == held.basis.asked and not _compared_otherwise(
                held.basis, marks, touched_since(connection, held.basis.state)
            ):
                return replace(held, basis=replace(held.basis, state=state))
        else:
            read, key = read_with_key(path, lambda: read_survey(path, asked))
        own = any(asked.own_fields.values())
        extra = {**read_extra(connection, OPENING_TABLE), **read_extra(connection, ITEM_TABLE)} if own else {}
        catalogue, decisions = project.catalogue.read(connection), asked.decisions
        resting = [row_id for mark, row_id in retired_openings(connection).items() if mark in _marks(read)]
        retired = (
            {given.opening.mark: given for given in read_inputs(connection, resting, catalogue, retired=True)}
            if resting
            else {}
        )
        earlier = read_settled(connection)
        decisions = replace(decisions, same={**earlier.same, **decisions.same})
        preview = difference(read, read_inputs(connection, None, catalogue), extra, decisions, retired)
        preview = settle_by_hand(connection, preview, decisions)
        preview = decide(preview, read.openings, marks, decisions, earlier.held)
    return PreviewResult(preview, read.problems, Basis(state, key, asked, read, marks))


def _asked(project: Project, connection: Connection, options: SurveyOptions) -> SurveyOptions:
    """Return how a file is to be read in this project: with its own fields, its unit and what it remembers."""
    own: dict[str, list[Attribute]] = {}
    for made in read_own_fields(connection):
        own.setdefault(made.entity, []).append(attribute_of(made))
    remembered = {
        row.fingerprint: RememberedMapping.of(row.mapping) for row in connection.execute(select(IMPORT_MAPPING))
    }
    bare = next((unit for unit in BARE_UNITS if unit == project.bare_unit), None)
    return replace(
        options,
        own_fields={**{name: tuple(found) for name, found in own.items()}, **options.own_fields},
        remembered={**remembered, **options.remembered},
        usual_unit=options.usual_unit or bare,
    )


def _marks(read: SurveyRead) -> frozenset[str]:
    return frozenset(opening.mark for opening in read.openings)


def _compared_otherwise(basis: Basis, marks: Mapping[str, str], late: Iterable[Touched]) -> bool:
    """Tell whether others touched an opening that the file names, by the mark that it had or by the one that it has."""
    named = [opening.mark for opening in basis.read.openings]
    used = {found for mark in named for found in (basis.marks.get(mark), marks.get(mark)) if found is not None}
    return any(each.openings & used for each in late)


def _differs(seen: PreviewResult, now: PreviewResult) -> list[str]:
    """Return the marks of which the file would change something else than was shown."""

    def by_mark(result: PreviewResult) -> dict[str, object]:
        told = result.preview
        every: tuple[SurveyedOpening | OpeningChange | LeafGone, ...] = (*told.new, *told.changed, *told.leaves_gone)
        return {**dict((*told.retired, *told.restored)), **{each.mark: each for each in every}}

    was, would = by_mark(seen), by_mark(now)
    found = [mark for mark in {**was, **would} if was.get(mark) != would.get(mark)]
    return found or (["what is refused"] if seen.problems != now.problems else [])


def _remember(
    change: Change,
    mapping: SheetMapping,
    options: SurveyOptions,
    corrections: tuple[tuple[str, str, str, str, str], ...],
) -> None:
    """Keep how a header was read; an import that changes nothing else keeps it only where the user said it anew."""
    row = change.connection.execute(
        select(IMPORT_MAPPING).where(IMPORT_MAPPING.c.fingerprint == mapping.fingerprint)
    ).first()
    kept = mapping.remembered(options.bare_unit or (row.mapping.get("bare_unit", "") if row else ""))
    of_sheet = tuple(
        (sheet, cell, was, now, by or change.who) for sheet, cell, was, now, by in corrections if sheet == mapping.sheet
    )
    content = replace(kept, corrections=of_sheet).content()
    columns = options.columns or options.units or options.dashes or options.words
    whole = options.mark or options.counts or options.decimal or options.pairs or options.tables
    said = bool(columns or whole or options.corrections or options.openings_in or options.cures)
    if row is None:
        if change.number is not None or said:
            change.insert(
                IMPORT_MAPPING, [{"fingerprint": mapping.fingerprint, "name": mapping.sheet, "mapping": content}]
            )
    elif dict(row.mapping) != content and (change.number is not None or said or options.bare_unit):
        change.update(IMPORT_MAPPING, [(row.id, {"mapping": content})])
