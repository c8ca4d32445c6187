from tests.model.backends import address, backend, empty_place, project

__all__ = ["address", "backend", "empty_place", "project"]
