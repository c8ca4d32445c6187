"""What feeds the openings, worked out: devices on circuits, voltages in their states, standby, take-off, release.

Plain values in, plain values out. A fit says what stands at an opening, here is said whether it gets its power. What is
wrong with it is said by the rules under `hwsched.rules.circuits`.
"""

from hwsched.rules.network.connected_opening import ConnectedOpening
from hwsched.wiring.supply_results import solve_supplies

__all__ = ["ConnectedOpening", "solve_supplies"]
