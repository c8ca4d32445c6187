"""iCalendar files, read back by the rules of RFC 5545 written down here apart from the renderer."""

import random
import re
from dataclasses import replace
from datetime import date, timedelta

import pytest

from hwsched.render.blocks import Document, Event, Section
from hwsched.render.ics import calendar_text, escaped, folded, render_ics

EVENTS = (
    Event("battery-1", date(2026, 2, 28), "Change cells of D-101: 6 × AA", "About 300 days.", "Main · Level 1"),
    Event("battery-2", date(2027, 12, 31), "Change cells; all, of \"B\\2\"\nat once", "", ""),
    Event("battery-3", date(2028, 2, 28), "Ü" * 200, "x" * 400, "地下" * 40),
)  # fmt: skip
DOCUMENT = Document(
    "Battery calendar", "Yard; east, \\west", "working state 7", "2026-01-05", (Section(()),), events=EVENTS
)
NOTHING = replace(DOCUMENT, events=())


def unfolded(text):
    """Lines without their folds (3.1); every rule of lines is seen to on the way."""
    assert text.endswith("\r\n")
    assert "\n" not in text.replace("\r\n", "")
    assert "\r" not in text.replace("\r\n", "")
    raw = text.encode().split(b"\r\n")[:-1]
    assert all(0 < len(line) <= 75 for line in raw)
    for line in raw:
        # A fold never falls within a character.
        line.decode()
    lines = []
    for line in text.split("\r\n")[:-1]:
        if line[0] in " \t":
            lines[-1] += line[1:]
        else:
            lines.append(line)
    return lines


def components(text):
    """Read a calendar: its properties, and those of each component in it (3.4, 3.6)."""
    stack, found, calendar = [], [], []
    for line in unfolded(text):
        matched = re.fullmatch(r"([A-Za-z0-9-]+)((?:;[A-Za-z0-9-]+=(?:\"[^\"]*\"|[^\";:,]*))*):(.*)", line, re.DOTALL)
        assert matched, line
        name, parameters, value = matched[1], matched[2], matched[3]
        assert not re.search(r"[\x00-\x08\x0a-\x1f\x7f]", value)
        if name == "BEGIN":
            stack.append(value)
            if value != "VCALENDAR":
                found.append((value, []))
        elif name == "END":
            assert stack.pop() == value
        else:
            (calendar if stack == ["VCALENDAR"] else found[-1][1]).append((name, parameters, value))
    assert stack == []
    return calendar, found


def plain(value):
    """Take the escapes out of a text value (3.3.11), refusing any that is none."""
    assert not re.search(r"(?<!\\)(?:\\\\)*[;,]", value), value
    return re.sub(r"\\(.)", lambda m: {"n": "\n", "N": "\n", "\\": "\\", ";": ";", ",": ","}[m[1]], value)


def once(properties, name):
    (value,) = [value for each, _, value in properties if each == name]
    return value


@pytest.mark.parametrize("document", [DOCUMENT, NOTHING])
def test_what_a_calendar_must_have(document):
    calendar, found = components(calendar_text(document))
    assert once(calendar, "VERSION") == "2.0"
    assert once(calendar, "PRODID")
    assert once(calendar, "CALSCALE") == "GREGORIAN"
    assert "METHOD" not in {name for name, _, _ in calendar}
    # 3.6: at least one component, also where nothing is due.
    assert len(found) == max(1, len(document.events))
    assert [name for name, _ in found] == (["VEVENT"] * len(document.events) or ["VJOURNAL"])
    for _, properties in found:
        # 3.6.1 and 3.6.3: UID and DTSTAMP are required, once; DTSTAMP is UTC.
        assert re.fullmatch(r"\d{8}T\d{6}Z", once(properties, "DTSTAMP"))
        assert once(properties, "UID")
        names = [name for name, _, _ in properties]
        assert len(set(names)) == len(names)
    assert len({once(properties, "UID") for _, properties in found}) == len(found)


def test_every_event_is_read_back():
    _, found = components(calendar_text(DOCUMENT))
    for event, (_, properties) in zip(EVENTS, found, strict=True):
        assert plain(once(properties, "SUMMARY")) == event.title
        for name, text in (("DESCRIPTION", event.text), ("LOCATION", event.place)):
            assert [plain(value) for each, _, value in properties if each == name] == ([text] if text else [])
        kinds = {name: parameters for name, parameters, _ in properties}
        assert kinds["DTSTART"] == kinds["DTEND"] == ";VALUE=DATE"
        assert once(properties, "DTSTART") == f"{event.day:%Y%m%d}"
        # An all-day event ends on the day after, which is not part of it.
        assert once(properties, "DTEND") == f"{event.day + timedelta(days=1):%Y%m%d}"
        assert once(properties, "TRANSP") == "TRANSPARENT"
        assert event.key in once(properties, "UID")


def test_the_day_after_crosses_months_and_leap_years():
    text = calendar_text(DOCUMENT)
    for day in ("20260301", "20280101", "20280229"):
        assert f"DTEND;VALUE=DATE:{day}" in text


def test_the_name_of_the_calendar_is_escaped():
    calendar, _ = components(calendar_text(DOCUMENT))
    assert plain(once(calendar, "X-WR-CALNAME")) == "Yard; east, \\west: Battery calendar"


def test_the_same_issue_gives_the_same_bytes(tmp_path):
    for name in ("a.ics", "b.ics"):
        render_ics(DOCUMENT, tmp_path / name)
    assert (tmp_path / "a.ics").read_bytes() == (tmp_path / "b.ics").read_bytes() == calendar_text(DOCUMENT).encode()
    render_ics(NOTHING, tmp_path / "a.ics")
    assert (tmp_path / "a.ics").read_bytes() == calendar_text(NOTHING).encode()
    assert calendar_text(replace(DOCUMENT, date="2026-01-06")) != calendar_text(DOCUMENT)


def test_folding_at_75_octets():
    assert folded("x" * 75) == "x" * 75
    assert folded("x" * 76) == "x" * 75 + "\r\n x"
    # 'é' has two octets: 37 of them and an x are 75, the next does not fit.
    assert folded("x" + "é" * 38) == "x" + "é" * 37 + "\r\n é"
    assert folded("") == ""


def test_controls_are_left_out():
    assert escaped("a\x00b\x07c\x7fd\re\tf") == "abcde\tf"


def test_random_texts_come_back():
    rng = random.Random(5)
    letters = "ab ,;:\\\n\"'éß漢🙂\t=ñ"
    for _ in range(300):
        title = "".join(rng.choice(letters) for _ in range(rng.randint(1, 200)))
        _, ((_, properties),) = components(
            calendar_text(replace(DOCUMENT, events=(Event("k", date(2026, 1, 1), title),)))
        )
        assert plain(once(properties, "SUMMARY")) == title
