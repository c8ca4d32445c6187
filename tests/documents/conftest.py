"""The quay's survey, taken in and fitted once a worker."""

import pytest

from tests.documents.quay import viewed


@pytest.fixture(scope="session")
def quay(tmp_path_factory):
    """The quay as documents see it."""
    return viewed(tmp_path_factory.mktemp("quay"))


@pytest.fixture
def of_mark(quay):
    """Find an opening of the quay by its mark."""
    found = {view.mark: view for view in quay.openings}
    return found.__getitem__
