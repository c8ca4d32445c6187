"""Hardware sets: a named list of parts that a group of openings shares, made by hand or proposed, and assigned.

An opening keeps what was chosen for itself: its own choice of a role goes before the set's line of that role. A set
speaks of the first lock point of its openings; further points are left to the fit and to choices by hand.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from math import isfinite

from sqlalchemy import Connection, select

from hwsched.model.errors import MissingRowError, ValueRefusedError
from hwsched.model.journal.journal import Change
from hwsched.model.project import Project
from hwsched.model.queries import by_opening, first_points, read_inputs
from hwsched.model.tables import CHOSEN_PART, HARDWARE_SET, IN_USE, OPENING_TABLE, PART, SET_LINE
from hwsched.operations.changes import Changes
from hwsched.operations.findings.checking import Cancelled, Progress, check_openings
from hwsched.operations.opening.hand_choices import ROLES
from hwsched.operations.opening.lock_points import afresh, outright
from hwsched.operations.snapshot import of_one_state
from hwsched.operations.survey.accepted_values import row_there
from hwsched.rules.judging import check, of_opening
from hwsched.telling.natural import natural
from hwsched.telling.nearest import nearest_words
from hwsched.values import Chosen, Finding, Fit, OpeningInput, PointFit
from hwsched.values.fit import together

PROPOSED_ROLES = ("cylinder", "lock", "reader", "cam", "tailpiece", "unit", "lead-extension", "strike")
"""Roles of the lines of a proposed set: what a specifier names; the rest follows from them in each opening's fit."""


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a set."""

    role: str
    part: str
    quantity: float = 1.0


@dataclass(frozen=True, slots=True)
class HardwareSet:
    """A set with its openings."""

    id: str
    name: str
    notes: str
    lines: tuple[Line, ...]
    openings: tuple[str, ...]
    """Identifiers."""
    marks: tuple[str, ...]
    overridden: Mapping[str, tuple[str, ...]]
    """Roles that openings decide for themselves, by mark."""


@dataclass(frozen=True, slots=True)
class Proposed:
    """A set that a group of openings alike could share."""

    name: str
    lines: tuple[Line, ...]
    openings: tuple[str, ...]
    marks: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SetEffect:
    """What a changed set does to one opening."""

    mark: str
    before: str
    """Status of its fit."""
    after: str
    gone: tuple[str, ...]
    new: tuple[str, ...]
    """Parts with their roles."""
    why: str = ""
    """Why it no longer fits, where it does not."""


def hardware_sets(project: Project) -> list[HardwareSet]:
    """Return the sets by name, in the order in which people count."""
    with project.reading() as connection:
        lines: dict[str, list[Line]] = {}
        for row in connection.execute(select(SET_LINE).order_by(SET_LINE.c.role, SET_LINE.c.part)):
            lines.setdefault(row.set_id, []).append(Line(row.role, row.part, row.quantity))
        members: dict[str, list[tuple[str, str]]] = {}
        query = select(OPENING_TABLE.c.set_id, OPENING_TABLE.c.id, OPENING_TABLE.c.mark)
        for set_id, opening, mark in connection.execute(query.where(OPENING_TABLE.c.set_id.is_not(None), IN_USE)):
            members.setdefault(set_id, []).append((mark, opening))
        own: dict[str, set[str]] = {}
        firsts = first_points(connection, [opening for here in members.values() for _, opening in here])
        of_point = {point: opening for opening, point in firsts.items()}
        for point, role in connection.execute(select(CHOSEN_PART.c.lock_point_id, CHOSEN_PART.c.role)):
            own.setdefault(of_point.get(point, ""), set()).add(role)
        found = []
        for row in connection.execute(select(HARDWARE_SET)):
            held = tuple(lines.get(row.id, ()))
            here = sorted(members.get(row.id, ()), key=lambda pair: natural(pair[0]))
            roles = {line.role for line in held}
            over = {m: tuple(sorted(roles & own.get(o, set()))) for m, o in here if roles & own.get(o, set())}
            ids, marks = tuple(o for _, o in here), tuple(m for m, _ in here)
            found.append(HardwareSet(row.id, row.name, row.notes or "", held, ids, marks, over))
    return sorted(found, key=lambda each: natural(each.name))


def set_named(project: Project, name: str) -> HardwareSet:
    """Return the set of that name; raises MissingRowError."""
    for each in hardware_sets(project):
        if each.name == name:
            return each
    raise MissingRowError(f"there is no hardware set {name}")


def make_set(
    project: Project, name: str, lines: Iterable[Line], *, who: str, notes: str = "", openings: Sequence[str] = ()
) -> tuple[Changes, str]:
    """Make a set, and assign openings to it.

    Raises
    ------
    ValueRefusedError, DuplicateValueError
        And nothing is changed.
    """
    title = " ".join(name.split())
    if not title:
        raise ValueRefusedError("name", "a hardware set needs a name")
    with project.change("make-set", f"Make hardware set {title}", who) as change:
        held = _accepted(change.connection, lines)
        set_id = _insert(change, title, held, notes)
        change.update(OPENING_TABLE, [(each, {"set_id": set_id}) for each in openings])
    return Changes.of(change), set_id


def change_set_lines(
    project: Project,
    set_id: str,
    lines: Iterable[Line],
    *,
    who: str,
    was: Sequence[Line] | None = None,
    base: int | None = None,
) -> Changes:
    """Put other lines into a set; `effect_of_lines` shows before which openings change.

    Parameters
    ----------
    project : Project
        Open project.
    set_id : str
        The set.
    lines : iterable of Line
        All that it is to have.
    who : str
        For the journal.
    was : sequence of Line, optional
        All that it had when the lines were shown: roles whose lines are as they were shown are left as they stand now.
    base : int, optional
        The newest change set that was seen; what others changed since at the same roles is a conflict.

    Raises
    ------
    ValueRefusedError, MissingRowError, ConflictError
        And nothing is changed.
    """
    with project.change("change-set", "Change a hardware set", who, base=base) as change:
        row = row_there(change, HARDWARE_SET, set_id)
        change.summary = f"Change hardware set {row.name}"
        wanted = {(line.role, line.part): line for line in _accepted(change.connection, lines)}
        held = {
            (each.role, each.part): each
            for each in change.connection.execute(select(SET_LINE).where(SET_LINE.c.set_id == set_id))
        }
        if was is not None:
            kept = _roles_alike(was, wanted.values())
            wanted = {key: line for key, line in wanted.items() if key[0] not in kept}
            held = {key: line for key, line in held.items() if key[0] not in kept}
        change.delete(SET_LINE, [row.id for key, row in held.items() if key not in wanted])
        change.update(
            SET_LINE, [(held[key].id, {"quantity": line.quantity}) for key, line in wanted.items() if key in held]
        )
        change.insert(
            SET_LINE,
            [
                {"set_id": set_id, "role": line.role, "part": line.part, "quantity": line.quantity}
                for key, line in wanted.items()
                if key not in held
            ],
        )
        # Its openings change with it, though no row of theirs does.
        query = select(OPENING_TABLE.c.id).where(OPENING_TABLE.c.set_id == set_id)
        change.openings.update(change.connection.execute(query).scalars())
    return Changes.of(change)


def remove_set(project: Project, set_id: str, *, who: str, base: int | None = None) -> Changes:
    """Remove a set; its openings are left to the fit.

    Raises MissingRowError, and ConflictError for what others changed at it since ``base``.
    """
    with project.change("remove-set", "Remove a hardware set", who, base=base) as change:
        row = row_there(change, HARDWARE_SET, set_id)
        change.summary = f"Remove hardware set {row.name}"
        query = select(OPENING_TABLE.c.id).where(OPENING_TABLE.c.set_id == set_id)
        members = list(change.connection.execute(query).scalars())
        change.update(OPENING_TABLE, [(each, {"set_id": None}) for each in members])
        change.delete(HARDWARE_SET, [set_id])
    return Changes.of(change)


def assign_set(
    project: Project, set_id: str | None, openings: Sequence[str], *, who: str, base: int | None = None
) -> Changes:
    """Give openings a set, or take it from them.

    Raises MissingRowError, and ConflictError for openings to which others gave another set since ``base``.
    """
    many = len(openings) != 1
    summary = f"Take {len(openings)} openings out of their sets" if many else "Take 1 opening out of its set"
    with project.change("assign-set", summary, who, base=base) as change:
        if set_id is not None:
            row = row_there(change, HARDWARE_SET, set_id)
            change.summary = (
                f"Give {len(openings)} openings the hardware set {row.name}"
                if many
                else f"Give 1 opening the hardware set {row.name}"
            )
        change.update(OPENING_TABLE, [(each, {"set_id": set_id}) for each in openings])
    return Changes.of(change)


@of_one_state
def propose_sets(
    project: Project,
    ids: Iterable[str] | None = None,
    *,
    at_least: int = 2,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> tuple[Proposed, ...]:
    """Group openings whose fits take the same parts, hand and rating apart; the largest group first.

    Parameters
    ----------
    project : Project
        Open project; it is only read.
    ids : iterable of str, optional
        Among which openings; all when left out. Those that have a set already are left out.
    at_least : int
        Openings of a group.
    progress, cancelled : callable, optional
        Told how far it is; asked whether to stop: then only what was read so far is grouped.
    """
    taken = {opening for each in hardware_sets(project) for opening in each.openings}
    names = {each.name for each in hardware_sets(project)}
    groups: dict[tuple[Line, ...], list[OpeningInput]] = {}
    for each in check_openings(project, ids, progress=progress, cancelled=cancelled):
        if each.fit is None or each.fit.status != "fits" or each.given.opening.id in taken:
            continue
        first = each.points[0].fit or each.fit
        lines = tuple(sorted(lines_of(first), key=lambda line: (line.role, line.part)))
        groups.setdefault(lines, []).append(each.given)
    found = sorted(groups.items(), key=lambda group: (-len(group[1]), [line.part for line in group[0]]))
    proposed, number = [], 1
    for lines, inputs in found:
        if len(inputs) < at_least or not lines:
            continue
        while f"HS-{number:02d}" in names:
            number += 1
        openings = tuple(given.opening.id for given in inputs)
        marks = tuple(given.opening.mark for given in inputs)
        proposed.append(Proposed(f"HS-{number:02d}", lines, openings, marks))
        number += 1
    return tuple(proposed)


def accept_sets(project: Project, proposed: Sequence[Proposed], *, who: str) -> Changes:
    """Make proposed sets and give them to their openings, as one step; raises as `make_set`."""
    with project.change("accept-sets", f"Make {len(proposed)} proposed hardware sets", who) as change:
        for each in proposed:
            set_id = _insert(change, each.name, _accepted(change.connection, each.lines), "")
            change.update(OPENING_TABLE, [(opening, {"set_id": set_id}) for opening in each.openings])
    return Changes.of(change)


@of_one_state
def effect_of_lines(
    project: Project,
    set_id: str,
    lines: Iterable[Line],
    *,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> tuple[SetEffect, ...]:
    """Work out which openings a changed set changes, before it is accepted; those that stay are left out.

    Told to stop, it gives those found so far. Raises MissingRowError, and ValueRefusedError as `make_set` does.
    """
    found = next((each for each in hardware_sets(project) if each.id == set_id), None)
    if found is None:
        raise MissingRowError("this hardware set is not in the project any more")
    with project.reading() as connection:
        wanted = [Chosen(line.role, line.part, line.quantity, "set") for line in _accepted(connection, lines)]
        openings = list(by_opening(read_inputs(connection, found.openings, project.catalogue.read(connection))))
    effects = []
    for done, (given, *others) in enumerate(openings, start=1):
        if cancelled is not None and cancelled():
            break
        own = tuple(choice for choice in given.chosen if choice.source != "set")
        roles = {choice.role for choice in own}
        fresh = (*own, *(choice for choice in wanted if choice.role not in roles))
        changed = replace(given, chosen=tuple(sorted(fresh, key=lambda choice: (choice.role, choice.part))))
        before, after = (afresh([first, *others], outright) for first in (given, changed))
        effect = effect_between(given.opening.mark, _whole(before), _whole(after))
        if effect is not None:
            # What a set names is kept though rules refuse it: what they say then is why it does not fit.
            said = {finding.message for finding in _said(before)}
            new = [f.message for f in _said(after) if f.severity == "error" and f.message not in said]
            effects.append(effect if effect.why else replace(effect, why=" ".join(new)))
        if progress is not None:
            progress(done, len(openings))
    return tuple(effects)


def _whole(points: Sequence[PointFit]) -> Fit:
    return together([each.fit for each in points]) or Fit("to-measure")


def _said(points: Sequence[PointFit]) -> tuple[Finding, ...]:
    return of_opening([(each.given.point, check(each.given, each.fit or Fit("to-measure"))) for each in points])


def effect_between(mark: str, before: Fit, after: Fit) -> SetEffect | None:
    """Compare two fits of an opening by status and parts; None where both are the same."""
    was = {(part.role, part.part, part.quantity) for part in before.parts}
    now = {(part.role, part.part, part.quantity) for part in after.parts}
    if was == now and before.status == after.status:
        return None
    gone = tuple(f"{role} {part}" for role, part, _ in sorted(was - now))
    new = tuple(f"{role} {part}" for role, part, _ in sorted(now - was))
    why = ""
    if after.status == "does-not-fit" and after.nearest_miss is not None:
        why = f"{after.nearest_miss.part}: {after.nearest_miss.reason}"
    elif after.status == "to-measure":
        why = "needs " + ", ".join(need.label for need in after.needs)
    return SetEffect(mark, before.status, after.status, gone, new, why)


def lines_of(found: Fit) -> tuple[Line, ...]:
    """Return the lines of a set that would choose what a fit has."""
    return tuple(Line(part.role, part.part, part.quantity) for part in found.parts if part.role in PROPOSED_ROLES)


def _roles_alike(first: Iterable[Line], second: Iterable[Line]) -> set[str]:
    """Return the roles that have the same lines in both, or none in both."""
    before, after = set(first), set(second)
    return set(ROLES) - {line.role for line in before ^ after}


def _insert(change: Change, name: str, lines: Sequence[Line], notes: str) -> str:
    set_id = change.insert(HARDWARE_SET, [{"name": name, "notes": notes or None}])[0]
    change.insert(
        SET_LINE,
        [{"set_id": set_id, "role": line.role, "part": line.part, "quantity": line.quantity} for line in lines],
    )
    return set_id


def _accepted(connection: Connection, lines: Iterable[Line]) -> list[Line]:
    known = set(connection.execute(select(PART.c.number)).scalars())
    held: dict[tuple[str, str], Line] = {}
    for line in lines:
        if line.role not in ROLES:
            raise ValueRefusedError("role", f"'{line.role}' is no role; accepted: {', '.join(ROLES)}")
        if line.part not in known:
            near = nearest_words(line.part, known)
            raise ValueRefusedError("part", f"the catalogue has no part '{line.part}'{near}")
        if not isfinite(line.quantity) or line.quantity <= 0:
            raise ValueRefusedError("quantity", f"{line.quantity:g} of {line.part} cannot be; accepted: more than 0")
        if (line.role, line.part) in held:
            raise ValueRefusedError("part", f"{line.part} stands twice as {line.role}; give one line with the sum")
        held[line.role, line.part] = line
    if not held:
        raise ValueRefusedError("lines", "a hardware set needs at least one line")
    return list(held.values())
