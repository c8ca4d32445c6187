"""Every fitted lock point of the sample, as the plan of its work is asked for."""

import pytest

from hwsched.model.project import open_project
from hwsched.operations.release.project_view import project_view
from hwsched.rules.reading import lock_item, lock_leaf
from hwsched.work.situation import Situation
from tests.documents.quay import viewed


def situation_of(at, **turn):
    leaf = lock_leaf(at.given) or next(iter(at.given.leaves), None)
    return Situation(at.given, at.fit, leaf, lock_item(at.given), **turn)


@pytest.fixture(scope="session")
def openings(sample_folder):
    """Mark, with the number of its lock point, to the situation at it."""
    (path,) = sample_folder.glob("*.hwsched")
    with open_project(str(path)) as project:
        view = project_view(project)
    found = {
        f"{each.mark} {at.given.point.number}": situation_of(at)
        for each in view.openings
        for at in each.points
        if at.fit is not None and at.fit.status == "fits"
    }
    assert len(found) > 100
    return found


@pytest.fixture(scope="session")
def quay(tmp_path_factory):
    """The quay as documents see it."""
    return viewed(tmp_path_factory.mktemp("quay"))


@pytest.fixture
def of_mark(quay):
    """Find an opening of the quay by its mark."""
    found = {view.mark: view for view in quay.openings}
    return found.__getitem__
