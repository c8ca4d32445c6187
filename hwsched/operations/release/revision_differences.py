"""What is different between two revisions, or between one and the project as it stands: opening by opening."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, fields, is_dataclass, replace
from datetime import date
from typing import Any, Final, Literal, cast

from hwsched.attributes import said_value
from hwsched.attributes.unknown import unknown_word
from hwsched.catalogue import kind_of
from hwsched.catalogue.traits.entry import ENTRY, ON_HAND
from hwsched.exchange.survey.decisions import kind_title
from hwsched.kept_sentences import FIT, kept_phrase
from hwsched.language import phrase, to_phrase
from hwsched.model.frozen import revision_with
from hwsched.model.project import Project
from hwsched.operations.findings.checking import Cancelled, Checker, Progress
from hwsched.operations.release.changed_lines import Changed, unshared
from hwsched.operations.release.frozen_record import CatalogueRecord, ProjectRecord, Root
from hwsched.operations.release.frozen_state import gather
from hwsched.operations.release.power_differences import CircuitDifference, power_differences
from hwsched.operations.release.revisions import Source, entries_of, openings_then
from hwsched.quantities import LENGTH_STYLES, LengthStyle, format_length
from hwsched.quantities.drill_sizes import format_drill
from hwsched.rules.saying import finding_named, message_of
from hwsched.survey import ENTITIES
from hwsched.telling.natural import natural
from hwsched.values import Catalogue, Finding, Fit, Hole, Part
from hwsched.values.amounts import amount_words
from hwsched.values.place_words import across_words, face_words, pattern_words
from hwsched.values.revision import FileThen, OpeningThen, Scope
from hwsched.values.role_words import role_said

_NO_CATALOGUE: Final = Catalogue({}, "")
STATES: Final = {
    "fits": to_phrase("fits"),
    "does-not-fit": to_phrase("does not fit"),
    "to-measure": to_phrase("to measure"),
    "": to_phrase("not worked out"),
}
"""Of a fit; empty for none."""
_SOURCES: Final = {"by-hand": to_phrase("by hand"), "set": to_phrase("of the hardware set")}
_POWER: Final = {"battery": to_phrase("on battery"), "supply": to_phrase("on a supply")}
_LABELS: Final = {entity.name: entity for entity in ENTITIES}


@dataclass(frozen=True, slots=True)
class OpeningDifference:
    """One opening that is otherwise."""

    opening_id: str
    mark: str
    """In the later state; in the earlier one where it is gone."""
    kind: Literal["new", "gone", "changed"]
    facts: tuple[Changed, ...] = ()
    """Survey, choices by hand, place by hand, hardware set, fields of the project's own."""
    parts: tuple[Changed, ...] = ()
    place: tuple[Changed, ...] = ()
    """Of the unit, its lead and the state of the fit."""
    holes: tuple[Changed, ...] = ()
    findings: tuple[Changed, ...] = ()
    files: tuple[Changed, ...] = ()
    """Photos and other files at it and at what is its own."""
    bench: tuple[Changed, ...] = ()
    """What was done to its pieces at the bench, their serial numbers and lots."""

    @property
    def lines(self) -> tuple[Changed, ...]:
        """All of it."""
        return (*self.facts, *self.parts, *self.place, *self.holes, *self.findings, *self.files, *self.bench)


@dataclass(frozen=True, slots=True)
class RevisionDifferences:
    """Two states compared."""

    before: str
    after: str
    """Letters; "present" for the project as it stands."""
    openings: tuple[OpeningDifference, ...]
    """Those that are otherwise, by mark."""
    others: tuple[Changed, ...]
    """What is one for the whole project: settings, terms, parts, supplies, rules, program."""
    same: int
    """Openings that are as they were."""
    circuits: tuple[CircuitDifference, ...] = ()
    """Those that are otherwise, by name."""
    on_every_page: bool = False
    """Whether something is otherwise that any opening's sheet may show: settings, parts."""


def differences(
    project: Project,
    before: str,
    after: str | None = None,
    *,
    today: date | None = None,
    checker: Checker | None = None,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> RevisionDifferences:
    """Compare two revisions, or one with the project as it stands.

    Parameters
    ----------
    project : Project
        Open project; it is only read.
    before : str
        Letter of the earlier state.
    after : str, optional
        Letter of the later one; the project as it stands when left out.
    today : date, optional
        Against which waivers end, of the project as it stands.
    checker, progress, cancelled : optional
        As for `hwsched.operations.release.freezing.freeze`.

    Raises
    ------
    MissingRowError
        For a letter that there is not.
    """
    with project.reading() as connection:
        first = revision_with(connection, before)
        second = None if after is None else revision_with(connection, after)
    gathered = (
        gather(
            project, Scope.of(first.scope), today or project.today(), base=first, checker=checker, progress=progress,
            cancelled=cancelled,
        )
        if second is None
        else None
    )  # fmt: skip
    with project.reading() as connection:
        source = Source(connection, gathered.contents) if gathered is not None else Source(connection)
        was: Root = source.one("revision", first.root)
        key = gathered.root if gathered is not None else second.root if second is not None else first.root
        now: Root = source.one("revision", key)
        return _compared(source, was, now, first.letter, "present" if second is None else second.letter)


def _compared(source: Source, was: Root, now: Root, before: str, after: str) -> RevisionDifferences:
    if was.bits == now.bits:
        # What is in equal chunks is equal.
        old = entries_of(source, was, [n for n, key in was.openings.items() if now.openings.get(n) != key])
        new = entries_of(source, now, [n for n, key in now.openings.items() if was.openings.get(n) != key])
    else:
        old, new = entries_of(source, was), entries_of(source, now)
    # By identifier and hash: only what differs is decoded.
    otherwise = [each for each in old.keys() | new.keys() if old.get(each) != new.get(each)]
    record: ProjectRecord = source.one("project", now.project)
    style: LengthStyle = next((each for each in LENGTH_STYLES if each == record.settings.length_style), "fraction")
    then = openings_then(source, [old[each][1] for each in otherwise if each in old], record, _NO_CATALOGUE)
    later = openings_then(source, [new[each][1] for each in otherwise if each in new], record, _NO_CATALOGUE)
    # What one of the two does not hold cannot be told apart from what was not there.
    told = both_hold_files(was, now)
    bottles = _of_catalogue(source, was, then.values()), _of_catalogue(source, now, later.values())
    found = [
        difference
        for each in otherwise
        if (
            difference := _difference(
                each,
                _told(then[old[each][1]], told) if each in old else None,
                _told(later[new[each][1]], told) if each in new else None,
                style,
                bottles,
            )
        )
        is not None
    ]
    changed = sum(each.kind != "new" for each in found)
    supplies, circuits = (
        power_differences(source, source.one("power", was.power), source.one("power", now.power), style)
        if was.power != now.power
        else ((), ())
    )
    return RevisionDifferences(
        before,
        after,
        tuple(sorted(found, key=lambda each: natural(each.mark))),
        (*_others(source, was, now), *supplies),
        was.count - changed,
        circuits,
        was.project != now.project or was.catalogue != now.catalogue,
    )


def both_hold_files(was: Root, now: Root) -> bool:
    """Tell whether both states hold files and bench work: what an earlier version froze does not."""
    return bool(was.files and now.files)


def _told(then: OpeningThen, files: bool) -> OpeningThen:
    return then if files else replace(then, files=(), pieces=(), asked=())


def _difference(
    opening_id: str,
    was: OpeningThen | None,
    now: OpeningThen | None,
    style: LengthStyle,
    bottles: tuple[Mapping[str, Part], Mapping[str, Part]],
) -> OpeningDifference | None:
    if was == now:
        return None
    there = now or was
    assert there is not None
    if was is None or now is None:
        return OpeningDifference(opening_id, there.mark, "new" if was is None else "gone")
    return OpeningDifference(
        opening_id,
        there.mark,
        "changed",
        tuple(_facts(was, now, style)),
        tuple(_shown(_parts(was, bottles[0], style), _parts(now, bottles[1], style))),
        tuple(_shown(_places(was, style), _places(now, style))),
        tuple(_shown(_holes(was, style), _holes(now, style))),
        (*_findings(was.findings, now.findings), *unshared(_asked(was), _asked(now))),
        tuple(file_lines(was.files, now.files)),
        tuple(unshared(_bench(was), _bench(now))),
    )


@dataclass(frozen=True, slots=True)
class _Shown:
    """A value and how people read it: what looks alike need not be."""

    value: object
    text: str


def _shown(before: Mapping[str, _Shown], after: Mapping[str, _Shown]) -> Iterable[Changed]:
    """Yield what two lists of values do not share; to the last digit where they read alike."""
    for what in dict.fromkeys((*before, *after)):
        was, now = before.get(what), after.get(what)
        if was is None or now is None:
            yield Changed(what, was.text if was is not None else "", now.text if now is not None else "")
        elif was.text != now.text:
            yield Changed(what, was.text, now.text)
        elif was.value != now.value:
            yield from _finer(what, was.value, now.value)


def _finer(what: str, was: Any, now: Any) -> Iterable[Changed]:
    if isinstance(was, tuple) and isinstance(now, tuple) and len(was) == len(now):
        for before, after in zip(was, now, strict=True):
            if before != after:
                yield from _finer(what, before, after)
    elif is_dataclass(was) and type(was) is type(now):
        for each in fields(was):
            before, after = getattr(was, each.name), getattr(now, each.name)
            if before != after:
                yield Changed(f"{what}: {phrase(each.name.replace('_', ' '))}", str(before), str(after))
    else:
        yield Changed(what, str(was), str(now))


def _facts(was: OpeningThen, now: OpeningThen, style: LengthStyle) -> Iterable[Changed]:
    yield from _values("opening", phrase("Opening"), was.given.opening, now.given.opening, style)
    for entity, of_was, of_now in (
        ("leaf", was.given.leaves, now.given.leaves),
        ("existing_item", was.given.items, now.given.items),
    ):
        yield from _rows(entity, of_was, of_now, style)
    yield from unshared(_by_hand(was), _by_hand(now))
    yield from unshared(
        *({phrase("Own field {name}", name=each.name): str(each.value) for each in own} for own in (was.own, now.own))
    )


def _rows(entity: str, was: Sequence[Any], now: Sequence[Any], style: LengthStyle) -> Iterable[Changed]:
    old, new = {each.id: each for each in was}, {each.id: each for each in now}
    for row_id in dict.fromkeys((*old, *new)):
        before, after = old.get(row_id), new.get(row_id)
        name = _name(entity, after if after is not None else before)
        if before is None or after is None:
            yield _there(name, before is not None, now=after is not None)
        else:
            yield from _values(entity, name, before, after, style)


def _there(what: str, was: bool, *, now: bool) -> Changed:
    return Changed(what, *(phrase("there") if held else "" for held in (was, now)))


def _name(entity: str, row: Any) -> str:
    word, attribute = phrase(_LABELS[entity].label), "position" if entity == "leaf" else "kind"
    kind = getattr(row, attribute)
    # A leaf alone needs no name of its own.
    if not kind or kind == "single":
        return word
    return f"{word}, {said_value(_LABELS[entity].attribute(attribute), kind).lower()}"


def _values(entity: str, name: str, was: Any, now: Any, style: LengthStyle) -> Iterable[Changed]:
    for each in fields(was):
        before, after = getattr(was, each.name), getattr(now, each.name)
        if before == after:
            continue
        attribute = _LABELS[entity].attribute(each.name)
        texts = [said_value(attribute, value, style, unknown=unknown_word()) for value in (before, after)]
        if texts[0] == texts[1]:
            # They differ below what a fraction shows: printed as both the same they would read like an error of the
            # list.
            texts = [f"{value} {attribute.unit}".rstrip() for value in (before, after)]
        yield Changed(f"{name}: {phrase(attribute.label)}", *texts)


def _by_hand(then: OpeningThen) -> dict[str, str]:
    """Return what people decided: choices, places, the supply that feeds it, the hardware set."""
    told = {phrase("Hardware set"): then.set_name} if then.set_name else {}
    for number, point in enumerate(then.points, start=1):
        at, given = _at_point(then, number), point.given
        for choice in given.chosen:
            what = phrase("Chosen {role} {part}{at}", role=role_said(choice.role), part=choice.part, at=at)
            told[what] = f"{choice.quantity:g}, {phrase(_SOURCES.get(choice.source, choice.source))}"
        if given.placed is not None:
            told[phrase("Placed by hand{at}", at=at)] = (
                f"{face_words(given.placed.face)}, {given.placed.x_mm:g} / {given.placed.y_mm:g} mm"
            )
        if given.supply_link is not None:
            told[phrase("Fed by")] = given.supply_link.part or phrase("a supply that is not chosen yet")
    return told


def _at_point(then: OpeningThen, number: int) -> str:
    return phrase(" at point {number}", number=number) if len(then.points) > 1 else ""


def _fits(then: OpeningThen) -> Iterable[tuple[str, Fit]]:
    for number, point in enumerate(then.points, start=1):
        if point.fit is not None:
            yield _at_point(then, number), point.fit


def _parts(then: OpeningThen, bottles: Mapping[str, Part], style: LengthStyle) -> dict[str, _Shown]:
    return {
        f"{role_said(part.role)} {part.part}{at}": _Shown(
            part.quantity, amount_words(bottles.get(part.part), part.quantity, style)
        )
        for at, fit in _fits(then)
        for part in fit.parts
    }


def _of_catalogue(source: Source, root: Root, then: Iterable[OpeningThen]) -> dict[str, Part]:
    """Return the parts of which openings take no whole number: what is poured or cut is said in another way."""
    broken = {p.part for each in then for _, fit in _fits(each) for p in fit.parts if p.quantity != round(p.quantity)}
    if not broken:
        return {}
    held: CatalogueRecord = source.one("catalogue", root.catalogue)
    keys = {number: held.parts[number] for number in broken if number in held.parts}
    parts = source.read("part", keys.values())
    return {number: parts[key] for number, key in keys.items()}


def _places(then: OpeningThen, style: LengthStyle) -> dict[str, _Shown]:
    told: dict[str, _Shown] = {}
    states = [point.fit.status if point.fit is not None else "" for point in then.points]
    told[phrase("State")] = _Shown(states, ", ".join(phrase(STATES[each]) for each in states))
    for at, fit in _fits(then):
        place, cable = fit.placement, fit.cable
        if place is not None:
            x, y = across_words(place.face, place.x_mm, style), format_length(place.y_mm, style)
            words = phrase(
                "{pattern}, {face}, {x}, {y} up",
                pattern=pattern_words(place.pattern),
                face=face_words(place.face),
                x=x,
                y=y,
            )
            told[phrase("Unit{at}", at=at)] = _Shown(replace(place, alternatives=(), clearances=()), words)
        if cable is not None:
            words = phrase(
                "{needed} of {held}",
                needed=format_length(cable.length_mm, style),
                held=format_length(cable.available_mm, style),
            )
            told[phrase("Lead{at}", at=at)] = _Shown(cable, words)
        told[phrase("Power{at}", at=at)] = _Shown(fit.power, phrase(_POWER.get(fit.power, fit.power)))
    return told


def _holes(then: OpeningThen, style: LengthStyle) -> dict[str, _Shown]:
    told: dict[str, _Shown] = {}
    for at, fit in _fits(then):
        for hole in fit.holes:
            name = f"{hole.order}. {kept_phrase(hole.name, FIT)}{at}"
            known, words = told.get(name), _hole(hole, style)
            told[name] = (
                _Shown((hole,), words)
                if known is None
                else _Shown((*cast("tuple[Hole, ...]", known.value), hole), f"{known.text}; {words}")
            )
    return told


def _hole(hole: Hole, style: LengthStyle) -> str:
    size = format_drill(hole.diameter_mm, style) if hole.diameter_mm else phrase("pocket")
    depth = (
        phrase("through") if hole.depth_mm is None else phrase("{size} deep", size=format_length(hole.depth_mm, style))
    )
    x, y = format_length(hole.x_mm, style), format_length(hole.y_mm, style)
    where = phrase("{face} at {x} / {y}", face=face_words(hole.face), x=x, y=y)
    return f"{hole.count} × {size}, {depth}, {where}"


def _findings(was: Sequence[Finding], now: Sequence[Finding]) -> Iterable[Changed]:
    return unshared(_lines(was), _lines(now))


def finding_line(finding: Finding) -> str:
    """Say a finding, its severity before it."""
    waived = phrase(" (waived by {person})", person=finding.waived_by) if finding.waived else ""
    return f"{phrase(finding.severity)}: {message_of(finding)}{waived}"


def _lines(findings: Sequence[Finding]) -> dict[str, str]:
    told: dict[str, str] = {}
    for each in findings:
        name = finding_named(each)
        said = finding_line(each)
        told[name] = f"{told[name]}; {said}" if name in told else said
    return told


def _asked(then: OpeningThen) -> dict[str, str]:
    found: dict[str, str] = {}
    for delivery, kind in then.asked:
        name = f"Question of delivery {delivery}"
        said = phrase(kind_title(kind))
        found[name] = f"{found[name]}, {said}" if name in found else said
    return found


def _bench(then: OpeningThen) -> dict[str, str]:
    names = {point.given.point.id: point.given.point.name for point in then.points}
    found: dict[str, str] = {}
    for each in then.pieces:
        at = f" at {names[each.point_id]}" if names.get(each.point_id) else ""
        said = [*each.done, *(f"{word} {text}" for word, text in (("serial", each.serial), ("lot", each.lot)) if text)]
        found[f"Bench, {each.role} {each.part} #{each.number}{at}"] = ", ".join(said) or "nothing on record"
    return found


_HASH_LETTERS: Final = 8


def file_lines(was: Sequence[FileThen], now: Sequence[FileThen]) -> Iterable[Changed]:
    """Yield what is otherwise of the files at things: which hang there, what is in them, in which order."""
    old, new = ({(each.entity, each.row_id, each.hash): each for each in files} for files in (was, now))
    gone, come = ([each for key, each in one.items() if key not in two] for one, two in ((old, new), (new, old)))
    for each in gone:
        # One of the same name at the same thing took its place.
        after = next((new for new in come if _placed(new) == _placed(each)), None)
        if after is not None:
            come.remove(after)
        yield Changed(_file_name(each), _content(each), "" if after is None else _content(after))
    for each in come:
        yield Changed(_file_name(each), "", _content(each))
    stays, turned = [key for key in old if key in new], [key for key in new if key in old]
    for key in stays:
        called = _file_name(new[key])
        yield from unshared(_words(old[key], called), _words(new[key], called))
    if stays != turned:
        yield Changed("Order of files", *(", ".join(new[key].name for key in keys) for keys in (stays, turned)))


def _placed(each: FileThen) -> tuple[str, str, str]:
    return each.entity, each.row_id, each.name


def _file_name(each: FileThen) -> str:
    thing = each.about or ("" if each.entity == "opening" else each.entity.replace("_", " "))
    return f"File {each.name}{f' at {thing}' if thing else ''}"


def _content(each: FileThen) -> str:
    # The digits tell two photos of one size apart.
    return f"{each.size / 1000:,.1f} kB, {each.hash[:_HASH_LETTERS]}"


def _words(each: FileThen, called: str) -> dict[str, str]:
    told = {f"{called}: name": each.name, f"{called}: title": each.title, f"{called}: note": each.note}
    return {what: text for what, text in told.items() if text}


def _others(source: Source, was: Root, now: Root) -> Iterable[Changed]:
    if bool(was.files) != bool(now.files):
        yield Changed("Photos, files and bench work", *("held" if root.files else "not held" for root in (was, now)))
    elif was.files != now.files:
        yield from file_lines(*(source.one("files", root.files) for root in (was, now)))
    if was.office and now.office and was.office != now.office:
        yield Changed(phrase("How documents look"), phrase("as it was"), phrase("otherwise"))
    if was.engine != now.engine:
        before, after = (source.one("engine", root.engine) for root in (was, now))
        yield from unshared(_flat(before), _flat(after))
    if was.project != now.project:
        yield from unshared(*(_settings(source.one("project", root.project)) for root in (was, now)))
    if was.catalogue != now.catalogue:
        yield from _catalogues(source, source.one("catalogue", was.catalogue), source.one("catalogue", now.catalogue))
    if was.rules != now.rules:
        texts = ({rule.id: rule for rule in source.one("rules", root.rules)} for root in (was, now))
        yield from _members(*texts)


def _catalogues(source: Source, was: CatalogueRecord, now: CatalogueRecord) -> Iterable[Changed]:
    otherwise = {number for number in was.parts.keys() & now.parts.keys() if was.parts[number] != now.parts[number]}
    parts = source.read("part", [held.parts[number] for number in otherwise for held in (was, now)])
    for number in sorted(was.parts.keys() | now.parts.keys()):
        if number in otherwise:
            for each in unshared(*(_part(parts[held.parts[number]]) for held in (was, now))):
                yield Changed(f"{_part_word(number)}: {each.what}", each.before, each.after)
        elif number not in was.parts or number not in now.parts:
            yield _there(_part_word(number), number in was.parts, now=number in now.parts)
        if was.own.get(number) != now.own.get(number):
            what = f"{_part_word(number)}: {phrase('own fields')}"
            yield Changed(what, *(str(held.own.get(number, "")) for held in (was, now)))


def _part_word(number: str) -> str:
    return phrase("Part {number}", number=number)


def _part(part: Part) -> dict[str, str]:
    kind = kind_of(part.kind)
    labels = {each.name: each.label for each in (*ENTRY, *ON_HAND, *(kind.attributes if kind is not None else ()))}
    told = {each.name: getattr(part, each.name) for each in fields(part)}
    told |= told.pop("attributes")
    return {
        phrase(labels.get(name, name.replace("_", " ").capitalize())): str(value)
        for name, value in told.items()
        if value not in (None, "", ())
    }


def _members(was: Mapping[str, object], now: Mapping[str, object]) -> Iterable[Changed]:
    """Yield rules that one of two lists has not, or has otherwise."""
    for name in sorted(was.keys() | now.keys()):
        word = phrase("Rule {name}", name=name)
        if name not in was or name not in now:
            yield _there(word, name in was, now=name in now)
        elif was[name] != now[name]:
            yield Changed(word, phrase("as it was"), phrase("otherwise"))


def _flat(values: Mapping[str, Any]) -> dict[str, str]:
    return {phrase("Program {name}", name=name): str(value) for name, value in values.items()}


def _settings(record: ProjectRecord) -> dict[str, str]:
    settings, terms = record.settings, record.terms
    return {
        phrase("Title"): record.title,
        phrase("Lengths"): settings.length_style,
        phrase("Preference"): phrase(settings.prefer),
        phrase("Rules off"): ", ".join(sorted(settings.rules_off)),
        phrase("Currency"): terms.currency,
        phrase("Labour an hour"): terms.labour_per_hour or "",
        phrase("Learning rate"): terms.learning_rate,
        **{phrase("Limit {name}", name=name): f"{value:g}" for name, value in settings.limits.items()},
        **{phrase("Discount {name}", name=name): value for name, value in terms.discounts.items()},
        **{phrase("Rate {name}", name=name): value for name, value in terms.rates.items()},
        **{phrase("Hours {name}", name=name): value for name, value in terms.hours.items()},
        **{
            phrase("Field {name}", name=f"{each.entity}.{each.name}"): f"{each.label}, {each.kind}"
            for each in record.own_fields
        },
    }
