"""Reading what is on record of openings: waivers, packets that went out."""

from collections.abc import Collection
from datetime import date
from typing import Any, Final

from sqlalchemy import Connection, Select, select

from hwsched.model.bulk import among
from hwsched.model.tables import IN_USE, ISSUED_PACKET, OPENING_TABLE, WAIVER
from hwsched.values.record import Packet, Waiver

_PACKETS: Final[Select[Any]] = (
    select(ISSUED_PACKET.c.opening_id, ISSUED_PACKET.c.at, ISSUED_PACKET.c.by, ISSUED_PACKET.c.shown_key)
    .join(OPENING_TABLE, ISSUED_PACKET.c.opening_id == OPENING_TABLE.c.id)
    .where(IN_USE)
)


def read_waivers(connection: Connection) -> list[Waiver]:
    """Return all waivers, oldest first; those of an opening that is retired rest with it."""
    there = WAIVER.c.opening_id.is_(None) | WAIVER.c.opening_id.not_in(select(OPENING_TABLE.c.id).where(~IN_USE))
    query = select(WAIVER).where(there).order_by(WAIVER.c.given_on, WAIVER.c.id)
    return [
        Waiver(
            row.id,
            row.rule,
            row.about,
            row.scope,
            row.opening_id,
            row.facts,
            row.person,
            row.reason,
            date.fromisoformat(row.given_on),
            date.fromisoformat(row.until) if row.until else None,
        )
        for row in connection.execute(query)
    ]


def read_packets(connection: Connection, ids: Collection[str] | None = None) -> dict[str, Packet]:
    """Return the last packet that went out by opening that the building has."""
    return {
        opening: Packet(at, by, key)
        for opening, at, by, key in among(connection, _PACKETS, ISSUED_PACKET.c.opening_id, ids)
    }
