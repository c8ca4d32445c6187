"""The one calendar of a project: in which zone its days begin and its hours are told.

Moments are held in UTC. What people and machines read of them is told in the project's zone, with the offset; which day
it is, for documents, waivers and packets alike, is that zone's.
"""

from collections.abc import Mapping
from datetime import UTC, date, datetime, tzinfo
from typing import Any, Final
from zoneinfo import ZoneInfo, available_timezones

from sqlalchemy import Connection, select
from tzlocal import get_localzone, get_localzone_name

from hwsched.model.errors import ValueRefusedError
from hwsched.model.tables import PROJECT

SETTING: Final = "time_zone"
"""Key among the project's settings."""
_SETTINGS: Final = select(PROJECT.c.settings)


def system_zone() -> str | None:
    """Return the name of this machine's zone, such as Europe/Lisbon; None where it does not tell one."""
    try:
        name = get_localzone_name()
    except LookupError:
        return None
    return None if name is None or _zone(name) is None else str(name)


def checked_zone(name: str) -> str:
    """Return the name of a zone; raises ValueRefusedError where there is none of that name."""
    known = {each.casefold(): each for each in available_timezones()}
    found = known.get(name.strip().casefold())
    if found is None:
        raise ValueRefusedError("time zone", f"there is no '{name}'; accepted: a name such as Europe/Lisbon or UTC")
    return found


def zone_of(settings: Mapping[str, Any]) -> tzinfo:
    """Return the zone that a project's settings name; this machine's, in a project made before it was asked."""
    return _zone(settings.get(SETTING)) or get_localzone()


def _zone(name: str | None) -> ZoneInfo | None:
    try:
        return ZoneInfo(name) if name else None
    # Where the zones of the machine lack it, or the name is none.
    except (LookupError, ValueError, OSError):
        return None


def read_zone(connection: Connection) -> tzinfo:
    """Return the project's zone."""
    return zone_of(connection.execute(_SETTINGS).scalar_one())


def today(zone: tzinfo) -> date:
    """Return the day that it is in a zone."""
    return datetime.now(UTC).astimezone(zone).date()


def second_of(when: str) -> str:
    """Return the second and the offset of a moment, for people.

    Examples
    --------
    >>> second_of("2031-02-03T14:05:09.123+05:30")
    '2031-02-03 14:05:09 +05:30'
    """
    return f"{when[:19].replace('T', ' ')} {when[-6:]}"


def told_in(zone: tzinfo, when: str) -> str:
    """Return a moment as it is held, ISO 8601, with the hour and the offset of a zone.

    Examples
    --------
    >>> told_in(ZoneInfo("Asia/Kolkata"), "2031-02-03T22:05:09.123+00:00")
    '2031-02-04T03:35:09.123+05:30'
    """
    precision = "milliseconds" if "." in when else "seconds"
    return datetime.fromisoformat(when).astimezone(zone).isoformat(timespec=precision)
