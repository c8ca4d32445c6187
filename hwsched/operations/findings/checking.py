"""Checking: the stored fits of openings judged by every rule, openings alike once, with what feeds them."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date

from sqlalchemy import Connection

from hwsched.model.power_queries import read_power
from hwsched.model.project import Project
from hwsched.model.queries import (
    HeldPlace,
    OwnField,
    StoredFit,
    by_opening,
    read_extra,
    read_fits,
    read_inputs,
    read_own_fields,
    read_places,
    read_settings,
)
from hwsched.model.record_queries import read_packets, read_waivers
from hwsched.model.tables import ITEM_TABLE, OPENING_TABLE, OWN_FIELD, PROJECT, WAIVER
from hwsched.operations.collector import collector_paused
from hwsched.operations.findings.checked import Checked, OwnValue
from hwsched.operations.findings.checked_supplies import CheckedSupply, checked_supplies
from hwsched.operations.findings.last_check import LastCheck
from hwsched.operations.findings.of_circuit import of_circuit, waived_power
from hwsched.operations.findings.waiver_book import WaiverBook
from hwsched.operations.opening.lock_points import Make, PointResult, outright, point_results, standing_of
from hwsched.operations.opening.seen_first import ReadOpenings
from hwsched.operations.opening.standings import Standings
from hwsched.operations.power.power_results import read_power_result
from hwsched.operations.release.packet_key import packet_key
from hwsched.operations.release.released import as_stored
from hwsched.operations.snapshot import of_one_state
from hwsched.operations.survey.open_counts import questioned
from hwsched.operations.survey.own_fields import own_attributes
from hwsched.rules import OF_WAIVERS, RECORDS, in_rulebook
from hwsched.rules.judging import AlikeMemory, check, check_alike, judge_record, of_opening
from hwsched.stopping import ask_stop, asking
from hwsched.survey import ITEM, OPENING
from hwsched.values import SEVERITIES, Finding, Fit, OpeningInput
from hwsched.values.power import PowerResult
from hwsched.values.record import Record
from hwsched.wiring import ConnectedOpening

Progress = Callable[[int, int], None]
Cancelled = Callable[[], bool]


@dataclass(frozen=True, slots=True)
class CheckedProject:
    """Openings with the supplies that feed them."""

    openings: list[Checked]
    supplies: tuple[CheckedSupply, ...] = ()
    """Of the whole project also those that feed no opening."""


@dataclass
class Checker:
    """Judges openings and remembers what was said of an input, so that openings alike cost once.

    One checker belongs to one thread.
    """

    _known: dict[tuple[str, str], tuple[Finding, ...]] = field(default_factory=dict)
    standings: Standings = field(default_factory=Standings)
    _alike: AlikeMemory = field(default_factory=AlikeMemory)
    last: LastCheck[Checked] = field(default_factory=LastCheck)
    """The last check of a whole project."""
    before: Mapping[str, Checked] = field(default_factory=dict)
    """Openings as somebody still holds them: inputs that have not changed since are not held twice."""

    def judge(
        self,
        points: Sequence[PointResult],
        own: tuple[OwnValue, ...] = (),
        base: int | None = None,
        places: tuple[HeldPlace, ...] = (),
    ) -> Checked:
        """Judge an opening by the fits of its lock points; a point without a fit is judged by the survey only."""
        said = [
            (each.at.given.point, self.findings(each.key, each.at.given, each.at.fit, each.held)) for each in points
        ]
        fresh = any(each.at.fit is not None and not each.stored for each in points)
        known = [each.at for each in points]
        made = Checked.of(known, of_opening(said), stored=not fresh, own=own, base=base, places=places)
        standing = standing_of(points)
        return made if standing == "current" else replace(made, standing=standing, held=as_stored(points))

    def known_inputs(self, inputs: tuple[OpeningInput, ...]) -> tuple[OpeningInput, ...]:
        """Return the inputs of an opening's lock points, those of before where they are the same."""
        was = self.before.get(inputs[0].opening.id)
        return was.inputs if was is not None and was.inputs == inputs else inputs

    def findings(
        self, key: str, given: OpeningInput, fit: Fit | None, held: StoredFit | None = None
    ) -> tuple[Finding, ...]:
        """Return what the rules say of an input with that key; held: what is stored for it."""
        # The status too: of an input without a fit that counts only the survey is judged.
        memory = (key, "" if fit is None else fit.status)
        found = self._known.get(memory)
        if found is None:
            if fit is None:
                surveyed = check(given, Fit("to-measure"))
                # Without a fit the other rules would speak of parts and places that nobody has chosen yet.
                found = tuple(f for f in surveyed if f.discipline == "survey")
            else:
                found = self._of_fit(given, fit, held)
            self._known[memory] = found
        return found

    def _of_fit(self, given: OpeningInput, fit: Fit, held: StoredFit | None) -> tuple[Finding, ...]:
        if held is None or held.shared is None or held.fit is not fit:
            return check(given, fit)
        return check_alike(given, fit, held.shared, held.fit_key, self._alike, held.common_key)


@of_one_state
def check_openings(
    project: Project,
    ids: Iterable[str] | None = None,
    *,
    checker: Checker | None = None,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
    today: date | None = None,
    read: ReadOpenings | None = None,
) -> list[Checked]:
    """Check openings of a project by their stored fits.

    Parameters
    ----------
    project : Project
        Open project; it is only read.
    ids : iterable of str, optional
        Openings to check; all when left out.
    checker : Checker, optional
        Remembers earlier judgements.
    progress, cancelled : callable, optional
        Told how far it is; asked whether to stop.
    today : date, optional
        Against which waivers end; the day it is when left out.
    read : list, optional
        The openings that are wanted, read in the same state (`seen_first`); it is let go of one by one.

    Returns
    -------
    list of Checked
        In the order of the project's openings.
    """
    return check_project(
        project, ids, checker=checker, progress=progress, cancelled=cancelled, today=today, read=read
    ).openings


@of_one_state
def check_project(
    project: Project,
    ids: Iterable[str] | None = None,
    *,
    checker: Checker | None = None,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
    today: date | None = None,
    read: ReadOpenings | None = None,
) -> CheckedProject:
    """Check openings by their stored fits as `check_openings` does, and the supplies that feed them."""
    day = today or project.today()
    with collector_paused():
        made = _judged(project, ids, checker or Checker(), progress, cancelled, read=read)
        whole = ids is None and not (cancelled is not None and cancelled())
        work = _power(project, made, whole=whole)
        book = waiver_book(project, day) if made or work.supplies else None
        openings = _with_records(project, _with_power(made, work), book, day)
        openings = _waiting(project, openings, work, book)
        if whole and checker is not None:
            with project.reading() as connection:
                checker.last.keep(project, connection, day, ((each.given.opening.id, each) for each in openings))
        return CheckedProject(openings, checked_supplies(work, book))


def _judged(
    project: Project,
    ids: Iterable[str] | None,
    checker: Checker,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
    make: Make | None = None,
    *,
    earlier: bool = True,
    read: ReadOpenings | None = None,
) -> list[Checked]:
    """Judge openings one by one, without what their circuits say of them; make: works out what is not stored."""
    wanted = None if ids is None else list(ids)
    with project.reading() as connection:
        catalogue = project.catalogue.read(connection)
        openings = read
        if openings is None:
            openings = list(by_opening(read_inputs(connection, wanted, catalogue, project.memory)))
        fits = read_fits(connection, wanted, project.memory)
        own_fields = project.memory.read(connection, read_own_fields, OWN_FIELD)
        own = _own_values(connection, own_fields, [inputs[0] for inputs in openings], wanted)
        places = read_places(connection, wanted, project.memory)
        base = project.memory.newest(connection)
    checked, count = [], len(openings)
    for done, inputs in enumerate(map(checker.known_inputs, _given_up(openings)), start=1):
        if cancelled is not None and cancelled():
            break
        ask_stop()
        points = point_results(inputs, fits, make, checker.standings, earlier=earlier)
        opening_id = inputs[0].opening.id
        checked.append(checker.judge(points, own.get(opening_id, ()), base, places.get(opening_id, ())))
        if progress is not None and (done % 64 == 0 or done == count):
            progress(done, count)
    return checked


def _given_up(openings: ReadOpenings) -> Iterator[tuple[OpeningInput, ...]]:
    """Go through a list that lets go of each."""
    openings.reverse()
    while openings:
        yield openings.pop()


def _power(project: Project, checked: Sequence[Checked], *, whole: bool = False, fresh: bool = False) -> PowerResult:
    """Work out the supplies that feed openings; whole: also those that feed none. Fresh: neighbours are fitted anew."""
    if not whole and not any(each.given.supply_link is not None for each in checked):
        return PowerResult()
    known = {each.given.opening.id: ConnectedOpening.of(each.points) for each in checked}
    with project.reading() as connection:
        catalogue, facts = project.catalogue.read(connection), read_power(connection)
        return read_power_result(connection, catalogue, facts, known, None if whole else list(known), fresh=fresh)


def _with_power(checked: list[Checked], work: PowerResult) -> list[Checked]:
    """Add what the rules of circuits say of the openings that hang on one."""
    said = work.by_opening()
    return [
        replace(each, findings=_worst_first((*each.findings, *said[each.given.opening.id])))
        if each.given.opening.id in said
        else each
        for each in checked
    ]


def _waiting(project: Project, checked: list[Checked], work: PowerResult, book: WaiverBook | None) -> list[Checked]:
    """Mark what its circuit keeps back, or a question that a delivery left."""
    if not checked:
        return checked
    with project.reading() as connection:
        wait = set(questioned(connection))
    if work.supplies:
        said = waived_power(work, checked, book)
        wait |= {each.given.opening.id for each in checked if of_circuit(each.given.opening.id, said)}
    if not wait:
        return checked
    return [replace(each, waits=True) if each.given.opening.id in wait else each for each in checked]


def waiver_book(project: Project, today: date) -> WaiverBook | None:
    """Return the waivers of a project, ready to be laid over findings; None where it has none."""
    with project.reading() as connection:
        waivers = project.memory.read(connection, read_waivers, WAIVER)
        if not waivers:
            return None
        return WaiverBook.of(waivers, project.memory.read(connection, read_settings, PROJECT), today)


def _with_records(project: Project, checked: list[Checked], book: WaiverBook | None, today: date) -> list[Checked]:
    """Lay waivers over the findings, and add what the rules of records say."""
    if not checked:
        return checked
    with project.reading() as connection:
        packets = read_packets(connection, [each.given.opening.id for each in checked])
    settings = checked[0].given.settings
    made = []
    for each in asking(checked):
        packet = packets.get(each.given.opening.id)
        if each.fit is not None and packet is None and book is None:
            made.append(each)
            continue
        # What an earlier version worked out is what it was released with, until somebody takes what this one says.
        out = each.held if each.fit is None and each.standing == "earlier-version" else each.points
        shown = packet_key(out) if packet is not None else ""
        record = Record(each.given, shown, each.fit, each.findings, today, packet, standing=each.standing)
        findings = (*judge_record(record, settings), *each.findings)
        if book is not None:
            # What is said of fit and packet can be waived too; what is said of waivers cannot.
            present = book.lay_over(each.inputs, findings)
            unneeded = [
                waiver for waiver in present.unneeded if each.fit is not None or _judged_without_fit(waiver.rule)
            ]
            of_waivers = replace(
                record,
                findings=present.findings,
                past=tuple(present.past),
                lapsed=tuple(present.lapsed),
                unneeded=tuple(unneeded),
            )
            said = (finding for finding in judge_record(of_waivers, settings) if finding.rule in OF_WAIVERS)
            findings = (*said, *present.findings)
        made.append(replace(each, findings=_worst_first(findings)))
    return made


def _judged_without_fit(rule_id: str) -> bool:
    """Tell whether a rule speaks of an opening without a fit; of others nobody knows what they would say."""
    rule = in_rulebook(rule_id)
    return rule is None or rule.discipline == "survey" or rule.subject is RECORDS


def _worst_first(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    return tuple(sorted(findings, key=lambda finding: SEVERITIES.index(finding.severity)))


def _own_values(
    connection: Connection, fields: Sequence[OwnField], inputs: list[OpeningInput], ids: list[str] | None
) -> dict[str, tuple[OwnValue, ...]]:
    """Return the project's own fields by opening; empty when the project has none."""
    of_openings, of_items = own_attributes(fields, OPENING.name), own_attributes(fields, ITEM.name)
    if not of_openings and not of_items:
        return {}
    openings = read_extra(connection, OPENING_TABLE, ids)
    items = read_extra(connection, ITEM_TABLE)
    found = {}
    for given in inputs:
        rows = [(OPENING.name, given.opening.id, of_openings, openings)]
        rows += [(ITEM.name, item.id, of_items, items) for item in given.items]
        found[given.opening.id] = tuple(
            OwnValue(entity, row_id, attribute, held.get(row_id, {}).get(attribute.name))
            for entity, row_id, attributes, held in rows
            for attribute in attributes
        )
    return found


@of_one_state
def look_again(
    project: Project, ids: Iterable[str], *, checker: Checker, today: date | None = None, earlier: bool = True
) -> list[Checked]:
    """Check openings after an edit, working out anew what no longer belongs to the facts; nothing is stored.

    Parameters
    ----------
    project : Project
        Open project; it is only read.
    ids : iterable of str
        Openings to look at; those that are gone are left out.
    checker : Checker
        Remembers earlier judgements.
    today : date, optional
        Against which waivers end.
    earlier : bool
        Whether what an earlier version of the program has worked out is worked out anew too; else it waits until a
        person has seen what differs.

    Returns
    -------
    list of Checked
        With ``stored`` false where the fit was worked out here.
    """
    looked = _judged(project, ids, checker, make=outright, earlier=earlier)
    day = today or project.today()
    book = waiver_book(project, day) if looked else None
    work = _power(project, looked, fresh=True)
    return _waiting(project, _with_records(project, _with_power(looked, work), book, day), work, book)
