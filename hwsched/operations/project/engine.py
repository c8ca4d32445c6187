"""Which program is at work, as a revision says it."""

from collections.abc import Mapping

from hwsched import __version__
from hwsched.fingerprint import FINDINGS, engine


def engine_fingerprint() -> Mapping[str, str]:
    """Return what tells this program from another whose results may differ."""
    return {"program": f"hwsched {__version__}", "fingerprint": engine(FINDINGS).key}
