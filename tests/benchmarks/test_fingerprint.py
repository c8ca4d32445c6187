"""The fingerprint of the program, asked for at every start: as a ratio to a bare interpreter, in one run."""

import subprocess
import sys
import time

import pytest

from hwsched import rules
from hwsched.fingerprint import engine

pytestmark = pytest.mark.bench


def clocked(work):
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def test_a_warm_fingerprint_within_a_third_of_a_bare_interpreter():
    assert rules.RULES
    engine()
    # Files that were written a moment ago are read again until they are old enough to be trusted.
    time.sleep(3)
    engine.cache_clear()
    engine()

    def again():
        engine.cache_clear()
        engine()

    warm = sorted(clocked(again) for _ in range(15))[7]
    bare = min(clocked(lambda: subprocess.run([sys.executable, "-c", "pass"], check=True)) for _ in range(9))
    print(f"\nfingerprint: {1000 * warm:.1f} ms, {warm / bare:.2f} bare interpreters (at most 0.33)")
    assert warm <= bare / 3
