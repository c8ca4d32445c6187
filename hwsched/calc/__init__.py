"""Pure calculations: plain values in, plain values out; no database, no file, no screen.

The tuple below is the table of contents of the calculators that people and machines can call by name.
"""

from hwsched.calc.calculator import Calculator

CALCULATORS: tuple[Calculator, ...] = ()
