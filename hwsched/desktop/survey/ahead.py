"""Openings as they stand in the survey, shown while the rules are still asked: to be looked at, found and chosen."""

from hwsched.operations.findings.checked import Checked
from hwsched.values import OpeningInput


class Ahead(Checked):
    """An opening that is not judged yet: nothing is said of it, and nothing is edited before it is."""

    __slots__ = ()

    @classmethod
    def read(cls, given: OpeningInput) -> "Ahead":
        """Return an opening as it was read."""
        return cls(given, None, ())
