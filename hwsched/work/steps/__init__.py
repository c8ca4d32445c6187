"""The steps of the work, one family a file: the import lines are the order in which a person would think of them.

Which of them comes when is decided by what each must be done after; only among equals this order counts.
"""

from hwsched.family import imported
from hwsched.work.step import StepKind
from hwsched.work.steps.bench import BENCH
from hwsched.work.steps.arriving import ARRIVING
from hwsched.work.steps.old_lock import OLD_LOCK
from hwsched.work.steps.drilling import DRILLING
from hwsched.work.steps.on_wall import ON_WALL
from hwsched.work.steps.supply import SUPPLY
from hwsched.work.steps.release import RELEASE
from hwsched.work.steps.lock_case import LOCK_CASE
from hwsched.work.steps.lead import LEAD
from hwsched.work.steps.mortise import MORTISE
from hwsched.work.steps.euro_profile import EURO_PROFILE
from hwsched.work.steps.rim import RIM
from hwsched.work.steps.bored import BORED
from hwsched.work.steps.cabinet import CABINET
from hwsched.work.steps.gate import GATE
from hwsched.work.steps.reader import READER
from hwsched.work.steps.unit_on_face import UNIT_ON_FACE
from hwsched.work.steps.unit_in_edge import UNIT_IN_EDGE
from hwsched.work.steps.feeding import FEEDING
from hwsched.work.steps.ending import ENDING

STEPS = imported(globals(), StepKind)
"""Every step."""
