"""What can be asked for in the open project: its own fields, buildings, levels, parts and rules. No widgets."""

from functools import cache

from hwsched.desktop.project.workspace import Workspace
from hwsched.quantities import LENGTH_STYLES, LengthStyle
from hwsched.query import Askable


def askable_in(workspace: Workspace) -> Askable:
    """Return what can be asked for; names are read when somebody types so far."""
    project, checked = workspace.project, workspace.checked
    first = next(iter(checked.values()), None)
    style: LengthStyle = next((each for each in LENGTH_STYLES if each == project.length_style), "fraction")

    @cache
    def parts() -> tuple[str, ...]:
        with project.reading() as connection:
            return tuple(project.catalogue.read(connection).parts)

    def named(name: str) -> tuple[str, ...]:
        found = (getattr(each.given.opening, name) for each in checked.values())
        return tuple(dict.fromkeys(each for each in found if each))

    def rules() -> tuple[str, ...]:
        from hwsched.rules import RULEBOOK

        return tuple(rule.id for rule in RULEBOOK)

    return Askable(
        own=tuple({(each.entity, each.attribute): None for each in first.own}) if first is not None else (),
        bare_unit=project.bare_unit,
        length_style=style,
        buildings=cache(lambda: named("building")),
        levels=cache(lambda: named("level")),
        parts=parts,
        rules=rules,
    )
