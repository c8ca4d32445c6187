"""Pure calculations: plain values in, plain values out; no database, no file, no screen.

The tuple below is the table of contents of the calculators that people and machines can call by name.
"""

from hwsched.calc.battery import BATTERY_LIFE
from hwsched.calc.bore import BORE
from hwsched.calc.bored_prep import BORED_PREP
from hwsched.calc.cable import CABLE
from hwsched.calc.calculator import Calculator
from hwsched.calc.channel import CHANNEL
from hwsched.calc.circuit import CIRCUIT
from hwsched.calc.conductor import CONDUCTOR
from hwsched.calc.euro import EURO_HALVES
from hwsched.calc.length import LENGTH
from hwsched.calc.placement import PLACEMENT
from hwsched.calc.pocket import POCKET
from hwsched.calc.siting import SITING
from hwsched.calc.stack import CYLINDER_STACK
from hwsched.calc.standby import STANDBY
from hwsched.calc.tailpiece import TAILPIECE

CALCULATORS: tuple[Calculator, ...] = (
    LENGTH,
    CYLINDER_STACK,
    EURO_HALVES,
    TAILPIECE,
    BORED_PREP,
    PLACEMENT,
    CABLE,
    BORE,
    CHANNEL,
    POCKET,
    CONDUCTOR,
    CIRCUIT,
    BATTERY_LIFE,
    STANDBY,
    SITING,
)

__all__ = ["CALCULATORS", "Calculator"]
