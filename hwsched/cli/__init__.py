"""The command line: one verb a file; the tuple below is their table of contents. No calculation and no query here."""

from hwsched.cli.add import ADD
from hwsched.cli.attach import ATTACH
from hwsched.cli.attachments import ATTACHMENTS
from hwsched.cli.calc import CALC
from hwsched.cli.check import CHECK
from hwsched.cli.choose import CHOOSE
from hwsched.cli.cost import COST
from hwsched.cli.demo import DEMO
from hwsched.cli.desktop import DESKTOP
from hwsched.cli.detach import DETACH
from hwsched.cli.draw import DRAW
from hwsched.cli.edit import EDIT
from hwsched.cli.export_catalogue import EXPORT_CATALOGUE
from hwsched.cli.fewest_kinds import FEWEST_KINDS
from hwsched.cli.field import FIELD
from hwsched.cli.fit import FIT
from hwsched.cli.hang import HANG
from hwsched.cli.hardware_set import HARDWARE_SET
from hwsched.cli.history import HISTORY
from hwsched.cli.import_catalogue import IMPORT_CATALOGUE
from hwsched.cli.import_power import IMPORT_POWER
from hwsched.cli.import_survey import IMPORT_SURVEY
from hwsched.cli.lay import LAY
from hwsched.cli.level import LEVEL_VERB
from hwsched.cli.lift import LIFT
from hwsched.cli.missing import MISSING
from hwsched.cli.new import NEW
from hwsched.cli.people import PEOPLE
from hwsched.cli.pieces import PIECES
from hwsched.cli.place import PLACE
from hwsched.cli.power import POWER
from hwsched.cli.print import PRINT
from hwsched.cli.redo import REDO
from hwsched.cli.release import RELEASE
from hwsched.cli.remove import REMOVE
from hwsched.cli.revision import REVISION
from hwsched.cli.route import ROUTE
from hwsched.cli.rules import RULES_VERB
from hwsched.cli.settings import SETTINGS
from hwsched.cli.show import SHOW
from hwsched.cli.site import SITE
from hwsched.cli.successors import SUCCESSORS
from hwsched.cli.survey_form import SURVEY_FORM
from hwsched.cli.terms import TERMS
from hwsched.cli.undo import UNDO
from hwsched.cli.upgrade import UPGRADE
from hwsched.cli.verb import Verb
from hwsched.cli.waive import WAIVE
from hwsched.cli.waivers import WAIVERS
from hwsched.cli.what_if import WHAT_IF
from hwsched.cli.why import WHY

VERBS: tuple[Verb, ...] = (
    DEMO,
    NEW,
    UPGRADE,
    IMPORT_SURVEY,
    IMPORT_CATALOGUE,
    IMPORT_POWER,
    EXPORT_CATALOGUE,
    SURVEY_FORM,
    ADD,
    EDIT,
    REMOVE,
    FIELD,
    ATTACH,
    ATTACHMENTS,
    DETACH,
    SETTINGS,
    CHOOSE,
    PLACE,
    RELEASE,
    LEVEL_VERB,
    LAY,
    LIFT,
    HANG,
    ROUTE,
    SITE,
    POWER,
    HARDWARE_SET,
    FIT,
    CHECK,
    SHOW,
    WHY,
    WAIVE,
    WAIVERS,
    MISSING,
    WHAT_IF,
    SUCCESSORS,
    FEWEST_KINDS,
    COST,
    TERMS,
    PRINT,
    DRAW,
    PIECES,
    UNDO,
    REDO,
    HISTORY,
    PEOPLE,
    REVISION,
    RULES_VERB,
    CALC,
    DESKTOP,
)
