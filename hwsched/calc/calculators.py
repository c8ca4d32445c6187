"""The calculators that people and machines can call by name, loaded."""

from typing import Final

from hwsched.calc import LINES
from hwsched.calc.calculator import Calculator
from hwsched.family import loaded

CALCULATORS: Final = loaded("hwsched.calc", LINES, Calculator)
