"""What if: openings worked out under another catalogue, limit, preference or choice, compared before it is accepted."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

from sqlalchemy import Connection

from hwsched.calc.parts.cost import Cost
from hwsched.choices import PREFERENCES
from hwsched.exchange.problems import InputRejected
from hwsched.fitting.candidate import holes_in
from hwsched.fitting.costing import price_openings, terms_of
from hwsched.model.errors import ValueRefusedError
from hwsched.model.journal.journal import Change
from hwsched.model.journal.touched import touched_since
from hwsched.model.power_queries import read_power
from hwsched.model.project import Project
from hwsched.model.queries import (
    StoredFit,
    by_opening,
    catalogue_of,
    first_points,
    latest_change,
    opening_ids,
    read_fits,
    read_inputs,
    read_own_fields,
    read_terms,
)
from hwsched.operations.changes import Changes
from hwsched.operations.opening.fits_within import FitMemory, change_and_fit
from hwsched.operations.opening.hand_choices import ROLES, write_choices
from hwsched.operations.opening.lock_points import afresh
from hwsched.operations.parts.catalogue_import import CatalogueFile, read_catalogue_file, write_catalogue_file
from hwsched.operations.parts.hardware_sets import effect_between
from hwsched.operations.parts.part_edits import edit_part, edited_catalogue
from hwsched.operations.parts.part_form import PartEdit
from hwsched.operations.prepared import NotReadyError
from hwsched.operations.project.settings import check_limits, set_settings
from hwsched.operations.shown import ShownOtherwiseError, changed_meanwhile, check_file
from hwsched.operations.survey.own_fields import own_attributes
from hwsched.rules import RULEBOOK
from hwsched.rules.judging import check, of_opening
from hwsched.telling.nearest import nearest_words
from hwsched.values import Catalogue, Chosen, Finding, Fit, LockPoint, OpeningInput, PointFit
from hwsched.values.fit import Status, together
from hwsched.values.power import PowerFacts
from hwsched.wiring import ConnectedOpening, solve_supplies


@dataclass(slots=True)
class _Known:
    """Fits and findings of inputs that were worked out already."""

    fits: FitMemory = field(default_factory=FitMemory)
    said: dict[str, tuple[Finding, ...]] = field(default_factory=dict)
    stored: dict[str, StoredFit] = field(default_factory=dict)
    """By lock point, those of this program; one whose facts are read alike in what is asked needs no new fit."""

    def read(self, connection: Connection) -> None:
        """Read the stored fits as they stand."""
        engine = self.fits.standings.engine.key
        found = read_fits(connection).items()
        self.stored = {point: each for point, each in found if each.engine is not None and each.engine.key == engine}


@dataclass(frozen=True, slots=True)
class _Opening:
    """An opening as it was worked out here, and what the rules say of it."""

    points: tuple[PointFit, ...]
    findings: tuple[Finding, ...]

    @property
    def given(self) -> OpeningInput:
        return self.points[0].given

    @property
    def fit(self) -> Fit:
        return together([each.fit for each in self.points]) or Fit("to-measure")

    @property
    def pairs(self) -> Iterator[tuple[OpeningInput, Fit | None]]:
        return ((each.given, each.fit) for each in self.points)


@dataclass(frozen=True, slots=True)
class Question:
    """What is asked; what is left out stays as it is."""

    catalogue: Path | None = None
    """A catalogue workbook, taken in over the project's own."""
    limits: Mapping[str, float | None] = field(default_factory=dict)
    """``rule-id.limit`` to value; None goes back to the rule's own."""
    rules_off: Mapping[str, bool] = field(default_factory=dict)
    prefer: str | None = None
    choices: tuple[Chosen, ...] = ()
    """Parts chosen for the openings that are asked about."""
    part: PartEdit | None = None
    """A part added, changed or withdrawn."""

    @property
    def of_project(self) -> bool:
        """Whether it changes what holds for every opening of the project."""
        asked = (self.catalogue, self.prefer, self.part)
        return bool(any(each is not None for each in asked) or self.limits or self.rules_off)


@dataclass(frozen=True, slots=True)
class Difference:
    """What would be different at one opening."""

    opening_id: str
    mark: str
    before: Status
    """Of its fit."""
    after: Status
    gone: tuple[str, ...]
    new: tuple[str, ...]
    """Parts with their roles."""
    cost_before: Cost | None
    cost_after: Cost | None
    holes_before: int
    holes_after: int
    findings_gone: tuple[Finding, ...]
    findings_new: tuple[Finding, ...]
    why: str = ""
    """Why it no longer fits, where it does not."""
    currency: str = ""
    """Of the costs; empty: the project does not say which."""


@dataclass(frozen=True, slots=True)
class Answer:
    """What would be different."""

    question: Question
    asked: tuple[str, ...]
    """Openings that were looked at."""
    differences: tuple[Difference, ...]
    """Openings that would change, in the project's order."""
    basis: "Basis" = field(compare=False, repr=False)


@dataclass(slots=True)
class Basis:
    """What an answer stands on, and what was worked out for it."""

    state: int
    """Change set at which it held last."""
    file: CatalogueFile | None
    """The catalogue that was asked about, as it was read."""
    known: _Known = field(default_factory=_Known)
    others: int = 0
    """Openings of the project that were not looked at."""


def what_if(
    project: Project,
    question: Question,
    ids: Sequence[str] | None = None,
    *,
    progress: Callable[[int, int], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> Answer:
    """Work out openings as they are and as they would be; nothing is stored.

    Parameters
    ----------
    project : Project
        Open project; it is only read.
    question : Question
        What is asked.
    ids : sequence of str, optional
        Openings, such as one or those of a building; all when left out.
    progress, cancelled : callable, optional
        Told how far it is; asked whether to stop.

    Raises
    ------
    ValueRefusedError, InputRejected
        For what is asked that cannot be.
    """
    _check(question)
    file = read_catalogue_file(project, question.catalogue) if question.catalogue is not None else None
    return _answered(project, question, ids, Basis(0, file), progress, cancelled)


def _answered(
    project: Project,
    question: Question,
    ids: Sequence[str] | None,
    basis: Basis,
    progress: Callable[[int, int], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> Answer:
    """Work out an answer; what the basis knows already costs nothing."""
    with project.reading() as connection:
        state = latest_change(connection)
        catalogue = project.catalogue.read(connection)
        openings = list(by_opening(read_inputs(connection, None if ids is None else list(ids), catalogue)))
        terms, present = read_terms(connection), read_power(connection)
        own = own_attributes(read_own_fields(connection), "part")
        others = 0 if ids is None else len(opening_ids(connection)) - len(openings)
        wanted = _beside(present, [inputs[0].opening.id for inputs in openings])
        beside = list(by_opening(read_inputs(connection, wanted, catalogue)))
        basis.known.read(connection)
    other = _catalogue(catalogue, basis.file)
    if question.part is not None:
        other = edited_catalogue(other, question.part, own, project.bare_unit)
    for choice in question.choices:
        if other.get(choice.part) is None:
            raise ValueRefusedError(
                "part", f"the catalogue has no part '{choice.part}'{nearest_words(choice.part, other.parts)}"
            )
    known = basis.known
    rows: list[tuple[_Opening, _Opening]] = []
    for done, inputs in enumerate(openings, start=1):
        if cancelled is not None and cancelled():
            break
        rows.append((_worked(inputs, known), _worked(_asked(inputs, question, other), known)))
        if progress is not None and (done % 16 == 0 or done == len(openings)):
            progress(done, len(openings))
    # Choices are for the openings that were asked about; catalogue and limits change for the neighbours too, whose
    # current the circuit shares.
    asked_elsewhere = replace(question, choices=())
    circuits = (
        _of_circuits(present, [row[0] for row in rows], [_worked(inputs, known) for inputs in beside]),
        _of_circuits(
            present,
            [row[1] for row in rows],
            [_worked(_asked(inputs, asked_elsewhere, other), known) for inputs in beside],
        ),
    )
    costs, would_cost = (
        price_openings((pair for opening in side for pair in opening.pairs), parts, terms)
        for side, parts in (([row[0] for row in rows], catalogue), ([row[1] for row in rows], other))
    )
    found = []
    for now, then in rows:
        given, before, after = now.given, now.fit, then.fit
        said = (*now.findings, *circuits[0].get(given.opening.id, ()))
        would_say = (*then.findings, *circuits[1].get(given.opening.id, ()))
        effect = effect_between(given.opening.mark, before, after)
        gone = tuple(f for f in said if f not in would_say)
        new = tuple(f for f in would_say if f not in said)
        here, there = costs.get(given.opening.id), would_cost.get(given.opening.id)
        if effect is None and not gone and not new and here == there and holes_in(before) == holes_in(after):
            continue
        found.append(
            Difference(
                given.opening.id,
                given.opening.mark,
                before.status,
                after.status,
                effect.gone if effect else (),
                effect.new if effect else (),
                here,
                there,
                holes_in(before),
                holes_in(after),
                gone,
                new,
                effect.why if effect else "",
                terms_of(terms, other).currency,
            )
        )
    asked_ids = tuple(row[0].given.opening.id for row in rows)
    return Answer(question, asked_ids, tuple(found), Basis(state, basis.file, known, others))


def accept_answer(
    project: Project,
    answer: Answer,
    *,
    who: str,
    progress: Callable[[int, int], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> Changes:
    """Make it so: catalogue, settings and choices of the question, and the fits that follow, as one step.

    Parameters
    ----------
    project : Project
        Open project.
    answer : Answer
        As it was shown.
    who : str
        For the journal.
    progress, cancelled : callable, optional
        Told how far it is; asked whether to stop: then nothing is changed.

    Raises
    ------
    ValueRefusedError
        Where the catalogue's file is not the one that was shown any more.
    ShownOtherwiseError
        Where others changed what was asked about, so that something else would be different; with the new answer.
    InputRejected, ValueRefusedError
        As the verbs that do it; nothing is changed in any case.
    """
    question, basis = answer.question, answer.basis
    if basis.file is not None:
        check_file(basis.file.path, basis.file.key)
    if question.of_project and basis.others:
        # Catalogue, limits and preference hold everywhere: what they change at the others was not shown.
        text = f"it may change {basis.others} openings more than were looked at; ask it of all openings to accept it"
        raise ValueRefusedError("accept", text)

    def look() -> None:
        file = None
        if basis.file is not None:
            file = read_catalogue_file(project, basis.file.path)
            check_file(basis.file.path, basis.file.key)
        now = _answered(project, question, answer.asked, Basis(0, file, basis.known))
        if (now.asked, now.differences) != (answer.asked, answer.differences):
            raise ShownOtherwiseError(_changed(answer, now), now)
        basis.state, basis.file = now.basis.state, file

    def write(change: Change, last: bool) -> Sequence[str]:
        # What was shown must be what comes: others may have changed the ground under the answer.
        late = touched_since(change.connection, basis.state)
        if question.part is not None and any(question.part.number in each.parts for each in late):
            # Even where the same would come of it, what they typed must not be overwritten unseen.
            raise ShownOtherwiseError(f"somebody else changed part {question.part.number} meanwhile; look at it again")
        if late:
            if not last:
                raise NotReadyError(look)
            look()
        if basis.file is not None:
            with project.change("import-catalogue", "", who) as part:
                write_catalogue_file(part, basis.file)
        if question.part is not None:
            edit_part(project, question.part, who=who)
        if question.limits or question.rules_off or question.prefer is not None:
            set_settings(
                project, who=who, limits=question.limits, rules_off=question.rules_off, prefer=question.prefer
            )  # fmt: skip
        if question.choices:
            firsts = first_points(change.connection, answer.asked)
            from_question = {firsts[each]: question.choices for each in answer.asked}
            choose_many(project, from_question, who=who, summary="Choose as asked in a what-if")
        change.summary = "; ".join(
            [*change.said, f"fit {len(answer.asked)} openings" if len(answer.asked) != 1 else "fit 1 opening"]
        )
        return answer.asked

    return change_and_fit(
        project, "accept-what-if", "Make a what-if so", who, write, memory=basis.known.fits, progress=progress,
        cancelled=cancelled,
    )  # fmt: skip


def _changed(before: Answer, now: Answer) -> str:
    """Say which openings would be different in another way than was shown."""
    was = {each.opening_id: each for each in before.differences}
    would = {each.opening_id: each for each in now.differences}
    other = (*before.differences, *now.differences)
    marks = [each.mark for each in other if was.get(each.opening_id) != would.get(each.opening_id)]
    return changed_meanwhile(list(dict.fromkeys(marks)) or ["the openings that were asked about"])


def successors(
    project: Project,
    *,
    progress: Callable[[int, int], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> tuple[Difference, ...]:
    """Work out every opening that uses a superseded part with its successor in its place.

    Parameters
    ----------
    project : Project
        Open project; it is only read.
    progress, cancelled : callable, optional
        Told how far it is; asked whether to stop: then only those looked at so far are given.

    Returns
    -------
    tuple of Difference
        One an opening; those where the successor does not fit say why.
    """
    with project.reading() as connection:
        catalogue = project.catalogue.read(connection)
        openings = list(by_opening(read_inputs(connection, None, catalogue)))
        stored = read_fits(connection)
        terms = read_terms(connection)
    known = _Known()
    found = []
    for done, inputs in enumerate(openings, start=1):
        if cancelled is not None and cancelled():
            break
        if progress is not None and (done % 16 == 0 or done == len(openings)):
            progress(done, len(openings))
        held = [_with_held(each, stored[each.point.id].fit) if each.point.id in stored else each for each in inputs]
        succeeded = [_succeeded(each) for each in held]
        if succeeded == held:
            continue
        now, then = _worked(held, known), _worked(succeeded, known)
        given, before, after, said, would_say = now.given, now.fit, then.fit, now.findings, then.findings
        effect = effect_between(given.opening.mark, before, after)
        costs = price_openings(now.pairs, catalogue, terms), price_openings(then.pairs, catalogue, terms)
        new = tuple(f for f in would_say if f not in said)
        worse = [f.message for f in new if f.severity == "error"]
        found.append(
            Difference(
                given.opening.id,
                given.opening.mark,
                before.status,
                after.status,
                effect.gone if effect else (),
                effect.new if effect else (),
                costs[0].get(given.opening.id),
                costs[1].get(given.opening.id),
                holes_in(before),
                holes_in(after),
                tuple(f for f in said if f not in would_say),
                new,
                (effect.why if effect else "") or " ".join(worse),
                terms_of(terms, catalogue).currency,
            )
        )
    return tuple(found)


def choose_many(project: Project, choices: Mapping[str, Sequence[Chosen]], *, who: str, summary: str) -> Changes:
    """Choose parts for many openings as one step; other roles stay as they are."""
    with project.change("choose-parts", summary, who) as change:
        write_choices(change, choices)
    return Changes.of(change)


def _check(question: Question) -> None:
    if question.prefer is not None and question.prefer not in PREFERENCES:
        raise ValueRefusedError("preference", f"there is no '{question.prefer}'; accepted: {', '.join(PREFERENCES)}")
    check_limits(question.limits)
    ids = {rule.id for rule in RULEBOOK}
    for rule in question.rules_off:
        if rule not in ids:
            raise ValueRefusedError("rule", f"there is no '{rule}'{nearest_words(rule, ids)}")
    for choice in question.choices:
        if choice.role not in ROLES:
            raise ValueRefusedError("role", f"'{choice.role}' is no role; accepted: {', '.join(ROLES)}")


def _catalogue(catalogue: Catalogue, file: CatalogueFile | None) -> Catalogue:
    if file is None:
        return catalogue
    if file.read.problems:
        raise InputRejected(file.read.problems)
    parts = dict(catalogue.parts)
    for part in file.read.parts:
        held = parts.get(part.number)
        if held is not None:
            # As when it is taken in: stock and preference that it does not tell are kept.
            part = replace(
                part,
                stock=held.stock if part.stock is None else part.stock,
                preferred=held.preferred if part.preferred is None else part.preferred,
            )
        parts[part.number] = replace(part, kit=tuple(sorted(part.kit)))
    return catalogue_of(parts[number] for number in sorted(parts))


def _beside(present: PowerFacts, ids: Sequence[str]) -> list[str]:
    """Return the openings that are not asked about and hang on a supply of one that is."""
    connected, asked = present.connected(), set(ids)
    supplies = {connected[each].supply_id for each in asked if each in connected}
    return [each for each, circuit in connected.items() if circuit.supply_id in supplies and each not in asked]


def _of_circuits(
    present: PowerFacts, result: Sequence[_Opening], beside: Sequence[_Opening]
) -> Mapping[str, Sequence[Finding]]:
    """Return what the rules of circuits say of openings by their fits."""
    if not any(opening.given.supply_link is not None for opening in result):
        return {}
    openings = {opening.given.opening.id: ConnectedOpening.of(opening.points) for opening in (*result, *beside)}
    given = result[0].given
    connected = present.connected()
    supplies = {connected[each].supply_id for each in openings if each in connected}
    return solve_supplies(present, openings, given.catalogue, given.settings, supplies).by_opening()


def _asked(inputs: Sequence[OpeningInput], question: Question, catalogue: Catalogue) -> list[OpeningInput]:
    """Return the inputs of an opening as they would be; parts are chosen for its first lock point."""
    settings = inputs[0].settings
    limits = {name: value for name, value in {**settings.limits, **question.limits}.items() if value is not None}
    off = {**dict.fromkeys(settings.rules_off, True), **question.rules_off}
    changed = replace(
        settings,
        limits=limits,
        rules_off=frozenset(rule for rule, is_off in off.items() if is_off),
        prefer=settings.prefer if question.prefer is None else question.prefer,
    )
    roles = {choice.role for choice in question.choices}
    chosen = (*(choice for choice in inputs[0].chosen if choice.role not in roles), *question.choices)
    ordered = tuple(sorted(chosen, key=lambda choice: (choice.role, choice.part)))
    first = replace(inputs[0], settings=changed, catalogue=catalogue, chosen=ordered)
    return [first, *(replace(given, settings=changed, catalogue=catalogue) for given in inputs[1:])]


def _worked(inputs: Sequence[OpeningInput], known: _Known) -> _Opening:
    """Work out the lock points of an opening, those alike once."""
    said: list[tuple[LockPoint, tuple[Finding, ...]]] = []

    def make(given: OpeningInput, key: str) -> Fit:
        held = known.stored.get(given.point.id)
        if held is not None:
            known.fits.keep(key, held)
        made = known.fits.made(given, key).fit
        if key not in known.said:
            known.said[key] = check(given, made)
        said.append((given.point, known.said[key]))
        return made

    return _Opening(afresh(inputs, make), of_opening(said))


def _succeeded(given: OpeningInput) -> OpeningInput:
    """Return the input with successors in place of the superseded parts that are chosen."""
    chosen = tuple(
        replace(choice, part=_last(given.catalogue, choice.part))
        if _superseded(given.catalogue, choice.part)
        else choice
        for choice in given.chosen
    )
    return given if chosen == given.chosen else replace(given, chosen=chosen)


def _with_held(given: OpeningInput, found: Fit) -> OpeningInput:
    """Return the input with the superseded parts of its stored fit chosen: a new fit would take none that is not.

    Of a role that holds one, all parts are chosen, so that those beside it stay.
    """
    roles = {choice.role for choice in given.chosen}
    stale = {part.role for part in found.parts if _superseded(given.catalogue, part.part)} - roles
    held = tuple(Chosen(part.role, part.part, part.quantity) for part in found.parts if part.role in stale)
    return replace(given, chosen=(*given.chosen, *held))


def _superseded(catalogue: Catalogue, number: str) -> bool:
    part = catalogue.get(number)
    return part is not None and bool(part.superseded_by)


def _last(catalogue: Catalogue, number: str) -> str:
    """Follow successors to the last one; a circle ends where it began."""
    seen = {number}
    while (part := catalogue.get(number)) is not None and part.superseded_by and part.superseded_by not in seen:
        number = part.superseded_by
        seen.add(number)
    return number
