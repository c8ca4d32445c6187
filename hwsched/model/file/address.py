"""The address of a database as people may see it: without the password, wherever it stands in it."""

from sqlalchemy import URL, make_url
from sqlalchemy.exc import ArgumentError

from hwsched.model.errors import ProjectError
from hwsched.telling.masking import OPEN_OPTIONS, masked


def read_address(text: str) -> URL:
    """Read the address of a database.

    Raises
    ------
    ProjectError
        Says what is wrong without repeating the address: there may be a password in it.
    """
    try:
        return make_url(text)
    except ArgumentError as error:
        raise ProjectError("the database URL cannot be read; it looks like postgresql://USER@HOST/NAME") from error
    except ValueError as error:
        raise ProjectError(
            "the database URL cannot be read: the port behind the host is a number, as in postgresql://USER@HOST:5432/NAME"
        ) from error


def shown_address(address: URL) -> str:
    """Return an address for people and logs.

    Examples
    --------
    >>> shown_address(make_url("postgresql://ann:s3cret@db/yard?password=other&sslmode=require"))
    'postgresql://ann:***@db/yard?password=***&sslmode=require'
    """
    secret = {name: "***" for name in address.query if name not in OPEN_OPTIONS}
    shown = address.update_query_dict(secret).render_as_string(hide_password=True)
    return shown.replace("=%2A%2A%2A", "=***")


def without_secrets(text: str, address: URL) -> str:
    """Return what a driver said of an address without the passwords of that address, and without any that it shows."""
    secrets = [str(address.password or "")]
    for name, value in address.query.items():
        if name not in OPEN_OPTIONS:
            secrets += [value] if isinstance(value, str) else list(value)
    for secret in secrets:
        if secret:
            text = text.replace(secret, "***")
    return masked(text)


def named_after(target: str) -> str:
    """Return what a new project is called when nobody names it: its file's or its database's name.

    Examples
    --------
    >>> named_after("jobs/yard.hwsched"), named_after("postgresql://ann@db/yard?password=s3cret")
    ('yard', 'yard')
    """
    name = str(read_address(target).database or "") if "://" in target else target
    return name.replace("\\", "/").rsplit("/", 1)[-1].removesuffix(".hwsched") or "project"
