"""The command line: one verb a file; the tuple below is their table of contents. No calculation and no query here."""

from hwsched.cli.calc import CALC
from hwsched.cli.check import CHECK
from hwsched.cli.demo import DEMO
from hwsched.cli.desktop import DESKTOP
from hwsched.cli.fit import FIT
from hwsched.cli.history import HISTORY
from hwsched.cli.import_catalogue import IMPORT_CATALOGUE
from hwsched.cli.import_survey import IMPORT_SURVEY
from hwsched.cli.new import NEW
from hwsched.cli.print import PRINT
from hwsched.cli.redo import REDO
from hwsched.cli.survey_form import SURVEY_FORM
from hwsched.cli.undo import UNDO
from hwsched.cli.verb import Verb

VERBS: tuple[Verb, ...] = (
    DEMO,
    NEW,
    IMPORT_SURVEY,
    IMPORT_CATALOGUE,
    SURVEY_FORM,
    FIT,
    CHECK,
    PRINT,
    UNDO,
    REDO,
    HISTORY,
    CALC,
    DESKTOP,
)
