"""Words to choose from stand apart from what they mean, so that help is quick: both say the same."""

from typing import get_args

from hwsched import choices
from hwsched.calc import LINES as CALCULATOR_LINES
from hwsched.calc.calculators import CALCULATORS
from hwsched.documents import LINES as DOCUMENT_LINES
from hwsched.documents.documents import DOCUMENTS
from hwsched.drawings.layers import LAYERS
from hwsched.model.roles import ROLES
from hwsched.operations.opening.drawing_views import VIEWS
from hwsched.operations.release.issued_documents import TEMPLATES
from hwsched.quantities import BARE_UNITS, LENGTH_STYLES
from hwsched.values.finding import SEVERITIES, Severity


def test_words_to_choose_from_are_those_that_mean_something():
    assert choices.SEVERITIES == SEVERITIES == get_args(Severity)
    assert choices.BARE_UNITS == BARE_UNITS
    assert choices.LENGTH_STYLES == LENGTH_STYLES
    assert tuple(VIEWS) == choices.OPENING_VIEWS
    assert tuple(LAYERS) == choices.DRAWING_LAYERS
    assert {name: role.does for name, role in ROLES.items()} == choices.ROLES


def test_tables_of_names_say_what_their_members_are_called():
    assert [line.name for line in CALCULATOR_LINES] == [each.name for each in CALCULATORS]
    assert [line.name for line in DOCUMENT_LINES] == [each.name for each in DOCUMENTS]
    assert TEMPLATES == "templates"
