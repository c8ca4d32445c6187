from tests.model.backends import backend, empty_place, postgres_url, project

__all__ = ["backend", "empty_place", "postgres_url", "project"]
