"""What a project has on record of one opening: its stored fit, waivers, the packet that went out. Plain values."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import Final, Literal

from hwsched.values.finding import Finding
from hwsched.values.fit import Fit
from hwsched.values.opening_input import OpeningInput
from hwsched.values.standing import Standing

Scope = Literal["opening", "alike", "supply", "project"]
SCOPES: Final[Mapping[str, str]] = {
    "opening": "this opening",
    "alike": "openings alike",
    "supply": "a supply",
    "project": "the whole project",
}


@dataclass(frozen=True, slots=True)
class Waiver:
    """A person's decision to accept a finding."""

    id: str
    rule: str
    about: str
    """What the finding speaks of; empty: whatever it speaks of. Of a supply: its name when it was given."""
    scope: Scope
    opening_id: str | None
    """The opening at which it was given; None for a supply and for the whole project."""
    facts: str
    """Hash of what it was given for."""
    person: str
    reason: str
    given_on: date
    until: date | None = None

    def past(self, today: date) -> bool:
        """Tell whether its last day is over."""
        return self.until is not None and today > self.until

    @property
    def words(self) -> str:
        """Who, why and until when."""
        until = f", until {self.until.isoformat()}" if self.until else ""
        return f"{self.person} on {self.given_on.isoformat()}{until}: {self.reason}"


@dataclass(frozen=True, slots=True)
class Packet:
    """The last packet that went out for an opening."""

    at: str
    by: str
    shown_key: str
    """Hash of what it showed."""


@dataclass(frozen=True, slots=True)
class Record:
    """What there is of an opening besides its facts."""

    given: OpeningInput
    shown_key: str
    """Hash of what a packet would show now; empty where none went out or nothing is fitted."""
    fit: Fit | None
    """None: nothing is stored that counts."""
    findings: tuple[Finding, ...]
    """What the other rules say, waivers laid over."""
    today: date
    packet: Packet | None = None
    past: tuple[Waiver, ...] = ()
    """Waivers of this opening whose last day is over while their finding stands."""
    lapsed: tuple[Waiver, ...] = ()
    """Waivers given at this opening whose facts have changed while their finding stands."""
    unneeded: tuple[Waiver, ...] = ()
    """Waivers given at this opening that no finding needs any more."""
    standing: Standing = "current"
    """How what is stored stands."""
