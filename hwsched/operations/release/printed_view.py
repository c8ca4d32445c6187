"""What a document is printed from: the project as it stands or a revision, in the order of a walk, with the photos."""

from collections.abc import Collection
from dataclasses import replace
from typing import Final

from hwsched.documents.release.bound_packets import BOUND_PACKETS
from hwsched.documents.release.packet import PACKET
from hwsched.documents.release.transmittals import TRANSMITTALS
from hwsched.documents.view import ProjectView
from hwsched.model.errors import MissingRowError, ValueRefusedError
from hwsched.model.project import Project
from hwsched.operations.opening.scope import Row, Scope, narrowed
from hwsched.operations.release.office import office_of, read_declared
from hwsched.operations.release.photos import with_photos, with_photos_then
from hwsched.operations.release.revision_view import revision_view
from hwsched.operations.release.revisions import read_revision
from hwsched.operations.release.walking_order import in_walking_order
from hwsched.operations.snapshot import of_one_state
from hwsched.telling.natural import upward
from hwsched.values.power import PowerResult
from hwsched.values.revision import RevisionThen

_WITH_PHOTOS: Final = (PACKET.name, BOUND_PACKETS.name)


@of_one_state
def revision_asked(
    project: Project, letter: str, scope: Scope | None = None, ids: Collection[str] | None = None
) -> tuple[ProjectView, RevisionThen, tuple[str, ...]]:
    """Return a revision as documents see it, to be handed to `printed_view`.

    Parameters
    ----------
    project : Project
        Open project; it is only read.
    letter : str
        Of the revision.
    scope : Scope, optional
        Which of its openings, by building, level and mark as they were then; all when left out.
    ids : collection of str, optional
        Only these of them, by their identifiers.

    Returns
    -------
    tuple
        The view; the revision; what is to be said, such as a mark taken in other letters.

    Raises
    ------
    MissingRowError
        For a letter, building, level or mark that there is not; where it holds none of the openings.
    ValueRefusedError
        For a query: it asks the project as it stands.
    DamagedProjectError
        Where a content is gone or is not what was frozen.
    """
    wanted = scope or Scope()
    if wanted.where.strip():
        said = "a query asks the project as it stands, not a revision; name buildings, levels or marks"
        raise ValueRefusedError("where", said)
    notes: list[str] = []
    then = _narrowed(read_revision(project, letter), wanted, ids, notes)
    with project.reading() as connection:
        office = office_of(connection, read_declared(connection) if then.office is None else then.office)
    return revision_view(then, office), then, tuple(notes)


def printed_view(
    project: Project, view: ProjectView, name: str, walk: str = "mark", then: RevisionThen | None = None
) -> ProjectView:
    """Return a view as a document of that name is printed from it.

    Parameters
    ----------
    project : Project
        Open project.
    view : ProjectView
        Of it, or of a revision.
    name : str
        Of what is printed.
    walk : {"mark", "surveyed"}
        Order of the openings on each level, where packets are bound.
    then : RevisionThen, optional
        The revision that is printed: its photos are those that hung there then. One that an earlier version froze
        holds none, nor bench work: its sheets say so, and look as the office's do today.

    Raises
    ------
    ValueRefusedError
        For the register of transmittals of a revision: none holds it.
    """
    if then is not None and name == TRANSMITTALS.name:
        said = "no revision holds the transmittals; print them of the project as it stands"
        raise ValueRefusedError("document", said)
    if name == BOUND_PACKETS.name:
        view = in_walking_order(project, view, walk)
    if name not in _WITH_PHOTOS:
        return view
    return with_photos(project, view) if then is None else with_photos_then(project, view, then)


def _narrowed(then: RevisionThen, scope: Scope, ids: Collection[str] | None, notes: list[str]) -> RevisionThen:
    """Return a revision with the openings of a scope, and the supplies that feed one of them."""
    if scope.everything and ids is None:
        return then
    rows = [
        Row(each.given.opening.id, each.mark, each.given.opening.building, each.given.opening.level, upward(None, None))
        for each in then.openings
    ]
    wanted = None if ids is None else frozenset(ids)
    kept = {row.id for row in narrowed(rows, scope, notes) if wanted is None or row.id in wanted}
    if not kept:
        raise MissingRowError(f"revision {then.letter} holds none of these openings")
    supplies = tuple(each for each in then.power.supplies if not kept.isdisjoint(each.openings))
    known = {each.supply.id for each in supplies}
    said = tuple(each for each in then.power.findings if each.supply_id in known)
    openings = tuple(each for each in then.openings if each.given.opening.id in kept)
    return replace(then, openings=openings, power=PowerResult(supplies, said))
