from tests.model.backends import address, backend, empty_place, postgres_url, project, templates

__all__ = ["address", "backend", "empty_place", "postgres_url", "project", "templates"]
