"""Writing down that packets went out: which opening, when, by whom, showing which facts."""

from collections.abc import Iterable
from datetime import date

from sqlalchemy import select

from hwsched.documents.view import ProjectView
from hwsched.model.project import Project
from hwsched.model.tables import ISSUED_PACKET
from hwsched.operations.changes import Changes
from hwsched.operations.opening.pieces import write_issued
from hwsched.operations.release.packet_key import packet_key


def write_down_packets(
    project: Project, view: ProjectView, *, who: str, only: Iterable[str] | None = None, today: date | None = None
) -> Changes:
    """Write down that the packets of a view went out, and with them the pieces of their openings.

    Packets of openings that are not ready never do.

    Parameters
    ----------
    project : Project
        Open project.
    view : ProjectView
        What the packets were built from.
    who : str
        Who gives them out, for the journal and the packet's record.
    only : iterable of str, optional
        Openings; all of the view when left out.
    today : date, optional
        The day it is when left out.
    """
    wanted = None if only is None else set(only)
    day = (today or project.today()).isoformat()
    ready = [each for each in view.openings if each.ready and (wanted is None or each.given.opening.id in wanted)]
    out = {each.given.opening.id: {"at": day, "by": who, "shown_key": packet_key(each.points)} for each in ready}
    with project.change("issue-packets", f"Give out {len(out)} packets", who) as change:
        held = {row.opening_id: row.id for row in change.connection.execute(select(ISSUED_PACKET))}
        change.update(ISSUED_PACKET, [(held[each], row) for each, row in out.items() if each in held])
        fresh = [{"opening_id": each, **row} for each, row in out.items() if each not in held]
        change.insert(ISSUED_PACKET, fresh)
        write_issued(change, [(each.given.opening.id, each.points) for each in ready])
    return Changes.of(change)
