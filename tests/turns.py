"""Cases that take turns: of those of a test marked ``turns(n)`` a run tries an n-th, another one each day.

With each run of CI (``GITHUB_RUN_NUMBER``) it is another one too, so that n of them try all. ``HWSCHED_SEED`` repeats
one; ``HWSCHED_FUZZ`` tries all at once, and so does naming a case on the command line.
"""

import os
from collections import defaultdict
from datetime import date

import pytest

SEED = int(os.environ.get("HWSCHED_SEED") or date.today().toordinal() + int(os.environ.get("GITHUB_RUN_NUMBER") or 0))


def not_their_turn(items: list[pytest.Item], named: str) -> list[pytest.Item]:
    """Return what of marked tests is waiting for another run; named: what was asked for."""
    if os.environ.get("HWSCHED_FUZZ") or "[" in named:
        return []
    by_test: dict[str, list[pytest.Item]] = defaultdict(list)
    for item in items:
        if item.get_closest_marker("turns") is not None:
            by_test[item.nodeid.partition("[")[0]].append(item)
    # What holds on SQLite holds on a server too, nearly always: a third of it is tried there a run.
    on_server = [item for item in items if "[postgresql" in item.nodeid and item.get_closest_marker("turns") is None]
    waiting = [item for place, item in enumerate(on_server) if place % 3 != SEED % 3]
    # Each test begins elsewhere, so that a day has something of everything.
    for number, held in enumerate(by_test.values()):
        marker = held[0].get_closest_marker("turns")
        assert marker is not None
        # One of few too: none is left out altogether.
        among = min(marker.args[0], len(held))
        waiting += [item for place, item in enumerate(held) if place % among != (SEED + number) % among]
    return waiting
