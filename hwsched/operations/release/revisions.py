"""Reading revisions back: the plain values as they were frozen, whatever has changed since."""

from collections.abc import Collection, Iterable, Mapping
from typing import Any, Final

from sqlalchemy import Connection

from hwsched.model.errors import MissingRowError
from hwsched.model.frozen import Contents, RevisionInfo, read_frozen, read_revisions, revision_with
from hwsched.model.project import Project
from hwsched.operations.release.frozen_record import (
    POINT_FACTS,
    CatalogueRecord,
    PowerRecord,
    ProjectRecord,
    Root,
    SupplyRecord,
    thawed,
)
from hwsched.telling.natural import natural
from hwsched.values import Catalogue, Finding, Fit, OpeningInput, Part, PointFit
from hwsched.values.power import PowerResult
from hwsched.values.revision import OpeningThen, RevisionThen, RuleText, Scope

_NONE: Final[Contents] = {}


class Source:
    """Contents as a connection sees them, beside some that are not held yet; each is decoded once.

    Parameters
    ----------
    connection : Connection
        In a transaction.
    beside : mapping, optional
        Contents in hand, by their hash.
    """

    def __init__(self, connection: Connection, beside: Contents = _NONE) -> None:
        self._connection = connection
        self._beside = beside
        self._known: dict[str, Any] = {}

    def read(self, kind: str, keys: Iterable[str]) -> dict[str, Any]:
        """Return contents of one kind by their hash; raises DamagedProjectError."""
        wanted = list(dict.fromkeys(keys))
        # Openings alike share their contents: each is fetched and decoded once, however many point to it.
        fresh = [key for key in wanted if key not in self._known]
        held = read_frozen(self._connection, [key for key in fresh if key not in self._beside])
        for key in fresh:
            self._known[key] = thawed(kind, held[key] if key in held else self._beside[key][1])
        return {key: self._known[key] for key in wanted}

    def one(self, kind: str, key: str) -> Any:
        """Return one content."""
        return self.read(kind, [key])[key]


def revisions(project: Project) -> list[RevisionInfo]:
    """Return all revisions, the oldest first."""
    with project.reading() as connection:
        return read_revisions(connection)


def read_revision(project: Project, letter: str, marks: Collection[str] | None = None) -> RevisionThen:
    """Return a revision as it was frozen.

    Parameters
    ----------
    project : Project
        Open project.
    letter : str
        Of the revision.
    marks : collection of str, optional
        Only these openings, by the marks that they had then; all when left out.

    Raises
    ------
    MissingRowError
        For a letter that there is not, or a mark that the revision does not have.
    DamagedProjectError
        Where a content is gone or is not what was frozen.
    """
    with project.reading() as connection:
        info = revision_with(connection, letter)
        source = Source(connection)
        root: Root = source.one("revision", info.root)
        record: ProjectRecord = source.one("project", root.project)
        catalogue, own = _catalogue(source, root.catalogue)
        power: PowerRecord = source.one("power", root.power)
        rules: tuple[RuleText, ...] = source.one("rules", root.rules)
        openings = _openings(source, root, record, catalogue, info.letter, marks)
        return RevisionThen(
            info.letter, info.at, info.person, info.purpose, Scope.of(info.scope), root.change_set, root.day,
            source.one("engine", root.engine), record.title, record.settings, record.terms, record.own_fields,
            record.levels, catalogue, own, rules, power.present,
            _power(source, power), openings, source.one("files", root.files) if root.files else None,
            source.one("office", root.office) if root.office else None,
        )  # fmt: skip


def entries_of(source: Source, root: Root, chunks: Iterable[str] | None = None) -> dict[str, tuple[str, str]]:
    """Return opening to its mark and the hash of its content; only of some chunks where they are named."""
    keys = root.openings.values() if chunks is None else [root.openings[name] for name in chunks]
    return {
        opening_id: entry
        for chunk in source.read("chunk", keys).values()
        for opening_id, entry in chunk.items()
    }  # fmt: skip


def openings_then(
    source: Source, keys: Collection[str], record: ProjectRecord, catalogue: Catalogue
) -> dict[str, OpeningThen]:
    """Return openings by the hash of their content."""
    found = source.read("opening", keys)
    fits: dict[str, Fit] = source.read("fit", (p.fit for each in found.values() for p in each.points if p.fit))
    findings: dict[str, tuple[Finding, ...]] = source.read("findings", (each.findings for each in found.values()))
    return {
        key: OpeningThen(
            tuple(
                PointFit(
                    OpeningInput(
                        opening=each.opening,
                        leaves=each.leaves,
                        items=each.items,
                        catalogue=catalogue,
                        settings=record.settings,
                        **{name: getattr(point, name) for name in POINT_FACTS},
                    ),
                    None if point.fit is None else fits[point.fit],
                )
                for point in each.points
            ),
            findings[each.findings],
            each.set_name,
            each.own,
            each.files,
            each.pieces,
            each.asked,
        )
        for key, each in found.items()
    }


def _openings(
    source: Source,
    root: Root,
    record: ProjectRecord,
    catalogue: Catalogue,
    letter: str,
    marks: Collection[str] | None,
) -> tuple[OpeningThen, ...]:
    entries = entries_of(source, root)
    if marks is not None and (missing := set(marks) - {mark for mark, _ in entries.values()}):
        raise MissingRowError(f"revision {letter} has no opening {', '.join(sorted(missing))}")
    keys = [key for mark, key in entries.values() if marks is None or mark in marks]
    sort = {
        (level.building, level.level): (level.height_m is None, level.height_m or 0.0, level.sort)
        for level in record.levels
    }
    found = openings_then(source, keys, record, catalogue).values()
    return tuple(sorted(found, key=lambda each: _place(each, sort)))


def _place(then: OpeningThen, sort: Mapping[tuple[str | None, str | None], tuple[bool, float, int]]) -> tuple[Any, ...]:
    """Order as openings are read: by building, level and mark."""
    opening = then.given.opening
    at = sort.get((opening.building, opening.level), (True, 0.0, 0))
    return opening.building or "", at, opening.level or "", natural(opening.mark)


def _catalogue(source: Source, key: str) -> tuple[Catalogue, Mapping[str, Mapping[str, Any]]]:
    record: CatalogueRecord = source.one("catalogue", key)
    parts: dict[str, Part] = source.read("part", record.parts.values())
    whole = {number: parts[part] for number, part in record.parts.items()}
    return Catalogue(whole, record.key, record.ranks), record.own


def _power(source: Source, power: PowerRecord) -> PowerResult:
    supplies: dict[str, SupplyRecord] = source.read("supply", power.supplies.values())
    found = [supplies[power.supplies[each.id]] for each in power.present.supplies if each.id in power.supplies]
    return PowerResult(tuple(each.result for each in found), tuple(said for each in found for said in each.findings))
