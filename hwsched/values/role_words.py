"""Roles of parts in an opening, as people read them; stored and sent to machines they stay as declared."""

from hwsched.language import phrase


def role_said(role: str) -> str:
    """Say a role in the language in force.

    Examples
    --------
    >>> role_said("lead-extension")
    'lead extension'
    """
    return phrase(role.replace("-", " ")) if role else ""
