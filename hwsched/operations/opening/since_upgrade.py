"""Since an upgrade: what this version of the program says otherwise than the one that worked out the stored fits."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from hwsched.fingerprint import engine
from hwsched.language import phrase
from hwsched.model.errors import ValueRefusedError
from hwsched.model.project import Project
from hwsched.model.queries import StoredFit, by_opening, read_fits, read_inputs
from hwsched.model.record_queries import read_packets
from hwsched.operations.changes import Changes
from hwsched.operations.opening.fit_differences import Differs, differences
from hwsched.operations.opening.fits_within import Cancelled, FitMemory, Progress
from hwsched.operations.opening.lock_points import PointResult, point_results, standing_of
from hwsched.operations.opening.storing_fits import pointers, store_fits
from hwsched.operations.release.released import released_otherwise
from hwsched.quantities import LENGTH_STYLES, LengthStyle
from hwsched.values import Fit
from hwsched.values.record import Packet


@dataclass(frozen=True, slots=True)
class ChangedFit:
    """An opening of which this version says otherwise."""

    opening_id: str
    mark: str
    differs: tuple[Differs, ...]
    packet: Packet | None
    """The packet that went out for it."""
    kept: bool
    """It keeps what it was released with."""


@dataclass(frozen=True, slots=True)
class SinceUpgrade:
    """What an earlier version has worked out, beside what this one says; nothing is stored yet."""

    openings: tuple[ChangedFit, ...]
    """Those that differ, in the project's order."""
    looked_at: int
    """Openings with fits of an earlier version, whose facts still hold."""
    changed: tuple[str, ...]
    """Subsystems in which the program that worked them out differs from this one; empty where that is not known."""
    fresh: Mapping[str, StoredFit]
    """What would be stored, by lock point: also where nothing differs, so that it counts again from then on."""
    seen: Mapping[str, tuple[str | None, ...]]
    """What the rows of those lock points pointed to."""
    style: LengthStyle
    """How the project shows lengths."""

    @property
    def alike(self) -> int:
        """How many do not differ."""
        return self.looked_at - len(self.openings)


def since_upgrade(
    project: Project,
    ids: Iterable[str] | None = None,
    *,
    released: bool = False,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> SinceUpgrade | None:
    """Work out what an earlier version has worked out, and compare; nothing is stored.

    Parameters
    ----------
    project : Project
        Open project; it is only read.
    ids : iterable of str, optional
        Openings; all when left out.
    released : bool
        Whether openings whose packet went out are to be taken too; else they keep what they were released with where
        that differs.
    progress, cancelled : callable, optional
        Told how far it is; asked whether to stop.

    Returns
    -------
    SinceUpgrade or None
        None when cancelled. Openings whose facts have changed since are left to `fit_openings`.
    """
    wanted = None if ids is None else list(ids)
    with project.reading() as connection:
        every = list(by_opening(read_inputs(connection, wanted, project.catalogue.read(connection))))
        stored, packets = read_fits(connection, wanted), read_packets(connection, wanted)
        lengths = project.length_style
    memory = FitMemory()
    left = [
        inputs
        for inputs in every
        if standing_of(point_results(inputs, stored, None, memory.standings)) == "earlier-version"
    ]  # fmt: skip
    openings: list[ChangedFit] = []
    fresh: dict[str, StoredFit] = {}
    seen: dict[str, tuple[str | None, ...]] = {}
    changed: set[str] = set()
    for done, inputs in enumerate(left, start=1):
        if cancelled is not None and cancelled():
            return None
        opening = inputs[0].opening
        points, packet = point_results(inputs, stored, memory.of, memory.standings), packets.get(opening.id)
        made = [each.held.engine for each in points if each.held is not None and each.held.engine is not None]
        changed.update(name for each in made for name in each.changed(engine()))
        kept = not released and released_otherwise(points, packet)
        differs = _compared(points)
        if kept and not differs:
            differs = (Differs("words on its packet", "as released", "otherwise"),)
        if differs:
            openings.append(ChangedFit(opening.id, opening.mark, differs, packet, kept))
        if not kept:
            fresh |= memory.to_store(points)
            seen |= {each.at.given.point.id: each.held.pointer for each in points if not each.stored and each.held}
        if progress is not None and (done % 16 == 0 or done == len(left)):
            progress(done, len(left))
    style = next((each for each in LENGTH_STYLES if each == lengths), LENGTH_STYLES[0])
    return SinceUpgrade(tuple(openings), len(left), tuple(sorted(changed)), fresh, seen, style)


def _compared(points: Sequence[PointResult]) -> tuple[Differs, ...]:
    """Compare the lock points of an opening with what is stored for them; of several, each is named."""
    found: list[Differs] = []
    for each in points:
        name = each.at.given.point.name
        held = each.held.fit if each.held is not None else Fit("to-measure")
        for differs in differences(held, each.at.fit or Fit("to-measure")):
            found.append(replace(differs, what=f"{name}: {differs.what}") if name else differs)
    return tuple(found)


def take_since_upgrade(project: Project, found: SinceUpgrade, *, who: str) -> Changes:
    """Store what was compared, as one change set that undo takes back.

    Raises
    ------
    ValueRefusedError
        When one of the openings was worked out anew, or removed, since it was compared.
    """
    taken = sum(not each.kept for each in found.openings)
    text = f"Work out again since the upgrade: {taken} openings differ, {found.alike} do not"
    with project.change("fit-since-upgrade", text, who) as change:
        if pointers(change.connection, list(found.fresh)) != found.seen:
            raise ValueRefusedError("since upgrade", "openings were fitted since this was worked out; ask for it again")
        store_fits(change, found.fresh)
    return Changes.of(change)


def summary(found: SinceUpgrade) -> str:
    """Say in a sentence what was found."""
    if not found.looked_at:
        return phrase("Nothing was worked out by an earlier version.")
    kept = sum(each.kept for each in found.openings)
    words = phrase(
        "Worked out by an earlier version: {looked_at}. Different now: {count}",
        looked_at=found.looked_at,
        count=len(found.openings),
    )
    words += phrase(", of which released and kept: {kept}.", kept=kept) if kept else "."
    if found.changed:
        words += phrase(" What the program has changed since: {changed}.", changed=", ".join(found.changed))
    return words
