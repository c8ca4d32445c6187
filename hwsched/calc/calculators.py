"""The calculators that people and machines can call by name: the import lines below are their table of contents.

Not in the package's own module: whoever needs one calculation would load the solvers of all.
"""

from typing import Final

from hwsched.calc.calculator import Calculator
from hwsched.family import imported

# Their order is the order in which people see them.
from hwsched.calc.survey.length import LENGTH
from hwsched.calc.opening.stack import CYLINDER_STACK
from hwsched.calc.opening.euro import EURO_HALVES
from hwsched.calc.opening.tailpiece import TAILPIECE
from hwsched.calc.opening.bored_prep import BORED_PREP
from hwsched.calc.opening.placement import PLACEMENT
from hwsched.calc.opening.cable import CABLE
from hwsched.calc.opening.bore import BORE
from hwsched.calc.opening.channel import CHANNEL
from hwsched.calc.opening.pocket import POCKET
from hwsched.calc.power.conductor import CONDUCTOR
from hwsched.calc.power.circuit import CIRCUIT
from hwsched.calc.power.battery import BATTERY_LIFE
from hwsched.calc.power.standby import STANDBY
from hwsched.calc.power.siting import SITING

CALCULATORS: Final = imported(globals(), Calculator)

__all__ = ["CALCULATORS", "Calculator"]
