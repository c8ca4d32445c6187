"""Brute-force answers, written apart from the product: dense sampling, whole enumeration, numeric integration.

Nothing here imports ``hwsched``. Each module takes the JSON object that a calculator takes.
"""

import os


def case_count(default: int = 2000) -> int:
    """Random cases a calculator: a bounded share by default, more by HWSCHED_FUZZ."""
    return max(default, int(os.environ.get("HWSCHED_FUZZ", "0")))
