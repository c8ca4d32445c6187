"""Renders what of a document belongs into a calendar, as iCalendar (RFC 5545): one all-day event a due day."""

from datetime import UTC, date, datetime, timedelta
from pathlib import Path

from hwsched.render.blocks import Document, Event
from hwsched.writing import replacing

_OCTETS = 75
"""Longest line, its break left out (RFC 5545, 3.1)."""


def render_ics(document: Document, path: Path) -> None:
    """Write a document's events as an iCalendar file; an older file is replaced whole.

    Parameters
    ----------
    document : Document
        Its events; the same issue gives the same bytes.
    path : Path
        File to write.
    """
    with replacing(path) as partial:
        partial.write_bytes(calendar_text(document).encode())


def calendar_text(document: Document) -> str:
    """Return the calendar of a document.

    Notes
    -----
    RFC 5545: lines end in CR LF and are folded at 75 octets (3.1); text is escaped (3.3.11); an all-day event has
    dates, its end is the day after (3.6.1); the product identifier and the version are required (3.7.3, 3.7.4). At
    least one component is required (3.6): where nothing is due, a journal entry says so and stands on no day of work.
    """
    stamp = _stamp(document.date)
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//hwsched//documents//EN", "CALSCALE:GREGORIAN"]
    lines += [f"X-WR-CALNAME:{escaped(f'{document.project}: {document.title}')}"]
    for event in document.events:
        lines += _event(event, stamp)
    if not document.events:
        lines += _nothing(document, stamp)
    lines.append("END:VCALENDAR")
    return "".join(f"{folded(line)}\r\n" for line in lines)


def escaped(text: str) -> str:
    r"""Escape a text value (RFC 5545, 3.3.11).

    Examples
    --------
    >>> escaped("12 cells, AA; both\\ends")
    '12 cells\\, AA\\; both\\\\ends'
    """
    plain = "".join(c for c in text if c in "\n\t" or (ord(c) >= 32 and ord(c) != 127))
    for what, by in (("\\", "\\\\"), (";", "\\;"), (",", "\\,"), ("\n", "\\n")):
        plain = plain.replace(what, by)
    return plain


def folded(line: str) -> str:
    """Break a line into pieces of at most 75 octets; the next begins with a blank (RFC 5545, 3.1)."""
    pieces, piece, used = [], "", 0
    for character in line:
        width = len(character.encode())
        if used + width > _OCTETS:
            pieces.append(piece)
            piece, used = " ", 1
        piece += character
        used += width
    return "\r\n".join([*pieces, piece])


def _event(event: Event, stamp: str) -> list[str]:
    lines = [
        "BEGIN:VEVENT",
        f"UID:{escaped(event.key)}@hwsched",
        f"DTSTAMP:{stamp}",
        f"DTSTART;VALUE=DATE:{event.day:%Y%m%d}",
        f"DTEND;VALUE=DATE:{event.day + timedelta(days=1):%Y%m%d}",
        f"SUMMARY:{escaped(event.title)}",
    ]
    if event.place:
        lines.append(f"LOCATION:{escaped(event.place)}")
    if event.text:
        lines.append(f"DESCRIPTION:{escaped(event.text)}")
    return [*lines, "TRANSP:TRANSPARENT", "END:VEVENT"]


def _nothing(document: Document, stamp: str) -> list[str]:
    return [
        "BEGIN:VJOURNAL",
        f"UID:{escaped(document.title.lower().replace(' ', '-'))}-nothing-due@hwsched",
        f"DTSTAMP:{stamp}",
        f"DTSTART;VALUE=DATE:{stamp[:8]}",
        f"SUMMARY:{escaped(f'{document.project}: nothing is due on a known day')}",
        "END:VJOURNAL",
    ]


def _stamp(day: str) -> str:
    issued = datetime.combine(date.fromisoformat(day), datetime.min.time(), UTC)
    return f"{issued:%Y%m%dT%H%M%SZ}"
