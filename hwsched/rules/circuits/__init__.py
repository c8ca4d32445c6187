"""Rules of supplies and circuits, one a file. The tuple below is their table of contents."""

from hwsched.rules.circuit_rule import CircuitRule
from hwsched.rules.circuits import (
    alarm_latching,
    alarm_release,
    circuit_apart,
    circuit_assumed,
    circuit_collapse,
    circuit_high_voltage,
    circuit_known,
    circuit_limiter,
    circuit_sound,
    circuit_suits,
    circuit_voltage,
    coil_suppression,
    fed_once,
    standby_capacity,
    supply_loading,
    supply_power_limited,
)

CIRCUIT_RULES: tuple[CircuitRule, ...] = (
    circuit_sound.RULE,
    circuit_known.RULE,
    circuit_suits.RULE,
    circuit_voltage.RULE,
    circuit_high_voltage.RULE,
    circuit_collapse.RULE,
    supply_loading.RULE,
    circuit_limiter.RULE,
    supply_power_limited.RULE,
    standby_capacity.RULE,
    coil_suppression.RULE,
    circuit_apart.RULE,
    circuit_assumed.RULE,
    fed_once.RULE,
    alarm_latching.RULE,
    alarm_release.RULE,
)

__all__ = ["CIRCUIT_RULES"]
